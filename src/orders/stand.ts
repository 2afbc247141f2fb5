import type { Arrivals } from "../trade/letter.ts";
import type { Replacement, Untouched } from "../trade/order.ts";
import type { Place } from "../trade/place.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { type Age, ageOf, byArrival } from "./age.ts";
import { differencesOf } from "./differences.ts";
import { letterOf } from "./ids.ts";
import { contentKey } from "./keys.ts";
import { goesIntoPlate } from "./standing.ts";
import { untouchedAmong } from "./untouched.ts";
import { wallPlaceOf } from "./wall-place.ts";

/** What is known of sheets besides what they say. */
export interface Known {
  /** When the letters came that brought them. */
  readonly arrivals: Arrivals;
  /** Sheets of earlier letters that something stops. */
  readonly stopped: ReadonlySet<FileId>;
  /** The places that were to be mended on sheets of earlier letters. */
  readonly toMend: ReadonlyMap<FileId, ReadonlySet<Place>>;
  /** Devices for a plate that never came: their sender was asked whether they stand alone. */
  readonly perhapsAlone?: ReadonlySet<FileId>;
  /** Keys of the orders in which sheets of earlier letters stand. */
  readonly homes?: ReadonlyMap<FileId, string>;
}

export const nothingKnown: Known = { arrivals: new Map(), stopped: new Set(), toMend: new Map() };

/** What becomes of earlier sheets and of new ones when the new ones come. */
export interface Standing {
  /** All sheets that stand from now on, in the order in which they came. */
  readonly sheets: readonly Sheet[];
  /** Earlier sheets whose place new ones take. */
  readonly replaced: readonly Replacement[];
  /** New sheets that come too late, since an earlier sheet for the same place is newer. */
  readonly late: readonly Replacement[];
  /** New sheets that came as they were sent out, each beside one for the same place. They do not count. */
  readonly untouched: readonly Untouched[];
}

/**
 * Which sheets stand when new ones come. A newer sheet for the same place replaces an older one, even if it is at
 * fault itself: its sender no longer wants the old one. A sheet also replaces one that differs from it only in what
 * stopped it. If it is not clear which is newer, both stand and are asked about.
 */
export function standingAfter(
  earlier: readonly Sheet[],
  brought: readonly Sheet[],
  known: Known = nothingKnown,
): Standing {
  const untouched = untouchedAmong(brought, earlier);
  const blank = new Set(untouched.map((one) => one.blank));
  const sheets = brought.filter((sheet) => !blank.has(sheet));
  const mended = mendings(earlier, sheets, known);
  const gave = new Set(mended.map(({ old }) => old));
  const left = earlier.filter((sheet) => !gave.has(sheet));
  const isEarlier = new Set(earlier.map(({ id }) => id));
  const gone: Replacement[] = [];
  const groups = Map.groupBy([...left, ...sheets], (sheet) => wallPlaceOf(sheet) ?? sheet.id);
  for (const group of groups.values()) gone.push(...givenWay(group, known.arrivals));
  const fell = new Set(gone.map(({ old }) => old.id));
  const wentTo = new Map(gone.map(({ old, now }) => [old, now]));
  // What mends a sheet may itself come too late. Then the sheet has given way to what stands.
  const standsFor = (sheet: Sheet): Sheet => {
    const next = wentTo.get(sheet);
    return next === undefined ? sheet : standsFor(next);
  };
  return {
    sheets: [...left, ...sheets].filter(({ id }) => !fell.has(id)),
    replaced: [
      ...mended.map((one) => ({ ...one, now: standsFor(one.now) })),
      ...gone.filter(({ old }) => isEarlier.has(old.id)),
    ],
    late: gone.filter(({ old }) => !isEarlier.has(old.id)),
    untouched: untouched.map((one) => ({ ...one, beside: standsFor(one.beside) })),
  };
}

/**
 * The sheets for one place that gave way to a newer one. The sheets of a letter are of one age: letters are compared,
 * not each sheet with each.
 */
function givenWay(group: readonly Sheet[], arrivals: Arrivals): Replacement[] {
  const gone: Replacement[] = [];
  const alive = new Map<string, Sheet[]>();
  for (const now of group.toSorted((a, b) => byArrival(arrivals)(a.id, b.id))) {
    const letter = letterOf(now.id);
    const others = [...alive].map(([other, olds]) => ({ other, olds, age: ageOf(letter, other, arrivals) }));
    const first = others.map((one) => standingBefore(now, one)).find((old) => old !== undefined);
    if (first !== undefined) {
      gone.push({ old: now, now: first, how: "place" });
      continue;
    }
    for (const { other, olds, age } of others) {
      if (age !== "newer") continue;
      gone.push(...olds.map((old): Replacement => ({ old, now, how: "place" })));
      alive.delete(other);
    }
    const own = alive.get(letter);
    if (own === undefined) alive.set(letter, [now]);
    else own.push(now);
  }
  return gone;
}

/** Sheets of one letter, and how old another is beside them. */
interface OfLetter {
  readonly olds: readonly Sheet[];
  readonly age: Age;
}

/** The sheet that stands before another. If two say the same nobody is asked: the one that arrived first stands. */
function standingBefore(now: Sheet, { olds, age }: OfLetter): Sheet | undefined {
  if (age === "older") return olds[0];
  return age === "unclear" ? olds.find((old) => differencesOf(old, now).length === 0) : undefined;
}

/**
 * Stopped sheets that came again with only the faulty places changed. A pair counts if neither sheet fits another.
 */
function mendings(earlier: readonly Sheet[], sheets: readonly Sheet[], known: Known): Replacement[] {
  const faulty = earlier.filter(({ id }) => known.toMend.has(id) || known.perhapsAlone?.has(id));
  const [byContent, byStation] = [contentText, stationText].map((text) => Map.groupBy(sheets, text));
  const pairs = faulty.flatMap((old) => {
    const alike = [byContent?.get(contentText(old)) ?? [], byStation?.get(stationText(old)) ?? []];
    // If more sheets than these are alike, none is the only one.
    const candidates = new Set(alike.filter((some) => some.length <= mostAlike).flat());
    return [...candidates].flatMap((now): Replacement[] =>
      mends(now, old, known) ? [{ old, now, how: "mended" }] : [],
    );
  });
  const olds = Map.groupBy(pairs, ({ old }) => old);
  const news = Map.groupBy(pairs, ({ now }) => now);
  return pairs.filter(({ old, now }) => olds.get(old)?.length === 1 && news.get(now)?.length === 1);
}

const mostAlike = 40;

/** What a sheet has to be cut, wherever it belongs. */
function contentText({ kind, legends, finish, lettering }: Sheet): string {
  return contentKey({ kind, legends, finish, lettering });
}

/** Where a sheet belongs, whatever the order. */
function stationText(sheet: Sheet): string {
  const { kind, mark } = sheet;
  return contentKey({ kind, mark, position: kind === "device" ? sheet.position : 0 });
}

/** The fields that change where a device turns out to stand alone. */
const ofStanding = ["standing", "position", "gangs"] as const satisfies readonly Place[];

function mends(now: Sheet, old: Sheet, { arrivals, toMend, perhapsAlone }: Known): boolean {
  if (now.kind !== old.kind || ageOf(now.id, old.id, arrivals) !== "newer") return false;
  const place = wallPlaceOf(old);
  if (place !== undefined && place === wallPlaceOf(now)) return false;
  // A second device for the plate is no correction of the first, however alike they are.
  const isAlone = perhapsAlone?.has(old.id) && now.kind === "device" && !goesIntoPlate(now);
  const faulty = new Set<Place>([...(toMend.get(old.id) ?? []), ...(isAlone ? ofStanding : [])]);
  return differencesOf(old, now).every((difference) => faulty.has(difference.place));
}
