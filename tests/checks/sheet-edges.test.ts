import { expect, test } from "vitest";
import { sheetChecks } from "../../src/checks/catalogue.ts";
import { legend, unprinted, without } from "../../src/checks/sample.ts";
import { legendTooWide } from "../../src/checks/sheet/legend-too-wide.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Doubt, Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

/** What a check tells of a sheet: each wording, the places that it points at, and the facts that are asked for. */
function told(check: string, sheet: Sheet, ...facts: string[]): string[] {
  const [one] = sheetChecks.filter(({ id }) => id === check);
  if (one === undefined) throw new Error(`no check ${check}`);
  return [...one.find(sheet, catalogue)].map((problem) =>
    [
      problem.wording,
      ...problem.spots.flatMap(({ place }) => place ?? []),
      ...facts.map((fact) => `${fact}=${String(problem.facts[fact])}`),
    ].join(" "),
  );
}
const rows = (...legends: (readonly string[])[]): Sheet =>
  device({ legends: legends.map((row, i) => legend(`${i + 1}` as "1", ...row)) });
const doubted = (...doubts: Doubt[]): Sheet => device({ doubts });

test.each<[readonly string[], string[]]>([
  [["A", "B"], []],
  [["A", "", ""], []],
  [["", ""], []],
  [["", "B"], ["gap row.1.1 typed=B"]],
  [["A", " ", " B "], ["gap row.1.2 typed=B"]],
  [["", "", "C", "D"], ["gap row.1.1 typed=C"]],
])("row-order: of %j, %j", (some, says) => {
  expect(told("row-order", rows(some), "typed")).toEqual(says);
});

test.each<[Sheet, string[]]>([
  [plate({ gangs: 6 }), []],
  [plate({ gangs: 7 }), ["gangs gangs limit=6"]],
  [plate({ gangs: 2 }), []],
  [plate({ gangs: 1 }), ["single gangs limit=undefined"]],
  [without(plate(), "gangs"), []],
  [device({ gangs: 3, position: 3 }), []],
  [device({ gangs: 3, position: 4 }), ["position position gangs limit=3"]],
  [device({ position: 1 }), []],
  [device({ position: 0 }), ["position position gangs limit=4"]],
  [without(device({ position: 6 }), "gangs"), []],
  [without(device({ position: 7 }), "gangs"), ["position position gangs limit=6"]],
  [without(device(), "position"), []],
  [aloneDevice({ gangs: 1 }), []],
  [aloneDevice({ gangs: 9, position: 9 }), []],
])("position-out-of-range, table row %#", (sheet, says) => {
  expect(told("position-out-of-range", sheet, "limit")).toEqual(says);
});

test.each<[string, string[]]>([
  ["ALL OFF", []],
  ["   ", []],
  ["ALL  OFF", ["gaps row.1.1 shown=ALL··OFF closed=ALL OFF"]],
  [" ALL", ["gaps row.1.1 shown=·ALL closed=ALL"]],
  ["ALL ", ["end row.1.1 shown=ALL· closed=undefined"]],
  ["A  B ", ["gaps row.1.1 shown=A··B· closed=A B"]],
  // blanks of other kinds have a check of their own
  ["ALL\u00a0OFF", []],
  // full, and perhaps cut off: it is asked about as that
  ["READING ", []],
])("legend-spacing: of %j, %j", (text, says) => {
  expect(told("legend-spacing", rows([text]), "shown", "closed")).toEqual(says);
});

test.each([
  ["STU DY", "STUDY"],
  ["O F F", "OFF"],
  ["EN TRY", "ENTRY"],
  ["A LARM", "ALARM"],
])("legend-spacing: “%s” is the word %s in pieces", (row, word) => {
  expect(told("legend-spacing", rows([row]), "closed")).toEqual([`within row.1.1 closed=${word}`]);
});

test.each([
  "A B",
  "A B C",
  "A WAY",
  "UP STAIRS",
  "FAT HER",
  "CONF RM",
  "DE SK",
  "EN T RY",
  "EN TRY 2",
  "STUDY",
])("legend-spacing: “%s” is no word in pieces", (row) => {
  expect(told("legend-spacing", rows([row]))).toEqual([]);
});

test.each<[string[], string[]]>([
  [["STUDIO", "Studio"], ["word row.1.1 row.1.2 typed=STUDIO"]],
  [["THE BAR", "BAR"], ["word row.1.1 row.1.2 typed=BAR"]],
  [["Bye bye"], []],
  [["ON ON"], []],
  [["R22 R22"], []],
  [["BAR ROOM", "BAR"], []],
])("legend-repeated-in-plate: of %j, %j", (row, says) => {
  expect(told("legend-repeated-in-plate", rows(row), "typed")).toEqual(says);
  const plain = { ...legend("1", ...row), plain: true };
  expect(told("legend-repeated-in-plate", device({ legends: [plain] }))).toEqual([]);
});

test.each<[readonly (readonly string[])[], string[]]>([
  [[["N/A"]], ["legend row.1.1"]],
  [[["TO", "FOLLOW"]], ["legend row.1.1 row.1.2"]],
  [[["ENTRY", "TBD"]], ["row row.1.2"]],
  [[["SAME", "DAY"]], []],
  [[["same"]], ["legend row.1.1"]],
  [[["-"]], ["seldom row.1.1"]],
  // beside a plus it is a minus
  [[["+"], ["-"]], []],
  [
    [["ENTRY"], ["TBD"], ["N/A"]],
    ["legend row.2.1", "legend row.3.1"],
  ],
])("legend-placeholder: of %j, %j", (legends, says) => {
  expect(told("legend-placeholder", rows(...legends))).toEqual(says);
});

test.each<[Partial<Doubt>, string[]]>([
  [{ seen: { page: 1 } }, ["unasked row.1.1"]],
  [{ seen: { page: 1 }, shown: "B" }, ["unasked row.1.1"]],
  [{ seen: { page: 1 }, text: "A", shown: "B" }, ["contradicts row.1.1"]],
  [{ seen: { page: 1 }, text: "A" }, ["pictured row.1.1"]],
  [{ shown: "B" }, ["unheld row.1.1"]],
  [{ text: "A" }, ["unshown row.1.1"]],
  [{ text: "A", shown: "B" }, ["differs row.1.1"]],
])("value-hidden: %j, %j", (doubt, says) => {
  expect(told("value-hidden", doubted({ what: "value-hidden", place: "row.1.1", ...doubt }))).toEqual(says);
});

test("value-hidden leaves a row that is too long to its own check, unless the page shows another", () => {
  const long = (doubt: Partial<Doubt>) => ({
    ...rows(["RECEPTIONS"]),
    doubts: [{ what: "value-hidden", place: "row.1.1", text: "RECEPTIONS", ...doubt } satisfies Doubt],
  });
  expect(told("value-hidden", long({}))).toEqual([]);
  expect(told("value-hidden", long({ place: "row.1.2" }))).toEqual(["unshown row.1.2"]);
  expect(told("value-hidden", long({ shown: "RECEPT" }))).toEqual(["differs row.1.1"]);
  expect(told("value-hidden", doubted({ what: "value-hidden" }))).toEqual([]);
  expect(told("value-hidden", doubted({ what: "typed-over", place: "row.1.1" }))).toEqual([]);
});

test.each<[readonly Doubt[], string[]]>([
  [[{ what: "pages-beside", pages: [2] }], ["words pages=Page 2"]],
  [[{ what: "pages-beside", pages: [2, 2] }], ["words pages=Page 2"]],
  [[{ what: "pictures-beside", pages: [2, 4, 5] }], ["pictures pages=Each of pages 2, 4 and 5"]],
  [[{ what: "pages-beyond", pages: [9, 12] }], ["beyond pages=Each of pages 9 to 12"]],
  [[{ what: "handwriting", pages: [2] }], []],
  [
    [
      { what: "pages-beside", pages: [2] },
      { what: "pictures-beside", pages: [3] },
    ],
    ["words pages=Page 2", "pictures pages=Page 3"],
  ],
])("pages-beside-sheet: %j, %j", (doubts, says) => {
  expect(told("pages-beside-sheet", doubted(...doubts), "pages")).toEqual(says);
});

test.each<[Partial<Doubt>, string[]]>([
  [{ where: "in the upper right" }, ["drawn where=in the upper right"]],
  [{ where: "in the upper right, beside" }, ["drawn where=in the upper right"]],
  [
    { where: "in the upper right, over", place: "project" },
    ["drawn where=in the upper right, over “Project name”"],
  ],
  [{ where: "below", text: "RUSH" }, ["said where=below"]],
  [{ where: "below", text: "RUSH", kind: "drawn" }, ["said where=below"]],
  [{ kind: "other-page" }, ["other where=undefined"]],
  [{ kind: "page", seen: { page: 3 } }, ["page where=undefined"]],
])("something-on-page: %j, %j", (doubt, says) => {
  expect(told("something-on-page", doubted({ what: "something-more", ...doubt }), "where")).toEqual(says);
});

test("something-on-page names what moved and what is in the file, as far as that is known", () => {
  const says = (fact: string, doubt: Partial<Doubt>) =>
    told("something-on-page", doubted({ what: "something-more", ...doubt }), fact);
  expect(says("field", { kind: "moved" })).toEqual(["moved field=A field"]);
  expect(says("field", { kind: "moved", place: "project" })).toEqual(["moved field=Project name"]);
  expect(says("name", { kind: "file" })).toEqual(["file name="]);
  expect(says("name", { kind: "file", text: "list.csv" })).toEqual(["file name= (“list.csv”)"]);
  expect(says("page", { kind: "page", seen: { page: 3 } })).toEqual(["page page=3"]);
});

const { city: _city, ...citiless } = device().billTo;
const shipTo = { name: "Larkspur Library", street: "9 Quarry Street" };
const shipPlaces = ["name", "street", "city", "state", "postcode"].map((part) => `ship.${part}` as Place);
test.each<[string, Sheet, string[]]>([
  ["ticked", device(), []],
  ["ticked, and the address of the bill typed again", device({ shipTo: device().billTo }), []],
  ["ticked, and another typed", device({ shipTo }), ["both ship.same ship.name ship.street"]],
  ["another typed", device({ shipSame: false, shipTo }), []],
  ["neither", device({ shipSame: false }), [`neither ship.same ${shipPlaces.join(" ")}`]],
  ["a form with a tick alone", unprinted(device({ shipSame: false }), ...shipPlaces), ["unticked ship.same"]],
  [
    "a form without a tick",
    unprinted(device({ shipSame: false }), "ship.same"),
    [`empty ${shipPlaces.join(" ")}`],
  ],
  ["a form that does not ask", unprinted(device({ shipSame: false }), "ship.same", ...shipPlaces), []],
  [
    "a tick that nobody could read",
    device({ shipSame: false, unsure: [{ place: "ship.same", one: "yes", other: "" }] }),
    [],
  ],
  [
    "an address that nobody could read",
    device({ shipSame: false, unsure: [{ place: "ship.city", one: "yes", other: "" }] }),
    [],
  ],
])("ship-to-unclear: %s", (_name, sheet, says) => {
  expect(told("ship-to-unclear", sheet)).toEqual(says);
});

test.each<[string, Sheet, string[]]>([
  ["all filled in", device(), []],
  ["a part of the bill's missing", device({ billTo: citiless }), ["bill bill.city"]],
  ["another address begun", device({ shipSame: false, shipTo }), ["ship ship.city ship.state ship.postcode"]],
  ["begun beside the tick", device({ shipTo }), []],
  ["“same” typed", device({ shipSame: false, shipTo: { name: "same", street: "Same as above" } }), []],
  [
    "“same” typed for one part",
    device({ shipSame: false, shipTo: { name: "same", street: "9 Quarry Street" } }),
    ["ship ship.city ship.state ship.postcode"],
  ],
  ["no other address", device({ shipSame: false }), []],
])("address-incomplete: %s", (_name, sheet, says) => {
  expect(told("address-incomplete", sheet)).toEqual(says);
});

test.each<[string, Sheet, string[]]>([
  [
    "TBD for the contact and the project",
    device({ project: "TBD", contact: { name: "n/a" } }),
    ["nothing contact.name project"],
  ],
  ["a placeholder in an address that the tick leaves out", device({ shipTo: { city: "TBD" } }), []],
  ["one that counts", device({ shipSame: false, shipTo: { ...shipTo, city: "TBD" } }), ["nothing ship.city"]],
  [
    "“same” for the whole address",
    device({ shipSame: false, shipTo: { name: "same", street: "same as bill-to" } }),
    ["same ship.same ship.name ship.street"],
  ],
  [
    "“same” for the whole address, and TBD for the bill's",
    device({ shipSame: false, shipTo: { name: "same" }, billTo: { ...device().billTo, city: "TBD" } }),
    ["same ship.same ship.name", "nothing bill.city"],
  ],
  [
    "“same” on a form without a tick",
    unprinted(device({ shipSame: false, shipTo: { name: "same" } }), "ship.same"),
    [],
  ],
])("field-placeholder: %s", (_name, sheet, says) => {
  expect(told("field-placeholder", sheet)).toEqual(says);
});

test.each<[Partial<Sheet>, string[]]>([
  [{ mark: "S-104" }, []],
  [{ mark: "S-104 (1)" }, []],
  [{ mark: "S-104 (2)" }, ["quantity mark"]],
  [{ mark: "S-104 (12)" }, ["quantity mark"]],
  [{ mark: "S-104 (123)" }, []],
  [{ mark: "S-104 (01)" }, []],
  [{ mark: "S-104 (2) E" }, []],
  [{ mark: "(2)" }, []],
  [{ mark: "S-104 x2" }, ["quantity mark"]],
  [{ mark: "S-104 / S-105" }, ["several mark"]],
  [{ project: "Tower X2" }, []],
  [{ project: "Tower qty 2" }, ["quantity project"]],
  [{ order: "BW-2207 and BW-2208" }, ["orders order"]],
  [{ order: "4512;4513" }, ["orders order"]],
  [{ order: "Land-12 & Sand-13" }, ["orders order"]],
  [{ order: "Andy-12 & Andy-13" }, ["orders order"]],
  [{ order: "Sand-12" }, []],
  [{ order: "BW-2207 / 2208" }, []],
  [{ order: "BW-2207/08" }, []],
  [{ order: "Ines and Omar" }, []],
  [{ order: "BW-2207 qty 3" }, ["quantity order"]],
])("mark-names-several: %j, %j", (changes, says) => {
  expect(told("mark-names-several", { ...device(), ...changes })).toEqual(says);
});

test.each<[string, Sheet, string[]]>([
  ["a fifth button of four", device({}, { "5": ["FIFTH"] }), ["button row.5.1 count=4 limit=undefined"]],
  [
    "a fifth gang of four",
    plate({}, { "5": ["FIFTH", "GANG"] }),
    ["gang row.5.1 row.5.2 count=4 limit=undefined"],
  ],
  [
    "a legend of its own on a device in a plate",
    device({}, { plate: ["POOL"] }),
    ["plate row.plate.1 count=undefined limit=undefined"],
  ],
  ["one on a device alone", aloneDevice({}, { plate: ["POOL"] }), []],
  ["a third row of two", device({}, { "1": ["A", "B", "C"] }), ["row row.1.3 count=undefined limit=2"]],
  ["blanks on a button that is not there", device({}, { "5": [" "] }), []],
  ["a button of a layout that was not chosen", device({ layouts: [] }, { "5": ["FIFTH"] }), []],
])("row-without-face: %s", (_name, sheet, says) => {
  expect(told("row-without-face", sheet, "count", "limit")).toEqual(says);
});

test("safety-wording reads legends in one that stand beside or below each other, and no others", () => {
  const faces = (layout: string, words: Readonly<Record<string, string>>) =>
    device({
      layouts: [layout],
      legends: Object.entries(words).map(([face, text]) => legend(face as "1", text)),
    });
  const says = (sheet: Sheet) =>
    told("safety-wording", sheet, "typed", "face").map((one) => one.replace(/row\S+ /g, ""));
  expect(says(faces("D4", { "1": "EMERG", "2": "STOP" }))).toHaveLength(1);
  expect(says(faces("D4", { "1": "LIFE", "2": "SAFETY" }))).toEqual([
    "safety typed=LIFE SAFETY face=button 1 and button 2",
  ]);
  // beside each other, and one below the other in two columns; not across
  expect(says(faces("D6", { "1": "LIFE", "3": "SAFETY" }))).toEqual([
    "safety typed=LIFE SAFETY face=button 1 and button 3",
  ]);
  expect(says(faces("D6", { "1": "LIFE", "4": "SAFETY" }))).not.toEqual([
    "safety typed=LIFE SAFETY face=button 1 and button 4",
  ]);
  const [one, two] = faces("D4", { "1": "LIFE", "2": "SAFETY" }).legends;
  if (one === undefined || two === undefined) throw new Error("no legends");
  expect(says(device({ legends: [one, { ...two, plain: true }] }))).toEqual([]);
});

test.each<[readonly (readonly string[])[], string[]]>([
  [[["Entry"], ["STACKS"]], ["mixed row.1.1 capitals=STACKS small=Entry"]],
  [[["STACKS "], ["Entry"]], ["mixed row.2.1 capitals=STACKS small=Entry"]],
  [[["Entry"], ["Aisle"], ["STACKS"]], ["mixed row.3.1 capitals=STACKS small=Entry"]],
  [[["Entry"], ["STACKS"], ["DIM"]], ["mixed row.1.1 capitals=STACKS small=Entry"]],
])("legend-case-mixed points at the fewer, and of as many at the small ones: %j", (legends, says) => {
  expect(told("legend-case-mixed", rows(...legends), "capitals", "small")).toEqual(says);
});

test("legend-empty asks about every face that is ordered, though nothing of it is on the sheet", () => {
  const { legends } = device();
  expect(told("legend-empty", device({ legends: legends.slice(0, 3) }), "faces")).toEqual([
    "empty row.4.1 faces=button 4",
  ]);
  const forms = unprinted(device({ legends: legends.slice(0, 3) }), "plain.4");
  expect(told("legend-empty", forms, "faces")).toEqual(["unmarked row.4.1 faces=button 4"]);
});

test("legend-placeholder leaves a row of blanks out of what it quotes", () => {
  expect(told("legend-placeholder", rows(["TBD", " "]), "typed")).toEqual(["legend row.1.1 typed=TBD"]);
});

test.each<[string, string[], string[]]>([
  ["blanks around it", [" TBD "], ["legend row.1.1 typed=TBD"]],
  ["blanks on a button beside it", [" ", "TBD"], ["legend row.2.1 typed=TBD"]],
  ["a word that a screen's button may have, beside a plus", ["BLANK", "+"], ["seldom row.1.1 typed=BLANK"]],
  ["a dash beside a plus", ["-", "VOLUME +"], []],
])("legend-placeholder: %s", (_what, faces, says) => {
  expect(told("legend-placeholder", rows(...faces.map((face) => [face])), "typed")).toEqual(says);
});

// Common practice, no source. Each seems to speak of the legend, and is no more than a part of the one behind it.
test.each([
  ["testing", "TESTING ROOM"],
  ["XX", "XX LARGE"],
  ["MAYBE", "MAYBERRY"],
  ["unknown", "UNKNOWN SOLDIER"],
  ["all caps", "ALL CAPS OFF"],
  ["lower case", "LOWER CASEMATE"],
  ["LABEL 2", "LABEL 2 OFF"],
  ["Text 1", "TEXT 1 HALL"],
  ["POS. 2", "POSTER 2"],
  ["NAME 12", "NAMEPLATE 12"],
  ["AAA", "AA"],
  ["ZZZZZ", "ZZZZ TOP"],
  ["in red", "CABIN RED"],
  ["IN CAPS", "IN CAPSTAN"],
  ["2 rows", "12 ROWS"],
  ["1 LINE", "1 LINEN"],
  ["ask Bob", "TASK BOB"],
  ["check with owner", "CHECK IN"],
  ["verify w/arch", "VERIFY WITH OUR ARCH"],
  ["CONFIRM BY OWNER", "CONFIRM"],
])("legend-placeholder: “%s” is asked about, and “%s” is not", (asked, legend) => {
  expect(told("legend-placeholder", rows([asked]))).toEqual(["seldom row.1.1"]);
  expect(told("legend-placeholder", rows([legend]))).toEqual([]);
});

test.each<[string[], string[]]>([
  [["STUDY", "OR DEN"], ["undecided row.1.1 row.1.2"]],
  [["study or living room"], []],
  [["Living room", "or den"], ["undecided row.1.1 row.1.2"]],
  [["2 STUDY OR", "DEN"], []],
  [["STUDY OR", "DEN 2"], []],
  [["ON OR OFF"], []],
  [["DIM OR UP"], []],
  [["PREP OR 3"], []],
  [["MAIN", "OR"], []],
  [["OR", "LIGHTS"], []],
  [["MAJOR", "ORDER"], []],
  [["LOBBY?"], ["unsure row.1.1"]],
  [["LOBBY", "EAST?"], ["unsure row.1.2"]],
  [["SAME", "DAY?"], ["unsure row.1.2"]],
])("legend-placeholder: of %j, %j, which may not be decided", (row, says) => {
  expect(told("legend-placeholder", rows(row))).toEqual(says);
});

test("legend-repeated-in-plate compares what is cut on buttons and gangs, whatever its case and blanks", () => {
  const faces = (...legends: Sheet["legends"]) =>
    told("legend-repeated-in-plate", device({ legends }), "typed");
  const twice = ["twice row.1.1 row.1.2 row.2.1 row.2.2 typed=ALL ON"];
  const [one, two] = [legend("1", "ALL", "ON"), legend("2", "all  on ", "")];
  expect(faces(one, two)).toEqual(twice);
  expect(faces(one, { ...two, plain: true })).toEqual([]);
  expect(faces({ ...one, plain: true }, two)).toEqual([]);
  expect(faces(one, { ...two, face: "plate" })).toEqual([]);
  expect(faces(legend("1", "", ""), legend("2", " ", ""))).toEqual([]);
});

test("legend-too-wide proposes to split a row only where another is free", () => {
  const wide = (...row: string[]) =>
    told("legend-too-wide", device({ layouts: ["D6"], legends: [legend("1", ...row)] }), "parts", "start");
  expect(wide("WWW WWWW")).toEqual(["split row.1.1 parts=“WWW”,“WWWW” start=undefined"]);
  expect(wide("WWW WWWW", "ON")).toEqual(["shorten row.1.1 parts=undefined start=WWW WWW"]);
  expect(wide("WWWWWWWW", "")).toEqual(["shorten row.1.1 parts=undefined start=WWWWWWW"]);
});

test("legend-too-wide lets a row be as wide as its room, and proposes one that is", () => {
  // Of letters 21 mm high a unit of the font is one millimetre.
  const engraving = { ...catalogue.engraving, margin: 1, fit: "fixed" as const };
  const says = (width: number, text: string) => {
    const layouts = catalogue.layouts.map((one) => ({
      ...one,
      face: { ...one.face, width: width + 2, cap: 21, cutter: 1, tracking: 1 },
    }));
    const sheet = device({ legends: [legend("1", text)] });
    return [...legendTooWide.find(sheet, { ...catalogue, layouts, engraving })].map(({ facts }) =>
      [facts["needed"], facts["room"], facts["start"] ?? facts["parts"]].map(String).join(" "),
    );
  };
  expect(says(20, "E")).toEqual([]);
  expect(says(19, "E")).toEqual(["20.0 19.0 "]);
  expect(says(40, "EEE")).toEqual(["60.0 40.0 EE"]);
  expect(says(39, "EEE")).toEqual(["60.0 39.0 E"]);
  expect(says(97, "EE EE")).toEqual([]);
  expect(says(40, "EE EE")).toEqual(["97.0 40.0 “EE”,“EE”"]);
  expect(says(39, "EE EE")).toEqual(["97.0 39.0 E"]);
});

test.each<[string, Sheet, string[]]>([
  ["neither", device({ contact: { name: "Ines" } }), ["neither contact.email contact.phone"]],
  ["a telephone alone", device({ contact: { phone: "312-555-0117" } }), []],
  ["an address alone", device({ contact: { email: "ines@brightwire.example" } }), []],
  [
    "neither, on a form that asks for the telephone alone",
    unprinted(device({ contact: { name: "Ines" } }), "contact.email"),
    ["neither contact.phone"],
  ],
  [
    "neither, on a form that asks for none",
    unprinted(device({ contact: { name: "Ines" } }), "contact.email", "contact.phone"),
    [],
  ],
  [
    "one that could not be read for certain",
    device({ contact: {}, unsure: [{ place: "contact.phone", one: "312-555-0117", other: "" }] }),
    [],
  ],
])("no-way-to-reach-you: %s", (_what, sheet, says) => {
  expect(told("no-way-to-reach-you", sheet)).toEqual(says);
});

test("field-not-read names twelve fields at most, 160 characters of each, and counts the others", () => {
  const said = (...unmapped: { name: string; value: string }[]) =>
    told("field-not-read", device({ unmapped }), "count", "fields");
  const many = (n: number) => Array.from({ length: n }, (_, i) => ({ name: `F${i}`, value: "x" }));
  expect(said({ name: "", value: " two\n lines " })).toEqual([
    "unmapped count=1 fields=one without a name says “two lines”",
  ]);
  expect(said({ name: "Zone", value: "" })).toEqual(["unmapped count=1 fields=“Zone” says “”"]);
  expect(said()).toEqual([]);
  for (const [length, end] of [
    [160, ""],
    [161, "…"],
  ] as const)
    expect(said({ name: "Zone", value: "x".repeat(length) })).toEqual([
      `unmapped count=1 fields=“Zone” says “${"x".repeat(160)}${end}”`,
    ]);
  expect(said(...many(12))[0]).not.toContain("more");
  expect(said(...many(13))[0]).toMatch(/F11” says “x”,1 more$/);
  expect(said(...many(20))[0]).toMatch(/F11” says “x”,8 more$/);
});

const billed = (state: string | undefined, postcode: string | undefined): Sheet => {
  const { state: _state, postcode: _postcode, ...rest } = device().billTo;
  return device({
    billTo: {
      ...rest,
      ...(state === undefined ? {} : { state }),
      ...(postcode === undefined ? {} : { postcode }),
    },
  });
};
test.each<[string, Sheet, string[]]>([
  ["no state", billed(undefined, "60607"), []],
  ["a placeholder for the state", billed("TBD", "60607"), []],
  ["no code", billed("IL", undefined), []],
  ["a placeholder for the code", billed("IL", "TBD"), []],
  ["a state that there is not", billed("QQ", "60607"), ["state bill.state"]],
  ["a state that there is not, and no code", billed("QQ", undefined), ["state bill.state"]],
  ["a short form of the state where the code lies", billed("Ill.", "60607"), []],
  ["a short form of the state without a code", billed("Ill.", undefined), ["state bill.state"]],
  ["a code that there is not", billed("IL", "6060"), ["postcode bill.postcode"]],
  ["a code of another state", billed("IL", "97201"), ["differs bill.postcode bill.state"]],
  [
    "another address, of another state",
    device({ shipSame: false, shipTo: { state: "IL", postcode: "97201" } }),
    ["differs ship.postcode ship.state"],
  ],
  ["another address that the tick leaves out", device({ shipTo: { state: "IL", postcode: "97201" } }), []],
])("postcode-state-mismatch: %s", (_what, sheet, says) => {
  expect(told("postcode-state-mismatch", sheet)).toEqual(says);
});

test.each<[string, Sheet, string[]]>([
  ["a device in a plate", device({ standing: "in-plate" }), ["unread position"]],
  ["a device that stands alone", aloneDevice(), ["position position"]],
  ["a device that does not say", without(device(), "standing"), ["position position"]],
  ["a plate", plate(), ["unread position"]],
])("field-unreadable, at the position of %s", (_what, sheet, says) => {
  const unread = [{ place: "position" as const, typed: "left", wants: "a number" }];
  expect(told("field-unreadable", { ...sheet, unread })).toEqual(says);
  const gangs = [{ place: "gangs" as const, typed: "four", wants: "a number" }];
  expect(told("field-unreadable", { ...sheet, unread: gangs })).toEqual(["unread gangs"]);
});

test.each<[Sheet, string[]]>([
  [device({ finish: "Mauve" }), ["unknown finish finish=Mauve what=a device"]],
  [aloneDevice({ finish: "TIN" }), ["size finish finish=Bare tin what=a device standing alone"]],
  [device({ finish: "TIN" }), ["size finish finish=Bare tin what=a device"]],
  [plate({ finish: "BRK" }), ["size finish finish=Brick what=a plate of 4 gangs"]],
  [plate({ finish: "SLT" }), []],
  [plate({ finish: "SLT", gangs: 5 }), ["size finish finish=Slate what=a plate of 5 gangs"]],
  [without(plate({ finish: "Mauve" }), "gangs"), ["unknown finish finish=Mauve what=a plate"]],
  [without(plate({ finish: "BRK" }), "gangs"), []],
  [without(device(), "finish"), []],
])("finish-not-made, table row %#", (sheet, says) => {
  expect(told("finish-not-made", sheet, "finish", "what")).toEqual(says);
});

test.each<[string, Sheet, string[]]>([
  ["a lettering that nobody makes", device({ lettering: "Gold" }), ["unknown lettering"]],
  [
    "one that nobody makes, without a finish",
    without(device({ lettering: "Gold" }), "finish"),
    ["unknown lettering"],
  ],
  ["none", without(device(), "lettering"), []],
  ["one that is made, without a finish", without(device({ lettering: "MLK" }), "finish"), []],
  ["one that is made, on a finish that is not", device({ lettering: "MLK", finish: "Mauve" }), []],
  ["pale on pale", device({ lettering: "MLK", finish: "CHK" }), ["low lettering finish"]],
  ["dark on pale", device({ lettering: "INK", finish: "CHK" }), []],
])("lettering-unreadable: %s", (_what, sheet, says) => {
  expect(told("lettering-unreadable", sheet)).toEqual(says);
});

test("lettering-unreadable names the lettering that reads best on the finish", () => {
  const best = (finish: string, lettering: string) =>
    told("lettering-unreadable", device({ finish, lettering }), "best").map((one) => one.split("best=")[1]);
  expect(best("CHK", "MLK")).toEqual(["Ink"]);
  expect(best("SOT", "INK")).toEqual(["Milk"]);
});

test("invisible characters of a row are told once each, and a row without any is left alone", () => {
  const says = told("invisible-character", rows(["E\u200bNT\u200bRY\ufeff"], ["DIM"]), "shown", "characters");
  expect(says).toEqual([expect.stringMatching(/^invisible row\.1\.1 shown=ENTRY /)]);
  expect(says[0]?.match(/U\+[0-9A-F]{4}/g)).toEqual(["U+200B", "U+FEFF"]);
});

test.each<[string, string, string[]]>([
  ["OAT", "", ["half finish one=Oat other=undefined"]],
  ["", "OAT", ["half finish one=Oat other=undefined"]],
  ["OAT", "CHK", ["differ finish one=Oat other=Chalk"]],
  ["OAT", "Mauve", ["differ finish one=Oat other=Mauve"]],
])("readers-disagree: “%s” and “%s”", (one, other, says) => {
  const sheet = device({ unsure: [{ place: "finish", one, other }] });
  expect(told("readers-disagree", sheet, "one", "other")).toEqual(says);
});

test.each<[string | undefined, string[]]>([
  [undefined, []],
  ["312-555-0117", []],
  ["+44 20 7946 0958", []],
  ["312-555-011", ["unclear contact.phone"]],
  ["ask Ines", ["unclear contact.phone"]],
  ["112-555-0117", ["unlikely contact.phone"]],
])("phone-malformed: %s", (phone, says) => {
  expect(told("phone-malformed", device({ contact: phone === undefined ? {} : { phone } }))).toEqual(says);
});

test("layout-not-chosen asks of devices alone, and of none that is blank or could not be read", () => {
  const says = (sheet: Sheet) => told("layout-not-chosen", sheet);
  expect(says(device({ layouts: [] }))).toEqual(["none layout"]);
  expect(says(device())).toEqual([]);
  expect(says(plate())).toEqual([]);
  expect(says(device({ layouts: [], unread: [{ place: "layout", typed: "5", wants: "a layout" }] }))).toEqual(
    [],
  );
});

test("letters-touch names the pairs that run into each other, or else those that stand near", () => {
  expect(told("letters-touch", rows(["ÎÏLE"]), "pairs")).toEqual(["near row.1.1 pairs=“ÎÏ”"]);
  expect(told("letters-touch", rows(["ÎÏÏE"]), "pairs")).toEqual(["touch row.1.1 pairs=“ÏÏ”"]);
  expect(told("letters-touch", rows(["ÏÏÏÏ"]), "pairs")).toEqual(["touch row.1.1 pairs=“ÏÏ”"]);
});

test.each<[string, string[]]>([
  ["beside S-201", ["remark notes"]],
  ["beside S-201, S-202", ["request notes"]],
  ["beside S-201, s 201", ["remark notes"]],
  // measures, and what is quoted
  ['mount 48" AFF', ["remark notes"]],
  ['mount 48   " AFF', ["remark notes"]],
  ['mount 48    " AFF', ["request notes"]],
  ["mount 5'-0\" AFF", ["remark notes"]],
  ["mount 5' 6 1/2'' AFF", ["remark notes"]],
  ["mount 4,5′ AFF", ["remark notes"]],
  ["lobby of Ines' bar", ["remark notes"]],
  ["lobby 'EAST'", ["request notes"]],
  ["lobby “EAST”", ["request notes"]],
  ["48 AFF to center", ["remark notes"]],
  ["48 AFF on centre", ["remark notes"]],
  ["lobby center", ["request notes"]],
  ["intro center", ["request notes"]],
  ["lobby to centers", ["request notes"]],
  // where the sheet belongs, and courtesies
  ["Thank you!", []],
  ["  ", []],
  ["S-104 (pos 2 / 4), thanks", []],
  ["pos 2 of 4; plate S 104", []],
  ["pos 3 of 4", ["elsewhere position notes"]],
  ["S-104 of BW-2207", ["remark notes"]],
])("notes-carry-orders: “%s”", (notes, says) => {
  expect(told("notes-carry-orders", device({ notes }))).toEqual(says);
});

test.each<[string, string[]]>([
  ["S-104", ["copied order mark"]],
  ["312 555 0117", ["copied order contact.phone"]],
  ["60607", ["copied order bill.postcode"]],
  ["60607-1", []],
  ["S-1041", []],
  ["tbd", ["placeholder order"]],
])("order-number-placeholder: “%s”", (order, says) => {
  expect(told("order-number-placeholder", device({ order }))).toEqual(says);
});

test.each<[string, boolean]>([
  ["BW-2207 or BW-2208", true],
  ["BW-2207 + BW-2208", true],
  ["BW-2207 and 2208", true],
  ["PO 4512 & 4513", true],
  ["BW-2207, formerly BW-2190", true],
  ["BW-2207 & 22", false],
  ["BW-2207 & 2207", false],
  ["BW-2207, 2026", false],
  ["BW-2207 was K-9", false],
  ["4512 Orchard", false],
  ["BW-2207/08", false],
])("mark-names-several: the order number “%s”", (order, isTwo) => {
  expect(told("mark-names-several", device({ order }))).toEqual(isTwo ? ["orders order"] : []);
});
