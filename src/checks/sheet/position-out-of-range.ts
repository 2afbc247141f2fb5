import { mostGangs } from "../../catalogue/catalogue.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import { at, defineSheetCheck } from "../check.ts";

export const positionOutOfRange = defineSheetCheck({
  id: "position-out-of-range",
  title: "Gangs or position do not exist",
  severity: "stops",
  source: { kind: "common practice" },
  why: "Positions are counted from 1 at the left up to the gangs of the plate.",
  wordings: {
    position: {
      says: "There is no position {position}; positions go from 1 to {limit}.",
      fix: "Count the openings of the plate from the left and correct the position, or correct the gangs.",
    },
    gangs: {
      says: "The plate is to have {gangs:gang}; {limit} is the most that is made.",
      fix: "Correct the number, or split the station over several plates.",
    },
    single: {
      says: "The plate is to have {gangs:gang}; plate sheets and devices in a plate are for 2 or more.",
      fix: "Correct the number, or order a single device as standing alone: its device sheet orders the plate as well.",
    },
  },
  passing: [
    { shows: "the last position", given: ({ device }) => device({ position: 4 }) },
    { shows: "the widest plate", given: ({ plate, widest }) => plate({ gangs: widest }) },
    { shows: "a device alone, which has neither", given: ({ aloneDevice }) => aloneDevice() },
  ],
  failing: [
    {
      shows: "a position beyond the plate",
      given: ({ device }) => device({ position: 5 }),
      wording: "position",
      says: "There is no position 5; positions go from 1 to 4.",
    },
    {
      shows: "a position before the first",
      given: ({ device }) => device({ position: 0 }),
      wording: "position",
      says: "There is no position 0; positions go from 1 to 4.",
    },
    {
      shows: "a plate wider than any made",
      given: ({ plate, widest }) => plate({ gangs: widest + 1 }),
      wording: "gangs",
      says: "The plate is to have 7 gangs; 6 is the most that is made.",
    },
    {
      shows: "a plate sheet for one gang",
      given: ({ plate }) => plate({ gangs: 1 }),
      wording: "single",
      says: "The plate is to have 1 gang; plate sheets and devices in a plate are for 2 or more.",
    },
    {
      shows: "a device in a plate of one gang",
      given: ({ device }) => device({ gangs: 1, position: 1 }),
      wording: "single",
      says: "The plate is to have 1 gang; plate sheets and devices in a plate are for 2 or more.",
    },
  ],
  *find(sheet, catalogue, say) {
    if (sheet.kind === "device" && !goesIntoPlate(sheet)) return;
    const most = mostGangs(catalogue);
    const { gangs } = sheet;
    if (gangs !== undefined && gangs > most) yield say("gangs", { gangs, limit: most }, at(sheet, "gangs"));
    else if (gangs !== undefined && gangs < 2) yield say("single", { gangs }, at(sheet, "gangs"));
    else if (sheet.kind === "device" && sheet.position !== undefined) {
      const limit = gangs ?? most;
      const { position } = sheet;
      if (position < 1 || position > limit)
        yield say("position", { position, limit }, at(sheet, "position", "gangs"));
    }
  },
});
