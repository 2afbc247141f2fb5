import { counted, listed, oneLine } from "../answer/one-line.ts";
import { signatureOf } from "../answer/phrases.ts";
import { dateIn } from "../calendar/dates.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { managerWord } from "../checks/order/manager-word.ts";
import { everyCheck, wordsOf } from "../checks/run.ts";
import type { Managing } from "../trade/manager.ts";
import type { Problem, Verdict } from "../trade/problem.ts";
import type { OrderRecord } from "../trade/record.ts";
import { noSlips } from "./figures.ts";

/** An order, and what happened to it in a week. */
interface InWeek {
  readonly order: OrderRecord;
  readonly isMoved: boolean;
  readonly slips: readonly Problem[];
}

/** So many orders and checks are told one by one. Of more only the number is told. */
const most = 40;

/** What a manager is told of a week: how the orders stand, who is waited for, what was released, and which slips. */
export function composeWeek(
  { manager, project, buyer, stationsAbove }: Managing,
  orders: readonly InWeek[],
  { from, until, timeZone }: { readonly from: Date; readonly until: Date; readonly timeZone: string },
  catalogue: Catalogue,
): { subject: string; text: string } {
  const [first, last] = [dateIn(from, timeZone), dateIn(until, timeZone)];
  const what = [
    project === undefined ? "orders" : oneLine(project, 60),
    ...(buyer === undefined ? [] : [`of ${buyer}`]),
    ...(stationsAbove === undefined ? [] : [`above ${counted(stationsAbove, "station")}`]),
  ].join(" ");
  const all = orders.map(({ order }) => order);
  const open = all.filter((order) => stateOf(order) !== "released" && stateOf(order) !== "withdrawn");
  const released = orders.filter(({ order, isMoved }) => isMoved && order.released !== undefined);
  const slips = Map.groupBy(
    orders.flatMap((one) => one.slips).filter(({ check }) => !noSlips.has(check)),
    ({ check }) => check,
  );
  return {
    subject: `Week to ${last}: ${what}, ${counted(all.length, "order")}`,
    text: [
      `${oneLine(manager.name, 60)}, this is how things stand with ${what}, and what happened from ${first} to ${last}.`,
      section("ORDERS", tally(all)),
      section(
        "WAITS",
        open.flatMap((order) => waits(order, manager.name, timeZone)),
      ),
      section(
        "RELEASED AND ENGRAVED",
        released.map(({ order }) => engraved(order)),
      ),
      section(
        "SLIPS THAT WERE FOUND",
        [...slips]
          .toSorted(([, a], [, b]) => b.length - a.length)
          .map(([check, { length }]) => `${length} × ${titles.get(check) ?? check}`),
      ),
      signatureOf(catalogue).join("\n"),
      "",
    ]
      .filter((part, i, parts) => part !== "" || i === parts.length - 1)
      .join("\n\n"),
  };
}

const titles = new Map(everyCheck.map(({ id, title }) => [id, title]));

type State = Verdict | "released" | "withdrawn";

const states = {
  released: "released to engraving",
  pass: "passed, not released yet",
  waiting: "right so far, sheets still to come",
  confirm: "with questions to answer",
  fail: "with something to fix",
  person: "waiting for a person",
  withdrawn: "withdrawn",
} as const satisfies Record<State, string>;

function stateOf({ verdict, released }: OrderRecord): State {
  if (verdict === undefined) return "withdrawn";
  return released !== undefined && verdict === "pass" ? "released" : verdict;
}

/** "2 released to engraving: FM-88 and FM-89", a line a state. */
function tally(orders: readonly OrderRecord[]): string[] {
  const byState = Map.groupBy(orders, stateOf);
  return (Object.keys(states) as State[]).flatMap((state) => {
    const some = byState.get(state) ?? [];
    const numbers = some.map(({ number }) => oneLine(number, 40));
    return some.length === 0 ? [] : [`${some.length} ${states[state]}: ${listed(numbers, most)}`];
  });
}

/** For whom an order waits, and since when. */
function waits(order: OrderRecord, manager: string, timeZone: string): string[] {
  const { number, buyer, verdict, questions, problems, missing, changedAt } = order;
  const name = oneLine(number, 40);
  const word = questions.find(({ problem }) => problem.check === managerWord.id);
  if (word !== undefined)
    return [
      `${name}: for your word, ${oneLine(manager, 60)}, since ${dateIn(word.openedAt, timeZone)}: reply “${word.number} YES”, or NO, to our answer about it`,
    ];
  const since = dateIn(changedAt, timeZone);
  if (verdict === "pass") return [`${name}: to be released, since ${since}`];
  const stops = problems.filter(({ severity }) => severity === "stops").length;
  const asks = questions.filter(({ problem }) => problem.severity === "asks").length;
  const awaited = [
    ...(stops === 0 ? [] : [`${counted(stops, "thing")} to fix`]),
    ...(asks === 0 ? [] : [`${counted(asks, "question")} to answer`]),
    ...(missing.length === 0 ? [] : [`${counted(missing.length, "sheet")} still to come`]),
  ];
  const what = awaited.length === 0 ? "" : `: ${listed(awaited, 3)}`;
  if (verdict !== "person") return [`${name}: for its buyer, ${buyer}, since ${since}${what}`];
  const [says] = problems.filter((problem) => problem.verdict === "person").map((one) => wordsOf(one).says);
  return [`${name}: for one of us, since ${since}${says === undefined ? "" : `: ${oneLine(says, 200)}`}`];
}

function engraved({ number, released }: OrderRecord): string {
  const { on = "", by = "", pieces = [] } = released ?? {};
  const done = pieces.filter((piece) => piece.engraved).length;
  const cut =
    done === 0
      ? "nothing of it is engraved yet"
      : done === pieces.length
        ? "all of it is engraved"
        : `${done} of its ${pieces.length} pieces are engraved`;
  return `${oneLine(number, 40)}: released on ${on} by ${oneLine(by, 60)}; ${cut}`;
}

function section(title: string, lines: readonly string[]): string {
  if (lines.length === 0) return "";
  const more = lines.length > most ? [`… and ${lines.length - most} more`] : [];
  return [title, ...[...lines.slice(0, most), ...more].map((line) => `- ${line}`)].join("\n");
}
