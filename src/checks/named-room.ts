import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";
import { nameOf } from "./named-place.ts";

/** A device that stands alone, what its plate says, and what its file is called besides its place. */
interface Titled {
  readonly sheet: Sheet;
  readonly legend: string;
  readonly plate: readonly string[];
  readonly title: readonly string[];
}

/** Devices whose files are called after another room than their plates. */
export function roomsIn(order: Order, { words }: Pick<Catalogue, "words">): Titled[] {
  const project = new Set(
    order.stations.flatMap(({ devices }) => devices.flatMap((one) => wordsIn(one.project ?? ""))),
  );
  const all = order.stations
    .flatMap(({ devices }) => devices)
    .flatMap((sheet): Titled[] => {
      const legend =
        sheet.legends
          .find(({ face }) => face === "plate")
          ?.rows.join(" ")
          .trim() ?? "";
      const title = wordsIn(nameOf(sheet)).filter((word) => !ofFiles.has(word));
      return legend === "" ? [] : [{ sheet, legend, plate: wordsIn(legend), title }];
    });
  const isCalledAfter = ({ title }: Titled, { plate }: Titled): boolean =>
    title.length > 0 && title.every((word) => plate.includes(word));
  return all.filter((one) => {
    const { title, plate, sheet } = one;
    const isOfRooms =
      sheet.list === undefined &&
      title.length > 0 &&
      [...title, ...plate].every((word) => words.isOfLegends(word)) &&
      title.every((word) => !project.has(word) && plate.every((other) => !areAlike(word, other)));
    const others = all.filter((other) => other !== one);
    const isShared = others.some(
      (other) => isCalledAfter(other, other) && other.title.join(" ") === title.join(" "),
    );
    return (
      isOfRooms &&
      !isShared &&
      others.some((other) => isCalledAfter(other, other) || isCalledAfter(one, other))
    );
  });
}

/** Words in names of files that name no room. */
const ofFiles = new Set(
  "DEVICE DEVICES PLATE PLATES SHEET SHEETS FORM FORMS ORDER STATION STATIONS KEYPAD BUTTON BUTTONS ALONE SINGLE POS POSITION GANG REV REVISED REVISION FINAL NEW OLD COPY CORRECTED FIXED FILLED SIGNED SCAN AND THE FOR OF IN AT NO V PDF".split(
    " ",
  ),
);

/** The words of a text in capitals, without marks and numbers. */
function wordsIn(text: string): string[] {
  return text.toUpperCase().match(/(?<![\p{L}\p{N}])\p{L}{2,}(?![\p{L}\p{N}]|[-_]?\d)/gu) ?? [];
}

/** Whether one word may be short for the other, or another form of it: KIT and KITCHEN, OFFICE and OFFICES, BR and BEDROOM. */
function areAlike(one: string, other: string): boolean {
  const [short = "", long = ""] = [one, other].toSorted((a, b) => a.length - b.length);
  let at = 0;
  for (const letter of long) if (letter === short[at]) at++;
  return short[0] === long[0] && at === short.length;
}
