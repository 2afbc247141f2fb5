import { defineLetterCheck } from "../check.ts";

export const senderUnproven = defineLetterCheck({
  id: "sender-unproven",
  title: "A letter that a person must see first",
  severity: "asks",
  verdict: "person",
  source: { kind: "house" },
  why: "Whoever names an order that others have sent letters about may be a colleague of theirs or a stranger. A stranger must learn nothing about it, so a person decides.",
  wordings: {
    held: {
      says: "A person will look at this letter before its sheets are taken into an order.",
      fix: "Nothing to do; you will hear from us.",
    },
  },
  passing: [
    {
      shows: "a sender known for the order",
      given: { files: [], orders: [], held: false, reply: false, links: [] },
    },
  ],
  failing: [
    {
      shows: "an order number that somebody else uses",
      given: { files: [], orders: [], held: true, reply: false, links: [] },
      wording: "held",
    },
  ],
  *find({ held }, _, say) {
    if (held) yield say("held", {}, []);
  },
});
