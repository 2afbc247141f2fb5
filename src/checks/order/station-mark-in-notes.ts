import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject, without } from "../sample.ts";

const noted = (sample: Sample) => ({ ...without(sample.device(), "mark"), notes: "Goes into plate S-104." });

export const stationMarkInNotes = defineOrderCheck({
  id: "station-mark-in-notes",
  title: "Only the notes name the station",
  severity: "asks",
  source: { kind: "house" },
  why: "A mark in the notes may be meant as something else, such as a neighbour. A device in the wrong plate is found only on the wall.",
  wordings: {
    noted: {
      says: "Only the notes of {file} name its station, {station}.",
      fix: "Confirm that it belongs to {station}.",
    },
  },
  passing: [
    { shows: "a mark in its own field", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "notes that speak of another station",
      given: ({ device }) => subject([device({ notes: "Same finish as plate S-110." })]),
    },
  ],
  failing: [
    {
      shows: "the mark in the notes",
      given: (sample) => subject([sample.plate(), noted(sample)]),
      wording: "noted",
      says: "Only the notes of S-104 pos 2.pdf name its station, S-104.",
      fix: "Confirm that it belongs to S-104.",
    },
  ],
  *find({ order }, _, say) {
    for (const { mark: station, plates, devices, byNotes } of order.stations)
      for (const sheet of [...plates, ...devices])
        if (byNotes.includes(sheet.id)) yield say("noted", { file: sheet.file, station }, at(sheet, "notes"));
  },
});
