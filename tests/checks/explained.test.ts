import { expect, test } from "vitest";
import { explained } from "../../src/checks/explained.ts";
import { everyCheck } from "../../src/checks/run.ts";
import { catalogue } from "../make/config.ts";

test("a check is told with what it finds in its examples, and what passes", () => {
  expect(explained("several-orders", catalogue)).toEqual({
    id: "several-orders",
    title: "A letter that brings sheets of several orders",
    severity: "notes",
    why: expect.stringContaining("Each order is checked and made by itself."),
    source: "house",
    finds: [
      {
        shows: "two orders",
        says: "This letter brings sheets of 2 orders: BW-2207 and BW-3110. Each is answered for by itself.",
        fix: "Nothing to do if these numbers are right.",
      },
      {
        shows: "an order, and sheets without a number",
        says: "This letter brings sheets of 2 orders: BW-2207 and one without a number. Each is answered for by itself.",
        fix: "Nothing to do if these numbers are right.",
      },
    ],
    passes: ["one order"],
  });
});

test("a standard is told by its name, and what a maker has nothing to show by is left out", () => {
  expect(explained("character-not-cuttable", catalogue)?.source).toBe(
    "Unicode Standard Annex #15 (normalization forms)",
  );
  const [finish] = catalogue.finishes;
  const uniform = { ...catalogue, finishes: finish === undefined ? [] : [finish] };
  expect(explained("red-body", catalogue)?.finds).not.toEqual([]);
  expect(explained("red-body", uniform)?.finds).toEqual([]);
});

test("every check is found, and nothing else", () => {
  for (const { id } of everyCheck) expect(explained(id, catalogue)).toMatchObject({ id });
  expect(explained("no-such-check", catalogue)).toBeUndefined();
});
