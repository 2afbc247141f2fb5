import { type Sheet, saidAt } from "../../trade/sheet.ts";
import { calledElsewhere } from "../called-elsewhere.ts";
import { at, defineOrderCheck, labelOf, type OrderSubject } from "../check.ts";
import { quotedChoice } from "../choice-name.ts";
import { namedElsewhere } from "../named-elsewhere.ts";
import { contradictedIn } from "../named-goods.ts";
import { roomsIn } from "../named-room.ts";
import { subject } from "../sample.ts";

/** An order in which one sheet has taken the place of another. */
function replacing(old: Sheet, sheet: Sheet, others: readonly Sheet[] = []): OrderSubject {
  const now: Sheet = { notes: "left wall", ...sheet, id: "2/1" };
  return { ...subject([now, ...others]), replaced: [{ old, now, how: "place" }] };
}

export const fileNameContradicts = defineOrderCheck({
  id: "file-name-contradicts",
  title: "A file's name says another place than its sheet",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Whoever saves a sheet as “pos 1” means position 1. Names are often left as they were, so it is not asked about where another file is rightly named so, or where the sheet came later than others of its station. A file that is called after another room than its plate names is asked about only where other files are called after their plates. A sheet that is called after another place and takes that of one sent before would make that one vanish.",
  wordings: {
    position: {
      says: "The file is called {file}, but “{field}” says {position}.",
      fix: "If {position} is wrong, send the sheet again with the right position.",
    },
    mark: {
      says: "The file is called {file}, but “{field}” says {mark}.",
      fix: "If {mark} is wrong, send the sheet again with the right station mark.",
    },
    taken: {
      says: "The file is called {file}, but “{field}” says {typed}, so it takes the place of {old}, sent before.",
      fix: "If {typed} is wrong, send the sheet again with the right one, and {old} once more.",
      stays: true,
    },
    same: {
      says: "{kept} came under the name of another place too: {files}. They say the same, so one is made.",
      fix: "If another place should have a sheet of its own, fill it in and send it.",
      stays: true,
    },
    goods: {
      says: "A file's name says “{told}”, but “{field}” says {typed}: {files}.",
      fix: "If the sheet is wrong, correct “{field}” and send it again.",
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
    {
      shows: "an old name, where the sheet before had it too",
      given: ({ deviceAt, plate }) =>
        replacing(deviceAt(2, { file: "S-104 pos 1.pdf" }), deviceAt(2, { file: "S-104 pos 1.pdf" }), [
          plate(),
          deviceAt(1),
        ]),
    },
    {
      shows: "a sheet that came again as it was, under another name",
      given: ({ deviceAt, plate }) =>
        replacing(deviceAt(2), deviceAt(2, { file: "S-104 pos 1.pdf", notes: "" }), [plate(), deviceAt(1)]),
    },
    {
      shows: "a copy under the name of a place that another sheet has",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2), deviceAt(1, { id: "1/8", file: "S-104 pos 2.pdf" })]),
    },
    {
      shows: "names that say of the goods what the sheets say, or speak of something else",
      given: ({ deviceAt, plate }) =>
        subject([
          plate({ file: "BW-2207 4-gang plate.pdf" }),
          deviceAt(1, { file: "S-104 left.pdf" }),
          deviceAt(2, { file: "next to 3-gang plate.pdf" }),
        ]),
    },
    {
      shows: "marks of one digit, and numbers that are none",
      given: ({ aloneDevice }) =>
        subject([
          aloneDevice({ id: "1/1", mark: "S-1", file: "scan 2.pdf" }),
          aloneDevice({ id: "1/2", mark: "S-2", file: "S-2 (1).pdf" }),
          aloneDevice({ id: "1/3", mark: "S-3", file: "S-4.pdf" }),
        ]),
    },
  ],
  failing: [
    {
      shows: "another position, in the place of a sheet sent before",
      given: ({ deviceAt, plate }) =>
        replacing(deviceAt(1), deviceAt(1, { file: "S-104 pos 2.pdf" }), [plate(), deviceAt(2)]),
      wording: "taken",
      says: "The file is called S-104 pos 2.pdf, but “Position” says 1, so it takes the place of S-104 pos 1.pdf, sent before.",
      fix: "If 1 is wrong, send the sheet again with the right one, and S-104 pos 1.pdf once more.",
    },
    {
      shows: "another station, in the place of a sheet sent before",
      given: ({ aloneDevice }) =>
        replacing(aloneDevice(), aloneDevice({ file: "S-111 new.pdf" }), [
          aloneDevice({ id: "1/8", mark: "S-111", file: "S-111.pdf" }),
        ]),
      wording: "taken",
      says: "The file is called S-111 new.pdf, but “Station mark” says S-110, so it takes the place of S-110.pdf, sent before.",
      fix: "If S-110 is wrong, send the sheet again with the right one, and S-110.pdf once more.",
    },
    {
      shows: "another station of one digit, of which no sheet came, in the place of a sheet sent before",
      given: ({ aloneDevice }) =>
        replacing(
          aloneDevice({ mark: "S-1", file: "S-1.pdf" }),
          aloneDevice({ mark: "S-1", file: "S-3 Bar.pdf" }),
        ),
      wording: "taken",
      says: "The file is called S-3 Bar.pdf, but “Station mark” says S-1, so it takes the place of S-1.pdf, sent before.",
      fix: "If S-1 is wrong, send the sheet again with the right one, and S-1.pdf once more.",
    },
    {
      shows: "another station of one digit, whose sheet is not called after it",
      given: ({ aloneDevice }) =>
        subject([
          aloneDevice({ id: "1/1", mark: "S-1", file: "S-2.pdf" }),
          aloneDevice({ id: "1/2", mark: "S-2", file: "left.pdf" }),
        ]),
      wording: "mark",
      says: "The file is called S-2.pdf, but “Station mark” says S-1.",
      fix: "If S-1 is wrong, send the sheet again with the right station mark.",
    },
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
      shows: "another number of gangs",
      given: ({ plate }) => subject([plate({ file: "S-104 3-gang plate.pdf" })]),
      wording: "goods",
      says: "A file's name says “3 gangs”, but “Gangs of the plate” says “4”: S-104 3-gang plate.pdf.",
      fix: "If the sheet is wrong, correct “Gangs of the plate” and send it again.",
    },
    {
      shows: "another order number, on several files",
      given: ({ deviceAt, plate }) =>
        subject([plate({ file: "BW-2208 plate.pdf" }), deviceAt(1, { file: "BW-2208 pos 1.pdf" })]),
      wording: "goods",
      says: "A file's name says “BW-2208”, but “Order number” says “BW-2207”: BW-2208 plate.pdf and BW-2208 pos 1.pdf.",
      fix: "If the sheet is wrong, correct “Order number” and send it again.",
    },
    {
      shows: "one sheet saved for every position of a plate",
      given: ({ aloneDevice }) =>
        subject(
          [1, 2, 3].map((n) => aloneDevice({ id: `1/${n}`, mark: "S-101", file: `S-101 pos ${n}.pdf` })),
        ),
      wording: "same",
      says: "S-101 pos 1.pdf came under the name of another place too: S-101 pos 2.pdf and S-101 pos 3.pdf. They say the same, so one is made.",
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
  *find({ order, replaced = [] }, catalogue, say) {
    const fileOf = ({ named, file }: Sheet): string => named ?? file;
    yield* roomsIn(order, catalogue).map(({ sheet, legend }) =>
      say("room", { file: fileOf(sheet), legend }, at(sheet, "row.plate.1")),
    );
    yield* calledElsewhere(order).map(({ kept, copies }) =>
      say("same", { kept: kept.file, files: copies.map(fileOf) }, at(kept)),
    );
    yield* contradictedIn(order, replaced, catalogue).map(({ sheets: [first, ...more], place, told }) =>
      say(
        "goods",
        {
          told,
          field: labelOf(first, place),
          typed: quotedChoice(saidAt(first, place), catalogue),
          files: [first, ...more].map(fileOf),
        },
        [first, ...more].flatMap((sheet) => at(sheet, place)),
      ),
    );
    yield* namedElsewhere(order, replaced).map(({ sheet, place, typed, old }) => {
      const [file, field, spots] = [fileOf(sheet), labelOf(sheet, place), at(sheet, place)];
      if (old !== undefined) return say("taken", { file, field, typed, old: old.file }, spots);
      return place === "position"
        ? say("position", { file, field, position: typed }, spots)
        : say("mark", { file, field, mark: typed }, spots);
    });
  },
});
