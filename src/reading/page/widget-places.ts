import type { Box, PdfFacts, WidgetFacts } from "../facts.ts";
import type { BlankPage, BlankWidget } from "./blank-form.ts";
import type { ReadSheet } from "./compare-pages.ts";

/** The same box, moved so far to the right and up. */
export function shifted([left, bottom, right, top]: Box, x: number, y: number): Box {
  return [left + x, bottom + y, right + x, top + y];
}

/** The page of a sheet that corresponds to a page of its blank: the one with most of its fields. */
export function pageOf({ widgets }: BlankPage, index: number, facts: Pick<PdfFacts, "widgets">): number {
  const names = new Set(widgets.map(({ field }) => field));
  const count = new Map<number, number>();
  for (const { field, page } of facts.widgets)
    if (names.has(field)) count.set(page, (count.get(page) ?? 0) + 1);
  const [most] = [...count].toSorted(([, a], [, b]) => b - a);
  return most?.[0] ?? index + 1;
}

/** The part of a sheet's page that corresponds to its blank, and how far it lies from where the blank has it. */
export interface PartOfPage {
  readonly view: Box;
  readonly part: Box;
  readonly x: number;
  readonly y: number;
  /** The fields on the page, in its own coordinates. */
  readonly own: readonly WidgetFacts[];
}

export function partOn(page: number, { box, widgets }: BlankPage, { facts, pages }: ReadSheet): PartOfPage {
  const view = pages[page - 1]?.view ?? box;
  const own = facts.widgets
    .filter((widget) => widget.page === page)
    .map((widget) => ({ ...widget, box: shifted(widget.box, view[0], view[1]) }));
  const [x, y] = shiftOf(widgets, own);
  return { view, part: shifted(box, x, y), x, y, own };
}

/** How far the fields of a page lie from where the blank form has them: the median. */
function shiftOf(
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

/** A program may move a field by so many points when it saves. */
export const slack = 1.5;

/** Fields that show and lie elsewhere than any field of that name on the blank form. */
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
