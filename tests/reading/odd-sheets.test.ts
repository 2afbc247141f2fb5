import { afterAll, describe, expect, test } from "vitest";
import { editions } from "../make/config.ts";
import { type Arrival, arrivals } from "../make/odd-sheets/set.ts";
import { sampleSheets } from "../make/odd-sheets/sheets.ts";
import { hasProgram } from "../make/program.ts";
import { readPdf } from "../make/read-pdf.ts";

const asks: Readonly<Record<string, string>> = { mutool: "-v", pdftocairo: "-v" };
const missing = new Set(
  [...new Set(arrivals.flatMap(({ needs }) => needs ?? []))].filter((name) => !hasProgram(name, asks[name])),
);
const sheets = await sampleSheets();

/** What was expected and what came of it, a line for each file. */
const outcomes: { readonly wanted: string; readonly got: string }[] = [];

const wanted = ({ kind, doubts = [] }: Pick<Arrival, "kind" | "doubts">): string =>
  [kind, ...new Set(doubts)].join(", ");

describe.each(arrivals)("a sheet $how", (arrival) => {
  test.skipIf(missing.has(arrival.needs ?? "")).each(sheets)("$edition", async (sample) => {
    const { file, sheet } = await readPdf(await arrival.make(sample));
    const got = wanted({ kind: file.kind, doubts: sheet?.doubts.map(({ what }) => what) ?? [] });
    const { compared = [], doubts = [] } = arrival;
    const isDrawn = editions.some(({ name, drawn }) => name === sample.edition && drawn);
    const right = wanted({ ...arrival, doubts: isDrawn ? [...doubts, ...compared] : doubts });
    outcomes.push({ wanted: right, got });
    expect(got).toBe(right);
    if (arrival.doubts === undefined && sheet !== undefined)
      expect(sheet).toEqual(await plainly(sample.filled));
  });
});

/** What the sheet says when it arrives as we filled it. */
async function plainly(filled: Uint8Array): Promise<unknown> {
  return (await readPdf(filled)).sheet;
}

afterAll(() => {
  const kinds = [...new Set(outcomes.flatMap(({ wanted, got }) => [wanted, got]))].toSorted();
  console.table(
    Object.fromEntries(
      kinds.map((kind) => {
        const files = outcomes.filter(({ wanted }) => wanted === kind);
        const hits = files.filter(({ got }) => got === kind).length;
        const falseAlarms = outcomes.filter(({ wanted, got }) => got === kind && wanted !== kind).length;
        return [
          kind,
          { files: files.length, hits, misses: files.length - hits, "false alarms": falseAlarms },
        ];
      }),
    ),
  );
});
