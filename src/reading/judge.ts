import type { Catalogue } from "../catalogue/catalogue.ts";
import type { FileKind, ReadFile } from "../trade/attachment.ts";
import type { Doubt, Sheet } from "../trade/sheet.ts";
import { doubtsOf } from "./doubts.ts";
import type { Edition } from "./edition.ts";
import type { FileFacts, PageFacts, PdfFacts } from "./facts.ts";
import { filledIn } from "./filled.ts";
import { isFillable } from "./form.ts";
import { areaOf } from "./pdf/boxes.ts";
import { carriesLabels, recognise } from "./recognise.ts";
import { pictureName } from "./seen.ts";
import { readSheet, type SheetFile } from "./sheet.ts";

/** What is needed to make sense of a file. */
export interface Known {
  readonly editions: readonly Edition[];
  readonly catalogue: Catalogue;
}

/** What a file is, with its sheet if it is one. */
export interface Judged {
  readonly file: ReadFile;
  readonly sheet?: Sheet;
  /** Pictures of what its doubts are about, by the names that they have there. */
  readonly pictures?: ReadonlyMap<string, Uint8Array>;
}

const kinds = {
  "locked-pdf": "locked",
  "damaged-pdf": "damaged",
  picture: "picture",
  office: "office-document",
  "locked-archive": "archive-locked",
  archive: "archive",
  other: "other",
} as const satisfies Record<Exclude<FileFacts["kind"], "pdf">, FileKind>;

/** What was found in a file → what it is. */
export function judge(facts: FileFacts, file: SheetFile, known: Known): Judged {
  if (facts.kind !== "pdf") return { file: { ...file, kind: kinds[facts.kind] } };
  if (facts.portfolio) return { file: { ...file, kind: "portfolio" } };
  const { edition, nearest } = recognise(facts.fields, known.editions);
  if (edition !== undefined) return judgeSheet(facts, edition, file, known);
  if (facts.dynamic) return { file: { ...file, kind: "dynamic-form" } };
  if (facts.fields.some(isFillable))
    return { file: { ...file, kind: "unknown-form", ...(nearest === undefined ? {} : { nearest }) } };
  return { file: { ...file, kind: withoutFields(facts, known.editions) } };
}

function judgeSheet(facts: PdfFacts, edition: Edition, file: SheetFile, known: Known): Judged {
  const { editions, catalogue } = known;
  const doubts = doubtsOf(facts, edition);
  if (isUntouched(facts, edition) && !doubts.some(isWritten))
    // An end that is missing may have held all that was filled in.
    return {
      file: { ...file, kind: doubts.some(({ what }) => what === "recovered") ? "damaged" : "saved-blank" },
    };
  const newer = editions.find(({ name }) => name === edition.replacedBy)?.title;
  const pictures = new Map(
    (facts.differences ?? []).flatMap(({ picture }) =>
      picture === undefined ? [] : [[pictureName(picture), picture]],
    ),
  );
  return {
    file: { ...file, kind: "sheet" },
    sheet: { ...readSheet(facts.fields, edition, file, catalogue, newer), doubts },
    ...(pictures.size === 0 ? {} : { pictures }),
  };
}

/** Whether every field is as the blank form has it: empty, off, or calling itself by its edition. */
function isUntouched({ fields }: PdfFacts, edition: Edition): boolean {
  const filled = filledIn(fields, edition);
  return edition.fields.every(
    ({ place }) => place === undefined || place === "edition" || filled.at(place).length === 0,
  );
}

/** Something that somebody put on the page, if not into the fields. */
function isWritten({ what, kind }: Doubt): boolean {
  if (what === "something-more") return kind === "drawn" || kind === "page" || kind === "file";
  return what === "handwriting" || what === "typed-over" || what === "image-over" || what === "value-hidden";
}

function withoutFields({ pages, recovered }: PdfFacts, editions: readonly Edition[]): FileKind {
  // Pages too heavy to be looked at are a drawing's, and no sheet's.
  if (pages === undefined) return recovered ? "damaged" : "no-form";
  const text = pages.map((page) => page.text).join("\n");
  const scanned = pages.length > 0 && pages.every(isPicture);
  if (carriesLabels(text, editions)) return scanned ? "scanned" : "printed";
  if (recovered) return "damaged";
  return scanned && text.length < leastText * pages.length ? "scanned" : "no-form";
}

/** Characters of text that a page has at least if it is more than a picture, and how much of it pictures cover. */
const leastText = 30;
const leastPicture = 0.7;

function isPicture({ width, height, marks }: PageFacts): boolean {
  const images = marks.filter(({ what }) => what === "image");
  const area = images.reduce((sum, { box }) => sum + areaOf(box), 0);
  return images.length > 0 && area >= leastPicture * width * height;
}
