import type { OrderReport } from "../judging/report.ts";
import type { Missing, Order } from "../trade/order.ts";
import { gravest, type Verdict } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";
import { alongTheWall, inOrder, missingAlongTheWall, type OnTheWall } from "./along-the-wall.ts";
import { type Files, nameOf, placeWords } from "./named-files.ts";
import { counted } from "./one-line.ts";
import type { Chapter, Row } from "./outline.ts";
import type { Numbered } from "./sections.ts";

const right = "OK";
/** What the numbers in a row ask for, the gravest first. A plate that only waits for its devices is all right. */
const asked = [
  ["fail", "fix:"],
  ["person", "a person:"],
  ["confirm", "confirm:"],
  ["pass", "see"],
] as const satisfies readonly (readonly [Verdict, string])[];

/** What there is to say of the sheets of an order, along the wall. The rest are counted in one line. */
export function rowsOf(
  { order, missing }: OrderReport,
  numbers: readonly Numbered[],
  files: Files,
): Pick<Chapter, "rows" | "alsoRight"> {
  const wall = inOrder([
    ...alongTheWall(order).map((one) => ({ ...one, subject: received(one.subject.id, numbers, files) })),
    ...missingRows(order, missing),
  ]);
  const twice = order.twice.map(({ kept, again }) => ({
    ...received(again.id, numbers, files),
    what: `Same as ${nameOf(files, kept.id).name}`,
  }));
  const aside = order.aside.map(({ sheet }) => received(sheet.id, numbers, files));
  const rows = [...wall.map(({ subject }) => subject), ...twice, ...aside];
  const telling = rows.filter(({ state }) => state !== right);
  const count = rows.length - telling.length;
  if (count === 0) return { rows };
  const sheets = telling.length === 0 ? counted(count, "sheet") : counted(count, "more sheet");
  return { rows: telling, alsoRight: `${sheets} of this order: OK.` };
}

function received(id: FileId, numbers: readonly Numbered[], files: Files): Row {
  const { name, what, earlier } = nameOf(files, id);
  const about = numbers.filter((one) => one.files.includes(id) && one.kind !== "waiting");
  const kind = gravest(about.map((one) => one.kind));
  const asks = asked.flatMap(([one, word]) => {
    const those = about.filter((item) => item.kind === one).map(({ number }) => number);
    return those.length === 0 ? [] : [`${word} ${ranges(those).join(", ")}`];
  });
  const state = [...(kind === "pass" ? [right] : []), ...asks].join("; ");
  return {
    kind,
    state: `${state.charAt(0).toUpperCase()}${state.slice(1)}`,
    what,
    file: earlier ? `${name} (earlier letter)` : name,
  };
}

/** "1–3", "5", "6": three numbers in a row and more are written as one. */
function ranges(numbers: readonly number[]): string[] {
  const runs: number[][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run?.at(-1) === number - 1) run.push(number);
    else runs.push([number]);
  }
  return runs.flatMap((run) => (run.length < 3 ? run.map(String) : [`${run[0]}–${run.at(-1)}`]));
}

/** One row for each missing sheet. A plate without any device yet has one row for all of them, if they are many. */
function missingRows(order: Order, missing: readonly Missing[]): OnTheWall<Row>[] {
  const byStation = Map.groupBy(missingAlongTheWall(order, missing), ({ station }) => station);
  return [...byStation].flatMap(([station, lacking]) => {
    const gangs = order.stations[station]?.plates[0]?.gangs;
    const [first] = lacking;
    if (first !== undefined && lacking.length > 2 && lacking.length === gangs)
      return [
        { ...first, subject: notReceived(`Devices 1 to ${gangs}, ${placeWords(first.subject.station)}`) },
      ];
    return lacking.map((one) => {
      const { kind, station: mark, position } = one.subject;
      const what = `${kind === "plate" ? "Plate" : "Device"}, ${placeWords(mark, position, gangs)}`;
      return { ...one, subject: notReceived(what) };
    });
  });
}

function notReceived(what: string): Row {
  return { kind: "waiting", state: "Missing", what, file: "not received" };
}
