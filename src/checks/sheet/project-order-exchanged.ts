import { numberPart } from "../../orders/keys.ts";
import { isNoNumber } from "../../orders/no-number.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";

export const projectOrderExchanged = defineSheetCheck({
  id: "project-order-exchanged",
  title: "Project and order number look exchanged",
  severity: "stops",
  source: { kind: "common practice" },
  why: "The order number ties the sheets together. A sheet that has the project's name for it belongs to no order.",
  wordings: {
    exchanged: {
      says: "“{orderField}” says “{order}” and “{projectField}” says “{project}”: the two look exchanged.",
      fix: "Put each into its own field and send the sheet again.",
    },
  },
  passing: [
    { shows: "each in its place", given: ({ device }) => device() },
    { shows: "numbers in both", given: ({ device }) => device({ project: "2026-114", order: "22-8147" }) },
    {
      shows: "an address as project",
      given: ({ device }) => device({ project: "1200 Main St", order: "Verbal Ines" }),
    },
    { shows: "words in both", given: ({ device }) => device({ order: "Larkspur" }) },
    {
      shows: "a tower with a number",
      given: ({ device }) => device({ project: "Tower 7", order: "Verbal Ines" }),
    },
  ],
  failing: [
    {
      shows: "the one in the field of the other",
      given: ({ plate }) => plate({ order: "Larkspur Library", project: "BW-2207" }),
      wording: "exchanged",
      says: "“Order number” says “Larkspur Library” and “Project name” says “BW-2207”: the two look exchanged.",
    },
    {
      shows: "a number that is announced",
      given: ({ device }) => device({ order: "Quarry Street School", project: "P.O. # 22-8147" }),
      wording: "exchanged",
      says: "“Order number” says “Quarry Street School” and “Project name” says “P.O. # 22-8147”: the two look exchanged.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const { order, project } = sheet;
    if (order === undefined || project === undefined) return;
    if (isNoNumber(order) || !isWords(order) || !isNumber(project)) return;
    const [orderField, projectField] = [labelOf(sheet, "order"), labelOf(sheet, "project")];
    yield say("exchanged", { orderField, order, projectField, project }, at(sheet, "order", "project"));
  },
});

/** Words of three letters or more, and no digit. */
function isWords(typed: string): boolean {
  return /\p{L}{3}/u.test(typed) && !/\p{N}/u.test(typed);
}

/** At most four letters that stand close to two digits or more: BW-2207, 22-8147, J26/101A. */
function isNumber(typed: string): boolean {
  const number = numberPart(typed).replace(/^[^\p{L}\p{N}]+|\s+$/gu, "");
  return number.length < 40 && /^[A-Z]{0,4}[-./# ]?\d[\d./-]*\d[A-Z]?$/i.test(number);
}
