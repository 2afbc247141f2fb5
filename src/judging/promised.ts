import { positionIn } from "../checks/named-place.ts";
import { numberedBeyond } from "../checks/numbered-files.ts";
import { isUnchanged } from "../orders/differences.ts";
import { letterOf } from "../orders/ids.ts";
import type { Announced, Carried, Claim, Promised } from "../trade/carried.ts";
import type { Order, Replacement } from "../trade/order.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { stationsIn, stationsOf } from "./named-stations.ts";
import { sheetsOf } from "./sheets-of.ts";

/** What came, beside one order. */
interface Came {
  readonly letter: string;
  readonly announced?: Announced | undefined;
  readonly claims: readonly Claim[];
  /** All sheets of the letter, and the names of all its files. */
  readonly sheets: readonly Sheet[];
  readonly names: readonly string[];
  /** The sheets that the submission brought, of any order. */
  readonly ids: ReadonlySet<FileId>;
  readonly replaced: readonly Replacement[];
  readonly late: readonly Replacement[];
  /** What it promises of this order came as sheets of others, if at all (`isMendedElsewhere`). */
  readonly isElsewhere?: boolean;
}

/**
 * What is promised of an order and has not come. A promise is kept by a sheet that adds or changes something; where it
 * names stations or a position, by one of each, and one of these adds or changes something. What is to come beside
 * others is a sheet for another place.
 */
export function promisedOf(order: Order, before: readonly Carried[], came: Came): Promised[] {
  const all = sheetsOf(order);
  const own = all.filter(({ id }) => came.ids.has(id));
  const same = new Set(came.replaced.filter(isUnchanged).map(({ now }) => now.id));
  const fresh = own.filter(({ id }) => !same.has(id));
  const again = new Set(came.replaced.map(({ now }) => now.id));
  const changes = came.late.length > 0 || fresh.length > 0;
  const adds = own.some(({ id }) => !again.has(id));
  const isKept = ({ words, tells, letter = came.letter }: Told): boolean => {
    const stations = stationsIn(words, all);
    const isPlaceHere = hasPosition(own, positionIn(words));
    // "All 16 attached" names no station.
    if (tells === "named") return isPlaceHere && areHere(own, stations.filter(isNoCount));
    if (tells === "whole") return areHere(broughtBy([letter, came.letter], all), stationsOf(all));
    // A station that comes as it was beside others keeps no promise of that station.
    const isFresh =
      stations.length === 0 || came.late.length > 0 || stations.some((one) => areHere(fresh, [one]));
    return (
      (tells === "more" || tells === "numbered" ? adds : changes) &&
      isFresh &&
      isPlaceHere &&
      areHere(own, stations)
    );
  };
  const unmet = [...unmetOf(came, { own, all, isKept }), ...numberedIn(order, own, came)];
  const isUnmet = ({ text }: Promised): boolean => unmet.some((one) => one.text === text);
  const anew = [...unmet, ...newOf(came, { own, isKept }).filter((one) => !isUnmet(one))];
  // Whoever promises anew is asked about that alone.
  return anew.length > 0
    ? anew
    : before
        .filter((one) => one.what === "promise")
        .filter(({ text, tells, letter }) => !isKept({ words: text, tells, letter }));
}

/** A sentence that tells of sheets, and the letter that it stands in. */
interface Told {
  readonly words: string;
  readonly tells: Promised["tells"];
  readonly letter?: string;
}

/** What the letter in hand says of its sheets and is not so. */
function unmetOf(
  { letter, claims, replaced }: Came,
  {
    own,
    all,
    isKept,
  }: {
    readonly own: readonly Sheet[];
    readonly all: readonly Sheet[];
    readonly isKept: (one: Told) => boolean;
  },
): Promised[] {
  if (own.length === 0) return [];
  const letters = new Set([...all, ...replaced.map(({ old }) => old)].map(({ id }) => letterOf(id)));
  // Who sends some sheets of an order once more may well have meant all of it.
  const isAgain = replaced.length > 0;
  return claims.flatMap((claim): Promised[] => {
    const { words: text, claims: kind } = claim;
    if (claim.claims === "last")
      return letters.size < claim.of ? [{ letter, what: "promise", text, tells: "more" }] : [];
    if (kind === "last" || (kind === "whole" && !isAgain) || isKept({ words: text, tells: kind })) return [];
    return [{ letter, what: "promise", text, tells: kind }];
  });
}

/** The first sheet that is numbered among more than came. */
function numberedIn(order: Order, own: readonly Sheet[], came: Came): Promised[] {
  const { letter, sheets, names, replaced } = came;
  return numberedBeyond(order, { own, came: sheets, names, replaced })
    .slice(0, 1)
    .map((text) => ({ letter, what: "promise", text, tells: "numbered" }));
}

/** What the letter in hand promises. Where it brings sheets of other orders alone, that is about those as a rule. */
function newOf(
  { letter, announced, ids, isElsewhere = false }: Came,
  { own, isKept }: { readonly own: readonly Sheet[]; readonly isKept: (one: Told) => boolean },
): Promised[] {
  if (announced === undefined || (own.length === 0 && ids.size > 0 && !isElsewhere)) return [];
  const { words, tells } = announced;
  const isHere = tells === "mended" && !isElsewhere && (own.length === 0 || isKept(announced));
  return isHere ? [] : [{ letter, what: "promise", text: words, tells }];
}

/** Whether one of some sheets is for a position, if there is one. */
function hasPosition(sheets: readonly Sheet[], position: number | undefined): boolean {
  return (
    position === undefined || sheets.some((sheet) => sheet.kind === "device" && sheet.position === position)
  );
}

/** Whether some sheets are there for each of some stations. */
function areHere(sheets: readonly Sheet[], stations: readonly string[]): boolean {
  return stations.every((station) => sheets.some(({ mark }) => mark === station));
}

function isNoCount(mark: string): boolean {
  return !/^\W*\d{1,2}\W*$/.test(mark);
}

function broughtBy(letters: readonly string[], sheets: readonly Sheet[]): Sheet[] {
  return sheets.filter(({ id }) => letters.includes(letterOf(id)));
}
