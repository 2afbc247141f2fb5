import type { Sheet } from "../trade/sheet.ts";
import { contentKey, plainText } from "./keys.ts";
import { isPlaceholder } from "./placeholder.ts";
import { regionOf } from "./regions.ts";

/** What a sheet says of one matter, part by part: the parts of an address, or of a contact. */
export type Said<P extends string> = { readonly [K in P]?: string };

/** Sheets of one order that agree with each other, but not with most of the order. */
export interface Odd<P extends string> {
  readonly sheets: readonly Sheet[];
  /** The parts that differ. */
  readonly parts: readonly P[];
  /** Those parts as these sheets have them. */
  readonly typed: string;
  /** The same parts as most sheets of the order have them. */
  readonly usual: string;
}

/** What a sheet says of its project; a placeholder says nothing. */
export function saidOfProject({ project = "" }: Sheet): Said<"project"> {
  return isPlaceholder(project) ? {} : { project };
}

/**
 * What most sheets say. Case, spacing, punctuation and usual short forms do not matter. Of equal shares the one that came first counts.
 */
export function usuallySaid<P extends string>(
  sheets: readonly Sheet[],
  said: (sheet: Sheet) => Said<P>,
): Said<P> | undefined {
  return bySaying(sheets, said)[0]?.said;
}

/** Sheets that say something else than most. A part that either side leaves empty is not compared. */
export function oddOnes<P extends string>(
  sheets: readonly Sheet[],
  said: (sheet: Sheet) => Said<P>,
): Odd<P>[] {
  const [most, ...rest] = bySaying(sheets, said);
  if (most === undefined) return [];
  return rest.flatMap((odd) => {
    const parts = (Object.keys(odd.said) as P[]).filter((part) => {
      const [one, other] = [odd.said[part], most.said[part]].map((typed) => asCompared(part, typed));
      return one !== other && one !== "" && other !== "";
    });
    const words = (whose: Said<P>): string => parts.map((part) => whose[part]).join(", ");
    return parts.length === 0
      ? []
      : [{ sheets: odd.sheets, parts, typed: words(odd.said), usual: words(most.said) }];
  });
}

/** Sheets grouped by what they say, the largest group first; sheets that say nothing are left out. */
function bySaying<P extends string>(
  sheets: readonly Sheet[],
  said: (sheet: Sheet) => Said<P>,
): { said: Said<P>; sheets: readonly Sheet[] }[] {
  const groups = Map.groupBy(sheets, (sheet) => plainParts(said(sheet)));
  groups.delete(plainParts({}));
  return [...groups.values()]
    .flatMap((members) => members.slice(0, 1).map((first) => ({ said: said(first), sheets: members })))
    .toSorted((one, other) => other.sheets.length - one.sheets.length);
}

/** The parts that are filled in, as one text to compare. */
function plainParts(said: Readonly<Record<string, string | undefined>>): string {
  const plain = Object.entries(said).map(([part, typed]) => [part, asCompared(part, typed)]);
  return contentKey(Object.fromEntries(plain.filter(([, typed]) => typed !== "")));
}

/** Short forms that surely mean the same in names and addresses: most are those of USPS Publication 28. From memory. */
const shortForms: Readonly<Record<string, string>> = {
  "&": "AND",
  "+": "AND",
  ST: "STREET",
  AVE: "AVENUE",
  AV: "AVENUE",
  RD: "ROAD",
  BLVD: "BOULEVARD",
  DR: "DRIVE",
  LN: "LANE",
  CT: "COURT",
  PL: "PLACE",
  SQ: "SQUARE",
  HWY: "HIGHWAY",
  PKWY: "PARKWAY",
  STE: "SUITE",
  APT: "APARTMENT",
  BLDG: "BUILDING",
  FL: "FLOOR",
  RM: "ROOM",
};
/** What a firm is in law. A name is the same without it. */
const legalForm = /[\s,]+(?:inc|llc|l\.l\.c|ltd|corp|co)\.?$/iu;

/** A part as it is compared: without what people write in one way or another. "Illinois" is "IL". */
export function asCompared(part: string, typed = ""): string {
  const region = part === "state" ? regionOf(typed) : undefined;
  if (region !== undefined) return region;
  const words = typed
    .trim()
    .replace(/^the\s+(?=\S)/iu, "")
    .replace(legalForm, "")
    .replace(/^(\d{5})-\d{4}$/u, "$1")
    .replace(/[&+]/gu, " $& ")
    .split(/[\s,]+/u);
  return plainText(words.map((word) => shortForms[word.toUpperCase().replace(/\.$/u, "")] ?? word).join(" "));
}
