import { letterSaysMore } from "../checks/letter/letter-says-more.ts";
import { noSheet } from "../checks/letter/no-sheet.ts";
import { sharedLink } from "../checks/letter/shared-link.ts";
import { isBlank } from "../checks/required.ts";
import { letterOf } from "../orders/ids.ts";
import { type Carried, untold, untoldFile } from "../trade/carried.ts";
import type { Problem } from "../trade/problem.ts";
import { isForPerson } from "./for-person.ts";
import type { Report } from "./report.ts";

/**
 * What a letter leaves open in its orders and no sheet shows: files that have to come as sheets, sheets saved blank,
 * and words and links for a person.
 */
export function carriedBy(report: Report): readonly Carried[] {
  const { letter = "" } = report;
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
  const words = wordsIn(report).map(
    ({ text, by }): Carried => ({ letter, what: "words", text, ...(by === undefined ? {} : { by }) }),
  );
  return [...files, ...words];
}

/** What of a letter waits for a person to read, open or play it, and the problem that tells of it. */
export function wordsIn({ files, problems }: Pick<Report, "files" | "problems">): {
  readonly text: string;
  readonly by?: string;
  readonly problem: Problem;
}[] {
  const attached = files.some(({ file }) => file.kind !== "decoration");
  const said = problems.flatMap((problem) => {
    const { check, wording, facts } = problem;
    if (check !== letterSaysMore.id) {
      const none = check === noSheet.id ? untold[attached ? "files" : "letter"] : undefined;
      const text = none ?? unclear[check];
      return text === undefined ? [] : [{ text, problem }];
    }
    const { words = unclear[wording], by } = facts;
    return [{ text: String(words), ...(by === undefined ? {} : { by: String(by) }), problem }];
  });
  // Where no sheet came, all files are waited for at once.
  if (said.some(({ text }) => text === untold.files)) return said;
  const unopened = files.flatMap(({ file, problems: faults }) =>
    faults.filter(isForPerson).map((problem) => ({ text: untoldFile(file.file), problem })),
  );
  return [...said, ...unopened];
}

/** By the wording that says so, or by the check. */
const unclear: Readonly<Record<string, string>> = {
  unsure: untold.unsure,
  long: untold.long,
  [sharedLink.id]: untold.link,
};
