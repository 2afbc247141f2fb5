import { oddOnes } from "../../orders/differ.ts";
import { shippedTo, soundParts } from "../addresses.ts";
import { at, defineOrderCheck } from "../check.ts";
import { billTo, subject } from "../sample.ts";

const site = { ...billTo, street: "9 Quarry Street", postcode: "60618" };
const toSite = { shipSame: false, shipTo: site };

export const shipToDiffers = defineOrderCheck({
  id: "ship-to-differs",
  title: "Sheets of one order are shipped to different addresses",
  severity: "asks",
  source: { kind: "common practice" },
  why: "An order leaves in one delivery. With two addresses on its sheets half of it could go to the wrong door.",
  wordings: {
    differs: {
      says: "The ship-to address has “{typed}” here and “{usual}” on other sheets of this order.",
      fix: "Confirm which one is right.",
    },
  },
  passing: [
    { shows: "one address", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "“same as bill-to” and the same address in full",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1, { shipSame: false, shipTo: billTo })]),
    },
    {
      shows: "“same as bill-to” beside a bill-to address that is asked about already",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { billTo: { ...billTo, postcode: "60670" } })]),
    },
    {
      shows: "half an address, which has a check of its own",
      given: ({ deviceAt, plate }) =>
        subject([
          plate(),
          deviceAt(1, { shipSame: false, shipTo: { name: "Larkspur Library", city: "Chicago" } }),
        ]),
    },
    {
      shows: "a sheet without an address",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1, { shipSame: false })]),
    },
  ],
  failing: [
    {
      shows: "one sheet for the site",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1), deviceAt(2, toSite)]),
      wording: "differs",
      says: "The ship-to address has “9 Quarry Street, 60618” here and “48 Foundry Row, 60607” on other sheets of this order.",
    },
    {
      shows: "“same as bill-to” on one sheet only",
      given: ({ deviceAt, plate }) => subject([plate(toSite), deviceAt(1, toSite), deviceAt(2)]),
      wording: "differs",
      says: "The ship-to address has “48 Foundry Row, 60607” here and “9 Quarry Street, 60618” on other sheets of this order.",
    },
  ],
  *find({ order }, _, say) {
    const askedAlready = oddOnes(order.sheets, ({ billTo }) => soundParts(billTo)).flatMap(
      ({ sheets }) => sheets,
    );
    const others = order.sheets.filter((sheet) => !(sheet.shipSame && askedAlready.includes(sheet)));
    for (const odd of oddOnes(others, shippedTo))
      yield say(
        "differs",
        { typed: odd.typed, usual: odd.usual },
        odd.sheets.flatMap((sheet) =>
          at(
            sheet,
            ...(sheet.shipSame ? ["ship.same" as const] : odd.parts.map((part) => `ship.${part}` as const)),
          ),
        ),
      );
  },
});
