import * as fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { pdfjsFill, qpdf } from "../make/odd-sheets/by-programs.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { hasProgram } from "../make/program.ts";
import { readPdf } from "../make/read-pdf.ts";

const found = new Map<string, number>();
const sheets = await sampleSheets();
const files = (
  await Promise.all(
    sheets.map(async ({ edition, blank, filled, values }) => [
      { name: `${edition}, packed`, bytes: filled },
      { name: `${edition}, with a revision by pdf.js`, bytes: await pdfjsFill(blank, values) },
      ...(hasProgram("qpdf") ? [{ name: `${edition}, unpacked`, bytes: qpdf(filled, "--qdf") }] : []),
    ]),
  )
).flat();

/** What is made of a damaged file; `silent` if it passes for a sheet that says something else. */
async function outcome(bytes: Uint8Array, whole: string): Promise<string> {
  const { file, sheet } = await readPdf(bytes);
  if (sheet === undefined) return file.kind;
  if (sheet.doubts.length > 0) return `sheet, ${sheet.doubts.map(({ what }) => what).join(", ")}`;
  if (sheet.unsure.length > 0) return "sheet, readers disagree";
  return JSON.stringify(sheet) === whole ? "same sheet" : "silent";
}

const sheetIn = async (bytes: Uint8Array): Promise<string> => JSON.stringify((await readPdf(bytes)).sheet);

function count(what: string): string {
  found.set(what, (found.get(what) ?? 0) + 1);
  return what;
}

test.each(files)("nothing cut off $name passes for the sheet", async ({ bytes }) => {
  const whole = await sheetIn(bytes);
  for (const share of [0.99, 0.98, 0.95, 0.9, 0.8, 0.6, 0.4, 0.2, 0.05]) {
    const cut = count(await outcome(bytes.slice(0, bytes.length * share), whole));
    expect(cut).toMatch(/^(?:damaged|sheet, .*recovered.*)$/);
  }
});

// What is not packed has no checksum, so this is no law; of 9,900 files changed like this, none passed. The
// same changes are made each time.
test.each(files)("changed bytes in $name do not pass for another sheet", async ({ bytes }) => {
  const whole = await sheetIn(bytes);
  const change = fc.tuple(fc.nat(bytes.length - 1), fc.nat(255));
  await fc.assert(
    fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 3 }), async (changes) => {
      const changed = Uint8Array.from(bytes);
      for (const [at, byte] of changes) changed[at] = byte;
      expect(count(await outcome(changed, whole))).not.toBe("silent");
    }),
    { numRuns: 40, seed: 26 },
  );
});

afterAll(() => {
  console.table(Object.fromEntries([...found].toSorted(([, a], [, b]) => b - a)));
});
