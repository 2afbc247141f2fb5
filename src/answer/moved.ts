import type { Moved, Withdrawn } from "../judging/report.ts";
import { places } from "../trade/place.ts";
import { type Sheet, saidAt } from "../trade/sheet.ts";
import { mostWords } from "./changed.ts";
import { counted, listed, oneLine } from "./one-line.ts";
import type { Withdrawal } from "./outline.ts";

/** Which sheets one of our own people has put elsewhere, field by field, why, and which orders that leaves empty. */
export function movedWords({ note, sheets }: Moved, withdrawn: readonly Withdrawn[]): Withdrawal {
  const emptied = withdrawn.flatMap(({ order, leaves }) => (leaves === "nothing" ? oneLine(order, 40) : []));
  const left = emptied.length === 0 ? "" : ` Nothing is left of order ${listed(emptied, 3)}.`;
  return {
    says: `${oneLine(note.by, 60)} has put ${counted(sheets.length, "sheet")} elsewhere (“${oneLine(note.why, mostWords)}”):`,
    sheets: sheets.map(
      ({ old, sheet }) => `${oneLine(sheet.file, 90)}: ${movedFields(old, sheet).join("; ")}`,
    ),
    undo: `Your own file stays as it is.${left} If this is not right, reply to this letter.`,
  };
}

/** "Station mark — → S-104". */
function movedFields(old: Sheet, now: Sheet): string[] {
  return (["order", "mark", "position"] as const).flatMap((place) => {
    const [was, is] = [saidAt(old, place), saidAt(now, place)].map((text) => oneLine(text, 40) || "—");
    return was === is ? [] : `${places[place].label} ${was} → ${is}`;
  });
}
