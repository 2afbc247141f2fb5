import type { Catalogue } from "../catalogue/catalogue.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { prefilledSheet } from "../drawing/prefilled-sheet.ts";
import type { Report } from "../judging/report.ts";
import type { Edition } from "../reading/edition.ts";
import type { Missing } from "../trade/order.ts";
import type { SheetKind } from "../trade/place.ts";
import { fileWords } from "./enclosures.ts";
import type { Enclosure } from "./message.ts";
import { namesOf } from "./names-of.ts";
import { counted } from "./one-line.ts";
import { numberOf } from "./phrases.ts";

/** Sheets still to come that go with one answer at most, and their bytes. */
const most = { sheets: 24, bytes: 2_500_000 };

/** The sheets still to come, filled in as far as is known, and how many more there are than go with one answer. */
export interface MissingSheets {
  readonly sheets: readonly Enclosure[];
  readonly more: number;
  /** Some are needed only if a plate that nobody has ordered yet is to come. */
  readonly ifPlate?: true;
}

/** The sheets for which a report waits, on our editions in use. None, if we draw no sheet of the kind. */
export async function missingSheets(
  { orders }: Report,
  catalogue: Catalogue,
  editions: readonly Edition[],
): Promise<MissingSheets> {
  const blanks = new Map<SheetKind, { readonly edition: Edition; readonly blank: Promise<Uint8Array> }>();
  const waiting = orders.filter(({ expected }) => expected.length > 0);
  const wanted = waiting.flatMap(({ order, expected }) => {
    // Where several orders wait, their numbers stand before the names.
    const number = waiting.length > 1 ? numberOf(order) : undefined;
    return expected.map((one) => ({ ...one, file: fileOf(one.missing, number) }));
  });
  for (const kind of new Set(wanted.map(({ missing }) => missing.kind))) {
    const edition = editions.find(
      ({ drawn, form, replacedBy }) => drawn && form === kind && replacedBy === undefined,
    );
    if (edition !== undefined) blanks.set(kind, { edition, blank: blankSheet(edition, catalogue) });
  }
  const drawn = wanted.filter(({ missing }) => blanks.has(missing.kind));
  const sheets: Enclosure[] = [];
  let room = most.bytes;
  for (const { missing, says, file } of drawn) {
    const form = blanks.get(missing.kind);
    if (form === undefined || sheets.length === most.sheets) break;
    const bytes = await prefilledSheet(await form.blank, says, form.edition, catalogue);
    if (bytes.length > room) break;
    room -= bytes.length;
    sheets.push({ file, type: "application/pdf", bytes });
  }
  const ifPlate = waiting.some(({ expected, missing }) => expected.length > missing.length);
  return { sheets, more: drawn.length - sheets.length, ...(ifPlate && sheets.length > 0 ? { ifPlate } : {}) };
}

/** What is said of them: which they are, and what is to be done. */
export function missingWords({ sheets, more, ifPlate }: MissingSheets): string[] {
  if (sheets.length === 0) return [];
  const [they, sheet, them] = sheets.length === 1 ? ["It is", "sheet", "it"] : ["They are", "sheets", "them"];
  return [
    `Enclosed: ${namesOf(sheets)}. ${they} the missing ${sheet}${ifPlate ? " and those that its plate would need" : ""}, with what your other sheets say. Check that, fill in the rest on a computer, save, and send ${them} to us.`,
    ...(more === 0
      ? []
      : [
          `${counted(more, "more sheet")} ${more === 1 ? "is" : "are"} missing; send some of these, and our answer encloses the next.`,
        ]),
  ];
}

/** "S-104 position 2.pdf", "S-104 plate.pdf". */
function fileOf({ station, kind, position }: Missing, number: string | undefined): string {
  const words = [...(number === undefined ? [] : [number]), station].map(fileWords);
  return `${words.join(" ")} ${kind === "plate" ? "plate" : `position ${position}`}.pdf`;
}
