import type { Sheet } from "../../trade/sheet.ts";

const title =
  /(?<!\p{L})(?:(?:ship|shipping|deliver|delivery|consign)[ -]?to|(?:delivery|shipping) address)(?!\p{L})/iu;
/** "Madison, WI 53703", and a Canadian postal code. A number alone may be a part. */
const postcode =
  /(?<![\p{L}\p{N}])(?:\p{Lu}{2}[ ,]{1,3}(\d{5})(?:-\d{4})?|([A-Z]\d[A-Z]) ?(\d[A-Z]\d))(?![\p{L}\p{N}-])/gu;
/** An address has at most so many lines below its title. */
const longest = 6;

/**
 * The address that a purchase order ships to, if its postcode is none of the sheets'. Columns of a page come in one
 * line, so that the sheets' own postcode anywhere on it is enough.
 */
export function shipsElsewhere(lines: readonly string[], sheets: readonly Sheet[]): string | undefined {
  const own = sheets.flatMap(({ shipSame, billTo, shipTo }) =>
    codesIn(`XX ${(shipSame ? billTo : shipTo).postcode ?? ""}`),
  );
  const at = lines.findIndex((line) => title.test(line));
  const address = lines.slice(at, at + longest);
  const last = address.findLastIndex((line) => codesIn(line).length > 0);
  if (own.length === 0 || at < 0 || last < 0) return undefined;
  const all = new Set(lines.flatMap(codesIn));
  return own.some((code) => all.has(code)) ? undefined : address.slice(0, last + 1).join(", ");
}

function codesIn(text: string): string[] {
  return [...text.toUpperCase().matchAll(postcode)].map(
    ([, zip, area = "", unit = ""]) => zip ?? area + unit,
  );
}
