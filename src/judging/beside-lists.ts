import { lackedByList, otherwiseIn, pairedWithLists } from "../orders/beside-list.ts";
import { untouchedAmong } from "../orders/untouched.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Otherwise, Sheet } from "../trade/sheet.ts";

/** What came with a letter. */
interface Brought {
  readonly files: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
}

/**
 * Holds the lists of a letter against the sheets beside them. Where both order one place, the sheet counts and is told
 * what the list says otherwise; the sheet that was made of the list is left out. A sheet that the list lacks is told so.
 * A sheet that came as it was sent out says nothing against a list for its place.
 */
export function besideLists({ files, sheets }: Brought): Brought {
  const untouched = new Set(
    untouchedAmong(sheets, []).flatMap(({ blank, beside }) => (beside.list === undefined ? [] : blank)),
  );
  const compared = sheets.filter((sheet) => !untouched.has(sheet));
  const pairs = pairedWithLists(compared);
  if (pairs.length === 0) return { files, sheets };
  const left = new Set(pairs.map(({ listed }) => listed.id));
  const paired = Map.groupBy(pairs, ({ listed }) => listed.list?.file);
  const lacked = lackedByList(compared);
  const bySheet = new Map(pairs.map((pair) => [pair.sheet.id, otherwiseIn(pair)]));
  return {
    files: files
      .filter(({ id }) => !left.has(id))
      .map((file) => {
        const beside = file.kind === "list" ? paired.get(file.file)?.length : undefined;
        return beside === undefined ? file : { ...file, beside };
      }),
    sheets: sheets
      .filter(({ id }) => !left.has(id))
      .map((sheet) => {
        const isLacked = lacked?.lacks.has(sheet) === true;
        const otherwise: Otherwise | undefined = isLacked
          ? { file: lacked.file, places: [], lacks: true }
          : bySheet.get(sheet.id);
        return otherwise === undefined ? sheet : { ...sheet, otherwise };
      }),
  };
}
