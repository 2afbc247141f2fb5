import type { Changed } from "../judging/changed.ts";
import type { Sheet } from "../trade/sheet.ts";
import { listed, oneLine } from "./one-line.ts";

/** Files named in one line, and letters of what one of our own people writes. */
const mostNames = 6;
export const mostWords = 600;
const mostWritten = 2_000;

/** What has become of an order since it was last answered for, in lines. */
export function changedLines({
  came,
  replaced,
  settled,
  decided,
  mended,
  open,
  note,
  by: manager,
}: Changed): readonly string[] {
  const by = oneLine(note?.by ?? manager ?? "", 60);
  const why = note === undefined ? "" : `: “${oneLine(note.why, mostWords)}”`;
  const reason = by === "" ? "" : ` (by ${by}${why})`;
  const said = (note?.acts ?? []).flatMap((act) => {
    if (act.kind === "say") return [`About ${act.number}, ${by} writes: “${oneLine(act.words, mostWords)}”`];
    if (act.kind === "write") return [`${by} writes: “${oneLine(act.words, mostWritten)}”`];
    if (act.kind === "no")
      return [`${act.number} is not right as it stands, says ${by}: please send a corrected sheet.`];
    if (act.kind === "release") return [`Released to engraving on ${act.on} by ${by}.`];
    if (act.kind === "read") return [`What a letter of yours said is dealt with${reason}.`];
    return [];
  });
  return [
    ...line("Came", names(came)),
    ...line("Came in place of an earlier sheet", names(replaced.map(({ now }) => now))),
    ...line("Settled", numbers(settled)),
    ...(decided.length === 0 ? [] : line("Settled", `${numbers(decided)}${reason}`)),
    ...said,
    ...line("Mended or no longer asked", numbers(mended)),
    ...line("Still open", numbers(open)),
  ];
}

function line(title: string, what: string): string[] {
  return what === "" ? [] : [`${title}: ${what}.`];
}

function names(sheets: readonly Sheet[]): string {
  return listed(
    sheets.map(({ file }) => oneLine(file, 90)),
    mostNames,
  );
}

function numbers(some: readonly number[]): string {
  return some.length === 0
    ? ""
    : `${some.length === 1 ? "number" : "numbers"} ${listed(some.map(String), 30)}`;
}
