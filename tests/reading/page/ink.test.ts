import { describe, expect, test } from "vitest";
import {
  alike,
  alikeWithin,
  blurred,
  columns,
  countDark,
  extentOf,
  type Ink,
  inkedPart,
  inkOf,
  part,
  strayDark,
  strongPart,
} from "../../../src/reading/page/ink.ts";
import type { Picture } from "../../../src/reading/page/picture.ts";
import { keepShown, shownBefore } from "../../../src/reading/page/seen-before.ts";
import { isEmpty } from "../../../src/reading/page/shows.ts";

/** Ink by its rows, as tenths. */
function ink(...rows: string[]): Ink {
  const width = rows[0]?.length ?? 0;
  const dark = Float32Array.from(
    [...rows.join("")].map((tenths) => (tenths === "X" ? 1 : Number(tenths) / 10)),
  );
  return { width, height: rows.length, dark };
}
const tenths = ({ dark }: Ink): number[] => Array.from(dark, (one) => Math.round(one * 10));
const area = (left: number, top: number, right: number, bottom: number) => ({ left, top, right, bottom });

const white = 0xffffff;
/** A picture of 6 by 4 pixels, white but for some. */
function picture(...dots: readonly (readonly [x: number, y: number, colour: number])[]): Picture {
  const pixels = new Int32Array(24).fill(white);
  for (const [x, y, colour] of dots) pixels[y * 6 + x] = colour;
  return { width: 6, height: 4, pixels };
}

describe("the ink of a field", () => {
  test("is how much darker it is than its blank, 0 to 1", () => {
    const page = picture([2, 1, 0], [3, 1, 0x808080], [3, 2, 0], [5, 3, 0]);
    expect(tenths(inkOf(page, picture(), area(2, 1, 4, 3)))).toEqual([10, 5, 0, 10]);
    // On a grey ground the same black is all there can be; on black nothing shows.
    expect(tenths(inkOf(page, picture([2, 1, 0x808080], [3, 1, 0]), area(2, 1, 4, 2)))).toEqual([10, 0]);
  });

  test("is none where nothing differs, whatever differs beside it", () => {
    expect(inkOf(picture([5, 3, 0]), picture(), area(0, 0, 5, 4))).toEqual({
      none: true,
      width: 5,
      height: 4,
      dark: new Float32Array(0),
    });
    expect(inkOf(picture([5, 3, 0]), picture(), area(0, 0, 6, 4)).none).toBeUndefined();
  });

  test("counts pixels of another colour, however pale", () => {
    const pale = (colour: number) => inkOf(picture([1, 1, colour]), picture(), area(0, 0, 6, 4)).coloured;
    expect([0xf3f3f3, 0xf3f3f4, 0x00ffff].map(pale)).toEqual([1, 0, 1]);
  });

  test("has nothing of what stands right beside it or below", () => {
    const beside = inkOf(picture([1, 1, 0], [3, 1, 0], [1, 3, 0]), picture(), area(1, 1, 3, 3));
    expect([beside.coloured, tenths(beside)]).toEqual([1, [10, 0, 0, 0]]);
  });

  test("is empty up to three specks, faint or coloured", () => {
    const specks = (count: number, dark: number) => ({
      ...ink("0".repeat(9)),
      dark: new Float32Array(9).fill(dark, 0, count),
    });
    expect([specks(3, 1), specks(4, 1), specks(4, 0.125), specks(4, 0.115)].map(isEmpty)).toEqual([
      true,
      false,
      false,
      true,
    ]);
    expect([3, 4].map((coloured) => isEmpty({ ...specks(0, 0), coloured }))).toEqual([true, false]);
  });
});

test("ink reaches as far as its darker half, if anybody can see it", () => {
  expect(extentOf(ink("00000", "03860", "00400", "00000"))).toEqual({
    ...area(2, 1, 4, 3),
    peak: expect.closeTo(0.8),
  });
  expect(extentOf(ink("X"))).toEqual({ ...area(0, 0, 1, 1), peak: 1 });
  expect(extentOf(ink("00", "X0"))).toMatchObject(area(0, 1, 1, 2));
  expect(extentOf(ink("02", "20"))).toBeUndefined();
  expect(extentOf({ ...ink("00"), dark: Float32Array.from([0.3, 0.31]) })).toMatchObject(area(0, 0, 2, 1));
});

test("pixels are counted that are dark enough", () => {
  expect([0.5, 0.4].map((least) => countDark(ink("0459"), least))).toEqual([2, 3]);
});

test("rows and columns are taken from an ink as they stand", () => {
  const one = ink("1234", "5678", "9X00");
  expect(tenths(part(one, 1, 3))).toEqual([5, 6, 7, 8, 9, 10, 0, 0]);
  expect(part(one, 1, 3)).toMatchObject({ width: 4, height: 2 });
  expect(tenths(columns(one, 1, 3))).toEqual([2, 3, 6, 7, 10, 0]);
  expect(columns(one, -2, 9)).toMatchObject({ width: 4, height: 3 });
  expect(columns(one, 3, 1)).toMatchObject({ width: 0, height: 3 });
  expect(columns(one, 6, 9)).toMatchObject({ width: 0, height: 3 });
});

test("the inked part has room of three pixels, within the field", () => {
  const large = { width: 20, height: 20, dark: new Float32Array(400) };
  large.dark[8 * 20 + 9] = 0.041;
  large.dark[10 * 20 + 11] = 1;
  large.dark[0] = 0.039;
  expect(inkedPart(large)).toEqual(area(6, 5, 15, 14));
  expect(inkedPart(ink("00", "0X"))).toEqual(area(0, 0, 2, 2));
  expect(inkedPart(ink("X0000000", ...Array<string>(9).fill("00000000")))).toEqual(area(0, 0, 4, 4));
  // Its lowest row need not be its widest, and a row does not go on in the next.
  const none = Array<string>(4).fill("000000000");
  expect(inkedPart(ink(...none, "XXXX00000", "X00000000"))).toEqual(area(0, 1, 7, 6));
});

test("a part becomes as strong as ink can be", () => {
  const strong = strongPart(ink("0000", "0240", "0050"), area(1, 1, 3, 3), 0.4);
  expect(strong).toMatchObject({ width: 2, height: 2 });
  expect(tenths(strong)).toEqual([5, 10, 0, 10]);
});

test("blurring spreads a pixel over its neighbours, a quarter for itself", () => {
  const middle = blurred(ink("000", "0X0", "000"));
  expect(Array.from(middle.dark, (one) => one * 16)).toEqual([1, 2, 1, 2, 4, 2, 1, 2, 1]);
  const corners = blurred(ink("X00", "000", "00X"));
  expect(Array.from(corners.dark, (one) => one * 16)).toEqual([4, 2, 0, 2, 2, 2, 0, 2, 4]);
  // But not from where a row begins to where the one above it ends.
  const left = blurred(ink("000", "X00", "000"));
  expect(Array.from(left.dark, (one) => one * 16)).toEqual([2, 1, 0, 4, 2, 0, 2, 1, 0]);
});

test("inks are alike at whatever strength, and not where they have nothing in common", () => {
  const [one, pale, other] = [ink("0880", "0880"), ink("0440", "0440"), ink("8008", "0000")];
  expect(alikeWithin(one, pale, 0, 4)).toBeCloseTo(1);
  expect(alikeWithin(one, other, 0, 4)).toBe(0);
  expect(alikeWithin(one, ink("0800", "0800"), 0, 4)).toBeCloseTo(Math.SQRT1_2);
  expect(alikeWithin(one, ink("0800", "0800"), 0, 2)).toBeCloseTo(1);
  expect(alikeWithin(one, ink("0808", "0800"), -5, 9)).toBeLessThan(0.7);
  expect(alikeWithin(other, ink("8000", "0000"), -5, 9)).toBeCloseTo(Math.SQRT1_2);
  expect([alikeWithin(one, ink("0000", "0000"), 0, 4), alikeWithin(ink("0000", "0000"), one, 0, 4)]).toEqual([
    0, 0,
  ]);
  expect(alike(one, pale)).toBeCloseTo(1);
  expect(alike(ink("X000"), ink("0X00"))).toBeCloseTo(0.73);
  expect(alike({ ...one, none: true }, pale)).toBe(0);
  expect(alike(one, { ...pale, none: true })).toBe(0);
  // Nobody sees so pale a mark.
  expect(alike(one, ink("0220", "0220"))).toBe(0);
});

test("dark pixels stray that lie more than so far from a mark", () => {
  const mark = ink("000000", "0X0000", "000000", "000000", "000000");
  const stray = (seen: Ink) => strayDark(seen, mark, { least: 0.2, off: 2, mark: 1 });
  expect(stray(ink("222200", "222200", "222200", "222200", "000000"))).toBe(0);
  expect(stray(ink("000020", "000000", "000001", "000000", "200000"))).toBe(2);
  const half = { least: 0.5, off: 1, mark: 1 };
  expect(strayDark(ink("00005"), ink("X0000"), half)).toBe(1);
  // A row does not go on in the next.
  expect(strayDark(ink("00X", "000"), ink("000", "X00"), half)).toBe(1);
});

test("a dark pixel at the edge strays once", () => {
  const stray = (seen: Ink) => strayDark(seen, ink("000", "000"), { least: 0.2, off: 0, mark: 1 });
  expect([stray(ink("000", "X00")), stray(ink("00X", "000")), stray(ink("000", "00X"))]).toEqual([1, 1, 1]);
});

test("a mark in a corner is a mark", () => {
  const corners = (seen: string, mark: string) =>
    strayDark(ink(seen, "000", seen), ink(mark, "000", mark), { least: 0.2, off: 0, mark: 1 });
  expect([corners("X0X", "X0X"), corners("XXX", "X0X"), corners("0X0", "X0X")]).toEqual([0, 2, 2]);
});

describe("a field that was found to show its values", () => {
  const page = picture([1, 1, 0], [2, 2, 7]);
  const [field, values] = [area(1, 1, 3, 3), '["LOBBY"]'];
  test("is known again by its pixels, its values, its place and its form", () => {
    const empty = picture();
    keepShown(page, empty, 4, field, values);
    expect(shownBefore(page, empty, 4, field, values)).toBe(true);
    expect(shownBefore(picture([1, 1, 0], [2, 2, 7], [3, 3, 0]), empty, 4, field, values)).toBe(true);
    expect(shownBefore(picture([1, 1, 0], [2, 2, 8]), empty, 4, field, values)).toBe(false);
    expect(shownBefore(picture([1, 1, 1], [2, 2, 7]), empty, 4, field, values)).toBe(false);
    expect(shownBefore(page, empty, 5, field, values)).toBe(false);
    expect(shownBefore(page, empty, 4, field, "[]")).toBe(false);
    expect(shownBefore(page, picture(), 4, field, values)).toBe(false);
  });

  test("is kept for six sheets, the latest", () => {
    const empty = picture();
    for (let nth = 1; nth <= 7; nth++) keepShown(page, empty, 1, field, `${nth}`);
    const known = [1, 2, 3, 4, 5, 6, 7].filter((nth) => shownBefore(page, empty, 1, field, `${nth}`));
    expect(known).toEqual([2, 3, 4, 5, 6, 7]);
  });

  test("is not kept if it is large", () => {
    const kept = (width: number, height: number, top = 0) => {
      const large: Picture = { width, height, pixels: new Int32Array(width * height) };
      keepShown(large, large, 1, area(0, top, width, height), values);
      return shownBefore(large, large, 1, area(0, top, width, height), values);
    };
    expect([kept(200, 200), kept(40_001, 1), kept(200, 300, 100)]).toEqual([true, false, true]);
  });
});
