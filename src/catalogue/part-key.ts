import { Mod37_36 } from "@konfirm/iso7064";
import type { Sheet } from "../trade/sheet.ts";
import type { Catalogue } from "./catalogue.ts";

/** `<body>/<finish>/<lettering>-<check>`, such as "D4/OAT/INK-V". `body` is a layout's code or the plate code with its gangs. */
export function partKey(body: string, finish: string, lettering: string): string {
  return `${body}/${finish}/${lettering}-${checkCharacter(`${body}${finish}${lettering}`)}`;
}

/** Check character of letters and digits by ISO/IEC 7064 MOD 37-36. */
export function checkCharacter(text: string): string {
  return Mod37_36.checksum(text.toUpperCase());
}

/** The key that follows from what a sheet orders. Undefined if something that it needs is not chosen or not made. */
export function partKeyOf(sheet: Sheet, catalogue: Catalogue): string | undefined {
  const body = bodyOf(sheet, catalogue);
  const finish = catalogue.finishes.find((f) => f.code === sheet.finish);
  const lettering = catalogue.lettering.find((l) => l.code === sheet.lettering);
  if (body === undefined || finish === undefined || lettering === undefined) return undefined;
  return partKey(body, finish.code, lettering.code);
}

function bodyOf(sheet: Sheet, catalogue: Catalogue): string | undefined {
  if (sheet.kind === "plate")
    return sheet.gangs === undefined ? undefined : `${catalogue.plate_code}${sheet.gangs}`;
  const [code, ...more] = sheet.layouts;
  return more.length === 0 && catalogue.layouts.some((layout) => layout.code === code) ? code : undefined;
}

/**
 * Whether a written key's check character agrees with the rest. Blanks and separators do not count.
 * `undefined` when the text is too short to carry one.
 */
export function keyReadsRight(written: string): boolean | undefined {
  const plain = plainKey(written);
  if (plain.length < 2) return undefined;
  return checkCharacter(plain.slice(0, -1)) === plain.slice(-1);
}

/** Whether a written key is this one without its check character. */
export function isUnchecked(written: string, key: string): boolean {
  return plainKey(written) === plainKey(key).slice(0, -1);
}

/** Letters and digits alone, in capitals. Keys that differ only in separators are one key. */
export function plainKey(written: string): string {
  return written.toUpperCase().replace(/[^A-Z0-9]/g, "");
}
