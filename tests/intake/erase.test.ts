import { expect, test } from "vitest";
import { deletedWords, planDue, sizeOf } from "../../src/intake/erase.ts";

type Erases = Parameters<typeof planDue>[0];

test.each([
  [30, ["2026-10-31T12:00:00.000Z"]],
  [365, ["2025-11-30T12:00:00.000Z"]],
  [undefined, []],
])("after %s days, to the moment, somebody's letters are old enough", async (afterDays, before) => {
  const asked: string[] = [];
  const desk = {
    clock: { now: () => new Date("2026-11-30T12:00:00Z") },
    rules: afterDays === undefined ? {} : { erasing: { afterDays } },
    store: {
      erasures: {
        due: (day: Date): Promise<string[]> => {
          asked.push(day.toISOString());
          return Promise.resolve([]);
        },
      },
    },
  } as unknown as Erases;
  expect(await planDue(desk)).toEqual({ people: 0, inTheWay: [] });
  expect(asked).toEqual(before);
});

test("whoever has one letter or one order that is old enough counts, and what is in the way is told", async () => {
  const plans: Readonly<Record<string, object>> = {
    "ines@brightwire.example": { letters: [1], orders: [], inTheWay: [] },
    "omar@oakmoor.example": { letters: [], orders: ["GC-4100"], inTheWay: [] },
    "greta@fallowmere.example": { letters: [], orders: [], inTheWay: ["FM-72"] },
  };
  const erasures = {
    due: () => Promise.resolve(Object.keys(plans)),
    plan: ({ address }: { readonly address: string }) => Promise.resolve(plans[address]),
  };
  const rules = { erasing: { afterDays: 30 } };
  const desk = { clock: { now: () => new Date(0) }, rules, store: { erasures } } as unknown as Erases;
  expect(await planDue(desk)).toEqual({ people: 2, inTheWay: ["FM-72"] });
});

test("what erasing has deleted is told, and what somebody has to look after", () => {
  const nothing = { bytes: 0, packages: [], notFound: [], isFree: true };
  expect(deletedWords(nothing)).toEqual([]);
  expect(
    deletedWords({ bytes: 7, packages: ["BW-2207"], notFound: ["LL-93", "KX-1"], isFree: false }),
  ).toEqual([
    "The bytes of 7 letters, files and answers are deleted.",
    "Deleted with them, of what was released: BW-2207.",
    "Not found in the folder of released orders; delete it where it lies: LL-93, KX-1.",
    "Somebody still reads the record, so its file is not free of it yet: the worker sees to that, or the next “burin erase”.",
  ]);
});

test("how much would be erased is told in letters and orders", () => {
  const letters = [1, 2] as unknown as Parameters<typeof sizeOf>[0]["letters"];
  const orders = ["BW-2207"] as unknown as Parameters<typeof sizeOf>[0]["orders"];
  expect(sizeOf({ letters, orders })).toBe("2 letters, 1 order");
});
