import { describe, expect, test } from "vitest";
import type { Ink } from "../../../src/reading/page/ink.ts";
import { type Likeness, likeness } from "../../../src/reading/page/likeness.ts";
import { setLine } from "../../../src/reading/page/set-line.ts";
import { type Drawing, drawn, glyphs, put } from "./drawn.ts";

/** How like a text in a size of 20 pixels some ink is. */
function like(held: string, ink: Ink, cut?: number): Likeness {
  const found = likeness(ink, setLine(held, glyphs) ?? [], 20, cut);
  if (found === undefined) throw new Error("there is nothing to compare");
  return found;
}

const as = (held: string, drawing: Drawing = {}): Likeness => like(held, drawn(held, drawing));

test("there is nothing to compare where there is no ink, or no letter", () => {
  expect(likeness(drawn(""), setLine("LOBBY", glyphs) ?? [], 20)).toBeUndefined();
  expect(likeness(drawn("LOBBY"), [], 20)).toBeUndefined();
});

test.each([4, 4.25, 4.5, 4.75, 150])("a text is like itself wherever in a pixel it begins: at %d", (x) => {
  const { worst, mistaken, more, ...rest } = as("LOBBY", { x });
  expect(worst).toBeGreaterThan(0.97);
  expect(mistaken).toBeLessThan(-0.03);
  expect(more).toBeLessThan(0.02);
  expect(rest).toEqual({ worstSign: 1, mistakenSmall: -1, stretch: 1, size: 20 });
});

test("a size is the form's own where pixels cannot tell them apart", () => {
  // A capital is 0.72 of a size high: 1.2 pixels of it are 1.7 of the size.
  const sizes = [19, 20, 21, 23].map((across) => as("LOBBY", { across }).size);
  expect(sizes).toEqual([20, 20, 20, expect.closeTo(23, 0)]);
});

test("a text that is narrower is told by how much", () => {
  expect(as("EXIT HALL", { across: 18, up: 20 }).stretch).toBeCloseTo(0.9, 1);
  expect(as("EXIT HALL", { across: 26, up: 20 }).stretch).toBeCloseTo(1.3, 1);
  // Of a dash nobody can tell.
  expect(as("-", { across: 26, up: 20 }).stretch).toBe(1);
});

test("signs, capitals and small letters are counted apart", () => {
  const bare = as("A. a");
  const without = (left: number, right: number) => as("A. a", { change: put(left, 0, right, 30, 0) });
  expect(bare.worstSign).toBeGreaterThan(0.95);
  expect(without(18, 24).worstSign).toBeLessThan(0.2);
  expect(without(18, 24).worst).toBeGreaterThan(0.95);
  expect(as("HALL").mistakenSmall).toBe(-1);
  expect(as("hall").mistaken).toBe(-1);
});

test("a dot between two words counts as a mark if it stands clear of both", () => {
  // An A ends at pixel 17, and the B behind it begins at 25.
  const dotted = [17, 18, 19, 20, 21, 22, 23].filter(
    (x) => as("A B", { change: put(x, 15, x + 1, 17, 1) }).more === 1,
  );
  expect(dotted).toEqual([20, 21]);
  const pale = (dark: number) => as("A B", { change: put(20, 15, 21, 17, dark) }).more;
  expect([pale(1), pale(0.99) < 0.05]).toEqual([1, true]);
  // Between the letters of a word there is none.
  expect(as("II", { change: put(9, 15, 10, 17, 1) }).more).toBeLessThan(0.1);
});

// Measured. Letters differ by hundredths, so that whoever changes a figure looks at tests/bench/pages.ts.
describe("the figures of a text", () => {
  type Figures = [
    worst: number,
    worstSign: number,
    mistaken: number,
    mistakenSmall: number,
    more: number,
    stretch: number,
    size: number,
  ];
  test.each<[string, string, string, Drawing, Figures, cut?: number]>([
    ["that is its own", "LOBBY", "LOBBY", {}, [0.9803, 1, -0.0419, -1, 0.0079, 1, 20]],
    [
      "in another size",
      "LOBBY",
      "LOBBY",
      { x: 4.3, across: 23 },
      [0.9784, 1, -0.0517, -1, 0.009, 1.0106, 22.6667],
    ],
    [
      "in pale ink, from within a pixel on",
      "LOBBY",
      "LOBBY",
      { x: 4.4, strong: 0.5 },
      [0.977, 1, -0.0424, -1, 0.0092, 1, 20],
    ],
    [
      "whose letters are all like themselves",
      "EXIT",
      "EXIT",
      { x: 4.4, strong: 0.6 },
      [0.9852, 1, -1, -1, 0.0092, 1, 20],
    ],
    ["with another letter", "LOBBY", "LOBBV", { x: 4.3 }, [0.6607, 1, -0.0436, -1, 0.0323, 1, 20]],
    [
      "with a letter that looks alike, narrower",
      "L0BBY",
      "LOBBY",
      { x: 4.3, across: 21, up: 22.5 },
      [0.6393, 1, 0.2049, -1, 1, 0.9972, 22.6667],
    ],
    ["with a letter more", "LOBBY", "LOBBYS", {}, [0.4928, 1, 0.0438, -1, 1, 1.1918, 20]],
    ["with another small letter", "hall", "ball", { x: 4.6 }, [0.9424, 1, -1, 0.0571, 0.0209, 1, 20]],
    [
      "with a small letter that is a part of another",
      "hail",
      "hall",
      {},
      [0.9578, 1, -1, -0.9578, 0.0032, 1, 20],
    ],
    [
      "with another small letter, in another size",
      "Foundry",
      "Fonndry",
      { x: 4.4, across: 18 },
      [0.8636, 1, -1, 0.1262, 0.0103, 0.9903, 18.1333],
    ],
    [
      "of one capital, wider",
      "B",
      "B",
      { x: 4.4, across: 26, up: 20 },
      [0.9817, 1, -0.0906, -1, 0.0023, 1.3846, 20],
    ],
    [
      "of another letter at the right edge, which is not cut",
      "LOBBY",
      "LOBBV",
      { width: 71 },
      [0.6551, 1, -0.0419, -1, 0.0267, 1, 20],
    ],
    [
      "of one small letter that is another",
      "h",
      "b",
      { x: 4.3 },
      [0.9296, 1, -1, 0.0654, 0.0934, 1.1429, 20],
    ],
    [
      "that is cut in a field higher than wide",
      "IIIIII",
      "IIIIII",
      { width: 25, x: 1 },
      [0.9863, 1, -0.1844, -1, 0, 1, 20],
      20,
    ],
    ["of one stroke upright", "I", "I", { across: 24, up: 26 }, [0.9906, 1, -1, -1, 0.0006, 1, 26.0571]],
    [
      "of one stroke upright, as wide as a beam",
      "I",
      "I",
      { across: 80, up: 20 },
      [0.7794, 1, 0.0603, -1, 0.4914, 1, 20],
    ],
    [
      "of one stroke across",
      "-",
      "-",
      { x: 4.4, across: 26, up: 20 },
      [1, 0.9756, -0.9721, -1, 0.0329, 1, 20],
    ],
    [
      "of one long stroke across",
      "—",
      "—",
      { x: 4.4, across: 24, up: 28 },
      [1, 0.9809, -0.9731, -1, 0.0377, 1, 20],
    ],
    [
      "of one long stroke across, as high as a beam",
      "—",
      "—",
      { x: 4.4, up: 60 },
      [1, 0.9024, -0.9024, -1, 1, 1, 20],
    ],
    ["of one dot", ".", ".", { across: 40 }, [1, 0.8857, -0.8857, -1, 0.2177, 1, 20]],
    ["of signs in other places", "A-B.", "A.B-", { x: 4.4 }, [0.6795, 0.0183, -1, -1, 1, 1.0362, 20]],
    ["of other signs", "(A)", "[A]", { x: 4.4 }, [0.9929, 0.8924, -0.2287, -1, 0.0723, 0.9103, 20]],
    [
      "with a stroke between its words",
      "A B",
      "A B",
      { change: put(18, 10, 22, 12, 0.5) },
      [0.9923, 1, -1, -1, 1, 1, 20],
    ],
    [
      "with a dot between its words",
      "AB C",
      "AB C",
      { change: put(33, 15, 34, 17, 1) },
      [0.9899, 1, -0.0806, -1, 1, 1, 20],
    ],
    [
      "with a dot between two wide letters",
      "IIII",
      "IIII",
      { across: 60, up: 25, change: put(53, 15, 55, 18, 1) },
      [0.9967, 1, -1, -1, 0.0182, 2.418, 24.6857],
    ],
    [
      "that is cut",
      "MEETING ROOM",
      "MEETING ROOM",
      { width: 100 },
      [0.9901, 1, -0.0659, -1, 0.0081, 1, 20],
      20,
    ],
    [
      "that is cut, in another size",
      "MEETING ROOM",
      "MEETING ROOM",
      { width: 100, across: 18 },
      [0.9826, 1, -0.2024, -1, 0.0045, 1.0385, 17.3333],
      18,
    ],
    [
      "that is cut, higher",
      "MEETING ROOM",
      "MEETING ROOM",
      { width: 100, up: 24 },
      [0.9904, 1, -0.0725, -1, 0.0033, 0.8333, 24],
      20,
    ],
    [
      "that is cut, at the left and upper edge",
      "MEETING ROOM",
      "MEETING ROOM",
      { width: 100, x: 0, up: 30 },
      [0.9871, 1, -0.267, -1, 0.0024, 0.6522, 30.6667],
      20,
    ],
    [
      "that is cut, and begins far from the edge",
      "MEETING ROOM",
      "MEETING ROOM",
      { width: 140, x: 40.4 },
      [0.965, 1, -0.0651, -1, 0.0134, 1, 20],
      20,
    ],
    [
      "that is cut, with other letters",
      "MEETING ROOM",
      "MEEDING RO0M",
      { width: 120 },
      [0.3848, 1, -0.0826, -1, 1, 1, 20],
      20,
    ],
    [
      "that is not as long as it should be",
      "MEETING ROOM",
      "MEETING",
      {},
      [0, 1, -0.0659, -1, 0.0092, 1, 20],
      20,
    ],
    [
      "that is cut within its last letter, which is another",
      "HHO",
      "HHI",
      { width: 48 },
      [0.5228, 1, -1, -1, 0.0012, 1, 20],
      20,
    ],
    [
      "that is cut right behind its last letter, which is another",
      "HHO",
      "HHI",
      { width: 49 },
      [0.5225, 1, -1, -1, 0.0014, 1, 20],
      20,
    ],
  ])("%s", (_, held, text, drawing, figures, cut) => {
    const { worst, worstSign, mistaken, mistakenSmall, more, stretch, size } = like(
      held,
      drawn(text, drawing),
      cut,
    );
    const found = [worst, worstSign, mistaken, mistakenSmall, more, stretch, size];
    expect(found.map((one) => Math.round(one * 10_000) / 10_000)).toEqual(figures);
  });
});
