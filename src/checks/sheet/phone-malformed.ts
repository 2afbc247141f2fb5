import { parsePhoneNumberFromString } from "libphonenumber-js";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import type { Sample } from "../sample.ts";

export const phoneMalformed = defineSheetCheck({
  id: "phone-malformed",
  title: "The phone number cannot be right",
  severity: "stops",
  waivable: true,
  source: { kind: "standard", name: "ITU-T E.164 and the national numbering plans" },
  why: "A question about a legend is quickest asked by phone.",
  wordings: {
    unclear: {
      says: "“{field}” says “{typed}”, which is not a number that can be called.",
      fix: "Write one number with its area code, such as 312-555-0140; from outside the US and Canada begin with + and the country code.",
    },
    unlikely: {
      says: "“{field}” says “{typed}”; we know no such area code.",
      fix: "Correct it, or reply that it is right.",
      // Area codes are added every year, so the program's list may be the one that is wrong.
      severity: "asks",
    },
  },
  passing: [
    { shows: "hyphens", given: (sample) => withPhone(sample, "312-555-0117") },
    { shows: "brackets and an extension", given: (sample) => withPhone(sample, "(312) 555-0117 ext 4") },
    { shows: "two numbers", given: (sample) => withPhone(sample, "773-555-0142 / 555-0143 x12") },
    { shows: "a time to call", given: (sample) => withPhone(sample, "cell 773-555-0142 after 3 pm") },
    { shows: "a country code", given: (sample) => withPhone(sample, "+44 20 7946 0958") },
  ],
  failing: [
    {
      shows: "no area code",
      given: (sample) => withPhone(sample, "555-0117"),
      wording: "unclear",
      says: "“Phone” says “555-0117”, which is not a number that can be called.",
    },
    {
      shows: "a letter O for a zero",
      given: (sample) => withPhone(sample, "312-555-O117"),
      wording: "unclear",
      says: "“Phone” says “312-555-O117”, which is not a number that can be called.",
    },
    {
      shows: "digits behind the number",
      given: (sample) => withPhone(sample, "312-555-0117-8"),
      wording: "unclear",
      says: "“Phone” says “312-555-0117-8”, which is not a number that can be called.",
    },
    {
      shows: "a dialling prefix for an area code",
      given: (sample) => withPhone(sample, "011-555-0100"),
      wording: "unclear",
      says: "“Phone” says “011-555-0100”, which is not a number that can be called.",
    },
    {
      shows: "an area code that is not in use",
      given: (sample) => withPhone(sample, "999-555-0100"),
      wording: "unlikely",
      says: "“Phone” says “999-555-0100”; we know no such area code.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const typed = sheet.contact.phone;
    if (typed === undefined) return;
    const facts = { field: labelOf(sheet, "contact.phone"), typed };
    const spots = at(sheet, "contact.phone");
    // Beside others or words, one number that can be called is enough.
    if (numbersIn(typed).some((one) => parsePhoneNumberFromString(one, "US")?.isValid() === true)) return;
    const number = parsePhoneNumberFromString(typed, "US");
    if (number === undefined || !number.isPossible()) yield say("unclear", facts, spots);
    else if (!number.isValid()) yield say("unlikely", facts, spots);
  },
});

/** Ten digits as they are written, with or without a 1 before them. */
const ten = /(?<![\d.+-])(?:\+?1[\s.-]*)?(?:\(\d{3}\)|\d{3})[\s./-]*\d{3}[\s.-]*\d{4}(?![.-]?\d)/gu;

/** The numbers of the US and Canada in what was typed; none beside the code of another country. */
function numbersIn(typed: string): readonly string[] {
  return /\+(?!1\D|1\d{10}(?!\d))/u.test(typed) ? [] : (typed.match(ten) ?? []);
}

function withPhone(sample: Sample, phone: string): DeviceSheet {
  return sample.device({ contact: { name: "Ines Calloway", phone } });
}
