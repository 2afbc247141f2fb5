import { expect, test } from "vitest";
import { askedWords } from "../../src/checks/asked.ts";
import { checkSheet } from "../../src/checks/run.ts";
import { without } from "../../src/checks/sample.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";

const misspelt = device({}, { "1": ["SALONA", ""] });
const asked = (sheet: Sheet) => askedWords(checkSheet(sheet, catalogue), [device({ id: "1/9" }), sheet]);

test("a word that is asked about is kept with the project and the number of its sheet", () => {
  expect(asked(misspelt)).toEqual([{ word: "SALONA", project: "Larkspur Library", order: "BW-2207" }]);
});

test("nothing is kept of a sheet without a project or a number, and of a question about something else", () => {
  expect(asked(without(misspelt, "project"))).toEqual([]);
  expect(asked(without(misspelt, "order"))).toEqual([]);
  expect(asked(device({}, { "1": ["ALL  OFF", ""] }))).toEqual([]);
});
