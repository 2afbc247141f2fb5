import { describe, expect, test } from "vitest";
import type { Box } from "../../../src/reading/facts.ts";
import type { BlankPage } from "../../../src/reading/page/blank-form.ts";
import type { ReadSheet } from "../../../src/reading/page/compare-pages.ts";
import { movedFields, pageOf, partOn } from "../../../src/reading/page/widget-places.ts";

describe("the page of a sheet that a page of its form corresponds to", () => {
  const page = (...fields: string[]) => ({ widgets: fields.map((field) => ({ field })) }) as never;
  const facts = (...on: [string, number][]) =>
    ({ widgets: on.map(([field, page]) => ({ field, page })) }) as never;
  test.each([
    [
      "has most of its fields",
      [
        ["a", 1],
        ["b", 2],
        ["c", 2],
      ],
      2,
    ],
    ["is where it was if nothing tells", [["x", 1]], 4],
    [
      "is not told by fields that the form has not",
      [
        ["a", 3],
        ["x", 1],
        ["y", 1],
      ],
      3,
    ],
  ] as const)("%s", (_, on, number) => {
    expect(
      pageOf(page("a", "b", "c"), 3, facts(...on.map(([field, at]): [string, number] => [field, at]))),
    ).toBe(number);
  });
});

describe("a field lies elsewhere than on the form", () => {
  const at = (x: number, y: number, field = "a", hidden = false) =>
    ({ field, hidden, box: [x, y, x + 10, y + 5] }) as never;
  const moved = (own: never, ...form: never[]): boolean => movedFields(form, [own], [100, 50]).length === 1;
  test.each([
    ["where the whole form lies", at(100, 50), [at(0, 0)], false],
    ["a point and a half further, as programs do", at(101.5, 50), [at(0, 0)], false],
    ["more than that", at(101.6, 50), [at(0, 0)], true],
    ["further up", at(100, 52), [at(0, 0)], true],
    ["at another place of the same field", at(130, 50), [at(0, 0), at(30, 0)], false],
    ["at a place of another field", at(130, 50), [at(0, 0), at(30, 0, "b")], true],
    ["elsewhere, and hidden", at(130, 50, "a", true), [at(0, 0)], false],
    ["elsewhere, and unknown to the form", at(130, 50, "x"), [at(0, 0)], false],
  ])("%s: %#", (_, own, form, is) => {
    expect(moved(own, ...form)).toBe(is);
  });
});

describe("the part of a page that corresponds to its form", () => {
  const blankBox: Box = [5, 7, 300, 200];
  type Place = readonly [field: string, x: number, y: number];
  const boxAt = (x: number, y: number): Box => [x, y, x + 10, y + 5];
  /** By where the form has its fields, and where those of the sheet's second page are, from the corner of what it shows. */
  function part(form: readonly Place[], sheet: readonly Place[], view?: Box) {
    const blank = { box: blankBox, widgets: form.map(([field, x, y]) => ({ field, box: boxAt(x, y) })) };
    const widgets = [
      { field: "a", page: 1, box: boxAt(90, 90), hidden: false },
      ...sheet.map(([field, x, y]) => ({ field, page: 2, box: boxAt(x, y), hidden: false })),
    ];
    const pages = view === undefined ? [] : [{ view: [0, 0, 9, 9] as const }, { view }];
    return partOn(
      2,
      blank as unknown as BlankPage,
      { facts: { fields: [], widgets }, pages } as unknown as ReadSheet,
    );
  }

  test("is where the form has it, by the page's own corner", () => {
    expect(part([["a", 20, 30]], [["a", 15, 23]])).toEqual({
      view: blankBox,
      part: blankBox,
      x: 0,
      y: 0,
      own: [{ field: "a", page: 2, box: [20, 30, 30, 35], hidden: false }],
    });
  });

  test("is moved as its fields are, by the middle of them", () => {
    const form: Place[] = ["a", "b", "c"].map((field, i) => [field, 10 * i, 50]);
    const sheet: Place[] = [
      ["a", 100, 9],
      ["b", 10 + 3, 50 - 11],
      ["c", 20 + 1, 50 - 4],
    ];
    expect(part(form, sheet, [0, 0, 300, 200])).toMatchObject({ x: 3, y: -11, part: [8, -4, 303, 189] });
    // Of two it is the greater.
    expect(part(form.slice(1), sheet.slice(1), [0, 0, 300, 200])).toMatchObject({ x: 3, y: -4 });
  });

  test("is moved by half points", () => {
    const by = (x: number) => part([["a", 20, 30]], [["a", 20 + x, 30]], [0, 0, 300, 200]).x;
    expect([0.2, 0.3, 0.6, 0.8].map(by)).toEqual([0, 0.5, 0.5, 1]);
  });

  test("is not told by a field that is there twice or not at all", () => {
    const form: Place[] = [
      ["a", 20, 30],
      ["b", 40, 30],
      ["x", 60, 30],
    ];
    const sheet: Place[] = [
      ["b", 99, 60],
      ["b", 99, 90],
      ["a", 22, 33],
    ];
    expect(part(form, sheet, [0, 0, 300, 200])).toMatchObject({ x: 2, y: 3 });
    expect(part(form, [], [0, 0, 300, 200])).toMatchObject({ x: 0, y: 0, own: [] });
  });
});
