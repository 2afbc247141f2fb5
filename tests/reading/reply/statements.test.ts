import { describe, expect, test } from "vitest";
import { lineKeysOf } from "../../../src/reading/reply/furniture.ts";
import { type KnownWords, statementsIn, statementsInFiles } from "../../../src/reading/reply/statements.ts";
import type { Letter } from "../../../src/trade/letter.ts";
import { alone } from "../../make/came.ts";
import { catalogue } from "../../make/config.ts";

const facts: KnownWords["facts"] = {
  numbers: ["EL-100"],
  projects: ["Red Lion Inn"],
  marks: ["S-101"],
  names: ["Dana Whitlock", "Whitlock Controls"],
  files: ["S-101 plate.pdf"],
  finishes: ["Oat", "OAT"],
  otherFinishes: ["Chalk", "Soot"],
  called: new Map(),
  sheets: [],
  earlier: [],
  plates: [1],
  devices: [4],
  attached: [5],
};
const nothing: KnownWords = {
  facts,
  goods: catalogue,
  furniture: new Set(),
  quoted: [],
  understood: new Set(),
};

function read(letter: Partial<Letter>, known: Partial<KnownWords> = {}): string[] {
  const said = statementsIn({ subject: "EL-100", text: "", ...letter }, { ...nothing, ...known });
  // Counts are held against what came: counts.test.ts.
  return said
    .filter(({ kind }) => kind !== "counts")
    .map((one) => (one.kind === "said" ? `${one.where}: ${one.words}` : one.kind));
}
const inText = (text: string, known: Partial<KnownWords> = {}): string[] => read({ text }, known);

test.each(["Attd.", "att'd please find EL-100", "EL-100 att.", "S-101 attchd"])(
  "short forms of “attached” say no more than it: %s",
  (text) => expect(inText(text)).toEqual([]),
);

test.each([
  ["S-101 to 103 here.", true],
  ["S-101/103 attached.", true],
  ["S-101 to 105 here.", false],
])("stations that are named by their numbers say no more than their marks: %s: %s", (text, areKnown) => {
  const marks = ["S-101", "S-102", "S-103"];
  expect(inText(text, { facts: { ...facts, marks } }).length).toBe(areKnown ? 0 : 1);
});

test("both of something of which there are not two are told", () => {
  expect(inText("Sheets for both plates attached.")).toEqual(["text: Sheets for both plates attached."]);
  expect(inText("Sheets for both plates attached.", { facts: { ...facts, plates: [2] } })).toEqual([]);
});

test.each([
  "Sheets for Harbor Clinic attached.",
  "Attached are the sheets for the Tern Point Library.",
  "Two stations at Maple Grove School.",
])("a building that is on no sheet is told: %s", (text) => expect(inText(text)).toEqual([`text: ${text}`]));

test.each(["PO 40-2271", "Red Lion Inn, 40-2271"])(
  "a number like the order's and another is told: %s",
  (subject) =>
    expect(read({ subject }, { facts: { ...facts, numbers: ["40-2217"] } })).toEqual([`subject: ${subject}`]),
);
test.each(["PO 40-2217", "Red Lion Inn, 2026", "Call 555-0163"])(
  "any other number in a subject is not: %s",
  (subject) => expect(read({ subject }, { facts: { ...facts, numbers: ["40-2217"] } })).toEqual([]),
);

test.each([
  "I'd like to know who has our account now.",
  "I'd feel better if somebody looked at these.",
  "I'll get you the last two legends tonight.",
  "The designer is uneasy about the long name.",
  "My wife saw a typo somewhere.",
  "I forgot the two for the attic.",
])("a wish that hides behind its writer is told: %s", (text) =>
  expect(inText(text)).toEqual([`text: ${text}`]),
);

test.each([
  "Sheets for the Red Lion attached.",
  "Sheets for Red Lion Hotel attached.",
  "Please find attached the sheets for Whitlock Offices.",
])("a building by a part of its name is not: %s", (text) => expect(inText(text)).toEqual([]));

describe("sheets that lie behind a link", () => {
  test.each([
    "Two sheets attached, the rest is at https://share.whitlock.example/s/kT7pQ2xZ9d",
    "The other sheets: https://share.whitlock.example/f/8821",
  ])("are told: %s", (text) => expect(inText(`Hi,\n\n${text}\n\nDana Whitlock`)).toEqual([`text: ${text}`]));

  test.each([
    "Sheets attached.\n\nDana Whitlock\nOther offices: https://whitlock.example/places",
    "Sheets attached.\n\nOur website is https://whitlock.example/rest",
  ])("are not meant: %j", (text) => expect(inText(text)).toEqual([]));
});

describe("a wish is told in its own words, and nothing of the cover note around it", () => {
  test.each([
    [
      "Hi,\n\nsheets attached. Please engrave the other one in red, qty 5. Thanks!\n\nDana Whitlock",
      ["text: Please engrave the other one in red, qty 5."],
    ],
    [
      "Sheets attached. Button 1 should say\nMOVIE. Any questions call me.",
      ["text: Button 1 should say", "text: MOVIE."],
    ],
    [
      "Sheets attached.\n\nRegards,\nDana\nWhitlock Controls\n\nPS make it 5 of each",
      ["text: PS make it 5 of each"],
    ],
    ["- S-101: as on the sheet\n- S-102: in red", ["text: - S-102: in red"]],
    ["DO NOT CUT", ["text: DO NOT CUT"]],
    ["Everything in Chalk please.", ["text: Everything in Chalk please."]],
  ])("%j", (text, said) => {
    expect(inText(text)).toEqual(said);
  });
});

describe("words that turn something are talk where the order is not meant", () => {
  test.each([
    ["We are slammed here, not a minute to breathe.", "We could not read button 2."],
    ["My wife's computer would not open the file.", "My wife would not open with these legends."],
    ["First time ordering with you folks, the forms were easy enough.", "The lobby plate first."],
    ["The architect finally signed off, so here they are.", "Cancel S-101, so here they are."],
    ["This is for the job next to the bakery.", "This is for two identical houses."],
    ["Please process the attached.", "Please process the attached once we have paid."],
    ["See the sheets attached.", "Sandblast them."],
    ["Sent from the parking lot.", "tactile please"],
  ])("%j says nothing, but %j does", (talk, wish) => {
    expect(inText(talk)).toEqual([]);
    expect(inText(wish)).toEqual([`text: ${wish}`]);
  });

  test.each([
    "Bitte nicht vor Montag beginnen.",
    "Merci de graver en rouge.",
    "Lo de siempre pero con letras grandes.",
    "Не гравировать",
    "lobby: MOVIE, LUNCH",
    "The chairman asks that his name stand somewhere discreet.",
  ])("%j has not the shape of talk", (wish) => {
    expect(inText(wish)).toEqual([`text: ${wish}`]);
  });
});

describe("what only repeats what came says nothing", () => {
  test.each([
    "Please find attached 1 plate and 4 devices for order EL 100, Red Lion Inn, all in Oat.",
    "Five files: see S-101 plate.pdf and the others.",
    "Plates: 1\nDevices: 4",
  ])("%j", (text) => {
    expect(inText(text)).toEqual([]);
  });

  test.each([
    "Please find attached 1 plate and 5 devices for the lobby.",
    "Sheets for order EL-101 attached.",
    "2 of the plates.",
    "Sheets for station S-102 attached.",
  ])("but a count or a number that is another does: %j", (text) => {
    expect(inText(text)).toEqual([`text: ${text}`]);
  });
});

describe("a subject", () => {
  test.each([
    "Order EL-100 Red Lion Inn",
    "RE: FAIL: order EL-100, 3 things to fix",
    "FW: sheets",
    "[EXTERNAL] Larkspur, second floor",
    "",
  ])("%j says nothing", (subject) => {
    expect(read({ subject })).toEqual([]);
  });

  test.each([
    "CANCEL order EL-100",
    "HOLD",
    "URGENT - need by Friday",
    "Re: CANCEL EL-100",
    "Order EL-101",
    "lead time?",
  ])("%j is a statement", (subject) => {
    expect(read({ subject })).toEqual([`subject: ${subject}`]);
  });

  test("is nothing where it is that of our answer, whatever that says", () => {
    const quoted = [{ subject: "CONFIRM: order EL-100, 1 question to answer", text: "" }];
    expect(read({ subject: "RE: CONFIRM: order EL-100, 1 question to answer" }, { quoted })).toEqual([]);
    const more = "RE: CONFIRM: order EL-100, 1 question to answer - and in gold please";
    expect(read({ subject: more }, { quoted })).toEqual([`subject: ${more}`]);
    for (const subject of ["RE: CONFIRM - hold the order", "FAIL: order EL-100, 1 to fix, in gold"])
      expect(read({ subject }, { quoted })).toEqual([`subject: ${subject}`]);
    for (const subject of [
      "RE: FAIL: order EL-100, 2 to fix, 1 question",
      "RE: CONFIRM: order EL-100, 2 points for a person, 1 sheet to come",
      "RE: PASS: order EL-100, nothing to fix",
      "RE: A PERSON WILL LOOK AT THIS: thank you for your letter",
      "RE: WAITING: order EL-100, more sheets to come",
    ])
      expect(read({ subject }, { quoted })).toEqual([]);
  });
});

describe("furniture", () => {
  const signature =
    "Dana Whitlock\nSenior Estimator\nWhitlock Controls Inc.\n14 Mill Street, Suite 200\nT 608-555-0119";
  const disclaimer =
    "This e-mail is confidential. If you are not the intended recipient, delete it. We are not liable for changes made to it, and nothing in it may be copied.";
  test.each([
    ["a signature", `Sheets attached.\n\n-- \n${signature}`],
    ["a disclaimer", `Sheets attached.\n\n${disclaimer}`],
    ["a banner", "CAUTION: This email originated from outside of the organization.\n\nSheets attached."],
    ["a telephone", "Sheets attached.\n\nSent from my iPhone"],
    ["other people's greetings", "Bonjour,\n\nmerci beaucoup.\n\nCordialement"],
  ])("%s is none", (_, text) => {
    expect(inText(text)).toEqual([]);
  });

  test("that is not known is asked about once, and never in a letter that its key comes with", () => {
    const motto = "Whitlock: gaudium in lumine, lumen in gaudio, et omnia in ordine suo";
    const letter = `Sheets attached.\n\n${motto}`;
    expect(inText(letter)).toEqual([`text: ${motto}`]);
    expect(inText(letter, { furniture: new Set(lineKeysOf(letter)) })).toEqual([]);
  });

  test.each(["Do not cut yet.", "Hold everything.", "5 of each please", "Cancel S-101", "Not yet."])(
    "%j is no furniture, however often it is repeated",
    (wish) => {
      const letter = `Sheets attached.\n\n${wish}`;
      expect(inText(letter, { furniture: new Set(lineKeysOf(letter)) })).toEqual([`text: ${wish}`]);
    },
  );

  test("a wish beside a disclaimer is read", () => {
    expect(inText(`${disclaimer} Engrave S-101 in red.`)).toEqual(["text: Engrave S-101 in red."]);
  });
});

describe("a quotation", () => {
  const quoted = [
    {
      subject: "FAIL: order EL-100",
      text: "Row 2 of button 3 has 11 characters; 8 can be cut.\nShorten it.",
    },
  ];
  test("of our answer says nothing", () => {
    expect(
      inText("Corrected, thanks.\n\n> Row 2 of button 3 has 11 characters; 8 can\n> be cut.\n> Shorten it.", {
        quoted,
      }),
    ).toEqual([]);
  });

  test("with a remark in it says that", () => {
    const text =
      "Corrected.\n\n> Row 2 of button 3 has 11 characters; 8 can be cut.\n> make that 9 for us\n> Shorten it.";
    expect(inText(text, { quoted })).toEqual(["quotation: make that 9 for us"]);
  });

  test("with an unmarked line between its lines says that", () => {
    const text =
      "> Row 2 of button 3 has 11 characters; 8 can be cut.\njust drop the last word\n> Shorten it.";
    expect(inText(text, { quoted })).toEqual(["text: just drop the last word"]);
  });

  test("of another letter is read as one", () => {
    const head = "From: Pete Lund\nSent: Monday, November 9, 2026 8:10 AM\nTo: Dana\nSubject: stations";
    expect(inText(`See below.\n\n${head}\n\nDana, sheets attached, but in red. Pete`)).toEqual([
      "text: Dana, sheets attached, but in red.",
    ]);
  });
});

describe("other texts", () => {
  test("of a letter count as its own", () => {
    const otherTexts = ["Sheets attached.", "From:\nSubject: CANCEL EL-100\n\nDo not cut."];
    expect(read({ otherTexts })).toEqual(["quotation: Subject: CANCEL EL-100", "text: Do not cut."]);
  });

  test("that cannot be known are told", () => {
    expect(read({ textUnsure: true })).toEqual(["unsure"]);
  });

  test("that are too long are told, and not read", () => {
    expect(inText("Sheets attached. ".repeat(7000))).toEqual(["long"]);
  });
});

test("lines that answer what was asked say nothing more", () => {
  const understood = new Set(["3 YES"]);
  expect(inText("3 YES\n\nThanks", { understood })).toEqual([]);
  expect(inText("4 YES\n\nThanks", { understood })).toEqual(["text: 4 YES"]);
});

test("no more than eight sentences are told, each in one line", () => {
  const said = inText(
    Array.from({ length: 40 }, (_, i) => `Change number ${i}: ${"x ".repeat(300)}.`).join("\n"),
  );
  expect(said).toHaveLength(8);
  expect(Math.max(...said.map(({ length }) => length))).toBeLessThanOrEqual("text: ".length + 200);
});

describe("where a signature begins", () => {
  test("no first line does, since nothing stands above it", () => {
    expect(inText("Dana Whitlock\n14 Dock Road")).toEqual(["text: 14 Dock Road"]);
    expect(inText("See below.\nDana Whitlock\n14 Dock Road")).toEqual([]);
  });

  test("no name does that may be a wish", () => {
    const named = { facts: { ...facts, names: ["Dana Hold"] } };
    expect(inText("See below.\nhold\n14 Dock Road", named)).toEqual(["text: hold", "text: 14 Dock Road"]);
  });
});

test("a dash within a word joins nothing to a count", () => {
  const said = statementsIn({ subject: "EL-100", text: "See -below. 12 devices attached." }, nothing);
  expect(said.map(({ kind }) => kind)).toEqual(["counts"]);
});

test("a text of a hundred thousand characters is read, a longer one is for a person as it is", () => {
  expect(inText("\n".repeat(100_000))).toEqual([]);
  expect(inText("\n".repeat(100_001))).toEqual(["long"]);
});

test("a sentence of a thousand characters is read, a longer one is told unless it is a disclaimer", () => {
  const thanks = `${"Thanks ".repeat(142)}Thanks`;
  expect(inText(thanks)).toEqual([]);
  expect(inText(`${thanks}!`)).toHaveLength(1);
  expect(inText(`This message is confidential ${thanks}`)).toEqual([]);
});

test("of what is told two hundred characters are shown", () => {
  const wish = (length: number): string => `Engrave it in red ${"x".repeat(length - 18)}`;
  expect(inText(wish(200))).toEqual([`text: ${wish(200)}`]);
  expect(inText(wish(201))).toEqual([`text: ${wish(199)}…`]);
});

describe("below whoever signs stands who that is", () => {
  test.each([
    "Sheets attached.\n\nRegards,\nsenior estimator",
    "Regards,\nsenior estimator",
    "Sheets attached.\n--\nsenior estimator",
    "Sheets attached.\nDana Whitlock\nsenior estimator",
    "Sheets attached.\nDana Whitlock Whitlock Controls\nsenior estimator",
    "Sheets attached.\n\nMarta Vireton\nsenior estimator",
    "Sheets attached.\n\nRegards,\nDana\nAll orders are subject to our standard terms.",
    "Sheets attached. Have a great day!",
    "Sheets attached. Marta",
    "Sheets attached.\n\nMarta",
    "Sheets attached.\n\nAnn Bo Cy Di",
    "Sheets attached.\n\nMarta (coordination)",
    "Sheets attached.\n\n~~~~\n\nDana Whitlock",
  ])("and nothing is told: %j", (text) => expect(inText(text)).toEqual([]));

  test.each([
    ["Sheets attached.\nMarta Vireton\nsenior estimator", 2],
    ["Sheets attached.\n\nsenior estimator\n\nRegards,\nDana", 1],
    ["Sheets attached.\nDana, Whitlock Controls, Dana Whitlock\nsenior estimator", 1],
    ["Sheets attached.\n\nAnn Bo Cy Di Ed", 1],
    ["Sheets attached.\n\nMarta (administratione)", 1],
    ["Sheets attached.\n\nMake Brass", 1],
    ["Sheets attached.\n\nit is Brass", 1],
    ["Sheets attached.\n\nBrass (two)!", 1],
    ["-- make it red", 1],
  ])("and elsewhere it is told: %j", (text, told) => expect(inText(text)).toHaveLength(told));
});

test("what stands beside a disclaimer is told if it speaks of the trade", () => {
  expect(inText("This message is confidential. Its use by others is not allowed.")).toEqual([]);
  expect(inText("Its use by others is not allowed.")).toHaveLength(1);
  expect(inText("This message is confidential. Cut it in brass.")).toEqual(["text: Cut it in brass."]);
});

test("a count stands beside what else is told", () => {
  const all = statementsIn({ subject: "EL-100", text: "Make it red.\n\n2 devices attached." }, nothing);
  expect(all.map(({ kind }) => kind)).toEqual(["said", "counts"]);
});

test("counts in what somebody quotes were read when it was written", () => {
  const quoting = (line: string): string[] => inText(`Hello\n\n> ${line}`);
  expect(quoting("4 devices attached.")).toEqual([]);
  expect(quoting("7 devices in red.")).toHaveLength(1);
});

describe("a text that is attached", () => {
  const inFile = (text: string, more: { unsure?: true } = {}): string[] =>
    statementsInFiles([{ file: "a.txt", text, ...more }], nothing).map(({ kind }) => kind);
  test("is as long as a letter at most, together with others", () => {
    expect(inFile(" ".repeat(100_000))).toEqual([]);
    expect(inFile(" ".repeat(100_001))).toEqual(["long"]);
    const half = { file: "a.txt", text: " ".repeat(50_001) };
    expect(statementsInFiles([half, { ...half, file: "b.txt" }], nothing)).toEqual([
      { kind: "long", file: "b.txt" },
    ]);
  });
  test("may be read by guess, and that is told", () => {
    expect(inFile("Hello")).toEqual([]);
    expect(inFile("Hello", { unsure: true })).toEqual(["unsure"]);
  });
});

describe("what is held against the sheets", () => {
  const sheets = [alone("S-1", ["ON", "DIM", "ALL OFF"])];
  const held = (text: string): string[] => inText(text, { facts: { ...facts, sheets } });
  test.each([
    "S-1 ON / DIM / ALL OFF",
    "The owner wants DIM.",
    "S-1 is the lobby.",
    "The lobby is a three-button.",
  ])("is not told if it is so: %s", (text) => expect(held(text)).toEqual([]));
  test.each([
    "S-1 ON / ALL OFF / DIM",
    "The owner wants GLOW.",
    "The lobby is a two-button.",
    "This is only a test run.",
  ])("is told otherwise: %s", (text) => expect(held(text)).toEqual([`text: ${text}`]));

  test("“both attached” is so where two of something came", () => {
    const both = (attached: number[]): string[] =>
      inText("Both attached.", { facts: { ...facts, attached } });
    expect(both([2])).toEqual([]);
    expect(both([3])).toEqual(["text: Both attached."]);
    expect(both([5])).toEqual(["text: Both attached."]);
  });
});

test.each([
  "The finance lady approved it without a single question, which never happens.",
  "im Anhang die Bestellblätter für Red Lion Inn.",
  "Veuillez trouver ci-joint notre commande.",
  "Sheets attached. (This message is confidential; find our other files at https://whitlock.example.)",
])("nothing is told of “%s”", (text) => expect(inText(text)).toEqual([]));

test.each([
  "The building has been sold.",
  "We lost the job.",
  "Everything in 2 colors.",
  "The wall is 14 deep.",
])("“%s” is told", (text) => expect(inText(text)).toEqual([`text: ${text}`]));

test("headers of a letter that somebody forwards are not told, and what stands below them is", () => {
  const text = "See below.\n\n> From: Ann Vireton\n> Importance: high\n> To: Dana\n> Make it red.";
  expect(inText(text)).toEqual(["quotation: Make it red."]);
});
