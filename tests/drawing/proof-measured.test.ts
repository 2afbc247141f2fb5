import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { layoutOf, letteringOf } from "../../src/catalogue/catalogue.ts";
import { proofPdf } from "../../src/drawing/proof.ts";
import { faceOf, fitOn } from "../../src/lettering/faces.ts";
import { lettersOf } from "../../src/lettering/row.ts";
import { extentOf } from "../../src/lettering/stroke.ts";
import type { Legend } from "../../src/trade/legend.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice } from "../make/sample.ts";
import { installed, run } from "./look.ts";
import { type Edges, inkIn, type Rectangle, rectangles, strokesWithin } from "./measure.ts";
import { alone, drawingOf, layouts, orderOf, station, words } from "./proof-orders.ts";

const folder = mkdtempSync(join(tmpdir(), "burin-measured-"));

/** The edges of a legend's ink, where its face lies here: what must be cut. */
function expectedInk(sheet: Sheet, cut: Legend, face: Rectangle): Edges {
  const fitted = fitOn(sheet, cut, catalogue);
  const extent = extentOf(
    (fitted?.rows ?? []).flatMap(({ text, left, baseline }) =>
      lettersOf(text, fitted ?? { font: "RS", cap: 0, tracking: 0, cutter: 0 })
        .flat()
        .map((line) => line.map(([x, y]) => [x + left + face.x, y + baseline + face.y] as const)),
    ),
  );
  if (fitted === undefined || extent === undefined) throw new Error("nothing is cut there");
  const half = fitted.cutter / 2;
  return {
    left: extent.left - half,
    top: extent.top - half,
    right: extent.right + half,
    bottom: extent.bottom + half,
  };
}

function expectWithin(seen: Edges, wanted: Edges, tolerance: number): void {
  for (const edge of ["left", "top", "right", "bottom"] as const)
    expect(Math.abs(seen[edge] - wanted[edge]), edge).toBeLessThan(tolerance);
}

describe.each([...layouts.map((layout) => [layout, "middle"] as const), ["D1", "top"] as const])(
  "the proof of %s, legend at %s",
  (layout, legendPlace) => {
    const sheet = alone(layout, legendPlace);
    const svg = drawingOf(sheet);
    const face = layoutOf(catalogue, layout)?.face ?? { width: 0, height: 0 };
    const buttons = rectangles(svg, face.width, face.height);
    const [body] = rectangles(svg, 69.85, 114.3);
    const ink = letteringOf(catalogue, "INK")?.colour ?? "";
    const legends = sheet.legends.map((cut, i) => {
      const { width, height } = catalogue.plate.face;
      const above = {
        x: (body?.x ?? 0) + (69.85 - width) / 2,
        y: (body?.y ?? 0) + 10.5 - height / 2,
        width,
        height,
      };
      return { cut, face: buttons[i] ?? above };
    });

    test("has every button at its size, in the middle of the plate", () => {
      expect(buttons).toHaveLength(Object.keys(words[layout]).length);
      const [first, last] = [buttons[0], buttons.at(-1)];
      expect((first?.x ?? 0) + (last?.x ?? 0) + face.width).toBeCloseTo(2 * (body?.x ?? 0) + 69.85, 2);
      expect((first?.y ?? 0) + (last?.y ?? 0) + face.height).toBeCloseTo(2 * (body?.y ?? 0) + 114.3, 2);
    });

    test("shows every legend where and as large as it is cut", () => {
      for (const { cut, face } of legends)
        expectWithin(strokesWithin(svg, ink, face), expectedInk(sheet, cut, face), 0.002);
    });

    test("measures the same in print", async ({ skip }) => {
      if (!installed("pdftoppm")) skip("pdftoppm is not installed");
      const file = join(folder, `${layout}-${legendPlace}.pdf`);
      writeFileSync(file, await proofPdf(orderOf(sheet), catalogue));
      for (const { cut, face } of legends) {
        // Without the outline of the face; whole dots.
        const [x, y] = [Math.ceil(((face.x + 0.5) / 25.4) * 600), Math.ceil(((face.y + 0.5) / 25.4) * 600)];
        const [width, height] = [
          Math.floor(((face.width - 1) / 25.4) * 600),
          Math.floor(((face.height - 1) / 25.4) * 600),
        ];
        const place = ["-x", x, "-y", y, "-W", width, "-H", height].map(String);
        const { stderr } = run("pdftoppm", "-r", "600", "-gray", "-singlefile", ...place, file, file);
        expect(stderr).toBe("");
        const at = { x: (x / 600) * 25.4, y: (y / 600) * 25.4 };
        expectWithin(inkIn(`${file}.pgm`, 600, at), expectedInk(sheet, cut, face), 0.1);
      }
    });
  },
);

// NEMA WD 6 as cited in architectural references: 2.75, 4.56, 6.375, 8.1875, 10, 11.8125 in wide; 4.5 in high.
test.each([2.75, 4.5625, 6.375, 8.1875, 10, 11.8125])("a plate is drawn %d inches wide", (inches) => {
  const gangs = Math.round((inches - 2.75) / 1.8125) + 1;
  const svg = drawingOf(...(gangs === 1 ? [alone("D4")] : station(gangs)));
  const width = catalogue.plate.widths[gangs - 1] ?? 0;
  expect(rectangles(svg, width, 114.3)).toHaveLength(1);
  expect(width).toBeCloseTo(inches * 25.4, 1);
  expect(114.3).toBeCloseTo(4.5 * 25.4, 9);
});

test("gangs stand one pitch apart, the whole in the middle of the plate", () => {
  const svg = drawingOf(...station(4));
  const openings = rectangles(svg, 42, 72);
  const [body] = rectangles(svg, 207.96, 114.3);
  expect(openings).toHaveLength(4);
  for (const [i, { x }] of openings.slice(1).entries())
    expect(x - (openings[i]?.x ?? 0)).toBeCloseTo(46.04, 2);
  expect((openings[0]?.x ?? 0) - (body?.x ?? 0)).toBeCloseTo((207.96 - 3 * 46.04 - 42) / 2, 2);
});

test("the scale bar is 50 mm long", () => {
  const { left, right } = strokesWithin(drawingOf(alone("D4")), "#1D2426", {
    x: 0,
    y: 200,
    width: 100,
    height: 15,
  });
  expect(right - left - 0.2).toBeCloseTo(50, 9);
});

test("letters that would run off a face are not drawn into its neighbour", () => {
  const sheet = aloneDevice(
    { finish: "CHK", lettering: "INK", layouts: ["D6"] },
    { "1": ["CONFERENCE ROOM SOUTH", ""] },
  );
  const svg = drawingOf(sheet);
  const face = faceOf(sheet, "1", catalogue) ?? { width: 0, height: 0 };
  const [first] = rectangles(svg, face.width, face.height);
  const { right } = strokesWithin(svg, "#1B1B1D", {
    ...(first ?? { x: 0, y: 0 }),
    width: 21,
    height: face.height,
  });
  expect(right).toBeLessThan((first?.x ?? 0) + face.width + 0.1);
});
