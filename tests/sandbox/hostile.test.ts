import { afterAll, expect, test } from "vitest";
import type { Opened } from "../../src/ports/reader.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { editions } from "../make/config.ts";
import { answersFor } from "../make/filled.ts";
import { hostile } from "../make/hostile/all.ts";
import { inObjectStream } from "../make/hostile/pdf-bombs.ts";
import { formWith } from "../make/hostile/raw-pdf.ts";
import { tnef } from "../make/hostile/raw-tnef.ts";
import { rawZip, zipped } from "../make/hostile/raw-zip.ts";
import { type TriedOut, tableOf, tryOut } from "../make/hostile/try-out.ts";
import { filledForm } from "../make/pdf.ts";
import { directReader } from "../make/reader.ts";

// Shorter than usual, so that what runs to its limit does not hold the tests up; tests/bench/hostile.ts has
// the usual ones. The memory is as usual.
const limits = { jobMs: 2500, pagesMs: 1500, patience: 10 };
const log = { info: () => undefined, warn: () => undefined };
const reader = openPool({ log, processes: 1, limits });
const tried: TriedOut[] = [];
afterAll(async () => {
  await reader.close();
  console.log(tableOf(tried));
});

const [edition] = editions;
if (edition === undefined) throw new Error("no edition");
const sheet = await filledForm(edition, answersFor(edition));
const usual = await directReader.file(sheet);

/** What a form of two text fields says. */
function orderAndMark(opened: Opened<object>): unknown {
  return opened.ok && "fields" in opened.value ? opened.value.fields : opened;
}
const filled = [
  { name: "order", kind: "text", values: ["BW-2207"] },
  { name: "mark", kind: "text", values: ["S-104"] },
];

// Else nothing would be shown by what is built the same way around something hostile.
test("what the hostile files are built around is read as usual", async () => {
  expect(orderAndMark(await reader.file(formWith({})))).toMatchObject(filled);
  expect(orderAndMark(await reader.file(inObjectStream(true, 1 << 24)))).toMatchObject(filled);
  const zip = await reader.file(rawZip([zipped("a.pdf", sheet)]));
  expect(zip).toMatchObject({ value: { kind: "archive", files: [{ name: "a.pdf" }], left: [] } });
  const winmail = await reader.file(tnef(9, Buffer.from("%PDF-1.7\n")));
  expect(winmail).toMatchObject({ value: { kind: "archive", files: [{ name: "a.pdf" }], left: [] } });
});

test.each(hostile)("$op: $name", async (one) => {
  const outcome = await tryOut(reader, one);
  tried.push(outcome);
  // Of the processor. A process is looked at now and then, so what is ended has taken somewhat more than it might.
  expect(outcome.seconds).toBeLessThan((2 * (limits.jobMs + limits.pagesMs)) / 1000);
  expect(outcome.peakMb).toBeLessThan(1200);
  if (one.fields) expect(orderAndMark(outcome.opened)).toMatchObject(filled);
  expect(await reader.file(sheet)).toEqual(usual);
});
