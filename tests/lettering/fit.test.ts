import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Engraving, Face } from "../../src/catalogue/engraving.ts";
import { legend } from "../../src/checks/sample.ts";
import { fitOn } from "../../src/lettering/faces.ts";
import { type Fitted, fitLegend } from "../../src/lettering/fit.ts";
import { lettersOf } from "../../src/lettering/row.ts";
import { extentOf } from "../../src/lettering/stroke.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

const face: Face = { width: 20, height: 10, cap: 3, cutter: 0.3, tracking: 0, row_gap: 2 };
const engraving: Engraving = {
  fonts: [{ code: "RS", name: "Roman simplex" }],
  fit: { step: 0.1, down_to: 2 },
  margin: 0,
  least_cap: 2,
  reading_distance: 400,
};
const fixed: Engraving = { ...engraving, fit: "fixed" };

/** What is cut of a row, with the cutter's width, on its face. */
function inkOf(fitted: Fitted, row: number) {
  const line = fitted.rows[row];
  const extent = extentOf(lettersOf(line?.text ?? "", fitted).flat());
  if (line === undefined || extent === undefined) throw new Error("nothing is cut");
  const half = fitted.cutter / 2;
  return {
    left: line.left + extent.left - half,
    right: line.left + extent.right + half,
    top: line.baseline + extent.top - half,
    bottom: line.baseline + extent.bottom + half,
  };
}

test("a row that fits is cut at the full height, in the middle", () => {
  const fitted = fitLegend(["ALL OFF", ""], face, engraving);
  expect(fitted).toMatchObject({ cap: 3, room: 20, fits: true, font: "RS", cutter: 0.3 });
  expect(fitted.rows).toHaveLength(1);
  expect(fitted.rows[0]?.width).toBeCloseTo(18.3, 4);
  const ink = inkOf(fitted, 0);
  expect(ink.left).toBeCloseTo(20 - ink.right, 9);
  expect(ink.top).toBeCloseTo(10 - ink.bottom, 9);
});

test("rows too wide are cut smaller together, by no more steps than it takes", () => {
  // RECEPTION is 169 units: 24.44 mm with the cutter at 3 mm, 20.42 at 2.5, 19.61 at 2.4.
  const fitted = fitLegend(["RECEPTION", "EAST"], face, engraving);
  expect(fitted).toMatchObject({ cap: 2.4, fits: true });
  expect(fitted.rows.map(({ row }) => row)).toEqual([1, 2]);
  expect(fitLegend(["RECEPTION", ""], face, fixed)).toMatchObject({ cap: 3, fits: false });
});

test("what does not fit at the least height keeps it, and begins at the margin", () => {
  const fitted = fitLegend(["WWWWWWWWWW", "DIM"], face, { ...engraving, margin: 1 });
  expect(fitted).toMatchObject({ cap: 2, room: 18, fits: false });
  expect(fitted.rows[0]?.left).toBe(1);
  const ink = inkOf(fitted, 1);
  expect(ink.left).toBeCloseTo(20 - ink.right, 9);
});

test("a blank that was typed in front shifts the row", () => {
  const [one, other] = ["DIM", "  DIM"].map((text) => inkOf(fitLegend([text], face, engraving), 0).left);
  // Half of two blanks of 16 units, and of the 4 units of air between the last of them and D.
  expect((other ?? 0) - (one ?? 0)).toBeCloseTo(((16 + 2) * 3) / 21, 9);
});

test("an empty row above text is cut as an empty row", () => {
  const [above, below] = [
    ["DIM", "DIM"],
    ["", "DIM"],
  ].map((rows) => fitLegend(rows, face, engraving).rows.at(-1));
  expect(below).toEqual(above);
});

test("the first row begins so far from the top, the last ends so far from the foot", () => {
  const rows = ["DIM", "LOW"];
  expect(inkOf(fitLegend(rows, face, engraving, { top: 1.5 }), 0).top).toBeCloseTo(1.5 - 0.15, 9);
  const { baseline } = fitLegend(rows, face, engraving, { foot: 2 }).rows[1] ?? { baseline: 0 };
  expect(baseline).toBeCloseTo(face.height - 2, 9);
});

test("a face is cut in the font that it names, or in the first of the list", () => {
  const fonts = [...engraving.fonts, { code: "RN", name: "Roman simplex narrow" }] as const;
  const both = { ...engraving, fonts: [...fonts] };
  expect(fitLegend(["DIM"], face, both).font).toBe("RS");
  expect(fitLegend(["DIM"], { ...face, font: "RN" }, both).font).toBe("RN");
});

test("whatever is typed, what fits is cut within the margins of its face", () => {
  const text = fc.string({ unit: fc.constantFrom(...catalogue.characters, " "), maxLength: 12 });
  const faces = [...catalogue.layouts.map((layout) => layout.face), catalogue.plate.face];
  fc.assert(
    fc.property(fc.array(text, { maxLength: 2 }), fc.constantFrom(...faces), (rows, surface) => {
      const fitted = fitLegend(rows, surface, catalogue.engraving);
      const { margin } = catalogue.engraving;
      for (const [i, { width }] of fitted.rows.entries()) {
        const ink = inkOf(fitted, i);
        expect(ink.right - ink.left).toBeLessThanOrEqual(width + 1e-9);
        if (!fitted.fits) continue;
        expect(ink.left).toBeGreaterThanOrEqual(margin - 1e-9);
        expect(ink.right).toBeLessThanOrEqual(surface.width - margin + 1e-9);
      }
      expect(fitted.rows.length > 0 && fitted.fits).toBe(
        fitted.rows.length > 0 && fitted.rows.every(({ width }) => width <= fitted.room),
      );
    }),
  );
});

describe("a sheet's legend goes on", () => {
  test("the button of its layout, at the top where the buyer wants it there", () => {
    const rows = legend("1", "LOBBY", "");
    const top = fitOn(device({ layouts: ["D1"], legendPlace: "top" }), rows, catalogue);
    const middle = fitOn(device({ layouts: ["D1"], legendPlace: "middle" }), rows, catalogue);
    expect(top?.rows[0]?.baseline).toBeCloseTo(8 + 3.2, 9);
    expect(middle?.rows[0]?.baseline).toBeCloseTo(35 + 1.6, 9);
  });

  test("the face above a gang", () => {
    expect(fitOn(plate(), legend("2", "READING", "ROOM"), catalogue)?.cap).toBe(catalogue.plate.face.cap);
    expect(fitOn(aloneDevice(), legend("plate", "STAFF", ""), catalogue)?.cap).toBe(catalogue.plate.face.cap);
  });

  test("nothing while the layout is not known", () => {
    expect(fitOn(device({ layouts: [] }), legend("1", "ENTRY", ""), catalogue)).toBeUndefined();
    expect(fitOn(device({ layouts: ["D2", "D4"] }), legend("1", "ENTRY", ""), catalogue)).toBeUndefined();
  });
});
