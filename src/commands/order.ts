import { timeIn } from "../audit/day.ts";
import { dateIn } from "../calendar/dates.ts";
import { wordsOf } from "../checks/run.ts";
import { questionOf } from "../judging/questions.ts";
import { gatherOrders } from "../orders/gather.ts";
import type { CutLegend } from "../trade/cut.ts";
import type { Missing } from "../trade/order.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";
import { defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { table } from "./table.ts";
import { readRecord, recordFolder } from "./wire.ts";

export const order = defineCommand({
  name: "order",
  takes: "NUMBER",
  words: [1, 1],
  summary: "Shows an order: its stations, its sheets, what stands in its way, its letters.",
  details:
    "Capitals, blanks and hyphens in the number do not matter. Ends with 1 when no such order is known.",
  options: { json: { type: "boolean", tells: "print one JSON object instead" }, ...settingsOption },
  async run([number = ""], { json, settings }, { out, err }) {
    const configuration = await configure(settings);
    const zone = configuration.settings.time_zone;
    const store = await readRecord(configuration);
    const orders = await store.orders.named(number);
    await store.close();
    if (json) out(JSON.stringify({ orders }, null, 2));
    else if (orders.length > 0) out(orders.map((one) => orderText(one, zone)).join("\n\n"));
    else err(`No order “${number}” is known in ${recordFolder(configuration)}.`);
    return orders.length === 0 ? 1 : 0;
  },
});

/** "S-104: device 3 and 5; S-105: plate", or nothing. */
export function missingWords(missing: readonly Missing[]): string {
  return [...Map.groupBy(missing, ({ station }) => station)]
    .map(([station, lacks]) => {
      const positions = lacks.flatMap(({ position }) => position ?? []);
      const devices = positions.length === 0 ? [] : [`device ${positions.join(", ")}`];
      return `${station || "a plate"}: ${[...lacks.filter(({ kind }) => kind === "plate").map(() => "plate"), ...devices].join(", ")}`;
    })
    .join("; ");
}

function orderText(record: OrderRecord, zone: string): string {
  const gathered = gatherOrders(record.sheets);
  const sheets: [string, Sheet][] = [
    ...gathered
      .flatMap(({ stations }) => stations)
      .flatMap(({ mark, plates, devices }) =>
        [...plates, ...devices.toSorted((a, b) => (a.position ?? 0) - (b.position ?? 0))].map(
          (sheet): [string, Sheet] => [mark, sheet],
        ),
      ),
    ...gathered.flatMap(({ loose }) => loose).map((sheet): [string, Sheet] => ["", sheet]),
    ...gathered.flatMap(({ twice }) => twice).map(({ again }): [string, Sheet] => [again.mark ?? "", again]),
    ...gathered.flatMap(({ aside }) => aside).map(({ sheet }): [string, Sheet] => [sheet.mark ?? "", sheet]),
  ];
  const aside = new Set(gathered.flatMap((one) => one.aside.map(({ sheet }) => sheet.id)));
  return [
    `Order ${record.number}: ${record.verdict ?? "nothing is left of it"}`,
    `Project ${record.project ?? "(none)"}, buyer ${record.buyer}, revision ${record.revision}`,
    ...contactsIn(record).map((contact) => `Contact ${contact}`),
    ...reasonsOf(record),
    "",
    sheets.length === 0
      ? "No sheet stands."
      : table([
          ["station", "sheet", "finish", "letters", "file"],
          ...sheets.map(([mark, sheet]) => [
            mark,
            aside.has(sheet.id) ? `${what(sheet)} (asked about)` : what(sheet),
            sheet.finish ?? "",
            heights(record.cut[sheet.id] ?? []),
            sheet.file,
          ]),
        ]),
    ...(record.missing.length === 0 ? [] : ["", `Still to come: ${missingWords(record.missing)}`]),
    "",
    table([
      ["letter", "received", "verdict", "state", "subject"],
      ...[...record.letters, ...record.replies]
        .toSorted((a, b) => a.letter - b.letter)
        .map((letter) => [
          String(letter.letter),
          `${dateIn(letter.receivedAt, zone)} ${timeIn(letter.receivedAt, zone)}`,
          letter.verdict ?? "",
          letter.state,
          letter.subject,
        ]),
    ]),
  ].join("\n");
}

/** Whom to call: "Ines Calloway, 312-555-0117, ines@brightwire.example". */
function contactsIn({ sheets }: OrderRecord): string[] {
  const contacts = sheets.map(({ contact: { name, phone, email } }) =>
    [name, phone, email].filter((part) => part !== undefined).join(", "),
  );
  return [...new Set(contacts)].filter((contact) => contact !== "");
}

/** Why the order has not passed: each problem in words, under what it asks for. */
function reasonsOf({ problems, questions, carried, sheets }: OrderRecord): string[] {
  const byId = new Map(sheets.map((sheet) => [sheet.id, sheet]));
  const numbers = new Map(questions.map(({ key, number }) => [key, number]));
  const files = new Map(sheets.map(({ id, file }) => [id, file]));
  const told = problems.map((problem) => {
    const names = [...new Set(problem.spots.flatMap(({ file }) => files.get(file) ?? []))];
    const where = names.length === 0 ? "" : ` (${names.join(", ")})`;
    const number = numbers.get(questionOf(problem, byId).key);
    const asked = number === undefined ? "" : `question ${number}, `;
    return `  ${asked}${problem.verdict}: ${wordsOf(problem).says}${where}`;
  });
  // Problems do not name what the last letter left open.
  const open = carried.flatMap(({ what, text }) =>
    what === "file"
      ? `  confirm: ${text} could not be read`
      : what === "words"
        ? `  person: the buyer writes “${text}”`
        : [],
  );
  const lines = [...new Set([...told, ...open])];
  return lines.length === 0 ? [] : ["", "What stands in its way:", ...lines];
}

/** "3.6–4.8 mm": how high the capitals of a sheet are cut. */
function heights(legends: readonly CutLegend[]): string {
  if (legends.length === 0) return "";
  const caps = legends.map(({ cap }) => cap);
  const [least, most] = [Math.min(...caps), Math.max(...caps)];
  return `${least === most ? most : `${least}–${most}`} mm`;
}

function what(sheet: Sheet): string {
  if (sheet.kind === "plate") return `plate of ${sheet.gangs ?? "?"} gangs`;
  const layout = sheet.layouts.join("+");
  return sheet.standing === "alone"
    ? `device ${layout}, alone`
    : `device ${layout}, position ${sheet.position ?? "?"}`;
}
