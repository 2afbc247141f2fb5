import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import type { Sheet } from "../../../src/trade/sheet.ts";
import { editions } from "../../make/config.ts";
import { answersFor } from "../../make/filled.ts";
import { blankForm, filledForm } from "../../make/pdf.ts";
import { hasProgram, run } from "../../make/program.ts";
import { readPdf } from "../../make/read-pdf.ts";
import { xfdf } from "../../make/xfdf.ts";

const folder = await mkdtemp(join(tmpdir(), "burin-foreign-"));
const at = (name: string): string => join(folder, name);
afterAll(() => rm(folder, { recursive: true }));

async function sheetOf(bytes: Uint8Array): Promise<Sheet | undefined> {
  return (await readPdf(bytes)).sheet;
}

describe.skipIf(!hasProgram("pdftk"))("pdftk", () => {
  test.each(editions)("fills $title, and it reads as if filled by us", async (edition) => {
    const answers = { ...answersFor(edition) };
    const row = edition.fields.find(({ place }) => place === "row.1.1")?.name ?? "";
    answers[row] = "CAFÉ €’5";
    await writeFile(at("blank.pdf"), await blankForm(edition));
    await writeFile(at("answers.xfdf"), xfdf(answers));
    run("pdftk", at("blank.pdf"), "fill_form", at("answers.xfdf"), "output", at("filled.pdf"));
    const sheet = await sheetOf(await readFile(at("filled.pdf")));
    expect(sheet?.legends[0]?.rows[0]).toBe("CAFÉ €’5");
    expect(sheet).toEqual(await sheetOf(await filledForm(edition, answers)));
  });
});

describe.skipIf(!hasProgram("qpdf"))("qpdf", () => {
  test.each([
    ["without compression, without object streams", ["--qdf", "--object-streams=disable"]],
    ["with object streams, linearized", ["--object-streams=generate", "--linearize"]],
    ["locked to all but reading", ["--encrypt", "", "owner", "256", "--modify=none", "--"]],
  ])("rewrites a sheet %s, and it reads the same", async (_, options) => {
    for (const edition of editions) {
      const bytes = await filledForm(edition, answersFor(edition));
      await writeFile(at("ours.pdf"), bytes);
      run("qpdf", ...options, at("ours.pdf"), at("theirs.pdf"));
      const sheet = await sheetOf(await readFile(at("theirs.pdf")));
      expect(sheet).toBeDefined();
      expect(sheet).toEqual(await sheetOf(bytes));
    }
  });
});
