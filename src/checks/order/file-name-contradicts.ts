import type { Catalogue } from "../../catalogue/catalogue.ts";
import { byId, letterOf } from "../../orders/ids.ts";
import { plainText } from "../../orders/keys.ts";
import { isMarked } from "../../orders/placed.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import type { Order, Station } from "../../trade/order.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck, labelOf } from "../check.ts";
import { nameOf, otherMarkIn, positionIn } from "../named-place.ts";
import { subject } from "../sample.ts";

export const fileNameContradicts = defineOrderCheck({
  id: "file-name-contradicts",
  title: "A file's name says another place than its sheet",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Whoever saves a sheet as “pos 1” means position 1. Names are often left as they were, so it is not asked about where another file is rightly named so, or where the sheet came later than others of its station. A file that is called after another room than its plate names is asked about only where other files are called after their plates.",
  wordings: {
    position: {
      says: "The file is called {file}, but “{field}” says {position}.",
      fix: "If {position} is wrong, send the sheet again with the right position.",
    },
    mark: {
      says: "The file is called {file}, but “{field}” says {mark}.",
      fix: "If {mark} is wrong, send the sheet again with the right station mark.",
    },
    room: {
      says: "The file is called {file}, but its plate says “{legend}”.",
      fix: "If “{legend}” is wrong, send the sheet again with the right legend.",
    },
  },
  passing: [
    {
      shows: "names of the room in other words, of the whole job, and of a room that two stations share",
      given: ({ aloneDevice }) =>
        subject([
          aloneDevice({ mark: "S-111", file: "S-111 Kitchen.pdf" }, { plate: ["KITCHEN"] }),
          aloneDevice({ mark: "S-112", file: "S-112 Kitchen.pdf" }, { plate: ["PANTRY"] }),
          aloneDevice({ mark: "S-113", file: "S-113 Library.pdf" }, { plate: ["LIB"] }),
          aloneDevice({ mark: "S-114", file: "S-114 Larkspur.pdf" }, { plate: ["LOBBY"] }),
        ]),
    },
    { shows: "names that say the same", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "names with several positions, with a count of files, with the neighbour",
      given: ({ deviceAt, plate }) =>
        subject([
          plate({ file: "S-104 like S-110.pdf" }),
          deviceAt(1, { file: "S-104 pos 1-4.pdf" }),
          deviceAt(2, { file: "device sheet (3).pdf" }),
        ]),
    },
    {
      shows: "an old name, where the place that it tells is taken",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { file: "S-104 pos 1.pdf" })]),
    },
    {
      shows: "an old name on a sheet that was sent again later",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1, { id: "2/1", file: "S-104 pos 3.pdf" })]),
    },
  ],
  failing: [
    {
      shows: "another room than the plate names, beside a file that is called after its plate",
      given: ({ aloneDevice }) =>
        subject([
          aloneDevice({ mark: "S-111", file: "S-111 Laundry.pdf" }, { plate: ["LAUNDRY"] }),
          aloneDevice({ mark: "S-112", file: "S-112 Pantry.pdf" }, { plate: ["MAIL ROOM"] }),
        ]),
      wording: "room",
      says: "The file is called S-112 Pantry.pdf, but its plate says “MAIL ROOM”.",
      fix: "If “MAIL ROOM” is wrong, send the sheet again with the right legend.",
    },
    {
      shows: "the room of another plate",
      given: ({ aloneDevice }) =>
        subject([
          aloneDevice({ mark: "S-111", file: "S-111 kitchen.pdf" }, { plate: ["LOBBY"] }),
          aloneDevice({ mark: "S-112", file: "S-112.pdf" }, { plate: ["KITCHEN"] }),
        ]),
      wording: "room",
      says: "The file is called S-111 kitchen.pdf, but its plate says “LOBBY”.",
      fix: "If “LOBBY” is wrong, send the sheet again with the right legend.",
    },
    {
      shows: "another position, of which no sheet came",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(2, { file: "left_position-01.pdf" })]),
      wording: "position",
      says: "The file is called left_position-01.pdf, but “Position” says 2.",
      fix: "If 2 is wrong, send the sheet again with the right position.",
    },
    {
      shows: "another station, of which no sheet came",
      given: ({ aloneDevice }) => subject([aloneDevice({ file: "S-111.pdf" })]),
      wording: "mark",
      says: "The file is called S-111.pdf, but “Station mark” says S-110.",
      fix: "If S-110 is wrong, send the sheet again with the right station mark.",
    },
  ],
  *find({ order }, catalogue, say) {
    yield* roomsIn(order, catalogue).map(({ sheet, legend }) =>
      say("room", { file: sheet.named ?? sheet.file, legend }, at(sheet, "row.plate.1")),
    );
    const taken = placesIn(order);
    for (const station of order.stations) {
      const members = [...station.plates, ...station.devices];
      for (const sheet of members.filter(isMarked)) {
        // What was made of a list has its name from us.
        if (sheet.list !== undefined) continue;
        const told = toldBy(sheet);
        const own = placeOf(sheet);
        if (told === undefined || told === own || (taken.get(own)?.length ?? 0) > 1) continue;
        const there = taken.get(told) ?? [];
        const isOld = !isFirstHere(sheet, station) || there.some((other) => namesItself(other, told));
        if (isOld && !there.some((other) => toldBy(other) === own)) continue;
        const { file, position } = { file: sheet.named ?? sheet.file, ...positionOf(sheet) };
        if (otherMarkIn(nameOf(sheet), sheet) === undefined && position !== undefined)
          yield say("position", { file, field: labelOf(sheet, "position"), position }, at(sheet, "position"));
        else yield say("mark", { file, field: labelOf(sheet, "mark"), mark: sheet.mark }, at(sheet, "mark"));
      }
    }
  },
});

/** A device that stands alone, what its plate says, and what its file is called besides its place. */
interface Titled {
  readonly sheet: Sheet;
  readonly legend: string;
  readonly plate: readonly string[];
  readonly title: readonly string[];
}

/** Devices whose files are called after another room than their plates. */
function roomsIn(order: Order, { words }: Pick<Catalogue, "words">): Titled[] {
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

/** Sheets by their place. */
function placesIn({ stations }: Order): Map<string, readonly Sheet[]> {
  return Map.groupBy(
    stations.flatMap(({ plates, devices }): Sheet[] => [...plates, ...devices]),
    (sheet) => placeOf(sheet),
  );
}

/** The place of a sheet by its fields, or with what its file's name says instead. */
function placeOf(sheet: Sheet, { mark, position } = positionOf(sheet)): string {
  return `${plainText(mark)} ${sheet.kind} ${position ?? ""}`;
}

function positionOf(sheet: Sheet): { mark: string; position: number | undefined } {
  const position = sheet.kind === "device" && goesIntoPlate(sheet) ? sheet.position : undefined;
  return { mark: sheet.mark ?? "", position };
}

/** The place that a file's name tells; undefined where it tells none. */
function toldBy(sheet: Sheet): string | undefined {
  const name = nameOf(sheet);
  const { mark, position } = positionOf(sheet);
  const [otherMark, told] = [otherMarkIn(name, sheet), position === undefined ? undefined : positionIn(name)];
  if (otherMark === undefined && told === undefined) return undefined;
  return placeOf(sheet, { mark: otherMark ?? mark, position: told ?? position });
}

/** Whether the file of a sheet is named after the place that the sheet has. */
function namesItself(sheet: Sheet, place: string): boolean {
  const { mark, position } = positionOf(sheet);
  return position === undefined
    ? plainText(nameOf(sheet)).includes(plainText(mark))
    : toldBy(sheet) === place;
}

/** Whether the sheet came with the first of its station; one that came later may be an old file, mended. */
function isFirstHere(sheet: Sheet, { plates, devices }: Station): boolean {
  return [...plates, ...devices].every(({ id }) => byId(letterOf(sheet.id), letterOf(id)) <= 0);
}
