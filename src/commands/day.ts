import { writeFile } from "node:fs/promises";
import { dayCsv } from "../audit/csv.ts";
import { type Day, makeDay } from "../audit/day.ts";
import { dateIn, dayBounds } from "../calendar/dates.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { missingWords } from "./order.ts";
import { table } from "./table.ts";
import { readRecord, systemClock } from "./wire.ts";

export const day = defineCommand({
  name: "day",
  takes: "[YYYY-MM-DD]",
  words: [0, 1],
  summary: "Audits one day: its letters, verdicts, problems, and what is still open.",
  details:
    "Without a date it is today, in the settings' time zone. Counted from the record: a recount gives the same.",
  options: {
    csv: { type: "string", takes: "FILE", tells: "write the letters as CSV too" },
    json: { type: "boolean", tells: "print one JSON object instead" },
    ...settingsOption,
  },
  async run([given], { csv, json, settings }, { out }) {
    const configuration = await configure(settings);
    const zone = configuration.settings.time_zone;
    const date = given ?? dateIn(systemClock.now(), zone);
    if (!isDate(date)) throw new CannotRun(`“${date}” is not a date; write it as 2026-11-09`);
    const { from, to } = dayBounds(date, zone);
    const store = await readRecord(configuration);
    const audit = makeDay(date, zone, await store.letters.between(from, to), await store.orders.openAt(to));
    await store.close();
    if (csv !== undefined)
      await writeFile(csv, dayCsv(audit)).catch((cause: unknown) => {
        throw new CannotRun(`cannot write ${csv}: ${reasonOf(cause)}`, { cause });
      });
    out(json ? JSON.stringify(audit, null, 2) : dayText(audit));
    return 0;
  },
});

function isDate(text: string): boolean {
  const date = new Date(`${text}T00:00:00Z`);
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text)
  );
}

function dayText(audit: Day): string {
  if (audit.letters.length === 0)
    return `${audit.date}: no letter came (days begin at midnight in ${audit.timeZone}).`;
  const answered = audit.letters
    .flatMap(({ secondsToAnswer }) => secondsToAnswer ?? [])
    .toSorted((a, b) => a - b);
  const median = answered[Math.floor((answered.length - 1) / 2)];
  return [
    `${audit.date} (${audit.timeZone}): ${audit.letters.length} letters`,
    "",
    table([
      ["time", "from", "order", "sheets", "verdict", "to fix", "to ask", "answered in"],
      ...audit.letters.map((letter) => [
        letter.time,
        letter.from,
        letter.orders.join(", "),
        String(letter.sheets),
        letter.verdict ?? "",
        letter.stops === 0 ? "" : String(letter.stops),
        letter.asks === 0 ? "" : String(letter.asks),
        letter.secondsToAnswer === null ? letter.state : seconds(letter.secondsToAnswer),
      ]),
    ]),
    "",
    `Verdicts: ${Object.entries(audit.byVerdict)
      .map(([verdict, count]) => `${count} ${verdict}`)
      .join(", ")}.`,
    ...(median === undefined ? [] : [`Half of the answers took ${seconds(median)} or less.`]),
    "",
    table([
      ["problem", "times", "letters"],
      ...audit.byCheck.map(({ check, problems, letters }) => [check, String(problems), String(letters)]),
    ]),
    "",
    audit.open.length === 0
      ? "No order is open at the end of the day."
      : table(
          [
            ["open order", "verdict", "project", "buyer", "still to come"],
            ...audit.open.map((order) => [
              order.number,
              order.verdict,
              order.project ?? "",
              order.buyer,
              missingWords(order.missing),
            ]),
          ],
          60,
        ),
  ].join("\n");
}

function seconds(count: number): string {
  return count < 60 ? `${count.toFixed(1)} s` : `${(count / 60).toFixed(0)} min`;
}
