import type { Sheet } from "../trade/sheet.ts";
import { numberKey, plainText } from "./keys.ts";

/** More words of one order are not looked up, nor longer ones. */
const most = 400;
const longest = 40;

/** What an order can be found by. */
export interface Findable {
  readonly number: string;
  readonly buyer: string;
  readonly project?: string;
  readonly sheets: readonly Sheet[];
}

/** The words under which somebody looks for an order: number, project, people, telephone, station, legends. */
export function termsOf({ number, buyer, project = "", sheets }: Findable): string[] {
  const terms = new Set([numberKey(number), plainText(buyer), ...partsOf(buyer), ...partsOf(project)]);
  for (const { contact, mark = "", legends } of sheets) {
    const { name = "", phone = "", email = "" } = contact;
    for (const term of [plainText(mark), digitsOf(phone), plainText(email), ...partsOf(email)])
      terms.add(term);
    for (const part of partsOf(name)) terms.add(part);
    for (const { rows } of legends) for (const part of partsOf(rows.join(" "))) terms.add(part);
  }
  terms.delete("");
  return [...terms].slice(0, most).map((term) => term.slice(0, longest));
}

/** What somebody typed into the search, as beginnings of terms; all of them have to be found. */
export function soughtIn(typed: string): string[] {
  const words = typed.trim().split(/\s+/);
  // A telephone number is typed in groups.
  if (/^[\d\s()+./-]{7,}$/.test(typed.trim())) return [digitsOf(typed)];
  return words
    .map((word) => plainText(word).slice(0, longest))
    .filter((word) => word !== "")
    .slice(0, 8);
}

/** The words of a text, each as it is compared. */
function partsOf(text: string): string[] {
  return text.split(/[\s@.,/]+/).map(plainText);
}

/** The last ten digits of a telephone number: with the code of the country or without, it is the same. */
function digitsOf(phone: string): string {
  return phone.replace(/\D/g, "").slice(-10);
}
