import { spawnSync } from "node:child_process";
import { beforeAll, expect, test } from "vitest";
import { fillSheet, type SheetValues } from "../../src/drawing/fill-sheet.ts";
import type { MarkedProblem } from "../../src/drawing/marked/problem.ts";
import { type Marked, type Mending, markSheet } from "../../src/drawing/marked-copy.ts";
import { withPdf } from "../../src/reading/pdf/pdf.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { forms } from "../make/config.ts";
import { signed } from "../make/odd-sheets/by-hand.ts";
import { type SampleSheet, sampleSheets } from "../make/odd-sheets/sheets.ts";
import { writers } from "../make/pages/honest.ts";
import { readPdf } from "../make/read-pdf.ts";

/** What the sender left empty on the sample, and what we put there. */
const mending: Mending = {
  values: {
    project: "Larkspur Library",
    order_number: "BW-2207",
    bill_street: "48 Foundry Row",
    ship_same: true,
    position: "2",
    gangs: "4",
  },
  says: ["We have filled in 2, “Position” and “Gangs of the plate”, as your other sheets say. Check it."],
};
const problems: readonly MarkedProblem[] = [
  { number: 2, kind: "fail", says: "Not filled in.", fix: "Fill it in.", places: ["position", "gangs"] },
];

let left: SampleSheet;
let whole: Sheet;
beforeAll(async () => {
  const [device] = await sampleSheets();
  if (device === undefined) throw new Error("no sample sheet");
  const values: SheetValues = Object.fromEntries(
    Object.entries(device.values).filter(([field]) => !(field in mending.values)),
  );
  left = { ...device, values, filled: await fillSheet(device.blank, values) };
  whole = await sheetIn(device.filled);
});

async function sheetIn(bytes: Uint8Array): Promise<Sheet> {
  const { sheet } = await readPdf(bytes);
  if (sheet === undefined) throw new Error("no sheet");
  return sheet;
}

const mend = async (bytes: Uint8Array, change: Mending = mending): Promise<Marked> =>
  markSheet(bytes, await sheetIn(bytes), problems, change, await forms());

test.for(writers.filter(({ gives }) => gives === undefined))(
  "a sheet filled by $name reads as mended, and raises nothing",
  async ({ name, needs = [], fill }, { skip }) => {
    const [program = "true", ...ask] = needs;
    if (spawnSync(program, ask).status !== 0) skip(`${name} is not installed`);
    const [bytes] = await fill([left]);
    if (bytes === undefined) skip(`${name} does not fill it`);
    const { copy, mended } = await mend(bytes as Uint8Array);
    expect(mended).toBe(true);
    const { project = "", order = "", billTo, shipSame } = whole;
    expect(await sheetIn(copy as Uint8Array)).toEqual({
      ...(await sheetIn(bytes as Uint8Array)),
      project,
      order,
      billTo,
      shipSame,
      position: 2,
      gangs: 4,
    });
  },
);

test("the last page of a mended copy says what was filled in", async () => {
  const { copy } = await mend(left.filled);
  const text = await withPdf(copy as Uint8Array, async (pdf) => {
    const page = await pdf.getPage(pdf.numPages);
    const { items } = await page.getTextContent();
    return items.map((item) => ("str" in item ? item.str : "")).join(" ");
  });
  expect(text.replaceAll(/\s+/g, " ")).toContain("We have filled in 2, “Position”");
});

test("a mended copy can be changed, marked again and mended again", async () => {
  const once = await mend(left.filled);
  const again = await mend(once.copy as Uint8Array, { ...mending, values: { gangs: "3" } });
  expect(again.mended).toBe(true);
  expect((await sheetIn(again.copy as Uint8Array)).gangs).toBe(3);
});

test.each<[string, SheetValues]>([
  ["a value that its list does not have", { gangs: "40" }],
  ["a text that cannot be shown", { project: "Библиотека" }],
  ["a field that it does not have", { nowhere: "x" }],
])("%s is not filled in, and the sheet is marked all the same", async (_, values) => {
  const { copy, mended } = await mend(left.filled, { ...mending, values });
  expect(mended).toBeUndefined();
  expect(await sheetIn(copy as Uint8Array)).toEqual(await sheetIn(left.filled));
});

test("a signed sheet is not filled in, nor one of which no blank is known", async () => {
  const sealed = await mend(await signed(left.filled));
  expect(sealed.mended).toBeUndefined();
  const unknown = await markSheet(left.filled, await sheetIn(left.filled), problems, mending, undefined);
  expect([unknown.mended, unknown.copy === undefined]).toEqual([undefined, false]);
});
