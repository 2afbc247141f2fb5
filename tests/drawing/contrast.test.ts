import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import { contrastRatio } from "../../src/lettering/contrast.ts";
import { maker, trade } from "../make/config.ts";
import { type OnGround, paintedOn } from "./painted.ts";

// WCAG 2.1 (W3C Recommendation of 5 June 2018): 1.4.3 for text, all of it taken as small, and 1.4.11 for what shows
// where a field is. tests/lettering holds the formula to ratios that others have published.
const least = { text: 4.5, frame: 3 };

const blanks = [trade, maker].flatMap(({ catalogue, editions }) =>
  editions.filter(({ drawn }) => drawn).map((edition) => ({ name: edition.name, edition, catalogue })),
);

const fainter = (some: readonly OnGround[], ratio: number): string[] =>
  some
    .map(({ colour, ground, at }) => ({ at, colour, ground, ratio: contrastRatio(colour, ground) }))
    .filter((one) => one.ratio < ratio)
    .map((one) => `${one.at}: ${one.colour} on ${one.ground} is ${one.ratio.toFixed(2)}`);

describe.each(blanks)("on the blank $name", ({ edition, catalogue }) => {
  test("every text stands out from its ground", async () => {
    const { texts } = await paintedOn(await blankSheet(edition, catalogue));
    expect(texts.length).toBeGreaterThan(60);
    expect(new Set(texts.map(({ ground }) => ground)).size).toBeGreaterThan(3);
    expect(fainter(texts, least.text)).toEqual([]);
  });

  test("every field's frame stands out from both of its sides", async () => {
    const { frames } = await paintedOn(await blankSheet(edition, catalogue));
    const framed = new Set(frames.map(({ at }) => at));
    expect(edition.fields.filter(({ name }) => !framed.has(name)).map(({ name }) => name)).toEqual([
      "edition",
    ]);
    expect(fainter(frames, least.frame)).toEqual([]);
  });
});

test("the frames of edition 3 did not", async () => {
  const { texts, frames } = await paintedOn(new Uint8Array(readFileSync("config/editions/device-3.pdf")));
  expect(fainter(frames, least.frame)).toContain("finish: #b4ae9f on #ffffff is 2.21");
  expect(fainter(texts, least.text)).toContain("–: #b4ae9f on #f5f3f5 is 2.00");
});
