import * as fc from "fast-check";
import { expect, test } from "vitest";
import { letteringOf } from "../../src/catalogue/catalogue.ts";
import { checkSheet } from "../../src/checks/run.ts";
import { legend, without } from "../../src/checks/sample.ts";
import { outlineLooks } from "../../src/drawing/kinds.ts";
import { proofSvgs } from "../../src/drawing/proof.ts";
import { glyphsOf } from "../../src/lettering/glyph.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { completeOrder, deviceAt, plate } from "../make/sample.ts";
import { alone, drawingOf, orderOf } from "./proof-orders.ts";

const ink = letteringOf(catalogue, "INK")?.colour ?? "";
const red = outlineLooks.fail.colour;

/** How many strokes a drawing has in this colour, outlines aside. */
function strokesIn(svg: string, colour: string): number {
  return [...svg.matchAll(/<path d="([^"]*)"([^>]*)>/g)]
    .filter(([, , look = ""]) => look.includes(`stroke="${colour}"`))
    .reduce((sum, [, data = ""]) => sum + data.split("M").length - 1, 0);
}

/** All words of a drawing, since the list breaks its lines. */
const saysOf = (svg: string): string =>
  [...svg.matchAll(/<text [^>]*>([^<]*)</g)].map(([, text]) => text).join(" ");

const strokesOf = (...rows: readonly string[]): number =>
  rows.flatMap((row) => glyphsOf(row, "RS")).reduce((sum, { strokes }) => sum + strokes.length, 0);

test.each(["CHILDRENS READING ROOM", "CONFERENCE ROOM WEST", "WWWWWWWWWWWWWW", "MEETING  ROOM  SOUTH"])(
  "%s is drawn to its last letter, and in red where it runs over its face",
  (text) => {
    const { legends, ...sheet } = alone("D1");
    const svg = drawingOf({ ...sheet, legends: [legend("1", text), ...legends.slice(1)] });
    const others = legends.slice(1).flatMap(({ rows }) => rows);
    expect(strokesIn(svg, red)).toBeGreaterThan(0);
    expect(strokesIn(svg, ink) + strokesIn(svg, red)).toBe(strokesOf(text, ...others));
    expect(saysOf(svg)).toContain("runs over its face is drawn in red.");
    expect(saysOf(svg).replaceAll(/\s+/g, " ")).toContain(text.replaceAll(/\s+/g, " "));
  },
);

test("whatever is typed on a button, all its strokes are drawn", () => {
  const letters = fc.constantFrom(..."ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789 &/-");
  fc.assert(
    fc.property(fc.string({ unit: letters, minLength: 1, maxLength: 40 }), (text) => {
      const { legends: _, ...sheet } = alone("D1");
      const svg = drawingOf({ ...sheet, legends: [legend("1", text)] });
      expect(strokesIn(svg, ink) + strokesIn(svg, red)).toBe(strokesOf(text));
    }),
    { numRuns: 200 },
  );
});

test("what fits has no red, and no word of it", () => {
  const svg = drawingOf(alone("D4"));
  expect(strokesIn(svg, red)).toBe(0);
  expect(saysOf(svg)).not.toContain("in red");
});

test("an outline has the numbers of the answer, and a question is told from a fault by its line", () => {
  const bad = plate({}, { "2": ["MEETING ROOM SOUTH", ""] });
  const sheets = [bad, ...completeOrder().slice(1)];
  const [problem] = checkSheet(bad, catalogue);
  if (problem === undefined) throw new Error("nothing is wrong with it");
  const numbered = (verdict: "fail" | "confirm" | "person"): string => {
    const one = { ...problem, verdict };
    return proofSvgs(orderOf(...sheets), catalogue, { problems: [one], numbers: new Map([[one, 7]]) }).join(
      "",
    );
  };
  const dashesOf = (svg: string, colour: string): (string | undefined)[] =>
    [...svg.matchAll(new RegExp(`<rect [^>]*stroke="${colour}"[^>]*>`, "g"))].map(
      ([rect]) => /stroke-dasharray="([^"]+)"/.exec(rect)?.[1],
    );
  expect(numbered("fail")).toContain(">7</text>");
  expect(dashesOf(numbered("fail"), outlineLooks.fail.colour)).toEqual([undefined]);
  const [asked] = dashesOf(numbered("confirm"), outlineLooks.confirm.colour);
  const [person] = dashesOf(numbered("person"), outlineLooks.person.colour);
  expect(asked).toBeDefined();
  expect(person).toBeDefined();
  expect(person).not.toBe(asked);
  expect(numbered("confirm")).toContain("broken outline: a question");
  expect(numbered("fail")).toContain("unbroken outline: to be corrected");
});

test("legends stand beside the drawing as text too", () => {
  const svg = proofSvgs(orderOf(...completeOrder()), catalogue).join("");
  expect(svg).toContain("1\u00A0ENTRY");
  expect(svg).toContain("STACKS / EAST");
  expect(drawingOf({ ...alone("D4"), legends: [legend("1", "", "ENTRY")] })).toContain("(empty row) / ENTRY");
});

test.each<[string, (sheets: Sheet[]) => Sheet[], string]>([
  [
    "a second device for a position",
    (sheets) => [
      ...sheets,
      { ...deviceAt(2), id: "9/9", file: "other.pdf", legends: [legend("1", "ATTIC")] },
    ],
    "Not drawn: position 2 is taken by S-104 pos 2.pdf.",
  ],
  [
    "a position that the plate has not",
    (sheets) => [...sheets, { ...deviceAt(2), id: "9/9", file: "other.pdf", position: 9 }],
    "Not drawn: a plate of 4 has no position 9.",
  ],
  [
    "a device without a position on a full plate",
    (sheets) => [...sheets, without({ ...deviceAt(2), id: "9/9", file: "other.pdf" }, "position")],
    "Not drawn: no position is left for it.",
  ],
  [
    "text for a button that the layout has not",
    (sheets) =>
      sheets.map((sheet) =>
        sheet.id === deviceAt(2).id ? { ...sheet, legends: [legend("7", "ATTIC")] } : sheet,
      ),
    "Not drawn, since there is no such face: 7\u00A0ATTIC",
  ],
  [
    "a character that cannot be cut",
    (sheets) =>
      sheets.map((sheet) =>
        sheet.id === deviceAt(2).id ? { ...sheet, legends: [legend("1", "日")] } : sheet,
      ),
    "A crossed box stands for a character that cannot be cut.",
  ],
])("%s is told of on the proof", (_, change, says) => {
  const orders = gatherOrders(change(completeOrder()));
  const svgs = orders.flatMap((order) => proofSvgs(order, catalogue)).join("");
  expect(saysOf(svgs)).toContain(says);
});

test("a sheet that is asked about before it counts is told of too", () => {
  const order = orderOf(...completeOrder());
  const [beside] = order.stations.flatMap(({ devices }) => devices);
  if (beside === undefined) throw new Error("no device");
  const sheet = { ...beside, id: "9/9", file: "old.pdf" };
  const svg = proofSvgs({ ...order, aside: [{ sheet, beside, why: "dates" }] }, catalogue).join("");
  expect(saysOf(svg)).toContain(`it is asked about beside ${beside.file}.`);
});
