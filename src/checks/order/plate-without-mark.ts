import { at, defineOrderCheck, labelOf } from "../check.ts";
import { isBlank } from "../required.ts";
import { type Sample, subject, unprinted, without } from "../sample.ts";

const unmarked = (sample: Sample) => without(sample.plate(), "mark");

export const plateWithoutMark = defineOrderCheck({
  id: "plate-without-mark",
  title: "A plate sheet without a station mark",
  severity: "stops",
  source: { kind: "common practice" },
  why: "The station mark ties a plate to its devices. Without it nobody can tell which devices go into this plate.",
  wordings: {
    unmarked: {
      says: "Nothing on this sheet says which station the plate is for.",
      fix: "Write the station mark into “{label}”, as on its device sheets, and send the sheet again.",
    },
  },
  passing: [
    { shows: "a plate with its mark", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "a blank sheet, which has a check of its own",
      given: ({ blankPlate }) => subject([blankPlate()]),
    },
    {
      shows: "a mark in the notes",
      given: (sample) => subject([{ ...unmarked(sample), notes: "Station S-104" }]),
    },
  ],
  failing: [
    {
      shows: "no mark anywhere",
      given: (sample) => subject([unmarked(sample)]),
      wording: "unmarked",
      fix: "Write the station mark into “Station mark”, as on its device sheets, and send the sheet again.",
    },
    {
      shows: "a form without a place for it",
      given: (sample) => subject([unprinted(unmarked(sample), "mark")]),
      wording: "unmarked",
      fix: "Write the station mark into “Notes”, as on its device sheets, and send the sheet again.",
    },
  ],
  *find({ order }, _, say) {
    for (const { mark, plates } of order.stations) {
      if (mark !== "") continue;
      for (const sheet of plates.filter((one) => !isBlank(one))) {
        // Some forms have no field for the mark; then it is read from the notes.
        const place = sheet.prints.mark === undefined ? "notes" : "mark";
        yield say("unmarked", { label: labelOf(sheet, place) }, at(sheet, place));
      }
    }
  },
});
