import { ageOf } from "../orders/age.ts";
import { numberKey, plainText } from "../orders/keys.ts";
import { isMarked, placed } from "../orders/placed.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { type BuyerState, type OrderState, orderKey } from "./state.ts";
import type { Submission } from "./submission.ts";

const order =
  "(?:(?:the|our|my|this|whole|entire|complete|die|den|unsere|unseren|la|le|notre|el|nuestro) )*(?:order|po|purchase order|auftrag|bestellung|commande|pedido)";
const number = "(?: (?:number|no\\.?|nr\\.?|n°|nº))?[ :#]+(?<number>[^,;]+?)";
const station = "(?:(?:the |die |la )?(?:station|estación) )?";
const opening =
  "(?:pos\\.?|position|posición|posicion) ?(?<position>\\d{1,2})(?: (?:of|von|de|sur) (?<gangs>\\d{1,2}))?";

const wholeOrder = new RegExp(`^${order}$`, "iu");
const orderNamed = new RegExp(`^${order}${number}$`, "iu");
const inOrderNamed = new RegExp(
  `^(?<rest>.+?),? (?:(?:of|in|from|on|von|aus|de) )?\\(?${order}${number}\\)?$`,
  "iu",
);
const openingAlone = new RegExp(`^\\(?${opening}\\)?$`, "iu");
/** "2 and 3" after a position. */
const openingMore = /^(?<position>\d{1,2})$/u;
const openingOfStation = new RegExp(`^${opening},? (?:of|at|in|on|from|von|de) ${station}(?<mark>.+)$`, "iu");
const stationAndOpening = new RegExp(`^${station}(?<mark>.+?)[ :–-]{1,3}\\(?${opening}\\)?$`, "iu");
const joins = /(\s*[,;]\s*(?:and |und |et |y )?|\s+(?:and|und|et|y|&|\+)\s+)/iu;

/**
 * The sheets that words such as "S-104, pos. 2 and S-105" or "order BW-2207" name, in orders that may lose them.
 * Undefined unless every part of the words names something that the orders have, and in one way only. A near miss
 * names nothing.
 */
export function sheetsNamed(words: string, orders: readonly OrderState[]): readonly FileId[] | undefined {
  const found = namedIn(words.trim(), orders) ?? [];
  return found.length === 0 ? undefined : [...new Set(found.map(({ id }) => id))];
}

function namedIn(words: string, orders: readonly OrderState[]): readonly Sheet[] | undefined {
  const [only, ...more] = orders;
  if (wholeOrder.test(words)) return more.length === 0 ? only?.sheets : undefined;
  const byNumber = (typed = ""): OrderState | undefined =>
    orders.find((one) => numberKey(one.number) === numberKey(typed));
  const stations = inStations(words, orders);
  const named = byNumber(orderNamed.exec(words)?.groups?.["number"] ?? words);
  // What is the number of an order and the mark of a station may mean either.
  if (named !== undefined) return stations === undefined ? named.sheets : undefined;
  const { rest = "", number: typed } = inOrderNamed.exec(words)?.groups ?? {};
  const within = typed === undefined ? undefined : byNumber(typed);
  return within === undefined ? stations : inStations(rest, [within]);
}

interface Opening {
  readonly position: number;
  readonly gangs?: number;
}

interface Claim {
  readonly station: readonly Sheet[];
  /** Absent for the whole station. */
  readonly openings?: readonly Opening[];
}

/** The sheets of stations and positions, named one after the other. */
function inStations(words: string, orders: readonly OrderState[]): readonly Sheet[] | undefined {
  const claims: Claim[] = [];
  // A mark may hold a comma or an "and".
  const pieces = stationNamed(words, orders) === undefined ? words.split(joins) : [words];
  for (let i = 0; i < pieces.length; i += 2) {
    const piece = pieces[i] ?? "";
    const last = claims.at(-1);
    const next = last === undefined ? undefined : withOpening(last, piece, claims, pieces[i - 1] ?? "");
    if (next !== undefined) claims[claims.length - 1] = next;
    else {
      const claim = claimIn(piece, orders);
      if (claim === undefined) return undefined;
      claims.push(claim);
    }
  }
  const found = claims.map(claimed);
  return found.every((some) => some !== undefined) ? found.flat() : undefined;
}

/** The last claim with one opening more, if a piece names nothing else. */
function withOpening(
  last: Claim,
  piece: string,
  claims: readonly Claim[],
  joined: string,
): Claim | undefined {
  const alone = openingIn(openingAlone.exec(piece));
  const { station, openings } = last;
  if (openings !== undefined) {
    const more = alone ?? openingIn(openingMore.exec(piece));
    return more === undefined ? undefined : { station, openings: [...openings, more] };
  }
  // "S-104 and position 2" and "S-104, S-105, position 2" can be read in two ways.
  const isClear = joined.trim() === "," && claims.every((one) => one === last || one.openings !== undefined);
  return alone !== undefined && isClear ? { station, openings: [alone] } : undefined;
}

function claimIn(piece: string, orders: readonly OrderState[]): Claim | undefined {
  const whole = stationNamed(piece, orders);
  if (whole !== undefined) return { station: whole };
  for (const form of [openingOfStation, stationAndOpening]) {
    const found = form.exec(piece);
    const [one, named] = [openingIn(found), stationNamed(found?.groups?.["mark"] ?? "", orders)];
    if (one !== undefined && named !== undefined) return { station: named, openings: [one] };
  }
  return undefined;
}

function openingIn(found: RegExpExecArray | null): Opening | undefined {
  const { position, gangs } = found?.groups ?? {};
  if (position === undefined) return undefined;
  return { position: Number(position), ...(gangs === undefined ? {} : { gangs: Number(gangs) }) };
}

/** The sheets of a claim. Which of two devices at one position is meant, nobody knows. */
function claimed({ station: sheets, openings }: Claim): readonly Sheet[] | undefined {
  if (openings === undefined) return sheets;
  const found = openings.map(({ position, gangs }) => {
    const [device, ...more] = sheets.filter(
      (sheet) => sheet.kind === "device" && goesIntoPlate(sheet) && sheet.position === position,
    );
    const isOther = gangs !== undefined && device?.gangs !== undefined && device.gangs !== gangs;
    return more.length > 0 || isOther ? undefined : device;
  });
  return found.every((sheet) => sheet !== undefined) ? found : undefined;
}

/** The sheets of the one station that bears a mark; undefined if none does, or stations of two orders do. */
function stationNamed(words: string, orders: readonly OrderState[]): readonly Sheet[] | undefined {
  const typed = words.replace(new RegExp(`^${station}`, "iu"), "").trim();
  const key = plainText(typed);
  if (key === "") return undefined;
  const found = orders.map(({ sheets }) => marked(sheets).filter(({ mark }) => plainText(mark) === key));
  const [some, ...more] = found.filter(({ length }) => length > 0);
  if (some === undefined || more.length > 0 || some.some(({ byNotes }) => byNotes)) return undefined;
  const isExact = some.some(({ mark }) => mark.trim().toUpperCase() === typed.toUpperCase());
  // "S-104 2" is no S-1042 where S-104 is a station too.
  const [, before] = /^(.+?)\W+\d{1,2}$/u.exec(typed) ?? [];
  const isEither =
    before !== undefined &&
    orders.some(({ sheets }) => marked(sheets).some(({ mark }) => plainText(mark) === plainText(before)));
  return isEither && !isExact ? undefined : some.map(({ sheet }) => sheet);
}

interface Marked {
  readonly sheet: Sheet;
  readonly mark: string;
  /** Only its notes seem to name the mark. */
  readonly byNotes: boolean;
}

/** The sheets of an order that bear a mark. */
function marked(sheets: readonly Sheet[]): Marked[] {
  const marks = sheets.flatMap(({ mark }) => mark ?? []);
  const numbers = sheets.flatMap(({ order: one }) => one ?? []);
  return sheets.flatMap((sheet) => {
    const there = placed(sheet, marks, numbers);
    return isMarked(there) ? [{ sheet, mark: there.mark, byNotes: !isMarked(sheet) }] : [];
  });
}

/**
 * Whether a letter may withdraw sheets: it is clearly newer than they are, and brings no sheet for their station, nor
 * for an order of which nothing would be left. Else nobody knows whether the one that it brings stays.
 */
export function mayWithdraw(
  ids: readonly FileId[],
  { orders, arrivals }: BuyerState,
  { number: letter, came }: NonNullable<Submission["letter"]>,
  brought: readonly Sheet[],
): boolean {
  const known = new Map([...arrivals, [letter, came]]);
  const isOf = (typed = ""): ((sheet: Sheet) => boolean) => {
    const key = orderKey(typed);
    return ({ order: own = "" }) => orderKey(own) === key || orderKey(own) === "";
  };
  return orders.every(({ number: typed, sheets }) => {
    const gone = sheets.filter(({ id }) => ids.includes(id));
    const marks = new Set(["", ...gone.map(({ mark = "" }) => plainText(mark))]);
    const beside = gone.length === 0 ? [] : brought.filter(isOf(typed));
    return (
      gone.every(({ id }) => ageOf(`${letter}/0`, id, known) === "newer") &&
      beside.every(({ mark = "" }) => gone.length < sheets.length && !marks.has(plainText(mark)))
    );
  });
}
