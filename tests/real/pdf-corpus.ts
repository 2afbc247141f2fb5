import { globSync, readFileSync } from "node:fs";
import { argv, env } from "node:process";
import type { FileFacts, PdfFacts } from "../../src/reading/facts.ts";
import { judge } from "../../src/reading/judge.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { catalogue, editions } from "../make/config.ts";
import { type Comparison, compareWithTools } from "./native-fields.ts";

// Reads every PDF of a folder that a developer points at, in reader processes as the desk does, and compares
// what the form fields hold with what pdftk-java and qpdf say:
//   BURIN_PDF_CORPUS=/path/to/pdfs npx node tests/real/pdf-corpus.ts [part of a file name]
// Ends with 1 if a file was not answered for or if both readers agree on a value that both tools deny.

const folder = env["BURIN_PDF_CORPUS"];
if (folder === undefined) throw new Error("BURIN_PDF_CORPUS does not name a folder of PDFs");
const [part = ""] = argv.slice(2);
const files = globSync(`${folder}/**/*.pdf`)
  .toSorted()
  .filter((file) => file.includes(part));

const reader = openPool({
  log: {
    info: () => undefined,
    warn: (fields, says) => console.log("  pool:", says, JSON.stringify(fields)),
  },
});
const kinds = new Map<string, number>();
const times: number[] = [];
const total: Comparison = { forms: 0, fields: 0, filled: 0, right: 0, unsure: 0, wrong: [] };
let crashed = 0;

for (const file of files) {
  const bytes = new Uint8Array(readFileSync(file));
  const began = performance.now();
  const opened = await reader.file(bytes);
  times.push(performance.now() - began);
  const facts: FileFacts | undefined = opened.ok ? opened.value : undefined;
  const name = { id: "1/1", file };
  const kind = facts === undefined ? "unsafe" : judge(facts, name, { editions, catalogue }).file.kind;
  kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  if (!opened.ok) {
    if (opened.why === "died") crashed += 1;
    console.log(`${file}: ${opened.why}`);
  }
  if (facts?.kind === "pdf") add(file, facts);
}
await reader.close();

function add(file: string, facts: PdfFacts): void {
  const found = compareWithTools(file, facts.fields);
  total.forms += found.forms;
  total.fields += found.fields;
  total.filled += found.filled;
  total.right += found.right;
  total.unsure += found.unsure;
  total.wrong.push(...found.wrong);
  for (const wrong of found.wrong) console.log(`${file}: ${wrong}`);
}

const sorted = times.toSorted((a, b) => a - b);
const at = (share: number): string =>
  `${Math.round(sorted[Math.floor((sorted.length - 1) * share)] ?? 0)} ms`;
console.log(`\n${files.length} files`);
for (const [kind, count] of [...kinds].toSorted((a, b) => b[1] - a[1]))
  console.log(`${String(count).padStart(6)}  ${kind}`);
console.log(
  `time: median ${at(0.5)}, 95 % under ${at(0.95)}, longest ${at(1)}; processes that died of a file: ${crashed}`,
);
console.log(
  `fields on which both tools agree: ${total.fields} in ${total.forms} forms, ${total.filled} of them filled; ` +
    `read right ${total.right}, our readers disagree on ${total.unsure}, agree and wrong ${total.wrong.length}`,
);
process.exitCode = total.wrong.length > 0 ? 1 : 0;
