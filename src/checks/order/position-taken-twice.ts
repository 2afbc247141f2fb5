import { goesIntoPlate } from "../../orders/standing.ts";
import { at, defineOrderCheck } from "../check.ts";
import { aloneDevice, completeOrder, deviceAt, subject } from "../sample.ts";

export const positionTakenTwice = defineOrderCheck({
  id: "position-taken-twice",
  title: "Two device sheets claim one place",
  severity: "stops",
  source: { kind: "common practice" },
  why: "One opening takes one device. When a sheet is copied for the next position and the position is forgotten, the wrong device would be left out.",
  wordings: {
    position: {
      says: "{count:device sheet} claim position {position} of plate {station}: {files}.",
      fix: "Correct the wrong position and send each of these sheets again, since none of them counts now; leave out what is not wanted.",
    },
    alone: {
      says: "{count:device} standing alone carry the station mark {station}: {files}.",
      fix: "Give each its own station mark and send each of these sheets again, since none of them counts now; leave out what is not wanted.",
    },
  },
  passing: [
    { shows: "four devices in four positions", given: subject(completeOrder()) },
    {
      shows: "one sheet under two names",
      given: subject([...completeOrder(), deviceAt(2, { id: "1/8", file: "copy.pdf" })]),
    },
    {
      shows: "two devices standing alone at two stations",
      given: subject([aloneDevice(), aloneDevice({ id: "1/10", mark: "S-111" })]),
    },
  ],
  failing: [
    {
      shows: "a copied sheet with the old position",
      given: subject([...completeOrder(), deviceAt(2, { id: "1/8", file: "copy.pdf", finish: "CHK" })]),
      wording: "position",
    },
    {
      shows: "two different devices standing alone at one station",
      given: subject([aloneDevice(), aloneDevice({ id: "1/10", file: "copy.pdf", finish: "CHK" })]),
      wording: "alone",
    },
  ],
  *find({ order }, _, say) {
    for (const { mark: station, devices } of order.stations) {
      const alone = devices.filter(({ standing }) => standing === "alone");
      if (alone.length > 1)
        yield say(
          "alone",
          { station, count: alone.length, files: alone.map(({ file }) => file) },
          alone.flatMap((device) => at(device, "mark")),
        );
      for (const [position, claims] of Map.groupBy(devices.filter(goesIntoPlate), (d) => d.position))
        if (position !== undefined && claims.length > 1)
          yield say(
            "position",
            { station, position, count: claims.length, files: claims.map(({ file }) => file) },
            claims.flatMap((device) => at(device, "position")),
          );
    }
  },
});
