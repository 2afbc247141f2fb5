import type { Catalogue } from "../catalogue/catalogue.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../checks/catalogue.ts";
import type { Check } from "../checks/check.ts";
import { type AnyCheck, everyCheck, wordsOf } from "../checks/run.ts";
import type { Severity } from "../trade/problem.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { nearest } from "./nearest.ts";
import { table } from "./table.ts";

export const severityWords = {
  stops: "stops the order until it is fixed",
  asks: "asks somebody to confirm",
  notes: "is worth knowing, and stops nothing",
} as const satisfies Record<Severity, string>;

export const explain = defineCommand({
  name: "explain",
  takes: "[ID]",
  words: [0, 1],
  summary: "Lists every check, or explains one with its reason, source and examples.",
  details: "ID is the name of a check as an answer's JSON or the day's audit prints it.",
  options: settingsOption,
  async run([id], { settings }, { out }) {
    const { catalogue } = await configure(settings);
    out(id === undefined ? listText() : checkText(id, catalogue));
    return 0;
  },
});

function listText(): string {
  const groups: [string, readonly AnyCheck[]][] = [
    ["On an attachment", fileChecks],
    ["On a sheet", sheetChecks],
    ["On an order", orderChecks],
    ["On a letter", letterChecks],
  ];
  return groups
    .map(([title, checks]) =>
      [
        title,
        table([["check", "weight", "what is wrong"], ...checks.map((c) => [c.id, c.severity, c.title])], 72),
      ].join("\n"),
    )
    .join("\n\n");
}

function checkText(id: string, catalogue: Catalogue): string {
  const text =
    textIn(fileChecks, id, catalogue) ??
    textIn(sheetChecks, id, catalogue) ??
    textIn(orderChecks, id, catalogue) ??
    textIn(letterChecks, id, catalogue);
  if (text !== undefined) return text;
  const guess = nearest(
    id,
    everyCheck.map((one) => one.id),
  );
  throw new CannotRun(`there is no check “${id}”${guess === undefined ? "" : `; did you mean ${guess}?`}`);
}

function textIn<Subject>(
  checks: readonly Check<Subject>[],
  id: string,
  catalogue: Catalogue,
): string | undefined {
  const check = checks.find((one) => one.id === id);
  if (check === undefined) return undefined;
  const { source } = check;
  const shown = check.failing.flatMap(({ shows, given, wording }) => {
    const subject = given(catalogue);
    const found = subject === undefined ? [] : [...check.find(subject, catalogue)];
    const problem = found.find((one) => one.wording === wording);
    if (problem === undefined) return [];
    const { says, fix } = wordsOf(problem);
    return [`  ${shows}:`, `    ${says}`, `    ${fix}`];
  });
  return [
    `${check.id}: ${check.title}`,
    `It ${severityWords[check.severity]}.`,
    "",
    check.why,
    `Source: ${source.kind === "standard" ? source.name : source.kind}.`,
    "",
    "What it finds, for example:",
    ...shown,
    "",
    "What it lets pass:",
    ...check.passing.map(({ shows }) => `  ${shows}`),
  ].join("\n");
}
