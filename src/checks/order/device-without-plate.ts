import { goesIntoPlate } from "../../orders/standing.ts";
import { stillMissing } from "../../orders/still-missing.ts";
import { at, defineOrderCheck, labelOf } from "../check.ts";
import { type Sample, subject, unprinted, without } from "../sample.ts";

const unmarked = (sample: Sample) => without(sample.device(), "mark");

export const deviceWithoutPlate = defineOrderCheck({
  id: "device-without-plate",
  title: "A device goes into a plate that nobody has ordered",
  severity: "asks",
  source: { kind: "common practice" },
  why: "A multi-gang plate is ordered on a sheet of its own. Without it there is nothing to put the device into.",
  wordings: {
    unordered: {
      says: "Is the plate sheet for {station} still to come, or do its devices stand alone? {count:device sheet} came for it: {files}.",
      fix: "If the plate is to come, send its sheet. If a device stands alone, mark it so and send it again; if its station mark is wrong, correct it.",
    },
    loose: {
      says: "Nothing on this sheet says which plate the device goes into.",
      fix: "Write the station mark of its plate into “{label}” and send the sheet again.",
      severity: "stops",
    },
  },
  passing: [
    { shows: "a plate with its devices", given: ({ completeOrder }) => subject(completeOrder()) },
    { shows: "a device standing alone", given: ({ aloneDevice }) => subject([aloneDevice()]) },
    {
      shows: "a device whose station mark is a slip for one with a plate",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1), deviceAt(2), deviceAt(3), deviceAt(4, { mark: "S-140" })]),
    },
    {
      shows: "two devices whose plate came with the mark of another, which is stopped",
      given: ({ deviceAt, plate, otherFinish }) =>
        subject([
          plate({ gangs: 2 }),
          plate({ gangs: 2, id: "1/8", finish: otherFinish }),
          ...["S-104", "S-105"].flatMap((mark, i) =>
            [1, 2].map((n) => deviceAt(n, { mark, gangs: 2, id: `1/${n + 2 * i + 1}` })),
          ),
        ]),
    },
    {
      shows: "a device whose order number is a slip for the one with its plate",
      given: ({ deviceAt, plate }) =>
        subject([deviceAt(4, { order: "BW-2270" })], [plate(), deviceAt(1), deviceAt(2), deviceAt(3)]),
    },
  ],
  failing: [
    {
      shows: "two devices and no plate",
      given: ({ deviceAt }) => subject([deviceAt(1), deviceAt(2)]),
      wording: "unordered",
      says: "Is the plate sheet for S-104 still to come, or do its devices stand alone? 2 device sheets came for it: S-104 pos 1.pdf and S-104 pos 2.pdf.",
    },
    {
      shows: "a device without a station mark",
      given: (sample) => subject([sample.plate(), unmarked(sample)]),
      wording: "loose",
      fix: "Write the station mark of its plate into “Station mark” and send the sheet again.",
    },
    {
      shows: "a form that has no place for the mark",
      given: (sample) => subject([unprinted(unmarked(sample), "mark")]),
      wording: "loose",
      fix: "Write the station mark of its plate into “Notes” and send the sheet again.",
    },
  ],
  *find({ order, others }, _, say) {
    // Where mark or order number look like a slip for those of the plate, or a plate too many carries another mark,
    // that is the question to ask.
    const missing = stillMissing(order, others);
    for (const station of order.stations) {
      const devices = station.devices.filter(goesIntoPlate);
      if (!missing.some(({ station: mark, kind }) => kind === "plate" && mark === station.mark)) continue;
      yield say(
        "unordered",
        { station: station.mark, count: devices.length, files: devices.map(({ file }) => file) },
        devices.flatMap((device) => at(device, "mark")),
      );
    }
    for (const sheet of order.loose) {
      // Some forms have no field for the mark; then it is read from the notes.
      const place = sheet.prints.mark === undefined ? "notes" : "mark";
      yield say("loose", { label: labelOf(sheet, place) }, at(sheet, place));
    }
  },
});
