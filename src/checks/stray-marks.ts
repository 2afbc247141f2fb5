import type { Words } from "../catalogue/words.ts";

/** A row of a legend, and the rows around it. */
export interface Written {
  readonly text: string;
  /** Whether it is the first and the last row of its face that says something. */
  readonly isFirst: boolean;
  readonly isLast: boolean;
  /** All rows of its face. */
  readonly face: string;
  /** The number of its face. */
  readonly number: string;
  /** All rows of the other faces. */
  readonly others: readonly string[];
}

/** Marks that end a line of a list or point to a remark, and no legend. */
const listed = /^(.*[^\s,;:*_])[\s,;:*_]+$/u;
/** A stroke joins the next row to this one, so it counts on the last row alone. */
const stroke = /^(.*\p{L})\s*[-–—/]$/u;
const stop = /^([^.]*?(\p{L}{3,}))\.$/u;
/** "STUDY!", "STUDY..", "STUDY=". Of A+ and 50% the marks are meant. */
const strayAtEnd = /^(.*[\p{L}\p{N})])(?:\s*[!=#]+|\s*\.{2,}|(?<=\p{L}{3})\++|(?<=\p{L})%)$/u;
/** "- STUDY", ".STUDY", "#STUDY". Of +5, -1, .5 and #2 the marks are meant. */
const strayAtStart = /^(?:[.,;:!*_=%]+|[-+#/&]+(?![\p{N}.]))\s*(?=\p{L})(.+)$/u;
/** It begins the second part of a legend: "BAR" over "& GRILL", "HALL" over "/FOYER". */
const joins = /^[&/+-]/u;
/** "STUDY X2", "STUDY (2)". */
const counted = /^(.*\p{L}{3,})\s*(?:\s[X×]\s?[2-9]|\s[2-9]\s?[X×]|\([2-9]\))$/iu;
/** "STUDY AND": what it joins is missing. */
const dangling = /^(.*\p{L}{2})\s+(?:AND|OR|WITH|FOR|THE|&)$/iu;
/** "S.TUDY", "ST,UDY". */
const inWord = /(?<!\p{L})(\p{L}+)[.,:;](?=\p{L})(\p{L}+)(?!\p{L})/u;
const doubled = /([.,:;/&'"-])\1+/u;

/** The marks that a row is without, where it is written otherwise. */
export function marksLeft(text: string, closed: string): string {
  if (text.startsWith(closed)) return text.slice(closed.length).trim();
  if (text.endsWith(closed)) return text.slice(0, -closed.length).trim();
  let at = 0;
  return [...text]
    .filter((letter) => letter !== closed[at] || (at++, false))
    .join("")
    .trim();
}

/** A row without marks that are perhaps not meant. Undefined if it has none. */
export function withoutStrays(row: Written, words: Words): string | undefined {
  const { text, isFirst, isLast } = row;
  const [, stopped, last = ""] = stop.exec(text) ?? [];
  const isWord = words.isWord(last) && words.expansions(last).length === 0;
  return [
    listed.exec(text)?.[1],
    isLast && !isPaired(row) ? stroke.exec(text)?.[1] : undefined,
    isWord ? stopped : undefined,
    isPaired(row) ? undefined : strayAtEnd.exec(text)?.[1],
    (isFirst || !joins.test(text)) && !isPaired(row) ? strayAtStart.exec(text)?.[1] : undefined,
    isFirst ? numbered(row) : undefined,
    counted.exec(text)?.[1],
    isLast ? dangling.exec(text)?.[1] : undefined,
    unbalanced(row),
    quoted(row),
    split(text, words),
    doubled.test(text) ? text.replace(doubled, "$1") : undefined,
  ].find((one) => one !== undefined);
}

/** "VOL -" beside "VOL +". */
function isPaired({ text, others }: Written): boolean {
  const [sign] = /^[-+](?=\s?\p{L})|(?<=\p{L}\s?)[-+]$/u.exec(text) ?? [];
  const other = sign === "+" ? "-" : "+";
  return sign !== undefined && others.some((one) => one.startsWith(other) || one.endsWith(other));
}

/** "2. STUDY" on button 2. A German floor is "2. OG". */
function numbered({ text, number }: Written): string | undefined {
  const [, typed, rest] =
    /^\(?(\d{1,2})[.)]\s*(?!(?:OG|UG|DG|STOCK|ETAGE|GESCHOSS)(?!\p{L}))(\p{L}.*)$/iu.exec(text) ?? [];
  return typed === number ? rest : undefined;
}

/** A bracket that opens on its face and does not close, or the other way about. */
function unbalanced({ text, face }: Written): string | undefined {
  const count = (sign: string): number => face.split(sign).length;
  if (count("(") === count(")")) return undefined;
  const without = text.replace(/[()]/gu, "").trim();
  return without === text || without === "" ? undefined : without;
}

/** A quotation mark that has lost its other. Of KIDS', MAITRE D', 'TIS, '90S and 24" the marks are meant. */
function quoted({ text, face }: Written): string | undefined {
  const isLone = (sign: string): boolean => face.split(sign).length === 2;
  const double = isLone('"') ? (/^"\s*(.+)$/u.exec(text) ?? /^(.*[^\p{N}\s])\s*"$/u.exec(text)) : null;
  const single = isLone("'")
    ? (/^'\s*(?!\p{N}|(?:TIS|TWAS|TIL|N)(?!\p{L}))(.+)$/iu.exec(text) ??
      /^(.*\p{L}(?![sx])\p{L})'$/iu.exec(text))
    : null;
  return (double ?? single)?.[1];
}

/** A word that a mark divides. "ON,OFF" and "CONF.RM" are two. */
function split(text: string, { isWord }: Words): string | undefined {
  const [both = "", before = "", after = ""] = inWord.exec(text) ?? [];
  const isTwo = [before, after].every((one) => one.length > 2 && isWord(one));
  return (before + after).length > 3 && isWord(before + after) && !isTwo
    ? text.replace(both, before + after)
    : undefined;
}
