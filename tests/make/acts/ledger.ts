import type { OrderRecord } from "../../../src/trade/record.ts";
import type { QuickLetter } from "../quick.ts";

import type { Step } from "./steps.ts";

export const people = {
  buyer: "ines@brightwire.example",
  colleague: "omar@brightwire.example",
  stranger: "eve@stranger.example",
} as const;

export type Who = keyof typeof people;

export type Number = "BW-2207" | "KF-31";

/** Where a sheet goes. S-1 and K-40 are stations of two devices under a plate, the others devices alone. */
export const spots = [
  "S-1 plate",
  "S-1 1",
  "S-1 2",
  "K-40 plate",
  "K-40 1",
  "K-40 2",
  "T-9 alone",
  "L-60 alone",
] as const;

export type Spot = (typeof spots)[number];

/** What is typed on a sheet, and what a good clerk makes of it. */
export const legends = {
  ENTRY: "right",
  LOUNGE: "right",
  STAIRS: "right",
  /** No word: whoever sent it may say that it is meant. */
  SALONA: "asks",
  /** About safety: one of our own people decides. */
  "MAIN SW": "asks person",
  "A VERY LONG LEGEND": "stops",
} as const;

export type Legend = keyof typeof legends;

export interface Typed {
  readonly spot: Spot;
  readonly legend: Legend;
  /** Its telephone number is none, which stops it, and may be let stand. */
  readonly badPhone: boolean;
}

/** A sheet that stands, as a plain ledger has it. */
export interface Standing extends Typed {
  readonly file: string;
  readonly came: number;
}

/** What a letter left open in an order: its words, or the name of its file. */
export interface Said {
  readonly order: Number;
  readonly text: string;
}

/** What is made of one sheet that was released. */
export interface Piece {
  readonly file: string;
  readonly is: string;
  engraved: boolean;
}

/** What is made of a sheet. Its telephone number is not engraved. */
export function pieceOf({ spot, legend }: Typed): string {
  return spot.endsWith("plate") ? spot : `${spot} ${legend}`;
}

export function isReleasedPiece({ released }: Ledger, order: Number, sheet: Typed): boolean {
  return released[order]?.some(({ is }) => is === pieceOf(sheet)) ?? false;
}

/** How an order differs from what was released of it; empty if it does not, or was not released. */
export function changedSince({ released, orders }: Ledger, order: Number): string {
  const before = released[order];
  if (before === undefined) return "";
  const was = new Set(before.map(({ is }) => is));
  const is = new Set([...orders[order].values()].map(pieceOf));
  return [
    ...[...was].filter((one) => !is.has(one)).map((one) => `less ${one}`),
    ...[...is].filter((one) => !was.has(one)).map((one) => `new ${one}`),
  ]
    .toSorted()
    .join(", ");
}

/** The ledger that the record is held against. Each order has at most one sheet a spot. */
export interface Ledger {
  readonly orders: Readonly<Record<Number, Map<Spot, Standing>>>;
  /** Words and files that nobody has dealt with, by the letter that brought them. */
  readonly words: Map<number, Said>;
  readonly scans: Map<number, Said>;
  /** How many scans may have been settled by sheets for places that were lacking. */
  readonly credits: Record<Number, number>;
  /** Words that are meant, and points that were decided: "BW-2207 S-1 1 MAIN SW". */
  readonly kept: Set<string>;
  readonly decided: Set<string>;
  readonly withdrawn: Record<Number, string[]>;
  /** Letters of the stranger that wait for a person. */
  readonly held: Map<
    number,
    { readonly letter: QuickLetter; readonly step: Extract<Step, { kind: "send" }> }
  >;
  /** What was released of each order last: its pieces, and which of them are engraved. */
  readonly released: Record<Number, Piece[] | undefined>;
  readonly sent: QuickLetter[];
  minute: number;
}

export function newLedger(): Ledger {
  return {
    orders: { "BW-2207": new Map(), "KF-31": new Map() },
    words: new Map(),
    scans: new Map(),
    credits: { "BW-2207": 0, "KF-31": 0 },
    kept: new Set(),
    decided: new Set(),
    withdrawn: { "BW-2207": [], "KF-31": [] },
    held: new Map(),
    released: { "BW-2207": undefined, "KF-31": undefined },
    sent: [],
    minute: 0,
  };
}

export const numbers = ["BW-2207", "KF-31"] as const;

/** Why an order must not pass, by the ledger. It may say less than the record does, never more. */
export function openIn(ledger: Ledger, order: Number): string[] {
  const sheets = ledger.orders[order];
  // A file of the same name in a later letter counts as the same once more.
  const names = new Set([...ledger.scans.values()].flatMap((one) => (one.order === order ? one.text : [])));
  const changed = changedSince(ledger, order);
  const scans = names.size - ledger.credits[order];
  return [
    ...[...sheets.values()].flatMap(({ spot, legend, badPhone }) => [
      ...(isOpen(ledger, order, spot, legend) ? [`${spot} ${legends[legend]}`] : []),
      ...(badPhone && !ledger.decided.has(`${order} ${spot} phone`) ? [`${spot} telephone`] : []),
    ]),
    ...lacking(sheets).map((spot) => `${spot} is missing`),
    ...[...ledger.words].flatMap(([letter, said]) =>
      said.order === order ? [`words of letter ${letter}`] : [],
    ),
    ...(changed === "" || ledger.decided.has(`${order} ${changed}`) ? [] : [`since its release: ${changed}`]),
    ...(scans > 0 ? [`${scans} scans`] : []),
  ];
}

export function isOpen(ledger: Ledger, order: Number, spot: Spot, legend: Legend): boolean {
  if (spot.endsWith("plate")) return false;
  const is = legends[legend];
  if (is === "asks") return !ledger.kept.has(legend);
  if (is === "asks person") return !ledger.decided.has(`${order} ${spot} ${legend}`);
  return is === "stops";
}

/** A plate needs its two devices. A device without its plate is another matter: it is asked about. */
export function lacking(sheets: ReadonlyMap<Spot, Standing>): Spot[] {
  return spots.filter((spot) => {
    const [mark = "", what = ""] = spot.split(" ");
    return /\d/.test(what) && !sheets.has(spot) && sheets.has(`${mark} plate` as Spot);
  });
}

/** Puts the sheets of a letter into the ledger: the newer one for a spot stands. */
export function enter(ledger: Ledger, order: Number, typed: readonly Typed[], quick: QuickLetter): void {
  const sheets = ledger.orders[order];
  const lacked = new Set(lacking(sheets));
  const came = quick.receivedAt.getTime();
  for (const [i, one] of typed.entries()) {
    const before = sheets.get(one.spot);
    // A sheet for a place that was lacking may be the one that was scanned.
    if (before === undefined || lacked.has(one.spot)) ledger.credits[order]++;
    if (before !== undefined && before.came > came) continue;
    sheets.set(one.spot, { ...one, file: quick.sheets?.[i]?.file ?? "", came });
  }
}

/** Who has dealt with words or a file has dealt with the same in earlier letters about the order. */
export function dealtWith(open: Map<number, Said>, { order, text }: Said): void {
  for (const [letter, said] of open) if (said.order === order && said.text === text) open.delete(letter);
}

/** Writes into the ledger that some questions are settled. */
export function settle(ledger: Ledger, order: OrderRecord, questions: OrderRecord["questions"]): void {
  const number = order.number as Number;
  const ofFile = new Map(order.sheets.map(({ id, file }) => [id, file]));
  for (const { problem } of questions) {
    const { words, file: name } = problem.facts;
    if (problem.check === "letter-still-open")
      dealtWith(ledger.words, { order: number, text: String(words) });
    if (problem.check === "file-still-unread") dealtWith(ledger.scans, { order: number, text: String(name) });
    if (problem.check === "order-released") ledger.decided.add(`${number} ${changedSince(ledger, number)}`);
    const files = new Set(problem.spots.map(({ file }) => ofFile.get(file)));
    for (const { spot, legend, file } of ledger.orders[number].values()) {
      if (!files.has(file)) continue;
      if (problem.check === "phone-malformed") ledger.decided.add(`${number} ${spot} phone`);
      else if (legends[legend] === "asks" && problem.check === asksWord) ledger.kept.add(legend);
      else if (problem.check === "safety-wording") ledger.decided.add(`${number} ${spot} ${legend}`);
    }
  }
}

export const asksWord = "spelling";
