import { mkdir, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { csvFiles } from "../audit/csv.ts";
import { periodPage } from "../audit/page.ts";
import { readPeriod } from "../audit/period.ts";
import { periodText } from "../audit/text.ts";
import { dateIn } from "../calendar/dates.ts";
import { calendarIn } from "../settings/calendar.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { readRecord } from "./record.ts";
import { systemClock } from "./system-clock.ts";

export const day = defineCommand({
  name: "day",
  words: [0, 1],
  details:
    "Without a date it is today, in the settings' time zone. Counted as the record stood when the days ended: a recount gives the same.",
  options: {
    from: { type: "string", takes: "DATE", tells: "the first day of several" },
    to: { type: "string", takes: "DATE", tells: "the last day of several; without it, today" },
    csv: {
      type: "string",
      takes: "FOLDER",
      tells: "write letters, orders, letters with their orders, problems and questions as CSV too",
    },
    html: { type: "string", takes: "FILE", tells: "write a page with tables and charts too" },
    json: { type: "boolean", tells: "print one JSON object instead" },
    ...settingsOption,
  },
  async run([given], { from, to, csv, html, json, settings }, { out }) {
    const configuration = await configure(settings);
    const { time_zone: timeZone } = configuration.settings;
    const today = dateIn(systemClock.now(), timeZone);
    const first = from ?? given ?? today;
    const last = from === undefined ? (to ?? given ?? today) : (to ?? today);
    for (const date of [first, last])
      if (!isDate(date)) throw new CannotRun(`“${date}” is not a date; write it as 2026-11-09`);
    if (given !== undefined && (from ?? to) !== undefined)
      throw new CannotRun("name one day, or the first and the last with --from and --to");
    if (last < first) throw new CannotRun(`${last} is before ${first}`);
    const store = await readRecord(configuration);
    const calendar = calendarIn(configuration.settings.waiting, timeZone);
    const period = await readPeriod(store.audited, { first, last }, calendar);
    await store.close();
    if (csv !== undefined) for (const [name, text] of csvFiles(period)) await write(join(csv, name), text);
    if (html !== undefined) await write(html, periodPage(period, { charts: true }));
    out(json ? JSON.stringify(period, null, 2) : periodText(period));
    return 0;
  },
});

async function write(file: string, text: string): Promise<void> {
  try {
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text);
  } catch (cause) {
    throw new CannotRun(`cannot write ${file}: ${reasonOf(cause)}`, { cause });
  }
}

function isDate(text: string): boolean {
  const date = new Date(`${text}T00:00:00Z`);
  return (
    /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text)
  );
}
