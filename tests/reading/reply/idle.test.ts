import { describe, expect, test } from "vitest";
import { isForeign } from "../../../src/reading/reply/foreign.ts";
import {
  beginsNamed,
  bindsAnswer,
  isIdle,
  isSignedOff,
  namesSender,
  saysNothing,
} from "../../../src/reading/reply/idle.ts";
import { paragraphsOf } from "../../../src/reading/reply/sentences.ts";
import { isSomebody } from "../../../src/reading/reply/somebody.ts";
import { isTalk, mayBeLegend } from "../../../src/reading/reply/talk.ts";

const replier = { open: [], isFurniture: () => false, names: ["Dana Whitlock"], bringsSheets: false };

test.each([
  ["Bill", true],
  ["C. Vireton", true],
  ["HB", true],
  ["/LZ", true],
  ["- Bill,", true],
  ["Ann O’Brien Vireton", true],
  ["NO", false],
  ["TBC", false],
  ["n", false],
  ["HBCD", false],
  ["Bill and Ann", false],
  ["Wrong", false],
  ["bill", false],
])("%j is somebody's name: %s", (line, is) => {
  expect(isSomebody(line)).toBe(is);
});

test.each([
  ["Dana", true],
  ["Hi Dana, thanks", true],
  ["Hi all", false],
  ["Dana?", false],
  ["Ann", false],
  ["Dana (she/her/hers)", true],
  ["Dana (she/her/hers/theirs)", false],
  ["Dana (she/her) thanks", false],
])("%j names its sender: %s", (line, names) => {
  expect(namesSender(line, ["Dana Whitlock"])).toBe(names);
});

test("a name that speaks against something names nobody", () => {
  expect(namesSender("Hold", ["Dana Hold"])).toBe(false);
  expect(namesSender("Dana", ["Dana Hold"])).toBe(true);
});

test.each([
  ["Dana Whitlock | Lighting Controls", true],
  ["Dana, Whitlock Controls", true],
  ["Dana", false],
  ["Ann | Lighting Controls", false],
  ["Dana | make it red", false],
  ["make it red | Dana", false],
  ["Marta Vireton | Dana", true],
  ["Dana | 14 old north upper dock mill road", true],
  ["Dana | the boathouse", true],
  ["Dana (Whitlock Controls) ", true],
])("%j begins with its sender's name: %s", (line, begins) => {
  expect(beginsNamed(line, ["Dana Whitlock"])).toBe(begins);
});

test.each([
  ["if it fits", true],
  ["PS hello", true],
  ["p. s. hello", true],
  ["please wait", true],
  ["a gift", false],
  ["iffy", false],
  ["Psalm", false],
  ["await", false],
  ["waiter", false],
  ["whence", false],
  ["jamais", false],
  ["maison", false],
])("%j makes an answer beside it less than one: %s", (words, binds) => {
  expect(bindsAnswer(words)).toBe(binds);
});

test.each([
  ["Regards, Ros", true],
  ["Thanks, RB", true],
  ["Thanks, wrong", false],
  ["Well, Ros", false],
  ["Ros", false],
])("%j is signed: %s", (line, signed) => {
  expect(isSignedOff(line)).toBe(signed);
});

describe("beside an answer a line says nothing", () => {
  test.each([
    ["", "Hello Dana,", true],
    ["", "[cid:logo.png]<https://whitlock.example>", true],
    ["", "*Thanks* | Dana", true],
    ["", "Regards, Ros", true],
    ["", "Regards, Salon", true],
    ["", "Ros", false],
    ["", "Regards, ros", false],
    ["", "Regards, wrong", false],
    ["", "This message is confidential.", true],
    ["", "SALON", false],
    ["", "P.S. thanks", false],
    ["", "Thanks if it fits", false],
    ["", "Corrected", false],
    ["", "Thanks ?", false],
    ["", "Whitlock Controls", false],
    ["below a name", "Whitlock Controls", true],
    ["below a name", "Philips Controls", true],
    ["below a name", "All orders are subject to our standard terms. Whitlock Controls", true],
    ["below a name", "All orders are subject to our standard terms.", true],
    ["", "All orders are subject to our standard terms.", false],
    ["below a name", "All orders are subject to our standard terms. Hold it.", false],
    ["beside sheets", "Corrected", true],
    ["beside sheets", "The drawing is new", false],
    ["beside sheets", "Grandpa's plate gets the big letters.", false],
    ["beside sheets", "SALON", false],
    ["beside sheets", "Only if it fits", false],
  ])("%s %j: %s", (where, line, idle) => {
    const at = { ...replier, bringsSheets: where === "beside sheets" };
    expect(isIdle(line, where === "below a name", at)).toBe(idle);
  });

  test("in capitals it may be a legend, even where its sender writes it always", () => {
    const always = { ...replier, isFurniture: () => true };
    expect(isIdle("Salon of light", false, always)).toBe(true);
    expect(isIdle("SALON OF LIGHT", false, always)).toBe(false);
    expect(isIdle("SALON OF LIGHT", true, always)).toBe(true);
    expect(isIdle("SALON AG", true, always)).toBe(true);
    expect(isIdle("SALON A", true, always)).toBe(false);
    expect(isIdle("SALON", true, always)).toBe(false);
    expect(isIdle("DANA WHITLOCK", false, replier)).toBe(false);
    expect(isIdle("HARLOW IL 60432", false, always)).toBe(false);
    expect(isIdle("Salon of light, 2 yes", false, always)).toBe(true);
  });
});

test.each([
  ["AA BB CC DD EE LLC", true, true],
  ["AA BB CC DD EE FF LLC", true, false],
  ["ALDER LLC ELECTRIC", true, false],
  ["ALDER ELECTRIC LLC", false, false],
  ["HARLOW IL 60432", true, true],
  ["HARLOW IL 60432", false, false],
  ["HARLOW 555-0142", true, true],
  ["i.A. Dana", false, true],
  ["gez. Dana", false, true],
  [`[cid:${"a".repeat(200)}]<${"b".repeat(300)}>`, false, true],
  [`[cid:${"a".repeat(201)}]`, false, false],
  [`[cid:a]<${"b".repeat(301)}>`, false, false],
  ["2 yes, it is their name since 1931", false, false],
  ["yes on 3", false, false],
  ["This message is confidential since 1931", false, false],
  ["This message is confidential since 1931", true, true],
  ["this message is confidential since 1931, and so is all that came with it", true, true],
  ["Confidential: 2 yes", false, false],
  ["Confidential: 2 yes", true, true],
  ["Confidential: 1234 yes", false, true],
  ["Confidential: 2......yes", false, false],
  ["Confidential: 2.......yes", false, true],
  ["Confidential: 2 yesterday", false, true],
  ["Confidential: yes...2", false, false],
  ["Confidential: yes....2", false, true],
  ["Confidential: yes on 1234", false, true],
  ["Confidential: eyes 2", false, true],
  ["The others are unchanged", false, true],
  ["GSM 05 55 50 19 99", true, true],
  ["Whitlock LED Supply", true, true],
  ["HARLOW 60432 NORTH", true, false],
  ["Mit freundlichen Grüßen", false, true],
  ["Dana Whitlock | Lighting Controls", false, true],
  ["Dana Whitlock | Caught Light", false, false],
  ["Call me if anything is missing.", false, false],
  ["If you have received this e-mail in error, delete it.", false, true],
  ["This message is confidential and may not be changed", false, true],
  ["14 old north upper dock mill road", true, true],
  ["the boathouse", true, true],
  ["No rush", false, true],
  ["No rush ✗", false, false],
  ["All orders are subject to our standard terms. Caught Light Studios", true, false],
  ["All orders are subject to our standard terms. The brass ones are nicer.", true, false],
  [
    "All orders are subject to our standard terms. this message and all that came with it is confidential and for its addressee alone.",
    true,
    true,
  ],
])("%j below a name (%s) says nothing: %s", (line, signed, idle) => {
  expect(isIdle(line, signed, replier)).toBe(idle);
});

describe("lines of a program become sentences again", () => {
  const full = "x".repeat(49);
  test.each<[string, string[], string[][]]>([
    ["a line that is full goes on", [`${full}y`, "and on"], [[`${full}y and on`]]],
    ["also where a hyphen follows", [`${full}y`, "two-three"], [[`${full}y two-three`]]],
    ["a shorter one ends", [full, "And on"], [[full, "And on"]]],
    ["one that ends in a comma goes on", ["Hello,", "and on"], [["Hello, and on"]]],
    ["one that ends in a dash goes on", ["sheets –", "two"], [["sheets –", "two"]]],
    ["a full one that ends a sentence ends", [`${full}y.`, "And"], [[`${full}y.`, "And"]]],
    ["a full one before a list ends", [`${full}y`, "- one", "2) two"], [[`${full}y`, "- one", "2) two"]]],
    ["a blank line ends all", [`${full}y`, "", "and"], [[`${full}y`], ["and"]]],
    [
      "sentences end at points",
      ["One. Two! Three? Four; five… six"],
      [["One.", "Two!", "Three?", "Four;", "five…", "six"]],
    ],
    ["and behind quotation marks", ["One.” Two"], [["One.”", "Two"]]],
    ["and behind a short form in these", ["He says “no.” Two"], [["He says “no.”", "Two"]]],
    ["and at dashes between blanks", ["One – two-three"], [["One –", "two-three"]]],
    [
      "but not behind short forms",
      ["See no. 3 of St. Mary, e.g. this"],
      [["See no. 3 of St. Mary, e.g. this"]],
    ],
    ["nor behind the number of a point", ["2. Two. Three"], [["2. Two.", "Three"]]],
    ["nor at a point in a word", ["See a.b"], [["See a.b"]]],
    ["and a word that ends like a short form ends one", ["It is a piano. Two"], [["It is a piano.", "Two"]]],
    ["blanks do not count", ["  One   two ", " "], [["One two"]]],
  ])("%s", (_, lines, paragraphs) => {
    expect(paragraphsOf(lines)).toEqual(paragraphs);
  });
});

test.each([
  ["Bitte nicht gravieren", true],
  ["Veuillez ne pas graver", true],
  ["не гравировать", true],
  ["Nicht nur das", true],
  ["Sheets for Les Halles and El Paso", false],
  ["Café at the résumé desk of the hall of fame and of all the other rooms here", false],
  ["Die cut", false],
  ["Rated at 200 Ω", false],
  ["La Die Der Das", false],
])("%j is in another language: %s", (words, foreign) => {
  expect(isForeign(words)).toBe(foreign);
});

test.each([
  ["Thanks for going through it so carefully", true],
  ["Many thanks for your patience", true],
  ["Thanks for making it red", false],
  ["Thanks for asking if it is right", false],
  ["thanks", true],
  ["Thanks for looking so carefully at all of it", true],
  ["Thanks for looking at the gasket", false],
  ["Sorry for the delay, was on site all day with no signal.", true],
  ["Been on the road all day", true],
  ["I was on leave, in such a hurry", true],
  ["on the ladder", true],
  ["at the site", false],
  ["I was at the site", true],
  ["on the road with a foreigner", false],
  ["On the road, I think", false],
  ["Sorry for the change", false],
  ["We relate well", true],
  ["They relate well", false],
  ["See you later", false],
  ["I was at the roofing", true],
  ["Signals are green lately", false],
  ["We are latecomers", true],
  ["The plates were on site all day", false],
])("%j is talk: %s", (sentence, is) => {
  expect(isTalk(sentence, { open: [2] })).toBe(is);
});

test.each([
  ["we love SALONA", true],
  ["we went to OKRA", true],
  ["on FRIDAYS", true],
  ["see you on Friday, OK", false],
  ["as I said", false],
])("%j may have a legend in it: %s", (said, may) => {
  expect(mayBeLegend(said)).toBe(may);
});

describe("what stands beside an answer in its line", () => {
  test.each([
    ["Hello, thanks", true],
    ["This message is confidential.", true],
    ["DW", true],
    ["DW.", true],
    ["dw", true],
    ["I was on site all day", true],
    ["Hello all, I was on site all day", true],
    ["Hello all, make it red", false],
    ["So hello all, I was on site all day", false],
    ["Whitlock Controls", false],
    ["Corrected", false],
    ["2 yes", false],
  ])("%j says nothing: %s", (sentence, nothing) => {
    expect(saysNothing(sentence, { ...replier, bringsSheets: true })).toBe(nothing);
  });

  test("initials are capitals, however the name is written", () => {
    expect(saysNothing("DW", { ...replier, names: ["dana whitlock"] })).toBe(true);
  });
});

describe("at the edges of what says nothing", () => {
  test.each([
    [" All orders are subject to our standard terms. ", true],
    ["All orders are subject to our standard terms - net 30.", true],
    ["Regards, Ros\nmake it red", false],
    ["...?", false],
  ])("%j below a name: %s", (line, idle) => {
    expect(isIdle(line, true, replier)).toBe(idle);
  });

  test.each(["Dana gez. Whitlock", "Well,Regards, Ros"])("%j is no name alone", (line) => {
    expect(isIdle(line, false, replier)).toBe(false);
  });

  test("blanks around the name of the sender and a firm do not count", () => {
    expect(beginsNamed("  Dana | Whitlock Controls ", ["Dana Whitlock"])).toBe(true);
    expect(beginsNamed("  Thanks, Dana ", ["Dana Whitlock"])).toBe(true);
  });

  test.each([
    ["Whitlock", "Dana Whitlock", true],
    ["Dan.", "Dana Whitlock", true],
    ["Da.n", "Dana Whitlock", false],
    ["Whitlo", "Dana Whitlock", false],
    ["da", "Dana Whitlock", false],
    ["Hold", "Holden Marsh", false],
    ["Hol", "Holden Marsh", true],
  ])("%j may stand for the sender %s: %s", (line, name, may) => {
    expect(isIdle(line, false, { ...replier, names: [name] })).toBe(may);
  });

  test.each([
    ["D.W", "Dana Whitlock", false],
    ["ok", "Olive Kern", false],
    ["OK", "Olive Kern", true],
    ["d", "Dana", false],
    ["D", "Dana", true],
  ])("%j are the initials of %s: %s", (word, name, are) => {
    expect(saysNothing(word, { ...replier, names: [name] })).toBe(are);
  });
});
