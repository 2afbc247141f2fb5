import { describe, expect, test } from "vitest";
import { describes } from "../../../src/reading/reply/describes.ts";
import type { LetterFacts } from "../../../src/reading/reply/tallies.ts";
import type { Sheet } from "../../../src/trade/sheet.ts";
import { alone, came } from "../../make/came.ts";
import { deviceAt, plate } from "../../make/sample.ts";

const about = (sheets: readonly Sheet[], more: Partial<LetterFacts> = {}): LetterFacts => ({
  ...came(sheets),
  numbers: ["BW-2207"],
  projects: ["Larkspur Library"],
  marks: sheets.flatMap(({ mark = [] }) => mark),
  files: [],
  otherFinishes: ["Chalk", "Soot"],
  called: new Map([
    ["OAT", "Oat"],
    ["SLT", "Slate"],
  ]),
  plates: [sheets.filter(({ kind }) => kind === "plate").length],
  devices: [sheets.filter(({ kind }) => kind === "device").length],
  attached: [sheets.length],
  ...more,
});

const mudroom = alone("S-1", ["ON", "DIM", "ALL OFF"], "MUDROOM", { finish: "OAT", lettering: "Ink" });
const garage = alone("S-2", ["LIGHTS"], "GARAGE SIDE", { finish: "SLT", lettering: "Ink" });
const three = about([mudroom, garage]);
const studios = about([
  plate({ mark: "S-4", gangs: 2 }, { "1": ["YOGA"], "2": ["SPIN"] }),
  deviceAt(1, { mark: "S-4" }),
  deviceAt(2, { mark: "S-4" }),
]);

describe("a sentence that describes the sheets, and truly", () => {
  test.each([
    ["One button for the garage side door and a three button for the mud room.", three],
    ["Mudroom is Oat and the garage side is Slate.", three],
    ["Here are the two stations for Larkspur Library, one device in each room.", three],
    ["S-1 is the mudroom.", three],
    ["Mudroom and garage side are right as typed.", three],
    ["Here's the set for the library, one plate and the two devices.", studios],
    ["Yoga and spin, left to right, same finish throughout.", studios],
    ["Two-gang plate with the devices: yoga, spin.", studios],
  ] as const)("%s", (words, facts) => expect(describes(words, facts)).toBe(true));
});

describe("what is untrue of them, or more than a description, is none", () => {
  test.each([
    ["another size", "One button for the mud room.", three],
    ["another finish", "Mudroom is Slate.", three],
    ["another room", "S-1 is the garage.", three],
    ["a room of no sheet", "One for the attic.", three],
    ["another count", "Here are the three stations.", three],
    ["another count in figures", "Here are the 3 stations.", { ...three, files: ["S-3 pos 3.pdf"] }],
    ["two finishes that are not the same", "Same finish throughout.", three],
    ["gangs in another order", "Spin and yoga, left to right.", studios],
    ["another plate", "Three-gang plate for yoga.", studios],
    ["a device in a plate", "One device in each room.", studios],
    ["a legend for another", "DIM is ALL OFF.", three],
    ["one room for all", "Both are for the mudroom.", three],
    ["some of the buttons", "Mudroom, ON and ALL OFF.", three],
    ["a place", "Mudroom is on the right.", three],
    ["a number of pieces", "One of each.", three],
    ["an order", "Name it mudroom.", three],
    ["a question", "Is it the mudroom?", three],
    ["a look", "Small names on the plates.", three],
  ] as const)("%s: %s", (_, words, facts) => expect(describes(words, facts)).toBe(false));

  test("nothing is described where no sheet came", () =>
    expect(describes("Sheets attached.", about([]))).toBe(false));
});
