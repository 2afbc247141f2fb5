import { table } from "../answer/table.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../checks/catalogue.ts";
import { explained } from "../checks/explained.ts";
import { type AnyCheck, everyCheck, severityWords } from "../checks/run.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { nearest } from "./nearest.ts";

export const explain = defineCommand({
  name: "explain",
  words: [0, 1],
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
  const check = explained(id, catalogue);
  if (check === undefined) {
    const guess = nearest(
      id,
      everyCheck.map((one) => one.id),
    );
    throw new CannotRun(`there is no check “${id}”${guess === undefined ? "" : `; did you mean ${guess}?`}`);
  }
  return [
    `${check.id}: ${check.title}`,
    `It ${severityWords[check.severity]}.`,
    "",
    check.why,
    `Source: ${check.source}.`,
    "",
    "What it finds, for example:",
    ...check.finds.flatMap(({ shows, says, fix }) => [`  ${shows}:`, `    ${says}`, `    ${fix}`]),
    "",
    "What it lets pass:",
    ...check.passes.map((shows) => `  ${shows}`),
  ].join("\n");
}
