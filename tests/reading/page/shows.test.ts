import { describe, expect, test } from "vitest";
import type { BlankWidget } from "../../../src/reading/page/blank-form.ts";
import type { Ink } from "../../../src/reading/page/ink.ts";
import { shows } from "../../../src/reading/page/shows.ts";
import { type Drawing, drawn, glyphs, put } from "./drawn.ts";
import { ink } from "./ink-rows.ts";

/** A field of 10 points, which are 20 pixels. */
const widget = (more: Partial<BlankWidget> = {}): BlankWidget => ({
  field: "a",
  box: [0, 0, 150, 15],
  kind: "text",
  manyLines: false,
  shows: new Map(),
  size: 10,
  ...more,
});

const nothing = (): Ink => ({ width: 1, height: 1, dark: new Float32Array(1) });
const isShown = (held: string, ink: Ink, more: Partial<BlankWidget> = {}): boolean =>
  shows(ink, widget(more), held === "" ? [] : [held], nothing, glyphs);

describe("a field of one line shows", () => {
  test.each([
    ["LOBBY", "LOBBY"],
    ["  LOBBY ", "LOBBY"],
    ["CONF ROOM 2", "CONF ROOM 2"],
    ["Café & Bar", "Café & Bar"],
    ["I", "I"],
    ["-", "-"],
    ["“A”, ‘B’", "“A”, ‘B’"],
    ["ONE\nTWO", "ONE TWO"],
    ["ONE \n TWO", "ONE TWO"],
    ["\nONE\n", "ONE"],
    ["", ""],
    [" ", ""],
  ])("%j where %j is drawn", (held, text) => {
    expect(isShown(held, drawn(text))).toBe(true);
  });

  test.each([
    ["LOBBY", ""],
    ["", "LOBBY"],
    ["LOBBY", "L0BBY"],
    ["LOBBY", "LOBBV"],
    ["LOBBY", "LOBBY."],
    ["LOBBY", "LOBBYS"],
    ["LOBBY 1", "LOBBY 7"],
    ["CONF ROOM", "CONFROOM"],
    ["EXIT", "EXII"],
    ["8", "3"],
    ["O", "Q"],
    ["E", "F"],
    ["e", "o"],
    ["CONFERENCE.ROOM", "CONFERENCE·ROOM"],
    ["Bar", "Ban"],
    ["hall", "ball"],
    ["Foundry", "Fonndry"],
    ["Court", "Coort"],
    ["Wes", "Wen"],
    ["I", "-"],
    ["A B", "A.B"],
  ])("%j not where %j is drawn", (held, text) => {
    expect(isShown(held, drawn(text))).toBe(false);
  });

  test.each<[string, Drawing, boolean]>([
    ["in a smaller size", { across: 14 }, true],
    ["in a larger size", { across: 23 }, true],
    ["as small as can be read", { across: 5 }, true],
    ["so small that it is dots", { across: 4 }, false],
    ["a little narrower", { across: 18, up: 20 }, true],
    ["far too narrow", { across: 14, up: 20 }, false],
    ["far too wide", { across: 26, up: 18 }, false],
    ["elsewhere in the field", { x: 150 }, true],
    ["in pale ink", { strong: 0.5 }, true],
    ["in ink that nobody sees", { strong: 0.25 }, false],
    ["half a pixel to the right", { x: 4.5 }, true],
    ["and something behind it", { change: put(200, 10, 206, 16, 1) }, false],
    ["and a speck behind it", { change: put(280, 20, 281, 22, 0.1) }, true],
    ["struck out", { change: put(2, 14, 132, 16, 1) }, false],
    ["struck out in thin pale ink", { change: put(2, 18, 132, 19, 0.4) }, false],
    ["struck out in white", { change: put(2, 13, 132, 16, 0, 0.2) }, false],
    ["half rubbed out", { change: put(70, 0, 132, 30, 0, 0) }, false],
    ["with a letter rubbed out", { change: put(4, 0, 20, 30, 0, 0) }, false],
    ["with a dot between its words", { change: put(50, 17, 53, 20, 1) }, false],
  ])("EXIT HALL %s: %#", (_, drawing, shown) => {
    expect(isShown("EXIT HALL", drawn("EXIT HALL", drawing))).toBe(shown);
  });

  test("what a list shows for its value", () => {
    const list = { kind: "choice", shows: new Map([["OAT", "Oatmeal"]]) } as const;
    expect(isShown("OAT", drawn("Oatmeal"), list)).toBe(true);
    expect(isShown("OAT", drawn("OAT"), list)).toBe(false);
    expect(isShown("CHK", drawn("CHK"), list)).toBe(true);
  });

  test("letters that Helvetica lacks by any ink at all", () => {
    expect([isShown("Жук", drawn("XYZ")), isShown("Жук", drawn(""))]).toEqual([true, false]);
  });

  test("a text in the size that a viewer chose", () => {
    expect(isShown("LOBBY", drawn("LOBBY"), { size: 0 })).toBe(true);
    expect(isShown("LOBBY", drawn("LOBBV"), { size: 0 })).toBe(false);
    // Of a dash nobody can tell its size, so that it is as high as fits into the field.
    expect([20, 30].map((across) => isShown("-", drawn("-", { across }), { size: 0 }))).toEqual([
      true,
      false,
    ]);
  });
});

describe("of a text that is longer than its field", () => {
  const long = "MEETING ROOM OF THE BOARD";
  test.each<[string, string, Drawing, boolean]>([
    ["the beginning shows", long, { width: 120 }, true],
    ["the beginning shows, far from the left edge", long, { width: 300, x: 150 }, true],
    ["the beginning shows in another size", long, { width: 120, across: 16 }, true],
    ["another beginning shows", "MEEDING ROOM OF THE BOARD", { width: 120 }, false],
    ["less shows than there is room for", "MEETING", { width: 120 }, false],
    // Its ink ends at pixel 94.
    ["as much shows as has room, five pixels from the edge", "MEETING", { width: 99 }, true],
    ["less shows, six pixels from the edge", "MEETING", { width: 100 }, false],
    ["another size shows in which it had room", "MEETING ROOM", { width: 300 }, false],
  ])("%s", (_, text, drawing, shown) => {
    expect(isShown(long, drawn(text, drawing))).toBe(shown);
  });
});

test("a text that reaches the edge has to end as it should, if most of its last letter is seen", () => {
  const ends = (text: string) =>
    [63, 64, 65, 66, 67, 68, 69, 70, 71, 72, 75].filter((width) => isShown("LOBBY", drawn(text, { width })));
  expect(ends("LOBBY")).toEqual([63, 64, 65, 66, 67, 68, 69, 70, 71, 72, 75]);
  expect(ends("LOBBV")).toEqual([63, 64, 65, 66, 67]);
});

test("of a text that is cut, sizes are tried in steps of a hundredth, up to three from what its height tells", () => {
  const long = "MEETING ROOM OF THE BOARD (GÄSTE) AND THE LIBRARY";
  const sizes = Array.from({ length: 25 }, (_, i) => 16.75 + i / 16);
  const found = sizes.filter((across) => isShown(long, drawn(long, { width: 250, across })));
  expect(found).toEqual(sizes.filter((size) => size >= 17 && size <= 18));
});

describe("a field of several lines shows", () => {
  const notes = { manyLines: true };
  const words = "Deliver to the rear door before nine";
  test.each<[string, string, number, boolean]>([
    ["as they stand", words, 90, true],
    ["broken anywhere", "Deliver to the\nrear door before\nnine", 90, true],
    ["broken elsewhere", "Deliver\nto the rear door\nbefore nine", 90, true],
    ["cut at the lower edge", "Deliver to the\nrear door", 52, true],
    ["cut, with room for no more than a line below", "Deliver to the\nrear door", 85, true],
    ["cut, with room for one", "Deliver to the\nrear door", 86, false],
    ["cut, with room below", "Deliver to the\nrear door", 140, false],
    ["with a word left out", "Deliver to the\ndoor before\nnine", 90, false],
    ["with another word", "Deliver to the\nreal door before\nnine", 90, false],
    ["with a line more", `${words}\nor ten`, 90, false],
    ["not at all", "", 90, false],
  ])("its words %s", (_, text, height, shown) => {
    expect(isShown(words, drawn(text, { width: 400, height }), notes)).toBe(shown);
  });

  test("its words wherever in the field they begin", () => {
    const far = { x: 600, width: 1_000, height: 90 };
    expect(isShown(words, drawn("Deliver to the\nrear door before\nnine", far), notes)).toBe(true);
  });

  test("its lines as they were typed, an empty one among them", () => {
    expect(
      isShown("Deliver to the\n\nrear door ", drawn("Deliver to the\nrear door", { height: 60 }), notes),
    ).toBe(true);
  });

  test("its lines as they were typed, though a program has set them in one", () => {
    expect(
      isShown("Deliver\n\nto the\nrear door", drawn("Deliver to the\nrear door", { height: 60 }), notes),
    ).toBe(true);
  });

  test("a line of many short words", () => {
    const letters = "a b c d e f g h i j k l m n o p q r s t";
    const broken = "a b c d e f g h i j k\nl m n o p q r s t";
    expect(isShown(letters, drawn(broken, { height: 60 }), notes)).toBe(true);
    expect(isShown(letters, drawn(broken.replace("g h", "h g"), { height: 60 }), notes)).toBe(false);
  });

  test("no line that nobody sees, though it is half as dark as the others", () => {
    const pale = drawn("Ring\ntwice", { height: 60, strong: 0.4, change: put(0, 26, 300, 60, 0, 0.6) });
    expect(isShown("Ring twice", pale, notes)).toBe(false);
    expect(isShown("Ring twice", drawn("Ring\ntwice", { height: 60, strong: 0.4 }), notes)).toBe(true);
  });

  test("letters that Helvetica lacks by any ink at all", () => {
    expect(isShown("Жук Жук", drawn("XYZ", { height: 60 }), notes)).toBe(true);
  });

  test("up to 4,000 characters", () => {
    expect(isShown(`LOBBY${" ".repeat(3_995)}EXIT`, drawn("LOBBY", { height: 200 }), notes)).toBe(true);
    expect(isShown(`LOBBY${" ".repeat(3_990)}EXIT`, drawn("LOBBY", { height: 200 }), notes)).toBe(false);
  });
});

describe("a box", () => {
  const box = { kind: "tick", state: "Yes" } as const;
  const area = { width: 40, height: 30 };
  const cross = drawn("X", area);
  const is = (held: string, ink: Ink): boolean => shows(ink, widget(box), [held], () => cross, glyphs);
  test.each<[string, string, Ink, boolean]>([
    ["that is on shows its mark", "Yes", cross, true],
    ["that is on shows its mark, paler", "Yes", drawn("X", { ...area, strong: 0.5 }), true],
    ["that is on shows none", "Yes", drawn("", area), false],
    ["that is on shows another mark", "Yes", drawn("O", area), false],
    [
      "that is on shows its mark and more",
      "Yes",
      drawn("X", { ...area, change: put(30, 2, 34, 5, 1) }),
      false,
    ],
    [
      "that is on shows its mark and a speck",
      "Yes",
      drawn("X", { ...area, change: put(30, 2, 33, 4, 1) }),
      true,
    ],
    [
      "that is on shows its mark and something pale",
      "Yes",
      drawn("X", { ...area, change: put(30, 2, 36, 8, 0.14) }),
      true,
    ],
    ["that is off shows none", "Off", drawn("", area), true],
    ["that is off shows its mark", "Off", cross, false],
    ["for another state shows none", "No", drawn("", area), true],
  ])("%s", (_, held, ink, shown) => {
    expect(is(held, ink)).toBe(shown);
  });

  test("shows its mark and six pixels that stray, three from it", () => {
    const marked = (beside: string, count = 0) =>
      ink(...Array.from({ length: 8 }, (_, y) => `${y < 4 ? "XXXX" : "...."}${y < count ? beside : "...."}`));
    const shown = (seen: Ink) => shows(seen, widget(box), ["Yes"], () => marked(""), glyphs);
    const found = [marked("..2.", 6), marked("..2.", 7), marked("22..", 6)].map(shown);
    expect(found).toEqual([true, false, true]);
  });
});
