import { beforeAll, describe, expect, test } from "vitest";
import { csvFiles } from "../../src/audit/csv.ts";
import { type Figures, figuresOf } from "../../src/audit/figures.ts";
import type { Period } from "../../src/audit/period.ts";
import type { Audited, AuditedLetter, AuditedOrder, AuditedSlip, Ending } from "../../src/trade/audited.ts";
import type { Verdict } from "../../src/trade/problem.ts";
import { asShown, hasCalc, openedIn, type Row, readers, recounted, untouched } from "./week/from-csv.ts";

/** Order numbers, and subjects, that a spreadsheet would reckon, show otherwise or tear apart. */
const typed = [
  "00123",
  "1-2",
  "=1+1",
  "+ON",
  "@SUM",
  "-OFF",
  "\u202E321-WB",
  "BW-\u202E7022",
  'say "22", please',
  "two\nlines",
  "two\r\nlines",
  "\u00D6STLICH-\u00C9T\u00C9-\u0141\u00D3D\u0179",
  "'00123",
  "''",
  "1E5",
  "MAR-1",
  "TRUE",
  "2026-11-09",
  "12:30",
  "1/2",
  "$5",
  "50%",
  " 7",
  "\u00A07",
  "\t=1",
  "\uFF1D1+1",
  "a,b;c",
  '=HYPERLINK("http://x.example","y")',
  "\u5357\u5317-1",
  "\u0661\u0662\u0663",
  "BW-2207",
] as const;

const start = Date.parse("2026-11-09T06:00:00Z");
const at = (minutes: number): Date => new Date(start + minutes * 60_000);
const verdicts: readonly Verdict[] = ["pass", "waiting", "confirm", "fail", "person"];
const endings: readonly Ending[] = ["yes", "decided", "corrected", "withdrawn", "open"];
const pick = <T>(of: readonly T[], i: number): T => of[i % of.length] as T;

/** A letter, an order and a slip for each text; what became of them takes turns. */
const letters: readonly AuditedLetter[] = typed.map((text, i) => ({
  letter: i + 1,
  receivedAt: at(i),
  from: `buyer-${i % 4}@brightwire.example`,
  subject: text,
  sheets: i % 3,
  ...(i % 7 === 5
    ? { became: i % 2 === 0 ? "held" : "silent" }
    : { became: "answered", verdict: pick(verdicts, i), answeredAt: at(i + 0.1 * (i + 1)) }),
}));
const orders: readonly AuditedOrder[] = typed.map((number, i) => ({
  order: i + 1,
  number,
  buyer: `buyer-${i % 4}@brightwire.example`,
  revisions: [
    // A third of them began before these days.
    {
      at: at(i % 3 === 0 ? i - 5000 : i),
      verdict: pick(verdicts, i),
      checks: ["manager-word"],
      isLetter: true,
    },
    { at: at(60 + i), verdict: pick(verdicts, i + 1), checks: ["spelling"], isLetter: i % 2 === 0 },
    { at: at(600 + i), verdict: "pass", checks: [], isLetter: true },
  ],
}));
const slips: readonly AuditedSlip[] = typed.map((number, i) => ({
  order: (i % 20) + 1,
  number,
  buyer: `buyer-${i % 4}@brightwire.example`,
  problem: {
    check: pick(["spelling", "field-missing", "manager-word", "row-too-long"], i),
    wording: "unknown",
    severity: i % 2 === 0 ? "asks" : "stops",
    verdict: "confirm",
    facts: {},
    spots: [{ file: "1/1", place: pick(["row.1.1", "order", "project"] as const, i) }],
  },
  edition: "device-3",
  openedAt: at(i % 5 === 0 ? i - 5000 : i),
  ending: pick(endings, i),
}));
const pairs = typed.map((number, i) => ({
  letter: i + 1,
  order: i + 1,
  number,
  buyer: `buyer-${i % 4}@brightwire.example`,
  ...(i % 2 === 0 ? { revision: 2, verdict: pick(verdicts, i) } : {}),
}));
const audited: Audited = { letters, orders, pairs, slips, unread: [], held: [] };
const [from, to] = [at(0), at(24 * 60)];
const figures = figuresOf(audited, from, to);
const period: Period = {
  first: "2026-11-09",
  last: "2026-11-09",
  timeZone: "America/Chicago",
  from,
  businessDays: 1,
  audited,
  figures,
  before: figures,
};

describe.skipIf(!hasCalc).each(Object.entries(readers))("CSV of an audit read %s", (_, reader) => {
  const files = new Map<string, readonly Row[]>();
  beforeAll(() => {
    for (const [name, text] of csvFiles(period)) files.set(name, openedIn(name, text, reader));
  }, 300_000);
  const rowsOf = (name: string): readonly Row[] => files.get(name) ?? [];

  test("every number and subject is the text that was typed, in every file", () => {
    const shown = typed.map(asShown);
    expect(rowsOf("letters.csv").map(({ subject }) => untouched(subject))).toEqual(shown);
    expect(
      rowsOf("letters.csv").map(({ letter, from: buyer, became, verdict, sheets }) => [
        letter,
        buyer,
        became,
        verdict,
        sheets,
      ]),
    ).toEqual(
      letters.map((one) => [`${one.letter}`, one.from, one.became, one.verdict ?? "", `${one.sheets}`]),
    );
    expect(rowsOf("letters-orders.csv").map(({ order }) => untouched(order))).toEqual(shown);
    expect(rowsOf("problems.csv").map(({ order }) => untouched(order))).toEqual(shown);
    expect(rowsOf("orders.csv").map(({ order }) => untouched(order))).toEqual(
      shown.flatMap((text) => [text, text, text]),
    );
  });

  test("every figure recounted from the opened files is that of the JSON", () => {
    expect(recounted(rowsOf)).toEqual({
      ...JSON.parse(JSON.stringify(figures)),
      forPerson: expect.any(Array),
      hoursToPass: close(figures.hoursToPass),
      secondsToAnswer: close(figures.secondsToAnswer),
    });
  });

  test("a pair of a letter and an order is one row", () => {
    const rows = rowsOf("letters-orders.csv");
    expect(new Set(rows.map(({ letter, order_id }) => `${letter} ${order_id}`)).size).toBe(rows.length);
    expect(
      rows.map(({ letter, order_id, revision, verdict }) => [letter, order_id, revision, verdict]),
    ).toEqual(
      pairs.map((pair) => [`${pair.letter}`, `${pair.order}`, `${pair.revision ?? ""}`, pair.verdict ?? ""]),
    );
  });
});

function close(spread: Figures["rounds"]): unknown {
  return Object.fromEntries(
    Object.entries(spread).map(([name, n]: [string, number]) => [name, expect.closeTo(n, 6)]),
  );
}
