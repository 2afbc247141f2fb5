import { oddOnes } from "../../orders/differ.ts";
import { isPlaceholder } from "../../orders/placeholder.ts";
import { at, defineOrderCheck } from "../check.ts";
import { oddDomains } from "../email-domain.ts";
import { contact, subject } from "../sample.ts";

export const contactDiffers = defineOrderCheck({
  id: "contact-differs",
  title: "Sheets of one order name different contacts",
  severity: "notes",
  source: { kind: "common practice" },
  why: "Two people may well share an order, so this holds nothing up; a mistyped number is worth knowing before somebody dials it.",
  wordings: {
    differs: {
      says: "The contact has “{typed}” here and “{usual}” on other sheets of this order.",
      fix: "Nothing to do if both are right.",
    },
  },
  passing: [
    { shows: "one contact", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "the telephone number with its country code",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1, { contact: { ...contact, phone: "+1 (312) 555-0117" } })]),
    },
  ],
  failing: [
    {
      shows: "a digit mistyped",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { contact: { ...contact, phone: "312-555-0171" } })]),
      wording: "differs",
      says: "The contact has “312-555-0171” here and “312-555-0117” on other sheets of this order.",
    },
  ],
  *find({ order }, _, say) {
    const slips = new Set(oddDomains(order.sheets).map(({ sheet }) => sheet.id));
    const odd = oddOnes(order.sheets, ({ id, contact: { phone, email, name } }) => ({
      ...(name === undefined || isPlaceholder(name) ? {} : { name }),
      // A domain that is a slip of the others' has a check of its own.
      ...(email === undefined || slips.has(id) ? {} : { email }),
      ...(phone === undefined ? {} : { phone: withoutCountry(phone) }),
    }));
    for (const { sheets, parts, typed, usual } of odd)
      yield say(
        "differs",
        { typed, usual },
        sheets.flatMap((sheet) => at(sheet, ...parts.map((part) => `contact.${part}` as const))),
      );
  },
});

/** A North American number without the 1 before its ten digits. */
function withoutCountry(phone: string): string {
  return phone.replace(/^\W*1\W*(?=(?:\d\W*){10}$)/, "");
}
