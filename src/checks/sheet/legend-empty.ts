import type { Catalogue } from "../../catalogue/catalogue.ts";
import { buttonsOf } from "../../catalogue/catalogue.ts";
import { facesOf } from "../../catalogue/faces.ts";
import { type FaceName, hasText } from "../../trade/legend.ts";
import type { Spot } from "../../trade/problem.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { faceWords, plainMark, rowPlaces } from "../limits.ts";
import { isBlank, isDoubtful } from "../required.ts";
import { type Sample, unprinted } from "../sample.ts";

const plainSecond = (sample: Sample) =>
  sample
    .plate()
    .legends.map((legend) => (legend.face === "2" ? { ...legend, rows: ["", ""], plain: true } : legend));

export const legendEmpty = defineSheetCheck({
  id: "legend-empty",
  title: "A face has nothing to cut and is not marked plain",
  severity: "stops",
  waivable: true,
  sender: "settles",
  source: { kind: "common practice" },
  why: "An empty legend may be meant, or forgotten; only the buyer knows.",
  wordings: {
    empty: {
      says: "There is nothing to cut for {faces}.",
      fix: "Type the legend or, to have no text there, tick {marks}.",
    },
    unmarked: {
      says: "There is nothing to cut for {faces}.",
      fix: "Send the sheet again with the legend.",
      // The form has no mark for it, so an answer by letter must do.
      severity: "asks",
    },
    both: {
      says: "The mark “leave plain” is set for {faces}, beside text to cut.",
      fix: "Clear the mark or the text, whichever is wrong.",
    },
  },
  passing: [
    { shows: "a legend on every face", given: ({ plate }) => plate() },
    { shows: "a gang marked plain", given: (sample) => sample.plate({ legends: plainSecond(sample) }) },
    {
      shows: "a button that the layout does not have",
      given: ({ device, otherLayout }) =>
        device(
          { layouts: [otherLayout.code] },
          { "3": buttonsOf(otherLayout) < 3 ? [] : ["AISLE"], "4": [] },
        ),
    },
    {
      shows: "a plate legend that the form does not ask for",
      given: ({ aloneDevice }) => unprinted(aloneDevice({}, { plate: [] }), "row.plate.1", "row.plate.2"),
    },
    {
      shows: "a blank sheet, which has a check of its own",
      given: ({ blankDevice }) => blankDevice({ layouts: [] }),
    },
  ],
  failing: [
    {
      shows: "two empty buttons",
      given: ({ device }) => device({}, { "3": ["", ""], "4": [" "] }),
      wording: "empty",
      says: "There is nothing to cut for button 3 and button 4.",
      fix: "Type the legend or, to have no text there, tick “Face 3: leave plain” and “Face 4: leave plain”.",
    },
    {
      shows: "an empty plate legend on a device alone",
      given: ({ aloneDevice }) => aloneDevice({}, { plate: ["", ""] }),
      wording: "empty",
      says: "There is nothing to cut for the plate legend.",
      fix: "Type the legend or, to have no text there, tick “Plate legend: leave plain”.",
    },
    {
      shows: "an empty button on a form without a mark for it",
      given: ({ device }) => unprinted(device({}, { "3": [] }), "plain.3"),
      wording: "unmarked",
      says: "There is nothing to cut for button 3.",
    },
    {
      shows: "a mark beside text",
      given: ({ plate }) => plate({ legends: plate().legends.map((legend) => ({ ...legend, plain: true })) }),
      wording: "both",
      says: "The mark “leave plain” is set for gang 1, gang 2, gang 3 and gang 4, beside text to cut.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (isBlank(sheet)) return;
    const legends = (facesOf(sheet, catalogue) ?? [])
      .filter((face) => isAsked(sheet, face, catalogue))
      .map((face) => sheet.legends.find((one) => one.face === face) ?? { face, rows: [], plain: false });
    const empty = legends.filter((legend) => !hasText(legend) && !legend.plain).map(({ face }) => face);
    const marked = empty.filter((face) => plainMark(sheet, face) !== undefined);
    const unmarked = empty.filter((face) => plainMark(sheet, face) === undefined);
    const both = legends.filter((legend) => hasText(legend) && legend.plain).map(({ face }) => face);

    const words = (faces: readonly FaceName[]): string[] => faces.map((face) => faceWords(sheet, face));
    const spots = (faces: readonly FaceName[]): readonly Spot[] =>
      at(sheet, ...faces.map((face) => `row.${face}.1` as const));
    if (marked.length > 0) {
      const marks =
        marked.length > 2
          ? ["the “leave plain” mark of each"]
          : marked.map((face) => plainMark(sheet, face) ?? "");
      yield say("empty", { faces: words(marked), marks }, spots(marked));
    }
    if (unmarked.length > 0) yield say("unmarked", { faces: words(unmarked) }, spots(unmarked));
    if (both.length > 0) yield say("both", { faces: words(both) }, spots(both));
  },
});

/** Whether the form asks what to cut on a face, and what it was told could be read. */
function isAsked(sheet: Sheet, face: FaceName, catalogue: Catalogue): boolean {
  const rows = rowPlaces(sheet, face, catalogue);
  const isPrinted = rows.some((place) => sheet.prints[place] !== undefined);
  return isPrinted && ![...rows, `plain.${face}` as const].some((place) => isDoubtful(sheet, place));
}
