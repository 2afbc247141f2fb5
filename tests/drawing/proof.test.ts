import { createHash } from "node:crypto";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import * as fc from "fast-check";
import { PDFDocument, PrintScaling } from "pdf-lib";
import { getDocument, VerbosityLevel } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test, vi } from "vitest";
import { checkSheet } from "../../src/checks/run.ts";
import { without } from "../../src/checks/sample.ts";
import { outlineLooks } from "../../src/drawing/kinds.ts";
import { proofPdf, proofSvgs } from "../../src/drawing/proof.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Order } from "../../src/trade/order.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";
import { installed, look, run } from "./look.ts";
import type { Rectangle } from "./measure.ts";
import { alone, drawingOf, layouts, orderOf, station } from "./proof-orders.ts";

/** The short hash that is printed on the only drawing of these sheets. */
function hashOf(...sheets: readonly Sheet[]): string {
  return /Content (\w{8})</.exec(drawingOf(...sheets))?.[1] ?? "";
}

function shortHash(svg: string): string {
  return createHash("sha256").update(svg).digest("hex").slice(0, 12);
}

const folder = mkdtempSync(join(tmpdir(), "burin-proof-"));

test.each([
  [1, [792, 612]],
  [5, [792, 612]],
  // US Legal: 14 by 8.5 inches.
  [6, [1008, 612]],
])("a plate of %d gangs is printed on paper that holds it, at 100 %%", async (gangs, size) => {
  const pdf = await proofPdf(orderOf(...(gangs === 1 ? [alone("D4")] : station(gangs))), catalogue);
  expect((await look(pdf)).size.map(Math.round)).toEqual(size);
  const { catalog } = await PDFDocument.load(pdf);
  expect(catalog.getViewerPreferences()?.getPrintScaling()).toBe(PrintScaling.None);
});

test("the proof of a release says when it was released and by whom, and forbids no cutting", async () => {
  const order = orderOf(...completeOrder());
  const released = { on: "2026-11-18", by: "Tom Aldous" };
  const { words } = await look(await proofPdf(order, catalogue, { revision: 3, released }));
  expect(words).toContain("on 2026-11-18 by Tom Aldous");
  expect(words).not.toContain("not to be cut");
});

test("a proof says whose station it is, in which state, and that it is no release", async () => {
  const order = orderOf(...completeOrder());
  const { words, title, pages } = await look(await proofPdf(order, catalogue, { revision: 3 }));
  for (const said of [
    "S-104",
    "Order BW-2207",
    "Larkspur Library",
    "Revision 3",
    "not to be cut before released",
    "Colours are approximate",
    "S-104 plate.pdf",
    "S-104 pos 4.pdf",
    "Oat, Ink lettering",
    "50 mm",
    "207.96 mm (8.19 in)",
  ])
    expect(words).toContain(said);
  expect(words).toMatch(/Content [0-9a-f]{8} /);
  expect(title).toBe("Proof of order BW-2207");
  expect(pages).toBe(2);
});

test.each([
  ["a PDF", async (order: Order) => eachPage(await proofPdf(order, catalogue))],
  ["SVG", async (order: Order) => proofSvgs(order, catalogue)],
])("the caution stands on every page of %s", async (_, pagesOf) => {
  const stations = [[alone("D4")], ...[2, 3, 4, 5, 6].map(station)];
  const sheets = stations.flatMap((some, n) =>
    some.map((sheet, i) => ({ ...sheet, mark: `S-${n}`, id: `${n}/${i}` })),
  );
  const pages = await pagesOf(orderOf(...sheets));
  expect(pages.length).toBeGreaterThanOrEqual(stations.length);
  for (const page of pages) {
    expect(page).toContain("The program does not know the wiring.");
    expect(page).toContain("local code and a licensed electrician decide.");
  }
});

/** The words of each page. */
async function eachPage(bytes: Uint8Array): Promise<string[]> {
  const pdf = await PDFDocument.load(bytes);
  return Promise.all(
    pdf.getPageIndices().map(async (index) => {
      const one = await PDFDocument.create();
      for (const page of await one.copyPages(pdf, [index])) one.addPage(page);
      return (await look(await one.save())).words;
    }),
  );
}

test("the short hash changes with what is cut and made, and with nothing else", () => {
  const [one, ...rest] = completeOrder();
  const first = hashOf(...completeOrder());
  expect(first).toMatch(/^[0-9a-f]{8}$/);
  expect(hashOf(...rest.toReversed(), plate({ id: "9/9", file: "other.pdf", contact: {} }))).toBe(first);
  expect(hashOf(plate({}, { "1": ["FOYER", "W"] }), ...rest)).not.toBe(first);
  expect(hashOf(plate({ finish: "CHK" }), ...rest)).not.toBe(first);
  expect(
    hashOf(...(one === undefined ? [] : [one]), ...rest.slice(1), deviceAt(1, { layouts: ["D6"] })),
  ).not.toBe(first);
});

test("the same order makes the same bytes", async () => {
  const order = orderOf(...completeOrder());
  expect(await proofPdf(order, catalogue)).toEqual(await proofPdf(order, catalogue));
});

test("only what a problem points at is outlined, and mere notes are not", () => {
  const bad = plate({}, { "2": ["MEETING ROOM SOUTH", ""], "3": ["", ""] });
  const order = orderOf(bad, ...completeOrder().slice(1));
  const problems = checkSheet(bad, catalogue);
  const outlines = (some: typeof problems): Rectangle[] =>
    proofSvgs(order, catalogue, { problems: some }).flatMap((svg) =>
      [...svg.matchAll(/<rect x="(\S+)" y="(\S+)" width="(\S+)" height="(\S+)" [^>]*stroke="([^"]+)"/g)]
        .filter(([, , , , , colour]) => Object.values(outlineLooks).some((look) => look.colour === colour))
        .map(([, x, y, width, height]) => ({
          x: Number(x),
          y: Number(y),
          width: Number(width),
          height: Number(height),
        })),
    );
  expect(problems.map(({ check }) => check).toSorted()).toEqual(["legend-empty", "row-too-long"]);
  const [one, other, ...more] = outlines(problems).toSorted((a, b) => a.x - b.x);
  expect(more).toEqual([]);
  // Half a millimetre around the faces above gangs 2 and 3, which lie one pitch apart.
  expect([one?.width, one?.height]).toEqual([43, 14]);
  expect((other?.x ?? 0) - (one?.x ?? 0)).toBeCloseTo(46.04, 2);
  expect(outlines(problems.map((problem) => ({ ...problem, verdict: "pass" })))).toEqual([]);
  expect(outlines([])).toEqual([]);
});

test("what is still to come is drawn as a dashed place", () => {
  const svg = drawingOf(plate(), deviceAt(2));
  expect(svg.match(/still to come<\/text>/g)).toHaveLength(3 + 3);
  expect(svg.match(/<rect [^>]*width="42" height="72"[^>]*stroke-dasharray/g)).toHaveLength(3);
});

test("an order of 60 stations is light enough to mail", async () => {
  const sheets = Array.from({ length: 60 }, (_, n) =>
    station(4).map((sheet, i) => ({ ...sheet, mark: `S-${n + 1}`, id: `${n + 1}/${i}`, notes: `${n}` })),
  ).flat();
  const pdf = await proofPdf(orderOf(...sheets), catalogue);
  // Each has a page for its list.
  expect((await look(pdf)).pages).toBe(120);
  expect(pdf.length).toBeLessThan(1_500_000);
});

describe("a proof opens without a warning in", () => {
  const sheets = [...station(6), without(aloneDevice({ project: "Лавка & <Larkspur>" }), "finish", "mark")];

  test("pdf.js", async () => {
    const said = vi.spyOn(console, "log").mockImplementation(() => undefined);
    const warned = vi.spyOn(console, "warn").mockImplementation(() => undefined);
    const task = getDocument({
      data: await proofPdf(orderOf(...sheets), catalogue),
      verbosity: VerbosityLevel.WARNINGS,
      useSystemFonts: false,
      disableFontFace: true,
    });
    const pdf = await task.promise;
    for (let n = 1; n <= pdf.numPages; n++) await (await pdf.getPage(n)).getOperatorList();
    await task.destroy();
    const lines = [...said.mock.calls, ...warned.mock.calls].flat();
    vi.restoreAllMocks();
    expect(lines.filter((line) => !/standardFontDataUrl/.test(String(line)))).toEqual([]);
  });

  test.for([
    ["pdftoppm", ["-r", "20", "-png"]],
    ["gs", ["-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=nullpage"]],
    ["qpdf", ["--check"]],
  ] as const)("%s", async ([program, before], { skip }) => {
    if (!installed(program)) skip(`${program} is not installed`);
    const file = join(folder, `${program}.pdf`);
    writeFileSync(file, await proofPdf(orderOf(...sheets), catalogue));
    const pictures = program === "pdftoppm" ? [join(folder, "page")] : [];
    const { status, stderr } = run(program, ...before, file, ...pictures);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
  });
});

// Whoever changes how proofs look reads them on paper again, and then puts the new digits here.
test("every layout and every plate looks as it did when somebody last looked at it", () => {
  const drawings = [
    ...layouts.map((layout) => [layout, drawingOf(alone(layout))] as const),
    ...[2, 3, 4, 5, 6].map((gangs) => [`P${gangs}`, drawingOf(...station(gangs))] as const),
  ];
  expect(drawings.map(([name, svg]) => `${name} ${shortHash(svg)}`)).toMatchInlineSnapshot(`
    [
      "D1 4d8f4b107c12",
      "D2 25f9d28ef11d",
      "D4 630f39643c1c",
      "D6 0a75bc129135",
      "P2 b43df5da0819",
      "P3 2aa082866069",
      "P4 4e6f68865572",
      "P5 23fd026dee0b",
      "P6 7525432e15c2",
    ]
  `);
});

test("whatever is typed, a proof is drawn, well-formed and without a number that is none", async () => {
  const text = fc.oneof(fc.string({ unit: "binary" }), fc.constantFrom("", "ENTRY", "<&>", "\u0000", "É→"));
  const number = fc.oneof(fc.integer(), fc.integer({ min: -1, max: 9 }));
  const changes = fc.record(
    {
      ...Object.fromEntries(
        ["project", "order", "mark", "finish", "lettering", "file"].map((key) => [key, text]),
      ),
      gangs: number,
      position: number,
      standing: fc.constantFrom("alone", "in-plate"),
      legendPlace: text,
      layouts: fc.array(fc.oneof(fc.constantFrom("D1", "D6"), text), { maxLength: 2 }),
      legends: fc.array(
        fc.record({
          face: fc.constantFrom("1", "2", "7", "plate"),
          rows: fc.array(text, { maxLength: 3 }),
          plain: fc.boolean(),
        }),
      ),
    },
    { requiredKeys: [] },
  );
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.tuple(fc.constantFrom<Sheet>(device(), plate(), aloneDevice()), changes)),
      async (typed) => {
        const sheets = typed.map(([sheet, change], i) => ({ ...sheet, ...change, id: `1/${i}` }));
        const problems = sheets.flatMap((sheet) => checkSheet(sheet, catalogue));
        for (const order of gatherOrders(sheets)) {
          for (const svg of proofSvgs(order, catalogue, { problems })) {
            expect(svg).not.toMatch(/NaN|undefined|Infinity|(?!\n)\p{C}/u);
            const shell = svg.replaceAll(/<(?:rect|path)[^<>]*\/>|<(title|text)[^<>]*>[^<>]*<\/\1>/g, "");
            expect(shell).toMatch(/^<svg [^<>]*>\s*<\/svg>\s*$/);
          }
          await look(await proofPdf(order, catalogue, { problems }));
        }
      },
    ),
    { numRuns: 60 },
  );
});
