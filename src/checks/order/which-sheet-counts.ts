import type { Aside } from "../../trade/order.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck, type OrderSubject } from "../check.ts";
import { subject, without } from "../sample.ts";

const later = { id: "2/1", file: "again.pdf" };

/** Two sheets of which the first is asked about. */
function asked(sheet: Sheet, beside: Sheet, why: Aside["why"]): OrderSubject {
  const { order, others } = subject([beside]);
  return { order: { ...order, aside: [{ sheet, beside, why }] }, others };
}

export const whichSheetCounts = defineOrderCheck({
  id: "which-sheet-counts",
  title: "Sheets of two letters contradict each other",
  severity: "asks",
  source: { kind: "house" },
  why: "An order may grow over several letters, and a newer sheet takes the place of the older one for the same place. Where two sheets contradict each other otherwise, only the buyer knows which is still wanted; nothing is dropped on a guess.",
  wordings: {
    dates: {
      says: "{file} and {other} are for one place. {file} came later, but its letter bears the earlier date.",
      fix: "Tell us which of the two counts, or send the right one again.",
    },
    forwarded: {
      says: "{file} and {other} are for one place, and stand in two letters that were forwarded as one. That of {other} is the later.",
      fix: "Tell us which of the two counts, or send the right one again.",
    },
    beyond: {
      says: "{file}, sent before, is for position {position}. {other} says that plate {station} has fewer gangs now.",
      fix: "Is this device to be left out? If not, send the plate sheet again with its gangs.",
    },
    alone: {
      says: "{file}, sent before, is for a device standing alone at {station}. {other} says that a multi-gang plate stands there now.",
      fix: "Is the device standing alone to be left out? If not, correct the station mark of one of the two.",
    },
    "in-plate": {
      says: "{file}, sent before, is for a device in a plate at {station}. {other} says that a device stands alone there now.",
      fix: "Is {file} to be left out? If not, correct the station mark of one of the two.",
    },
    again: {
      says: "{other} looks like {file} come again, which has faults and was sent before. More was changed than had to be.",
      fix: "Reply that it takes the place of {file}, or that both are wanted; then send {file} again, corrected.",
    },
  },
  passing: [{ shows: "sheets that agree", given: ({ completeOrder }) => subject(completeOrder()) }],
  failing: [
    {
      shows: "a letter of an earlier date that came later",
      given: ({ deviceAt, otherFinish }) =>
        asked(deviceAt(2, { ...later, finish: otherFinish }), deviceAt(2), "dates"),
      wording: "dates",
      says: "again.pdf and S-104 pos 2.pdf are for one place. again.pdf came later, but its letter bears the earlier date.",
    },
    {
      shows: "two letters in one forward, each with a sheet for one place",
      given: ({ deviceAt, otherFinish }) =>
        asked(
          deviceAt(2),
          deviceAt(2, { id: "1/9", file: "S-104 pos 2 (2).pdf", finish: otherFinish }),
          "forwarded",
        ),
      wording: "forwarded",
      says: "S-104 pos 2.pdf and S-104 pos 2 (2).pdf are for one place, and stand in two letters that were forwarded as one. That of S-104 pos 2 (2).pdf is the later.",
    },
    {
      shows: "the fourth device of a plate that has three gangs now",
      given: ({ deviceAt, plate }) => asked(deviceAt(4), plate({ ...later, gangs: 3 }), "beyond"),
      wording: "beyond",
      says: "S-104 pos 4.pdf, sent before, is for position 4. again.pdf says that plate S-104 has fewer gangs now.",
    },
    {
      shows: "a device alone whose station becomes a plate",
      given: ({ aloneDevice, plate }) => asked(aloneDevice(), plate({ ...later, mark: "S-110" }), "alone"),
      wording: "alone",
      says: "S-110.pdf, sent before, is for a device standing alone at S-110. again.pdf says that a multi-gang plate stands there now.",
    },
    {
      shows: "a device of a plate that never came",
      given: ({ aloneDevice, deviceAt }) =>
        asked(deviceAt(2), aloneDevice({ ...later, mark: "S-104" }), "in-plate"),
      wording: "in-plate",
      says: "S-104 pos 2.pdf, sent before, is for a device in a plate at S-104. again.pdf says that a device stands alone there now.",
      fix: "Is S-104 pos 2.pdf to be left out? If not, correct the station mark of one of the two.",
    },
    {
      shows: "a corrected sheet with another finish",
      given: ({ deviceAt, otherFinish }) =>
        asked(
          without(deviceAt(2), "mark"),
          deviceAt(2, {
            id: "2/1",
            file: "S-104 pos 2 (2).pdf",
            named: "S-104 pos 2.pdf",
            finish: otherFinish,
          }),
          "again",
        ),
      wording: "again",
      says: "S-104 pos 2 (2).pdf looks like S-104 pos 2.pdf come again, which has faults and was sent before. More was changed than had to be.",
      fix: "Reply that it takes the place of S-104 pos 2.pdf, or that both are wanted; then send S-104 pos 2.pdf again, corrected.",
    },
  ],
  *find({ order }, _, say) {
    for (const { sheet, beside, why } of order.aside) {
      const facts = { file: sheet.file, other: beside.file };
      const station = beside.mark ?? "";
      const spots = [...at(sheet), ...at(beside)];
      if (why === "beyond") {
        const position = sheet.kind === "device" ? (sheet.position ?? 0) : 0;
        yield say(why, { ...facts, position, station }, spots);
      } else if (why === "alone" || why === "in-plate") yield say(why, { ...facts, station }, spots);
      else yield say(why, facts, spots);
    }
  },
});
