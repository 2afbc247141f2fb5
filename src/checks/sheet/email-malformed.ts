import { z } from "zod";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { device } from "../sample.ts";

const email = z.email();
/** RFC 5321 §4.5.3.1.1: the part before the @, in octets. */
const longestLocalPart = 64;
/** RFC 5321 §4.5.3.1.3: a path is 256 octets, its two angle brackets included. */
const longestAddress = 254;

export const emailMalformed = defineSheetCheck({
  id: "email-malformed",
  title: "The e-mail address cannot be right",
  severity: "stops",
  source: { kind: "standard", name: "RFC 5321 §4.1.2 and §4.5.3.1" },
  why: "Questions and proofs would go nowhere.",
  wordings: {
    shape: {
      says: "“{field}” says “{typed}”, which is not an e-mail address.",
      fix: "Write one address, such as name@company.example.",
    },
    long: {
      says: "“{field}” says “{typed}”, which is longer than an e-mail address can be.",
      fix: "Check it; at most 64 characters stand before the @ and 254 in all.",
    },
  },
  passing: [
    { shows: "an ordinary address", given: withEmail("ines@brightwire.example") },
    { shows: "a tag and a subdomain", given: withEmail("ines.c+jobs@mail.brightwire.example") },
    { shows: "64 characters before the @", given: withEmail(`${"i".repeat(64)}@brightwire.example`) },
    {
      shows: "no address at all, which other checks judge",
      given: device({ contact: { name: "Ines Calloway" } }),
    },
  ],
  failing: [
    {
      shows: "a missing @",
      given: withEmail("ines.brightwire.example"),
      wording: "shape",
      says: "“E-mail” says “ines.brightwire.example”, which is not an e-mail address.",
    },
    {
      shows: "a comma for a dot",
      given: withEmail("ines@brightwire,example"),
      wording: "shape",
      says: "“E-mail” says “ines@brightwire,example”, which is not an e-mail address.",
    },
    {
      shows: "two addresses",
      given: withEmail("ines@brightwire.example; office@brightwire.example"),
      wording: "shape",
      says: "“E-mail” says “ines@brightwire.example; office@brightwire.example”, which is not an e-mail address.",
    },
    {
      shows: "65 characters before the @",
      given: withEmail(`${"i".repeat(65)}@brightwire.example`),
      wording: "long",
      says: "“E-mail” says “iiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiii@brightwire.example”, which is longer than an e-mail address can be.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const typed = sheet.contact.email;
    if (typed === undefined) return;
    const facts = { field: labelOf(sheet, "contact.email"), typed };
    const spots = at(sheet, "contact.email");
    if (!email.safeParse(typed).success) yield say("shape", facts, spots);
    // Only ASCII gets this far, so a character is an octet.
    else if (typed.indexOf("@") > longestLocalPart || typed.length > longestAddress)
      yield say("long", facts, spots);
  },
});

function withEmail(email: string): DeviceSheet {
  return device({ contact: { name: "Ines Calloway", email } });
}
