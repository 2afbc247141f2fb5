import { type Count, countedBy } from "../../trade/count.ts";
import { type Goods, whatIsCounted } from "./counts.ts";
import { tokensOf } from "./word-bag.ts";

const quantity = /^(?:qty|quantity|quantities|count|number|no\.?|#|pcs|pieces|how many)$/i;
const describing =
  /^(?:item|items|description|type|kind|what|product|layout|buttons?|finish|colou?r|size|gangs?|order|order (?:no|number)\.?|po|project|job)$/i;

/** Rows of a longer list are no totals. */
const mostRows = 100;

/**
 * A table that says how many there are of what, such as a list from a spreadsheet: a row of headings, one of them
 * "Qty", and a row for each thing counted. Undefined if any of it says something else. `names` may stand in it too.
 */
export function countsInTable(text: string, names: readonly string[], goods: Goods): Count[] | undefined {
  const lines = text
    .replace(/^\uFEFF/, "")
    .split(/\r?\n/)
    .filter((line) => line.trim() !== "");
  const [heads, ...rows] = lines.map((line) => cellsIn(line, separatorIn(lines[0] ?? "")));
  if (heads === undefined || rows.length > mostRows) return undefined;
  const at = heads.findIndex((head) => quantity.test(head));
  if (at < 0 || !heads.every((head, i) => i === at || describing.test(head))) return undefined;
  const known = new Set(names.map(keyOf));
  const counts = rows.map((row) => countIn(row, at, heads, known, goods));
  const [last] = counts.slice(-1);
  const total = last?.of === "sheet" ? counts.pop() : undefined;
  const all = counts.flatMap((count) => count ?? []);
  const isTwice = new Set(all.map(countedBy)).size < all.length;
  if (all.length === 0 || all.length < counts.length || isTwice) return undefined;
  const sum = all.reduce((sum, { number }) => sum + number, 0);
  if (total === undefined) return all;
  return total.number === sum ? [...all, total] : undefined;
}

function countIn(
  row: readonly string[],
  at: number,
  heads: readonly string[],
  known: ReadonlySet<string>,
  goods: Goods,
): Count | undefined {
  const typed = row[at] ?? "";
  if (row.length > heads.length || !/^\d{1,3}$/.test(typed)) return undefined;
  const cells = row
    .map((cell, i) => (/^\d$/.test(cell) ? `${cell} ${unitOf(heads[i] ?? "")}` : cell))
    .filter((cell, i) => i !== at && cell !== "" && !known.has(keyOf(cell)));
  const number = Number(typed);
  if (cells.length === 1 && /^(?:grand )?totals?:?$/i.test(cells[0] ?? "")) return { of: "sheet", number };
  const words = cells.join(" ");
  const what = whatIsCounted(words, goods);
  return what === undefined || !cells.every((cell) => isUnderstood(cell, goods))
    ? undefined
    : { ...what, number };
}

/** A bare number under "Gangs" or "Buttons" counts these. */
function unitOf(head: string): string {
  return /gang|size/i.test(head) ? "gangs" : /button/i.test(head) ? "buttons" : "";
}

const plainly = new Set(
  tokensOf(
    "device devices keypad keypads plate plates sheet sheets form forms wall with of in engraved gang gangs button buttons",
  ),
);
const sizes = /(?:\d|one|two|three|four|five|six|seven|eight|nine|ten)[- ]?(?=gang|button)/gi;

/** Whether nothing stands in a cell that says more than what is counted. */
function isUnderstood(cell: string, { layouts, finishes }: Goods): boolean {
  const names = [...finishes.flatMap(({ code, name }) => [code, name]), ...layouts.map(({ code }) => code)];
  const allowed = new Set([...plainly, ...names.flatMap(tokensOf)]);
  return tokensOf(cell.replace(sizes, " ")).every((token) => allowed.has(token));
}

function keyOf(text: string): string {
  return tokensOf(text).join("");
}

function separatorIn(line: string): string {
  return ["\t", ";", "|", ","].find((sign) => line.includes(sign)) ?? ",";
}

/** The cells of a row. One in quotation marks may hold the separator (RFC 4180 §2). */
function cellsIn(line: string, separator: string): string[] {
  const cells = [""];
  let quoted = false;
  for (const sign of line) {
    if (sign === '"') quoted = !quoted;
    else if (sign === separator && !quoted) cells.push("");
    else cells[cells.length - 1] += sign;
  }
  return cells.map((cell) => cell.trim());
}
