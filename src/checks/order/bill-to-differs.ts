import { oddOnes } from "../../orders/differ.ts";
import { soundParts } from "../addresses.ts";
import { at, defineOrderCheck } from "../check.ts";
import { billTo, subject } from "../sample.ts";

export const billToDiffers = defineOrderCheck({
  id: "bill-to-differs",
  title: "Sheets of one order are billed to different addresses",
  severity: "asks",
  source: { kind: "common practice" },
  why: "An order has one invoice. With two addresses on its sheets somebody would have to guess where to send it.",
  wordings: {
    differs: {
      says: "The bill-to address has “{typed}” here and “{usual}” on other sheets of this order.",
      fix: "Confirm which one is right.",
    },
  },
  passing: [
    { shows: "one address", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "another way of writing it",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1, { billTo: { ...billTo, street: "48 FOUNDRY ROW." } })]),
    },
    {
      shows: "the name of the state, and its two letters",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1, { billTo: { ...billTo, state: "Illinois" } })]),
    },
    {
      shows: "a ZIP of another state, which has a check of its own",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1, { billTo: { ...billTo, postcode: "06070" } })]),
    },
    {
      shows: "a sheet without an address",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1, { billTo: {} })]),
    },
  ],
  failing: [
    {
      shows: "two digits of the postcode swapped",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { billTo: { ...billTo, postcode: "60670" } })]),
      wording: "differs",
      says: "The bill-to address has “60670” here and “60607” on other sheets of this order.",
    },
  ],
  *find({ order }, _, say) {
    for (const { sheets, parts, typed, usual } of oddOnes(order.sheets, ({ billTo: address }) =>
      soundParts(address),
    ))
      yield say(
        "differs",
        { typed, usual },
        sheets.flatMap((sheet) => at(sheet, ...parts.map((part) => `bill.${part}` as const))),
      );
  },
});
