import { plainText } from "../orders/keys.ts";
import { type NotedPlace, readNotedPlace } from "../orders/notes.ts";
import { isMarked } from "../orders/placed.ts";
import type { Sheet } from "../trade/sheet.ts";

/** Words that order nothing, as letters and digits in capitals. */
const courtesies = new Set(
  "THANKS THANK YOU CHEERS REGARDS NONE NA NIL PLATE STATION MARK POS POSITION GANG GANGS OF IN THE FOR THIS DEVICE IS GOES TO AT".split(
    " ",
  ),
);
const placeWord = String.raw`(?:plate|station|mark|pos(?:ition)?|gang|opening)`;
/** "Plate no. S-104": the NO refuses nothing. */
const numbered = new RegExp(String.raw`(\b${placeWord}\.?\s*)no\b\.?(?=\W*[\p{L}-]*\d)`, "giu");
const told = /\b(?:pos(?:ition)?\.?|gang|opening)\s*(?:no\.?|#|:)?\s*\d/i;
/** What hangs beside a place is elsewhere. */
const neighbour = new RegExp(
  String.raw`\b(?:beside|next to|near|by|(?:left|right|north|south|east|west|side) of|above|below|opposite|across from|under|over|from|behind|adj(?:acent)? to|between|with|like|facing|replac(?:es|ing)|existing|ref)\s+(?:the\s+)?${placeWord}\b`,
  "i",
);
/** Whose positions are those of circuits. */
const circuits =
  /\b(?:panels?|pnl|panelboard|c(?:irc)?ui?ts?|ckts?|breakers?|relays?|racks?|feeders?|dimmers?)\b/i;

const figures = ["one", "two", "three", "four", "five", "six", "seven", "eight"];
/** "3-gang plate", "three gang", "single gang"; "gang 3" is a position. */
const ofGangs = new RegExp(
  String.raw`(?<![\p{L}\p{N}]|\d\s?[x×/-]\s?)(\d{1,2}|single|${figures.join("|")})[\s-]?gang(?!s?\s*#?\d)`,
  "giu",
);
/** Beside such words the gangs are those of something else. */
const ofOthers =
  /\b(?:beside|next|near|by|adj(?:acent)?|left|right|north|south|east|west|above|below|over|under|opposite|across|behind|between|with|like|from|facing|existing|exist|replac(?:es|ing|e)|with|and|of|in)\b/iu;

/** The one number of gangs that notes, or a file's name, give a plate. */
export function gangsNoted(notes: string): number | undefined {
  const [first, ...more] = notes.matchAll(ofGangs);
  const word = first?.[1]?.toLowerCase();
  if (word === undefined || more.length > 0 || ofOthers.test(notes)) return undefined;
  return word === "single" ? 1 : figures.indexOf(word) + 1 || Number(word);
}

/** Whether notes say more than thanks and where the sheet belongs. */
export function saysMore(notes: string, sheet: Sheet): boolean {
  const place = notedOn(notes, sheet);
  const rest = besides(notes, place);
  // "No." is an answer to "Notes", and refuses nothing.
  return rest !== "" && plainText(notes) !== "NO" && rest !== plainText(place.mark ?? "");
}

/** The place whose field says otherwise than the notes do. */
export function contradicted(
  notes: string,
  sheet: Sheet,
): "mark" | "standing" | "position" | "gangs" | undefined {
  if (neighbour.test(notes)) return undefined;
  const place = notedOn(notes, sheet);
  if (isOfOtherMark(notes, sheet, place)) return "mark";
  if (circuits.test(notes)) return undefined;
  const noted = gangsNoted(notes);
  const { position, gangs = noted === 1 && sheet.kind === "device" ? undefined : noted } = place;
  if (sheet.kind === "device" && sheet.standing === "alone") {
    const isPlaced = told.test(notes) && position !== undefined;
    return (isPlaced && (position > 1 || (gangs ?? 1) > 1)) || (noted ?? 1) > 1 ? "standing" : undefined;
  }
  const isElsewhere = sheet.kind === "device" && differ(position, sheet.position);
  const isOfOthers = differ(gangs, sheet.gangs);
  // "2 of 5" by itself counts sheets, unless one of the two numbers is that of the field.
  if (noted === undefined && !told.test(notes) && (sheet.kind === "plate" || (isElsewhere && isOfOthers)))
    return undefined;
  return isElsewhere ? "position" : isOfOthers ? "gangs" : undefined;
}

function isOfOtherMark(notes: string, sheet: Sheet, place: NotedPlace): boolean {
  const { mark } = place;
  if (mark === undefined || !isMarked(sheet)) return false;
  const [own, other] = [sheet.mark, mark].map(withoutZeros);
  if (own === undefined || other === undefined || new RegExp(`${other}(?!\\d)`, "u").test(own)) return false;
  const isCalled = new RegExp(String.raw`\b(?:plate|station|mark)\b\W*(?:no\b\W*)?${mark}`, "iu").test(notes);
  // LP-3 by itself is a panel, and no station of those that are called S.
  const isAlone = besides(notes, place) === plainText(mark);
  return isCalled || (isAlone && /^\D+/u.exec(own)?.[0] === /^\D+/u.exec(other)?.[0]);
}

function notedOn(notes: string, { mark, order }: Sheet): NotedPlace {
  return readNotedPlace(notes, mark === undefined ? [] : [mark], order === undefined ? [] : [order]);
}

/** The notes without courtesies and position: words of a mark are joined, since it may be typed in two. */
function besides(notes: string, { position, gangs }: NotedPlace): string {
  const numbers = [position, gangs].map(String);
  return notes
    .replaceAll(numbered, "$1")
    .replaceAll(/(\d)\s*\/\s*(?=\d)/g, "$1 ")
    .split(/[\s,;:()]+/)
    .map(plainText)
    .filter((word) => !courtesies.has(word) && !numbers.includes(word))
    .join("");
}

/** S-01 is S-1. */
function withoutZeros(mark: string): string {
  return plainText(mark).replaceAll(/(?<=\p{L})0+(?=\d)/gu, "");
}

function differ(one: number | undefined, other: number | undefined): boolean {
  return one !== undefined && other !== undefined && one !== other;
}
