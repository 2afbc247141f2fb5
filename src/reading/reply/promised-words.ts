import type { Catalogue } from "../../catalogue/catalogue.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { facesOf, stripOf } from "./came.ts";
import { tokensOf } from "./word-bag.ts";

/** What leads to the words that shall stand on a corrected sheet. */
const leads =
  /(?<!\p{L})(?:(?:should|must|ought to|supposed to|meant to|intended to|going to|has to) (?:be|say|read)|now(?: reads| says| is)?|(?:correct|right)(?: word| spelling| name| legend)? is|(?:changed|corrected|fixed|amended|renamed) (?:(?:it|that|the \p{L}+) )?to|(?:wants?|wanted|chose|prefers?|went with|gone (?:with|for)|settled on|decided on|opted for|called|named)(?: (?:it|that))?(?: now)?)(?: now)?:? +/giu;
/** "New sheet attached with …" and "3 NO, …" lead to them only where they are in capitals. */
const lists =
  /(?<!\p{L})(?:with|incl\.?|including|which (?:has|shows)|(?<=^|\d[ :.)-]*(?:is )?)no *[,:–—-]) +([^.;!?(\n]*)/giu;
const inCapitals = /(?<![\p{L}\p{N}])\p{Lu}[\p{Lu}&'’]+(?: [\p{Lu}\p{N}&'’]+)*(?![\p{L}\p{N}-])/gu;
/** Words in capitals that are no legends. */
const noLegend = /^(?:YES|NO|OK|PDF|PDFS|SHEET|NEW|ATTACHED|I)$/u;
/** Words in capitals, or words that begin with one. */
const written =
  /^["“'‘]?((?:\p{Lu}[\p{Lu}\p{N}&'’.-]*\p{Lu}|\p{Lu}\p{Ll}+)(?: (?:[\p{Lu}\p{N}&][\p{Lu}\p{N}&'’.-]*(?!\p{Ll})|\p{Lu}\p{Ll}+))*)/u;

/** Whether words stand on a sheet, whatever their case. */
export function standOn(words: string, sheet: Sheet): boolean {
  const there = new Set([...facesOf(sheet), stripOf(sheet)].flatMap(tokensOf));
  return tokensOf(words).every((token) => there.has(token));
}

/**
 * The words that a line says shall stand on a sheet, and that stand on none of those that came: "2 NO, should be SALON"
 * beside a sheet with SALOON.
 */
export function wordsNotThere(line: string, sheets: readonly Sheet[]): string | undefined {
  const onSheets = sheets.map((sheet) => new Set([...facesOf(sheet), stripOf(sheet)].flatMap(tokensOf)));
  const isShouted = !/\p{Ll}/u.test(line);
  const led = [...line.matchAll(leads)].flatMap(
    ({ 0: lead, index }) => written.exec(line.slice(index + lead.length))?.[1] ?? [],
  );
  const listed = isShouted
    ? []
    : [...line.matchAll(lists)].flatMap(([, list = ""]) => list.match(inCapitals) ?? []);
  return [...led, ...listed.filter((words) => !noLegend.test(words))].find((words) => {
    // In capitals throughout nobody knows where the words end.
    const tokens = tokensOf(words).slice(0, isShouted ? 1 : undefined);
    return !onSheets.some((there) => tokens.every((token) => there.has(token)));
  });
}

/**
 * A finish that a line says shall be that of a sheet, and that none of those which came has: "3 changed to Slate" beside
 * a sheet in Barley. A legend may read like one.
 */
export function finishNotThere(
  line: string,
  sheets: readonly Sheet[],
  { finishes, lettering }: Pick<Catalogue, "finishes" | "lettering">,
): string | undefined {
  const told = [...line.matchAll(leads)].map(
    ({ 0: lead, index }) => `${tokensOf(line.slice(index + lead.length)).join(" ")} `,
  );
  return [...finishes, ...lettering].find(
    ({ code, name }) =>
      told.some((words) => words.startsWith(`${tokensOf(name).join(" ")} `)) &&
      !sheets.some((sheet) => sheet.finish === code || sheet.lettering === code || standOn(name, sheet)),
  )?.name;
}
