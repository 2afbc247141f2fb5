import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { checkSheet } from "../../src/checks/run.ts";
import { legend } from "../../src/checks/sample.ts";
import { packageOf, type Release } from "../../src/release/release.ts";
import type { Confirmation } from "../../src/trade/confirmation.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { temporaryFolder } from "../make/desk.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";
import { bytesIn, bytesOf, catalogue, filesOf, releaseOf, sheets, textIn } from "./packed.ts";

interface Manifest {
  readonly order: string;
  readonly revision: number;
  readonly releasedBy: string;
  readonly releasedAt: string;
  readonly files: readonly {
    readonly path: string;
    readonly is: string;
    readonly size: number;
    readonly sha256: string;
  }[];
}

test("the manifest counts every file but itself, as sha256sum does, and says who released what and when", async () => {
  const files = await filesOf(releaseOf(sheets));
  const manifest = JSON.parse(textIn(files, "manifest.json")) as Manifest;
  expect(manifest).toMatchObject({
    order: "BW-2207",
    revision: 3,
    releasedBy: "Ada Vale",
    releasedAt: "2026-11-09T15:00:00.000Z",
  });
  expect(manifest.files.map(({ path }) => path)).toEqual(
    [...files.keys()].filter((path) => path !== "manifest.json"),
  );
  expect(manifest.files.every(({ is }) => is !== "")).toBe(true);
  const folder = temporaryFolder();
  for (const { path, bytes } of files.values()) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  // FIPS 180-4, as GNU coreutils reckon it.
  const list = manifest.files.map(({ path, sha256 }) => `${sha256}  ${path}\n`).join("");
  const counted = spawnSync("sha256sum", ["--check", "--strict"], {
    cwd: folder,
    input: list,
    encoding: "utf8",
  });
  expect(counted.stderr).toBe("");
  expect(counted.stdout.split("\n").filter((line) => line.endsWith(": OK"))).toHaveLength(files.size - 1);
  for (const { path, size } of manifest.files) {
    const { stdout } = spawnSync("wc", ["-c", path], { cwd: folder, encoding: "utf8" });
    expect(Number.parseInt(stdout, 10)).toBe(size);
  }
});

test("the same release makes the same bytes, wherever and whenever", async () => {
  expect(await packageOf(releaseOf(sheets))).toEqual(await packageOf(releaseOf(sheets)));
});

test("the originals are the sheets' bytes, under names of their own", async () => {
  const named = [
    aloneDevice({ id: "1/1", file: "CON.pdf", mark: "A" }),
    aloneDevice({ id: "1/2", file: "con.PDF", mark: "B" }),
    aloneDevice({ id: "1/3", file: "a/b.pdf", mark: "C" }),
  ];
  const files = await filesOf(releaseOf(named));
  const originals = [...files.keys()].filter((path) => path.startsWith("originals/"));
  expect(originals).toEqual(["originals/_CON.pdf", "originals/_con (2).pdf", "originals/a-b.pdf"]);
  expect(originals.map((path) => bytesIn(files, path))).toEqual(named.map(bytesOf));
});

test("a sheet that came twice is there twice, and is cut once", async () => {
  const twice = [...completeOrder(), deviceAt(1, { id: "2/1", file: "again.pdf" })];
  const files = await filesOf(releaseOf(twice));
  expect(files.has("originals/again.pdf")).toBe(true);
  expect([...files.keys()].filter((path) => path.startsWith("cut/"))).toHaveLength(10);
});

test("a package without the bytes of a sheet is not made", async () => {
  await expect(packageOf(releaseOf(sheets, { originals: new Map() }))).rejects.toThrow("are missing");
});

const marks = [
  "CON",
  "con",
  "A/B",
  "A:B",
  "..",
  "\u0000",
  "S-1.",
  "x".repeat(300),
  "=1+1",
  "CAF\u00C9",
  "CAFE\u0301",
];

test("whatever a station is called, its cut files have names of their own that every disk takes", async () => {
  const stations = marks.map((mark, i) => aloneDevice({ id: `1/${i + 1}`, file: `${i}.pdf`, mark }));
  // Marks that a person takes for one are one station, with a device too many.
  const packed = await Promise.all(stations.map((sheet) => filesOf(releaseOf([sheet]))));
  for (const files of packed) {
    const cut = [...files.keys()].filter((path) => path.startsWith("cut/"));
    expect(cut).toHaveLength(4);
    for (const path of cut) {
      expect(path).toMatch(/^cut\/[^/\\:*?"<>|\p{Cc}]+ (?:plate|device)\.(?:svg|dxf)$/u);
      expect(path).not.toMatch(/^cut\/(?:\.|-)/);
      expect(Buffer.byteLength(path)).toBeLessThan(150);
    }
  }
});

test("the folder is called by the order and its revision", async () => {
  const odd = aloneDevice({ order: "PO 12/34: A" });
  expect(await packageOf(releaseOf([odd]))).toMatchObject({ name: "PO 12-34- A revision 3" });
});

test("every face has a row in the schedule, and what is left plain says so outside of the legends", async () => {
  const bare = plate({ legends: [1, 2, 3, 4].map((n) => ({ ...legend(`${n}`, "", ""), plain: n === 2 })) });
  const made = [
    { ...bare, legends: bare.legends.map((one) => (one.plain ? one : legend(one.face, "FOYER", ""))) },
    ...completeOrder().slice(1),
  ];
  const files = await filesOf(releaseOf(made));
  const lines = textIn(files, "schedule.csv").trim().split("\r\n");
  expect(lines).toHaveLength(1 + 4 + 4 * 4);
  expect(lines.filter((line) => line.includes(",plain,"))).toEqual([
    expect.stringMatching(/^BW-2207,S-104,,gang 2,,,plain,/),
  ]);
});

test("what was confirmed stands there with who said so and when, to read and for programs", async () => {
  const [problem] = checkSheet(device({}, { "1": ["RECEPTON", ""] }), catalogue).filter(
    ({ check }) => check === "spelling",
  );
  if (problem === undefined) throw new Error("nothing is asked");
  const at = new Date("2026-11-09T14:30:00Z");
  const confirmations: Confirmation[] = [
    { number: 4, problem, station: "S-104", position: 2, by: "ines@brightwire.example", at, letter: 12 },
    { number: 5, problem, by: "Ada Vale", at, why: "by telephone\nat noon" },
  ];
  const files = await filesOf(releaseOf(sheets, { confirmations }));
  expect(JSON.parse(textIn(files, "confirmations.json"))).toMatchObject([
    { question: 4, check: "spelling", by: "ines@brightwire.example", letter: 12, at: at.toISOString() },
    { question: 5, by: "Ada Vale", why: "by telephone\nat noon" },
  ]);
  const text = textIn(files, "confirmations.txt");
  expect(text).toContain("Meant so: ines@brightwire.example, 2026-11-09 14:30 UTC, in letter 12\n");
  expect(text).toContain("(S-104, position 2)\n");
  expect(text).toContain("Reason: by telephone at noon\n");
});

/** Orders that must not be cut, even if somebody says that they have passed. */
const refused: Record<string, readonly [readonly Sheet[], RegExp]> = {
  "lacks a device": [completeOrder().slice(0, 4), /device 4 of station S-104 is missing/],
  "lacks its plate": [completeOrder().slice(1), /plate of station S-104 is missing/],
  "has a device too many": [[...completeOrder(), deviceAt(5)], /no room at station S-104/],
  "has a device without a position": [
    [plate(), ...[1, 2, 3].map((n) => deviceAt(n)), withoutPosition()],
    /does not say which position/,
  ],
  "has no number": [[aloneDevice({ order: "" })], /no number/],
  "has a finish that nobody makes": [[aloneDevice({ finish: "XX" })], /catalogue does not have/],
  "has a layout that nobody makes": [[aloneDevice({ layouts: ["D9"] })], /catalogue does not have/],
  "has a character without strokes": [[aloneDevice({}, { "1": ["€", ""] })], /“€”/],
  "has text on a face that is left plain": [[plainWithText()], /row 1 on button 1 .* would not be cut/],
  "has text on a face that it does not have": [
    [aloneDevice({ layouts: ["D2"] })],
    /text for face 3, which is not made/,
  ],
};

function withoutPosition(): Sheet {
  const { position: _, ...sheet } = deviceAt(4);
  return sheet;
}

function plainWithText(): Sheet {
  const sheet = aloneDevice();
  return { ...sheet, legends: sheet.legends.map((one) => ({ ...one, plain: one.face === "1" })) };
}

describe("an order is refused that", () => {
  test.each(Object.entries(refused))("%s", async (_, [of, why]) => {
    expect(await whyNot(releaseOf(of))).toEqual(expect.arrayContaining([expect.stringMatching(why)]));
  });
});

test("a legend wider than its face is refused", async () => {
  const narrow = {
    ...catalogue,
    layouts: catalogue.layouts.map((one) => ({ ...one, face: { ...one.face, width: 6 } })),
  };
  const why = await whyNot(releaseOf([aloneDevice()], { catalogue: narrow }));
  expect(why).toEqual(expect.arrayContaining([expect.stringContaining("wider than its face")]));
});

async function whyNot(release: Release): Promise<readonly string[]> {
  const packed = await packageOf(release);
  return packed.ok ? [] : packed.why;
}
