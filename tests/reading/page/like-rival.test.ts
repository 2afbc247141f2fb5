import { describe, expect, test } from "vitest";
import { blurred, type Ink } from "../../../src/reading/page/ink.ts";
import { likeItself, moreLikeRival } from "../../../src/reading/page/like-rival.ts";
import { draw, type Placed, setLine } from "../../../src/reading/page/set-line.ts";
import { glyphs } from "./drawn.ts";

/** A letter of a line that a program has drawn. */
interface Case {
  /** What is drawn, and which of its characters is looked at. */
  readonly drawn: string;
  readonly at?: number;
  /** What the line holds there. The letter itself, if absent. */
  readonly held?: string;
  readonly rivals?: string;
  /** How far it is drawn from where it should be, in pixels. */
  readonly off?: readonly [x: number, y: number];
  /** The size of the font across, of the line and as it is drawn. */
  readonly across?: number;
  readonly drawnAcross?: number;
  readonly width?: number;
  readonly height?: number;
  readonly x?: number;
  readonly y?: number;
}

function made({
  drawn,
  at = 0,
  held = drawn[at],
  rivals = "",
  off = [0, 0],
  across = 20,
  drawnAcross = 20,
  width = 40,
  height = 24,
  x = 6,
  y = 20,
}: Case) {
  const setting = { x, y, across, up: 20 };
  const area: Ink = { width, height, dark: new Float32Array(width * height) };
  const line = setLine(drawn, glyphs) ?? [];
  const seen = blurred(draw(line, { ...setting, across: drawnAcross, x: x + off[0], y: y + off[1] }, area));
  const own = line[at];
  const glyph = glyphs.get(held ?? "");
  if (own === undefined || glyph === undefined) throw new Error("no letter");
  const others = [...rivals].flatMap((one) => glyphs.get(one) ?? []);
  const placed: Placed = { ...own, glyph, rivals: () => others };
  return { seen, placed, setting };
}
// Measured. They tell letters apart by hundredths, so that whoever changes them looks at tests/bench/pages.ts.
describe("how like itself a letter is", () => {
  test.each<[string, Case, number]>([
    ["where it should be", { drawn: "B" }, 0.9928],
    ["half a pixel to the right", { drawn: "B", off: [0.5, 0] }, 0.9942],
    ["three quarters to the right", { drawn: "B", off: [0.75, 0] }, 1],
    ["three quarters to the left, half a pixel lower", { drawn: "B", off: [-0.75, 0.5] }, 1],
    ["half a pixel higher", { drawn: "B", off: [0, -0.5] }, 0.9927],
    ["two pixels to the right", { drawn: "B", off: [2, 0] }, 0.8623],
    ["far lower", { drawn: "B", off: [0, 1.5] }, 0.8951],
    ["as wide as its line", { drawn: "B", across: 24, drawnAcross: 24 }, 0.9944],
    ["as wide as its line is high", { drawn: "B", across: 24 }, 1],
    ["in a line a little wider", { drawn: "B", across: 20.3 }, 0.9965],
    ["in a line hardly wider", { drawn: "B", across: 20.1 }, 0.9943],
    ["in a line a little narrower", { drawn: "B", across: 19.7 }, 0.9963],
    ["cut at the left edge", { drawn: "B", x: -8 }, 0.9899],
    ["cut at the right edge", { drawn: "B", x: 32 }, 0.9901],
    ["cut at the upper edge", { drawn: "B", y: 8 }, 0.99],
    ["cut at the lower edge", { drawn: "B", y: 30 }, 0.9912],
    ["beyond the edge", { drawn: "B", x: 60 }, 0],
    ["where nothing is drawn", { drawn: "B", off: [0, 60] }, 0],
    ["below the edge, where something is drawn above", { drawn: "B", y: 60, off: [0, -40] }, 0],
    ["between others", { drawn: "ABC", at: 1 }, 0.994],
    ["behind others, cut", { drawn: "ABC", at: 2 }, 0.9871],
    ["if it is another", { drawn: "B", held: "8" }, 0.8877],
    ["if it is far narrower", { drawn: "I", held: "W" }, 0.4121],
    ["if it is far wider", { drawn: "W", held: "I" }, 0.8005],
  ])("%s", (_, one, like) => {
    const { seen, placed, setting } = made(one);
    expect(likeItself(seen, placed, setting)).toBeCloseTo(like, 4);
  });
});

describe("by how much more a letter is like a rival", () => {
  test.each<[string, Case, number, number]>([
    ["that it has not", { drawn: "B" }, 0.9, -0.9],
    ["if it is very like itself", { drawn: "B", rivals: "8" }, 0.96, -0.0793],
    ["that is too far from it to be looked at closely", { drawn: "B", rivals: "8" }, 0.95, -0.0693],
    ["near enough", { drawn: "B", rivals: "8" }, 0.94, -0.1112],
    [
      "near it, if it is just like itself enough",
      { drawn: "8", held: "B", rivals: "8", off: [0.5, 0.25] },
      0.951,
      0.0341,
    ],
    [
      "near it, if it is no more like itself than that",
      { drawn: "8", held: "B", rivals: "8", off: [0.5, 0.25] },
      0.95,
      0.0446,
    ],
    ["if it is less like itself", { drawn: "B", rivals: "8" }, 0.9, -0.1112],
    ["that is drawn in its place", { drawn: "8", held: "B", rivals: "8" }, 0.8, 0.1185],
    [
      "that is drawn up to half a pixel from it",
      { drawn: "8", held: "B", rivals: "8", off: [0.5, 0.25] },
      0.8,
      0.1117,
    ],
    ["that is a part of it", { drawn: "E", rivals: "F" }, 0.9, -0.0935],
    ["of several, the nearest", { drawn: "E", rivals: "FB8" }, 0.9, -0.0899],
    ["that is far narrower", { drawn: "I", held: "W", rivals: "I" }, 0.2, 0.5231],
    ["that is narrower, in the middle", { drawn: "I", held: "O", rivals: "I" }, 0.75, 0.25],
    [
      "that is narrower, and drawn in its middle",
      { drawn: "I", held: "O", rivals: "I", off: [5, 0] },
      0.75,
      0.25,
    ],
    ["that is far wider", { drawn: "W", held: "I", rivals: "W" }, 0.2, 0.1555],
    [
      "that is as wide as it is high in a wide line",
      { drawn: "ab", held: "o", rivals: "ae", across: 24 },
      0.75,
      0.0701,
    ],
    ["in a line a little wider", { drawn: "a", held: "o", rivals: "a", across: 20.2 }, 0.75, 0.1076],
  ])("%s", (_, one, like, by) => {
    const { seen, placed, setting } = made(one);
    expect(moreLikeRival(seen, placed, setting, like)).toBeCloseTo(by, 4);
  });
});
