import * as fc from "fast-check";
import type { Catalogue } from "../../src/catalogue/catalogue.ts";
import { without } from "../../src/checks/sample.ts";
import { makeReport, type Report } from "../../src/judging/report.ts";
import type { FileKind, ReadFile } from "../../src/trade/attachment.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "./config.ts";
import { aloneDevice, completeOrder } from "./sample.ts";
import { stateWith } from "./state.ts";

interface Brought {
  /** Files beside the sheets. */
  readonly files?: readonly ReadFile[];
  readonly earlier?: readonly Sheet[];
  readonly held?: boolean;
  readonly reply?: boolean;
  /** With a copy of the catalogue nothing is remembered of the sheets. */
  readonly knows?: Catalogue;
}

/** The report on a letter that brings these sheets. */
export function reportOn(
  sheets: readonly Sheet[],
  { files = [], earlier = [], held = false, reply = false, knows = catalogue }: Brought = {},
): Report {
  const own = sheets.map(({ id, file }): ReadFile => ({ id, file, kind: "sheet" }));
  return makeReport({ files: [...own, ...files], sheets, held, reply }, knows, stateWith(earlier));
}

/** The same sheets as an earlier letter brought them. */
export function sentEarlier<S extends Sheet>(sheets: readonly S[]): S[] {
  return sheets.map((sheet) => ({ ...sheet, id: sheet.id.replace(/^\d+/, "0") }));
}

const strange = fc.oneof(
  fc.string({ unit: "binary", maxLength: 24 }),
  fc.constantFrom(
    "<img src=x onerror=alert(1)>",
    "A&amp;B",
    "ALL  OFF ",
    "RECEPTION",
    "a\r\nPASS: b",
    "\"'>",
    "ΑΒ\u202eΓ",
  ),
);

const fault: fc.Arbitrary<(sheet: Sheet) => Sheet> = fc.oneof(
  fc.tuple(fc.constantFrom("1" as const, "3" as const, "5" as const, "plate" as const), strange).map(
    ([face, text]) =>
      (sheet: Sheet): Sheet => ({
        ...sheet,
        legends: [
          ...sheet.legends.filter((one) => one.face !== face),
          { face, rows: [text, "B"], plain: false },
        ],
      }),
  ),
  fc.constantFrom("BW-2270", "BW-3110", "tbd", "<b>&amp;", "BW\r\nBcc: x@y.example").map(
    (order) =>
      (sheet: Sheet): Sheet => ({ ...sheet, order }),
  ),
  fc.constantFrom("finish" as const, "order" as const, "mark" as const, "gangs" as const).map(
    (key) =>
      (sheet: Sheet): Sheet =>
        without(sheet, key),
  ),
  fc.constantFrom("BRK", "SLT", "plaid").map(
    (finish) =>
      (sheet: Sheet): Sheet => ({ ...sheet, finish }),
  ),
  strange.map(
    (file) =>
      (sheet: Sheet): Sheet => ({ ...sheet, file: `${file}.pdf` }),
  ),
  strange.map(
    (project) =>
      (sheet: Sheet): Sheet => ({ ...sheet, project }),
  ),
  strange.map(
    (other) =>
      (sheet: Sheet): Sheet => ({ ...sheet, unsure: [{ place: "row.1.1", one: "ENTRY", other }] }),
  ),
  fc.constant((sheet: Sheet): Sheet => ({ ...without(sheet, "mark"), notes: "plate S-104 pos 3 of 4" })),
);

const kinds: readonly FileKind[] = ["unknown-form", "no-form", "printed", "locked", "damaged", "other"];

/** Reports on letters made of the sample sheets: some left out, some sent earlier, some with faults, among other files. */
export const reports: fc.Arbitrary<Report> = fc
  .record({
    sheets: fc.subarray([...completeOrder(), aloneDevice()]),
    earlier: fc.subarray(sentEarlier(completeOrder())),
    faults: fc.array(fc.tuple(fc.nat(5), fault), { maxLength: 6 }),
    files: fc.array(fc.tuple(fc.constantFrom(...kinds), strange), { maxLength: 3 }),
    held: fc.boolean(),
    reply: fc.boolean(),
  })
  .map(({ sheets, earlier, faults, files, held, reply }) =>
    reportOn(
      sheets.map((sheet, i) =>
        faults.filter(([at]) => at === i).reduce<Sheet>((one, [, spoil]) => spoil(one), sheet),
      ),
      { earlier, held, reply, files: files.map(([kind, file], i) => ({ id: `1/${20 + i}`, file, kind })) },
    ),
  );
