import { readFileSync } from "node:fs";
import { device, plate } from "../../src/checks/sample.ts";
import { safetyWording } from "../../src/checks/sheet/safety-wording.ts";
import type { FaceName } from "../../src/trade/legend.ts";
import { catalogue } from "../make/config.ts";

/** Whether a clerk who knows the trade would ask. */
export const kinds = ["asked", "plain"] as const;

export const languagesOf = (ending: string): string[] =>
  ({ "": ["en-US"], "-french": ["en-CA", "fr"], "-spanish": ["en-US", "es"] })[ending] ?? [];

/** Legends of a file, one device a line: `/` between rows, `|` between buttons. */
export function legendsIn(file: string): string[] {
  return readFileSync(`tests/bench/safety/${file}.txt`, "utf8").split("\n").filter(Boolean);
}

/** Whether it is asked about on buttons, or above gangs if it is too long for a button. */
export function isAskedAbout(line: string, languages: readonly string[]): boolean {
  const legends = line.split(" | ").map((face, i) => ({
    face: `${i + 1}` as FaceName,
    rows: face.split("/"),
    plain: false,
  }));
  const make = legends.some(({ rows }) => rows.some((row) => row.length > 8)) ? plate : device;
  const words = { ...catalogue.words, languages };
  return [...safetyWording.find(make({ legends }), { ...catalogue, words })].length > 0;
}
