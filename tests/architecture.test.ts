import { globSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { expect, test } from "vitest";

/**
 * The house, from the cellar up: a folder imports its own row and rows above it, never below.
 * This is the table's only statement; DEVELOPERS.md quotes it.
 */
const rows = [
  "trade",
  "yaml",
  "catalogue",
  "lettering",
  "reading",
  "orders",
  "checks",
  "drawing",
  "report",
  "settings",
  "ports",
  "intake",
  "store",
  "mail",
  "demo",
  "commands",
  "main.ts",
];

/** The rows that know no clock, disk, network, chance or log. */
const core = rows.slice(0, rows.indexOf("settings"));

const files = globSync("src/**/*.ts").filter((file) => !file.endsWith(".d.ts"));
const importsOf = (file: string): string[] =>
  [...readFileSync(file, "utf8").matchAll(/(?:from|import)\s*\(?\s*["']([^"']+)["']/g)].map(
    (match) => match[1] ?? "",
  );
const rowOf = (file: string): string => file.split("/")[1] ?? "";

test("every folder of src has a row in the table", () => {
  expect(files.map(rowOf).filter((row) => !rows.includes(row))).toEqual([]);
});

test("a folder imports only its own row and rows above it", () => {
  const wrong = files.flatMap((file) =>
    importsOf(file)
      .filter((name) => name.startsWith("."))
      .map((name) => normalize(join(dirname(file), name)))
      .filter((target) => rows.indexOf(rowOf(target)) > rows.indexOf(rowOf(file)))
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

test("the core has no clock, disk, network, chance or log", () => {
  const impure =
    /Date\.now|new Date\(\)|Math\.random|randomUUID|console\.|process\.|["']node:(?!url|path|crypto)|\bfetch\(/;
  const wrong = files
    .filter((file) => core.includes(rowOf(file)))
    .filter((file) => impure.test(readFileSync(file, "utf8").replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, "")));
  expect(wrong).toEqual([]);
});
