/** Words and signs by which somebody asks for several of a kind: QTY 2, x3, 3 EA, TYP OF 4. Common practice, no source. */
const quantities = [
  /\b(qty|quantity|quantities)\b(?!\W{0,3}0?1\b)/i,
  /\btyp(ical|\.)? ?(of|x) ?\d/i,
  // Not 4x4 or 2 x 4, which are measures.
  /(?<![\p{L}\p{N}])(?<!(?:^|[^\p{L}\p{N}-])\d{1,3}\s?)x\s?(?!0?1\b)\d{1,3}\b(?!\s?x)/u,
  /(?<![\p{L}\p{N}.-])(?!0?1\s?x)\d{1,3}\s?x(?!\s?\d)(?![\p{L}-])/u,
  /(?<![\p{L}\p{N}.-])(?!0?1\D)\d{1,3}\s?(ea|each|pcs?|pieces?)\b\W{0,3}$/iu,
];
/** What asks for several where a name is not as likely: Tower X2, 4EA Farms and Typical Unit may be names of projects. */
const elsewhere = [
  /\btyp(ical)?\b(?!\.? (height|mount))/i,
  /(?<![\p{L}\p{N}.-])(?!0?1\D)\d{1,3}\s?(ea|each|pcs?|pieces?)\b/iu,
  /\b(set|total|lot|pair)s? of \d{1,3}\b/i,
  /\b(each|every|all|ea) (?:\p{L}+ )?(floor|flr|level|(bed|bath|guest|class|board|meeting)? ?room|rm|unit|office|suite|apartment|apt)s?\b/iu,
  // Rooms 201-204, by itself; what a station serves stands behind other words.
  /^\W*(?:for )?(?:(?:bed|guest|class|patient|meeting)?[ -]?rooms|rms|units|suites|stes|apts|apartments|floors|offices)\W{1,3}[A-Z]?-?\d{1,5}\s{0,3}(?:[-–]|\.{2,3}|to|thru|through)\s{0,3}[A-Z]?-?\d{1,5}\W*$/imu,
  /^\W*(?:for )?(?:(?:bed|guest|class|patient|meeting)?[ -]?rooms|rms|units|suites|stes|apts|apartments|floors|offices)\W{1,3}\d{1,5}(?:(?:\s?,\s?|\s?&\s?|,? and )\d{1,5}){2,}\W*$/imu,
  /\b(various|multiple|req'?d|(same|also|repeat) for)\b/i,
  /^\((?!0?1\))\d{1,2}\)\s*\S/,
  // X3 alone may be a mark.
  /(?<=\S.{0,60}[^\p{L}\p{N}])(?<!(?:^|[^\p{L}\p{N}-])\d{1,3}\s?)[X×]\s?(?!0?1\b)\d{1,3}\b(?!\s?[xX×])/u,
  /(?<=[^\p{L}\p{N}.-])(?!0?1\s?[X×])\d{1,3}\s?[X×](?!\s?\d)(?![\p{L}-])/u,
];

/** Whether the name of a project or of whatever else asks for several of a kind. */
export function asksForSeveral(text: string): boolean {
  return quantities.some((pattern) => pattern.test(text));
}

/** Whether a mark or a note does. */
export function mayAskForSeveral(text: string): boolean {
  return [...quantities, ...elsewhere].some((pattern) => pattern.test(text));
}

const markLike = String.raw`(?<![\p{L}\p{N}-])(?:[A-Z]{1,4})-? ?(?:\d{1,5})[A-Z]?(?![\p{L}\p{N}])`;
const marks = new RegExp(markLike, "giu");
const joined = new RegExp(String.raw`${markLike}\s{0,3}(?:[,;&+]|and)\s{0,3}${markLike}`, "iu");
/** A second number that borrows its letters from the first: S-201, 202 and S-201A/B. Rooms and units often share a station. */
const borrowed =
  /(?<![\p{L}\p{N}-])(?!RM|ROOM|UNIT|APT|STE|SUITE)(?:[A-Z]{1,4}-? ?)(?:(\d{2,5})\s*(?:[,/&+]|and|to|thru)\s*(\d{2,5})|\d{1,5}[A-Z]\s?[/&]\s?[A-Z])(?![\p{L}\p{N}])/iu;
/** S-201-S-204; not L2-S104. */
const range = /(?<![\p{L}\p{N}-])([A-Z]{1,4})-?\d{1,5}\s{0,3}[-–]\s{0,3}\1-?\d{1,5}(?![\p{L}\p{N}])/iu;
/** S-1,2 and S-1..3: of two single figures only as the whole, since more may be a name. */
const figures = /^(?!RM|UNIT|APT|STE)[A-Z]{1,4}-? ?(\d)\s*(?:[,&+]|and|to|thru|\.{2,})\s*(?!\1)\d$/iu;
/** Rooms 101-110: a word for more than one, and a range. */
const rooms =
  /^(?:rooms|rms|units|suites|stes|apts|apartments|floors|levels|stations)\W{1,3}[A-Z]?-?\d{1,5}\s{0,3}(?:[-–]|\.{2,3}|to|thru)\s{0,3}[A-Z]?-?\d{1,5}$/iu;
const numbers = /^\d{2,5}\s*(?:[,&+]|and|to|thru)\s*\d{2,5}$/i;

/** Station marks of one series in a text, each once: S-201 and S-202, not L2 and S-104. */
export function marksIn(text: string): string[] {
  const found = (text.match(marks) ?? []).map((mark) => mark.toUpperCase().replace(/[- ]/g, ""));
  const series = [...Map.groupBy(found, (mark) => /^\D+/.exec(mark)?.[0]).values()];
  return series
    .map((members) => [...new Set(members)])
    .reduce((most, members) => (members.length > most.length ? members : most), []);
}

/** Whether what should be one station mark names several. */
export function namesSeveral(text: string): boolean {
  const [whole, one = "", other = ""] = borrowed.exec(text) ?? [];
  const borrows = whole !== undefined && (one === "" || (one !== other && one.length === other.length));
  return (
    borrows ||
    marksIn(text).length > 1 ||
    [joined, range].some((pattern) => pattern.test(text)) ||
    [numbers, figures, rooms].some((pattern) => pattern.test(text.trim()))
  );
}
