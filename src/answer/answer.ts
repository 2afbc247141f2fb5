import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Report } from "../judging/report.ts";
import type { Manager } from "../trade/manager.ts";
import { blanksWanted, headOfList } from "./blank-sheets.ts";
import { answerHtml } from "./html.ts";
import { outlineOf } from "./make-outline.ts";
import type { Enclosure } from "./message.ts";
import { type MissingSheets, missingWords } from "./missing-sheets.ts";
import { namedInLine, namesOf } from "./names-of.ts";
import { counted, oneLine } from "./one-line.ts";
import type { Item, ItemPicture, Outline, Ways } from "./outline.ts";
import { shownOf } from "./shown-stations.ts";
import { answerText } from "./text.ts";

/** What the sender reads: the same words as text and as HTML, under a subject of one line. */
export interface Answer {
  readonly subject: string;
  readonly text: string;
  readonly html: string;
}

/** The files that go with an answer. */
export interface Enclosed {
  readonly proofs: readonly Enclosure[];
  readonly marked: readonly Enclosure[];
  /** Sheets with problems that have no marked copy, since the letter would become too large or too late. */
  readonly left: number;
  /** The names of those copies on which we have filled in something for their sender to check. */
  readonly mended: readonly string[];
  /** Sheets that were filled in from the sender's list and have no marked copy. */
  readonly filled: readonly Enclosure[];
  /** Blank sheets, for a sender who has none, or old ones. */
  readonly blanks: readonly Enclosure[];
  /** The sheets still to come, filled in as far as is known. */
  readonly missing: MissingSheets;
  /** What was seen on pages, for those who read the answer. */
  readonly pictures: readonly Picture[];
}

/** A picture of a part of a page, by the name that problems have for it. */
export interface Picture extends Enclosure {
  readonly name: string;
}

/** An answer without any file. */
export const nothingEnclosed: Enclosed = {
  proofs: [],
  marked: [],
  left: 0,
  mended: [],
  filled: [],
  blanks: [],
  missing: { sheets: [], more: 0 },
  pictures: [],
};

/** Every file that goes with an answer, in the order in which it names them. */
export function filesIn({ pictures, marked, missing, filled, blanks, proofs }: Enclosed): Enclosure[] {
  return [...pictures, ...marked, ...missing.sheets, ...filled, ...blanks, ...proofs];
}

/** What an answer says of those around it. */
export interface Around {
  /** How else than by a reply questions can be answered; they stand beside them. */
  readonly ways?: Ways;
  /** Who gets a copy of it. */
  readonly copied?: readonly Manager[];
  /** What it says of the manager who wrote or forwarded the letter. */
  readonly by?: string;
}

/** Puts a report into the words of an answer, with a word on what goes with it and to whom. */
export function composeAnswer(
  report: Report,
  catalogue: Catalogue,
  enclosed: Enclosed = nothingEnclosed,
  { ways, copied = [], by }: Around = {},
): Answer {
  const outline = withPictures(outlineOf(report, catalogue, ways), enclosed.pictures);
  const copies = copied.map(
    ({ name }) =>
      `${oneLine(name, 60)}, who manages ${report.orders.length > 1 ? "these orders" : "this order"}, has a copy of this letter.`,
  );
  const around = [...(by === undefined ? [] : [by]), ...copies];
  const { blanks } = enclosed;
  const blankWords =
    report.held || blanks.length > 0 || blanksWanted(report).size === 0
      ? []
      : [`For blank sheets write to ${catalogue.maker.email}.`];
  const words = [...enclosedWords(enclosed, report), ...blankWords];
  const next = [...outline.next, ...around, ...words];
  const told = { ...outline, next };
  return { subject: outline.subject, text: answerText(told), html: answerHtml(told) };
}

/** The outline with only those pictures that go with the answer. */
function withPictures(outline: Outline, pictures: readonly Picture[]): Outline {
  const files = new Map(pictures.map(({ name, file }) => [name, file]));
  const item = ({ pictures: seen = [], ...rest }: Item): Item => {
    const left = seen.flatMap(({ name }): ItemPicture[] => {
      const file = files.get(name);
      return file === undefined ? [] : [{ name, file }];
    });
    return left.length === 0 ? rest : { ...rest, pictures: left };
  };
  const chapters = outline.chapters.map((part) => ({
    ...part,
    sections: part.sections.map((section) => ({
      ...section,
      groups: section.groups.map((group) => ({ ...group, items: group.items.map(item) })),
    })),
  }));
  return { ...outline, chapters };
}

function enclosedWords(
  { proofs, marked, mended, left, missing, filled, blanks }: Enclosed,
  report: Report,
): string[] {
  const [they, are, them, sheets] =
    marked.length === 1 ? ["It", "is", "it", "sheet"] : ["They", "are", "them", "sheets"];
  const use =
    report.verdict === "fail"
      ? `Correct the fields there, save, and send ${them} back.`
      : `If you change something, do it there, save, and send ${them} back.`;
  return [
    ...(marked.length === 0
      ? []
      : [
          `Enclosed: ${namesOf(marked)}. ${they} ${are} your own ${sheets} with the numbers of this letter beside the fields. ${use}`,
        ]),
    ...(mended.length === 0
      ? []
      : [
          `We have filled in what your other sheets say on ${namedInLine(mended)}. The last page names the fields. Check them before you send ${mended.length === 1 ? "it" : "them"} back.`,
        ]),
    ...missingWords(missing),
    ...(filled.length === 0
      ? []
      : [
          `Enclosed: ${namesOf(filled)}, filled in from your list. Keep ${filled.length === 1 ? "it" : "them"}; you need not send anything.`,
        ]),
    ...(blanks.length === 0
      ? []
      : [
          `Enclosed: ${namesOf(blanks)}, to be filled in on a computer, saved, and sent to us.`,
          ...(headOfList(report).size === 0
            ? []
            : ["The list has who orders and who pays already, as your earlier orders say. Check it."]),
        ]),
    ...(left === 0
      ? []
      : [
          `${counted(left, "sheet")} ${left === 1 ? "has" : "have"} no marked copy, or this letter would be too large.`,
        ]),
    ...(proofs.length === 0
      ? []
      : [
          `Enclosed: ${namesOf(proofs)}. ${proofs.length === 1 ? "It shows" : "They show"} what would be cut, at true size when printed at 100 %.`,
          ...(report.orders.some((order) => shownOf(order, report).left > 0)
            ? ["Stations that have not changed are left out there."]
            : []),
        ]),
  ];
}
