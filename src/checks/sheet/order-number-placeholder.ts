import { plainText } from "../../orders/keys.ts";
import { isNoNumber } from "../../orders/no-number.ts";
import type { Entry } from "../../trade/place.ts";
import { type Sheet, saidAt } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { without } from "../sample.ts";

export const orderNumberPlaceholder = defineSheetCheck({
  id: "order-number-placeholder",
  title: "The order number is only a placeholder",
  severity: "stops",
  sender: "settles",
  source: { kind: "common practice" },
  why: "The order number ties the sheets of an order together; a word such as TBD would tie them to every other order without a number.",
  wordings: {
    placeholder: {
      says: "“{field}” says “{typed}”, which is no order number.",
      fix: "Write the number of your order; if there is none yet, choose a number of your own and keep to it.",
    },
    copied: {
      says: "“{field}” says “{typed}”, as “{other}” does.",
      fix: "If it is not your order number, send the sheet again with the number.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "a number", given: ({ device }) => device() },
    { shows: "a number that begins like a placeholder", given: ({ device }) => device({ order: "NA-1042" }) },
    {
      shows: "no number at all, which is a missing field",
      given: ({ device }) => without(device(), "order"),
    },
  ],
  failing: [
    {
      shows: "a word",
      given: ({ device }) => device({ order: "tbd" }),
      wording: "placeholder",
      says: "“Order number” says “tbd”, which is no order number.",
    },
    {
      shows: "a word after PO",
      given: ({ device }) => device({ order: "P.O. # pending" }),
      wording: "placeholder",
      says: "“Order number” says “P.O. # pending”, which is no order number.",
    },
    {
      shows: "a word after the job",
      given: ({ device }) => device({ order: "Job no. TBD" }),
      wording: "placeholder",
      says: "“Order number” says “Job no. TBD”, which is no order number.",
    },
    {
      shows: "zeros",
      given: ({ device }) => device({ order: "0000" }),
      wording: "placeholder",
      says: "“Order number” says “0000”, which is no order number.",
    },
    {
      shows: "X's",
      given: ({ device }) => device({ order: "XXX-XXXX" }),
      wording: "placeholder",
      says: "“Order number” says “XXX-XXXX”, which is no order number.",
    },
    {
      shows: "a mark",
      given: ({ device }) => device({ order: "?" }),
      wording: "placeholder",
      says: "“Order number” says “?”, which is no order number.",
    },
    {
      shows: "letters and zeros",
      given: ({ device }) => device({ order: "BW-0000" }),
      wording: "placeholder",
      says: "“Order number” says “BW-0000”, which is no order number.",
    },
    {
      shows: "the station mark",
      given: ({ device }) => device({ order: "s104" }),
      wording: "copied",
      says: "“Order number” says “s104”, as “Station mark” does.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const typed = sheet.order;
    if (typed === undefined) return;
    const facts = { field: labelOf(sheet, "order"), typed };
    if (isNoNumber(typed)) {
      yield say("placeholder", facts, at(sheet, "order"));
      return;
    }
    const other = others.find((place) => isCopied(typed, place, sheet));
    if (other !== undefined)
      yield say("copied", { ...facts, other: labelOf(sheet, other) }, at(sheet, "order", other));
  },
});

/** Places with numbers of their own, which are typed into the wrong field now and then. */
const others: readonly Entry[] = ["mark", "contact.phone", "bill.postcode", "ship.postcode"];

function isCopied(order: string, place: Entry, sheet: Sheet): boolean {
  const [one, other] = [order, saidAt(sheet, place)].map(plainText);
  return one === other && /\d/.test(order);
}
