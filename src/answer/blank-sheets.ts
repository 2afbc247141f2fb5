import type { Catalogue } from "../catalogue/catalogue.ts";
import { isBlank } from "../checks/required.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { listFiles } from "../drawing/list/list-files.ts";
import { listWorkbook } from "../drawing/list/list-workbook.ts";
import type { Report } from "../judging/report.ts";
import { type Says, usualHead } from "../orders/expected.ts";
import type { Edition } from "../reading/edition.ts";
import { listForm } from "../reading/list/list-form.ts";
import type { FileKind } from "../trade/attachment.ts";
import type { SheetKind } from "../trade/place.ts";
import { knowsNoSheet } from "./make-outline.ts";
import { type Enclosure, workbookType } from "./message.ts";

/** What is sent in place of a sheet that can be filled in, or empty. */
const inItsPlace: ReadonlySet<FileKind> = new Set([
  "scanned",
  "picture",
  "small-picture",
  "printed",
  "saved-blank",
  "locked",
  "unknown-form",
  "dynamic-form",
]);

/**
 * The kinds of blank sheets that help a sender: both, if he seems to have none or asks for some; the newer edition of
 * a kind for one who used an old one.
 */
export function blanksWanted(report: Report): ReadonlySet<SheetKind> {
  const { sheets, files, withdrawn } = report;
  const filled = sheets.filter(({ sheet }) => !isBlank(sheet));
  const isWithout =
    filled.length + withdrawn.length === 0 &&
    (sheets.length > 0 || files.some(({ file }) => inItsPlace.has(file.kind)));
  if (isWithout || knowsNoSheet(report) || report.asksForSheets) return new Set(["device", "plate"]);
  const old = sheets.filter(
    ({ sheet: { edition } }) => edition.replacedBy !== undefined || edition.accepted !== undefined,
  );
  return new Set(old.map(({ sheet }) => sheet.kind));
}

/** What the list's head has already. */
export function headOfList(report: Report): Says {
  return blanksWanted(report).size > 1 ? usualHead(report.earlier) : new Map();
}

/** Those sheets, on our editions in use, and a station list for a sender who has none. */
export async function blanksFor(
  report: Report,
  catalogue: Catalogue,
  editions: readonly Edition[],
): Promise<Enclosure[]> {
  const kinds = blanksWanted(report);
  const wanted = editions.filter(
    ({ drawn, replacedBy, form }) => drawn && replacedBy === undefined && kinds.has(form),
  );
  // Whoever has no sheet may like the list better.
  const form = kinds.size > 1 ? listForm(editions) : undefined;
  const list: Enclosure[] =
    form === undefined
      ? []
      : [
          {
            file: listFiles.workbook,
            type: workbookType,
            bytes: await listWorkbook(form, catalogue, headOfList(report)),
          },
        ];
  const sheets = await Promise.all(
    wanted.map(
      async (edition): Promise<Enclosure> => ({
        file: `${edition.name}.pdf`,
        type: "application/pdf",
        bytes: await blankSheet(edition, catalogue),
      }),
    ),
  );
  return [...sheets, ...list];
}
