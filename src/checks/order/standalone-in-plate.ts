import { goesIntoPlate } from "../../orders/standing.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const standaloneInPlate = defineOrderCheck({
  id: "standalone-in-plate",
  title: "A device standing alone carries the mark of a multi-gang plate",
  severity: "stops",
  source: { kind: "common practice" },
  why: "A device that stands alone gets a one-gang plate of its own. Meant for the big plate it would arrive with a plate too many, and leave a hole in the other.",
  wordings: {
    marked: {
      says: "This device is marked as standing alone, but {station} is the mark of a multi-gang plate.",
      fix: "If it goes into that plate, mark it so and give its position; if not, give it its own station mark. Send it again.",
    },
  },
  passing: [
    {
      shows: "devices in their plate and one alone",
      given: ({ aloneDevice, completeOrder }) => subject([...completeOrder(), aloneDevice()]),
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
  ],
  *find({ order }, _, say) {
    for (const { mark: station, plates, devices } of order.stations) {
      if (plates.length === 0 && !devices.some(goesIntoPlate)) continue;
      for (const sheet of devices)
        if (sheet.standing === "alone") yield say("marked", { station }, at(sheet, "standing", "mark"));
    }
  },
});
