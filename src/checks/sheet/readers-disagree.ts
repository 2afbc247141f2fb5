import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { Place } from "../../trade/place.ts";
import { standings } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";

export const readersDisagree = defineSheetCheck({
  id: "readers-disagree",
  title: "Two programs read a field differently",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Every sheet is read by two independent programs; where they disagree a person looks. In a measurement of ours on 668 forms among 8,430 public PDFs, with 17,566 fields on which two further programs agreed, they disagreed on 55 and never agreed on a wrong value. To repeat it on a folder of PDFs: BURIN_PDF_CORPUS=FOLDER node_modules/.bin/node tests/real/pdf-corpus.ts (wants pdftk and qpdf).",
  wordings: {
    differ: {
      says: "“{field}” reads “{one}” in one PDF program and “{other}” in another.",
      fix: "Tell us which it should be; one of us is looking at it too.",
    },
    half: {
      says: "“{field}” reads “{one}” in one PDF program and is empty in another.",
      fix: "Tell us what it should say; one of us is looking at it too.",
    },
  },
  passing: [{ shows: "a sheet that both programs read alike", given: ({ device }) => device() }],
  failing: [
    {
      shows: "two answers",
      given: ({ device }) => device({ unsure: [{ place: "row.1.1", one: "ENTRY", other: "ENTER" }] }),
      wording: "differ",
      says: "“Face 1, row 1” reads “ENTRY” in one PDF program and “ENTER” in another.",
    },
    {
      shows: "an answer that only one program sees",
      given: ({ device }) => device({ unsure: [{ place: "row.4.2", one: "", other: "OFF" }] }),
      wording: "half",
      says: "“Face 4, row 2” reads “OFF” in one PDF program and is empty in another.",
    },
    {
      shows: "a choice, told by its name",
      given: ({ device, layout }) => device({ unsure: [{ place: "layout", one: layout.code, other: "" }] }),
      wording: "half",
      says: "“Layout” reads “Four buttons” in one PDF program and is empty in another.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { place, ...read } of sheet.unsure) {
      const field = labelOf(sheet, place);
      const spots = at(sheet, place);
      const one = nameOf(place, read.one, catalogue);
      const other = nameOf(place, read.other, catalogue);
      if (one === "" || other === "") yield say("half", { field, one: one || other }, spots);
      else yield say("differ", { field, one, other }, spots);
    }
  },
});

/** What a person calls a choice that the form stores as a code; anything else as it stands. */
function nameOf(place: Place, code: string, catalogue: Catalogue): string {
  const choices = {
    layout: catalogue.layouts,
    finish: catalogue.finishes,
    lettering: catalogue.lettering,
    standing: standings,
  }[place as string];
  return choices?.find((choice) => choice.code === code)?.name ?? code;
}
