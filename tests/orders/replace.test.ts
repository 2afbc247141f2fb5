import { expect, test } from "vitest";
import { aloneDevice, device, deviceAt, plate, without } from "../../src/checks/sample.ts";
import { withoutReplaced } from "../../src/orders/replace.ts";
import type { Sheet } from "../../src/trade/sheet.ts";

const standing = (earlier: Sheet[], ...sheets: Sheet[]) =>
  withoutReplaced(earlier, sheets).map(({ file }) => file);

test("a new sheet for a position takes the place of the old one and of no other", () => {
  const again = deviceAt(2, { id: "2/1", file: "corrected.pdf", mark: "s104" });
  expect(standing([plate(), deviceAt(1), deviceAt(2)], again)).toEqual([
    "S-104 plate.pdf",
    "S-104 pos 1.pdf",
  ]);
});

test("a sheet of another order or another station replaces nothing", () => {
  const [order, station] = [device({ order: "BW-2208" }), device({ mark: "S-105" })];
  expect(standing([device()], order, station)).toEqual(["S-104 pos 2.pdf"]);
});

test("a sheet whose mark stands in its notes is replaced by the same place with its mark", () => {
  const noted = { ...without(device(), "mark", "position"), notes: "plate S-104 pos 2 of 4" };
  expect(standing([noted], device({ id: "2/1", file: "again.pdf" }))).toEqual([]);
});

test("a sheet without a mark replaces nothing, since it may be one more of its kind", () => {
  const unmarked = without(aloneDevice(), "mark");
  expect(standing([unmarked], { ...unmarked, id: "2/1" })).toEqual(["S-110.pdf"]);
});

test("a device now said to stand alone is the one said to go into a plate that never came", () => {
  const alone = aloneDevice({ id: "2/1", mark: "S-104" });
  expect(standing([deviceAt(2)], alone)).toEqual([]);
  expect(standing([plate(), deviceAt(2)], alone)).toEqual(["S-104 plate.pdf", "S-104 pos 2.pdf"]);
});

test("two devices of a plate still to come are two", () => {
  expect(standing([deviceAt(1)], deviceAt(2, { id: "2/1" }))).toEqual(["S-104 pos 1.pdf"]);
});

test("the mended sheet takes the place of one under a mistyped order number", () => {
  const slip = deviceAt(2, { id: "2/1", order: "BW-2270" });
  const earlier = [plate(), deviceAt(1), deviceAt(3), deviceAt(4), slip];
  expect(standing(earlier, deviceAt(2, { id: "3/1" }))).toHaveLength(4);
  expect(standing(earlier, deviceAt(1, { id: "3/1" }))).toHaveLength(4);
});

test("the mended sheet takes the place of one under a mistyped mark", () => {
  const slip = deviceAt(2, { mark: "S-140" });
  expect(standing([plate(), deviceAt(1), slip], deviceAt(2, { id: "2/1" }))).toEqual([
    "S-104 plate.pdf",
    "S-104 pos 1.pdf",
  ]);
});
