/** A cell of a file for spreadsheets. */
export type Cell = string | number;

/**
 * Titles and rows as CSV (RFC 4180) in UTF-8. The mark at its beginning tells spreadsheets so; without it some would
 * show other letters than were typed.
 */
export function csvText(titles: readonly string[], rows: readonly (readonly Cell[])[]): string {
  return `\uFEFF${[titles, ...rows].map(csvLine).join("")}`;
}

/** A record of RFC 4180: what holds a comma, a quotation mark or a line end stands in quotation marks. */
function csvLine(cells: readonly Cell[]): string {
  const quoted = cells
    .map(String)
    .map((text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text));
  return `${quoted.join(",")}\r\n`;
}

/** Words that spreadsheets take for truth values. */
const truths = /^(?:true|false|vrai|faux|verdadero|falso)$/i;

/** A month and a number, which spreadsheets take for a day, in the languages that legends are in. */
const days =
  /^(?:jan|feb|f[eé]v|mar|apr|avr|abr|ma[iy]|jun|jui|jul|aug|ao[uû]|ago|sep|oct|nov|dec|d[eé]c|dic|ene)\D*\d/i;

/**
 * What a stranger typed, as a cell. A spreadsheet would reckon =1+1, and drop the zeros of 00123. What it might take
 * for something else than text gets an apostrophe before it. So does text that begins with one, so that an apostrophe
 * in front is never part of the text.
 */
export function asText(typed: string): string {
  if (typed === "") return typed;
  return /^\p{L}/u.test(typed) && !truths.test(typed) && !days.test(typed) ? typed : `'${typed}`;
}
