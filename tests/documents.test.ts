import { globSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { composeAnswer } from "../src/answer/answer.ts";
import { fileChecks, letterChecks, orderChecks, sheetChecks } from "../src/checks/catalogue.ts";
import type { AnyCheck } from "../src/checks/run.ts";
import type { Command } from "../src/commands/command.ts";
import { commands } from "../src/commands/commands.ts";
import { builder } from "../src/demo/build.ts";
import { loadScenario } from "../src/demo/load.ts";
import { makeReport } from "../src/judging/report.ts";
import { maker } from "./make/config.ts";
import { expectPart } from "./make/document.ts";
import { readPdf } from "./make/read-pdf.ts";
import { rows } from "./make/rows.ts";

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

/** What `--help` of a command prints. */
async function helpOf(command: Command): Promise<string> {
  const lines: string[] = [];
  const io = { out: (text: string) => lines.push(text), err: () => undefined, progress: () => undefined };
  expect(await command.run(["--help"], io)).toBe(0);
  return lines.join("\n");
}

test("README's table of commands and options is what --help of each prints", async () => {
  const rows: string[] = [];
  const others: string[] = [];
  for (const command of commands) {
    const [usage = "", , summary = ""] = (await helpOf(await command.load())).split("\n");
    const own = usage.replace(" [--settings FILE]", "");
    if (own === usage) others.push(command.name);
    rows.push(`| \`${own.replaceAll("|", "\\|")}\` | ${summary} |`);
  }
  expectPart("README.md", "commands", ["| command | does |", "|---|---|", ...rows].join("\n"));
  expect(others).toEqual(["demo"]);
  expect(readFileSync("README.md", "utf8")).toContain("All but `demo` take `--settings FILE` as well");
});

test("what the documents and examples call by the name of burin is a command with such options", async () => {
  const loaded = await Promise.all(commands.map(({ load }) => load()));
  const written = [
    "README.md",
    "DEVELOPERS.md",
    "fixtures/raw/README.md",
    ...globSync("config/*.{yaml,service}"),
  ];
  const calls = written.flatMap((file) =>
    [...readFileSync(file, "utf8").matchAll(/(?:^|[`“/]|-- )burin ([a-z]+(?: [^`”|#\n]*)?)/gm)].map(
      ([, call = ""]) => ({ file, call: call.trim() }),
    ),
  );
  expect(calls.length).toBeGreaterThan(20);
  const wrong = calls.filter(({ call }) => {
    const [name, ...words] = call.split(/\s+/);
    const options = loaded.find((one) => one.name === name)?.options;
    const named = words.flatMap((word) => /--([a-z-]+)/.exec(word)?.[1] ?? []);
    return options === undefined || named.some((option) => option !== "help" && !(option in options));
  });
  expect(wrong).toEqual([]);
});

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
