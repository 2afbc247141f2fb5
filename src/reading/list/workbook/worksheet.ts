import type { ListFault } from "../../../trade/list-fault.ts";
import {
  addressOf,
  type Cell,
  columnOf,
  lettersOf,
  mostCells,
  type Oddity,
  type Table,
} from "../list-facts.ts";
import { unescaped, type Written } from "./shared-texts.ts";
import { type Look, plainLook } from "./styles.ts";
import { isOn, readXml } from "./xml.ts";

/** What the cells of a sheet point at. */
export interface Shared {
  readonly texts: readonly Written[];
  readonly looks: readonly Look[];
}

/** A cell while it is read. */
interface Open {
  readonly column: number;
  readonly row: number;
  readonly type: string;
  readonly look: Look;
  value: string;
  struck: boolean;
  formula: boolean;
}

/** One sheet of a workbook. ECMA-376-1 §18.3.1 */
export function readWorksheet(
  xml: string,
  name: string,
  { texts, looks }: Shared,
): { readonly table: Table; readonly more: readonly ListFault[] } {
  const rows: Cell[][] = [];
  const more: ListFault[] = [];
  const hidden = new Set<number>();
  let [row, column, rowHidden, allHidden] = [0, 0, false, false];
  let cell: Open | undefined;
  let inside = "";
  let header = "";
  const found = (what: ListFault["what"], where: string): void => {
    more.push({ what, where: `${name}!${where}` });
  };
  readXml(xml, {
    open: (tag, attributes) => {
      switch (tag) {
        case "sheetFormatPr":
          allHidden = isOn(attributes["zeroHeight"]);
          break;
        case "col":
          if (isOn(attributes["hidden"]) || Number(attributes["width"] ?? 1) === 0)
            // What stands farther out is refused anyway.
            for (
              let at = Number(attributes["min"]);
              at <= Math.min(Number(attributes["max"]), mostCells.columns);
              at++
            )
              hidden.add(at - 1);
          break;
        case "row":
          row = Number(attributes["r"] ?? row + 1);
          column = 0;
          rowHidden =
            isOn(attributes["hidden"] ?? (allHidden ? "1" : "0")) || Number(attributes["ht"] ?? 1) === 0;
          break;
        case "c":
          column = attributes["r"] === undefined ? column : columnOf(attributes["r"]);
          cell = {
            column,
            row,
            type: attributes["t"] ?? "n",
            look: looks[Number(attributes["s"] ?? 0)] ?? plainLook,
            value: "",
            struck: false,
            formula: false,
          };
          break;
        case "f":
          if (cell !== undefined) cell.formula = true;
          break;
        case "strike":
          if (cell !== undefined && isOn(attributes["val"] ?? "1")) cell.struck = true;
          break;
        case "mergeCell":
          found("merged", attributes["ref"] ?? "");
          break;
        case "conditionalFormatting":
          found("rule", attributes["sqref"] ?? "");
          break;
        case "oleObject":
        case "control":
          found("picture", "an object");
          break;
        default:
          break;
      }
      inside = tag;
    },
    text: (written) => {
      if (cell !== undefined && (inside === "v" || inside === "t")) cell.value += written;
      else if (overPages.test(inside)) header += written;
    },
    close: (tag) => {
      inside = "";
      if (overPages.test(tag)) {
        const words = wordsOver(header);
        if (words !== "") more.push({ what: "header", where: name, text: words });
        header = "";
      }
      if (tag !== "c" || cell === undefined) return;
      const read = cellOf(cell, texts);
      column = cell.column + 1;
      cell = undefined;
      if (read === undefined) return;
      if (rowHidden || hidden.has(read.column)) found("hidden", addressOf(read));
      const [last] = rows.slice(-1);
      if (last?.[0]?.row === read.row) last.push(read);
      else rows.push([read]);
    },
  });
  const isLong = rows.length > mostCells.rows || rows.some((one) => one.length > mostCells.columns);
  if (isLong) found("too-long", `A1:${lettersOf(mostCells.columns)}${mostCells.rows}`);
  return { table: { name, rows: isLong ? rows.slice(0, 1) : rows }, more };
}

/** ECMA-376-1 §18.3.1.46: what is printed over and under the pages. */
const overPages = /^(?:odd|even|first)(?:Header|Footer)$/;

/** The words of a header without its codes: "&P" is the page, "&\"Arial,Bold\"" a font. */
function wordsOver(header: string): string {
  const words = header
    .replaceAll(/&(?:"[^"]*"|K[0-9A-F]{6}|K\d\d[+-]\d{3}|\d{1,3}|[A-Z])/giu, " ")
    .replaceAll("&&", "&")
    .replaceAll(/\s+/g, " ")
    .trim();
  return words.split(/[^\p{L}]+/u).every((word) => ofPages.has(word.toLowerCase())) ? "" : words;
}

/** Words that tell the page, the day or whose paper it is, and nothing of the order. */
const ofPages = new Set(["", ..."page pages of sheet date printed confidential private internal".split(" ")]);

function cellOf(
  { column, row, type, look, value, struck, formula }: Open,
  texts: readonly Written[],
): Cell | undefined {
  const shared = type === "s" ? texts[Number(value)] : undefined;
  const text =
    type === "s"
      ? (shared?.text ?? "")
      : type === "b"
        ? value === "1"
          ? "TRUE"
          : "FALSE"
        : unescaped(value);
  if (text.trim() === "" && !formula) return undefined;
  const isText = type === "s" || type === "str" || type === "inlineStr";
  const number = isText || type === "b" ? undefined : plainNumber(text, look.format);
  const odd: Oddity | undefined = formula
    ? "formula"
    : look.struck || struck || shared?.struck === true
      ? "struck"
      : look.unseen
        ? "unseen"
        : (isText ? showsText(look.format) : number !== undefined)
          ? undefined
          : "shown-otherwise";
  return { column, row, text: number ?? text, ...(odd === undefined ? {} : { odd }) };
}

/** A number that is shown as it is held: ECMA-376-1 §18.8.30, General shows eleven digits. */
function plainNumber(held: string, format: string): string | undefined {
  const shown = String(Number(held));
  const isPlain = format === "General" || format === "@" || (format === "0" && /^-?\d+$/.test(shown));
  return isPlain && held.trim() !== "" && /^-?[\d.]{1,11}$/.test(shown) ? shown : undefined;
}

/** Whether a format shows a text as it is. Its fourth part is for texts (§18.8.31). */
function showsText(format: string): boolean {
  const parts = format.split(";");
  return parts.length < 4 && !parts.some((part) => part.includes("@") && part !== "@");
}
