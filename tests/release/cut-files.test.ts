import parser from "dxf-parser";
import { describe, expect, test } from "vitest";
import { letteringOf } from "../../src/catalogue/catalogue.ts";
import { proofSvgs } from "../../src/drawing/proof.ts";
import type { PackageFile } from "../../src/release/release.ts";
import { rectangles } from "../drawing/measure.ts";
import { hasLibrary } from "../make/program.ts";
import { catalogue, filesOf, python, releaseOf, sheets, textIn } from "./packed.ts";

type Points = (readonly [number, number])[];

/** A cut file as it was read: its lines by their layers, in millimetres, y downwards from the upper left corner. */
interface Read {
  readonly units: unknown;
  readonly layers: readonly string[];
  readonly lines: readonly { readonly layer: string; readonly closed: boolean; readonly points: Points }[];
}

const release = releaseOf(sheets);
const files = await filesOf(release);
const proofs = proofSvgs(release.order, catalogue);
const ink = letteringOf(catalogue, "INK")?.colour ?? "";
const { opening } = catalogue.device;

/** Each part, with the page of the proof that shows it, and where on that page its upper left corner lies. */
const parts = [
  { file: "S-104 plate", page: 0, at: plateOn(0, 4), size: [207.96, 114.3] },
  ...[1, 2, 3, 4].map((n) => ({ file: `S-104 position ${n}`, page: 0, at: openingOn(0, n), size: [42, 72] })),
  { file: "S-110 plate", page: 2, at: plateOn(2, 1), size: [69.85, 114.3] },
  { file: "S-110 device", page: 2, at: openingOn(2, 1), size: [42, 72] },
] as const;

function plateOn(page: number, gangs: number) {
  const width = catalogue.plate.widths[gangs - 1] ?? 0;
  return rectangles(proofs[page] ?? "", width, catalogue.plate.height)[0] ?? { x: Number.NaN, y: 0 };
}

function openingOn(page: number, n: number) {
  return rectangles(proofs[page] ?? "", opening.width, opening.height)[n - 1] ?? { x: Number.NaN, y: 0 };
}

/** The strokes of every legend on a page of the proof, moved. */
function strokesOn(page: number, at: { readonly x: number; readonly y: number }): Points[] {
  return [...(proofs[page] ?? "").matchAll(/<path d="([^"]*)"([^>]*)>/g)]
    .filter(([, , look = ""]) => look.includes(ink))
    .flatMap(([, data = ""]) => pointsOf(data))
    .map((points) => points.map(([x, y]) => [x - at.x, y - at.y] as const));
}

function pointsOf(data: string): Points[] {
  return data
    .split("M")
    .slice(1)
    .map((stroke) =>
      stroke.split("L").map((point) => {
        const [x = "", y = ""] = point.split(" ");
        return [Number(x), Number(y)] as const;
      }),
    );
}

/** The farthest that a point of one line lies from its like on the other. */
function apart(one: Points, other: Points): number {
  if (one.length !== other.length) return Number.POSITIVE_INFINITY;
  return Math.max(...one.map(([x, y], i) => Math.hypot(x - (other[i]?.[0] ?? 0), y - (other[i]?.[1] ?? 0))));
}

/** The package is the class itself, whatever its types say. */
const DxfParser = parser as unknown as typeof parser.DxfParser;

const dxf = (file: string): string => textIn(files, `cut/${file}.dxf`);

function byDxfParser(file: string): Read {
  const read = new DxfParser().parseSync(dxf(file));
  const tables = read?.tables as unknown as { layer: { layers: Record<string, unknown> } };
  const entities = (read?.entities ?? []) as unknown as {
    type: string;
    layer: string;
    shape?: boolean;
    vertices: { x: number; y: number }[];
  }[];
  expect(new Set(entities.map(({ type }) => type))).toEqual(new Set(["LWPOLYLINE"]));
  return {
    units: read?.header["$INSUNITS"],
    layers: Object.keys(tables.layer.layers),
    lines: entities.map(({ layer, shape, vertices }) => ({
      layer,
      closed: shape === true,
      points: vertices.map(({ x, y }) => [x, y] as const),
    })),
  };
}

const program = `import ezdxf, json
from ezdxf import recover
d, audit = recover.readfile("part.dxf")
assert not audit.errors and not audit.fixes, audit.errors + audit.fixes
print(json.dumps({"units": d.header["$INSUNITS"], "layers": [l.dxf.name for l in d.layers],
  "lines": [{"layer": e.dxf.layer, "closed": e.closed, "points": [p[:2] for p in e.get_points()]}
    for e in d.modelspace()]}))`;

const readers: Record<string, ((file: string) => Read) | undefined> = {
  "dxf-parser": byDxfParser,
  ezdxf: hasLibrary("ezdxf") ? (file) => python(program, { "part.dxf": dxf(file) }) as Read : undefined,
};

describe.each(Object.entries(readers))("read by %s", (_, reader) => {
  test.skipIf(reader === undefined).each(parts)(
    "$file, as DXF, is what the proof shows",
    ({ file, page, at, size }) => {
      const { units, layers, lines } = reader?.(file) ?? { units: 0, layers: [], lines: [] };
      // AutoCAD DXF Reference, HEADER section: $INSUNITS, 4 = millimetres.
      expect(units).toBe(4);
      const [width, height] = size;
      const body = lines.filter(({ layer }) => layer === "BODY");
      expect(body).toHaveLength(1);
      expect(body[0]?.closed).toBe(true);
      expect(new Set(body[0]?.points.map(String))).toEqual(
        new Set(["0,0", `${width},0`, `${width},${height}`, `0,${height}`]),
      );
      // DXF's y runs upwards (AutoCAD DXF Reference, object coordinate systems), the proof's downwards.
      const cut = lines
        .filter(({ layer }) => /^(?:GANG|BUTTON)-\d+$|^PLATE$/.test(layer))
        .map((line) => ({ ...line, points: line.points.map(([x, y]) => [x, height - y] as const) }));
      const proofed = strokesOn(page, at).filter((points) => isOn(file, points));
      expect(cut.length).toBeGreaterThan(0);
      expect(cut).toHaveLength(proofed.length);
      for (const { points } of cut)
        expect(Math.min(...proofed.map((one) => apart(points, one)))).toBeLessThan(0.01);
      for (const one of proofed)
        expect(Math.min(...cut.map(({ points }) => apart(points, one)))).toBeLessThan(0.01);
      expect(layers).toEqual(expect.arrayContaining(["BODY", ...cut.map(({ layer }) => layer)]));
      expect(cut.every(({ closed }) => !closed)).toBe(true);
    },
  );
});

/** Whether a stroke of the proof is of this part: within its outline, and of a plate's strip or not. */
function isOn(file: string, points: Points): boolean {
  const { width, height } = file.endsWith("plate") ? { width: 300, height: 17 } : opening;
  return points.every(([x, y]) => x >= 0 && x <= width && y >= 0 && y <= height);
}

test("each face has a layer of its own, and only its own strokes on it", () => {
  const { lines, layers } = byDxfParser("S-104 position 1");
  expect(layers).toEqual(
    expect.arrayContaining(["BODY", "BUTTONS", "BUTTON-1", "BUTTON-2", "BUTTON-3", "BUTTON-4"]),
  );
  const buttons = lines.filter(({ layer }) => layer === "BUTTONS").map(({ points }) => extent(points));
  expect(buttons).toHaveLength(4);
  // They are numbered from the top, and so y falls.
  for (const [i, button] of buttons.entries()) {
    const strokes = lines.filter(({ layer }) => layer === `BUTTON-${i + 1}`);
    expect(strokes.length).toBeGreaterThan(0);
    for (const { points } of strokes) {
      const { left, right, low, high } = extent(points);
      expect(left > button.left && right < button.right && low > button.low && high < button.high).toBe(true);
    }
    expect(button.low).toBeGreaterThanOrEqual(buttons[i + 1]?.high ?? 0);
  }
});

function extent(points: Points) {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

test.each(parts)("$file, as SVG, is what the proof shows", ({ file, page, at, size }) => {
  const svg = textIn(files, `cut/${file}.svg`);
  const [width, height] = size;
  // SVG 2, §8.3: as many millimetres wide as the picture has units is true scale.
  expect(svg).toContain(`width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`);
  const cut = [...svg.matchAll(/<path d="([^"]*)"\/>/g)].flatMap(([, data = ""]) => pointsOf(data));
  const proofed = strokesOn(page, at).filter((points) => isOn(file, points));
  expect(cut).toHaveLength(proofed.length);
  for (const points of cut) expect(Math.min(...proofed.map((one) => apart(points, one)))).toBeLessThan(0.01);
});

test("there is a cut file of each kind for each plate and each device, and no other", () => {
  const cut = [...files.values()]
    .map(({ path }: PackageFile) => path)
    .filter((path) => path.startsWith("cut/"));
  expect(cut.toSorted()).toEqual(
    parts.flatMap(({ file }) => [`cut/${file}.dxf`, `cut/${file}.svg`]).toSorted(),
  );
});
