import { existsSync, readFileSync } from "node:fs";
import type { Words } from "../../src/catalogue/words.ts";
import { safetyWording } from "../../src/checks/sheet/safety-wording.ts";
import { makeWords } from "../../src/lettering/words.ts";
import type { FaceName } from "../../src/trade/legend.ts";
import { catalogue, dictionary, glossary } from "../make/config.ts";
import { device, plate } from "../make/sample.ts";

/** Whether a clerk who knows the trade would ask. */
export const kinds = ["asked", "plain"] as const;

/** Words of a shop whose legends are English, and of one that names another language as well. */
const english = { "en-US": dictionary("dictionary-en") };
export const shops = {
  "": makeWords(glossary, english),
  "-french": makeWords(glossary, { ...english, fr: dictionary("dictionary-fr") }),
  "-spanish": makeWords(glossary, { ...english, es: dictionary("dictionary-es") }),
};

/** Legends of a file, one device a line: `/` between rows, `|` between buttons. */
export function legendsIn(file: string): string[] {
  const path = `tests/bench/safety/${file}.txt`;
  return existsSync(path) ? readFileSync(path, "utf8").split("\n").filter(Boolean) : [];
}

/** Whether it is asked about on buttons, or above gangs if it is too long for a button. */
export function isAskedAbout(line: string, words: Words): boolean {
  const legends = line.split(" | ").map((face, i) => ({
    face: `${i + 1}` as FaceName,
    rows: face.split("/"),
    plain: false,
  }));
  const make = legends.some(({ rows }) => rows.some((row) => row.length > 8)) ? plate : device;
  return [...safetyWording.find(make({ legends }), { ...catalogue, words })].length > 0;
}
