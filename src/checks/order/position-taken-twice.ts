import { doubledPositions } from "../../orders/doubled.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const positionTakenTwice = defineOrderCheck({
  id: "position-taken-twice",
  title: "Two device sheets claim one place",
  severity: "stops",
  source: { kind: "common practice" },
  why: "One opening takes one device. When a sheet is copied for the next position and the position is forgotten, the wrong device would be left out.",
  wordings: {
    position: {
      says: "{count:device sheet} claim position {position} of plate {station}: {files}.",
      fix: "Correct the wrong position and send each of these sheets again: none of them counts now. Leave out what is not wanted.",
    },
    forgotten: {
      says: "{count:device sheet} claim position {position} of plate {station}: {files}. None came for position {positions}.",
      fix: "Correct the wrong position and send each of these sheets again: none of them counts now.",
    },
    elsewhere: {
      says: "{count:device sheet} claim position {position} of plate {station}: {files}. None came for that of plate {other}.",
      fix: "Correct the wrong station mark and send each of these sheets again: none of them counts now.",
    },
    alone: {
      says: "{count:device} standing alone carry the station mark {station}: {files}.",
      fix: "Give each its own station mark and send each of these sheets again: none of them counts now. Leave out what is not wanted.",
    },
  },
  passing: [
    { shows: "four devices in four positions", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "one sheet under two names",
      given: ({ completeOrder, deviceAt }) =>
        subject([...completeOrder(), deviceAt(2, { id: "1/8", file: "copy.pdf" })]),
    },
    {
      shows: "two devices standing alone at two stations",
      given: ({ aloneDevice }) => subject([aloneDevice(), aloneDevice({ id: "1/10", mark: "S-111" })]),
    },
  ],
  failing: [
    {
      shows: "a copied sheet with the old position",
      given: ({ completeOrder, deviceAt, otherFinish }) =>
        subject([...completeOrder(), deviceAt(2, { id: "1/8", file: "copy.pdf", finish: otherFinish })]),
      wording: "position",
      says: "2 device sheets claim position 2 of plate S-104: S-104 pos 2.pdf and copy.pdf.",
    },
    {
      shows: "a copied sheet with the old position, and none for its own",
      given: ({ completeOrder, deviceAt, otherFinish }) =>
        subject([
          ...completeOrder().slice(0, -1),
          deviceAt(3, { id: "1/8", file: "S-104 right.pdf", finish: otherFinish }),
        ]),
      wording: "forgotten",
      says: "2 device sheets claim position 3 of plate S-104: S-104 pos 3.pdf and S-104 right.pdf. None came for position 4.",
    },
    {
      shows: "a copied sheet with the old station mark",
      given: ({ completeOrder, otherFinish }) =>
        subject([
          ...completeOrder(),
          ...completeOrder().map((sheet) => ({
            ...sheet,
            id: `1${sheet.id}`,
            file: sheet.file.replace("S-104", "S-105"),
            finish: otherFinish,
            mark: sheet.id === "1/3" ? "S-104" : "S-105",
          })),
        ]),
      wording: "elsewhere",
      says: "2 device sheets claim position 2 of plate S-104: S-104 pos 2.pdf and S-105 pos 2.pdf. None came for that of plate S-105.",
    },
    {
      shows: "two different devices standing alone at one station",
      given: ({ aloneDevice, otherFinish }) =>
        subject([aloneDevice(), aloneDevice({ id: "1/10", file: "copy.pdf", finish: otherFinish })]),
      wording: "alone",
      says: "2 devices standing alone carry the station mark S-110: S-110.pdf and copy.pdf.",
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
    }
    for (const { station, position, claims, positions, other } of doubledPositions(order)) {
      const files = claims.map(({ file }) => file);
      const facts = { station: station.mark, position, count: claims.length, files };
      const spots = claims.flatMap((device) => at(device, "position"));
      if (positions.length > 0) yield say("forgotten", { ...facts, positions: positions.map(String) }, spots);
      else if (other !== undefined) yield say("elsewhere", { ...facts, other: other.mark }, spots);
      else yield say("position", facts, spots);
    }
  },
});
