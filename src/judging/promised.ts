import { positionIn } from "../checks/named-place.ts";
import { differencesOf } from "../orders/differences.ts";
import { contentKey } from "../orders/keys.ts";
import { patternOf } from "../reading/reply/tallies.ts";
import type { Announced, Carried, Promised } from "../trade/carried.ts";
import type { Order, Replacement } from "../trade/order.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { ordersNamedIn } from "./named.ts";
import { sheetsOf } from "./sheets-of.ts";
import { orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

/** What came, beside one order. */
interface Came {
  readonly letter: string;
  readonly announced?: Announced | undefined;
  /** The sheets that the submission brought, of any order. */
  readonly ids: ReadonlySet<FileId>;
  readonly replaced: readonly Replacement[];
  readonly late: readonly Replacement[];
  /** What it promises of this order came as sheets of others, if at all (`isMendedElsewhere`). */
  readonly isElsewhere?: boolean;
}

/**
 * Whether a reply says that a station of this order, which it answers, is mended, and brings sheets of other orders
 * alone. Unless one of these takes the place of an earlier sheet of that station, or the words name its order, the sheet
 * may bear another order's number.
 */
export function isMendedElsewhere(
  order: Order,
  { announced, repliesTo = [] }: Pick<Submission, "announced" | "repliesTo">,
  { sheets, replaced }: { readonly sheets: readonly Sheet[]; readonly replaced: readonly Replacement[] },
): boolean {
  const key = orderKey(order.number);
  const others = sheets.map(({ order: number = "" }) => number);
  if (announced?.tells !== "mended" || others.length === 0) return false;
  if (!repliesTo.some((number) => orderKey(number) === key)) return false;
  // Without a number it stops by itself.
  if (others.some((number) => orderKey(number) === "" || orderKey(number) === key)) return false;
  const { words } = announced;
  const stations = stationsIn(words, sheetsOf(order));
  return (
    stations.length > 0 &&
    // A new station may be one of a new order.
    !/\bnew\b/i.test(words) &&
    ordersNamedIn(words, { orders: others.map((number) => ({ number })) }).length === 0 &&
    !replaced.some(({ now }) => now.mark !== undefined && stations.includes(now.mark))
  );
}

/**
 * What is promised of an order and has not come. A promise is kept by a sheet that adds or changes something; where it
 * names stations or a position, by one of each, and one of these adds or changes something.
 */
export function promisedOf(order: Order, before: readonly Carried[], came: Came): Promised[] {
  const all = sheetsOf(order);
  const own = all.filter(({ id }) => came.ids.has(id));
  const same = new Set(came.replaced.filter(isSame).map(({ now }) => now.id));
  const fresh = own.filter(({ id }) => !same.has(id));
  const brings = came.late.length > 0 || fresh.length > 0;
  const isKept = ({ words }: Pick<Announced, "words">): boolean => {
    const stations = stationsIn(words, all);
    const has = (some: readonly Sheet[]) => (station: string) => some.some(({ mark }) => mark === station);
    // A station that comes as it was beside others keeps no promise of that station.
    const isFresh = stations.length === 0 || came.late.length > 0 || stations.some(has(fresh));
    return brings && isFresh && stations.every(has(own)) && hasPosition(own, positionIn(words));
  };
  const anew = newOf(came, { own, isKept });
  // Whoever promises anew is asked about that alone.
  return anew.length > 0
    ? anew
    : before.filter((one) => one.what === "promise").filter(({ text }) => !isKept({ words: text }));
}

/** What the letter in hand promises. Where it brings sheets of other orders alone, that is about those as a rule. */
function newOf(
  { letter, announced, ids, isElsewhere = false }: Came,
  { own, isKept }: { readonly own: readonly Sheet[]; readonly isKept: (one: Announced) => boolean },
): Promised[] {
  if (announced === undefined || (own.length === 0 && ids.size > 0 && !isElsewhere)) return [];
  const { words, tells } = announced;
  const isHere = tells === "mended" && !isElsewhere && (own.length === 0 || isKept(announced));
  return isHere ? [] : [{ letter, what: "promise", text: words, tells }];
}

/** Whether a sheet came again as it was, in what it says and in how it looks. */
export function isSame({ old, now }: Replacement): boolean {
  const looks = ({ doubts, unsure, unread, edition, unmapped = [] }: Sheet): string =>
    contentKey({ doubts, unsure, unread, edition, unmapped });
  return differencesOf(old, now).length === 0 && looks(old) === looks(now);
}

/** Whether one of some sheets is for a position, if there is one. */
function hasPosition(sheets: readonly Sheet[], position: number | undefined): boolean {
  return (
    position === undefined || sheets.some((sheet) => sheet.kind === "device" && sheet.position === position)
  );
}

/** The stations of an order that words name. */
function stationsIn(words: string, sheets: readonly Sheet[]): readonly string[] {
  const marks = new Set(sheets.flatMap(({ mark }) => mark ?? []));
  return [...marks].filter((mark) => (patternOf(mark)?.exec(words) ?? null) !== null);
}
