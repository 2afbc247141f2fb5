import type { Doubt, More, Sheet } from "../../trade/sheet.ts";
import { defineSheetCheck, labelOf } from "../check.ts";
import { spotsOf } from "../doubted.ts";
import type { Sample } from "../sample.ts";

const look = "One of us looks at it. If it matters, type it into “Notes”; if not, send the sheet without it.";
const example = (sample: Sample, doubt: Partial<Doubt>) =>
  sample.device({ doubts: [{ what: "something-more", ...doubt }] });

export const somethingOnPage = defineSheetCheck({
  id: "something-on-page",
  title: "A sheet with something more than its fields",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Only the fields of a sheet are read and cut. What somebody wrote, drew or laid beside them was meant to be seen, so the page is compared with the blank form, and whatever else is on it is looked at by a person.",
  wordings: {
    drawn: { says: "Something is on the page, {where}, that our form does not have there.", fix: look },
    said: { says: "“{text}” stands on the page, {where}, and not in a field; it is not read.", fix: look },
    other: {
      says: "This file has the fields of our form, but its page does not look like it.",
      fix: "One of us looks at it. It is quicker to fill in our own form and send that.",
    },
    moved: {
      says: "“{field}” lies elsewhere on the page than on our form.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
    },
    missing: {
      says: "A part of our form is cut off or missing in this file, and nobody can see what stands there.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
    },
    page: {
      says: "This file has something on page {page}, which our form does not have; it is not read.",
      fix: look,
    },
    file: { says: "A file is attached inside this PDF{name}; it is not read.", fix: look },
    layers: {
      says: "This PDF has layers that can be shown or hidden, so that two people may see different words.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
    },
    program: {
      says: "This PDF carries a program that can change what its fields show.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
    },
    twin: {
      says: "This PDF holds the form a second time, in a format (XFA) that some programs show instead of the fields.",
      fix: "One of us looks at it. It is quicker to fill in a fresh copy of the sheet and send that.",
    },
  },
  passing: [
    { shows: "a sheet as it was printed and filled in", given: ({ device }) => device() },
    {
      shows: "what has a check of its own",
      given: ({ device }) => device({ doubts: [{ what: "handwriting" }] }),
    },
  ],
  failing: [
    {
      shows: "a line beside a field",
      given: (sample) =>
        example(sample, { kind: "drawn", where: "in the upper right, beside", place: "project" }),
      wording: "drawn",
      says: "Something is on the page, in the upper right, beside “Project name”, that our form does not have there.",
    },
    {
      shows: "a comment",
      given: (sample) =>
        example(sample, {
          kind: "drawn",
          where: "in the middle, over",
          place: "row.1.1",
          text: "must read EXIT",
        }),
      wording: "said",
      says: "“must read EXIT” stands on the page, in the middle, over “Face 1, row 1”, and not in a field; it is not read.",
    },
    {
      shows: "a field in another place",
      given: (sample) => example(sample, { kind: "moved", place: "row.1.1" }),
      wording: "moved",
      says: "“Face 1, row 1” lies elsewhere on the page than on our form.",
    },
    {
      shows: "a form that somebody rebuilt",
      given: (sample) => example(sample, { kind: "other-page" }),
      wording: "other",
    },
    { shows: "a page cut off", given: (sample) => example(sample, { kind: "missing" }), wording: "missing" },
    {
      shows: "a cover page",
      given: (sample) => example(sample, { kind: "page", seen: { page: 1 } }),
      wording: "page",
      says: "This file has something on page 1, which our form does not have; it is not read.",
    },
    {
      shows: "an attached file",
      given: (sample) => example(sample, { kind: "file", text: "changes.txt" }),
      wording: "file",
      says: "A file is attached inside this PDF (“changes.txt”); it is not read.",
    },
    { shows: "words on a layer", given: (sample) => example(sample, { kind: "layers" }), wording: "layers" },
    { shows: "a script", given: (sample) => example(sample, { kind: "program" }), wording: "program" },
    { shows: "another form in it", given: (sample) => example(sample, { kind: "twin" }), wording: "twin" },
  ],
  *find(sheet, _catalogue, say) {
    for (const doubt of sheet.doubts) {
      if (doubt.what !== "something-more") continue;
      const { place, text, seen, kind = "drawn" } = doubt;
      // The field beside it has nothing wrong.
      const spots = spotsOf(sheet, [{ what: "something-more", ...(seen === undefined ? {} : { seen }) }]);
      const where = whereIn(sheet, doubt);
      if (kind === "drawn" && text !== undefined) yield say("said", { text, where }, spots);
      else if (kind === "drawn") yield say("drawn", { where }, spots);
      else if (kind === "moved")
        yield say("moved", { field: place === undefined ? "A field" : labelOf(sheet, place) }, spots);
      else if (kind === "other-page") yield say("other", {}, spots);
      else if (kind === "page") yield say("page", { page: seen?.page ?? 1 }, spots);
      else if (kind === "file") yield say("file", { name: text === undefined ? "" : ` (“${text}”)` }, spots);
      else
        yield say(
          kind satisfies Exclude<More, "drawn" | "other-page" | "moved" | "page" | "file">,
          {},
          spots,
        );
    }
  },
});

/** "in the upper right, beside “Project name”". */
function whereIn(sheet: Sheet, { where = "", place }: Doubt): string {
  return place === undefined
    ? where.replace(/, (?:over|beside)$/, "")
    : `${where} “${labelOf(sheet, place)}”`;
}
