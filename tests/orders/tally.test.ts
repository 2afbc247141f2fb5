import { expect, test } from "vitest";
import { isRight, tallyIn, tallyOf } from "../../src/orders/tally.ts";
import type { Count } from "../../src/trade/count.ts";
import { completeOrder, deviceAt, plate } from "../make/sample.ts";

const [one, two] = [deviceAt(1), deviceAt(2)];
const [layout = "", finish = ""] = [one.kind === "device" ? one.layouts[0] : "", one.finish];
const undecided = { ...two, layouts: [layout, "other"] };
const { finish: _, ...unfinished } = two;

test.each<[string, Count, ReturnType<typeof tallyOf>]>([
  ["devices", { of: "device", number: 2 }, { least: 2, most: 2 }],
  ["plates", { of: "plate", number: 1 }, { least: 1, most: 1 }],
  ["sheets", { of: "sheet", number: 3 }, { least: 3, most: 3 }],
  ["files", { of: "file", number: 3 }, { least: 3, most: 3 }],
  ["devices of their layout", { of: "device", layout, number: 2 }, { least: 2, most: 2 }],
  ["devices of another layout", { of: "device", layout: "other", number: 2 }, { least: 0, most: 0 }],
  ["devices of another finish", { of: "device", finish: "other", number: 2 }, { least: 0, most: 0 }],
  [
    "devices of their finish and another layout",
    { of: "device", layout: "other", finish, number: 2 },
    { least: 0, most: 0 },
  ],
  ["plates of four gangs", { of: "plate", gangs: 4, number: 1 }, { least: 1, most: 1 }],
  ["stations", { of: "station", number: 1 }, { least: 1, most: 1 }],
  ["plates of two gangs", { of: "plate", gangs: 2, number: 1 }, { least: 0, most: 0 }],
])("of a plate and two devices, %s", (_name, count, tally) => {
  expect(tallyOf(count, [plate(), one, two])).toEqual(tally);
});

test("a sheet that does not say it may be one, and so may a file that nobody has read", () => {
  expect(tallyOf({ of: "device", layout, number: 2 }, [one, undecided])).toEqual({ least: 1, most: 2 });
  expect(tallyOf({ of: "device", finish, number: 2 }, [one, unfinished])).toEqual({ least: 1, most: 2 });
  expect(tallyOf({ of: "device", number: 2 }, [one], 3)).toEqual({ least: 1, most: 4 });
});

test("nobody knows whether a sheet kept aside counts", () => {
  const aside = [{ sheet: two, beside: one, why: "again" as const }];
  expect(tallyIn({ of: "device", number: 2 }, { sheets: [plate(), one], aside })).toEqual({
    least: 1,
    most: 2,
  });
});

test.each<[Count["of"], number, boolean]>([
  ["sheet", 5, true],
  // the devices alone, or the plates
  ["sheet", 4, true],
  ["sheet", 1, true],
  ["file", 4, true],
  ["sheet", 3, false],
  ["sheet", 6, false],
  ["device", 4, true],
  ["device", 1, false],
  ["device", 5, false],
  ["plate", 1, true],
  ["plate", 4, false],
])("of a plate with its four devices, %s %i is right: %j", (of, number, right) => {
  const count = { of, number };
  expect(isRight(count, tallyOf(count, completeOrder()), completeOrder())).toBe(right);
});
