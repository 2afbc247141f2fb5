import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { checkSheet } from "../../src/checks/run.ts";
import { blankSheet } from "../../src/drawing/blank-sheet.ts";
import { fillSheet, type SheetValues } from "../../src/drawing/fill-sheet.ts";
import { maker } from "../make/config.ts";
import { pdfjsFill, pdftkFill } from "../make/odd-sheets/by-programs.ts";
import { readPdf } from "../make/read-pdf.ts";
import { installed } from "./look.ts";

const header: SheetValues = {
  contact_name: "Wes Aldine",
  contact_email: "wes@ottergate.example",
  project: "Kestrel House Hotel",
  order_number: "OG-5510",
  station_mark: "L-1",
  bill_name: "Ottergate Electric",
  bill_street: "310 Millrace Road",
  bill_city: "Des Moines",
  bill_state: "IA",
  bill_postcode: "50309",
  ship_same: true,
  gangs: "2",
  finish: "Barley",
  lettering: "Sepia",
};
const forms: Readonly<Record<string, SheetValues>> = {
  device: {
    ...header,
    standing: "in-plate",
    position: "2",
    layout: "TRIO",
    button1_row1: "DESK",
    button1_row2: "LAMPS",
    button2_row1: "KEY RACK",
    button3_row1: "OFF",
  },
  plate: { ...header, gang1_row1: "LOBBY", gang2_row1: "FRONT DESK" },
};

/** What is read of a sheet, and what is wrong with it, without the edition's own name. */
async function readingOf(bytes: Uint8Array) {
  const { sheet } = await readPdf(bytes, undefined, maker);
  if (sheet === undefined) throw new Error("no sheet was read");
  const { edition, ...said } = sheet;
  const problems = checkSheet(sheet, maker.catalogue).map(({ check, severity }) => ({ check, severity }));
  return { edition: edition.name, said, problems };
}

const ways = [
  { way: "our own program", fill: fillSheet, needs: undefined },
  { way: "pdf.js", fill: pdfjsFill, needs: undefined },
  {
    way: "pdftk",
    fill: async (blank: Uint8Array, values: SheetValues) => pdftkFill(blank, values),
    needs: "pdftk",
  },
] as const;

describe.each(Object.keys(forms))("a %s sheet", (form) => {
  test.for(ways)(
    "filled in by $way reads the same on editions 3 and 4",
    async ({ fill, needs }, { skip }) => {
      if (needs !== undefined && !installed(needs)) skip(`${needs} is not installed`);
      const values = forms[form] ?? {};
      const edition = maker.editions.find(({ name }) => name === `${form}-4`);
      if (edition === undefined) throw new Error("edition 4 is not there");
      const old = new Uint8Array(readFileSync(`config/editions/${form}-3.pdf`));
      const before = await readingOf(await fill(old, values));
      const now = await readingOf(await fill(await blankSheet(edition, maker.catalogue), values));
      expect(now.edition).toBe(`${form}-4`);
      expect(now.problems).toEqual([]);
      expect(before.edition).toBe(`${form}-3`);
      expect(before.problems.map(({ check }) => check)).toEqual(["outdated-edition"]);
      expect(now.said).toEqual(before.said);
    },
  );
});
