import { expect, test } from "vitest";
import { subject } from "../../src/checks/sample.ts";
import { expectedOf } from "../../src/orders/expected.ts";
import { missingOf } from "../../src/orders/missing.ts";
import type { Entry } from "../../src/trade/place.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { device, deviceAt, plate } from "../make/sample.ts";

/** What is known of the sheet for position 2 of a plate of two, of which these sheets came. */
function saysOf(sheets: readonly Sheet[], isOpen: (sheet: Sheet, place: Entry) => boolean = () => false) {
  const { order } = subject(sheets);
  const [expected] = expectedOf(missingOf(order), order, isOpen);
  return (...places: Entry[]) => places.map((place) => expected?.says.get(place));
}
const two = { gangs: 2 };
const site = { shipSame: false, shipTo: { ...device().billTo, street: "9 Quarry Street" } };
const shipping = ["ship.same", "ship.street"] as const;

test("a sheet that is still to come has what its sisters say, and its place", () => {
  const says = saysOf([plate(two), deviceAt(1, two)]);
  expect(says("order", "project", "mark", "gangs", "position", "standing")).toEqual([
    "BW-2207",
    "Larkspur Library",
    "S-104",
    "2",
    "2",
    "in-plate",
  ]);
  expect(says("contact.name", "bill.city", "finish", ...shipping)).toEqual([
    "Ines Calloway",
    "Chicago",
    "OAT",
    "yes",
    undefined,
  ]);
});

test("it has the address to which all ship, and none where one ticks the bill's and another has its own", () => {
  expect(saysOf([plate({ ...two, ...site }), deviceAt(1, { ...two, ...site })])(...shipping)).toEqual([
    undefined,
    "9 Quarry Street",
  ]);
  expect(saysOf([plate(two), deviceAt(1, { ...two, ...site })])(...shipping)).toEqual([undefined, undefined]);
});

test("it has nothing of what they say in two ways, or of what is asked about; capitals and blanks make no other way", () => {
  const [one, other] = [plate(two), deviceAt(1, { ...two, finish: "CHK", project: " larkspur  library " })];
  expect(saysOf([one, other])("finish", "project")).toEqual([undefined, "Larkspur Library"]);
  expect(saysOf([one, { ...other, order: "P.O. BW 2207" }])("order")).toEqual(["BW-2207"]);
  expect(saysOf([one, { ...other, project: "Larkspur-Library" }])("project")).toEqual([undefined]);
  const isOpen = (sheet: Sheet, place: Entry): boolean => sheet.id === other.id && place === "project";
  expect(saysOf([one, other], isOpen)("order", "project")).toEqual(["BW-2207", undefined]);
});

test("what its own station leaves open, the other sheets of the order tell", () => {
  const silent = { ...two, contact: {} };
  const elsewhere = deviceAt(1, { id: "1/8", mark: "T-1", finish: "CHK" });
  const says = saysOf([plate(silent), deviceAt(1, silent), elsewhere]);
  expect(says("contact.name", "finish", "mark")).toEqual(["Ines Calloway", "OAT", "S-104"]);
});

test("a device that stands alone tells nothing of the plate beside it", () => {
  const alone = deviceAt(1, { standing: "alone", finish: "CHK", id: "1/8" });
  expect(saysOf([plate(two), deviceAt(1, two), alone])("finish")).toEqual(["OAT"]);
});
