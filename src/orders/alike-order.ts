import type { Order } from "../trade/order.ts";
import { type Sheet, saidAt } from "../trade/sheet.ts";
import { isPrefixed, looksOf } from "./alike.ts";
import { firstIn, fitTogether, isLater, ofOneProject } from "./fit-together.ts";
import { byId, letterOf } from "./ids.ts";
import { contentKey, numberKey, numberPart, plainText } from "./keys.ts";
import { oneSlipApart } from "./near.ts";
import { isNoNumber } from "./no-number.ts";
import { isSlip } from "./slip-of-number.ts";

/** Another order of the same buyer that may be one with this one, and what says so. */
export interface AlikeOrder {
  readonly other: Order;
  readonly how: /** The numbers are nearly one, and the one order lacks what the other has. */
    | "near"
    /** The numbers look the same. */
    | "looks"
    /** The numbers are one slip or a prefix apart, and the project is one. */
    | "slip"
    /** Both have a station of one mark, and the project is one. */
    | "again"
    /** Every sheet of one stands in the other too. */
    | "same"
    /**
     * The number of one is the project of the other, and its project the other's number. They were exchanged, and
     * that stops them.
     */
    | "exchanged";
  /** A station that both have, as this order writes it. */
  readonly station?: string;
  /** Of the two, this order is asked about. */
  readonly asked: boolean;
}

const kept = new WeakMap<
  readonly Order[],
  { readonly order: Order; readonly found: readonly AlikeOrder[] }
>();

/** Orders that may be one with this one. What is found is kept, since several checks ask. */
export function alikeOrders(order: Order, others: readonly Order[]): readonly AlikeOrder[] {
  const before = kept.get(others);
  if (before?.order === order) return before.found;
  const marks = new Map(order.stations.map(({ mark }) => [plainText(mark), mark]));
  marks.delete("");
  const alike = isNoNumber(order.number) ? [] : others.flatMap((one) => alikeOrder(order, one, marks) ?? []);
  // If many orders of one project have numbers of one shape, the numbers count something.
  const shape = shapeOf(order);
  const isSeries = others.filter((other) => shapeOf(other) === shape).length >= series;
  const found = isSeries
    ? alike.filter(({ other, how }) => how !== "slip" || shapeOf(other) !== shape)
    : alike;
  kept.set(others, { order, found });
  return found;
}

/** So many other orders of one shape make a series. */
const series = 3;

const shapes = new WeakMap<Order, string>();

/** The project of an order, and its number with a 0 for every digit. */
function shapeOf(order: Order): string {
  const { project = "", number } = order;
  const shape = shapes.get(order) ?? `${plainText(project)} ${numberKey(number).replace(/\d/g, "0")}`;
  shapes.set(order, shape);
  return shape;
}

function alikeOrder(order: Order, other: Order, marks: ReadonlyMap<string, string>): AlikeOrder | undefined {
  const common = other.stations.find(({ mark }) => marks.has(plainText(mark)));
  const station = marks.get(plainText(common?.mark ?? ""));
  const how = isNoNumber(other.number) ? undefined : likeness(order, other, station !== undefined);
  if (how === undefined) return undefined;
  // Two numbers are alike from the beginning. Two orders share a station only once both have it.
  const asked =
    how !== "exchanged" &&
    (how === "looks" || how === "slip"
      ? isLater(firstIn(order), firstIn(other))
      : cameLater(order, other, station));
  return { other, how, asked, ...(station === undefined ? {} : { station }) };
}

function likeness(one: Order, other: Order, shareStation: boolean): AlikeOrder["how"] | undefined {
  if (areExchanged(one, other)) return "exchanged";
  const sameProject = ofOneProject(one, other);
  if (sameProject === true && saysAgain(one, other)) return "same";
  const again = sameProject === true && shareStation ? "again" : undefined;
  // A quick test first: most numbers of a buyer are nothing like each other.
  const [a, b] = [lookOf(one), lookOf(other)];
  const isSame = a.looks === b.looks;
  if (!isSame && !oneSlipApart(a.key, b.key) && !isPrefixed(one.number, other.number)) return again;
  if (fitTogether(one, other)) return "near";
  if (isSame) return "looks";
  if (again !== undefined || sameProject === false) return again;
  const together = firstIn(one).letter === firstIn(other).letter;
  return isPrefixed(one.number, other.number) || isSlip(one.number, other.number, together)
    ? "slip"
    : undefined;
}

interface Look {
  readonly key: string;
  readonly looks: string;
  readonly stands: ReadonlySet<string>;
}

const looks = new WeakMap<Order, Look>();

function lookOf(order: Order): Look {
  const look = looks.get(order) ?? {
    key: numberKey(order.number),
    looks: looksOf(numberPart(order.number)),
    stands: new Set(order.sheets.map(standOf)),
  };
  looks.set(order, look);
  return look;
}

function areExchanged(one: Order, other: Order): boolean {
  const [a, b] = [lookOf(one).key, lookOf(other).key];
  return a !== b && a === numberKey(other.project ?? "") && b === numberKey(one.project ?? "");
}

/** Whether every sheet of the smaller of two orders stands in the other one too. */
function saysAgain(one: Order, other: Order): boolean {
  const [few, many] = one.sheets.length > other.sheets.length ? [other, one] : [one, other];
  if (few.sheets.length === 0) return false;
  // A quick test first: most orders of one project have other stations.
  const { stands } = lookOf(many);
  if (!few.sheets.every((sheet) => stands.has(standOf(sheet)))) return false;
  const contents = new Set(many.sheets.map(contentOf));
  return few.sheets.every((sheet) => contents.has(contentOf(sheet)));
}

/** Where a sheet stands. Sheets of one content stand at one place. */
function standOf(sheet: Sheet): string {
  return JSON.stringify([sheet.kind, sheet.mark, saidAt(sheet, "position")]);
}

const contents = new WeakMap<Sheet, string>();

/** What a sheet says without its file, its order and its project. */
function contentOf(sheet: Sheet): string {
  const nameless = { id: "", file: "", named: "", order: "", project: "" };
  const content = contents.get(sheet) ?? contentKey({ ...sheet, ...nameless });
  contents.set(sheet, content);
  return content;
}

/** Whether one order's sheets of a station came after the other's. Without a station all sheets count. */
function cameLater(one: Order, other: Order, station: string | undefined): boolean {
  const last = (order: Order): string => {
    const at = order.stations.find(({ mark }) => plainText(mark) === plainText(station ?? ""));
    const sheets = station === undefined || at === undefined ? order.sheets : [...at.plates, ...at.devices];
    return (
      sheets
        .map(({ id }) => id)
        .toSorted(byId)
        .at(-1) ?? ""
    );
  };
  const later = byId(letterOf(last(one)), letterOf(last(other)));
  return later === 0 ? isLater(firstIn(one), firstIn(other)) : later > 0;
}
