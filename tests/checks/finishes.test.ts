import { expect, test } from "vitest";
import { finishesToOffer, hasFinishMade } from "../../src/checks/finishes.ts";
import { without } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

// By the table of fixtures/trade/catalogue.yaml.
test.each<[string, Sheet, boolean | undefined]>([
  ["Oat on a plate of five", plate({ finish: "OAT", gangs: 5 }), true],
  ["Oat on a plate of six", plate({ finish: "OAT", gangs: 6 }), false],
  ["Bare tin on a plate of three", plate({ finish: "TIN", gangs: 3 }), true],
  ["Bare tin on a plate that does not say its gangs", without(plate({ finish: "TIN" }), "gangs"), true],
  ["Bare tin on a device", device({ finish: "TIN" }), false],
  // the plate of a device is another sheet's
  ["Brick on a device in a plate of four", device({ finish: "BRK", gangs: 4 }), true],
  ["Brick on a device alone", aloneDevice({ finish: "BRK" }), true],
  ["a finish that nobody makes", plate({ finish: "Mauve" }), false],
  ["no finish", without(plate(), "finish"), undefined],
  // of such a plate the gangs are at fault, not the finish
  ["Oat on a plate of nine", plate({ finish: "OAT", gangs: 9 }), undefined],
])("%s: made %j", (_name, sheet, made) => {
  expect(hasFinishMade(sheet, catalogue)).toBe(made);
});

test("a device alone has a plate of its own, which its finish has to be made for", () => {
  const finishes = catalogue.finishes.map((one) => (one.code === "BRK" ? { ...one, plates: [2, 3] } : one));
  const made = (sheet: Sheet) => hasFinishMade(sheet, { ...catalogue, finishes });
  expect([made(device({ finish: "BRK" })), made(aloneDevice({ finish: "BRK" }))]).toEqual([true, false]);
});

const offered = (sheet: Sheet) => finishesToOffer(sheet, catalogue).map(({ code }) => code);
const dark = { lettering: "INK" };

test("finishes are offered that are made for it and easy to read in its lettering", () => {
  expect(offered(plate({ ...dark, gangs: 6 }))).toEqual(["CHK"]);
  expect(offered(plate({ lettering: "MLK", gangs: 6 }))).toEqual(["SOT"]);
  expect(offered(plate({ lettering: "MLK", gangs: 1 }))).toEqual(["SOT", "SLT", "FRN", "BRK"]);
  expect(offered(without(plate({ gangs: 6 }), "lettering"))).toEqual(["CHK", "SOT"]);
});

test("for a device in a plate they are made for that plate too, for one alone for one gang", () => {
  expect(offered(device({ ...dark, gangs: 6 }))).toEqual(["CHK"]);
  expect(offered(device({ ...dark, gangs: 5 }))).toEqual(["CHK", "OAT"]);
  expect(offered(aloneDevice(dark))).toEqual(["CHK", "OAT", "HRN", "STW"]);
  // gangs that somebody filled in beside it are at fault
  expect(offered(aloneDevice({ ...dark, gangs: 6 }))).toEqual(offered(aloneDevice(dark)));
  expect(offered(without(device(dark), "gangs"))).toEqual(offered(aloneDevice(dark)));
});

test("where none is easy to read in it, the nearest to that are offered", () => {
  const only = (...codes: string[]) => ({
    ...catalogue,
    finishes: catalogue.finishes.filter(({ code }) => codes.includes(code)),
  });
  const codes = (sheet: Sheet, ...some: string[]) =>
    finishesToOffer(sheet, only(...some)).map(({ code }) => code);
  // Milk on Heron has a contrast of 2.35, on Fern of 7.22; Rust on Bare tin one of 4.06.
  expect(codes(plate({ lettering: "RST", gangs: 1 }), "TIN", "SOT")).toEqual(["TIN"]);
  expect(codes(plate({ lettering: "MLK", gangs: 3 }), "HRN", "FRN")).toEqual(["HRN"]);
  // easy to read before made for the plate
  expect(codes(device({ lettering: "MLK", gangs: 3 }), "HRN", "FRN")).toEqual(["FRN"]);
});
