import type { Box, WidgetFacts } from "../facts.ts";
import type { BlankWidget } from "./blank-form.ts";

/** The same box so much farther to the right and up. */
export function shifted([left, bottom, right, top]: Box, x: number, y: number): Box {
  return [left + x, bottom + y, right + x, top + y];
}

/** How far the fields of a page lie from where the blank form has them: the middle of all. */
export function shiftOf(
  widgets: readonly BlankWidget[],
  own: readonly WidgetFacts[],
): readonly [x: number, y: number] {
  const byField = Map.groupBy(own, ({ field }) => field);
  const shifts = widgets.flatMap(({ field, box }) => {
    const [one, ...more] = byField.get(field) ?? [];
    return one === undefined || more.length > 0 ? [] : [[one.box[0] - box[0], one.box[1] - box[1]] as const];
  });
  const middle = (all: readonly number[]): number =>
    Math.round((all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0) * 2) / 2;
  return [middle(shifts.map(([x]) => x)), middle(shifts.map(([, y]) => y))];
}

/** Points by which a program may move a field in saving it. */
export const slack = 1.5;

/** Fields that show, and lie elsewhere than the blank form has one of that name. */
export function movedFields(
  widgets: readonly BlankWidget[],
  own: readonly WidgetFacts[],
  [x, y]: readonly [number, number],
): WidgetFacts[] {
  const byField = Map.groupBy(widgets, ({ field }) => field);
  return own.filter(({ field, box, hidden }) => {
    const places = byField.get(field);
    if (places === undefined || hidden) return false;
    const at = shifted(box, -x, -y);
    return !places.some((place) => place.box.every((side, i) => Math.abs(side - (at[i] ?? 0)) <= slack));
  });
}
