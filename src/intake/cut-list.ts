import { createHash } from "node:crypto";
import { counted } from "../answer/one-line.ts";
import { dateIn } from "../calendar/dates.ts";
import { orderKey } from "../judging/state.ts";
import { readableText } from "../reading/text-file.ts";
import { type EngravedRow, engravedListIn, type RowFault } from "../release/engraved-list.ts";
import { engravedPieces } from "../release/engraved-pieces.ts";
import type { Act, Note } from "../trade/note.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { noteKey } from "./note-answer.ts";
import { cutNoted, type Said } from "./settle.ts";

/** So many rows with faults are told of. */
const mostFaults = 30;

/**
 * Records what a list says is engraved, of any number of orders: all of it, or nothing if a row cannot be so. Rows of
 * what is engraved already are passed over, since lists grow. A list that the program died over goes on when it is given
 * again. `buyer`: whose orders are meant where several have a number.
 */
export async function recordCutList(
  desk: Desk,
  bytes: Uint8Array,
  { name, buyer }: { readonly name: string; readonly buyer?: string },
): Promise<Said> {
  const list = engravedListIn(readableText(bytes) ?? "");
  if ("why" in list) return { done: false, words: `Nothing is recorded: ${list.why}.` };
  const known = await knownOrders(desk, list.rows, buyer);
  const hash = createHash("sha256").update(bytes).digest("hex");
  const noted = await Promise.all(known.orders.map((one) => noteOf(desk, one, { name, hash })));
  // Those that this list has recorded before it could record the others.
  const kept = await Promise.all(noted.map(({ note }) => desk.store.letters.isKnown(noteKey(note))));
  const rest = noted.filter((_, i) => kept[i] === false);
  const left = rest.length === 0 ? noted : rest;
  const faults = [...list.faults, ...known.faults, ...left.flatMap((one) => one.faults)];
  if (faults.length > 0) return { done: false, words: faultsInWords(faults) };
  const said: Said[] = [];
  for (const { note } of left) if (note.acts.length > 0) said.push(await cutNoted(desk, note));
  const already = noted.reduce((sum, one) => sum + one.already, 0);
  const words = said.map((one) => one.words);
  if (already > 0) words.push(`Passed over, as engraved already: ${counted(already, "row")}.`);
  return { done: said.every(({ done }) => done), words: words.join("\n") };
}

interface Listed {
  readonly order: OrderRecord;
  readonly rows: readonly EngravedRow[];
}

/** The orders of a list with their rows, and the rows whose order cannot be engraved. */
async function knownOrders(
  { store }: Desk,
  rows: readonly EngravedRow[],
  buyer: string | undefined,
): Promise<{ readonly orders: readonly Listed[]; readonly faults: readonly RowFault[] }> {
  const orders: Listed[] = [];
  const faults: RowFault[] = [];
  for (const own of Map.groupBy(rows, ({ order }) => orderKey(order)).values()) {
    const number = own[0]?.order ?? "";
    const all = await store.orders.named(number);
    const [order, ...others] =
      all.length > 1 && buyer !== undefined ? all.filter((one) => one.buyer === buyer) : all;
    const says =
      order === undefined
        ? `no order ${number} is known`
        : others.length > 0
          ? `several buyers have an order ${number}: choose with --buyer (${all.map((one) => one.buyer).join(", ")})`
          : order.released === undefined
            ? `order ${number} was not released`
            : undefined;
    if (says === undefined && order !== undefined) orders.push({ order, rows: own });
    else faults.push(...own.map(({ line }) => ({ line, says: says ?? "" })));
  }
  return { orders, faults };
}

/** What rows say of their order, as a note. The same list makes the same note of the same release. */
async function noteOf(
  { store, catalogue, clock, timeZone }: Desk,
  { order, rows }: Listed,
  { name, hash }: { readonly name: string; readonly hash: string },
): Promise<{ readonly note: Note; readonly already: number; readonly faults: readonly RowFault[] }> {
  const { buyer, number, released } = order;
  if (released === undefined) throw new Error(`order ${number} was not released`);
  const sheets = await store.orders.sheets(released.pieces.map(({ sheet }) => sheet));
  const today = dateIn(clock.now(), timeZone);
  const { engraved, already, faults } = engravedPieces(rows, released, sheets, { catalogue, today });
  const days = Map.groupBy(engraved, ([, on]) => on);
  const acts = [...days].map(
    ([on, of]): Act => ({
      kind: "cut",
      stations: [...new Set(of.flatMap(([{ mark }]) => mark ?? []))],
      pieces: of.map(([{ key }]) => key),
      ...(on === undefined ? {} : { on }),
    }),
  );
  const id = `cut ${buyer} ${orderKey(number)} ${released.revision} ${hash}`;
  return { note: { id, buyer, order: number, by: name, why: "engraved", acts }, already, faults };
}

function faultsInWords(faults: readonly RowFault[]): string {
  const told = faults.toSorted((one, other) => one.line - other.line);
  const more = told.length - mostFaults;
  return [
    "Nothing is recorded:",
    ...told.slice(0, mostFaults).map(({ line, says }) => `  line ${line}: ${says}`),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ].join("\n");
}
