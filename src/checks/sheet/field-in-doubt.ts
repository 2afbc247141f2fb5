import { isPlaceholder } from "../../orders/placeholder.ts";
import { addressParts, type Entry } from "../../trade/place.ts";
import { type Sheet, saidAt } from "../../trade/sheet.ts";
import { at, defineSheetCheck, labelOf } from "../check.ts";
import { addressesIn } from "../mailbox.ts";
import { billTo, contact } from "../sample.ts";

const named = ["contact.name", "bill.name", "ship.name"] as const satisfies readonly Entry[];
const texts: readonly Entry[] = [
  "project",
  "order",
  "mark",
  "contact.name",
  ...addressParts.flatMap((part) => [`bill.${part}`, `ship.${part}`] as const),
];

/** What fingers find that lie on the keys, and what says no more than what the field is for. */
const tried =
  /^(?:(?:ASD(?:F(?:GH?)?)?|QWE(?:R(?:TY?)?)?|ZXCV?|SDFG?|FGHJ?|HJKL?|JKL)+|(\p{L})\1{2,}|ABC(?:D(?:E(?:F)?)?)?|BLAH(?: BLAH)*|TEST\d*|(?:(?:MY|YOUR|NEW|THE) )?(?:PROJECT|JOB|CONTACT|COMPANY|STREET|CITY)(?: NAME)?|NAME|ME|MYSELF)$/iu;
const phone = /^\+?[\d().\s/-]{7,}$/u;
const date = /^(?:\d{1,2}[/.]\d{1,2}[/.](?:\d{2}|\d{4})|\d{4}-\d\d-\d\d)$/u;
/** A mailbox that gets a form past its required fields. */
const nobody = /^(?:none|nomail|noemail|no-?reply|donotreply|test|xx*|abc|asdf\w*|nobody|fake|name)@/iu;

/** What stands at a place, where it is of another kind than belongs there. */
const kinds: readonly {
  readonly looks: string;
  readonly at: readonly Entry[];
  /** `street`: what the street of the same address says. */
  readonly is: (typed: string, street: string) => boolean;
}[] = [
  {
    looks: "an e-mail address",
    at: [...named, "project", "order", "mark", "bill.street", "bill.city", "ship.street", "ship.city"],
    is: (typed) => /^\S+@\S+\.\S+$/u.test(typed),
  },
  { looks: "a phone number", at: named, is: (typed) => phone.test(typed) },
  { looks: "a date", at: ["order", "mark"], is: (typed) => date.test(typed) },
  { looks: "a number alone", at: ["bill.city", "ship.city", "bill.street", "ship.street"], is: isDigits },
  {
    looks: "a street",
    at: ["bill.city", "ship.city"],
    is: (typed, street) => /^\d+\p{L}?,? \p{L}{2}/u.test(typed) && !/\d/.test(street),
  },
  {
    looks: "a box without its number",
    at: ["bill.street", "ship.street"],
    is: (typed) => /^P\.? ?O\.? ?BOX\W*$/iu.test(typed),
  },
  {
    looks: "an address that nobody reads",
    at: ["contact.email"],
    is: (typed) => addressesIn(typed).some((one) => nobody.test(one)),
  },
];

export const fieldInDoubt = defineSheetCheck({
  id: "field-in-doubt",
  title: "A field says what hardly belongs there",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Whoever writes a question mark is not sure. What somebody typed to try the form, or typed into the next field, ends on the invoice or the parcel.",
  wordings: {
    unsure: {
      says: "“{field}” says “{typed}”, with a question mark.",
      fix: "If you were not sure, send the sheet again with what is right.",
    },
    tried: {
      says: "“{field}” says “{typed}”, which looks as if somebody tried the form.",
      fix: "Send the sheet again with what belongs there.",
    },
    kind: {
      says: "“{field}” says “{typed}”, which looks like {looks}.",
      fix: "Send the sheet again with what belongs there.",
    },
  },
  passing: [
    { shows: "everything filled in", given: ({ plate }) => plate() },
    {
      shows: "a question mark alone, which other checks judge",
      given: ({ device }) => device({ project: "?" }),
    },
    {
      shows: "a town that begins with a number",
      given: ({ device }) => device({ billTo: { ...billTo, street: "12 Main St", city: "100 Mile House" } }),
    },
    { shows: "a number as a name", given: ({ device }) => device({ project: "1200", order: "4512" }) },
    { shows: "a firm named so", given: ({ device }) => device({ billTo: { ...billTo, name: "Me & You" } }) },
  ],
  failing: [
    {
      shows: "a project that is not certain",
      given: ({ device }) => device({ project: "Larkspur Library?" }),
      wording: "unsure",
      says: "“Project name” says “Larkspur Library?”, with a question mark.",
    },
    {
      shows: "keys that lie side by side",
      given: ({ device }) => device({ project: "asdf" }),
      wording: "tried",
      says: "“Project name” says “asdf”, which looks as if somebody tried the form.",
    },
    {
      shows: "an e-mail address for a name",
      given: ({ device }) => device({ contact: { ...contact, name: "ines@brightwire.example" } }),
      wording: "kind",
      says: "“Contact name” says “ines@brightwire.example”, which looks like an e-mail address.",
    },
    {
      shows: "street and city that have changed places",
      given: ({ device }) => device({ billTo: { ...billTo, street: "Chicago", city: "48 Foundry Row" } }),
      wording: "kind",
      says: "“Bill to: city” says “48 Foundry Row”, which looks like a street.",
    },
    {
      shows: "an address that stands for none",
      given: ({ device }) => device({ contact: { ...contact, email: "none@brightwire.example" } }),
      wording: "kind",
      says: "“E-mail” says “none@brightwire.example”, which looks like an address that nobody reads.",
    },
  ],
  *find(sheet, _catalogue, say) {
    for (const place of [...texts, "contact.email"] as const) {
      const typed = saidAt(sheet, place);
      if (isPlaceholder(typed) || (sheet.shipSame && place.startsWith("ship."))) continue;
      const facts = { field: labelOf(sheet, place), typed };
      const kind = kinds.find((one) => one.at.includes(place) && one.is(typed, streetBeside(sheet, place)));
      if (kind !== undefined) yield say("kind", { ...facts, looks: kind.looks }, at(sheet, place));
      else if (texts.includes(place) && typed.includes("?")) yield say("unsure", facts, at(sheet, place));
      else if (texts.includes(place) && tried.test(typed)) yield say("tried", facts, at(sheet, place));
    }
  },
});

function streetBeside(sheet: Sheet, place: Entry): string {
  return saidAt(sheet, place.startsWith("ship.") ? "ship.street" : "bill.street");
}

function isDigits(typed: string): boolean {
  return /^\d+$/u.test(typed);
}
