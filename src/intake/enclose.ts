import { type Enclosed, nothingEnclosed, type Picture } from "../answer/answer.ts";
import { blanksFor } from "../answer/blank-sheets.ts";
import { answeredProofs, type Revisions } from "../answer/enclosures.ts";
import { cidOf, type Enclosure } from "../answer/message.ts";
import { missingSheets } from "../answer/missing-sheets.ts";
import { marksOf, picturesIn } from "../answer/numbered.ts";
import { listed } from "../answer/one-line.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import type { MarkedProblem } from "../drawing/marked/problem.ts";
import type { Mending } from "../drawing/marked-copy.ts";
import { valuesOf } from "../drawing/prefilled-sheet.ts";
import { mendingsIn } from "../judging/mendings.ts";
import type { Report } from "../judging/report.ts";
import type { Says } from "../orders/expected.ts";
import type { Reader } from "../ports/reader.ts";
import type { Edition } from "../reading/edition.ts";
import { tellApart } from "../reading/file-name.ts";
import type { Attachment } from "../trade/attachment.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Pictures } from "./open.ts";

/** Bytes of marked copies in one answer. The post adds a third, and some mail servers take no more than 10 MB. */
const mostMarked = 5_000_000;

/** How long sheets are marked, in milliseconds. After so many failures the rest go without a copy. */
const longest = 60_000;
const mostInVain = 2;

interface Making {
  readonly reader: Reader;
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  readonly revisions?: Revisions;
  /** Bytes of marked copies. */
  readonly most?: number;
  /** What was seen on the pages of this letter's files. */
  readonly pictures?: Pictures;
}

/** Pictures in one answer, and bytes of all of them. */
const mostPictures = { count: 8, bytes: 200_000 };

/**
 * What goes with an answer: proofs, the sender's own sheets with their problems marked, the sheets still to come, and
 * blank sheets where those help.
 */
export async function enclose(
  report: Report,
  attachments: readonly Attachment[],
  making: Making,
): Promise<Enclosed> {
  if (report.held) return nothingEnclosed;
  const { marked, left, mended } = await markSheets(report, attachments, making);
  const proofs = await answeredProofs(report, making.catalogue, making.revisions);
  const blanks = await blanksFor(report, making.catalogue, making.editions);
  const missing = await missingSheets(report, making.catalogue, making.editions);
  return {
    proofs: tellApart(proofs),
    marked: tellApart(marked),
    left,
    mended,
    filled: filledFor(report, attachments, marked),
    blanks,
    missing: { ...missing, sheets: tellApart(missing.sheets) },
    pictures: picturesFor(report, making.pictures),
  };
}

/** The sheets that the answer asks about as filled in, as far as no copy of them is marked. */
function filledFor(
  report: Report,
  attachments: readonly Attachment[],
  marked: readonly Enclosure[],
): Enclosure[] {
  const came = new Set(report.sheets.map(({ sheet }) => sheet.id));
  const copies = new Set(marked.map(({ file }) => file));
  return attachments
    .filter(({ id, file, list }) => list !== undefined && came.has(id) && !copies.has(markedName(file)))
    .map(({ file, bytes }) => ({ file, type: "application/pdf", bytes }));
}

/** Pictures that belong to this report, from its first problem on. */
function picturesFor(report: Report, pictures: Pictures = new Map()): Picture[] {
  const shown: Picture[] = [];
  let room = mostPictures.bytes;
  for (const { name, file } of picturesIn(report)) {
    const bytes = pictures.get(name);
    if (bytes === undefined || bytes.length > room || shown.length === mostPictures.count) continue;
    if (shown.some((one) => one.name === name)) continue;
    room -= bytes.length;
    shown.push({ name, file, type: "image/png", bytes, cid: cidOf(name) });
  }
  return shown;
}

/**
 * Marks sheet by sheet, so that memory never holds more than goes with the answer. A sheet that cannot be marked goes
 * without a copy. Its problems are in the answer all the same.
 */
async function markSheets(
  report: Report,
  attachments: readonly Attachment[],
  { reader, catalogue, editions, most = mostMarked }: Making,
): Promise<Pick<Enclosed, "marked" | "left" | "mended">> {
  const marks = marksOf(report);
  const mendings = mendingsIn(report);
  const byId = new Map(attachments.map(({ id, bytes }) => [id, bytes]));
  const late = AbortSignal.timeout(longest);
  const marked: Enclosure[] = [];
  const mended: string[] = [];
  let [room, left, inVain] = [most, 0, 0];
  for (const { sheet } of report.sheets) {
    const bytes = byId.get(sheet.id);
    const problems = marks.get(sheet.id);
    if (bytes === undefined || problems === undefined || !isWorthIt(sheet)) continue;
    const mending = mendingOf(sheet, mendings.get(sheet.id), problems, { catalogue, editions });
    // A copy is larger than what it is a copy of.
    const made =
      late.aborted || inVain >= mostInVain || bytes.length > room
        ? undefined
        : await reader.mark(bytes, sheet, problems, mending);
    const copy = made?.ok === true ? made.value.copy : undefined;
    if (made !== undefined && (!made.ok || (copy !== undefined && copy.length > room))) inVain++;
    if (copy !== undefined && copy.length <= room) {
      room -= copy.length;
      const file = markedName(sheet.file);
      marked.push({ file, type: "application/pdf", bytes: copy });
      if (made?.ok === true && made.value.mended) mended.push(file);
    } else if (made === undefined || copy !== undefined) left++;
  }
  return { marked, left, mended };
}

/** What to fill in on the marked copy of a sheet; undefined for nothing. Only forms that we draw are filled in. */
function mendingOf(
  { edition: { name }, prints }: Sheet,
  says: Says | undefined,
  problems: readonly MarkedProblem[],
  { catalogue, editions }: Pick<Making, "catalogue" | "editions">,
): Mending | undefined {
  const edition = editions.find((one) => one.drawn && one.name === name);
  const values = edition === undefined ? {} : valuesOf(says ?? new Map(), edition, catalogue);
  const filled = [...(says?.keys() ?? [])].filter((place) => (prints[place]?.field ?? "") in values);
  if (filled.length === 0) return undefined;
  const numbered = Map.groupBy(
    filled,
    (place) => problems.find(({ places }) => places.includes(place))?.number,
  );
  return {
    values,
    says: [...numbered].map(([number, places]) => {
      const labels = listed(
        places.map((place) => `“${prints[place]?.label}”`),
        places.length,
      );
      return `We have filled in ${number === undefined ? labels : `${number}, ${labels}`}, as your other sheets say. Check it.`;
    }),
  };
}

/**
 * Pages that took too long to look at would take too long again. A sheet on an old edition has to be filled in anew.
 */
function isWorthIt({ doubts, edition }: Sheet): boolean {
  return edition.replacedBy === undefined && doubts.every(({ what }) => what !== "unseen");
}

/** The name of a marked copy. A copy that is marked once more keeps its name. */
function markedName(file: string): string {
  return `marked ${file.replace(/^(marked )+/i, "")}`;
}
