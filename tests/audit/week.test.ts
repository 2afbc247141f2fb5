import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Figures } from "../../src/audit/figures.ts";
import { dayBounds } from "../../src/calendar/dates.ts";
import { day } from "../../src/commands/day.ts";
import { expectPart } from "../make/document.ts";
import { byHand, type Expected } from "./week/by-hand.ts";
import { hasCalc, openedIn, readers, recounted } from "./week/from-csv.ts";
import { afterwards, week } from "./week/letters.ts";
import { openWeek, type Played } from "./week/play.ts";
import { type Counted, secondOpinion } from "./week/second-opinion.ts";

let played: Played;
beforeAll(async () => {
  played = await openWeek();
  await played.play(week);
}, 300_000);
afterAll(async () => {
  await played.close();
  rmSync(played.folder, { recursive: true });
});

interface Json {
  readonly figures: Figures;
  readonly audited: { readonly pairs: readonly unknown[] };
}

/** What `burin day` prints. */
async function printed(...args: readonly string[]): Promise<string> {
  const lines: string[] = [];
  const io = { out: (text: string) => lines.push(text), err: () => undefined, progress: () => undefined };
  expect(await day.run([...args, "--settings", played.settings], io)).toBe(0);
  return lines.join("\n");
}

/** The days of the script as a whole. */
const wholeWeek = ["--from", "2026-11-16", "--to", "2026-11-20"] as const;

/** The figures that are counts, in the words of the table. */
function countsIn({ figures, audited }: Json): Partial<Counted> {
  const { letters, sheets, held, silent, opened, rightAtFirst, byVerdict, byCheck, byBuyer, questions } =
    figures;
  const tallied = (some: Figures["byCheck"]): string =>
    some
      .map(({ name, slips, orders }) => `${name} ${slips} in ${orders}`)
      .toSorted()
      .join(", ");
  return {
    letters,
    sheets,
    held,
    silent,
    opened,
    right: rightAtFirst,
    verdicts: Object.entries(byVerdict)
      .filter(([, n]) => n > 0)
      .map(([verdict, n]) => `${verdict} ${n}`)
      .toSorted()
      .join(", "),
    checks: tallied(byCheck),
    buyers: tallied(byBuyer),
    questions: questions
      .flatMap(({ check, asked: _asked, ...ended }) =>
        Object.entries(ended).flatMap(([how, n]) => (n > 0 ? [`${check} ${how} ${n}`] : [])),
      )
      .toSorted()
      .join(", "),
    waits: figures.forPerson.length,
    pairs: audited.pairs.length,
  };
}

/** By the nearest rank, from a list in order. */
function ranks(list: string): { count: number; median?: number; p90?: number } {
  const numbers = list === "" ? [] : list.split(" ").map(Number);
  const at = (share: number): number => numbers[Math.ceil(numbers.length * share) - 1] ?? Number.NaN;
  return numbers.length === 0 ? { count: 0 } : { count: numbers.length, median: at(0.5), p90: at(0.9) };
}

function expectSpread(spread: object, list: string, unit = 1): void {
  const close = (n: number): unknown => expect.closeTo(n / unit, 6);
  const { count, median, p90 } = ranks(list);
  expect(spread).toEqual({
    count,
    ...(median === undefined ? {} : { median: close(median) }),
    ...(p90 === undefined ? {} : { p90: close(p90) }),
  });
}

async function expectFigures(expected: Expected): Promise<void> {
  const { first, last, ...counts } = expected;
  const record = join(played.folder, "record/record.sqlite");
  const [a, b] = [dayBounds(first, "America/Chicago").from, dayBounds(last, "America/Chicago").to];
  expect(secondOpinion(record, a.toISOString(), b.toISOString())).toEqual(counts);
  const json = JSON.parse(await printed("--from", first, "--to", last, "--json")) as Json;
  const { rounds, seconds, answers, ...plain } = counts;
  expect(countsIn(json)).toEqual(plain);
  const { figures } = json;
  expect(figures.passed).toBe(ranks(rounds).count);
  expectSpread(figures.rounds, rounds);
  expectSpread(figures.hoursToPass, seconds, 3600);
  expectSpread(figures.secondsToAnswer, answers);
}

describe.each([
  ["when it has ended", []],
  ["recounted after more letters came", afterwards],
])("a week of letters %s", (_, more) => {
  beforeAll(() => played.play(more), 300_000);

  test.each(byHand)(
    "$first to $last: by hand, by plain SQL and by burin day, the figures are the same",
    expectFigures,
  );
});

test("README shows what is printed of the week, shortened", async () => {
  const parts = (await printed(...wholeWeek)).split("\n\n");
  const shown = parts.filter((part) => /^(?:2026|Figures|Questions|What it teaches)/.test(part));
  expect(shown).toHaveLength(4);
  expectPart("README.md", "day", ["```", shown.join("\n\n"), "```"].join("\n"));
});

test.skipIf(!hasCalc)(
  "the week's CSV, opened by LibreOffice, comes to the figures that are printed beside it",
  async () => {
    const folder = join(played.folder, "csv");
    const { figures } = JSON.parse(await printed(...wholeWeek, "--csv", folder, "--json")) as Json;
    const reader = readers["as LibreOffice does unasked"];
    const rows = new Map(
      readdirSync(folder).map((name) => [
        name,
        openedIn(name, readFileSync(join(folder, name), "utf8"), reader),
      ]),
    );
    expect(recounted((name) => rows.get(name) ?? [])).toEqual({ ...figures, forPerson: [] });
  },
  300_000,
);
