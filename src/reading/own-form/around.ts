import type { Box } from "../facts.ts";
import type { FormOutline, Frame, OutlinedField, Printed } from "./outline.ts";

/** The words around a field. */
export interface Around {
  /** Its label. That of a group of round buttons is what stands before all of them. */
  readonly label?: string;
  /** The label of each of its frames. */
  readonly labels: readonly string[];
  /** What stands at the head of its row and of its column, whatever fields lie between. */
  readonly heads: string;
  /** The number that stands beside it, above or below, if it is one. */
  readonly number?: string;
  /** The field nearest to it that is no box. */
  readonly neighbour?: string;
  /** The field above it, if it has no label and looks like its next line. */
  readonly continues?: string;
  /** What stands above it, to its left, nearest first. */
  readonly headings: readonly string[];
}

/** What lies on one page. */
interface Page {
  readonly printed: readonly Printed[];
  readonly frames: readonly Frame[];
  /** The frames that are no boxes. */
  readonly entries: readonly Frame[];
  /** Frame → the one below that looks like its next line. */
  readonly next: ReadonlyMap<Frame, Frame>;
  /** On which side the labels of fields stand, and those of boxes. */
  readonly side: "left" | "above";
  readonly tickSide: "left" | "right";
}

/** A label may stand so far away, in points. */
const far = { left: 260, above: 16, right: 30, entry: 45, heading: 500 };

/** The words around every field of a form, by its name. */
export function aroundFields({ fields, printed, pages: count }: FormOutline): ReadonlyMap<string, Around> {
  const pages = new Map<number, Page>();
  for (let page = 1; page <= count; page++) {
    const here = fields.filter(({ frames }) => frames.some((frame) => frame.page === page));
    if (here.length > 0) pages.set(page, pageOf(here, page, printed));
  }
  const owner = new Map(fields.flatMap(({ name, frames }) => frames.map((frame) => [frame, name] as const)));
  return new Map(
    fields.map((field) => {
      const [first] = field.frames;
      const page = first && pages.get(first.page);
      return [
        field.name,
        page === undefined || first === undefined
          ? { labels: [], heads: "", headings: [] }
          : aroundField(field, first, page, owner),
      ];
    }),
  );
}

function pageOf(fields: readonly OutlinedField[], page: number, all: readonly Printed[]): Page {
  const printed = all.filter((one) => one.page === page);
  const frames = fields.flatMap((field) => field.frames).filter((frame) => frame.page === page);
  const bare = { printed, frames };
  let [left, above, tickLeft, tickRight] = [0, 0, 0, 0];
  for (const { kind, frames: own } of fields)
    for (const frame of own.filter((one) => one.page === page)) {
      const before = leftOf(frame, bare);
      if (kind === "tick") {
        const behind = rightOf(frame, bare);
        if (gapOf(before) < gapOf(behind)) tickLeft++;
        else if (behind !== undefined) tickRight++;
      } else {
        const over = aboveOf(frame, bare);
        if (before !== undefined && over === undefined) left++;
        if (over !== undefined && before === undefined) above++;
      }
    }
  const entries = fields.filter(({ kind }) => kind !== "tick").flatMap((field) => field.frames);
  const next = new Map(
    entries.flatMap((frame) => {
      const above = isNumber(leftOf(frame, bare)?.text ?? "") ? undefined : lineAbove(frame, bare);
      return above === undefined ? [] : [[above, frame] as const];
    }),
  );
  return {
    ...bare,
    entries,
    next,
    side: above > left ? "above" : "left",
    tickSide: tickLeft > tickRight ? "left" : "right",
  };
}

function aroundField(
  field: OutlinedField,
  first: Frame,
  page: Page,
  owner: ReadonlyMap<Frame, string>,
): Around {
  const own = field.frames.filter((frame) => frame.page === first.page);
  const labels = own.map((frame) =>
    field.kind === "tick" ? tickLabel(frame, page) : fieldLabel(frame, page),
  );
  const label = own.length > 1 ? groupLabel(own, labels, page) : labels[0];
  const above = label === undefined && field.kind === "text" ? lineAbove(first, page) : undefined;
  const continued = above && owner.get(above);
  const number = numberBeside(stackFrom(first, page), page);
  const neighbour = field.kind === "tick" ? owner.get(entryBeside(first, page) ?? first) : undefined;
  return {
    ...(label === undefined ? {} : { label: label.text }),
    labels: labels.map((one) => one?.text ?? ""),
    heads: [rowHead(first, page), columnHead(first, page)].filter(Boolean).join(" "),
    ...(number === undefined ? {} : { number }),
    ...(neighbour === undefined || neighbour === field.name ? {} : { neighbour }),
    ...(continued === undefined ? {} : { continues: continued }),
    headings: headingsOf(first, page),
  };
}

/** Some words and how far they are away. */
interface Near {
  readonly text: string;
  readonly gap: number;
}

type Bare = Pick<Page, "printed" | "frames">;

function gapOf(near: Near | undefined): number {
  return near?.gap ?? Number.POSITIVE_INFINITY;
}

function fieldLabel(frame: Frame, page: Page): Near | undefined {
  const [before, over] = [leftOf(frame, page), aboveOf(frame, page)];
  return page.side === "left" ? (before ?? over) : (over ?? before);
}

function tickLabel(frame: Frame, page: Page): Near | undefined {
  const [before, behind] = [leftOf(frame, page), rightOf(frame, page)];
  const under = belowOf(frame, page);
  if (gapOf(under) < 4 && Math.min(gapOf(before), gapOf(behind)) > 8) return under;
  return page.tickSide === "left" ? (before ?? behind) : (behind ?? before ?? aboveOf(frame, page));
}

/** What stands before the first of several buttons, or above them. */
function groupLabel(
  frames: readonly Frame[],
  labels: readonly (Near | undefined)[],
  page: Page,
): Near | undefined {
  const all = frames.reduce<Box>(
    (box, frame) => [
      Math.min(box[0], frame.box[0]),
      Math.min(box[1], frame.box[1]),
      Math.max(box[2], frame.box[2]),
      Math.max(box[3], frame.box[3]),
    ],
    frames[0]?.box ?? [0, 0, 0, 0],
  );
  const others = { printed: page.printed, frames: page.frames.filter((frame) => !frames.includes(frame)) };
  const whole = { page: frames[0]?.page ?? 1, box: all };
  const over = nearest(others.printed, ({ box }) =>
    box[0] < all[2] && box[2] > all[0] - 12 && box[1] >= all[3] - 3 ? box[1] - all[3] : undefined,
  );
  // What stands before the first button may be the label of that one alone.
  const isOwn = page.tickSide === "left" && labels.slice(1).some((label) => label !== undefined);
  const before = isOwn ? undefined : leftOf(whole, others);
  return before ?? (gapOf(over) <= 3 * far.above ? over : undefined);
}

function leftOf({ box }: Pick<Frame, "box">, { printed, frames }: Bare): Near | undefined {
  return nearest(printed, ({ box: text }) => {
    const gap = box[0] - text[2];
    if (gap < -3 || gap > far.left || !onLine(text, box)) return undefined;
    return frames.some(
      (one) => one.box !== box && onLine(text, one.box) && between(one.box, text[2], box[0], 0),
    )
      ? undefined
      : gap;
  });
}

function rightOf({ box }: Pick<Frame, "box">, { printed, frames }: Bare): Near | undefined {
  return nearest(printed, ({ box: text }) => {
    const gap = text[0] - box[2];
    if (gap < -3 || gap > far.right || !onLine(text, box)) return undefined;
    return frames.some(
      (one) => one.box !== box && onLine(text, one.box) && between(one.box, box[2], text[0], 0),
    )
      ? undefined
      : gap;
  });
}

function aboveOf({ box }: Pick<Frame, "box">, { printed, frames }: Bare): Near | undefined {
  return nearest(printed, ({ box: text }) => {
    const gap = text[1] - box[3];
    const overlaps = text[0] < box[2] && text[2] > box[0] && text[0] >= box[0] - 12;
    if (gap < -4 || gap > far.above || !overlaps) return undefined;
    const isBlocked = frames.some(
      (one) =>
        one.box !== box && one.box[0] < box[2] && one.box[2] > box[0] && between(one.box, box[3], text[1], 1),
    );
    return isBlocked ? undefined : Math.max(0, gap) + Math.abs(text[0] - box[0]) / 100;
  });
}

function belowOf({ box }: Pick<Frame, "box">, { printed }: Bare): Near | undefined {
  return nearest(printed, ({ box: text }) => {
    const gap = box[1] - text[3];
    return gap >= -3 && gap < far.above && text[0] < box[2] && text[2] > box[0]
      ? Math.max(0, gap)
      : undefined;
  });
}

function rowHead({ box }: Frame, { printed }: Page): string | undefined {
  return nearest(printed, ({ box: text }) => {
    const gap = box[0] - text[2];
    return gap >= -3 && onLine(text, box) ? gap : undefined;
  })?.text;
}

function columnHead({ box }: Frame, { printed }: Page): string | undefined {
  const middle = (box[0] + box[2]) / 2;
  return nearest(printed, ({ box: text }) => {
    const gap = text[1] - box[3];
    const isOver =
      text[0] < box[2] && text[2] > box[0] && Math.abs((text[0] + text[2]) / 2 - middle) < box[2] - box[0];
    return gap >= -4 && isOver ? gap : undefined;
  })?.text;
}

/** A number alone that stands near some frames, and nearer to no others. */
function numberBeside(stack: readonly Frame[], { printed, entries }: Page): string | undefined {
  // A number before words counts the parts of the page.
  const isCounting = (number: Box): boolean =>
    printed.some(
      ({ box: [left, bottom] }) =>
        Math.abs(bottom - number[1]) < 2 && left > number[2] && left < number[2] + 15,
    );
  const numbers = printed.filter((one) => isNumber(one.text) && !isCounting(one.box));
  return nearest(numbers, ({ box: text }) => {
    const closest = least(entries, (one) => apart(one.box, text));
    const gap = Math.min(...stack.map(({ box }) => apart(box, text)));
    return gap <= far.right && closest !== undefined && stack.includes(closest) ? gap : undefined;
  })?.text;
}

function isNumber(text: string): boolean {
  return /^\d{1,2}\.?$/.test(text);
}

/** A frame and its further lines; none for a frame that is a further line itself. */
function stackFrom(frame: Frame, { next }: Page): Frame[] {
  if ([...next.values()].includes(frame)) return [];
  const stack = [frame];
  for (let at = next.get(frame); at !== undefined && !stack.includes(at); at = next.get(at)) stack.push(at);
  return stack;
}

/** The nearest frame of a field that is no box. */
function entryBeside({ box }: Frame, { entries }: Page): Frame | undefined {
  const near = least(entries, (one) => apart(one.box, box));
  return near !== undefined && apart(near.box, box) <= far.entry ? near : undefined;
}

function least<T>(all: readonly T[], measure: (one: T) => number): T | undefined {
  let best: { one: T; size: number } | undefined;
  for (const one of all) {
    const size = measure(one);
    if (best === undefined || size < best.size) best = { one, size };
  }
  return best?.one;
}

/** How far two boxes are apart. */
function apart(one: Box, other: Box): number {
  const across = Math.max(0, one[0] - other[2], other[0] - one[2]);
  const up = Math.max(0, one[1] - other[3], other[1] - one[3]);
  return across + up;
}

/** Short words above a field that begin no further right than it does. */
function headingsOf({ box }: Frame, { printed }: Page): string[] {
  return printed
    .filter(({ text }) => text.length <= 48)
    .flatMap(({ text, box: [left, bottom] }) => {
      const [across, up] = [box[0] - left, bottom - box[3]];
      return across >= -10 && up >= -15 && across + up <= far.heading
        ? [{ text, away: Math.max(0, across) + Math.max(0, up) }]
        : [];
    })
    .toSorted((a, b) => a.away - b.away)
    .map(({ text }) => text);
}

/** The frame right above, of the same width. */
function lineAbove({ box }: Frame, { frames }: Bare): Frame | undefined {
  const height = box[3] - box[1];
  return frames.find(({ box: other }) => {
    const gap = other[1] - box[3];
    return (
      Math.abs(other[0] - box[0]) < 2 && Math.abs(other[2] - box[2]) < 2 && gap > -2 && gap < 0.8 * height
    );
  });
}

/** The words with the smallest measure; those without one do not count. */
function nearest(
  printed: readonly Printed[],
  measure: (one: Printed) => number | undefined,
): Near | undefined {
  let best: Near | undefined;
  for (const one of printed) {
    const gap = measure(one);
    if (gap !== undefined && gap < gapOf(best)) best = { text: one.text, gap };
  }
  return best;
}

/** Whether words stand on the line of a frame, or on its first line if it is high. */
function onLine(text: Box, frame: Box): boolean {
  const middle = (text[1] + text[3]) / 2;
  return middle > Math.max(frame[1] - 3, frame[3] - 30) && middle < frame[3] + 3;
}

/** Whether a frame lies between two limits, across (0) or upward (1). */
function between(frame: Box, from: number, to: number, side: 0 | 1): boolean {
  return frame[side] >= from - 4 && frame[(side + 2) as 2 | 3] <= to + 4;
}
