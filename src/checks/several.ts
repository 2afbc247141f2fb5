/** Words and signs by which somebody asks for several of a kind: TYP OF 4, QTY 2, x3, 3 EA. Common practice, no source. */
const quantities = [
  /\b(typ\b|typical)/i,
  /\b(qty|quantity|quantities)\b/i,
  // Not 4x4 or 2 x 4, which are measures, nor X3 alone, which may be a mark.
  /(?<![\p{L}\p{N}])(?<!(?:^|[^\p{L}\p{N}-])\d{1,3}\s?)x\s?\d{1,3}\b(?!\s?x)/u,
  /(?<=\S.*[^\p{L}\p{N}])(?<!(?:^|[^\p{L}\p{N}-])\d{1,3}\s?)[X×]\s?\d{1,3}\b(?!\s?[xX×])/u,
  /(?<![\p{L}\p{N}.-])\d{1,3}\s?[xX×](?!\s?\d)(?![\p{L}-])/u,
  /(?<![\p{L}\p{N}.-])\d{1,3}\s?(ea|each|pcs?|pieces?)\b/iu,
  /\b(set|total|lot|pair)s? of \d{1,3}\b/i,
];

/** Whether a text asks for several of a kind. */
export function asksForSeveral(text: string): boolean {
  return quantities.some((pattern) => pattern.test(text));
}

const mark = /(?<![\p{L}\p{N}-])([A-Z]{1,4})-? ?(\d{1,5})[A-Z]?(?![\p{L}\p{N}])/giu;
/** A second number that borrows its letters from the first: S-201, 202. Rooms and units often share a station. */
const borrowed =
  /(?<![\p{L}\p{N}-])(?!RM|ROOM|UNIT|APT|STE|SUITE)[A-Z]{1,4}-? ?(\d{2,5})\s*(?:[,/&+]|and|to|thru)\s*(\d{2,5})(?![\p{L}\p{N}])/iu;

/** Station marks of one series in a text, each once: S-201 and S-202, not L2 and S-104. */
export function marksIn(text: string): string[] {
  const found = [...text.matchAll(mark)].map(([whole, letters = ""]) => ({
    whole: whole.toUpperCase().replace(/[- ]/g, ""),
    letters: letters.toUpperCase(),
  }));
  const series = [...Map.groupBy(found, ({ letters }) => letters).values()];
  return series
    .map((members) => [...new Set(members.map(({ whole }) => whole))])
    .reduce((most, members) => (members.length > most.length ? members : most), []);
}

/** Whether what should be one station mark names several. */
export function namesSeveral(text: string): boolean {
  const [, one = "", other = ""] = borrowed.exec(text) ?? [];
  return marksIn(text).length > 1 || (one !== other && one.length === other.length);
}
