import { globSync, readdirSync, readFileSync } from "node:fs";
import { isBuiltin } from "node:module";
import { dirname, join, matchesGlob, normalize } from "node:path";
import { expect, test } from "vitest";
import { rows } from "./make/rows.ts";

const order = Object.keys(rows);

/** The rows that know no clock, disk, network, chance or log. */
const core = order.slice(0, order.indexOf("settings"));

const files = globSync("src/**/*.ts").filter((file) => !file.endsWith(".d.ts"));
const importsIn = (code: string): string[] =>
  [...code.matchAll(/(?:from|import)\s*\(?\s*["']([^"']+)["']/g)].map((match) => match[1] ?? "");
const importsOf = (file: string): string[] => importsIn(readFileSync(file, "utf8"));
const rowOf = (file: string): string => file.split("/")[1] ?? "";

test("every folder of src has a row in the table", () => {
  expect(files.map(rowOf).filter((row) => !order.includes(row))).toEqual([]);
});

test("a folder imports only its own row and rows above it", () => {
  const wrong = files.flatMap((file) =>
    importsOf(file)
      .filter((name) => name.startsWith("."))
      .map((name) => normalize(join(dirname(file), name)))
      .filter((target) => order.indexOf(rowOf(target)) > order.indexOf(rowOf(file)))
      .map((target) => `${file} imports ${target}`),
  );
  expect(wrong).toEqual([]);
});

test("trade imports nothing but its siblings", () => {
  const wrong = files
    .filter((file) => rowOf(file) === "trade")
    .flatMap((file) => importsOf(file).filter((name) => !name.startsWith("./")));
  expect(wrong).toEqual([]);
});

/** What a clock, a disk, a network, chance and a log are used by; code without its comments. */
const impure: Readonly<Record<string, RegExp>> = {
  clock:
    /\bDate\.now\b|\bnew Date\b(?!\s*\(\s*[^\s)])|(?<!\bnew\s+)(?<![.\w])Date\(|\bperformance\b|\bTemporal\b|\.format\(\)/,
  timer: /\b(?:setTimeout|setInterval|setImmediate|requestAnimationFrame)\b|\bAtomics\.wait/,
  chance: /\bMath\.random\b|\b(?:randomUUID|randomBytes|randomInt|randomFill\w*|getRandomValues|webcrypto)\b/,
  network: /\bfetch\(|\b(?:WebSocket|EventSource|XMLHttpRequest|BroadcastChannel)\b/,
  program: /\bprocess\s*(?:\.|\[|;)|[={]\s*process\b|\bglobalThis\b|\bglobal\.|\brequire\(/,
  log: /\bconsole\s*(?:\.|\[|;)|[={]\s*console\b/,
};
/** Modules of Node that only reckon. */
const pure = new Set(["url", "path", "crypto", "zlib", "buffer"]);

function impurities(code: string): string[] {
  const bare = code.replaceAll(/\/\*[\s\S]*?\*\/|(?<![:"'\\])\/\/.*/g, "");
  const found = Object.keys(impure).filter((kind) => impure[kind]?.test(bare));
  const modules = importsIn(bare).filter((name) => isBuiltin(name) && !pure.has(name.replace("node:", "")));
  return [...found, ...modules];
}

test("the core has no clock, disk, network, chance or log", () => {
  const wrong = files
    .filter((file) => core.includes(rowOf(file)))
    .flatMap((file) => impurities(readFileSync(file, "utf8")).map((what) => `${file}: ${what}`));
  expect(wrong).toEqual([]);
});

test.each([
  ["clock", "const now = new Date();"],
  ["clock", "const now = new Date;"],
  ["clock", "const now = Date();"],
  ["clock", "const now = Date.now();"],
  ["clock", "const { now } = performance;"],
  ["clock", "new Intl.DateTimeFormat('en').format()"],
  ["timer", "setTimeout(later, 5);"],
  ["timer", "const tick = setInterval;"],
  ["chance", "Math.random()"],
  ["chance", "crypto.getRandomValues(bytes)"],
  ["chance", 'import { randomBytes } from "node:crypto";'],
  ["network", "await fetch(address)"],
  ["network", "new WebSocket(address)"],
  ["program", "const { env } = process;"],
  ["program", "process.cwd()"],
  ["program", "globalThis.fetch"],
  ["program", 'const fs = require("fs");'],
  ["log", "console.log(what)"],
  ["fs", 'import { readFileSync } from "fs";'],
  ["fs/promises", 'const { readFile } = await import("fs/promises");'],
  ["node:fs", 'import fs from "node:fs";'],
  ["node:timers/promises", 'import { setTimeout as sleep } from "node:timers/promises";'],
  ["node:http", 'export { get } from "node:http";'],
])("%s is seen in %s", (what, code) => {
  expect(impurities(code)).toContain(what);
});

test.each([
  "function at(date: Date): Date { return new Date(date); }",
  'import { createHash } from "node:crypto";',
  "// the time is Date.now()",
  'const link = "https://example.example"; // setTimeout',
  "formatDate(date)",
  "const words = /find|process|open/;",
])("nothing is seen in %s", (code) => {
  expect(impurities(code)).toEqual([]);
});

test("the top level holds what it is known to hold, and dotfiles", () => {
  const ignored = readFileSync(".gitignore", "utf8")
    .split("\n")
    .map((line) => line.replaceAll("/", ""));
  const names = readdirSync(".")
    .filter((name) => !name.startsWith("."))
    .toSorted();
  expect(names.filter((name) => !ignored.some((one) => one !== "" && matchesGlob(name, one)))).toEqual([
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "config",
    "fixtures",
    "package-lock.json",
    "package.json",
    "src",
    "tests",
    "tsconfig.json",
  ]);
});
