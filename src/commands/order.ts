import { oneLine } from "../answer/one-line.ts";
import { table } from "../answer/table.ts";
import { contactsIn } from "../audit/people.ts";
import { dateIn, timeIn } from "../calendar/dates.ts";
import { letterStillOpen } from "../checks/order/letter-still-open.ts";
import { wordsOf } from "../checks/run.ts";
import { carriedIn, saidAs } from "../judging/carried.ts";
import { questionOf } from "../judging/questions.ts";
import { orderKey } from "../judging/state.ts";
import { gatherOrders } from "../orders/gather.ts";
import { isAsReleased } from "../orders/piece.ts";
import type { Verified } from "../ports/store.ts";
import type { CutLegend } from "../trade/cut.ts";
import type { Missing } from "../trade/order.ts";
import type { Gone, OrderRecord } from "../trade/record.ts";
import type { Sheet } from "../trade/sheet.ts";
import { defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { readRecord, recordName } from "./record.ts";
import { stationBoxes } from "./station-boxes.ts";

export const order = defineCommand({
  name: "order",
  words: [1, 1],
  details:
    "Capitals, blanks and hyphens in the number do not matter. Ends with 1 when no such order is known.",
  options: {
    changes: { type: "boolean", tells: "what each letter and each of us changed, from the first on" },
    verify: {
      type: "boolean",
      tells: "recount the chain of events, and make all orders again of them to compare",
    },
    json: { type: "boolean", tells: "print one JSON object instead" },
    ...settingsOption,
  },
  async run([number = ""], { json, changes, verify, settings }, { out, err }) {
    const configuration = await configure(settings);
    const zone = configuration.settings.time_zone;
    const store = await readRecord(configuration);
    const orders = await store.orders.named(number);
    const verified = verify ? await store.verify() : undefined;
    await store.close();
    const text = (one: OrderRecord): string => (changes ? changesText(one, zone) : orderText(one, zone));
    if (json) out(JSON.stringify({ orders, ...(verified === undefined ? {} : { verified }) }, null, 2));
    else if (orders.length > 0) out(orders.map(text).join("\n\n"));
    else err(`No order “${number}” is known in ${recordName(configuration)}.`);
    if (verified !== undefined && !json) out(`\n${verifiedText(verified, zone)}`);
    const isSound = verified === undefined || (verified.broken === undefined && verified.differ.length === 0);
    return orders.length === 0 || !isSound ? 1 : 0;
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

/** How the record stands against itself. */
function verifiedText({ events, broken, erased, orders, differ, older }: Verified, zone: string): string {
  const chain =
    broken === undefined
      ? `${events} events, and their chain is whole.`
      : `The chain of ${events} events breaks at event ${broken}: somebody has changed the record.`;
  const made =
    differ.length === 0
      ? `${orders} orders made again of them come out the same.`
      : `Made again of them, ${differ.length} of ${orders} orders come out otherwise: ${differ.join(", ")}.`;
  return [
    chain,
    ...(erased.length === 0 ? [] : [erasedWords(erased, zone)]),
    made,
    ...(older === 0 ? [] : [`${older} orders are older than what events keep.`]),
  ].join(" ");
}

/** Days of erasings that are told one by one. */
const mostDays = 5;

/** "What 31 of them said is erased: 19 on 2026-11-09 by Rosa Imhoff, 12 on 2026-11-28 by burin." */
function erasedWords(erased: Verified["erased"], zone: string): string {
  const days = Map.groupBy(erased, ({ at, by }) => `on ${dateIn(at, zone)} by ${oneLine(by, 60)}`);
  const sum = (some: Verified["erased"]): number => some.reduce((all, { events }) => all + events, 0);
  const told = [...days].map(([when, some]) => `${sum(some)} ${when}`);
  const earlier = told.length > mostDays ? [`${told.length - mostDays} times before`] : [];
  return `What ${sum(erased)} of them said is erased: ${[...earlier, ...told.slice(-mostDays)].join(", ")}.`;
}

/** What each revision of an order changed. */
function changesText({ number, revisions }: OrderRecord, zone: string): string {
  const lines = revisions.map(({ number: nth, at, cause, letter, verdict, sheets, opened, closed }, i) => {
    const before = revisions[i - 1]?.sheets ?? [];
    const had = new Set(before.map(({ id }) => id));
    const has = new Set(sheets.map(({ id }) => id));
    const names = (some: readonly { readonly file: string }[]): string =>
      some.map(({ file }) => file).join(", ");
    const told = (title: string, what: string): string[] => (what === "" ? [] : [`    ${title}: ${what}`]);
    return [
      `  ${nth}. ${dateIn(at, zone)} ${timeIn(at, zone)}, ${cause === "letter" ? `letter ${letter}` : cause}: ${verdict ?? "nothing is left of it"}`,
      ...told("came", names(sheets.filter(({ id }) => !had.has(id)))),
      ...told("went", names(before.filter(({ id }) => !has.has(id)))),
      ...told("asked or stopped by", opened.join(", ")),
      ...told("settled or mended", closed.join(", ")),
    ].join("\n");
  });
  return [`Order ${number}, revision by revision:`, ...lines].join("\n");
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
  const moved = record.withdrawn.filter(({ movedTo }) => movedTo !== undefined);
  const withdrawn = record.withdrawn.filter(({ movedTo }) => movedTo === undefined);
  const aside = new Set(gathered.flatMap((one) => one.aside.map(({ sheet }) => sheet.id)));
  return [
    `Order ${record.number}: ${record.verdict ?? "nothing is left of it"}`,
    `Project ${record.project ?? "(none)"}, buyer ${record.buyer}, revision ${record.revision}`,
    ...releasedLines(record),
    ...contactsIn(record).map((contact) => `Contact ${contact}`),
    ...reasonsOf(record),
    ...gathered
      .flatMap(({ stations }) => stations)
      .flatMap((station) => ["", `${station.mark || "(no mark)"}:`, ...stationBoxes(station)]),
    "",
    sheets.length === 0
      ? "No sheet stands."
      : table([
          ["station", "sheet", "finish", "letters", "id", "file"],
          ...sheets.map(([mark, sheet]) => [
            mark,
            aside.has(sheet.id) ? `${what(sheet)} (asked about)` : what(sheet),
            sheet.finish ?? "",
            heights(record.cut[sheet.id] ?? []),
            sheet.id,
            sheet.file,
          ]),
        ]),
    ...listedUnder("Withdrawn:", withdrawn.map(withdrawnWords)),
    ...listedUnder(
      "Put elsewhere:",
      moved.map((gone) => movedWords(gone, record)),
    ),
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

/** How far engraving has come. */
function releasedLines({ released, sheets: standing }: OrderRecord): string[] {
  if (released === undefined) return [];
  const { on, by, pieces } = released;
  const cut = pieces.filter(({ engraved: is }) => is);
  const done =
    cut.length === pieces.length ? "engraved: closed" : `${cut.length} of ${pieces.length} pieces engraved`;
  const last =
    cut
      .flatMap(({ engravedOn: day = "" }) => day)
      .toSorted()
      .at(-1) ?? "";
  const engraved = last === "" ? done : `${done}, the last on ${last}`;
  const since = isAsReleased(standing, released) ? "" : "; changed since";
  return [`Released to engraving on ${on} by ${by}, revision ${released.revision}; ${engraved}${since}`];
}

function listedUnder(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ["", title, ...lines];
}

function withdrawnWords({ sheet, letter }: Gone): string {
  return `  ${placeOf(sheet)} (${sheet.file}), by letter ${letter}`;
}

/** "S-201 device D2, alone (S-201.pdf): moved to order FM-72, S-210 device D2, alone, by note 53". */
function movedWords({ sheet, letter, movedTo }: Gone, { number }: OrderRecord): string {
  const order = movedTo?.order ?? "";
  const to = [
    ...(orderKey(order) === orderKey(number) ? [] : [`order ${order}`]),
    ...(movedTo === undefined ? [] : [placeOf(movedTo)]),
  ];
  return `  ${placeOf(sheet)} (${sheet.file}): moved to ${to.join(", ")}, by note ${letter}`;
}

/** "S-104 device D2, position 2". */
function placeOf(sheet: Sheet): string {
  return [sheet.mark, what(sheet)].filter((word) => word !== undefined).join(" ");
}

/** Why the order has not passed: each problem in words, under what it asks for. */
function reasonsOf({ problems, questions, carried, sheets }: OrderRecord): string[] {
  const byId = new Map(sheets.map((sheet) => [sheet.id, sheet]));
  const numbers = new Map(questions.map(({ key, number }) => [key, number]));
  const files = new Map(sheets.map(({ id, file }) => [id, file]));
  const asked = (number: number | undefined): string => (number === undefined ? "" : `question ${number}, `);
  const told = problems.flatMap((problem) => {
    if (problem.check === letterStillOpen.id) return [];
    const names = [...new Set(problem.spots.flatMap(({ file }) => files.get(file) ?? []))];
    const where = names.length === 0 ? "" : ` (${names.join(", ")})`;
    const number = numbers.get(questionOf(problem, byId).key);
    return `  ${asked(number)}${problem.verdict}: ${wordsOf(problem).says}${where}`;
  });
  const ofWords = new Map(questions.map(({ problem, number }) => [carriedIn(problem), number]));
  // Problems do not name what the last letter left open.
  const open = carried.flatMap((one) =>
    one.what === "file"
      ? `  confirm: ${one.text} could not be read`
      : one.what === "words"
        ? `  ${asked(ofWords.get(saidAs(one)))}person: ${one.by ?? "the buyer"} writes “${one.text}”`
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
