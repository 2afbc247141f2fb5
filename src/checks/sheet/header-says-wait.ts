import { isPlaceholder } from "../../orders/placeholder.ts";
import { addressParts, type Entry } from "../../trade/place.ts";
import { saidAt } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { billTo } from "../sample.ts";

const waits =
  /^(?:ON )?HOLD(?: (?:FOR|UNTIL|TILL|PENDING)\b.*)?$|^(?:DO NOT|DON'T|NOT (?:YET|FINAL|RELEASED|APPROVED|STARTED|AWARDED|SIGNED|PAID|CONFIRMED|READY|AN ORDER|FOR))\b|^(?:COPY|OLD|DUPLICATE|REPEAT|REORDER|REVISED|DRAFT|PRELIM(?:INARY)?|PROVISIONAL|PENDING|TBD|TBC|VOID|CANCELL?ED|SUPERSEDED|OBSOLETE|BUDGET|BID|QUOTE|QUOTE ONLY|(?:TEST|SAMPLE|EXAMPLE|DUMMY)(?: (?:ORDER|SHEET|JOB|PROJECT|ONLY|RUN))?|(?:TRIAL|PRACTICE|DEMO|TRAINING) (?:ORDER|SHEET|JOB|PROJECT|ONLY|RUN)|FOR (?:QUOTE|PRICING|APPROVAL|REVIEW)(?: ONLY)?|(?:AWAITING|SUBJECT TO) .*)$|^WILL (?:CALL|SEND|FOLLOW|ADVISE)\b/i;
const fetched = /\b(?:WILL CALL|PICK[ -]?UP|HOLD (?:FOR|AT)|CALL (?:BEFORE|WHEN|FIRST))\b/i;

/** Words behind a mark that make of it another piece than the one that hangs there, or none. */
const beside =
  /^(?:SPARES?|EXTRA|OLD|COPY|DUP(?:L(?:ICATE)?)?|SAME|AGAIN|CHANGED|ALT(?:ERNATE|ERNATIVE)?|OPTION(?:AL)?|OMIT(?:TED)?|DELETED?|EXISTING|REMOVED?|NOT USED|UNUSED|BACK-?UP|FUTURE(?: USE)?|N ?I ?C|NOT IN CONTRACT|BY OTHERS)(?: (?:\d+|(?:OF|FOR|FROM|AS) .*))?$/i;

const places: readonly Entry[] = ["project", "bill.name", "ship.name"];
const shipped: readonly Entry[] = addressParts.map((part) => `ship.${part}` as const);

export const headerSaysWait = defineSheetCheck({
  id: "header-says-wait",
  title: "A field says that the order has to wait",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "People write HOLD or DRAFT behind the name of a project, and WILL CALL for an address. What is engraved and sent off then cannot be taken back. A station that is called S-104 SPARE or S-104 OLD is perhaps not to be made.",
  wordings: {
    waits: {
      says: "“{field}” says “{typed}”. One of us asks you whether it may be made now.",
      fix: "If it may, send the sheets again without the word.",
      verdict: "person",
    },
    fetched: {
      says: "“{field}” says “{typed}”, which is no address. One of us asks you where it goes.",
      fix: "Write the address to which it is sent; if you fetch it, tell us when.",
      verdict: "person",
    },
    mark: {
      says: "“{field}” says “{typed}”. A sheet orders one piece, and it is made.",
      fix: "If it is not to be made, reply that you cancel it.",
    },
  },
  passing: [
    { shows: "names", given: ({ device }) => device() },
    { shows: "TBD, which has checks of its own", given: ({ device }) => device({ order: "TBD" }) },
    {
      shows: "names that have such words in them",
      given: ({ device }) =>
        device({
          project: "Stronghold Draft House, Quote Street",
          billTo: { ...billTo, name: "Hold Bros." },
        }),
    },
  ],
  failing: [
    {
      shows: "a project that is on hold",
      given: ({ device }) => device({ project: "Larkspur Library - HOLD" }),
      wording: "waits",
      says: "“Project name” says “Larkspur Library - HOLD”. One of us asks you whether it may be made now.",
    },
    {
      shows: "a project that is on hold, without a stroke",
      given: ({ device }) => device({ project: "Larkspur Library ON HOLD" }),
      wording: "waits",
      says: "“Project name” says “Larkspur Library ON HOLD”. One of us asks you whether it may be made now.",
    },
    {
      shows: "a number that is a draft",
      given: ({ plate }) => plate({ order: "BW-2207 (draft)" }),
      wording: "waits",
      says: "“Order number” says “BW-2207 (draft)”. One of us asks you whether it may be made now.",
    },
    {
      shows: "a number that is to come by telephone",
      given: ({ plate }) => plate({ order: "will call w/ PO" }),
      wording: "waits",
      says: "“Order number” says “will call w/ PO”. One of us asks you whether it may be made now.",
    },
    {
      shows: "no address, but somebody who comes for it",
      given: ({ device }) =>
        device({ shipSame: false, shipTo: { ...billTo, name: "Marlow Electric", street: "Will call" } }),
      wording: "fetched",
      says: "“Ship to: street” says “Will call”, which is no address. One of us asks you where it goes.",
    },
    {
      shows: "a station that is a spare",
      given: ({ device }) => device({ mark: "S-104 (spare)" }),
      wording: "mark",
      says: "“Station mark” says “S-104 (spare)”. A sheet orders one piece, and it is made.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const told = [
      ...places.map((place) => ({ place, wording: "waits", isSo: saysWait }) as const),
      { place: "order", wording: "waits", isSo: (typed: string) => partsOf(typed).some(saysWait) } as const,
      {
        place: "mark",
        wording: "waits",
        isSo: (mark: string) => !isBeside(mark) && partsOf(mark).some(saysWait),
      } as const,
      { place: "mark", wording: "mark", isSo: isBeside } as const,
      ...(sheet.shipSame ? [] : shipped).map(
        (place) => ({ place, wording: "fetched", isSo: isFetched }) as const,
      ),
    ];
    for (const { place, wording, isSo } of told) {
      const typed = saidAt(sheet, place);
      if (!isPlaceholder(typed) && isSo(typed))
        yield say(wording, { field: labelOf(sheet, place), typed }, at(sheet, place));
    }
  },
});

/** What stands behind a mark or a number, or in its place: "spare" of "S-104 spare". */
function partsOf(typed: string): string[] {
  const tails = [/^.*?\d\w*/u, /^.*\d\w*/u].map((number) => typed.replace(number, ""));
  const front = typed.replace(/\s+\S*\d\S*$/u, "");
  return [typed, front, ...tails.map((tail) => tail.replace(/[^\p{L}\p{N}]+/gu, " ").trim())];
}

function isBeside(mark: string): boolean {
  return partsOf(mark).some((part) => beside.test(part));
}

/** Whether a name ends so, or a part of it, between strokes or in brackets, says so by itself. */
function saysWait(typed: string): boolean {
  return (
    /\b(?:ON HOLD|NOT (?:FINAL|APPROVED|RELEASED))\W*$/i.test(typed) ||
    /\p{Ll}.*\s(?:TEST|DRAFT|COPY|VOID|HOLD|OLD)\W*$/u.test(typed) ||
    typed.split(/\s[-–—/]\s|[():,;*]/u).some((part) => waits.test(part.trim()))
  );
}

function isFetched(typed: string): boolean {
  return fetched.test(typed);
}
