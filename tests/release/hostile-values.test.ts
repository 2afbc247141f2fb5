import parser from "dxf-parser";
import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { checkSheet } from "../../src/checks/run.ts";
import { packageOf } from "../../src/release/release.ts";
import { hostileValues, safe } from "../make/hostile-values.ts";
import { aloneDevice, device } from "../make/sample.ts";
import { catalogue, releaseOf } from "./packed.ts";

/** The package is the class itself, whatever its types say. */
const DxfParser = parser as unknown as typeof parser.DxfParser;

/** What must hold of each file that the engraving room gets, by the end of its name. */
const kinds: Readonly<Record<string, (bytes: Uint8Array, path: string) => void>> = {
  csv: (bytes, path) => safe.csv(strFromU8(bytes), path),
  json: (bytes, path) => safe.json(strFromU8(bytes), path),
  txt: (bytes, path) => safe.text(strFromU8(bytes), path),
  svg: (bytes, path) => {
    const svg = strFromU8(bytes);
    safe.html(svg, path);
    safe.text(svg, path);
  },
  dxf: (bytes, path) => {
    const text = strFromU8(bytes);
    const read = new DxfParser().parseSync(text);
    const entities = (read?.entities ?? []) as unknown as readonly { type: string }[];
    expect(new Set(entities.map(({ type }) => type)), path).toEqual(new Set(["LWPOLYLINE"]));
    // A group code and its value, each on a line. AutoCAD DXF Reference, ASCII DXF files
    const lines = text.trimEnd().split(/\r?\n/);
    expect(lines.length % 2, path).toBe(0);
    expect(
      lines.filter((line, i) => i % 2 === 0 && !/^ *\d+$/.test(line)),
      path,
    ).toEqual([]);
  },
  xlsx: (bytes, path) => {
    const parts = Object.entries(unzipSync(bytes)).map(([name, part]) => [name, strFromU8(part)] as const);
    expect(parts.length, path).toBeGreaterThan(3);
    // A formula is an element f. ECMA-376, Part 1, 18.3.1.40
    for (const [name, xml] of parts) {
      expect(xml, `${path}: ${name}`).not.toMatch(/<f[ >]|<script|<img|<hyperlink/i);
      expect(xml, `${path}: ${name}`).not.toMatch(/[^\P{Cc}\n\r\t]/u);
    }
  },
  pdf: (bytes, path) => {
    expect(strFromU8(bytes.slice(0, 4), true), path).toBe("%PDF");
    if (path.startsWith("originals/")) return;
    expect(strFromU8(bytes, true), path).not.toMatch(
      /\/(?:JavaScript|JS|URI|Launch|OpenAction|EmbeddedFile)\b/,
    );
  },
};

test.each(Object.entries(hostileValues))(
  "a release with %s in all its names is what it is without",
  async (_, value) => {
    const [problem] = checkSheet(device({}, { "1": ["RECEPTON", ""] }), catalogue);
    if (problem === undefined) throw new Error("nothing is asked");
    const sheet = aloneDevice({
      file: `${value}.pdf`,
      mark: value,
      order: value,
      project: value,
      notes: value,
    });
    const at = new Date("2026-11-09T14:30:00Z");
    const packed = await packageOf(
      releaseOf([sheet], {
        by: value,
        confirmations: [{ number: 1, problem, station: value, by: value, why: value, at }],
      }),
    );
    if (!packed.ok) throw new Error(packed.why.join("\n"));
    safe.path(packed.name, "the folder's name");
    const ends = new Set<string>();
    for (const { path, bytes } of packed.files) {
      safe.path(path, path);
      const end = /[^.]+$/.exec(path)?.[0] ?? "";
      ends.add(end);
      expect(kinds, path).toHaveProperty(end);
      kinds[end]?.(bytes, path);
    }
    expect([...ends].toSorted()).toEqual(Object.keys(kinds).toSorted());
  },
);
