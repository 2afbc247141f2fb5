import { stillMissing } from "../../orders/still-missing.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const plateMissingDevices = defineOrderCheck({
  id: "plate-missing-devices",
  title: "A plate has positions without a device sheet",
  severity: "notes",
  verdict: "waiting",
  source: { kind: "common practice" },
  why: "Every gang of a plate takes a device, and every device its own sheet. Nothing is cut until all of them are here, because plate and devices are made together.",
  wordings: {
    one: {
      says: "Plate {plate} has {gangs:gang}; the device sheet for position {position} is still to come.",
      fix: "Send the device sheet for position {position}.",
    },
    more: {
      says: "Plate {plate} has {gangs:gang}; device sheets for positions {positions} are still to come.",
      fix: "Send one device sheet for each of these positions.",
    },
  },
  passing: [
    {
      shows: "a plate of four with four device sheets",
      given: ({ completeOrder }) => subject(completeOrder()),
    },
    {
      shows: "a plate whose last device came with the mark mistyped, which is asked about",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2), deviceAt(3), deviceAt(4, { mark: "S-140" })]),
    },
  ],
  failing: [
    {
      shows: "a plate of four with three device sheets",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1), deviceAt(2), deviceAt(4)]),
      wording: "one",
      says: "Plate S-104 has 4 gangs; the device sheet for position 3 is still to come.",
      fix: "Send the device sheet for position 3.",
    },
    {
      shows: "a plate of four alone",
      given: ({ plate }) => subject([plate()]),
      wording: "more",
      says: "Plate S-104 has 4 gangs; device sheets for positions 1 to 4 are still to come.",
    },
  ],
  *find({ order, others }, _, say) {
    const missing = Map.groupBy(stillMissing(order, others), ({ station }) => station);
    for (const station of order.stations) {
      const [sheet] = station.plates;
      if (sheet?.gangs === undefined) continue;
      const positions = (missing.get(station.mark) ?? []).flatMap(({ position }) => position ?? []);
      const [position, ...more] = positions;
      const facts = { plate: station.mark, gangs: sheet.gangs };
      if (position === undefined) continue;
      if (more.length === 0) yield say("one", { ...facts, position }, at(sheet, "gangs"));
      else yield say("more", { ...facts, positions: positions.map(String) }, at(sheet, "gangs"));
    }
  },
});
