import { expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import { aroundFields } from "../../../src/reading/own-form/around.ts";
import type { OutlinedField, Printed } from "../../../src/reading/own-form/outline.ts";

/** A field of 100 by 16 points, from its lower left corner. A box to tick has 10 by 10. */
const field = (name: string, x: number, y: number, more: Partial<OutlinedField> = {}): OutlinedField => ({
  name,
  kind: "text",
  values: [],
  ...more,
  frames: more.frames ?? [
    { page: 1, box: more.kind === "tick" ? [x, y, x + 10, y + 10] : [x, y, x + 100, y + 16] },
  ],
});
const box = (name: string, x: number, y: number) => field(name, x, y, { kind: "tick" });
/** Words 10 points high, from their lower left corner, as wide as is said. */
const words = (text: string, x: number, y: number, wide = 50): Printed => ({
  page: 1,
  text,
  box: [x, y, x + wide, y + 10] satisfies Box,
});
const around = (fields: readonly OutlinedField[], printed: readonly Printed[], name = "a") =>
  aroundFields({ kind: "form", pages: 1, nameless: 0, fields, printed }).get(name);
const label = (...printed: Printed[]) => around([field("a", 400, 500)], printed)?.label;

test("a label stands to the left of its field, on its line, and not too far away", () => {
  expect(label(words("Finish", 330, 503))).toBe("Finish");
  expect(label(words("Finish", 90, 503))).toBe("Finish");
  expect(label(words("Finish", 89, 503))).toBeUndefined();
  expect(label(words("Finish", 353, 503))).toBe("Finish");
  expect(label(words("Finish", 354, 503))).toBeUndefined();
  expect(label(words("Finish", 330, 512))).toBe("Finish");
  expect(label(words("Finish", 330, 514))).toBeUndefined();
  expect(label(words("Finish", 330, 493))).toBe("Finish");
  expect(label(words("Finish", 330, 492))).toBeUndefined();
  expect(label(words("Project", 200, 503), words("Finish", 330, 503))).toBe("Finish");
});

test("of a high field the label stands on its first line", () => {
  const high = field("a", 400, 500, { frames: [{ page: 1, box: [400, 500, 500, 600] }] });
  expect(around([high], [words("Notes", 330, 585)])?.label).toBe("Notes");
  expect(around([high], [words("Notes", 330, 566)])?.label).toBe("Notes");
  expect(around([high], [words("Notes", 330, 565)])?.label).toBeUndefined();
});

test("a label stands above its field, where it begins, and right above it", () => {
  expect(label(words("Finish", 400, 518))).toBe("Finish");
  expect(label(words("Finish", 400, 532))).toBe("Finish");
  expect(label(words("Finish", 400, 533))).toBeUndefined();
  expect(label(words("Finish", 400, 512))).toBe("Finish");
  expect(label(words("Finish", 388, 530, 50))).toBe("Finish");
  expect(label(words("Finish", 387, 530, 50))).toBeUndefined();
  expect(label(words("Finish", 500, 530, 50))).toBeUndefined();
  expect(label(words("Finish", 499, 530, 50))).toBe("Finish");
});

test("words behind another field are the label of that one", () => {
  const fields = [field("a", 400, 500), field("b", 250, 500)];
  const printed = [words("Finish", 180, 503)];
  expect([around(fields, printed, "a")?.label, around(fields, printed, "b")?.label]).toEqual([
    undefined,
    "Finish",
  ]);
  const stacked = [
    field("a", 400, 500, { frames: [{ page: 1, box: [400, 500, 500, 504] }] }),
    field("b", 400, 506, { frames: [{ page: 1, box: [400, 506, 500, 510] }] }),
  ];
  const above = [words("Finish", 400, 514)];
  expect([around(stacked, above, "a")?.label, around(stacked, above, "b")?.label]).toEqual([
    undefined,
    "Finish",
  ]);
});

test("a field beside keeps no words above from being a label", () => {
  const flat = (name: string, x: number, y: number) =>
    field(name, x, y, { frames: [{ page: 1, box: [x, y, x + 100, y + 4] }] });
  for (const x of [200, 300, 500, 600])
    expect(around([flat("a", 400, 500), flat("b", x, 506)], [words("Finish", 400, 514)])?.label).toBe(
      "Finish",
    );
});

test("where a field has words on both sides, the side counts on which most labels stand", () => {
  const [left, above] = [words("Left", 330, 503), words("Above", 400, 518)];
  const both = field("a", 400, 500);
  expect(around([both], [left, above])?.label).toBe("Left");
  const others = [field("b", 400, 300), field("c", 400, 200)];
  expect(around([both, ...others], [left, above, words("B", 330, 303), words("C", 330, 203)])?.label).toBe(
    "Left",
  );
  expect(around([both, ...others], [left, above, words("B", 400, 318), words("C", 400, 218)])?.label).toBe(
    "Above",
  );
});

test("the label of a box stands behind it, or before it where most do", () => {
  const tick = (...printed: Printed[]) => around([box("a", 400, 500)], printed)?.label;
  expect(tick(words("Oat", 440, 500))).toBe("Oat");
  expect(tick(words("Oat", 441, 500))).toBeUndefined();
  expect(tick(words("Oat", 407, 500))).toBe("Oat");
  expect(tick(words("Oat", 406, 500))).toBeUndefined();
  expect(tick(words("Oat", 330, 500))).toBe("Oat");
  expect(tick(words("Chalk", 340, 500), words("Oat", 415, 500))).toBe("Oat");
  expect(tick(words("Chalk", 347, 500), words("Oat", 415, 500))).toBe("Chalk");
});

test("words behind another box are the label of that one", () => {
  const boxes = [box("a", 400, 500), box("b", 414, 500)];
  const printed = [words("Oat", 428, 500)];
  expect(around(boxes, printed, "a")?.label).toBeUndefined();
  expect(around(boxes, printed, "b")?.label).toBe("Oat");
});

test("the label of a box may stand below it where nothing stands close beside it", () => {
  const tick = (below: Printed, ...beside: Printed[]) =>
    around([box("a", 400, 500)], [below, ...beside])?.label;
  expect(tick(words("Oat", 390, 488))).toBe("Oat");
  expect(tick(words("Oat", 390, 488), words("Chalk", 419, 500))).toBe("Oat");
  expect(tick(words("Oat", 390, 488), words("Chalk", 418, 500))).toBe("Chalk");
  expect(tick(words("Oat", 390, 487), words("Chalk", 419, 500))).toBe("Oat");
  expect(tick(words("Oat", 390, 486), words("Chalk", 419, 500))).toBe("Chalk");
});

test("a number beside a field is told, if it is nearer to no other and counts nothing", () => {
  const number = (text: string, x: number, ...more: Printed[]) =>
    around([field("a", 400, 500), field("b", 600, 500)], [words(text, x, 503, 10), ...more])?.number;
  expect(["1", "12", "3."].map((text) => number(text, 380))).toEqual(["1", "12", "3."]);
  expect(["123", "1a", "A1", ""].map((text) => number(text, 380))).toEqual([
    undefined,
    undefined,
    undefined,
    undefined,
  ]);
  expect(number("1", 360)).toBe("1");
  expect(number("1", 359)).toBeUndefined();
  expect(number("1", 580)).toBeUndefined();
  expect(number("1", 360, words("Contact", 374, 503, 10))).toBeUndefined();
  expect(number("1", 360, words("Contact", 385, 503, 10))).toBe("1");
  expect(number("1", 360, words("Contact", 374, 505, 10))).toBe("1");
});

test("a field right below another of its width, without a label, is its next line", () => {
  const next = (x: number, y: number, wide = 100) =>
    around(
      [field("b", 400, 500), field("a", x, y, { frames: [{ page: 1, box: [x, y, x + wide, y + 16] }] })],
      [words("Notes", 330, 503)],
    )?.continues;
  expect(next(400, 484)).toBe("b");
  expect(next(401, 484, 100)).toBe("b");
  expect(next(402, 484, 98)).toBeUndefined();
  expect(next(400, 484, 102)).toBeUndefined();
  expect(next(400, 472)).toBe("b");
  expect(next(400, 471)).toBeUndefined();
  expect(next(400, 485)).toBe("b");
  expect(next(400, 486)).toBeUndefined();
});

test("a box knows the entry next to it", () => {
  const neighbour = (x: number, y: number) => around([box("a", x, y), field("b", 400, 500)], [])?.neighbour;
  expect(neighbour(345, 500)).toBe("b");
  expect(neighbour(344, 500)).toBeUndefined();
  expect(neighbour(355, 480)).toBe("b");
  expect(around([field("a", 300, 500), field("b", 400, 500)], [])?.neighbour).toBeUndefined();
});

test("headings are short words above a field, nearest first, that begin no further right", () => {
  const headings = (...printed: Printed[]) => around([field("a", 400, 300)], printed)?.headings;
  expect(headings(words("Far", 400, 700), words("Near", 380, 400), words("Beside", 330, 303))).toEqual([
    "Beside",
    "Near",
    "Far",
  ]);
  expect(headings(words("Right", 410, 400), words("Too far right", 411, 400))).toEqual(["Right"]);
  expect(headings(words("On its line", 400, 301), words("Below", 400, 300))).toEqual(["On its line"]);
  expect(headings(words("x".repeat(48), 400, 400), words("x".repeat(49), 400, 400))).toEqual([
    "x".repeat(48),
  ]);
  expect(headings(words("Within", 400, 816), words("Beyond", 400, 817))).toEqual(["Within"]);
});

test("the head of its row and of its column are told, whatever lies between", () => {
  const heads = (...printed: Printed[]) =>
    around([field("a", 400, 300), field("b", 250, 300), field("c", 400, 400)], printed)?.heads;
  expect(heads(words("Button 1", 10, 303), words("Row 2", 425, 600))).toBe("Button 1 Row 2");
  expect(heads(words("Row 2", 425, 600), words("Row 3", 425, 500))).toBe("Row 3");
  expect(heads(words("Button 1", 10, 320))).toBe("");
  expect(heads(words("Button 1", 353, 303))).toBe("Button 1");
  expect(heads(words("Button 1", 354, 303))).toBe("");
  // over the column, more or less in its middle
  for (const [x, wide] of [
    [499, 50],
    [351, 50],
    [400, 299],
  ] as const)
    expect(heads(words("Row 2", x, 600, wide))).toBe("Row 2");
  for (const [x, wide] of [
    [500, 50],
    [350, 50],
    [400, 300],
  ] as const)
    expect(heads(words("Row 2", x, 600, wide))).toBe("");
  expect(heads(words("Row 2", 425, 312))).toBe("Row 2");
  expect(heads(words("Row 2", 425, 311))).toBe("");
});

test("what stands on another page is nowhere near, and a field on no page has nothing around it", () => {
  expect(around([field("a", 400, 500)], [{ ...words("Finish", 330, 503), page: 2 }])?.label).toBeUndefined();
  expect(around([field("a", 400, 500, { frames: [] })], [words("Finish", 330, 503)])).toEqual({
    labels: [],
    heads: "",
    headings: [],
  });
});

test("the label of a group of buttons stands before the first, or above them", () => {
  const at = (x: number) => ({ page: 1, box: [x, 500, x + 10, 510] as const satisfies Box });
  const group = field("a", 0, 0, { kind: "tick", frames: [at(200), at(300)] });
  const each = [words("Oat", 212, 500, 30), words("Chalk", 312, 500, 30)];
  expect(around([group], [words("Finish", 140, 500), ...each])).toMatchObject({
    label: "Finish",
    labels: ["Oat", "Chalk"],
  });
  expect(around([group], [words("Finish", 200, 520), ...each])).toMatchObject({ label: "Finish" });
  expect(around([group], [words("Finish", 200, 558), ...each])).toMatchObject({ label: "Finish" });
  // as far as the group reaches, across
  for (const [x, says] of [
    [309, "Finish"],
    [310, undefined],
    [139, "Finish"],
    [138, undefined],
  ] as const)
    expect(around([group], [words("Finish", x, 520), ...each])?.label).toBe(says);
  expect(around([group], [words("Finish", 200, 559), ...each])?.label).toBeUndefined();
});
