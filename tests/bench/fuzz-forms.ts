import { globSync, readFileSync } from "node:fs";
import { builder } from "../../src/demo/build.ts";
import { loadScenario } from "../../src/demo/load.ts";
import { judge } from "../../src/reading/judge.ts";
import { catalogue, editions } from "../make/config.ts";
import { answersFor } from "../make/filled.ts";
import { filledForm } from "../make/pdf.ts";
import { fuzz } from "./fuzz-run.ts";

/** Mutations of filled sheets, from reading to what the desk says of them. */
const scenario = await loadScenario("fixtures");
const build = builder({ catalogue, editions, ...scenario });
const attachments = scenario.letters.flatMap((letter) => letter.attachments).slice(0, 20);
const sources = [
  ...(await Promise.all(editions.map((edition) => filledForm(edition, answersFor(edition))))),
  ...(await Promise.all(attachments.map(build))),
  ...globSync("fixtures/raw/*.pdf").map((file) => readFileSync(file)),
];

await fuzz(sources, async (reader, bytes) => {
  const opened = await reader.file(bytes);
  if (!opened.ok) return `unsafe: ${opened.why}`;
  const { file, sheet } = judge(opened.value, { id: "1/1", file: "a.pdf" }, { editions, catalogue });
  const doubts = new Set(sheet?.doubts.map(({ what }) => what));
  return sheet?.unsure.length ? `${file.kind}, readers disagree` : [file.kind, ...doubts].join(", ");
});
