import { letterOf } from "../../orders/ids.ts";
import { stillMissing } from "../../orders/still-missing.ts";
import type { Promised } from "../../trade/carried.ts";
import { defineOrderCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const promising = (
  sample: Sample,
  text: string,
  tells: Promised["tells"],
  sheets = sample.completeOrder(),
) => ({
  ...subject(sheets),
  promised: [{ letter: "1", what: "promise", text, tells }] as const,
});

export const moreAnnounced = defineOrderCheck({
  id: "more-announced",
  title: "A letter tells of sheets that have not come",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "An order that passes is engraved. If a letter tells of more that belongs to it, or of a sheet that is mended, what comes later is engraved in a second run, or comes too late. While sheets are missing the order waits anyhow.",
  wordings: {
    more: {
      says: "Your letter says “{words}”, and no sheet of this order is missing.",
      fix: "Send the sheets that belong to it.",
    },
    mended: {
      says: "Your letter says “{words}”, and no sheet has come since that changes anything.",
      fix: "Send the corrected sheet.",
    },
    attached: {
      says: "Your letter says “{words}”, and nothing was attached to it.",
      fix: "Send the sheets again.",
    },
    named: {
      says: "Your letter says “{words}”, and no sheet of what it names came with it.",
      fix: "Send the sheet that it names.",
    },
    whole: {
      says: "Your letter says “{words}”, and no sheet of {stations} came with it.",
      fix: "Send what is missing, or write that {stations} is not to be made.",
    },
    numbered: {
      says: "“{words}” tells of more sheets than came, and no sheet of this order is missing.",
      fix: "Send the others that belong to it.",
    },
  },
  passing: [
    { shows: "a letter that tells of nothing more", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "an order that waits for sheets anyhow",
      given: (sample) =>
        promising(sample, "The rest will follow.", "more", [sample.plate(), sample.deviceAt(1)]),
    },
  ],
  failing: [
    {
      shows: "a complete order, of which more is to come",
      given: (sample) => promising(sample, "The rest will follow.", "more"),
      wording: "more",
      says: "Your letter says “The rest will follow.”, and no sheet of this order is missing.",
    },
    {
      shows: "a sheet that is to be mended",
      given: (sample) => promising(sample, "I will send a corrected S-104 tomorrow.", "later"),
      wording: "mended",
      says: "Your letter says “I will send a corrected S-104 tomorrow.”, and no sheet has come since that changes anything.",
    },
    {
      shows: "the old sheet once more",
      given: (sample) => promising(sample, "Corrected sheet attached.", "mended"),
      wording: "mended",
      says: "Your letter says “Corrected sheet attached.”, and no sheet has come since that changes anything.",
    },
    {
      shows: "a file that was forgotten",
      given: (sample) => promising(sample, "Please see attached.", "attached"),
      wording: "attached",
      says: "Your letter says “Please see attached.”, and nothing was attached to it.",
    },
    {
      shows: "the sheet of another station than the letter names",
      given: (sample) => promising(sample, "Here is S-111 again.", "named"),
      wording: "named",
      says: "Your letter says “Here is S-111 again.”, and no sheet of what it names came with it.",
    },
    {
      shows: "a whole set that lacks a station",
      given: (sample) =>
        promising(sample, "Complete set attached.", "whole", [
          ...sample.completeOrder(),
          sample.aloneDevice({ id: "2/1" }),
        ]),
      wording: "whole",
      says: "Your letter says “Complete set attached.”, and no sheet of S-110 came with it.",
      fix: "Send what is missing, or write that S-110 is not to be made.",
    },
    {
      shows: "a file that is numbered among more than came",
      given: (sample) => promising(sample, "Larkspur 2 of 9.pdf", "numbered"),
      wording: "numbered",
      says: "“Larkspur 2 of 9.pdf” tells of more sheets than came, and no sheet of this order is missing.",
    },
  ],
  *find({ order, others, promised = [] }, _, say) {
    if (stillMissing(order, others).length > 0) return;
    for (const { text, tells, letter } of promised) {
      const came = new Set(
        order.sheets.flatMap(({ id, mark }) => (letterOf(id) === letter ? (mark ?? []) : [])),
      );
      const stations = order.stations
        .map(({ mark }) => mark)
        .filter((mark) => mark !== "" && !came.has(mark));
      const problem =
        tells === "whole"
          ? say("whole", { words: text, stations }, [])
          : say(tells === "later" ? "mended" : tells, { words: text }, []);
      // Who writes the same once more is asked once more.
      yield { ...problem, facts: { ...problem.facts, letter } };
    }
  },
});
