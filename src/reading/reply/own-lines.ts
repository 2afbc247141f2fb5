import { isMarked, leadAt } from "./leads.ts";

/** A line that the sender of a reply wrote. */
export interface OwnLine {
  readonly line: string;
  /** The number of the point that is quoted right above it. */
  readonly under?: number;
  /** More than one point is quoted there, so that nobody knows which one a bare answer is for. */
  readonly afterSeveral: boolean;
}

/**
 * The lines that the sender wrote: all above an unmarked quotation, or those among marked lines. A bare answer is for the
 * point right above it, unless an open question above that is unanswered.
 */
export function* ownLines(
  text: string,
  subject: string,
  isOpen: (point: number) => boolean,
): Generator<OwnLine> {
  const lines = text.split(/\r\n|\r|\n/);
  /** The point of the last quoted line, and all points quoted since the sender's last line. */
  let point: number | undefined;
  let points = new Set<number>();
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] ?? "";
    const lead = isMarked(line) ? undefined : leadAt(lines, at, subject);
    if (lead?.sure === true) {
      at += Math.max(lead.lines, 1) - 1;
      const next = lines.slice(at + 1).find((one) => one.trim() !== "");
      // A quotation follows a lead. Without marks nobody can tell where it ends.
      if (!isMarked(next ?? "")) return;
    } else if (isMarked(line)) {
      point = pointIn(line.replace(/^\s*>\s?/, ""), point);
      if (point !== undefined) points.add(point);
    } else if (line.trim() !== "") {
      const before = [...points].filter((one) => point === undefined || one === point || isOpen(one));
      yield {
        line: line.trim(),
        ...(point === undefined || before.length !== 1 ? {} : { under: point }),
        afterSeveral: before.length > 1,
      };
      points = new Set();
      point = undefined;
    }
  }
}

/** The number of the point that a quoted line belongs to. The line before it belonged to point `before`. */
function pointIn(line: string, before: number | undefined): number | undefined {
  const [, number] = /^\s{0,4}(\d{1,4})\.\s/.exec(line) ?? [];
  if (number !== undefined) return Number(number);
  return line.trim() === "" || /^\s{4}/.test(line) ? before : undefined;
}
