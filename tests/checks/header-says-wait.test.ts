import { expect, test } from "vitest";
import { headerSaysWait } from "../../src/checks/sheet/header-says-wait.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";

const told = (sheet: ReturnType<typeof device>): string[] =>
  [...headerSaysWait.find(sheet, catalogue)].map(
    ({ wording, spots }) => `${wording} ${spots.map(({ place }) => place).join(" ")}`,
  );

// Common practice, no source. Each says that the order has to wait, and is no more than a part of the name behind it.
test.each([
  ["hold", "Stronghold"],
  ["HOLD", "Holding Hall"],
  ["On hold", "Larson Hold"],
  ["Larkspur Library ON HOLD!", "Larkspur Library, on Holden Street"],
  ["Hold for approval", "Hold Fortress"],
  ["HOLD UNTIL 9/1", "Castle Hold until 1490"],
  ["hold till Monday", "Hold Tillage"],
  ["Hold pending PO", "Household pending"],
  ["Do not make", "Do Nothing Inn"],
  ["DON'T START", "We don't stop"],
  ["not yet", "Forget Me Not Yet"],
  ["Not for construction", "Not Forgotten Trust"],
  ["Larkspur Library (not final)", "Not Finally Lost House"],
  ["Larkspur Library not approved", "Knot Approved Ropes"],
  ["Draft", "Draft House"],
  ["PRELIM", "Old Draft"],
  ["Larkspur – PRELIMINARY", "Preliminary Court Annex"],
  ["cancelled", "Cancelled Stamps Museum"],
  ["Canceled", "Uncanceled"],
  ["For quote only", "For Quotes"],
  ["for review", "Room for Review"],
  ["Awaiting PO", "The Awaiting Room"],
  ["Larkspur; subject to approval", "A Subject to Paint"],
  ["TEST", "Test Street Lofts"],
  ["Larkspur Library - sample", "Sample Gates House"],
  ["Test order", "Contest Order Hall"],
  ["Larkspur (training job)", "Larkspur Training Centre"],
  ["Trial run", "Trial Court"],
  ["Demo project", "Demo Kitchen"],
  ["Larkspur - bid", "Bidwell House"],
  ["Larkspur Library (old)", "Old Larkspur Library"],
  ["Larkspur, copy", "Larkspur Copy Centre"],
  ["Larkspur Library TEST", "LARKSPUR CRASH TEST"],
  ["Larkspur Library - not started", "Nothing Started House"],
  ["not an order", "Not Another Orderly"],
  ["will call", "Will Callahan Hall"],
  ["Will follow by mail", "Good Will follow"],
])("the project “%s” has to wait, and “%s” is a name", (waits, name) => {
  expect(told(device({ project: waits }))).toEqual(["waits project"]);
  expect(told(device({ project: name }))).toEqual([]);
});

test.each([
  ["will call", "Goodwill Call Centre"],
  ["WILL CALL, dock 2", "Will Callahan Street"],
  ["pick up", "Pick Upton Road"],
  ["Pickup", "Toothpick up"],
  ["for pick-up by our van", "Pick--up"],
  ["Hold for driver", "Household Forge"],
  ["hold at dock", "Hold Attic Lane"],
  ["Call before delivery", "Recall Before"],
  ["call when ready", "Call Whence"],
  ["9 Quarry Street, call first", "Call Firstly"],
])("to “%s” nothing can be sent, and “%s” is an address", (fetched, street) => {
  const sentTo = (to: string) =>
    told(device({ shipSame: false, shipTo: { ...device().billTo, street: to } }));
  expect(sentTo(fetched)).toEqual(["fetched ship.street"]);
  expect(sentTo(street)).toEqual([]);
});

test("an address that the tick leaves out is not looked at, but for whose it is", () => {
  const shipTo = { ...device().billTo, name: "Hold for approval", street: "Will call" };
  expect(told(device({ shipTo }))).toEqual(["waits ship.name"]);
  expect(told(device({ shipTo, shipSame: false }))).toEqual([
    "waits ship.name",
    "fetched ship.name",
    "fetched ship.street",
  ]);
});

test.each([
  ["S-104 spare", "mark", "S-104 Sparehouse"],
  ["spare S-104", "mark", "Sparrow 104"],
  ["S-104 (spare)", "mark", "S-104 (lobby)"],
  ["SPARE", "mark", "SP-1"],
  ["S-104 SPARE 2", "mark", "S-104B"],
  ["S-104-old", "mark", "S-104 Oldham wing"],
  ["S-104 copy", "mark", "S-104 copy room"],
  ["S-104 copy of S-103", "mark", "S-104 old library"],
  ["S-104 spare for S-103", "mark", "S-104 extra large gym"],
  ["S-104 dup", "mark", "S-104 Duplex"],
  ["S-104 duplicate", "mark", "D-104"],
  ["S-104 same", "mark", "S-104 Samet"],
  ["S-104 alt", "mark", "S-104 Altar"],
  ["S-104 alternate 2", "mark", "S-104 north"],
  ["S-104 optional", "mark", "S-104 Optics lab"],
  ["S-104 EXISTING", "mark", "EX-104"],
  ["S-104 not used", "mark", "S-104 notch"],
  ["S-104 NIC", "mark", "S-104 Nicosia"],
  ["S-104 (N.I.C.)", "mark", "NIC-104"],
  ["S-104 by others", "mark", "S-104 by door"],
  ["future", "mark", "Futura 4"],
  ["S-104 FUTURE", "mark", "S-104 future lab"],
  ["S-104 draft", "waits", "S-104 Drafting room"],
  ["S-104 TBC", "waits", "S-104 TB 2"],
  ["S-104 test", "waits", "S-104 testing bay"],
  ["S-104 void", "waits", "S-104 V"],
  ["S-104 HOLD", "waits", "S-104 Holden"],
])("the station “%s” is asked about (%s), and “%s” is a station", (asked, wording, mark) => {
  expect(told(device({ mark: asked }))).toEqual([`${wording} mark`]);
  expect(told(device({ mark }))).toEqual([]);
});

test.each([
  ["BW-2207 void", "BW-2207 V"],
  ["BW-2207 (copy)", "BW-2207 C"],
  ["BW-2207-3 draft", "BW-2207-D"],
  ["PO 4512 reorder", "PO 4512 R"],
  ["4512 revised", "4512 Rev 1"],
  ["HOLD 4512 - hold", "HOLD-4512"],
])("the number “%s” has to wait, and “%s” is a number", (waits, number) => {
  expect(told(device({ order: waits }))).toEqual(["waits order"]);
  expect(told(device({ order: number }))).toEqual([]);
});
