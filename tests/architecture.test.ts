import { globSync, readFileSync } from "node:fs";
import { dirname, join, normalize } from "node:path";
import { expect, test } from "vitest";
import { rows } from "./make/rows.ts";

const order = Object.keys(rows);

/** The rows that know no clock, disk, network, chance or log. */
const core = order.slice(0, order.indexOf("settings"));

const files = globSync("src/**/*.ts").filter((file) => !file.endsWith(".d.ts"));
const importsOf = (file: string): string[] =>
  [...readFileSync(file, "utf8").matchAll(/(?:from|import)\s*\(?\s*["']([^"']+)["']/g)].map(
    (match) => match[1] ?? "",
  );
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

test("the core has no clock, disk, network, chance or log", () => {
  const impure =
    /Date\.now|new Date\(\)|Math\.random|randomUUID|console\.|process\.|["']node:(?!url|path|crypto|zlib)|\bfetch\(/;
  const wrong = files
    .filter((file) => core.includes(rowOf(file)))
    .filter((file) => impure.test(readFileSync(file, "utf8").replaceAll(/\/\*[\s\S]*?\*\/|\/\/.*/g, "")));
  expect(wrong).toEqual([]);
});
