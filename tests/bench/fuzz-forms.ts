import { globSync, readFileSync } from "node:fs";
import { isDeepStrictEqual } from "node:util";
import { builder } from "../../src/demo/build.ts";
import { loadScenario } from "../../src/demo/load.ts";
import type { MarkedProblem } from "../../src/drawing/marked/problem.ts";
import type { FileFacts } from "../../src/reading/facts.ts";
import { judge } from "../../src/reading/judge.ts";
import { maker } from "../make/config.ts";
import { answersFor } from "../make/filled.ts";
import { filledForm } from "../make/pdf.ts";
import { fuzz } from "./fuzz-run.ts";

/**
 * Mutations of filled sheets, from reading to what the desk says of them, and to the copy that it marks: that has to
 * be read as what was marked.
 */
const scenario = await loadScenario("fixtures");
const build = builder({ ...maker, ...scenario });
const attachments = scenario.letters.flatMap((letter) => letter.attachments).slice(0, 20);
const sources = [
  ...(await Promise.all(maker.editions.map((edition) => filledForm(edition, answersFor(edition))))),
  ...(await Promise.all(attachments.map(build))),
  ...globSync("fixtures/raw/*.pdf").map((file) => readFileSync(file)),
];

const problem: MarkedProblem = {
  number: 1,
  says: "Number 1 is wrong.",
  fix: "Put it right.",
  kind: "fail",
  places: ["row.1.1", "finish", "project"],
};

await fuzz(sources, async (reader, bytes) => {
  const opened = await reader.file(bytes);
  if (!opened.ok) return `unsafe: ${opened.why}`;
  const { file, sheet } = judgedOf(opened.value);
  if (sheet === undefined) return file.kind;
  const doubts = new Set(sheet.doubts.map(({ what }) => what));
  const outcome =
    sheet.unsure.length > 0 ? `${file.kind}, readers disagree` : [file.kind, ...doubts].join(", ");
  const marked = await reader.mark(bytes, sheet, [problem]);
  if (!marked.ok) return `${outcome}, marking lost: ${marked.why}`;
  const { copy } = marked.value;
  if (copy === undefined) return `${outcome}, not marked`;
  const again = await reader.file(copy);
  if (again.ok && again.value.kind === "pdf" && again.value.fields.length === 0)
    return `${outcome}, marked on a page of its own`;
  if (!again.ok || !isDeepStrictEqual(judgedOf(again.value).sheet, sheet))
    throw new Error("a marked copy is not read as what was marked");
  return `${outcome}, marked`;
});

function judgedOf(facts: FileFacts): ReturnType<typeof judge> {
  return judge(facts, { id: "1/1", file: "a.pdf" }, maker);
}
