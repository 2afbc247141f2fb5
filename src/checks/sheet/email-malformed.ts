import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { addressesIn, mailboxOf } from "../mailbox.ts";
import type { Sample } from "../sample.ts";

export const emailMalformed = defineSheetCheck({
  id: "email-malformed",
  title: "The e-mail address cannot be right",
  severity: "stops",
  waivable: true,
  source: { kind: "standard", name: "RFC 5321 §4.1.2, §4.1.3 and §4.5.3.1" },
  why: "Questions and proofs would go nowhere.",
  wordings: {
    shape: {
      says: "“{field}” says “{typed}”, which is not an e-mail address.",
      fix: "Write one address, such as name@company.example.",
    },
    long: {
      says: "“{field}” says “{typed}”, which is longer than an e-mail address can be.",
      fix: "Check it; at most 64 characters stand before the @, 63 between two dots behind it, and 254 in all.",
    },
    odd: {
      says: "“{field}” says “{typed}”. Such an address is allowed, but hardly anybody has it: it has {has}.",
      fix: "Reply that it is right, or send the sheet again with the right one.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "an ordinary address", given: (sample) => withEmail(sample, "ines@brightwire.example") },
    {
      shows: "a tag and a subdomain",
      given: (sample) => withEmail(sample, "ines.c+jobs@mail.brightwire.example"),
    },
    {
      shows: "an apostrophe and an ampersand",
      given: (sample) => withEmail(sample, "o'hara&co@brightwire.example"),
    },
    {
      shows: "two addresses",
      given: (sample) => withEmail(sample, "ines@brightwire.example; office@brightwire.example"),
    },
    {
      shows: "a name beside the address",
      given: (sample) => withEmail(sample, "Ines Calloway <ines@brightwire.example>"),
    },
    {
      shows: "64 characters before the @",
      given: (sample) => withEmail(sample, `${"i".repeat(64)}@brightwire.example`),
    },
    {
      shows: "no address at all, which other checks judge",
      given: ({ device }) => device({ contact: { name: "Ines Calloway" } }),
    },
  ],
  failing: [
    {
      shows: "a missing @",
      given: (sample) => withEmail(sample, "ines.brightwire.example"),
      wording: "shape",
      says: "“E-mail” says “ines.brightwire.example”, which is not an e-mail address.",
    },
    {
      shows: "a comma for a dot",
      given: (sample) => withEmail(sample, "ines@brightwire,example"),
      wording: "shape",
      says: "“E-mail” says “ines@brightwire,example”, which is not an e-mail address.",
    },
    {
      shows: "an address and half of one",
      given: (sample) => withEmail(sample, "ines@brightwire.example; office"),
      wording: "shape",
      says: "“E-mail” says “ines@brightwire.example; office”, which is not an e-mail address.",
    },
    {
      shows: "65 characters before the @",
      given: (sample) => withEmail(sample, `${"i".repeat(65)}@brightwire.example`),
      wording: "long",
      says: "“E-mail” says “iiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiii@brightwire.example”, which is longer than an e-mail address can be.",
    },
    {
      shows: "what the standard allows and hardly anybody has",
      given: (sample) => withEmail(sample, "ines/orders@brightwire.example"),
      wording: "odd",
      says: "“E-mail” says “ines/orders@brightwire.example”. Such an address is allowed, but hardly anybody has it: it has a sign before the @ that few have.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const typed = sheet.contact.email;
    if (typed === undefined) return;
    const facts = { field: labelOf(sheet, "contact.email"), typed };
    const spots = at(sheet, "contact.email");
    const mailbox = mailboxOf(typed);
    const several = addressesIn(typed);
    if (several.length > 0 && several.every((one) => mailboxOf(one).kind === "ordinary")) return;
    if (mailbox.kind === "none") yield say("shape", facts, spots);
    else if (mailbox.kind === "long") yield say("long", facts, spots);
    else if (mailbox.kind === "odd") yield say("odd", { ...facts, has: mailbox.has }, spots);
  },
});

function withEmail(sample: Sample, email: string): DeviceSheet {
  return sample.device({ contact: { name: "Ines Calloway", email } });
}
