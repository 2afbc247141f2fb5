import { readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import { composeAnswer } from "../src/answer/answer.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../src/checks/catalogue.ts";
import type { AnyCheck } from "../src/checks/run.ts";
import { builder } from "../src/demo/build.ts";
import { loadScenario } from "../src/demo/load.ts";
import { makeReport } from "../src/judging/report.ts";
import { maker } from "./make/config.ts";
import { readPdf } from "./make/read-pdf.ts";
import { rows } from "./make/rows.ts";

/** The part of a document between its markers; with UPDATE=1 it is written instead of compared. */
function expectPart(file: string, marker: string, wanted: string): void {
  const text = readFileSync(file, "utf8");
  const part = new RegExp(`(<!-- ${marker} -->\n)([\\s\\S]*?)(<!-- /${marker} -->)`);
  if (process.env["UPDATE"] === "1")
    writeFileSync(
      file,
      text.replace(part, (_, open, _old, end) => `${open}${wanted}\n${end}`),
    );
  expect(part.exec(readFileSync(file, "utf8"))?.[2]).toBe(`${wanted}\n`);
}

test("README's sample is what `burin check` prints", async () => {
  const scenario = await loadScenario("fixtures");
  const at = scenario.letters.findIndex(({ name }) => name === "teasel-characters");
  const description = scenario.letters[at];
  expect(readFileSync("README.md", "utf8")).toContain(
    `out/demo/letters/${String(at + 1).padStart(2, "0")}-teasel-characters.eml`,
  );
  const build = builder({ ...maker, ...scenario });
  const read = await Promise.all(
    (description?.attachments ?? []).map(async (attachment, i) =>
      readPdf(await build(attachment), { id: `1/${i + 1}`, file: attachment.file }, maker),
    ),
  );
  const report = makeReport(
    { files: read.map(({ file }) => file), sheets: read.flatMap(({ sheet }) => sheet ?? []) },
    maker.catalogue,
  );
  expectPart(
    "README.md",
    "sample",
    ["```", composeAnswer(report, maker.catalogue).text.trimEnd(), "```"].join("\n"),
  );
});

function lines(checks: readonly AnyCheck[], on: string): string[] {
  return checks.map(
    ({ id, title, severity, verdict }) =>
      `| \`${id}\` | ${on} | ${verdict === undefined ? severity : `${severity} (${verdict})`} | ${title} |`,
  );
}

test("README's table of checks is the code's", () => {
  expectPart(
    "README.md",
    "checks",
    [
      "| check | looks at | weight | what is wrong |",
      "|---|---|---|---|",
      ...lines(fileChecks, "attachment"),
      ...lines(sheetChecks, "sheet"),
      ...lines(orderChecks, "order"),
      ...lines(letterChecks, "letter"),
    ].join("\n"),
  );
});

test("DEVELOPERS quotes the table of rows", () => {
  expectPart(
    "DEVELOPERS.md",
    "rows",
    ["```", ...Object.entries(rows).map(([row, is]) => `${row.padEnd(11)} ${is}`), "```"].join("\n"),
  );
});
