import { globSync } from "node:fs";
import { basename } from "node:path";
import { describe, expect, test } from "vitest";
import type { Catalogue } from "../../src/catalogue/catalogue.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../../src/checks/catalogue.ts";
import type { Check } from "../../src/checks/check.ts";
import { everyCheck, wordsOf } from "../../src/checks/run.ts";
import { sampleOf } from "../../src/checks/sample.ts";
import { maker, trade } from "../make/config.ts";

const pointsNowhere = new Set([
  "manager-word",
  ...letterChecks.map(({ id }) => id),
  "count-differs",
  "more-announced",
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

/** Two catalogues that have little in common. */
const catalogues = [
  ["bare facts of the trade", trade.catalogue],
  ["the demonstration's maker", maker.catalogue],
] as const;

describe.each(catalogues)("by the catalogue of %s,", (_, catalogue) => {
  describe.each(everyCheck)("$id", ({ id }) => {
    examplesOf(fileChecks, id, catalogue);
    examplesOf(sheetChecks, id, catalogue);
    examplesOf(orderChecks, id, catalogue);
    examplesOf(letterChecks, id, catalogue);
  });

  test.each(sheetChecks)("$id finds nothing on the sample sheets", (check) => {
    const { device, aloneDevice, plate } = sampleOf(catalogue);
    for (const sheet of [device(), aloneDevice(), plate()])
      expect([...check.find(sheet, catalogue)].map((problem) => wordsOf(problem).says)).toEqual([]);
  });
});

test.each(everyCheck)("each example of $id is shown by one of them", ({ id }) => {
  const lists: readonly (readonly Pick<Check<unknown>, "id" | "passing" | "failing">[])[] = [
    fileChecks,
    sheetChecks,
    orderChecks,
    letterChecks,
  ];
  const examples = lists
    .flat()
    .filter((check) => check.id === id)
    .flatMap(({ passing, failing }) => [...passing, ...failing]);
  for (const { shows, given } of examples)
    expect(
      catalogues.some(([, catalogue]) => given(catalogue) !== undefined),
      shows,
    ).toBe(true);
});

test("an example that a catalogue has nothing to show by is left out", () => {
  const { catalogue } = trade;
  const [first] = catalogue.finishes;
  const uniform = { ...catalogue, finishes: first === undefined ? [] : [first] };
  const [example] = sheetChecks.find(({ id }) => id === "red-body")?.failing ?? [];
  expect(example?.given(catalogue)).toBeDefined();
  expect(example?.given(uniform)).toBeUndefined();
  for (const { passing } of sheetChecks.filter(({ id }) => id === "row-too-long"))
    for (const { given } of passing) expect(given(uniform)).toBeDefined();
});

/** Whether an example tells its sentences by this catalogue: by the trade's, or by the maker's if that shows nothing. */
function tellsBy({ given }: Check<unknown>["failing"][number], catalogue: Catalogue): boolean {
  return catalogue === (given(trade.catalogue) === undefined ? maker : trade).catalogue;
}

function examplesOf<Subject>(checks: readonly Check<Subject>[], id: string, catalogue: Catalogue): void {
  const check = checks.find((one) => one.id === id);
  if (check === undefined) return;
  const shown = <E extends Check<Subject>["passing"][number]>(examples: readonly E[]) =>
    examples.flatMap((example) => {
      const subject = example.given(catalogue);
      return subject === undefined ? [] : [{ ...example, subject }];
    });

  test.each(shown(check.passing))("passes $shows", ({ subject }) => {
    expect([...check.find(subject, catalogue)].map((problem) => wordsOf(problem).says)).toEqual([]);
  });
  test.each(shown(check.failing))("finds $shows", ({ subject, ...example }) => {
    const found = [...check.find(subject, catalogue)];
    const { wording, says, fix } = example;
    const told = found.map((problem) => ({ wording: problem.wording, ...wordsOf(problem) }));
    if (tellsBy(example, catalogue)) expect(told).toEqual([{ wording, says, fix }]);
    else expect(told.map((problem) => problem.wording)).toEqual([wording]);
    for (const one of told) expect(`${one.says} ${one.fix}`).not.toMatch(/[{}]|undefined|NaN/);
    // What a letter says or has lost points at no file of it.
    if (!pointsNowhere.has(id)) for (const { spots } of found) expect(spots.length).toBeGreaterThan(0);
  });
  test("every wording is shown by an example", () => {
    const wordings = new Set(check.failing.map(({ wording }) => wording));
    expect([...wordings].toSorted()).toEqual(Object.keys(check.wordings).toSorted());
  });
  test("has an example that passes", () => {
    expect(check.passing.length).toBeGreaterThan(0);
  });
}
