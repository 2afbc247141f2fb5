import { plainText } from "../orders/keys.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";

/** The name that a sheet's file came with, without its ending; of two files of one name it is the same. */
export function nameOf({ named, file }: Pick<Sheet, "named" | "file">): string {
  return (named ?? file).replace(/\.[a-z]{2,4}$/i, "").replaceAll("_", " ");
}

/** The one position that a file's name tells: "S-104 pos 2 of 4"; none in "pos 1-4" and "pos 1 and 2". */
export function positionIn(name: string): number | undefined {
  const told = /(?<![\p{L}\p{N}])pos(?:ition|n)?[\s.#-]*0?(\d)(?!\d|\s*[,&+-]\s*\d|\s*(?:to|thru|and)\b)/giu;
  const found = [...name.matchAll(told)];
  return found.length === 1 ? Number(found[0]?.[1]) : undefined;
}

/** Whether an order has a mark, as plain text. */
export type IsMark = (mark: string) => boolean;

/** The mark of the sheet's own series with which its file's name begins: "S-3 Bar" where the sheet says S-1. */
export function markInFront(sheet: Sheet): string | undefined {
  const [found, letters] = /^(\p{L}{1,4})-\d{1,5}(?![\p{L}\p{N}])/u.exec(nameOf(sheet)) ?? [];
  const [own] = /^\p{L}{1,4}(?=[-_ ]?\d)/u.exec(sheet.mark?.trim() ?? "") ?? [];
  const isOfSeries = letters !== undefined && letters.toUpperCase() === own?.toUpperCase();
  return found !== undefined && isOfSeries ? plainText(found) : undefined;
}

/**
 * The one other mark of the same series that a file's name tells: S-105 where the sheet says S-104. Only where nothing in
 * the name is the sheet's own mark, and the numbers are of one length, of two digits or more. Of the marks that the order
 * has any counts.
 */
export function otherMarkIn(
  name: string,
  { mark = "", order = "", partKey = "" }: Sheet,
  isMark: IsMark = () => false,
): string | undefined {
  if (plainText(mark) === "" || plainText(name).includes(plainText(mark))) return undefined;
  const [, letters = "", digits = ""] = /^([A-Z]{1,4})[-_ ]?(\d{2,5})$/i.exec(mark.trim()) ?? [];
  const isLike = (other: string): boolean =>
    letters !== "" && new RegExp(`^${letters}\\d{${digits.length}}$`, "i").test(other);
  const others = new Set(
    likeMarks
      .flatMap((like) => [...name.matchAll(like)])
      .map(([whole]) => plainText(whole))
      .filter((one) => (isLike(one) || isMark(one)) && withoutZeros(one) !== withoutZeros(plainText(mark))),
  );
  const [other, ...more] = [...others].filter((one) => !plainText(order + partKey).includes(one));
  return more.length > 0 ? undefined : other;
}

/** S-104 for S-0104. */
const withoutZeros = (mark: string): string => mark.replace(/(?<!\d)0+(?=\d)/gu, "");

/** Letters and digits as marks have them, and numbers of three digits or more: "K1", "S-104", "101". */
const likeMarks = [
  /(?<![\p{L}\p{N}])\p{L}{1,4}[- ]?\d{1,5}(?![\p{L}\p{N}])/gu,
  /(?<![\p{L}\p{N}]|\p{L}-)\d{3,5}(?![\p{L}\p{N}])/gu,
];

/** Sheets by their place. */
export function placesIn({ stations }: Pick<Order, "stations">): Map<string, readonly Sheet[]> {
  return Map.groupBy(
    stations.flatMap(({ plates, devices }): Sheet[] => [...plates, ...devices]),
    (sheet) => placeOf(sheet),
  );
}

/** The place of a sheet by its fields, or with what its file's name says instead. */
export function placeOf(sheet: Sheet, { mark, position } = positionOf(sheet)): string {
  return `${plainText(mark)} ${sheet.kind} ${position ?? ""}`;
}

export function positionOf(sheet: Sheet): { mark: string; position: number | undefined } {
  const position = sheet.kind === "device" && goesIntoPlate(sheet) ? sheet.position : undefined;
  return { mark: sheet.mark ?? "", position };
}

/** The place that a file's name tells; undefined where it tells none. */
export function toldBy(sheet: Sheet, isMark: IsMark): string | undefined {
  const name = nameOf(sheet);
  const { mark, position } = positionOf(sheet);
  const otherMark = otherMarkIn(name, sheet, isMark);
  const told = position === undefined ? undefined : positionIn(name);
  if (otherMark === undefined && told === undefined) return undefined;
  return placeOf(sheet, { mark: otherMark ?? mark, position: told ?? position });
}
