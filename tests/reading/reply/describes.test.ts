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
const den = about([alone("S-3", ["BRIGHT", "DIM", "DARK"], "DEN")]);
const island = about([alone("S-3", ["LIGHTS"], "ISLAND")]);
const garages = about([alone("S-1", ["LIGHTS"], "GARAGE DOOR"), alone("S-2", ["LIGHTS"], "GARAGE SIDE")]);
const unlike = about([alone("S-1", ["ON", "OFF"], "GARAGE DOOR"), alone("S-2", ["LIGHTS"], "GARAGE SIDE")]);
const gyms = about([alone("S-3", ["LIGHTS"], "GYM")]);
const ways = about([alone("S-1", ["LIGHTS"], "HALL"), alone("S-2", ["LIGHTS"], "ALLEY")]);
const plainFace = about([alone("S-3", ["BRIGHT", "", "DARK"], "DEN")]);
const sized = about([
  plate({ mark: "S-4", gangs: 2 }, { "1": ["YOGA"], "2": ["SPIN"] }),
  alone("S-4", ["A", "B", "C"], "", { position: 1 }),
  alone("S-4", ["D"], "", { position: 2 }),
]);
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
    ["Names: mudroom and garage side.", three],
    ["S-1 is for the mudrooms.", three],
    ["Gyms", gyms],
    ["A three-button and a one-button.", three],
    ["Both are for the garage.", garages],
    ["Same buttons in both.", garages],
    ["One is for the hall.", ways],
    ["One is for the alley.", ways],
    ["Den: bright dim dark.", den],
    ["Den with bright and dark.", plainFace],
    ["Yoga is a three-button, spin a one-button.", sized],
    ["Mudroom and garage side are right as typed.", three],
    ["Here's the set for the library, one plate and the two devices.", studios],
    ["Yoga and spin, left to right, same finish throughout.", studios],
    ["Two-gang plate with the devices: yoga, spin.", studios],
    ["2-gang plate, yoga and spin.", studios],
    ["Two-Gang plate for yoga and spin.", studios],
    ["The mudroom is a 3-button.", three],
    ["Mudroom is just like the owner picked.", three],
    ["Mudroom, all as it is on the sheets.", three],
    ["Mudroom on the second floor.", three],
    ["The devices that go in it: yoga, spin.", studios],
    ["Two sheets.", three],
    ["Three sheets.", studios],
    ["Two files.", three],
    ["Two keypads.", three],
    ["Two rooms.", three],
    ["Both stations.", three],
    ["Both attached.", three],
    ["Names are for the mudroom.", three],
    ["Same legends for both.", garages],
    ["Yoga and yoga, left to right.", studios],
  ] as const)("%s", (words, facts) => expect(describes(words, facts)).toBe(true));
});

describe("what is untrue of them, or more than a description, is none", () => {
  test.each([
    ["another size", "One button for the mud room.", three],
    ["another size in a plate", "Spin is a three-button.", sized],
    ["another finish", "Mudroom is Slate.", three],
    ["another size in figures", "The mudroom is a 2-button.", three],
    ["a size that one of two devices has", "The garage side is a 3-button.", three],
    ["a size that one of two garages has", "The garage is a one-button.", unlike],
    ["a plate where none came", "Left to right.", three],
    ["both of one", "Both stations.", den],
    ["another count of sheets", "Three sheets.", three],
    ["another count of rooms", "Three rooms.", three],
    ["another count of keypads", "Three keypads.", three],
    ["an order for a finish", "Mudroom in Chalk.", three],
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
    ["one room for all of them", "All for the hall.", ways],
    ["some of the buttons", "Mudroom, ON and ALL OFF.", three],
    ["some of three buttons", "Den with bright and dark.", den],
    ["a count of what nobody counts", "Four legends.", three],
    ["other buttons", "Same buttons in both.", three],
    [
      "a device for each of several rooms beside a plate",
      "One device in each room.",
      about([mudroom, garage, plate({ mark: "S-4" })]),
    ],
    ["a place", "Mudroom is on the right.", three],
    ["a number of pieces", "One of each.", three],
    ["a number of all pieces", "One of everything.", three],
    ["an order", "Name it mudroom.", three],
    ["an order that begins like a description", "Name island.", island],
    ["a question", "Is it the mudroom?", three],
    ["a look", "Small names on the plates.", three],
  ] as const)("%s: %s", (_, words, facts) => expect(describes(words, facts)).toBe(false));

  test("nor are more than three hundred characters", () => {
    const long = `Mudroom${" mudroom".repeat(36)}`;
    expect(describes(`${long}${".".repeat(5)}`, three)).toBe(true);
    expect(describes(`${long}${".".repeat(6)}`, three)).toBe(false);
  });

  test("nothing is described where no sheet came", () =>
    expect(describes("Sheets attached.", about([]))).toBe(false));
});

describe("what is said of all the sheets holds for each", () => {
  const [den, twin] = ["S-1", "S-2"].map((mark) => alone(mark, ["LIGHTS"], "DEN"));
  test.each([
    ["One device in each room.", about([den, twin].flatMap((one) => one ?? [])), false],
    ["One device in each room.", about([den].flatMap((one) => one ?? [])), true],
    ["Same legends for both.", studios, true],
    ["The mudroom is right of it.", three, false],
    ["The mudroom is right.", three, true],
  ] as const)("%s %#: %s", (words, facts, is) => expect(describes(words, facts)).toBe(is));
});

describe("what a sentence says of one room, of a count or a size", () => {
  const [gangs, devices] = [
    [plate({ mark: "S-4", gangs: 2 }, { "1": ["YOGA"], "2": ["SPIN"] })],
    [alone("S-4", ["A", "B", "C"], "", { position: 1 }), alone("S-4", ["D"], "", { position: 2 })],
  ];
  const halls = plate({ mark: "S-5", gangs: 2 }, { "1": ["FOYER"], "2": ["GYM"] });
  const triple = alone("S-5", ["A", "B", "C"], "", { position: 1 });
  const blank = alone("S-3", ["BRIGHT", "", "DARK"], "DEN");
  const withBlank = {
    ...blank,
    legends: blank.legends.map((one) => ({ ...one, plain: one.rows[0] === "" })),
  };
  test.each([
    ["Yoga is a three-button, spin a one-button.", about([...devices, ...gangs]), true],
    ["Foyer is a three-button.", about([...gangs, halls, triple]), true],
    ["Mudroom.", about([alone("S-1", ["ON"], "MUD ROOM")]), true],
    ["Both plates.", three, false],
    ["Both attached.", den, false],
    ["Devices for two rooms.", studios, false],
    ["The mudroom is a two-gang.", three, false],
    ["The den has bright for dark.", about([alone("S-3", ["BRIGHT", "DARK"], "DEN")]), false],
    ["Den with bright and dark.", about([withBlank]), true],
    ["Three legends.", studios, false],
    [
      "Yoga and yoga in the two-gang.",
      about([plate({ mark: "S-4", gangs: 2 }, { "1": ["YOGA"], "2": ["YOGA"] })]),
      true,
    ],
    ["Islands.", island, true],
    ["The TVs.", about([alone("S-3", ["LIGHTS"], "TV ROOM")]), false],
  ] as const)("%s %#: %s", (words, facts, is) => expect(describes(words, facts)).toBe(is));
});
