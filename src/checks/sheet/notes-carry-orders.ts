import { plainText } from "../../orders/keys.ts";
import { readNotedPlace } from "../../orders/notes.ts";
import { undoes } from "../../reading/reply/undoes.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineSheetCheck } from "../check.ts";
import { notedCounts } from "../noted-counts.ts";
import { isPlainNote } from "../plain-note.ts";
import { marksIn, mayAskForSeveral } from "../several.ts";

/** Words by which somebody asks for something, or names what no field holds. */
const requests = new RegExp(
  `\\b(${[
    "please|pls|must|need(s|ed)?|want(s|ed)?|require[sd]?|make sure|do not|don't|not|no|without|except",
    "engrave[ds]?|etch|cut|print|paint|fill(ed)?|change[ds]?|instead|rather|add|extra|additional|spares?|more",
    "omit|delete|remove|replace|swap|move|leave|skip|cancel|hold|wait|stop|rush|urgent|asap|expedite|before",
    "ship|deliver|delivery|send|pick ?up|call|phone|ring|quote|price|confirm|match(es|ing)?|same as|like",
    "colou?r|black|white|red|green|blue|amber|led|backlit|font|typeface|size|bold|italic|larger|bigger|smaller",
    "upper ?case|lower ?case|capitals|cent(er|re)(ed|d)?|symbols?|logos?|icons?|arrows?|braille|custom|special",
    "gold|silver|bronze|brass|chrome|nickel|steel|stainless|glass|wood|satin|polished|brushed|big|small|large",
    "double|triple|pairs?|both|same|also|ditto|or|either|if|when|until|unless|later|temp(orary)?|pending|tb[acd]",
    "copy of|duplicate|option(al)?|alternate|old|draft|void|obsolete|dummy|example",
    "make|made|buttons?|rows?|lines|with|only|portrait|landscape|open|check|verify|review|sample|test|change|key|sign|stop|reverse[ds]?|owner to|arch(itect)? to",
  ].join("|")})\\b`,
  "i",
);
/** 48", 5'-0", 1200 mm: inches are no quotation marks. */
const measure = /(?<!\d)\d+(?:[.,/]\d+)?\s{0,3}(?:"|''|[”″'’′])/gu;
const quoted = /["“”«»]|(?<!\p{L})'[^']+'/u;

/** Words that order nothing, as letters and digits in capitals. */
const courtesies = new Set(
  "THANKS THANK YOU CHEERS REGARDS NONE NA NIL PLATE STATION MARK POS POSITION NO GANG GANGS OF IN THE FOR THIS DEVICE IS GOES TO AT".split(
    " ",
  ),
);

export const notesCarryOrders = defineSheetCheck({
  id: "notes-carry-orders",
  title: "The notes ask for something that no field holds",
  severity: "asks",
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
    if (notes === undefined || !saysMore(notes, sheet)) return;
    // The order is held against them.
    if (notedCounts(sheet, catalogue).length > 0) return;
    // The sentence around them brings a full stop of its own.
    const typed = notes.replace(/\s+/g, " ").trim().replace(/\.$/, "");
    const rest = notes.replace(measure, "0 in").replace(/\b(?:to|on) cent(?:er|re)\b/gi, "");
    const asks = requests.test(rest) || undoes(rest) || quoted.test(rest) || marksIn(rest).length > 1;
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

/** Whether notes say more than thanks and where the sheet belongs. */
function saysMore(notes: string, { mark, order }: Sheet): boolean {
  const noted = readNotedPlace(notes, mark === undefined ? [] : [mark], order === undefined ? [] : [order]);
  const numbers = [noted.position, noted.gangs].map(String);
  const words = notes.replaceAll(/(\d)\s*\/\s*(?=\d)/g, "$1 ").split(/[\s,;:()]+/);
  // Joined again, since a mark may be typed in two words.
  const rest = words
    .map(plainText)
    .filter((word) => !courtesies.has(word) && !numbers.includes(word))
    .join("");
  return rest !== "" && rest !== plainText(noted.mark ?? "");
}
