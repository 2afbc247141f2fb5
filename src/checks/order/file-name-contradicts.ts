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
  why: "Whoever saves a sheet as “pos 1” means position 1. Names are often left as they were, so it is not asked about where another file is rightly named so, or where the sheet came later than others of its station.",
  wordings: {
    position: {
      says: "The file is called {file}, but “{field}” says {position}.",
      fix: "If {position} is wrong, send the sheet again with the right position.",
    },
    mark: {
      says: "The file is called {file}, but “{field}” says {mark}.",
      fix: "If {mark} is wrong, send the sheet again with the right station mark.",
    },
  },
  passing: [
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
  *find({ order }, _catalogue, say) {
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
