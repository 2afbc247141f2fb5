import type { Catalogue } from "../catalogue/catalogue.ts";
import { contentKey, numberKey, plainText } from "../orders/keys.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import type { Order, Replacement } from "../trade/order.ts";
import { type Sheet, saidAt } from "../trade/sheet.ts";
import { nameOf, positionIn } from "./named-place.ts";
import { gangsNoted } from "./noted-place.ts";

/** A field of a sheet whose file's name says something else. */
interface Told {
  readonly sheet: Sheet;
  readonly place: "gangs" | "standing" | "finish" | "position" | "order";
  /** What the name says. */
  readonly told: string;
}

/** A field that says the same on some sheets, and whose files' names say the same instead. */
interface Contradicted extends Omit<Told, "sheet"> {
  readonly sheets: readonly [Sheet, ...Sheet[]];
}

/** The fields that files' names contradict, besides the mark and the numbered position. */
export function contradictedIn(
  order: Order,
  replaced: readonly Replacement[],
  catalogue: Pick<Catalogue, "finishes">,
): Contradicted[] {
  // A file that was sent again, mended, may have its name from before.
  const isOldName = (sheet: Sheet): boolean =>
    replaced.some(
      ({ old, now }) => now.id === sheet.id && plainText(nameOf(old)) === plainText(nameOf(sheet)),
    );
  const all = toldIn(order, catalogue).filter(({ sheet }) => !isOldName(sheet));
  const alike = Map.groupBy(all, ({ sheet, place, told }) => contentKey([place, told, saidAt(sheet, place)]));
  return [...alike.values()].flatMap(([first, ...more]) =>
    first === undefined
      ? []
      : [{ place: first.place, told: first.told, sheets: [first.sheet, ...more.map(({ sheet }) => sheet)] }],
  );
}

function toldIn(order: Order, { finishes }: Pick<Catalogue, "finishes">): Told[] {
  const named = order.sheets.filter(({ list }) => list === undefined);
  const said = new Set(order.sheets.flatMap((sheet) => wordsOn(sheet)));
  const names = finishes.map((finish) => ({ ...finish, word: finish.name.toUpperCase() }));
  return named.flatMap((sheet): Told[] => {
    const name = nameOf(sheet);
    const words = wordsIn(name);
    const [finish, ...more] = names.filter(({ word }) => words.includes(word) && !said.has(word));
    const gangs = gangsNoted(name);
    const side = sideIn(sheet, order);
    const number = numberIn(name, sheet);
    return [
      ...(finish !== undefined &&
      more.length === 0 &&
      sheet.finish !== undefined &&
      finish.code !== sheet.finish
        ? [{ sheet, place: "finish" as const, told: finish.name }]
        : []),
      ...(gangs === undefined ? [] : gangsAgainst(sheet, gangs)),
      ...(side === undefined ? [] : [{ sheet, place: "position" as const, told: side }]),
      ...(number === undefined ? [] : [{ sheet, place: "order" as const, told: number }]),
    ];
  });
}

function gangsAgainst(sheet: Sheet, gangs: number): Told[] {
  const told = `${gangs} gangs`;
  if (sheet.kind === "device" && sheet.standing === "alone")
    return gangs > 1 ? [{ sheet, place: "standing", told }] : [];
  const isOther = sheet.gangs !== undefined && sheet.gangs !== gangs;
  return isOther && (gangs > 1 || sheet.kind === "plate") ? [{ sheet, place: "gangs", told }] : [];
}

/** "S-104 left" where the sheet says the last position. What all files of a station are called says where that is. */
function sideIn(sheet: Sheet, { stations }: Order): string | undefined {
  const { gangs = 0 } = sheet;
  if (sheet.kind !== "device" || !goesIntoPlate(sheet) || gangs < 2) return undefined;
  const told = sideOf(sheet);
  if (told === undefined || positionIn(nameOf(sheet)) !== undefined) return undefined;
  const sisters = stations.find(({ devices }) => devices.includes(sheet))?.devices ?? [];
  const isOfAll = sisters.some((other) => other !== sheet && sideOf(other) === told);
  return !isOfAll && sheet.position === (told === "left" ? gangs : 1) ? told : undefined;
}

function sideOf(sheet: Sheet): string | undefined {
  const [, side] =
    /(?<![\p{L}\p{N}])(left|right)(?: (?:gang|device|one))?$/iu.exec(nameOf(sheet).trim()) ?? [];
  return side?.toLowerCase();
}

/** Another order number in a name, of the letters and the length of the sheet's own. */
function numberIn(name: string, { order = "", mark = "", partKey = "" }: Sheet): string | undefined {
  const [, letters = "", digits = ""] = /^([A-Z]{1,5})[- ]?(\d{3,8})$/i.exec(order.trim()) ?? [];
  if (letters === "" || numberKey(name).includes(numberKey(order))) return undefined;
  const like = new RegExp(`(?<![\\p{L}\\p{N}])${letters}[- ]?\\d{${digits.length}}(?![\\p{L}\\p{N}])`, "iu");
  const [told] = like.exec(name) ?? [];
  const isElse = told !== undefined && plainText(mark + partKey).includes(plainText(told));
  const isSeries = new RegExp(`^${letters}[- ]?\\d`, "i").test(mark.trim());
  return isElse || isSeries ? undefined : told;
}

/** The words that a sheet says elsewhere; they may be what its file is called after. */
function wordsOn({ project = "", order = "", mark = "", contact, billTo, shipTo, legends }: Sheet): string[] {
  return [
    project,
    order,
    mark,
    contact.name ?? "",
    ...[billTo, shipTo].flatMap((to) => Object.values(to)),
    ...legends.flatMap(({ rows }) => rows),
  ].flatMap(wordsIn);
}

function wordsIn(text: string): string[] {
  return text.toUpperCase().match(/\p{L}+/gu) ?? [];
}
