import { deflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { linesShown } from "../../../src/reading/page/plain-look.ts";
import type { Entries } from "../../make/odd-pdf.ts";
import { drawn, helvetica, lookOf } from "./made-form.ts";

const shown = (content: string, entries?: Entries, size: [number, number] = [150, 40]) =>
  linesShown(lookOf(content, entries), size);

/** Such a drawing with the word LOBBY, which is set in some way, or stands elsewhere. */
const lobby = (setting: string, at = "2 15 Td"): string => drawn(`${setting} ${at} (LOBBY) Tj`);
/** With two clips, one of which ends four points farther from the left. */
const narrower = (at: string): string => lobby("", at).replace("q", "q 5 1 144 38 re W n");

test("a drawing shows its lines, from above", () => {
  expect(shown(lobby(""))).toEqual(["LOBBY"]);
  expect(shown(drawn("2 25 Td (MAIN) Tj 0 -10 Td (LOBBY) Tj"))).toEqual(["MAIN", "LOBBY"]);
  expect(shown(drawn("9 TL 2 25 Td (MAIN) Tj T* (LOBBY) Tj"))).toEqual(["MAIN", "LOBBY"]);
  expect(shown(drawn("2 15 Td () Tj"))).toEqual([]);
  expect(shown("")).toEqual([]);
  expect(shown("1 1 0 0 re W n")).toEqual([]);
});

// Helvetica's advances (Adobe's metrics) make LOBBY 33.35 points wide. A line reaches 7.3 points up and 2.1 down.
describe("a text is seen", () => {
  test.each<[string, string, boolean]>([
    ["in a dark grey", lobby("0.3 g"), true],
    ["not in a paler one", lobby("0.31 g"), false],
    ["in a dark red", lobby("0.3 0 0 rg"), true],
    ["not in a paler blue", lobby("0 0 0.31 rg"), false],
    ["not in a colour that is none", lobby("-0.1 g"), false],
    ["not in a colour of words", lobby("/A g"), false],
    ["in black where no colour is set", lobby("").replace("0 g", ""), true],
    ["in black as soon as the kind of colour is grey", lobby("1 g /DeviceGray cs"), true],
    ["in black of one part", lobby("/DeviceGray cs 0 sc"), true],
    ["in black of one part, as the colour before it", lobby("0 g 0 sc"), true],
    ["in black as soon as the kind of colour is another", lobby("1 g /DeviceRGB cs"), true],
    ["in black of three parts", lobby("/DeviceRGB cs 0 0 0 sc"), true],
    ["not in a colour of three parts that gives one", lobby("/DeviceRGB cs 0 sc"), false],
    ["in black of as many parts as the colour before it", lobby("0 0 0 rg 0 0 0 sc"), true],
    ["not in a grey where the colour before it has three parts", lobby("0 0 0 rg 0 sc"), false],
    ["not in a pattern", lobby("/Pattern cs"), false],
    ["in six points", lobby("/Helv 6 Tf"), true],
    ["not in fewer", lobby("/Helv 5.9 Tf"), false],
    ["not in a font that is not there", lobby("/F 10 Tf"), false],
    ["at the left edge", lobby("", "0.98 15 Td"), true],
    ["from corner to corner where nothing is clipped", "BT /Helv 10 Tf 0 2.1 Td (LOBBY) Tj ET", true],
    ["within a clip that has no other sides as another", narrower("4.99 3.09 Td"), true],
    ["not to the left of one of two clips", narrower("4.97 3.09 Td"), false],
    ["within a clip by the other rule", lobby("").replace("W", "W*"), true],
    ["not beyond it", lobby("", "0.97 15 Td"), false],
    ["at the right edge", lobby("", "115.66 15 Td"), true],
    ["not beyond it on the right", lobby("", "115.68 15 Td"), false],
    ["at the lower edge", lobby("", "2 3.09 Td"), true],
    ["not below it", lobby("", "2 3.07 Td"), false],
    ["at the upper edge", lobby("", "2 31.71 Td"), true],
    ["not above it", lobby("", "2 31.73 Td"), false],
    ["where it is put upright", lobby("", "1 0 0 1 2 15 Tm"), true],
    ["not where it is put beyond the edge", lobby("", "1 0 0 1 115.68 15 Tm"), false],
    ["at the edge where it is put", lobby("", "1 0 0 1 115.66 15 Tm"), true],
    ["not where it leans", lobby("", "1 0 0.1 1 2 15 Tm"), false],
    ["with no space between its letters", lobby("0 Tc 0 Tw 0 Ts 0 Tr 100 Tz"), true],
    ["not with space between its letters", lobby("0.1 Tc"), false],
    ["not narrower than it is", lobby("99 Tz"), false],
    ["not outlined", lobby("1 Tr"), false],
  ])("%s", (_, content, is) => {
    expect(shown(content)).toEqual(is ? ["LOBBY"] : undefined);
  });

  test.each<[string, string, string[] | undefined]>([
    ["nine tenths of its size below another", "2 25 Td (A) Tj 0 -9 Td (B) Tj", ["A", "B"]],
    ["not nearer", "2 25 Td (A) Tj 0 -8.9 Td (B) Tj", undefined],
    ["not above another", "2 15 Td (A) Tj 0 10 Td (B) Tj", undefined],
    ["not behind another", "2 15 Td (A) Tj (B) Tj", undefined],
    ["not in another size than the line before", "2 25 Td (A) Tj 0 -10 Td /Helv 9 Tf (B) Tj", undefined],
  ])("%s", (_, text, lines) => {
    expect(shown(drawn(text))).toEqual(lines);
  });

  test("only in letters that every font of forms draws alike", () => {
    expect(shown(drawn("2 15 Td (A-Z & 0_9 ~) Tj"))).toEqual(["A-Z & 0_9 ~"]);
    for (const other of ["'", "`", "\\351", "\\t"])
      expect(shown(drawn(`2 15 Td (A${other}) Tj`))).toBeUndefined();
  });
});

test.each([
  ["is not ended", lobby("").replace(" ET", "")],
  ["ends within a text", "BT /Helv 10 Tf 2 15 Td (LOBBY) Tj"],
  ["ends within an area", `${lobby("")} 0 0 9 9 re`],
  ["ends before it is clipped", `${lobby("")} 0 0 9 9 re W`],
  ["has two areas at once", lobby("").replace("re", "re 1 1 148 38 re")],
  ["clips by no area", `W ${lobby("")}`],
  ["clips within a text", lobby("1 1 148 38 re W n")],
  ["clips by no number, and shows nothing", "/A 1 148 38 re W n"],
  ["clips by an area of less than no width, and shows nothing", "149 1 -148 38 re W n"],
  ["clips by an area of less than no height, and shows nothing", "1 39 148 -38 re W n"],
  ["brings back what was kept, within a text", "q BT /Helv 10 Tf 2 15 Td (LOBBY) Tj Q ET"],
  ["is put somewhere before it is begun", "/Helv 10 Tf 1 0 0 1 2 15 Tm (LOBBY) Tj ET"],
  ["moves by no number", "BT /A 1 Td ET"],
  ["has lines of no number", lobby("/A TL")],
  ["shows a name", lobby("").replace("(LOBBY)", "/LOBBY")],
  ["is begun within a text", lobby("BT")],
  ["is ended where none is", lobby("").replace("BT", "BT ET ET BT")],
  ["clips by what is no number", lobby("").replace("1 1 148 38 re", "/A 1 148 38 re")],
  ["brings back what was not kept", lobby("").replace("q", "")],
  ["keeps something within a text", lobby("q")],
  ["fills an area", lobby("").replace("W n", "f")],
  ["has an area that is neither drawn nor clipped with", lobby("").replace("W n", "")],
  ["clips with an area of less than nothing", lobby("").replace("1 1 148", "149 1 -148")],
  ["is marked as something else", lobby("").replace("/Tx", "/OC")],
  ["has a comment", `${lobby("")} % x`],
  ["draws a picture", lobby("").replace("q ", "q /X Do ")],
])("a drawing that %s shows nobody knows what", (_, content) => {
  expect(shown(content)).toBeUndefined();
});

test("what was set while `q` kept it is back at `Q`", () => {
  const twice = (first: string, then: string): string => lobby("").replace("q ", `${first} q ${then} Q q `);
  expect(shown(twice("", "0 0 9 9 re W n"))).toEqual(["LOBBY"]);
  expect(shown(twice("0 0 9 9 re W n", ""))).toBeUndefined();
});

describe("the drawing itself", () => {
  const { Encoding, ...own } = helvetica;
  const fontWith = (entries: Entries): Entries => ({
    Resources: { Font: { Helv: { ...own, Encoding, ...entries } } },
  });
  test.each<[string, Entries, boolean]>([
    ["with a matrix that does nothing", { Matrix: [1, 0, 0, 1, 0, 0] }, true],
    ["with another matrix", { Matrix: [1, 0, 0, 1, 1, 0] }, false],
    ["without a place", { BBox: 7 }, false],
    ["that is an image", { Subtype: "Image" }, false],
    ["that can be switched off", { OC: { Type: "OCG" } }, false],
    ["that ends elsewhere than it says", { Length: lobby("").length - 1 }, false],
    ["with a font of another name", fontWith({ BaseFont: "Symbol" }), false],
    ["with a font of another kind", fontWith({ Subtype: "TrueType" }), false],
    ["with a font of other signs", fontWith({ Encoding: "MacExpertEncoding" }), false],
    ["with a font of its own signs", { Resources: { Font: { Helv: own } } }, true],
    ["without fonts", { Resources: 7 }, false],
    ["with a font in other codes", fontWith({ ToUnicode: 7 }), false],
    ["with more than fonts", { Resources: { Font: { Helv: helvetica }, ExtGState: {} } }, false],
  ])("%s is plain: %s", (_, entries, is) => {
    expect(shown(lobby(""), entries)).toEqual(is ? ["LOBBY"] : undefined);
  });

  test("may be packed as most are, and not otherwise", () => {
    const packed = (bytes: Uint8Array, Filter: string | string[]) =>
      linesShown(lookOf(bytes, { Filter, Length: bytes.length }), [150, 40]);
    const flate = deflateSync(lobby(""));
    expect(packed(flate, "FlateDecode")).toEqual(["LOBBY"]);
    expect(packed(flate, ["FlateDecode"])).toEqual(["LOBBY"]);
    const digits = Buffer.from(`${Buffer.from(lobby("")).toString("hex")}>`);
    expect(packed(digits, "ASCIIHexDecode")).toBeUndefined();
    expect(packed(digits, "Unknown")).toBeUndefined();
  });

  test("is as large as the field, as far as programs round", () => {
    expect(shown(lobby(""), {}, [150.01, 39.99])).toEqual(["LOBBY"]);
    expect(shown(lobby(""), {}, [150.03, 40])).toBeUndefined();
    expect(shown(lobby(""), {}, [150, 39.97])).toBeUndefined();
  });

  test("has 20,000 bytes at most", () => {
    const long = (bytes: number): string => lobby("").padEnd(bytes);
    expect([20_000, 20_001].map((bytes) => shown(long(bytes)))).toEqual([["LOBBY"], undefined]);
  });
});
