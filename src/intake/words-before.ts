import { ordersNamedIn } from "../judging/named.ts";
import { type BuyerState, type OrderState, orderKey } from "../judging/state.ts";
import { statementsBeside } from "../reading/reply/beside.ts";
import type { Carried } from "../trade/carried.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Desk } from "./desk.ts";
import { withLists } from "./lists.ts";
import { allWords, openLetter, textsOf, type Words } from "./open.ts";

/**
 * The state, with what earlier letters said of orders that did not exist yet. Such a letter waits for a person, and
 * an order that it names does not pass before.
 */
export async function withWordsBefore(
  state: BuyerState,
  sheets: readonly Sheet[],
  { store, reader, editions, catalogue }: Pick<Desk, "store" | "reader" | "editions" | "catalogue">,
): Promise<BuyerState> {
  const fresh = new Map<string, OrderState>(
    sheets.map(({ order = "" }) => [
      orderKey(order),
      { number: order, sheets: [], carried: [], questions: [] },
    ]),
  );
  for (const number of ["", ...state.orders.map((order) => order.number)]) fresh.delete(orderKey(number));
  if (fresh.size === 0) return state;
  const said = new Map<string, Carried[]>();
  const opener = withLists(reader, { editions, catalogue });
  for (const letter of await store.buyers.lettersOfNoOrder(state.buyer)) {
    const opened = await openLetter(opener, await store.letters.bytesOf(letter), String(letter));
    const before = { letter: opened.letter, texts: textsOf(opened.files) };
    for (const number of ordersNamedIn(allWords(before), { ...state, orders: [...fresh.values()] }))
      said.set(number, [...(said.get(number) ?? []), ...toBeRead(before, letter, sheets, catalogue)]);
  }
  const orders = [...said].map(([number, carried]) => ({ number, sheets: [], carried, questions: [] }));
  return { ...state, orders: [...state.orders, ...orders] };
}

/** What a person has to read of an earlier letter, now that the sheets that it speaks of are known. */
function toBeRead(
  { letter, texts }: Words,
  number: number,
  earlier: readonly Sheet[],
  catalogue: Desk["catalogue"],
): Carried[] {
  const beside = {
    files: [],
    texts,
    sheets: [],
    earlier,
    catalogue,
    furniture: new Set<never>(),
    quoted: [],
    understood: new Set<never>(),
  };
  return statementsBeside(letter, beside).map((statement) => ({
    letter: String(number),
    what: "words",
    text: "words" in statement ? statement.words : "(words that a program cannot read)",
  }));
}
