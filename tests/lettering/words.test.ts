import { assert, property, string } from "fast-check";
import { expect, test } from "vitest";
import { withBuildings } from "../../src/lettering/buildings/known.ts";
import { readGlossary } from "../../src/lettering/glossary.ts";
import { judgeWord } from "../../src/lettering/judge-word.ts";
import { isUsualSlip } from "../../src/lettering/keyboard.ts";
import { isShortened, isSqueezed, slips } from "../../src/lettering/slips.ts";
import { areUsual } from "../../src/lettering/usual.ts";
import { makeWords } from "../../src/lettering/words.ts";
import { catalogue, dictionary, glossary } from "../make/config.ts";

const { words } = catalogue;
const american = { "en-US": dictionary("dictionary-en") };
const everywhere = makeWords(glossary, {
  ...american,
  fr: dictionary("dictionary-fr"),
  es: dictionary("dictionary-es"),
});

test.each(["RECEPTION", "reception", "Café", "COLOR", "COLOUR", "CENTRE", "THEATRE", "CHICAGO", "KIDS'"])(
  "%s is a right word",
  (text) => expect(words.isWord(text)).toBe(true),
);

test.each(["RECEPTOIN", "KITCHN", "ROO", "QZX"])("%s is no word", (text) =>
  expect(words.isWord(text)).toBe(false),
);

// USPS Publication 28, secondary unit designators, from memory.
test.each("APT BLDG DEPT FL HNGR KEY LBBY LOT LOWR OFC PH RM STE UNIT UPPR".split(" "))(
  "the postal designator %s is known",
  (text) => expect(words.expansions(text).length > 0 || words.isWord(text)).toBe(true),
);

test.each([
  ["RECEPTOIN", "RECEPTION"],
  ["KITHCEN", "KITCHEN"],
  ["BRIHGT", "BRIGHT"],
  ["BLINSD", "BLINDS"],
])("for %s the first suggestion is %s", (typed, meant) => expect(words.suggest(typed)[0]).toBe(meant));

// Common words of rooms and switches, from memory.
test.each(
  "MARCHE ARRÊT ARRET ÉCLAIRAGE ECLAIRAGE L'ENTREE SŒUR SOEUR ENCENDIDO BAÑO BANO SALÓN KITCHEN".split(" "),
)("%s is a right word where English, French and Spanish are named", (text) =>
  expect(everywhere.isWord(text)).toBe(true),
);

test("of a language that is not named only words of rooms and switches are known", () => {
  expect(["ECLAIRAGE", "ENCENDIDO", "GRENIER", "TEJADO"].map(words.isWord)).toEqual([
    true,
    true,
    false,
    false,
  ]);
});

test("suggestions come from all named languages, words of legends first", () => {
  expect(["CUSIINE", "COCIINA", "ECLAIRRAGE"].map((typed) => everywhere.suggest(typed)[0])).toEqual([
    "CUISINE",
    "COCINA",
    "ECLAIRAGE",
  ]);
  // CHAPPE and CHAPEL are as near; one is French, the other a word of legends.
  expect(everywhere.suggest("CHAPPEL")[0]).toBe("CHAPEL");
});

test("a word of French alone is no slip from a common one of English", () => {
  expect([everywhere.likelier("BALCON"), everywhere.likelier("HAUL")]).toEqual([undefined, "HALL"]);
});

// kitten/sitting 3 and CA/ABC 3 are the values of optimal string alignment.
test("slips are counted by optimal string alignment", () => {
  expect([slips("KITTEN", "SITTING"), slips("CA", "ABC"), slips("FORM", "FROM")]).toEqual([3, 3, 1]);
});

test("the beginning of a word is completed by words of legends first", () => {
  expect(words.completions("RECEPTIO")[0]).toBe("RECEPTION");
  expect(words.completions("ROO")[0]).toBe("ROOM");
  expect(words.completions("REFRIGERATIO")).toEqual(["REFRIGERATION"]);
});

test("a right word one slip from a common word of legends has a likelier one", () => {
  expect(words.likelier("HAUL")).toBe("HALL");
  expect([words.likelier("ROOMS"), words.likelier("PATH"), words.likelier("RAISED")]).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});

// Common practice, no source.
test.each([
  // By its neighbours.
  ["FOX", ["JURY"], [], [], "BOX"],
  ["POLL", ["FLAG"], [], [], "POLE"],
  ["FIST", ["BREAK"], [], [], "FAST"],
  // By what English has side by side.
  ["FACE", ["SLOW"], [], [], "FADE"],
  ["ROOF", ["EMERGENCY"], [], [], "ROOM"],
  ["BAIL", ["DISCO"], [], [], "BALL"],
  ["STRIPE", ["MAGNETIC"], [], [], undefined],
  ["TOWER", [], ["DIVING"], [], undefined],
  // By the rest of the device.
  ["BIRTH", [], ["2"], [["GALLEY"], ["COCKPIT"], ["BERTH", "1"]], "BERTH"],
  [
    "LIFT",
    ["STAGE"],
    [],
    [
      ["STAGE", "RIGHT"],
      ["STAGE", "CENTER"],
    ],
    "LEFT",
  ],
  // By itself.
  ["PRINCIPLE", [], [], [], "PRINCIPAL"],
  // Right as it stands.
  ["BOX", ["JURY"], [], [], undefined],
  ["COUNCIL", [], ["CHAMBER"], [], undefined],
  ["MAIL", [], ["RM"], [], undefined],
  ["NEW", [], ["PEWS"], [], undefined],
  [
    "LIFT",
    ["PIT"],
    [],
    [
      ["STAGE", "RIGHT"],
      ["STAGE", "LEFT"],
    ],
    undefined,
  ],
  ["RIGHT", ["BED"], [], [["BED", "LEFT"]], undefined],
  ["RIGHT", ["BED"], [], [["BATH"]], "LIGHT"],
] as const)("%s behind %j, before %j, beside %j was typed for %s", (text, before, after, beside, meant) =>
  expect(words.likelier(text, { before, after, beside })).toBe(meant),
);

// The probabilities behind are those of the language model of Debian's pocketsphinx-en-us: areUsual() has its pairs.
test("of words side by side English has some often, and some mostly", () => {
  expect([areUsual("SLOW", "FADE"), areUsual("AIR", "VENT"), areUsual("SLOW", "FACE")]).toEqual([
    true,
    true,
    false,
  ]);
  expect([areUsual("SLOW", "FADE", true), areUsual("AIR", "VENT", true)]).toEqual([false, true]);
});

test.each([
  ["MAYPR'S", "misspelt", ["MAYOR'S"]],
  ["NGOZI'S", "name", []],
  ["OKAFOR", "name", []],
  ["BUTH", "misspelt", ["BATH"]],
  ["ZUCKPATEL", "unknown", []],
  ["DELIB", "unknown", ["DELIBERATION"]],
  ["MENS", "right", undefined],
  ["LOBBYS", "misspelt", ["LOBBY"]],
  ["HIGHROOM", "unknown", ["HIGH ROOM"]],
  ["WARMRM", "unknown", ["WARM ROOM"]],
  ["GHOSTLT", "unknown", ["GHOST LIGHT"]],
  ["STEPLTS", "unknown", ["STEP LIGHTS"]],
  ["BACKLITE", "unknown", ["BACK LIGHT"]],
  ["UPLITES", "unknown", ["UP LIGHTS"]],
  ["SATELITE", "misspelt", ["SATELLITE"]],
  ["KINDERGARDEN", "misspelt", ["KINDERGARTEN"]],
  ["PROSCEN", "unknown", ["PROSCENIUM"]],
] as const)("%s in no list is %s, and meant %j", (text, is, meant) => {
  const place = { text, before: [], after: [], beside: [], atLimit: false, joined: [] };
  expect(judgeWord(place, words, () => false)).toEqual({ is, meant });
});

// Published: the ordinal samples of "en" in Unicode CLDR, plural rules (one: 1, 21, 31; two: 2, 22; few: 3, 23; other: 11 to 13).
test("an ordinal has the ending of its number", () => {
  const judged = (text: string) =>
    judgeWord({ text, before: [], after: [], beside: [], atLimit: false, joined: [] }, words, () => false);
  const right =
    "1ST 2ND 3RD 4TH 10TH 11TH 12TH 13TH 20TH 21ST 22ND 23RD 31ST 101ST 111TH 112TH 113TH 1st 42nd";
  for (const one of right.split(" ")) expect(judged(one), one).toEqual({ is: "right" });
  for (const [typed, meant] of [
    ["2ST", "2ND"],
    ["3TH", "3RD"],
    ["11ST", "11TH"],
    ["21TH", "21ST"],
    ["112ND", "112TH"],
    ["4rd", "4TH"],
  ] as const)
    expect(judged(typed), typed).toEqual({ is: "misspelt", meant: [meant] });
});

test("behind a title stands a name", () => {
  const judged = (before: string) =>
    judgeWord(
      { text: "PANELL", before: [before], after: [], beside: [], atLimit: false, joined: [] },
      words,
      () => false,
    ).is;
  expect([judged("DR"), judged("AV")]).toEqual(["name", "misspelt"]);
});

test("a word is short for another when three letters or more are left out and nothing else is changed", () => {
  expect(isShortened("CHMBRS", "CHAMBERS")).toBe(false);
  expect(isShortened("BACKLT", "BACKLIGHT")).toBe(true);
  expect(isShortened("PROSC", "PROSCENIUM")).toBe(true);
  expect(isShortened("BALLRO", "BALLROOMS")).toBe(false);
  expect(isShortened("TLITE", "TWILIGHT")).toBe(false);
});

test("slips that hands often make", () => {
  const pairs = ["PORHC PORCH", "GALLEU GALLEY", "HAL HALL", "FACULTE FACULTY", "DELI HELI", "STUD STBD"];
  expect(
    pairs.map((pair) => isUsualSlip(pair.slice(0, pair.indexOf(" ")), pair.slice(pair.indexOf(" ") + 1))),
  ).toEqual([true, true, true, true, false, false]);
});

test.each(["LINAC", "HAMMAM", "ZENDO"])("%s is the name of a room, and no slip", (text) => {
  expect(
    judgeWord({ text, before: [], after: [], beside: [], atLimit: false, joined: [] }, words, () => false),
  ).toEqual({
    is: "right",
  });
});

test("what a desk's own glossary says holds over what is known of buildings", () => {
  const read = readGlossary("[common words]\nNARTHEX\n[abbreviations]\nFP = FLOOR PLAN", "glossary.txt");
  if (!read.ok) throw new Error("the glossary did not read");
  const all = withBuildings(read.value, "Okafor\nPatel");
  expect(all.words.get("NARTHEX")).toBe(true);
  expect(all.abbreviations.get("FP")?.[0]).toBe("FLOOR PLAN");
  expect(all.names.has("PATEL")).toBe(true);
});

test("a word is squeezed when two vowels or more are left out and nothing else", () => {
  expect(isSqueezed("CHANDLR", "CHANDELIER")).toBe(true);
  expect(isSqueezed("KITCHN", "KITCHEN")).toBe(false);
  expect(isSqueezed("CLSSRM", "CLASSROOM")).toBe(true);
  expect(isSqueezed("HALWY", "HALLWAY")).toBe(false);
});

test("a word confirmed for a project is known there and nowhere else", () => {
  const read = readGlossary("[project Larkspur Library]\nNimbus", "glossary.txt");
  if (!read.ok) throw new Error("the glossary did not read");
  const own = makeWords(read.value, american);
  expect(own.isConfirmed("NIMBUS", "larkspur-library")).toBe(true);
  expect(own.isConfirmed("NIMBUS", "Kestrel Hotel")).toBe(false);
  expect(own.isConfirmed("CUMULUS", "Larkspur Library")).toBe(false);
});

test("lines of a glossary that mean nothing are told by their number", () => {
  const read = readGlossary("LOOSE\n[wrods]\n[abbreviations]\nRM\n", "glossary.txt");
  expect(read.ok ? [] : read.faults.map(({ line }) => line)).toEqual([1, 2, 4]);
});

test("what the glossary abbreviates is not itself a word spelt wrong", () => {
  const long = [...glossary.abbreviations.values()].flat().flatMap((phrase) => phrase.split(/[ -]/));
  expect(long.filter((word) => !words.isWord(word))).toEqual([]);
});

// Common practice, no source.
test.each(["STAIR", "ZONE", "RM", "BALLRM", "FLR", "escalier"])("a letter may stand behind %s", (text) =>
  expect(words.isLettered(text)).toBe(true),
);

test.each(["LIGHTS", "SHADES", "DINING", "QZX", ""])("a letter behind %s is no name of it", (text) =>
  expect(words.isLettered(text)).toBe(false),
);

test("of what begins so, what often stands behind a word is known, by its abbreviation too", () => {
  expect(words.followers("LIGHTS", "O")).toEqual(["ON", "OFF"]);
  expect(words.followers("shades", "u")).toEqual(["UP"]);
  expect(words.followers("SCRN", "D")).toEqual(["DOWN"]);
  expect(words.followers("DINING", "ROOM")).toEqual([]);
  expect(words.followers("QZX", "O")).toEqual([]);
  expect(words.followers(undefined, "O")).toEqual(["ON", "OFF"]);
});

test("the glossary's followers have two sides", () => {
  const read = readGlossary(
    "[followers]\nSHADE SHADES = UP DOWN\nSHADES = OPEN\nFAN\nFAN =\n",
    "glossary.txt",
  );
  expect(read.ok ? [] : read.faults.map(({ line }) => line)).toEqual([4, 5]);
});

test("any text can be asked about", () => {
  assert(
    property(string({ unit: "grapheme", maxLength: 12 }), (text) => {
      for (const near of [
        ...words.suggest(text),
        ...words.completions(text),
        ...words.followers(text, ""),
        ...words.followers(undefined, text),
      ])
        expect(near).toBe(near.toUpperCase());
    }),
    { numRuns: 50 },
  );
});
