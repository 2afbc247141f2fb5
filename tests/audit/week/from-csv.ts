import { existsSync } from "node:fs";
import { type Figures, spreadOf } from "../../../src/audit/figures.ts";
import { libreOffice } from "../../release/packed.ts";

const calc = "/usr/lib/libreoffice/program/libsclo.so";
export const hasCalc = existsSync(calc);
if (!hasCalc) console.warn(`${calc} is not installed: the audit's CSV is not opened by LibreOffice here`);

/** LibreOffice's token 8 has it look for days and other special numbers, token 12 reckon formulas. */
export const readers = {
  "as LibreOffice does unasked": "Text - txt - csv (StarCalc):44,34,76,1",
  "looking for numbers and formulas in everything":
    "Text - txt - csv (StarCalc):44,34,76,1,,1033,false,true,false,false,false,0,true",
};

export type Row = Readonly<Record<string, string>>;

/** The rows of a file as LibreOffice shows them, by their titles. */
export function openedIn(name: string, text: string, reader: string): Row[] {
  const bytes = new TextEncoder().encode(text);
  const [head = [], ...rows] = libreOffice(name, bytes, reader).values().next().value ?? [];
  const plain = (cell: string): string => (cell.startsWith('"') ? (JSON.parse(cell) as string) : cell);
  return rows.map((row) => Object.fromEntries(head.map((title, i) => [plain(title), plain(row[i] ?? "")])));
}

/** A line end within a text is LibreOffice's own in what it shows. */
export function asShown(text: string): string {
  return text.replaceAll("\r\n", "\n");
}

/** What a stranger typed: an apostrophe in front is never part of it. */
export function untouched(cell = ""): string {
  return cell.replace(/^'/, "");
}

/** The figures, from nothing but the files. */
export function recounted(rowsOf: (name: string) => readonly Row[]): Figures {
  const [all, revisions, found, asked] = ["letters.csv", "orders.csv", "problems.csv", "questions.csv"].map(
    rowsOf,
  ) as [readonly Row[], readonly Row[], readonly Row[], readonly Row[]];
  const counting = (rows: readonly Row[], title: string, value: string): number =>
    rows.filter((row) => row[title] === value).length;
  const byOrder = [...Map.groupBy(revisions, ({ order_id }) => order_id).values()];
  const begun = byOrder.filter(([first]) => first?.["in_these_days"] === "yes");
  const upToPass = (rows: readonly Row[]): readonly Row[] => {
    const pass = rows.findIndex(({ verdict }) => verdict === "pass");
    return pass === -1 ? rows : rows.slice(0, pass + 1);
  };
  const passed = byOrder
    .map(upToPass)
    .filter((rows) => rows.at(-1)?.["verdict"] === "pass" && rows.at(-1)?.["in_these_days"] === "yes");
  const counted = found.filter((row) => row["counted"] === "yes");
  const tally = (nameOf: (row: Row) => string, among = counted): Figures["byCheck"] =>
    [...Map.groupBy(among, nameOf)]
      .map(([name, rows]) => ({
        name,
        slips: rows.length,
        orders: new Set(rows.map((row) => row["order_id"])).size,
      }))
      .toSorted((a, b) => b.slips - a.slips || a.name.localeCompare(b.name));
  const questions = [
    ...Map.groupBy(
      asked.filter((row) => row["counted"] === "yes"),
      ({ check = "" }) => check,
    ),
  ].map(([check, rows]) => ({
    check,
    asked: rows.length,
    yes: counting(rows, "ended", "yes"),
    decided: counting(rows, "ended", "decided"),
    corrected: counting(rows, "ended", "corrected"),
    withdrawn: counting(rows, "ended", "withdrawn"),
    open: counting(rows, "ended", "open"),
  }));
  return {
    letters: all.length,
    sheets: all.reduce((sum, { sheets }) => sum + Number(sheets), 0),
    byVerdict: {
      pass: counting(all, "verdict", "pass"),
      fail: counting(all, "verdict", "fail"),
      confirm: counting(all, "verdict", "confirm"),
      waiting: counting(all, "verdict", "waiting"),
      person: counting(all, "verdict", "person"),
    },
    held: counting(all, "became", "held"),
    silent: counting(all, "became", "silent"),
    opened: begun.length,
    rightAtFirst: begun.filter((rows) =>
      upToPass(rows).every((row) => row["by_letter"] === "no" || row["right"] === "yes"),
    ).length,
    passed: passed.length,
    rounds: spreadOf(passed.map((rows) => counting(rows, "by_letter", "yes"))),
    hoursToPass: spreadOf(passed.map((rows) => Number(rows.at(-1)?.["seconds_from_first"]) / 3600)),
    secondsToAnswer: spreadOf(all.flatMap(({ seconds_to_answer: n = "" }) => (n === "" ? [] : [Number(n)]))),
    slips: counted.length,
    byCheck: tally(({ check = "" }) => check),
    byBuyer: tally(({ buyer = "" }) => untouched(buyer)),
    byField: tally(
      ({ place = "", edition = "" }) => `${place.replace(/^(row|plain)\..*$/, "$1")} of ${edition}`,
      counted.filter(({ place }) => place !== ""),
    ),
    questions: questions.toSorted((a, b) => b.asked - a.asked || a.check.localeCompare(b.check)),
    forPerson: [],
  };
}
