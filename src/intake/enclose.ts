import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Reader } from "../ports/reader.ts";
import { tellApart } from "../reading/file-name.ts";
import type { Enclosed } from "../report/answer.ts";
import { proofsFor, type Revisions } from "../report/enclosures.ts";
import type { Enclosure } from "../report/message.ts";
import { marksOf } from "../report/numbered.ts";
import type { Report } from "../report/report.ts";
import type { Attachment } from "../trade/attachment.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";

/** Bytes of marked copies in one answer: mail servers take letters of 25 MB and more, and the post adds a third. */
const mostMarked = 10_000_000;

/** Sheets marked at a time; and how many may cost a reader process before the rest go without. */
const sideBySide = 2;
const mostLost = 2;

/**
 * What goes with an answer: the proofs, and the sender's own sheets with their problems marked. A sheet that
 * cannot be marked goes without a copy; its problems are in the answer all the same.
 */
export async function enclose(
  report: Report,
  attachments: readonly Attachment[],
  {
    reader,
    catalogue,
    revisions,
    most = mostMarked,
  }: {
    readonly reader: Reader;
    readonly catalogue: Catalogue;
    readonly revisions?: Revisions;
    readonly most?: number;
  },
): Promise<Enclosed> {
  const marks = marksOf(report);
  const copies = new Map<FileId, Enclosure>();
  const todo = report.sheets.values();
  let lost = 0;
  const markOn = async (): Promise<void> => {
    for (const { sheet } of todo) {
      const bytes = attachments.find(({ id }) => id === sheet.id)?.bytes;
      const problems = marks.get(sheet.id);
      // Pages that nobody could look at in their time would use it up once more.
      if (bytes === undefined || problems === undefined || isUnseen(sheet) || lost >= mostLost) continue;
      const marked = await reader.mark(bytes, sheet, problems);
      if (!marked.ok) lost++;
      else if (marked.value.copy !== undefined)
        copies.set(sheet.id, {
          file: markedName(sheet.file),
          type: "application/pdf",
          bytes: marked.value.copy,
        });
    }
  };
  await Promise.all(Array.from({ length: sideBySide }, markOn));
  const all = report.sheets.flatMap(({ sheet }) => copies.get(sheet.id) ?? []);
  let room = most;
  const marked = all.filter(({ bytes }) => (room -= bytes.length) >= 0);
  return {
    proofs: await proofsFor(report, catalogue, revisions),
    marked: tellApart(marked),
    left: all.length - marked.length,
  };
}

function isUnseen({ doubts }: Sheet): boolean {
  return doubts.some(({ what }) => what === "unseen");
}

/** A copy that comes back and needs another gets the same name. */
function markedName(file: string): string {
  return `marked ${file.replace(/^(marked )+/i, "")}`;
}
