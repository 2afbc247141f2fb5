import { describe, expect, test } from "vitest";
import { without } from "../../../src/checks/sample.ts";
import { withoutRepeats } from "../../../src/reading/reply/repeats.ts";
import { alone, came } from "../../make/came.ts";
import { deviceAt, plate } from "../../make/sample.ts";

const site = {
  name: "Larkspur Library",
  street: "12 Site Road",
  city: "Joliet",
  state: "IL",
  postcode: "60432",
};
const three = alone("S-1", ["ON", "DIM", "ALL OFF"]);
const toSite = alone("S-1", ["ON", "OFF"], "LOBBY", { shipSame: false, shipTo: site });
const toOffice = alone("S-1", ["ON", "OFF"], "LOBBY", { shipSame: true, shipTo: {} });
const begun = [plate(), deviceAt(1), deviceAt(2)];

/** What is said, the sheets that say so too, and sheets that do not. */
const said: readonly (readonly [string, ReturnType<typeof came>, ReturnType<typeof came>])[] = [
  ["these ship to the jobsite", came([toSite]), came([toOffice])],
  ["both go to the office", came([toOffice]), came([toSite])],
  ["the address is on both sheets", came([toSite, toSite]), came([toSite, { ...toOffice, shipSame: false }])],
  ["the address is on both sheets", came([toOffice, toOffice]), came([{ ...toOffice, shipSame: false }])],
  ["Billing is our office as usual", came([three, three]), came([three, { ...three, billTo: site }])],
  ["Same colors as always, oat with ink", came([three]), { ...came([three]), finishes: ["Oat"] }],
  ["3-button", came([three]), came([three, toSite])],
  ["It's a 4-gang", came(begun), came([plate({ gangs: 2 })])],
  ["It's a 4-gang", came(begun), came([plate(), plate()])],
  [
    "Studio 1 on the right",
    came([plate({}, { "4": ["STUDIO 1"] })]),
    came([plate({}, { "3": ["STUDIO 1"] })]),
  ],
  [
    "Studio 1 in the middle",
    came([plate({}, { "2": ["STUDIO 1"], "4": [] })]),
    came([plate({}, { "1": ["STUDIO 1"], "4": [] })]),
  ],
  [
    "Studio 1 on the left",
    came([plate({ gangs: 2 }, { "1": ["STUDIO 1"] })]),
    came([plate({ gangs: 2 }, { "2": ["STUDIO 1"] })]),
  ],
  ["It's oat like the others", came([three]), { ...came([three]), finishes: ["Ink"] }],
  ["It's OAT like the others", came([three]), { ...came([three]), finishes: ["Ink"] }],
  ["Four-gang oat plate", came(begun), came([plate({ gangs: 2 })])],
  ["Four-gang oat plate", came(begun), { ...came(begun), finishes: ["Ink"] }],
  ["with ink letters", came([three]), { ...came([three]), finishes: ["Oat"] }],
  ["plus the two devices", came(begun), came([plate(), deviceAt(1)])],
  ["two of the four devices", came(begun), came([plate({ gangs: 3 }), deviceAt(1), deviceAt(2)])],
  ["The third sheet follows as soon as Will gives me the scene names", came(begun), came([three])],
  [
    "The third sheet follows as soon as Will gives me the scene names",
    came(begun),
    came([without(plate(), "gangs")]),
  ],
  ["the first two devices", came(begun), came([plate(), deviceAt(1)])],
  ["The First Two Devices", came(begun), came([plate(), deviceAt(1)])],
  ["position 1 will come", came([plate(), deviceAt(2)]), came([without(plate(), "gangs")])],
  ["position 3 will come", came(begun), came([deviceAt(1)])],
  ["position 3 will come tomorrow", came(begun), came([...begun, deviceAt(3)])],
  ["5 buttons total", came([three, toSite]), came([three, three])],
  ["5 buttons total", came([three, toSite, plate()]), came([three, plate()])],
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
  ["The owner wants DIM on the top button", came([alone("S-1", ["DIM", "ON"])]), came([three])],
  ["The owner wants DIM on the second button", came([three]), came([alone("S-1", ["DIM", "ON"])])],
  [
    "The owner wants ALL OFF on the top button",
    came([alone("S-1", ["ALL OFF", "B", "C", "D", "E"])]),
    came([alone("S-1", ["ALL OFF", "B", "C", "D", "E", "F"])]),
  ],
  [
    "changed the bottom button from OFF to ALL OFF",
    came([three]),
    came([alone("S-1", ["ON", "ALL OFF", "OFF"])]),
  ],
  [
    "please add these two to BW-2207",
    came([three]),
    came([alone("S-1", ["ON"], "LOBBY", { order: "BW-2208" })]),
  ],
  ["which makes three on that order", came([three, toSite], [three]), came([three, toSite])],
  [
    "The tenant added a copy room and a pantry",
    came([alone("S-4", ["ON"], "COPY ROOM"), alone("S-5", ["ON"], "PANTRY")]),
    came([alone("S-4", ["ON"], "COPY ROOM")]),
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
    expect(withoutRepeats("LES DEUX FICHES", came([three, toSite]))).toBe("LES FICHES");
    expect(withoutRepeats("ci-joint les trois fiches", came([three, toSite]))).toBe(
      "ci-joint les trois fiches",
    );
  });
  test("words beside no sheets stay as they are", () => {
    expect(withoutRepeats("5 buttons total", came([]))).toBe("5 buttons total");
  });
});

/** More of the same: what holds of other sheets, and of a part of them, holds of none. */
const studio = plate({}, { "4": ["STUDIO 1"] });
const dim = "The owner wants DIM on the second button";
const third = "The third sheet follows as soon as Will gives me the scene names";
const shipped = (shipTo: Partial<typeof site>) =>
  alone("S-1", ["ON", "OFF"], "LOBBY", { shipSame: false, shipTo });
const held: typeof said = [
  ["these ship to the jobsite", came([toSite]), came([shipped({ name: site.name, city: site.city })])],
  ["these ship to the jobsite", came([toSite]), came([shipped({ name: site.name, street: site.street })])],
  ["these ship to the jobsite", came([toSite]), came([shipped({})])],
  ["these ship to the jobsite", came([toSite]), came([{ ...toSite, shipSame: true }])],
  ["these ship to the jobsite", came([toSite]), came([])],
  ["Billing is our office as usual", came([three]), came([{ ...three, billTo: {} }])],
  [dim, came([plate(), three]), came([three, toSite])],
  [dim.replace("second", "SECOND"), came([three]), came([plate()])],
  ["the first two sheets", came([plate(), deviceAt(1)]), came(begun)],
  ["The First Two SHEETS", came([plate(), deviceAt(1)]), came(begun)],
  ["position 4 will come", came(begun), came([plate({ gangs: 3 })])],
  ["3-button", came([three, plate()]), came([plate()])],
  ["Four-gang plate", came(begun), came([plate({ gangs: 2 })])],
  ["Four-gang oat plate", came(begun), came([three])],
  ["Studio 1 on the right", came([studio, three]), came([studio, studio])],
  ["Studio 1 on the right", came([studio]), came([three])],
  ["two of the four devices", came(begun), came([plate(), deviceAt(1)])],
  [
    third,
    came([plate({ gangs: 3 }), deviceAt(1), deviceAt(2)]),
    came([plate({ gangs: 2 }), deviceAt(1), deviceAt(2)]),
  ],
  [
    "owner added the garage",
    came([alone("S-4", ["ON"], "GARAGE")]),
    came([alone("S-4", ["ON"], "GARAGE")], [alone("S-4", ["ON"], "PANTRY")]),
  ],
  ["owner added pan room", came([alone("S-4", ["ON"], "PAN ROOM")]), came([three])],
  ["The pantry will come on its own order", came([three]), came([three, alone("S-5", ["ON"], "PANTRY")])],
];
describe("what only other sheets say stays", () => {
  test.each(held)("%s", (words, same, other) => {
    expect(withoutRepeats(words, same)).not.toMatch(/\p{L}{3}/u);
    expect(withoutRepeats(words, other)).toBe(words);
  });
  test("that legends are in another language on purpose is so whatever they say", () => {
    expect(withoutRepeats("The legends are in Spanish on purpose", came([three]))).not.toMatch(/\p{L}{3}/u);
  });
  test("words before sheets in French are numbers, of two digits at most", () => {
    expect(withoutRepeats("ci-joint les 2 fiches", came([three, toSite]))).toBe("ci-joint les fiches");
    expect(withoutRepeats("ci-joint les belles fiches", came([three]))).toBe("ci-joint les belles fiches");
    const hundred = came(Array.from({ length: 100 }, () => three));
    expect(withoutRepeats("ci-joint les 100 fiches", hundred)).toBe("ci-joint les 100 fiches");
  });
  test("nothing is added to an order without a number", () => {
    const words = "please add these to --";
    expect(withoutRepeats(words, came([alone("S-1", ["ON"], "LOBBY", { order: "" })]))).toBe(words);
  });
});

describe("the size of a plate is told of plates alone", () => {
  const withDevices = came([plate({ gangs: 2 }), three, toSite]);
  test.each(["Two-gang plate", "It's a 2-gang"])("%s", (words) => {
    expect(withoutRepeats(words, withDevices)).not.toMatch(/\p{L}{3}/u);
    expect(withoutRepeats(words, came([three]))).toBe(words);
  });
});
