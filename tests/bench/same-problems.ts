/**
 * Whether a change costs a verdict: the letters of the demonstration, orders, sheets filled by every program that is
 * installed, sheets that show other than they hold, and marked copies in every way sent back are answered by this
 * checkout and by another version of it. Prints how many answers are the same, and each that is not, line by line.
 *
 *     npx node tests/bench/same-problems.ts [--before HEAD] [--of demo,orders,filled,forged]
 *
 * --before  the version to compare with: a commit, a tag or a branch. It is checked out beside, with the packages that
 *           are installed here
 * --of      which letters are compared
 *
 * Ends with 1 if an answer differs.
 */
import { spawnSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { simpleParser } from "mailparser";
import { stringify } from "yaml";
import { configure } from "../../src/commands/configuration.ts";
import { composeLetter } from "../../src/demo/letter.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { forgedReturns, honestReturns } from "../make/pages/copies.ts";
import { forgeries } from "../make/pages/forged.ts";
import { writers } from "../make/pages/honest.ts";
import { demoSheets } from "../make/pages/orders.ts";
import { slippedThrough } from "../make/pages/slipped.ts";
import { hasProgram } from "../make/program.ts";
import { lettersOf } from "./desk-for.ts";
import { told } from "./told.ts";

const { before, of } = told(import.meta.filename, { before: "HEAD", of: "demo,orders,filled,forged" });
const folder = mkdtempSync(join(tmpdir(), "burin-same-"));

/** A sheet as a letter of a buyer of its own. */
async function letterWith(shows: string, n: number, bytes: Uint8Array): Promise<Uint8Array> {
  return composeLetter(
    {
      name: `letter-${n}`,
      from: `Ida Marlowe <ida@firm${n}.example>`,
      date: "2026-11-09T09:00:00-06:00",
      subject: shows,
      text: "Please find our sheet attached.\n\nIda",
      logo: false,
    },
    { to: "orders@quillgate.example", attachments: [{ file: "sheet.pdf", bytes }] },
  );
}

async function* filled(): AsyncGenerator<readonly [string, Uint8Array]> {
  const sheets = await demoSheets();
  for (const { name, needs = [], most, gives, fill } of writers) {
    if (gives !== undefined) continue; // its files are no sheets any more
    const [program = "true", ...ask] = needs;
    if (spawnSync(program, ask).status !== 0) {
      console.log(`${name} is not installed`);
      continue;
    }
    const some = sheets.filter((_, i) => i % Math.ceil(sheets.length / Math.min(most, 12)) === 0);
    for (const bytes of await fill(some)) if (bytes !== undefined) yield [name, bytes];
  }
}

async function* forged(): AsyncGenerator<readonly [string, Uint8Array]> {
  const forms = new Set(["device-26c", "plate-26c"]);
  const samples = (await sampleSheets()).filter(({ edition }) => forms.has(edition));
  const returns = honestReturns.filter(({ needs }) => needs === undefined || hasProgram(...needs));
  for (const { how, make } of [...forgeries, ...slippedThrough, ...forgedReturns, ...returns])
    for (const sample of samples) yield [`${how}, ${sample.edition}`, await make(sample)];
}

async function* alone(files: AsyncIterable<readonly [string, Uint8Array]>): AsyncGenerator<Uint8Array> {
  let n = 0;
  for await (const [shows, bytes] of files) yield await letterWith(shows, n++, bytes);
}

/** The letters of the demonstration, in the order in which they came. */
function demoLetters(): Uint8Array[] {
  const demo = join(folder, "demo-here");
  spawnSync(process.execPath, ["src/main.ts", "demo", demo], { stdio: "ignore" });
  const letters = join(demo, "letters");
  return readdirSync(letters)
    .toSorted()
    .map((name) => readFileSync(join(letters, name)));
}

const sets: Readonly<Record<string, () => AsyncIterable<Uint8Array> | Promise<Uint8Array[]> | Uint8Array[]>> =
  {
    demo: demoLetters,
    orders: () => lettersOf(60, 10),
    filled: () => alone(filled()),
    forged: () => alone(forged()),
  };

/** Where the catalogue of a set lies. The forged sheets stand on the forms of the shop with figures of the trade. */
const shopOf = (set: string): string => (set === "forged" ? "fixtures/trade" : "config");

const { settings } = await configure();

/** What a version answers to each letter of a set: its words without the reference, which is another in each record. */
async function answersOf(tree: string, set: string, letters: string): Promise<Map<string, string>> {
  const place = mkdtempSync(join(folder, "desk-"));
  const shop = shopOf(set);
  writeFileSync(
    join(place, "burin.yaml"),
    stringify({
      ...settings,
      catalogue: join(tree, shop, "catalogue.yaml"),
      editions: join(tree, shop, "editions"),
      glossary: join(tree, "config/glossary.txt"),
      record: "record",
      folders: [letters],
      answers: { ...settings.answers, folder: "answers", most_per_hour: { to_one: 1e6, to_all: 1e6 } },
      release: undefined,
    }),
  );
  const { status, stderr } = spawnSync(
    process.execPath,
    ["src/main.ts", "work", "--once", "--settings", join(place, "burin.yaml")],
    { cwd: tree, encoding: "utf8", maxBuffer: 1e9 },
  );
  if (status !== 0) throw new Error(`${tree} ended with ${status}: ${stderr.slice(-2000)}`);
  for (const line of stderr.split("\n")) if (line.includes('"level":40')) console.log(`  ${line}`);
  const answers = join(place, "answers");
  const found = new Map<string, string>();
  for (const name of readdirSync(answers).filter((one) => one.endsWith(".eml"))) {
    const { inReplyTo, subject = "", text = "", to } = await simpleParser(readFileSync(join(answers, name)));
    const whom = [to ?? []].flat().map((one) => one.text);
    found.set(
      `${inReplyTo ?? "unasked"} ${whom.join(", ")}: ${subject}`,
      text.replaceAll(/(?<=reference )\w{3}-\w{5}/gi, "…"),
    );
  }
  return found;
}

/** Lines of the one that the other has not. */
function only(one: string, other: string): string[] {
  const had = new Set(other.split("\n"));
  return one.split("\n").filter((line) => !had.has(line));
}

const there = join(folder, "before");
const git = (...words: string[]): void => {
  const { status, stderr } = spawnSync("git", words, { encoding: "utf8" });
  if (status !== 0) throw new Error(stderr);
};
git("worktree", "add", "--detach", there, before);
try {
  symlinkSync(resolve("node_modules"), join(there, "node_modules"));
  let differing = 0;
  for (const set of of.split(",")) {
    const make = sets[set];
    if (make === undefined) throw new Error(`--of has no ${set}; it has ${Object.keys(sets).join(", ")}`);
    const letters = join(folder, set);
    mkdirSync(letters);
    let n = 0;
    for await (const bytes of await make())
      writeFileSync(join(letters, `${String(++n).padStart(5, "0")}.eml`), bytes);
    const was = await answersOf(there, set, letters);
    const is = await answersOf(resolve("."), set, letters);
    const names = [...new Set([...was.keys(), ...is.keys()])].toSorted();
    const other = names.filter((name) => was.get(name) !== is.get(name));
    differing += other.length;
    console.log(`${set}: ${n} letters, ${names.length} answers, ${other.length} differ`);
    for (const name of other) {
      const [old = "", now = ""] = [was.get(name), is.get(name)];
      console.log(`  ${name}`);
      for (const line of only(old, now)) console.log(`    - ${line}`);
      for (const line of only(now, old)) console.log(`    + ${line}`);
    }
  }
  if (differing > 0) process.exitCode = 1;
} finally {
  git("worktree", "remove", "--force", there);
  rmSync(folder, { recursive: true });
}
