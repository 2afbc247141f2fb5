import { plainText } from "../../orders/keys.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import { at, defineOrderCheck, labelOf } from "../check.ts";
import { subject } from "../sample.ts";

export const standaloneInPlate = defineOrderCheck({
  id: "standalone-in-plate",
  title: "A device standing alone carries the mark of a multi-gang plate",
  severity: "stops",
  sender: "settles",
  source: { kind: "common practice" },
  why: "A device that stands alone gets a one-gang plate of its own. Meant for the big plate it would arrive with a plate too many, and leave a hole in the other.",
  wordings: {
    marked: {
      says: "This device is marked as standing alone, but {station} is the mark of a multi-gang plate.",
      fix: "If it goes into that plate, mark it so and give its position; if not, give it its own station mark. Send it again.",
    },
    numbered: {
      says: "This device is marked as standing alone, but “{field}” says {number}. It would be cut with a plate of its own, of one gang.",
      fix: "If it goes into a plate, mark it so and send it again, with the sheet of the plate.",
      severity: "asks",
    },
    positions: {
      says: "“{field}” names positions of one plate: {marks}. Each is marked as standing alone and would be cut with a plate of its own.",
      fix: "If they go into one plate, mark them so, give each its position and send them again, with the sheet of the plate.",
      severity: "asks",
    },
  },
  passing: [
    {
      shows: "devices in their plate and one alone",
      given: ({ aloneDevice, completeOrder }) => subject([...completeOrder(), aloneDevice()]),
    },
    {
      shows: "a device alone as the first of one",
      given: ({ aloneDevice }) => subject([aloneDevice({ gangs: 1, position: 1 })]),
    },
    {
      shows: "places of work, and the first of one",
      given: ({ aloneDevice }) =>
        subject(
          ["Teller pos 1", "Teller pos 2", "S-110 pos 1"].map((mark, n) =>
            aloneDevice({ mark, id: `1/${n + 1}` }),
          ),
        ),
    },
  ],
  failing: [
    {
      shows: "a device alone at the station of a plate",
      given: ({ aloneDevice, plate }) => subject([plate(), aloneDevice({ mark: "S 104" })]),
      wording: "marked",
      says: "This device is marked as standing alone, but S-104 is the mark of a multi-gang plate.",
    },
    {
      shows: "a device alone at a station whose plate is still to come",
      given: ({ aloneDevice, device }) => subject([device(), aloneDevice({ mark: "S-104" })]),
      wording: "marked",
      says: "This device is marked as standing alone, but S-104 is the mark of a multi-gang plate.",
    },
    {
      shows: "a device alone, as the first of four gangs",
      given: ({ aloneDevice }) => subject([aloneDevice({ gangs: 4, position: 1 })]),
      wording: "numbered",
      says: "This device is marked as standing alone, but “Gangs of the plate” says 4. It would be cut with a plate of its own, of one gang.",
    },
    {
      shows: "a device alone at the second position",
      given: ({ aloneDevice }) => subject([aloneDevice({ position: 2 })]),
      wording: "numbered",
      says: "This device is marked as standing alone, but “Position” says 2. It would be cut with a plate of its own, of one gang.",
    },
    {
      shows: "a device alone whose mark says another position than the first",
      given: ({ aloneDevice }) => subject([aloneDevice({ mark: "S-110 pos 2" })]),
      wording: "numbered",
      says: "This device is marked as standing alone, but “Station mark” says S-110 pos 2. It would be cut with a plate of its own, of one gang.",
    },
    {
      shows: "devices alone whose marks say the positions of one plate",
      given: ({ aloneDevice }) =>
        subject([1, 2].map((n) => aloneDevice({ mark: `S-110 pos ${n}`, id: `1/${n}` }))),
      wording: "positions",
      says: "“Station mark” names positions of one plate: S-110 pos 1 and S-110 pos 2. Each is marked as standing alone and would be cut with a plate of its own.",
    },
  ],
  *find({ order }, _, say) {
    const alone = order.stations.flatMap(({ plates, devices }) => {
      const isPlate = plates.length > 0 || devices.some(goesIntoPlate);
      return isPlate ? [] : devices.filter(({ standing }) => standing === "alone");
    });
    for (const [plate, sheets] of Map.groupBy(alone, ({ mark }) => placeIn(mark)?.plate)) {
      const [first, ...more] = sheets;
      if (plate === undefined || first?.mark === undefined) continue;
      const field = labelOf(first, "mark");
      const spots = sheets.flatMap((sheet) => at(sheet, "standing", "mark"));
      if (more.length > 0)
        yield say("positions", { field, marks: sheets.map(({ mark = "" }) => mark) }, spots);
      else if (placeIn(first.mark)?.position !== 1)
        yield say("numbered", { field, number: first.mark }, spots);
    }
    for (const { mark: station, plates, devices } of order.stations) {
      const isPlate = plates.length > 0 || devices.some(goesIntoPlate);
      for (const sheet of devices.filter(({ standing }) => standing === "alone")) {
        const place = (["gangs", "position"] as const).find((one) => (sheet[one] ?? 1) > 1);
        if (isPlate) yield say("marked", { station }, at(sheet, "standing", "mark"));
        else if (place !== undefined)
          yield say(
            "numbered",
            { field: labelOf(sheet, place), number: sheet[place] ?? 0 },
            at(sheet, "standing", place),
          );
      }
    }
  },
});

/** "S-1 pos 2", "S-1 (2 of 4)". A mark without a digit before the position may be a place of work: "Teller pos 2". */
const positioned =
  /^(.*\d.*?)[\s,.(/-]+(?:pos(?:ition|n)?|#?(?=\d ?of ?[2-9]\b))[\s.#-]*0?(\d)(?:\s*of\s*\d)?\W*$/iu;
/** "LOBBY gang 2". */
const opened = /^(.+?)[\s,.(/-]+(?:gang|opening)[\s.#-]*0?(\d)(?:\s*of\s*\d)?\W*$/iu;

/** The plate and the position that a mark names. */
function placeIn(mark = ""): { readonly plate: string; readonly position: number } | undefined {
  const [, plate, position] = positioned.exec(mark) ?? opened.exec(mark) ?? [];
  return plate === undefined ? undefined : { plate: plainText(plate), position: Number(position) };
}
