import type { Catalogue } from "../catalogue/catalogue.ts";
import type { FileKind, ReadFile } from "../trade/attachment.ts";
import type { Doubt, Sheet } from "../trade/sheet.ts";
import { doubtsOf } from "./doubts.ts";
import type { Edition } from "./edition.ts";
import type { FileFacts, PdfFacts } from "./facts.ts";
import { filledIn, unmappedIn } from "./filled.ts";
import { isFillable } from "./form.ts";
import { doubtsBeside, isPicture, type PageBeside, pagesBeside, printedSheets } from "./pages-beside.ts";
import { carriesLabels, recognise } from "./recognise.ts";
import { pictureName } from "./seen.ts";
import { readSheet, type SheetFile } from "./sheet.ts";
import { sheetsIn } from "./sheets-in.ts";

/** What is needed to make sense of a file. */
export interface Known {
  readonly editions: readonly Edition[];
  readonly catalogue: Catalogue;
  /** The day on which the file came, "2026-11-27" where the desk is. Without it no replaced edition is accepted. */
  readonly today?: string;
}

/** What a file is, with its sheet if it is one. */
export interface Judged {
  readonly file: ReadFile;
  readonly sheet?: Sheet;
  /** Pictures of its doubts, by the names that the doubts give them. */
  readonly pictures?: ReadonlyMap<string, Uint8Array>;
}

const kinds = {
  "locked-pdf": "locked",
  "damaged-pdf": "damaged",
  picture: "picture",
  "small-picture": "small-picture",
  recording: "recording",
  office: "office-document",
  text: "text",
  "locked-archive": "archive-locked",
  archive: "archive",
  other: "other",
} as const satisfies Record<Exclude<FileFacts["kind"], "pdf" | "list">, FileKind>;

/** What was found in a file → what it is. */
export function judge(facts: FileFacts, file: SheetFile, known: Known): Judged {
  if (facts.kind === "list") {
    const { faults = [] } = facts;
    return { file: { ...file, kind: "list", ...(faults.length === 0 ? {} : { faults }) } };
  }
  if (facts.kind !== "pdf") return { file: { ...file, kind: kinds[facts.kind] } };
  const isForm = facts.fields.some(isFillable);
  if (facts.portfolio) {
    // The cover of a portfolio says nothing. The files of the portfolio are judged by themselves.
    const cover = withoutFields(facts, known.editions);
    const isCover = !isForm && facts.attached !== undefined && cover !== "printed" && cover !== "scanned";
    return { file: { ...file, kind: isCover ? "archive" : "portfolio" } };
  }
  const { edition, nearest } = recognise(facts.fields, known.editions);
  const beside = pagesBeside(facts, edition);
  const sheets = sheetsTogether(facts, edition, beside, known.editions);
  if (sheets > 1) return { file: { ...file, kind: "several-sheets", sheets } };
  if (edition !== undefined) return judgeSheet(facts, edition, doubtsBeside(beside, facts), file, known);
  if (facts.dynamic) return { file: { ...file, kind: "dynamic-form" } };
  if (isForm)
    return { file: { ...file, kind: "unknown-form", ...(nearest === undefined ? {} : { nearest }) } };
  return { file: { ...file, kind: withoutFields(facts, known.editions) } };
}

/** How many sheets a file holds, with their fields or without. `edition` is that of the sheet that is read. */
function sheetsTogether(
  facts: PdfFacts,
  edition: Edition | undefined,
  beside: readonly PageBeside[],
  editions: readonly Edition[],
): number {
  const bare = beside.filter(({ isForm }) => !isForm);
  const named = sheetsIn(facts, editions) + printedSheets(bare, editions);
  if (named > 1) return named;
  // Fields that a program has renamed are counted by the labels beside them. If no sheet can be read, fields and
  // labels tell of the same sheets.
  const all =
    edition === undefined
      ? Math.max(named, printedSheets(beside, editions))
      : named +
        printedSheets(
          beside.filter(({ isForm }) => isForm),
          editions,
        );
  // If PDFs stand one behind the other, only one is seen, or parts of each.
  return all > 0 || edition !== undefined ? Math.max(all, facts.together ?? 1) : all;
}

/** The facts without the files inside. Those are opened by themselves and need no second word. */
function withoutOpened({ differences, ...facts }: PdfFacts): PdfFacts {
  if (differences === undefined) return facts;
  const isOpened = facts.attached !== undefined;
  return { ...facts, differences: differences.filter(({ what }) => !(isOpened && what === "file")) };
}

/** The other doubts. If pages were compared with the blank form, every further page is a difference already. */
function whatElse(beside: readonly Doubt[], { differences }: PdfFacts): readonly Doubt[] {
  return differences === undefined ? beside : beside.filter(({ what }) => what === "pages-beyond");
}

function judgeSheet(
  facts: PdfFacts,
  edition: Edition,
  beside: readonly Doubt[],
  file: SheetFile,
  { editions, catalogue, today }: Known,
): Judged {
  const doubts = [...doubtsOf(withoutOpened(facts), edition), ...whatElse(beside, facts)];
  if (isUntouched(facts, edition) && !doubts.some(isWritten)) {
    // The missing end may have held all that was filled in.
    if (doubts.some(({ what }) => what === "recovered")) return { file: { ...file, kind: "damaged" } };
    const named = isNamedAsBlank(file.named ?? file.file, edition) ? { blank: edition.form } : {};
    return { file: { ...file, kind: "saved-blank", ...named } };
  }
  const newer = editions.find(({ name }) => name === edition.replacedBy)?.title;
  const outlook = { ...(newer === undefined ? {} : { newer }), ...(today === undefined ? {} : { today }) };
  const pictures = new Map(
    (facts.differences ?? []).flatMap(({ picture }) =>
      picture === undefined ? [] : [[pictureName(picture), picture]],
    ),
  );
  const sheet = readSheet(facts.fields, edition, file, catalogue, outlook);
  const unread = [...sheet.unread, ...(file.list?.unread ?? [])];
  return {
    file: { ...file, kind: "sheet" },
    sheet: { ...sheet, unread, doubts },
    ...(pictures.size === 0 ? {} : { pictures }),
  };
}

/** Whether every field is as the blank form has it: empty, off, or naming its edition. */
function isUntouched({ fields }: PdfFacts, edition: Edition): boolean {
  const filled = filledIn(fields, edition);
  return (
    unmappedIn(fields, edition).length === 0 &&
    edition.fields.every(
      ({ place }) => place === undefined || place === "edition" || filled.at(place).length === 0,
    )
  );
}

/** Whether a file has no name but that of the form, as it was sent out or as its kind is called: "plate-26c (1).pdf". */
function isNamedAsBlank(file: string, { name, title }: Pick<Edition, "name" | "title">): boolean {
  const words = (text: string): string[] => text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  const own = new Set([...words(name), ...words(title), ...blankWords]);
  const stem = file.replace(/\.pdf$/iu, "").replaceAll(/\(\d\)/gu, " ");
  const said = words(stem);
  return said.length > 0 && said.every((word) => own.has(word));
}
const blankWords = ["blank", "empty", "unused", "spare", "extra", "form", "copy", "template", "of", "order"];

/** Whether somebody put something on the page instead of into the fields. */
function isWritten({ what, kind }: Doubt): boolean {
  if (what === "something-more") return kind === "drawn" || kind === "page" || kind === "file";
  return ["handwriting", "typed-over", "image-over", "value-hidden", "pictures-beside"].includes(what);
}

function withoutFields({ pages, recovered }: PdfFacts, editions: readonly Edition[]): FileKind {
  // Only a drawing has pages that are too heavy to be looked at. A sheet has not.
  if (pages === undefined) return recovered ? "damaged" : "no-form";
  const text = pages.map((page) => page.text).join("\n");
  const scanned = pages.length > 0 && pages.every(isPicture);
  if (carriesLabels(text, editions)) return scanned ? "scanned" : "printed";
  if (recovered) return "damaged";
  return scanned && text.length < leastText * pages.length ? "scanned" : "no-form";
}

/** Characters of text that a page has at least if it is more than a picture. */
const leastText = 30;
