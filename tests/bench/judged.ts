import type { Words } from "../../src/catalogue/words.ts";
import type { SheetCheck } from "../../src/checks/check.ts";
import { characterNotCuttable } from "../../src/checks/sheet/character-not-cuttable.ts";
import { legendPlaceholder } from "../../src/checks/sheet/legend-placeholder.ts";
import { legendPunctuation } from "../../src/checks/sheet/legend-punctuation.ts";
import { legendSpacing } from "../../src/checks/sheet/legend-spacing.ts";
import { lookAlikeLetter } from "../../src/checks/sheet/look-alike-letter.ts";
import { rowMaybeCutOff } from "../../src/checks/sheet/row-maybe-cut-off.ts";
import { spelling } from "../../src/checks/sheet/spelling.ts";
import { wordSlip } from "../../src/checks/sheet/word-slip.ts";
import type { Problem } from "../../src/trade/problem.ts";
import { catalogue } from "../make/config.ts";
import { device, plate } from "../make/sample.ts";

/** The checks that ask about letters and words. */
export const asking: readonly SheetCheck[] = [
  rowMaybeCutOff,
  spelling,
  wordSlip,
  lookAlikeLetter,
  characterNotCuttable,
  legendPlaceholder,
  legendPunctuation,
  legendSpacing,
];

/**
 * What is asked about the faces of one sheet: buttons, or gangs if a row is too long for a button. Gangs have just the
 * room that the longest row needs: where a form cut it, no form had more.
 */
export function askedOf(faces: readonly (readonly string[])[], words: Words): Problem[] {
  const longest = Math.max(...faces.flat().map(({ length }) => length));
  const make = longest > 8 ? plate : device;
  const legends = faces.map((rows, i) => ({ face: `${i + 1}` as const, rows, plain: false }));
  const sheet = make({ project: "Bench", legends });
  const room = { ...catalogue.plate, characters: longest };
  const given = { ...catalogue, words, ...(longest > 8 ? { plate: room } : {}) };
  return asking.flatMap((check) => [...check.find(sheet, given)]);
}

/** Whether a problem is about this face, counted from 0. */
export function isOn(face: number, { spots }: Problem): boolean {
  return spots.some(({ place }) => place?.startsWith(`row.${face + 1}.`));
}
