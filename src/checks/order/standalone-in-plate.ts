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
  ],
  *find({ order }, _, say) {
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
