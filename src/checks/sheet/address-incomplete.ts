import { saysSame } from "../../orders/placeholder.ts";
import { addressParts } from "../../trade/place.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { isBlank, isMissing } from "../required.ts";
import { billTo, unprinted } from "../sample.ts";

const { postcode: _postcode, ...withoutPostcode } = billTo;

export const addressIncomplete = defineSheetCheck({
  id: "address-incomplete",
  title: "Parts of an address are missing",
  severity: "stops",
  waivable: true,
  source: { kind: "common practice" },
  why: "An invoice or a parcel with half an address comes back.",
  wordings: {
    bill: {
      says: "The bill-to address is not complete; not filled in: {fields}.",
      fix: "Fill in the whole address.",
    },
    ship: {
      says: "The ship-to address is begun but not complete; not filled in: {fields}.",
      fix: "Fill in the whole address, or clear it and ship to the bill-to address.",
    },
  },
  passing: [
    { shows: "a whole address", given: ({ plate }) => plate() },
    {
      shows: "a form that does not ask for the ZIP",
      given: ({ device }) => unprinted(device({ billTo: withoutPostcode }), "bill.postcode"),
    },
    { shows: "a blank sheet, which has a check of its own", given: ({ blankDevice }) => blankDevice() },
  ],
  failing: [
    {
      shows: "no ZIP",
      given: ({ device }) => device({ billTo: withoutPostcode }),
      wording: "bill",
      says: "The bill-to address is not complete; not filled in: “Bill to: ZIP or postal code”.",
    },
    {
      shows: "no address at all",
      given: ({ device }) => device({ billTo: {} }),
      wording: "bill",
      says: "The bill-to address is not complete; not filled in: “Bill to: company”, “Bill to: street”, “Bill to: city”, “Bill to: state” and “Bill to: ZIP or postal code”.",
    },
    {
      shows: "a ship-to of a company and a city",
      given: ({ device }) =>
        device({ shipSame: false, shipTo: { name: "Larkspur Library", city: "Chicago" } }),
      wording: "ship",
      says: "The ship-to address is begun but not complete; not filled in: “Ship to: street”, “Ship to: state” and “Ship to: ZIP or postal code”.",
    },
  ],
  *find(sheet, _catalogue, say) {
    if (isBlank(sheet)) return;
    const shipped = addressParts.flatMap((part) => sheet.shipTo[part] ?? []);
    // "Same" for an address has a check of its own.
    const shipBegun = !sheet.shipSame && !shipped.every(saysSame);
    for (const which of ["bill", ...(shipBegun ? (["ship"] as const) : [])] as const) {
      const missing = addressParts
        .map((part) => `${which}.${part}` as const)
        .filter((place) => isMissing(sheet, place));
      if (missing.length > 0)
        yield say(
          which,
          { fields: missing.map((place) => `“${labelOf(sheet, place)}”`) },
          at(sheet, ...missing),
        );
    }
  },
});
