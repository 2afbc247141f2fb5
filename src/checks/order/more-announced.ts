import { stillMissing } from "../../orders/still-missing.ts";
import { defineOrderCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const announced = (sample: Sample, sheets = sample.completeOrder()) => ({
  ...subject(sheets),
  announced: "The rest will follow.",
});

export const moreAnnounced = defineOrderCheck({
  id: "more-announced",
  title: "A letter tells of more sheets, and the order is complete",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "An order that passes is engraved. If the letter tells of more that belongs to it, what comes later is engraved in a second run, or comes too late. While sheets are missing the order waits anyhow.",
  wordings: {
    more: {
      says: "Your letter says “{words}”, and no sheet of this order is missing.",
      fix: "Send the sheets that belong to it.",
    },
  },
  passing: [
    { shows: "a letter that tells of nothing more", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "an order that waits for sheets anyhow",
      given: (sample) => announced(sample, [sample.plate(), sample.deviceAt(1)]),
    },
  ],
  failing: [
    {
      shows: "a complete order, of which more is to come",
      given: (sample) => announced(sample),
      wording: "more",
      says: "Your letter says “The rest will follow.”, and no sheet of this order is missing.",
    },
  ],
  *find({ order, others, announced: words }, _, say) {
    if (words !== undefined && stillMissing(order, others).length === 0) yield say("more", { words }, []);
  },
});
