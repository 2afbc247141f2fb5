import { expect, test } from "vitest";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../../src/checks/catalogue.ts";
import type { Check } from "../../src/checks/check.ts";
import { everyCheck, wordsOf } from "../../src/checks/run.ts";
import { maker, trade } from "../make/config.ts";
import { sentencesOf, tooLong } from "../make/sentences.ts";

/** All that the failing examples of some checks say and advise, by both catalogues, with the files that they name. */
function toldBy<Subject>(checks: readonly Check<Subject>[], id: string): string[] {
  const check = checks.find((one) => one.id === id);
  return [trade.catalogue, maker.catalogue].flatMap((catalogue) =>
    (check?.failing ?? []).flatMap(({ given }) => {
      const subject = given(catalogue);
      if (check === undefined || subject === undefined) return [];
      const names = [...JSON.stringify(subject).matchAll(/"(?:file|from)":"([^"]+)"/g)].map(
        ([, name = ""]) => name,
      );
      const problems = [...check.find(subject, catalogue)].map(wordsOf);
      return sentencesOf(
        problems.flatMap(({ says, fix }) => [says, fix]),
        names,
      );
    }),
  );
}

test.each(everyCheck)("no sentence of $id is longer than a tired reader can hold", ({ id }) => {
  const told = [
    ...toldBy(fileChecks, id),
    ...toldBy(sheetChecks, id),
    ...toldBy(orderChecks, id),
    ...toldBy(letterChecks, id),
  ];
  expect(told).not.toEqual([]);
  expect(tooLong(told)).toEqual([]);
});
