import type { Missing } from "../trade/order.ts";
import { gravest, type Verdict } from "../trade/problem.ts";
import type { FileId } from "../trade/sheet.ts";
import { alongTheWall, inOrder, missingAlongTheWall } from "./along-the-wall.ts";
import { type Files, nameOf, placeWords } from "./named-files.ts";
import { counted } from "./one-line.ts";
import type { Part, Row } from "./outline.ts";
import type { OrderReport } from "./report.ts";
import type { Numbered } from "./sections.ts";

const right = "OK";
/** What numbers in a row ask for. A plate whose devices are still to come is itself all right. */
const asked = { fail: "Fix", confirm: "Confirm", person: "A person" } as const satisfies Partial<
  Record<Verdict, string>
>;

/** In a longer table, sheets that nobody has to look up are counted and not listed. */
const mostRows = 40;

/** Every sheet of an order along the wall, those still missing in their places. */
export function rowsOf(
  { order, missing }: OrderReport,
  verdict: Verdict,
  numbers: readonly Numbered[],
  files: Files,
): Pick<Part, "rows" | "alsoRight"> {
  const gangsAt = (station: number): number | undefined => order.stations[station]?.plates[0]?.gangs;
  const wall = inOrder([
    ...alongTheWall(order).map((one) => ({ ...one, subject: received(one.subject.id, numbers, files) })),
    ...missingAlongTheWall(order, missing).map((one) => ({
      ...one,
      subject: lacking(one.subject, gangsAt(one.station)),
    })),
  ]);
  const twice = order.twice.map(({ kept, again }) => ({
    ...received(again.id, numbers, files),
    what: `Same as ${nameOf(files, kept.id).name}`,
  }));
  const rows = [...wall.map(({ subject }) => subject), ...twice];
  const telling = rows.filter(({ state }) => state !== right);
  const count = rows.length - telling.length;
  // The proofs of a passed order name each of its sheets already.
  if (count === 0 || (rows.length <= mostRows && verdict !== "pass")) return { rows };
  const sheets = telling.length === 0 ? counted(count, "sheet") : counted(count, "more sheet");
  return { rows: telling, alsoRight: `${sheets} of this order: OK.` };
}

function received(id: FileId, numbers: readonly Numbered[], files: Files): Row {
  const { name, what, earlier } = nameOf(files, id);
  const about = numbers.filter((one) => one.files.includes(id) && one.kind !== "waiting");
  const kind = gravest(about.map((one) => one.kind));
  const first = about.filter((one) => one.kind === kind && kind !== "pass");
  const rest = about.filter((one) => !first.includes(one));
  const state = kind === "pass" || kind === "waiting" ? right : `${asked[kind]}: ${numbersOf(first)}`;
  return {
    kind,
    state: rest.length === 0 ? state : `${state}; see ${numbersOf(rest)}`,
    what,
    file: earlier ? `${name} (earlier letter)` : name,
  };
}

function numbersOf(some: readonly Numbered[]): string {
  return some.map(({ number }) => number).join(", ");
}

function lacking({ station, kind, position }: Missing, gangs: number | undefined): Row {
  const what = `${kind === "plate" ? "Plate" : "Device"}, ${placeWords(station, position, gangs)}`;
  return { kind: "waiting", state: "Missing", what, file: "not received" };
}
