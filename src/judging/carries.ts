import { letterSaysMore } from "../checks/letter/letter-says-more.ts";
import { noSheet } from "../checks/letter/no-sheet.ts";
import { sharedLink } from "../checks/letter/shared-link.ts";
import { isBlank } from "../checks/required.ts";
import { letterOf } from "../orders/ids.ts";
import type { Carried } from "../trade/carried.ts";
import type { Report } from "./report.ts";

/**
 * What a letter leaves open in its orders and no sheet shows: files that have to come as sheets, sheets saved blank,
 * and words and links for a person.
 */
export function carriedBy(report: Report): readonly Carried[] {
  const names = new Map(report.files.map(({ file }) => [file.id, file.file]));
  const faults = [...report.files.flatMap(({ problems }) => problems), ...report.problems];
  const refused = faults
    .filter(({ severity }) => severity === "stops")
    .flatMap(({ spots }) => spots.map(({ file }) => file));
  const blank = report.sheets.filter(({ sheet }) => isBlank(sheet)).map(({ sheet }) => sheet.id);
  const files = [...new Set([...refused, ...blank])].flatMap((id): Carried[] => {
    const text = names.get(id);
    return text === undefined ? [] : [{ letter: letterOf(id), what: "file", text }];
  });
  return [...files, ...wordsIn(report)];
}

function wordsIn({ problems, letter = "" }: Report): Carried[] {
  return problems.flatMap(({ check, wording, facts }): Carried[] => {
    const text = check === letterSaysMore.id ? String(facts["words"] ?? unclear[wording]) : unclear[check];
    return text === undefined ? [] : [{ letter, what: "words", text }];
  });
}

/** Said in place of words that cannot be told, by the wording that says so or by the check. */
const unclear: Readonly<Record<string, string>> = {
  unsure: "(words that are struck out or hidden)",
  long: "(more than a program reads)",
  [noSheet.id]: "(files that are no sheets)",
  [sharedLink.id]: "(a link to files, which the program has not opened)",
};
