import { plainText } from "../orders/keys.ts";
import type { Order, Replacement } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import { nameOf } from "./named-place.ts";

/** "2 of 3", as files are numbered. */
interface Numbered {
  readonly number: number;
  readonly of: number;
}

/** What came with a letter, beside one order. */
interface Beside {
  /** The sheets of the order that came, and all sheets of the letter. */
  readonly own: readonly Sheet[];
  readonly came: readonly Sheet[];
  /** The names of all its files. */
  readonly names: readonly string[];
  readonly replaced: readonly Replacement[];
}

/** "2 of 3", "(2/3)", "2of3". */
const numbered =
  /(?<![\p{L}\p{N}]|\p{N}[-./]|\b(?:posn?|position|gang|opening|rev|revision|version) ?[.#]?)(\d{1,2})\s?(?:of|von|de|\/)\s?(\d{1,2})(?![\p{L}\p{N}]|[-./]\d)/giu;

/** A note that says just that. */
const noted =
  /^\W*(?:(?:this is )?(?:sheet|form|file|pdf|page|no)\b\.?)? *#?\(?\d{1,2} ?(?:of|\/) ?\d{1,2}\W*$/i;

/** How a text numbers one file among others. */
function numberedIn(text: string): Numbered | undefined {
  const all = [...text.matchAll(numbered)].map(([, number, of]) => ({
    number: Number(number),
    of: Number(of),
  }));
  const [one, ...more] = all.filter(({ number, of }) => number > 0 && of > 1 && number <= of);
  return more.length > 0 ? undefined : one;
}

/**
 * What says of a sheet that it is one of so many, its file's name or its notes, where neither all numbers came nor so many
 * files, sheets, devices, plates or stations.
 */
export function numberedBeyond(order: Order, { own, came, names, replaced }: Beside): string[] {
  const { sheets, stations } = order;
  const files = [...sheets.map(nameOf), ...names.map((file) => nameOf({ file }))].flatMap(
    (name) => numberedIn(name) ?? [],
  );
  const kinds = Map.groupBy(sheets, ({ kind }) => kind).values();
  const totals = [sheets, came, names, stations, ...kinds].map(({ length }) => length);
  const isAll = (of: number): boolean =>
    totals.includes(of) ||
    new Set(files.filter((one) => one.of === of).map(({ number }) => number)).size === of;
  return own.flatMap((sheet) => {
    const { named, file, notes = "" } = sheet;
    if (sheet.list !== undefined || hadName(sheet, replaced)) return [];
    return [named ?? file, ...(noted.test(notes) ? [notes.trim()] : [])].filter((words) => {
      const told = numberedIn(nameOf({ file: words }));
      return told !== undefined && !isAll(told.of) && !isOfStation(told, sheet, order);
    });
  });
}

/** "S-104 2 of 4" may be the second of four gangs, or of the sheets of its station. */
function isOfStation({ of }: Numbered, sheet: Sheet, { stations }: Order): boolean {
  const members = stations
    .map(({ plates, devices }): readonly Sheet[] => [...plates, ...devices])
    .find((all) => all.some(({ id }) => id === sheet.id));
  return sheet.gangs === of || members?.length === of;
}

/** A sheet that was sent again, mended, may have its name from before. */
function hadName(sheet: Sheet, replaced: readonly Replacement[]): boolean {
  return replaced.some(
    ({ old, now }) => now.id === sheet.id && plainText(nameOf(old)) === plainText(nameOf(sheet)),
  );
}
