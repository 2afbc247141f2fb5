import { describe, expect, test } from "vitest";
import {
  isFulfilled,
  listedIn,
  speaksOtherwise,
  withoutShares,
} from "../../../src/reading/reply/against-sheets.ts";
import { alone, came } from "../../make/came.ts";
import { plate } from "../../make/sample.ts";

const three = alone("S-1", ["ON", "DIM", "ALL OFF"]);

describe("lines of a list", () => {
  const hall = alone("S-2", ["BRIGHT", "DIM", "OFF"], "GREAT HALL");
  test.each([
    ["S-2  Great hall  BRIGHT / DIM / OFF", "agrees"],
    ["S-2: bright, dim, off", "agrees"],
    ["S-2 BRIGHT / OFF / DIM", "differs"],
    ["S-2 Great hall BRIGHT / DIM / LOW", "differs"],
    ["S-2 is for the great hall", undefined],
    ["S-2 has BRIGHT and OFF", undefined],
    ["S-2 BRIGHT / OFF, and DIM", "differs"],
    ["S-2 BRIGHT / OFF", undefined],
    ["S-2 BRIGHT / LAMP / FAN", undefined],
    ["K1  READ / SLEEP", "agrees"],
    ["S-3 BRIGHT / DIM / OFF", undefined],
    ["S-2", undefined],
    ["S-5 ON", undefined],
    ["BRIGHT / DIM / LOW", undefined],
  ])("%s: %s", (line, is) => {
    const others = [alone("S-5", ["ON"], ""), alone("", ["BRIGHT", "DIM"]), alone("K1", ["READ", "SLEEP"])];
    expect(listedIn(line, came([three, hall, ...others]))).toBe(is);
  });
});

describe("counts of several orders", () => {
  const two = came(
    ["EL-1", "EL-1", "EL-2"].map((order, i) =>
      alone(`S-${i}`, ["ON"], "LOBBY", { order, project: `House ${order}` }),
    ),
  );
  test("right ones become signs, and of wrong ones the digits stay", () => {
    expect(withoutShares("two for EL-1 and one for EL-2", two)).not.toMatch(/\d for|two|one/u);
    expect(withoutShares("one for EL-1, two sheets for the order EL-2", two)).toMatch(/#1 for.*#2 for/u);
  });
  test("of one order nothing is looked for", () => {
    expect(withoutShares("two for EL-1", came([three]))).toBe("two for EL-1");
  });
});

describe("one more that takes the place of another", () => {
  test.each([
    ["And one more for this order, the lab.", true],
    ["Owner added a station.", true],
    ["One more correction.", false],
    ["Sending it one more time.", false],
    ["Corrected sheet attached.", false],
  ])("%s: %s", (words, is) => {
    expect(speaksOtherwise(words, came([three], [three]))).toBe(is);
    expect(speaksOtherwise(words, came([three, alone("S-9", ["ON"])], [three]))).toBe(false);
  });
});

describe("words that are untrue of the sheets are told, whatever stands beside them", () => {
  const lobby = alone("S-1", ["ON", "DIM", "OFF"]);
  const rest = alone("S-52", ["ON", "OFF"], "BREAK ROOM");
  const four = plate({ gangs: 4 });
  test.each([
    ["another size", "The lobby is a two-button.", [lobby], true],
    ["a size of devices where a plate came", "The lobby is a two-button.", [four], false],
    ["rooms of which no words bring sheets", "Lobby and kitchen are painted.", [lobby], false],
    ["their size", "The lobby is a three-button.", [lobby], false],
    ["a plate of another size", "Here is the 3-gang plate.", [four], true],
    ["their plate", "Here is the four-gang plate.", [four], false],
    ["their plate in a title", "Here is the 4-Gang plate.", [four], false],
    ["a room of which nothing came", "Lobby and kitchen attached.", [lobby], true],
    ["rooms of which all came", "Lobby and break room attached.", [lobby, rest], false],
    ["a room alone, as people call it", "Sheet for the entrance attached.", [lobby], false],
    ["another room of the same sort", "S-52 is the wellness room.", [rest], true],
    ["their room", "S-52 is the break room.", [rest], false],
    ["their room, which has one word", "S-1 is the main lobby.", [lobby], false],
    ["their room, longer", "S-52 is the staff break room.", [rest], false],
  ] as const)("%s: %s", (_, words, sheets, is) => expect(speaksOtherwise(words, came(sheets))).toBe(is));
});

describe("wishes that are fulfilled", () => {
  const cook = alone("S-2", ["COOK", "EAT", "OFF"], "KITCHEN");
  const both = came([alone("S-1", ["SHOW", "DIM", "OFF"], "LOUNGE"), cook]);
  test.each([
    ["The owner would rather have SHOW than MOVIE on S-1.", both, true],
    ["The owner would rather have MOVIE than SHOW on S-1.", both, false],
    ["The owner wants COOK on S-1.", both, false],
    ["The owner wants COOK.", both, false],
    ["The chef wants COOK.", came([cook]), false],
    ["The owner wants COOK.", came([cook]), true],
    ["It should of course be KITCHEN.", came([cook]), true],
    ["The owner asked for COOK in place of BAKE.", came([cook]), true],
    ["The owner asked for BAKE in place of COOK.", came([cook]), false],
    ["The owner wants COOK twice.", came([cook]), false],
    ["COOK instead of EAT.", came([cook]), false],
    ["The owner: COOK.", came([cook]), false],
    ["KITCHEN is still being discussed.", came([cook]), false],
    ["COOK and EAT trade places.", came([cook]), false],
    ["The architect wanted COOK, I talked him out of it.", came([cook]), false],
  ])("%s", (words, on, is) => {
    expect(isFulfilled(words, on)).toBe(is);
  });
});

describe("stations from one to another", () => {
  const some = came(["E-11", "E-12", "E-14"].map((mark) => alone(mark, ["ON"])));
  test.each([
    ["E-11 through E-14", true],
    ["E-11 to 14 attached", true],
    ["E-11–E-12", false],
    ["E-11 and E-14", false],
    ["Rooms 11 to 14", false],
    ["E-11 to E-70", true],
    ["E-12 to E-14", true],
    ["E-14 to E-16", false],
  ])("%s: one lacks %s", (words, is) => {
    expect(speaksOtherwise(words, some)).toBe(is);
  });
  test("none lacks where all have come", () => {
    const all = came([...some.sheets, alone("E-13", ["ON"])]);
    for (const words of ["E-11 through E-14", "E-11 to 14 attached"])
      expect(speaksOtherwise(words, all)).toBe(false);
  });
  test("more than sixty are no stations, nor are they called by more than four letters", () => {
    const marked = (series: string) =>
      came([11, 12, 14].map((number) => alone(`${series}-${number}`, ["ON"])));
    expect(speaksOtherwise("E-11 to E-71", some)).toBe(false);
    expect(speaksOtherwise("SALA-11 to 14", marked("SALA"))).toBe(true);
    expect(speaksOtherwise("SALAS-11 to 14", marked("SALAS"))).toBe(false);
    const far = came(["E-9997", "E-10000"].map((mark) => alone(mark, ["ON"])));
    expect(speaksOtherwise("E-9997 to E-10000", far)).toBe(false);
  });
});

describe("rooms of which the sheets are said to be attached", () => {
  const rooms = came([
    alone("S-1", ["ON"], "GLASS ROOM"),
    alone("S-2", ["ON"], "KITCHEN"),
    alone("S-3", ["ON"], "DINING ROOMS"),
  ]);
  test.each([
    ["glass room and kitchen attached", false],
    ["kitchens and glass rooms attached", false],
    ["kitchen and lobby attached", true],
    ["dining rooms and lobby attached", true],
  ])("%s: one of them lacks: %s", (words, lacks) => {
    expect(speaksOtherwise(words, rooms)).toBe(lacks);
  });
});

test.each([
  ["The owner wants ALL OFF.", true],
  ["It should say ALL OFF instead of FAN", true],
  ["instead of FAN", false],
  ["The owner wants no FAN.", false],
])("%s is what the only sheet says: %s", (words, is) => {
  expect(isFulfilled(words, came([three]))).toBe(is);
});

describe("rooms and sizes as people call them", () => {
  const on = (...strips: string[]) => came(strips.map((strip, i) => alone(`S-${i}`, ["ON"], strip)));
  test.each([
    ["Here is the two-gang plate.", on("LOBBY"), true],
    ["Here is the 3-Gang plate.", came([plate({ gangs: 4 })]), true],
    ["break room and lobby attached", on("BREAKROOM", "LOBBY"), false],
    ["dining rooms and kitchen attached", on("DINING ROOMS", "KITCHEN"), false],
    ["halls and kitchen attached", on("HALL", "KITCHEN"), false],
    ["stairs and kitchen attached", on("STAIR", "KITCHEN"), false],
    ["S-0 is the conf room.", on("CONFERENCE ROOM"), false],
    ["S-0 is the conference room.", on("CONF ROOM"), false],
    ["S-0 is the break room.", on("CONF ROOM"), true],
    ["lobby and kitchen attached", came([], [alone("S-1", ["ON"])]), false],
  ])("%s: untrue: %s", (words, sheets, is) => {
    expect(speaksOtherwise(words, sheets)).toBe(is);
  });
});

test.each([
  ["Instead of BAKE the owner wants COOK.", true],
  ["From BAKE to read COOK.", true],
  ["Should say COOK.", true],
  ["The owner wants COOK ✔", false],
])("%s is what the kitchen has: %s", (words, is) => {
  expect(isFulfilled(words, came([alone("S-2", ["COOK", "EAT", "OFF"], "KITCHEN")]))).toBe(is);
});

test("a count of one order alone stays", () => {
  const one = came([alone("S-1", ["ON"], "LOBBY", { order: "EL-1" })]);
  expect(withoutShares("two for EL-1", one)).toBe("two for EL-1");
});
