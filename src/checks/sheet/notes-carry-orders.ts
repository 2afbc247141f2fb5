import { finishOf, letteringOf } from "../../catalogue/catalogue.ts";
import { saidAt } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { choiceAgainst } from "../noted-choice.ts";
import { notedCounts } from "../noted-counts.ts";
import { contradicted, saysMore } from "../noted-place.ts";
import { asksForSomething, withoutIdleWords } from "../noted-wish.ts";
import { isPlainNote } from "../plain-note.ts";
import { mayAskForSeveral } from "../several.ts";

export const notesCarryOrders = defineSheetCheck({
  id: "notes-carry-orders",
  title: "The notes ask for something that no field holds",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Only the fields are cut. A wish in the notes reaches nobody unless a person reads it.",
  wordings: {
    request: {
      says: "The notes say “{typed}”. No field of the sheet holds that, so one of us reads it.",
      fix: "Put into the fields what they can hold, and clear the rest if it is not needed.",
      verdict: "person",
    },
    several: {
      says: "The notes say “{typed}”. A sheet orders one piece, so one of us reads it.",
      fix: "Send a sheet for each piece, each with its own station mark or position, and clear the notes.",
      verdict: "person",
    },
    elsewhere: {
      says: "The notes say “{typed}”, but “{field}” says “{own}”.",
      fix: "If the notes are right, correct “{field}” and send the sheet again.",
    },
    remark: {
      says: "The notes say “{typed}”. Nothing is made of it: only the fields are cut.",
      fix: "Nothing to do, unless it was meant as a wish: then say so in a reply.",
      severity: "notes",
    },
  },
  passing: [
    { shows: "no notes", given: ({ device }) => device() },
    { shows: "where the device goes", given: ({ device }) => device({ notes: "Plate S-104, pos 2 of 4" }) },
    { shows: "the mark written otherwise", given: ({ device }) => device({ notes: "station s104" }) },
    {
      shows: "how many the order has",
      given: ({ device }) => device({ notes: "Total: 4 devices, 1 plate" }),
    },
    { shows: "thanks", given: ({ device }) => device({ notes: "Thank you!" }) },
    { shows: "no notes, in words", given: ({ device }) => device({ notes: "N/A" }) },
  ],
  failing: [
    {
      shows: "a sheet that is a trial",
      given: ({ device }) => device({ notes: "practice sheet" }),
      wording: "request",
      says: "The notes say “practice sheet”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a copy of another",
      given: ({ device }) => device({ notes: "copy of S-103" }),
      wording: "request",
      says: "The notes say “copy of S-103”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "another position than that of the field",
      given: ({ device }) => device({ notes: "pos 3 of 4" }),
      wording: "elsewhere",
      says: "The notes say “pos 3 of 4”, but “Position” says “2”.",
      fix: "If the notes are right, correct “Position” and send the sheet again.",
    },
    {
      shows: "another station",
      given: ({ device }) => device({ notes: "goes in plate S-105" }),
      wording: "elsewhere",
      says: "The notes say “goes in plate S-105”, but “Station mark” says “S-104”.",
      fix: "If the notes are right, correct “Station mark” and send the sheet again.",
    },
    {
      shows: "a position for a device that stands alone",
      given: ({ aloneDevice }) => aloneDevice({ notes: "gang 3 of 4" }),
      wording: "elsewhere",
      says: "The notes say “gang 3 of 4”, but “Where the device goes” says “alone”.",
      fix: "If the notes are right, correct “Where the device goes” and send the sheet again.",
    },
    {
      shows: "a wish",
      given: ({ device }) => device({ notes: "Please engrave button 3 in red" }),
      wording: "request",
      says: "The notes say “Please engrave button 3 in red”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "another legend",
      given: ({ device }) => device({ notes: "button 2 = 'STACKS WEST'" }),
      wording: "request",
      says: "The notes say “button 2 = 'STACKS WEST'”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a finish of door hardware",
      given: ({ device }) => device({ notes: "US10B" }),
      wording: "request",
      says: "The notes say “US10B”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a quantity",
      given: ({ device }) => device({ notes: "TYP OF 4" }),
      wording: "several",
      says: "The notes say “TYP OF 4”. A sheet orders one piece, so one of us reads it.",
    },
    {
      shows: "several stations",
      given: ({ device }) => device({ notes: "S-104, S-105 and S-106" }),
      wording: "request",
      says: "The notes say “S-104, S-105 and S-106”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a quantity of one",
      given: ({ device }) => device({ notes: "Qty 1" }),
      wording: "remark",
      says: "The notes say “Qty 1”. Nothing is made of it: only the fields are cut.",
    },
    {
      shows: "how high it is mounted",
      given: ({ device }) => device({ notes: 'MOUNT AT 48" AFF' }),
      wording: "remark",
      says: 'The notes say “MOUNT AT 48" AFF”. Nothing is made of it: only the fields are cut.',
    },
    {
      shows: "whom to call, and what others bring",
      given: ({ device }) => device({ notes: "Dimmer by others, call w/ questions" }),
      wording: "remark",
      says: "The notes say “Dimmer by others, call w/ questions”. Nothing is made of it: only the fields are cut.",
    },
    {
      shows: "a plate that others bring",
      given: ({ device }) => device({ notes: "Plate by others" }),
      wording: "request",
      says: "The notes say “Plate by others”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a drawing that has the rest",
      given: ({ device }) => device({ notes: "See sheets for legends" }),
      wording: "request",
      says: "The notes say “See sheets for legends”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a spare",
      given: ({ device }) => device({ notes: "S-104 pos 2 + one spare" }),
      wording: "request",
      says: "The notes say “S-104 pos 2 + one spare”. No field of the sheet holds that, so one of us reads it.",
    },
    {
      shows: "a remark",
      given: ({ device }) => device({ notes: "Second floor, reading room side" }),
      wording: "remark",
      says: "The notes say “Second floor, reading room side”. Nothing is made of it: only the fields are cut.",
    },
  ],
  *find(sheet, catalogue, say) {
    const { notes } = sheet;
    if (notes === undefined) return;
    const place = contradicted(notes, sheet) ?? choiceAgainst(notes, sheet, catalogue);
    if (place === undefined && !saysMore(notes, sheet)) return;
    const counts = notedCounts(sheet, catalogue);
    // Its own plate is on the sheet of a device that stands alone, and is none of those counted.
    const isRefused =
      sheet.kind === "device" &&
      sheet.standing === "alone" &&
      counts.some(({ of, number }) => of === "plate" && number === 0);
    // The order is held against them.
    if (counts.length > 0 && !isRefused) return;
    // The sentence around them brings a full stop of its own.
    const typed = notes.replace(/\s+/g, " ").trim().replace(/\.$/, "");
    const rest = withoutIdleWords(notes, sheet.gangs);
    const asks = asksForSomething(rest);
    if (place !== undefined && !asks) {
      const said = saidAt(sheet, place);
      const own = finishOf(catalogue, said)?.name ?? letteringOf(catalogue, said)?.name ?? said;
      const facts = { typed, field: labelOf(sheet, place), own };
      yield say("elsewhere", facts, at(sheet, place, "notes"));
      return;
    }
    const several = mayAskForSeveral(rest);
    // Words that nobody knows may be a wish, too.
    const wording =
      asks || !(several || isPlainNote(rest, sheet, catalogue.words))
        ? "request"
        : several
          ? "several"
          : "remark";
    yield say(wording, { typed }, at(sheet, "notes"));
  },
});
