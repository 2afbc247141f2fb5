import { expect, test } from "vitest";
import { countInWords, notedCounts } from "../../src/checks/noted-counts.ts";
import type { Count } from "../../src/trade/count.ts";
import { catalogue } from "../make/config.ts";
import { device, plate } from "../make/sample.ts";

const inWords = (counts: readonly Count[]) => counts.map((count) => countInWords(count, catalogue));

test.each([
  ["4 devices, 1 plate", ["4 devices", "1 plate"]],
  ["Total: 4 devices", ["4 devices"]],
  ["5 sheets in all", ["5 sheets"]],
  ["3 stations", ["3 stations"]],
  ["Total: three stations.", ["3 stations"]],
  // it may say what the device switches
  ["controls 3 stations", []],
  // it may ask for four of what is on this sheet
  ["4 devices each", []],
  ["qty 4 devices", []],
  // not where it counts something else, or something besides, or the whole
  ["qty 2 plates", ["2 plates"]],
  ["qty 4 devices, 1 plate", ["4 devices", "1 plate"]],
  ["qty 4 devices in all", ["4 devices"]],
  ["4 files", []],
  ["4 devices, 5 files", []],
  ["north wall", []],
])("on a device sheet, “%s” counts %j", (notes, counts) => {
  expect(inWords(notedCounts(device({ notes }), catalogue))).toEqual(counts);
});

test("on a plate sheet, so many plates may be asked for", () => {
  expect(notedCounts(plate({ notes: "qty 2 plates" }), catalogue)).toEqual([]);
  expect(inWords(notedCounts(plate({ notes: "qty 4 devices" }), catalogue))).toEqual(["4 devices"]);
});

test.each<[Count, string]>([
  [{ of: "device", number: 1 }, "1 device"],
  [{ of: "device", number: 2, layout: "D4" }, "2 devices of 4 buttons"],
  [{ of: "device", number: 2, layout: "D1", finish: "OAT" }, "2 devices of 1 button in Oat"],
  [{ of: "plate", number: 5, gangs: 4, finish: "OAT" }, "5 plates of 4 gangs in Oat"],
  [{ of: "plate", number: 0, gangs: 1 }, "0 plates of 1 gang"],
  [{ of: "device", number: 2, layout: "none", finish: "Mauve" }, "2 devices in Mauve"],
])("%j reads “%s”", (count, words) => {
  expect(countInWords(count, catalogue)).toBe(words);
});
