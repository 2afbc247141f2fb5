import { describe, expect, test } from "vitest";
import {
  addsInstead,
  isFulfilled,
  lacksOfSpan,
  listedIn,
  withoutRepeats,
  withoutShares,
} from "../../../src/reading/reply/repeats.ts";
import type { DeviceSheet, Sheet } from "../../../src/trade/sheet.ts";
import { aloneDevice, deviceAt, plate } from "../../make/sample.ts";

const site = {
  name: "Larkspur Library",
  street: "12 Site Road",
  city: "Joliet",
  state: "IL",
  postcode: "60432",
};
const alone = (
  mark: string,
  faces: readonly string[],
  strip = "LOBBY",
  more: Partial<DeviceSheet> = {},
): Sheet =>
  aloneDevice({
    mark,
    ...more,
    legends: [
      ...faces.map((text, i) => ({ face: `${i + 1}` as const, rows: [text, ""], plain: false })),
      { face: "plate", rows: [strip], plain: false },
    ],
  });
const came = (sheets: readonly Sheet[], earlier: readonly Sheet[] = []) => ({
  sheets,
  earlier,
  finishes: ["Oat", "Ink"],
  names: ["Marisol Quint", "Dora Penhale"],
});
const three = alone("S-1", ["ON", "DIM", "ALL OFF"]);
const toSite = alone("S-1", ["ON", "OFF"], "LOBBY", { shipSame: false, shipTo: site });
const toOffice = alone("S-1", ["ON", "OFF"], "LOBBY", { shipSame: true, shipTo: {} });
const begun = [plate(), deviceAt(1), deviceAt(2)];

/** What is said, the sheets that say so too, and sheets that do not. */
const said: readonly (readonly [string, ReturnType<typeof came>, ReturnType<typeof came>])[] = [
  ["these ship to the jobsite", came([toSite]), came([toOffice])],
  ["both go to the office", came([toOffice]), came([toSite])],
  ["the address is on both sheets", came([toSite, toSite]), came([toSite, { ...toOffice, shipSame: false }])],
  ["Billing is our office as usual", came([three, three]), came([three, { ...three, billTo: site }])],
  ["Same colors as always, oat with ink", came([three]), { ...came([three]), finishes: ["Oat"] }],
  ["3-button", came([three]), came([three, toSite])],
  ["It's a 4-gang", came(begun), came([plate({ gangs: 2 })])],
  [
    "Studio 1 on the left",
    came([plate({ gangs: 2 }, { "1": ["STUDIO 1"] })]),
    came([plate({ gangs: 2 }, { "2": ["STUDIO 1"] })]),
  ],
  ["It's oat like the others", came([three]), { ...came([three]), finishes: ["Ink"] }],
  ["Four-gang oat plate", came(begun), came([plate({ gangs: 2 })])],
  ["with ink letters", came([three]), { ...came([three]), finishes: ["Oat"] }],
  ["plus the two devices", came(begun), came([plate(), deviceAt(1)])],
  ["two of the four devices", came(begun), came([plate({ gangs: 3 }), deviceAt(1), deviceAt(2)])],
  ["The third sheet follows as soon as Will gives me the scene names", came(begun), came([three])],
  ["the first two devices", came(begun), came([plate(), deviceAt(1)])],
  ["position 3 will come tomorrow", came(begun), came([...begun, deviceAt(3)])],
  ["5 buttons total", came([three, toSite]), came([three, three])],
  ["This replaces the one from this morning", came([three], [three]), came([three])],
  [
    "S-2 is unchanged",
    came([three], [alone("S-2", ["ON"])]),
    came([three, alone("S-2", ["ON"])], [alone("S-2", ["ON"])]),
  ],
  [
    "The owner wants ALL OFF on the bottom button",
    came([three]),
    came([alone("S-1", ["ON", "ALL OFF", "DIM"])]),
  ],
  [
    "changed the bottom button from OFF to ALL OFF",
    came([three]),
    came([alone("S-1", ["ON", "ALL OFF", "OFF"])]),
  ],
  ["owner added the garage", came([alone("S-4", ["ON"], "GARAGE")]), came([three])],
  [
    "Marisol, can you get these over to Quillgate this morning?",
    came([three]),
    { ...came([three]), names: ["Dora Penhale"] },
  ],
];

describe("what sheets say themselves is no statement, and what they do not say stays", () => {
  test.each(said)("%s", (words, same, other) => {
    expect(withoutRepeats(words, same)).not.toMatch(/\p{L}{3}/u);
    expect(withoutRepeats(words, other)).toBe(words);
  });
  test("a legend at the top of a device of many buttons is not looked for", () => {
    const eight = came([alone("S-1", ["ALL OFF", "B", "C", "D", "E", "F", "G", "H"])]);
    const words = "The owner wants ALL OFF on the top button";
    expect(withoutRepeats(words, eight)).toBe(words);
  });
  test("the number of French sheets is left out where it is right", () => {
    expect(withoutRepeats("ci-joint les deux fiches", came([three, toSite]))).toBe("ci-joint les fiches");
    expect(withoutRepeats("ci-joint les trois fiches", came([three, toSite]))).toBe(
      "ci-joint les trois fiches",
    );
  });
  test("words beside no sheets stay as they are", () => {
    expect(withoutRepeats("5 buttons total", came([]))).toBe("5 buttons total");
  });
});

describe("lines of a list", () => {
  const hall = alone("S-2", ["BRIGHT", "DIM", "OFF"], "GREAT HALL");
  test.each([
    ["S-2  Great hall  BRIGHT / DIM / OFF", "agrees"],
    ["S-2: bright, dim, off", "agrees"],
    ["S-2 BRIGHT / OFF / DIM", "differs"],
    ["S-2 Great hall BRIGHT / DIM / LOW", "differs"],
    ["S-2 is for the great hall", undefined],
    ["S-3 BRIGHT / DIM / OFF", undefined],
    ["S-2", undefined],
  ])("%s: %s", (line, is) => {
    expect(listedIn(line, came([three, hall]))).toBe(is);
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
    expect(addsInstead(words, came([three], [three]))).toBe(is);
    expect(addsInstead(words, came([three, alone("S-9", ["ON"])], [three]))).toBe(false);
  });
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
    ["The owner wants COOK twice.", came([cook]), false],
    ["COOK instead of EAT.", came([cook]), false],
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
  ])("%s: one lacks %s", (words, is) => {
    expect(lacksOfSpan(words, some)).toBe(is);
    expect(lacksOfSpan(words, came([...some.sheets, alone("E-13", ["ON"])]))).toBe(false);
  });
});
