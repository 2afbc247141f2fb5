import { expect, test } from "vitest";
import { isAsReleased, pieceKey } from "../../src/orders/piece.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, completeOrder, device, plate } from "../make/sample.ts";

test("a sheet that comes again under another name orders the same piece", () => {
  expect(pieceKey(device({ id: "7/3", file: "again.pdf", named: "again.pdf" }))).toBe(pieceKey(device()));
  expect(pieceKey(device({ mark: "s 104" }))).toBe(pieceKey(device({ mark: "S-104" })));
  const longer = (sheet: Sheet) => sheet.legends.map((one) => ({ ...one, rows: [...one.rows, ""] }));
  expect(pieceKey(device({ legends: longer(device()) }))).toBe(pieceKey(device()));
  expect(pieceKey(device({}, { "1": ["ENTRY", " "] }))).toBe(pieceKey(device()));
});

test("a piece has a short key, as records keep it", () => {
  expect(pieceKey(device())).toMatch(/^[0-9a-f]{24}$/);
});

test.each<[string, Sheet, Sheet]>([
  ["another word", device({}, { "1": ["NORTH", ""] }), device()],
  ["another finish", device({ finish: "CHK" }), device()],
  ["another lettering", device({ lettering: "MLK" }), device()],
  ["another position", device({ position: 3 }), device()],
  ["another station", device({ mark: "S-105" }), device()],
  ["another layout", device({ layouts: ["D1"] }), device()],
  ["another size of plate", plate({ gangs: 3 }), plate()],
  ["another place to ship to", device({ shipSame: false, shipTo: { city: "Gary" } }), device()],
  ["a device that stands alone", aloneDevice({ mark: "S-104" }), device()],
])("%s is another piece", (_, one, other) => {
  expect(pieceKey(one)).not.toBe(pieceKey(other));
});

test("an order is as it was released while each of its pieces is, and none is more or less", () => {
  const sheets = completeOrder();
  const pieces = sheets.map((sheet) => ({ sheet: sheet.id, key: pieceKey(sheet), engraved: false }));
  const released = { revision: 1, at: "2026-11-09T15:00:00.000Z", on: "2026-11-09", by: "Ada", pieces };
  expect(isAsReleased(sheets, released)).toBe(true);
  expect(isAsReleased(sheets.toReversed(), released)).toBe(true);
  expect(isAsReleased(sheets.slice(1), released)).toBe(false);
  expect(isAsReleased([...sheets, aloneDevice()], released)).toBe(false);
});
