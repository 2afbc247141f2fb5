import { describe, expect, test } from "vitest";
import {
  isBoilerplate,
  isGoodBye,
  isOfSignature,
  isRemembered,
  isTelephone,
  lineKeysOf,
  withoutContacts,
} from "../../../src/reading/reply/furniture.ts";

describe("a line is remembered as one that its sender always writes", () => {
  test.each([
    "Whitlock Controls, the house of light",
    "Since 1962",
    "We build, we test, we plan, we light and we last",
    // A disclaimer may say "please" and "not".
    "Please do not print this letter unless you have to do so today",
  ])("%j", (line) => {
    const keys = lineKeysOf(`Hello\r\n${line}\r${line.toUpperCase()}  !\nDana`);
    expect(keys).toHaveLength(3);
    expect(isRemembered(`  ${line.toLowerCase()}`, new Set(keys), true)).toBe(true);
    expect(isRemembered(line, new Set(), true)).toBe(false);
    expect(isRemembered(`${line} more`, new Set(keys), true)).toBe(false);
  });

  test.each([
    ["nothing", "--"],
    ["what may be an answer", "3 YES"],
    ["what may be a wish", "Please make it so today"],
    ["what may be a wish, in eight words", "we may change one or two or three"],
    ["what speaks of the trade, however long", "We engrave every one of our plates by hand in our own shop"],
    ["what counts", "Devices: 12"],
    ["what counts files", "Files: 12"],
    ["what counts in the middle", "We send 12 devices"],
    ["more than 2000 characters", `Notice: ${"x".repeat(1993)}`],
  ])("but not %s", (_, line) => {
    expect(lineKeysOf(line)).toEqual([]);
  });

  test("whose words only begin or end like what is counted, or without a number", () => {
    expect(lineKeysOf("Whitlock Files")).toHaveLength(1);
    expect(lineKeysOf("Profiles 12")).toHaveLength(1);
    expect(lineKeysOf("Filesystem 12")).toHaveLength(1);
  });

  test("and not where it asks by now", () => {
    const keys = lineKeysOf("Whitlock Controls");
    expect(keys[0]).toHaveLength(22);
    expect(isRemembered("Whitlock Controls!", new Set(keys), false)).toBe(true);
    expect(isRemembered("Whitlock Controls?", new Set(keys), true)).toBe(false);
  });

  test.each([
    "Make ours a touch higher than usual please, as discussed with Ines last week.",
    "Call me before you start on any of this, there are some things to go through.",
    "Do it the way that you did it for the hotel last spring.",
  ])("a wish is one each time, unless it stands below a name: “%s”", (line) => {
    const keys = new Set(lineKeysOf(line));
    expect([false, true].map((signed) => isRemembered(line, keys, signed))).toEqual([false, true]);
  });

  test("a line may have 2000 characters", () => {
    expect(lineKeysOf(`Notice: ${"x".repeat(1992)}`)).toHaveLength(1);
  });

  test("a line of nine words may ask, since short ones could be an answer", () => {
    expect(lineKeysOf("we may change one or two or three now")).toHaveLength(1);
  });

  test("up to the two-thousandth", () => {
    const lines = Array.from({ length: 2001 }, (_, i) => `Motto ${"a".repeat(1 + (i % 1500))}${i < 1500}`);
    expect(lineKeysOf(lines.join("\n")).length).toBe(lineKeysOf(lines.slice(0, 2000).join("\n")).length);
    expect(lineKeysOf(["a", ...Array(1998).fill(""), "b", "c"].join("\n"))).toHaveLength(2);
  });
});

describe("ways to reach somebody are taken out of words", () => {
  test.each([
    "dana.w+lobby@whitlock-controls.example",
    "<mailto:dana@whitlock.example>",
    "https://whitlock.example/a?b",
    "<http://whitlock.example>",
    "www.whitlock.example/a",
    "whitlock.example",
    "whitlock.co/uk",
    "(312) 555-0142",
    "+1 312.555.0142 x 12",
    "cell: 312-555-0142 ext. 7",
    "tel | fax 312 555 0142",
    "555-0142",
    "+1. 312-555-0142",
    `a@${"b".repeat(63)}.example`,
    `https://${"a".repeat(500)}`,
  ])("%s", (contact) => {
    expect(withoutContacts(`ring ${contact} now`).split(/\s+/)).toHaveLength(3);
  });

  test.each([
    "whitlock.community",
    "555-01421",
    "5550-0142",
    "1555-0142",
    "(312) 555-01423",
    "xhttp://a",
    "a.examples",
    "12-34",
    "312-555 - 0142",
    `a@${"b".repeat(64)}.example`,
  ])("but not %s", (word) => {
    expect(withoutContacts(`of ${word} now`)).toBe(`of ${word} now`);
  });
});

test("a longer address of a page, and what stands before a telephone's number, stay in part", () => {
  expect(withoutContacts(`https://${"a".repeat(501)}`)).toMatch(/a$/);
  expect(withoutContacts("1 - 312-555-0142")).toMatch(/^1/);
  expect(withoutContacts(`${"a".repeat(64)}@whitlock.example`)).not.toMatch(/a/);
  expect(withoutContacts(`${"a".repeat(65)}@whitlock.example`)).toMatch(/^a /);
  expect(withoutContacts(`a@b.${"c".repeat(63)}`)).not.toMatch(/c/);
  expect(withoutContacts(`a@b.${"c".repeat(64)}`)).toMatch(/ c$/);
  expect(withoutContacts("a@b.c.d.e.f.g.h")).not.toMatch(/h/);
  expect(withoutContacts("a@b.c.d.e.f.g.h.i")).toMatch(/\.i$/);
  expect(withoutContacts(`${"a".repeat(60)}.com`)).not.toMatch(/a/);
  expect(withoutContacts(`${"a".repeat(61)}.com`)).toMatch(/a\.com$/);
  expect(withoutContacts(`whitlock.com/${"a".repeat(200)}`)).not.toMatch(/a/);
  expect(withoutContacts(`whitlock.com/${"a".repeat(201)}`)).toMatch(/a$/);
  expect(withoutContacts("tel::::312-555-0142")).not.toMatch(/tel/);
  expect(withoutContacts("tel:::::312-555-0142")).toMatch(/^tel/);
  expect(withoutContacts("f o c m 312-555-0142")).not.toMatch(/f/);
  expect(withoutContacts("f o c m p 312-555-0142")).toMatch(/^f /);
  expect(withoutContacts("123 312-555-0142")).not.toMatch(/1/);
  expect(withoutContacts("1234 312-555-0142")).toMatch(/^1 /);
  expect(withoutContacts("312---555-0142")).not.toMatch(/3/);
  expect(withoutContacts("312----555-0142")).toMatch(/^312/);
  expect(withoutContacts("312-555-0142 x12345")).not.toMatch(/5/);
  expect(withoutContacts("312-555-0142 x123456")).toMatch(/ 6$/);
});

test.each([
  ["m: 555-0155", true],
  ["+1 555 0163", true],
  ["tél 05 55 50 19 99", true],
  ["ring 312 555 0142", false],
  ["312 555 0142 today", false],
  ["2 yes", false],
  [`555-0142 ${"1".repeat(13)}`, true],
  [`555-0142 ${"1".repeat(14)}`, false],
  ["555-0142 x12345", true],
  ["555-0142 x123456", false],
])("%j is a telephone's number: %s", (line, is) => {
  expect(isTelephone(line)).toBe(is);
});

describe("below a name stands who it is", () => {
  test.each([
    "Whitlock Controls",
    "Project Manager, Lighting",
    "senior estimator",
    "Whitlock Electric Inc",
    "14 Dock Road",
    "14b North Dock Street, Harlow",
    "Harlow, IL 60601",
    "Harlow IL 60601-1234",
    "P.O. Box 12",
    "PO Box 12",
    "Suite 4",
    "Ste. #4",
    "Dock Road, Harlow Quay",
    "North Dock Road, Harlow Quay",
    "m: 555-0143",
    "+1 (312) 555-0142 x12",
    "dana@whitlock.example",
    "“We make light of it, and have done so for a long while now.”",
    "Whitlock - “Solar? Yes, we do that!”",
    "Licensed In Ohio And In Iowa As Well",
    "Elektro Kügler e.K.",
    "14 old north upper dock mill road",
    "14 newton road",
    "14 photo road",
    "near harlow IL 60601",
    "KVK 55501999",
    "12 quai des Brumes, 29999 Port-Exemple",
    "tél 05 55 50 19 99",
    "Whitlock Plates",
    `https://${"a".repeat(292)}`,
    "@whitlock.lights",
    `@${"a".repeat(40)}`,
    "Brass Founder Court, Harlow Quay",
    "123456 dock road",
    `W${"h".repeat(40)} - “We make light of it, and have done so for long.”`,
    "Whitlock Electric Inc of Harlow And Of Dock Mill",
    "Whitlock! Electric Inc",
    "reach me at the office all day.",
    "reach me at the office before lunch",
    "Whitlock Electric Office Open from eight until five.",
    "St. Dana's office open from eight until five",
    "household office manager",
    "holdings office manager",
    "1234 quai des grands vieux bons Brumes, 29999 Port-Exemple",
    "remake design studio",
    "needham lighting supply",
  ])("%j", (line) => {
    expect(isOfSignature(line)).toBe(true);
  });

  test.each([
    "Please ship to 14 Dock Road",
    "send it to 14 Dock Road",
    "New address: 14 Dock Road",
    "the manager will not have it",
    "we need the other department",
    "make it an office",
    "hold for the owner",
    "Manager?",
    "Office!",
    "one button more for the office",
    "all of them in two words",
    "Reach me at the office before cutting.",
    "My partner and I split up.",
    "Licensed In Ohio And In Iowa As Well Too",
    "“and this is a wish in quotation marks that goes on for far more words than any motto ever did”",
    "x".repeat(301),
    `https://${"a".repeat(293)}`,
    "14 old north upper inner dock mill road",
    "14 dock streetwise",
    "near harlow XIL 60601",
    "the depo box 12",
    "our taste 4",
    "our KVK 55501999",
    "KVK 55501999 and please hold",
    "at 12 quai des Brumes, 29999 Port-Exemple",
    "12 quai des Brumes, 29999 Port-Exemple, please hold",
    "“one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen”",
    "Vielleicht Dana",
    "Light For Every Home And Every Hall In Harlow",
    "Two",
    "the road",
    "of the Hall",
    "all wholesales of it",
    "on all their designations",
    "CANCEL 70415",
    "REQUEST 70415",
    "NEED 70415",
    "WANT 70415",
    "MAKE 70415",
    "We need 70415",
    "12 Dock Street until I call",
    "VOID 55501",
    "SCRAP 55501999",
    "Scrap floor 2",
    "Drop suite 4",
    "Redo the office",
    "Void the design",
    "Swap the office and the sales desk",
    "scrap the sales office",
    "see @whitlock",
    "@whitlock, two",
    `@${"a".repeat(41)}`,
    "Old Brass Founder North Court",
    "Brass Founder Court, Harlow Quay, cut it",
    "we met at 14 dock road",
    "1234567 dock road",
    "near harlow IL 606011",
    "new place near harlow IL 60601",
    "Plates Inc for you",
    `W${"h".repeat(41)} - “We make light of it, and have done so for long.”`,
    "put “We make light of it, and have done so for long”",
    "“We make light of it, and have done so for long” on it",
    "Whitlock Electric Inc of Harlow And Of Dock Mill Too",
    "Licensed In Ohio And In Iowa As In Illinois",
    "12345 quai des Brumes, 29999 Port-Exemple",
    "12 quai des grands vieux bons hauts Brumes, 29999 Port-Exemple",
    "12 quai des Brumes, 299999 Port-Exemple",
  ])("and never %j", (line) => {
    expect(isOfSignature(line)).toBe(false);
  });
});

describe("a letter ends with", () => {
  test.each([
    "Regards",
    "Kind regards,",
    "Many thanks and best wishes!",
    "Thanks so much",
    "Thank you in advance",
    "All the best,",
    "Yours sincerely",
    "Have a great day!",
    "Have a very nice weekend",
    "Have a really nice long sunny day",
    "Cheers mate",
    "Thanks from Dana",
    "Mit freundlichen Grüßen",
    "- Thanks -",
    "Pozdrawiam,",
    `Thanks${" ".repeat(53)}`,
  ])("%j", (line) => {
    expect(isGoodBye(line)).toBe(true);
  });

  test.each([
    "Thanks for nothing",
    "No thanks",
    "Best to hold it",
    "Thanks and make it red",
    "Have a look at the red one day",
    "Have a really nice long safe sunny day",
    `Thanks${" ".repeat(54)}`,
  ])("and not with %j", (line) => {
    expect(isGoodBye(line)).toBe(false);
  });
});

describe("a sentence of a disclaimer or a banner", () => {
  test.each([
    "This message is confidential.",
    "If you have received this e-mail in error, delete it.",
    "[EXTERNAL]",
    "*** Caution: mail from outside ***",
    "EXTERNAL",
    "Caution!",
    "Sent from my phone",
    "Think before you click",
    "Office hours: 8 to 4",
    "Est. 1962",
    "Family owned since 1952 | Ashcombe",
    "Sent with Larkmail",
    "Unauthorised use is prohibited.",
    "The contents of this e-mail are privileged.",
    "We accept no liability for viruses in attachments.",
    "All mails are monitored.",
    "This message was checked by our mail program",
    "Subscribe to our newsletter",
    "Follow us on Facebook",
    "LinkedIn | Facebook | Instagram",
    "Find more on our website",
    "Do not click links in it",
    "Use caution when opening it",
    "----- Original Message -----",
    "Save paper!",
    "AVIS DE CONFIDENTIALITÉ : ce courriel est destiné à une personne.",
    `${"x".repeat(1989)} disclaimer`,
  ])("%j", (sentence) => {
    expect(isBoilerplate(sentence)).toBe(true);
  });

  test.each([
    "The external wall",
    "Caution: two of them are left-handed",
    "Confidential: engrave two more",
    "reliable",
    "The tenant is confidential",
    "These are intended for the north wing only",
    "Since 1904 goes below the name",
    "Opening hours go on the lobby one",
    "Use caution with the gold one",
    "The original message still stands",
    "Think green, like the hall doors",
    "Don't click anything until I call",
    "Newsletter room is gone",
    "Sign up room is now called Welcome",
    "Go by the drawing I sent with my first mail",
    "Spelt as on our website",
    "They were established in 1862",
    `${"x".repeat(1991)} disclaimer`,
    "Office hours: 8 to 4, so wait for us",
  ])("is not %j", (sentence) => {
    expect(isBoilerplate(sentence)).toBe(false);
  });
});
