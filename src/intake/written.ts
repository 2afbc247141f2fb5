import type { Judged } from "../reading/judge.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { OpenLetter } from "./open.ts";

/** The sheets of a letter. Where they stand in forwarded letters of more than one date, each keeps its own. */
export function withWritten(files: OpenLetter["files"], judged: readonly Judged[]): Sheet[] {
  const dates = files.flatMap(({ dated }, i) => (judged[i]?.sheet === undefined ? [] : [dated?.getTime()]));
  const isOfOne = new Set(dates).size < 2;
  return judged.flatMap(({ sheet }, i) => {
    const dated = files[i]?.dated;
    if (sheet === undefined) return [];
    return isOfOne || dated === undefined ? sheet : { ...sheet, written: dated.toISOString() };
  });
}
