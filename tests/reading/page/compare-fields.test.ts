import { describe, expect, test } from "vitest";
import type { ReadField } from "../../../src/reading/form.ts";
import type { BlankPage, BlankWidget } from "../../../src/reading/page/blank-form.ts";
import { differingFields } from "../../../src/reading/page/compare-fields.ts";
import type { Picture } from "../../../src/reading/page/picture.ts";
import { drawn, glyphs } from "./drawn.ts";

/** A page of 150 by 30 points, 300 by 60 pixels: a word in its upper half, below a line, and one in its lower. */
function picture(upper: string, lower: string, line = 0): Picture {
  const pixels = new Int32Array(300 * 60);
  for (const [i, text] of [upper, lower].entries())
    drawn(text).dark.forEach((dark, at) => {
      pixels[i * 9_000 + at] = Math.round(255 * (1 - dark)) * 0x010101;
    });
  pixels.fill(0, line * 300, (line + 1) * 300);
  return { width: 300, height: 60, pixels };
}
const widget = (field: string, bottom: number, more: Partial<BlankWidget> = {}): BlankWidget => ({
  field,
  box: [10, bottom, 160, bottom + 15],
  kind: "text",
  manyLines: false,
  shows: new Map(),
  size: 10,
  ...more,
});
/** Its fields, the second of which may be a box. Drawn anew, its line is a pixel lower; with its frames, three. */
function page(second: Partial<BlankWidget> = {}): BlankPage {
  const looks = (line: number) => ({ empty: picture("", "", line), ticked: picture("", "X", line) });
  return {
    box: [10, 20, 160, 50],
    widgets: [widget("upper", 35), widget("lower", 20, second)],
    looks: looks(0),
    redrawn: looks(1),
    framed: looks(3),
    key: undefined,
    objects: new Float32Array(0),
  };
}
const field = (name: string, values: readonly string[], more: Partial<ReadField> = {}): ReadField => ({
  name,
  kind: "text",
  values,
  ...more,
});
const fields = [field("upper", ["LOBBY"]), field("lower", ["EXIT"])];
const differing = (seen: Picture, held: readonly ReadField[] = fields, blank = page(), redrawn = false) =>
  differingFields(seen, blank, { fields: held, redrawn }, glyphs).map((one) => one.field);

describe("a field that shows something else than it holds", () => {
  test.each<[string, [upper: string, lower: string], string[]]>([
    ["is none where each shows its own", ["LOBBY", "EXIT"], []],
    ["is the one", ["LOBBV", "EXIT"], ["upper"]],
    ["is the other", ["LOBBY", "EXII"], ["lower"]],
    ["is each of two that have exchanged their words", ["EXIT", "LOBBY"], ["upper", "lower"]],
  ])("%s", (_, words, found) => {
    expect(differing(picture(...words))).toEqual(found);
  });

  test("is one that nobody has read, and that is not empty", () => {
    expect(differing(picture("LOBBY", ""), fields.slice(0, 1))).toEqual([]);
    expect(differing(picture("LOBBY", "EXIT"), fields.slice(0, 1))).toEqual(["lower"]);
  });

  test("is none of which two readers say other things", () => {
    const unsure = { unsure: { one: "LOBBY", other: "EXIT" } };
    expect(differing(picture("A", "EXIT"), [field("upper", [], unsure), ...fields.slice(1)])).toEqual([]);
  });

  test("is a box that looks otherwise than it is", () => {
    const box = page({ kind: "tick", state: "Yes" });
    const on = [field("upper", []), field("lower", ["Yes"])];
    expect(differing(picture("", "X"), on, box)).toEqual([]);
    expect(differing(picture("", ""), on, box)).toEqual(["lower"]);
    expect(differing(picture("", "X"), [field("upper", [])], box)).toEqual(["lower"]);
  });

  test("is so again on the next sheet, and a field that is fine is fine again", () => {
    const blank = page();
    const twice = (...words: [string, string]) =>
      [1, 2].map(() => differing(picture(...words), fields, blank));
    expect(twice("LOBBY", "EXII")).toEqual([["lower"], ["lower"]]);
    expect(twice("LOBBY", "EXIT")).toEqual([[], []]);
  });
});

test.each([false, true])("a field may look as in the file or as drawn anew, redrawn: %s", (redrawn) => {
  const found = (words: string) =>
    [0, 1, 2, 3].map((line) => differing(picture(words, "EXIT", line), fields, page(), redrawn));
  expect(found("LOBBY")).toEqual([[], [], ["upper"], []]);
  expect(found("LOBBV").flat()).toEqual(Array(4).fill("upper"));
});
