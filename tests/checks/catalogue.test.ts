import { globSync } from "node:fs";
import { basename } from "node:path";
import { describe, expect, test } from "vitest";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../../src/checks/catalogue.ts";
import type { Check } from "../../src/checks/check.ts";
import { everyCheck, wordsOf } from "../../src/checks/run.ts";
import { aloneDevice, device, plate } from "../../src/checks/sample.ts";
import { catalogue } from "../make/config.ts";

const pointsNowhere = new Set([
  ...letterChecks.map(({ id }) => id),
  "file-still-unread",
  "letter-still-open",
]);

test("a check stands in a file of its name, in the folder of what it looks at", () => {
  const lists = { file: fileChecks, sheet: sheetChecks, order: orderChecks, letter: letterChecks };
  for (const [folder, checks] of Object.entries(lists)) {
    const files = globSync(`src/checks/${folder}/*.ts`).map((file) => basename(file, ".ts"));
    expect(checks.map((check) => check.id).toSorted()).toEqual(files.toSorted());
  }
});

describe.each(everyCheck)("$id", ({ id }) => {
  examplesOf(fileChecks, id);
  examplesOf(sheetChecks, id);
  examplesOf(orderChecks, id);
  examplesOf(letterChecks, id);
});

test.each(sheetChecks)("$id finds nothing on the sample sheets", (check) => {
  for (const sheet of [device(), aloneDevice(), plate()])
    expect([...check.find(sheet, catalogue)].map((problem) => wordsOf(problem).says)).toEqual([]);
});

function examplesOf<Subject>(checks: readonly Check<Subject>[], id: string): void {
  const check = checks.find((one) => one.id === id);
  if (check === undefined) return;

  test.each(check.passing)("passes $shows", ({ given }) => {
    expect([...check.find(given, catalogue)].map((problem) => wordsOf(problem).says)).toEqual([]);
  });
  test.each(check.failing)("finds $shows", (example) => {
    const found = [...check.find(example.given, catalogue)];
    const { wording, says, fix } = { ...check.wordings[example.wording], ...example };
    const told = found.map((problem) => ({ wording: problem.wording, ...wordsOf(problem) }));
    expect(told).toEqual([{ wording, says, fix }]);
    // What a letter says or has lost points at no file of it.
    if (!pointsNowhere.has(id)) for (const { spots } of found) expect(spots.length).toBeGreaterThan(0);
  });
  test("every wording is shown by an example", () => {
    const shown = new Set(check.failing.map(({ wording }) => wording));
    expect([...shown].toSorted()).toEqual(Object.keys(check.wordings).toSorted());
  });
  test("has an example that passes", () => {
    expect(check.passing.length).toBeGreaterThan(0);
  });
}
