import { plainText } from "../orders/keys.ts";
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

/**
 * The one other mark of the same series that a file's name tells: S-105 where the sheet says S-104. Only where nothing in
 * the name is the sheet's own mark, and the numbers are of one length, of two digits or more.
 */
export function otherMarkIn(
  name: string,
  { mark = "", order = "", partKey = "" }: Sheet,
): string | undefined {
  const [, letters = "", digits = ""] = /^([A-Z]{1,4})[-_ ]?(\d{2,5})$/i.exec(mark.trim()) ?? [];
  if (letters === "" || plainText(name).includes(plainText(mark))) return undefined;
  const like = new RegExp(`(?<![\\p{L}\\p{N}])${letters}[- ]?\\d{${digits.length}}(?![\\p{L}\\p{N}])`, "giu");
  const others = new Set([...name.matchAll(like)].map(([whole]) => plainText(whole)));
  const [other, ...more] = [...others].filter((one) => !plainText(order + partKey).includes(one));
  return more.length > 0 ? undefined : other;
}
