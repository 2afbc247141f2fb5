import { csvLine } from "../audit/csv.ts";
import type { Cell, Table } from "./table.ts";

/**
 * A table as CSV (RFC 4180) in UTF-8. The mark at its beginning tells spreadsheets so; without it some would show other
 * letters than were typed.
 */
export function tableCsv({ titles, rows }: Table): string {
  const lines = [titles, ...rows.map((row) => row.map(asText))];
  return `\uFEFF${lines.map(csvLine).join("")}`;
}

/** Words that spreadsheets take for truth values. */
const truths = /^(?:true|false|vrai|faux|verdadero|falso)$/i;

/** A month and a number, which spreadsheets take for a day, in the languages that legends are in. */
const days =
  /^(?:jan|feb|f[eé]v|mar|apr|avr|abr|ma[iy]|jun|jui|jul|aug|ao[uû]|ago|sep|oct|nov|dec|d[eé]c|dic|ene)\D*\d/i;

/**
 * A spreadsheet would reckon a legend such as =1+1, and drop the zeros of 00123. What it might take for something else
 * than text gets an apostrophe before it. So does text that begins with one, so that an apostrophe in front is never
 * part of the text.
 */
function asText(cell: Cell): Cell {
  if (typeof cell === "number" || cell === "") return cell;
  return /^\p{L}/u.test(cell) && !truths.test(cell) && !days.test(cell) ? cell : `'${cell}`;
}
