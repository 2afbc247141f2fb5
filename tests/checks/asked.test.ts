import { expect, test } from "vitest";
import { areWords, askedWords } from "../../src/checks/asked.ts";
import { letterStillOpen, stillOpen } from "../../src/checks/order/letter-still-open.ts";
import { checkSheet } from "../../src/checks/run.ts";
import { subject, without } from "../../src/checks/sample.ts";
import { untold, untoldFile } from "../../src/trade/carried.ts";
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

test("words are asked about as the next letter asks about them, and only what was told is taken back", () => {
  const texts = ["Call me.", ...Object.values(untold), untoldFile("voice.mp3")];
  const carried = texts.map((text) => ({ letter: "1", what: "words", text }) as const);
  const problems = [...letterStillOpen.find({ ...subject([misspelt]), carried }, catalogue)];
  expect(carried.map(stillOpen)).toEqual(problems);
  expect(problems.map(areWords)).toEqual(texts.map((text) => text === "Call me."));
  expect(areWords({ check: "more-announced", facts: { words: "Call me." } })).toBe(false);
});
