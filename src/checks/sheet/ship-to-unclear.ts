import { asCompared } from "../../orders/differ.ts";
import { addressParts } from "../../trade/place.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { isBlank, isDoubtful } from "../required.ts";
import { unprinted } from "../sample.ts";

const places = addressParts.map((part) => `ship.${part}` as const);
const site = {
  name: "Larkspur Library",
  street: "9 Alder Street",
  city: "Chicago",
  state: "IL",
  postcode: "60614",
};

export const shipToUnclear = defineSheetCheck({
  id: "ship-to-unclear",
  title: "It is not clear where to ship",
  severity: "stops",
  waivable: true,
  source: { kind: "common practice" },
  why: "Finished work must not leave for a place that was guessed.",
  wordings: {
    neither: {
      says: "No ship-to address is filled in, and “{same}” is not ticked.",
      fix: "Fill in the address, or tick the box.",
    },
    unticked: {
      says: "“{same}” is not ticked, and this form has no room for another address.",
      fix: "Tick it; to ship elsewhere, use a sheet that has a ship-to address.",
    },
    empty: {
      says: "The ship-to address is empty.",
      fix: "Fill it in, even where it is the bill-to address.",
    },
    both: {
      says: "“{same}” is ticked, but the ship-to address says “{typed}”.",
      fix: "Clear the tick or the address, whichever is wrong.",
    },
  },
  passing: [
    { shows: "the same, and no address", given: ({ device }) => device() },
    { shows: "an address of its own", given: ({ device }) => device({ shipSame: false, shipTo: site }) },
    {
      shows: "the same, and the same address once more",
      given: ({ device }) => device({ shipTo: device().billTo }),
    },
    {
      shows: "the same, and the same state by its name",
      given: ({ device }) => device({ shipTo: { ...device().billTo, state: "Illinois" } }),
    },
    {
      shows: "a form that does not ask",
      given: ({ device }) => unprinted(device({ shipSame: false }), "ship.same", ...places),
    },
    { shows: "a blank sheet, which has a check of its own", given: ({ blankDevice }) => blankDevice() },
  ],
  failing: [
    {
      shows: "no address and no tick",
      given: ({ device }) => device({ shipSame: false }),
      wording: "neither",
      says: "No ship-to address is filled in, and “Ship to: same as bill-to” is not ticked.",
    },
    {
      shows: "no tick on a form that has nothing but the tick",
      given: ({ device }) => unprinted(device({ shipSame: false }), ...places),
      wording: "unticked",
      says: "“Ship to: same as bill-to” is not ticked, and this form has no room for another address.",
    },
    {
      shows: "no address on a form that has no tick",
      given: ({ device }) => unprinted(device({ shipSame: false }), "ship.same"),
      wording: "empty",
    },
    {
      shows: "a tick beside another address",
      given: ({ device }) => device({ shipTo: site }),
      wording: "both",
      says: "“Ship to: same as bill-to” is ticked, but the ship-to address says “Larkspur Library, 9 Alder Street, Chicago, IL, 60614”.",
    },
  ],
  *find(sheet, _catalogue, say) {
    if (isBlank(sheet) || isDoubtful(sheet, "ship.same") || places.some((p) => isDoubtful(sheet, p))) return;
    const { shipTo, billTo } = sheet;
    const printed = places.filter((place) => sheet.prints[place] !== undefined);
    const hasTick = sheet.prints["ship.same"] !== undefined;
    const same = labelOf(sheet, "ship.same");
    const filled = addressParts.filter((part) => shipTo[part] !== undefined);
    const other = filled.filter((part) => asCompared(part, shipTo[part]) !== asCompared(part, billTo[part]));

    if (sheet.shipSame && other.length > 0) {
      const typed = filled.map((part) => shipTo[part]).join(", ");
      yield say(
        "both",
        { same, typed },
        at(sheet, "ship.same", ...other.map((part) => `ship.${part}` as const)),
      );
    }
    if (sheet.shipSame || filled.length > 0) return;
    if (hasTick && printed.length > 0) yield say("neither", { same }, at(sheet, "ship.same", ...printed));
    else if (hasTick) yield say("unticked", { same }, at(sheet, "ship.same"));
    else if (printed.length > 0) yield say("empty", {}, at(sheet, ...printed));
  },
});
