import { isPlaceholder, saysSame } from "../../orders/placeholder.ts";
import { addressParts, type Place } from "../../trade/place.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { billTo, contact } from "../sample.ts";

/** S-XX and S-#: a mark whose number is still to come. */
const unnumbered = /^\W*\p{L}{1,4}\s*-?\s*(?:X{2,}|[#?_]+)\W*$/iu;

export const fieldPlaceholder = defineSheetCheck({
  id: "field-placeholder",
  title: "A field is filled with a placeholder",
  severity: "stops",
  waivable: true,
  source: { kind: "common practice" },
  why: "An x or a TBD gets a form past its required fields, and leaves the invoice, the parcel or the question without a place to go to.",
  wordings: {
    nothing: {
      says: "Not really filled in: {fields}.",
      fix: "Write what belongs there and send the sheet again.",
    },
    same: {
      says: "The ship-to address says “{typed}” and no more.",
      fix: "To ship to the bill-to address, clear it and tick “{same}”; to ship elsewhere, write the whole address.",
    },
  },
  passing: [
    { shows: "everything filled in", given: ({ plate }) => plate() },
    {
      shows: "a firm that begins like a placeholder",
      given: ({ device }) => device({ billTo: { ...billTo, name: "TBA Architects" } }),
    },
    { shows: "a short name", given: ({ device }) => device({ contact: { ...contact, name: "Bo Xu" } }) },
    {
      shows: "an order number, which has a check of its own",
      given: ({ device }) => device({ order: "TBD" }),
    },
  ],
  failing: [
    {
      shows: "an x for the contact",
      given: ({ device }) => device({ contact: { ...contact, name: "x" } }),
      wording: "nothing",
      says: "Not really filled in: “Contact name” (“x”).",
    },
    {
      shows: "a dot for the street",
      given: ({ device }) => device({ billTo: { ...billTo, street: "." } }),
      wording: "nothing",
      says: "Not really filled in: “Bill to: street” (“.”).",
    },
    {
      shows: "an address on file",
      given: ({ device }) => device({ billTo: { ...billTo, street: "On file" } }),
      wording: "nothing",
      says: "Not really filled in: “Bill to: street” (“On file”).",
    },
    {
      shows: "a project to be decided",
      given: ({ plate }) => plate({ project: "T.B.D." }),
      wording: "nothing",
      says: "Not really filled in: “Project name” (“T.B.D.”).",
    },
    {
      shows: "a mark to be decided",
      given: ({ device }) => device({ mark: "TBD" }),
      wording: "nothing",
      says: "Not really filled in: “Station mark” (“TBD”).",
    },
    {
      shows: "a mark without its number",
      given: ({ device }) => device({ mark: "S-XX" }),
      wording: "nothing",
      says: "Not really filled in: “Station mark” (“S-XX”).",
    },
    {
      shows: "a drawing to look at for the mark",
      given: ({ device }) => device({ mark: "see dwg" }),
      wording: "nothing",
      says: "Not really filled in: “Station mark” (“see dwg”).",
    },
    {
      shows: "“same” for the ship-to address",
      given: ({ device }) => device({ shipSame: false, shipTo: { name: "SAME AS BILL TO" } }),
      wording: "same",
      says: "The ship-to address says “SAME AS BILL TO” and no more.",
      fix: "To ship to the bill-to address, clear it and tick “Ship to: same as bill-to”; to ship elsewhere, write the whole address.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const { shipTo, prints } = sheet;
    const said = addressParts.filter((part) => shipTo[part] !== undefined);
    const isSame = !sheet.shipSame && said.length > 0 && said.every((part) => saysSame(shipTo[part] ?? ""));
    if (isSame && prints["ship.same"] !== undefined)
      yield say(
        "same",
        { typed: shipTo[said[0] ?? "name"] ?? "", same: labelOf(sheet, "ship.same") },
        at(sheet, "ship.same", ...said.map((part) => `ship.${part}` as const)),
      );
    const places = placeholdersOn(sheet).filter(({ place }) => !isSame || !place.startsWith("ship."));
    if (places.length > 0)
      yield say(
        "nothing",
        { fields: places.map(({ place, typed }) => `“${labelOf(sheet, place)}” (“${typed}”)`) },
        at(sheet, ...places.map(({ place }) => place)),
      );
  },
});

function placeholdersOn({
  contact,
  project,
  mark,
  billTo,
  shipTo,
  shipSame,
}: Sheet): { place: Place; typed: string }[] {
  const said: (readonly [Place, string | undefined])[] = [
    ["contact.name", contact.name],
    ["project", project],
    // An X may be a mark.
    ["mark", /^\W*x*\W*$/i.test(mark ?? "") ? undefined : mark],
    ...addressParts.map((part) => [`bill.${part}`, billTo[part]] as const),
    ...addressParts.map((part) => [`ship.${part}`, shipSame ? undefined : shipTo[part]] as const),
  ];
  return said.flatMap(([place, typed]) =>
    typed !== undefined && (isPlaceholder(typed) || (place === "mark" && unnumbered.test(typed)))
      ? [{ place, typed }]
      : [],
  );
}
