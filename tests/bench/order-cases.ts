import type { FaceName } from "../../src/trade/legend.ts";
import type { DeviceSheet, PlateSheet, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

/** What one buyer sent, letter by letter, and what a good clerk would say of the last letter. */
export interface Case {
  readonly shows: string;
  readonly letters: readonly (readonly Sheet[])[];
  /** The one check that has to find it; absent where there is nothing to ask. */
  readonly finds?: string;
  /** How often, where not once. */
  readonly times?: number;
}

type Changes = Partial<DeviceSheet>;
const sample = device();

/** A device standing alone, in a file named after its mark. */
function alone(order: string, mark: string, changes: Changes = {}): DeviceSheet {
  return aloneDevice({ order, mark, file: `${mark.replaceAll("/", "-")}.pdf`, ...changes });
}

const names = ["ENTRY", "STACKS", "STAGE", "LOUNGE", "OFFICE", "KITCHEN"];

/** A plate and its devices, each with legends of its own. */
function station(
  mark: string,
  gangs = 2,
  order = "BW-2207",
  changes: Partial<PlateSheet> = {},
): [PlateSheet, ...DeviceSheet[]] {
  const gangRows = Object.fromEntries(names.slice(0, gangs).map((name, i) => [i + 1, [name, ""]]));
  const { legends } = plate({}, gangRows);
  return [
    plate({ order, mark, gangs, file: `${mark} plate.pdf`, legends: legends.slice(0, gangs), ...changes }),
    ...Array.from({ length: gangs }, (_, i) => inPlate(mark, i + 1, gangs, { order })),
  ];
}

function inPlate(mark: string, position: number, gangs: number, changes: Changes = {}): DeviceSheet {
  const file = `${mark} pos ${position}.pdf`;
  return device({ mark, position, gangs, file, ...changes }, { "1": [names[position - 1] ?? "ENTRY", ""] });
}

/** The sheets with one of them changed, counted from 0. */
function but(sheets: readonly Sheet[], which: number, changes: Changes): Sheet[] {
  return sheets.map((sheet, i) => (i === which ? ({ ...sheet, ...changes } as Sheet) : sheet));
}

function one(changes: Changes, rows: Partial<Record<FaceName, string[]>> = {}): Sheet[][] {
  return [[aloneDevice(changes, rows)]];
}

const otherProject = { project: "Quarry Street School" };
const rows = (a: string, b = ""): Partial<Record<FaceName, string[]>> => ({ "1": [a, b] });
const { billTo, contact } = sample;
const site = {
  name: "Larkspur Library",
  street: "9 Alder Street",
  city: "Chicago",
  state: "IL",
  postcode: "60614",
};
const onOff = device({ layouts: ["D2"] }, { "1": ["LIGHTS", "ON"], "2": ["LIGHTS", "OFF"] }).legends.slice(
  0,
  2,
);
const mail = (email: string): Changes => ({ contact: { ...contact, email } });

/** Orders of honest buyers: nothing to ask about. Orders that follow each other are complete by themselves. */
export const honest: readonly Case[] = [
  { shows: "the next order number", letters: [[alone("EG-500", "S-1"), alone("EG-501", "S-2")]] },
  { shows: "two releases of an order", letters: [[alone("EG-500-1", "S-1")], [alone("EG-500-2", "S-2")]] },
  {
    shows: "four numbers in a row",
    letters: [["4512", "4513", "4514", "4515"].map((n, i) => alone(n, `S-${i + 1}`))],
  },
  { shows: "a number that carries over", letters: [[alone("1019", "S-1")], [alone("1020", "S-2")]] },
  {
    shows: "nine numbers on, which swaps two digits",
    letters: [[alone("4512", "S-1")], [alone("4521", "S-2")]],
  },
  { shows: "the next number behind a year", letters: [[alone("22-8147", "S-1"), alone("22-8148", "S-2")]] },
  { shows: "a count within the year", letters: [[alone("2026-014", "S-1")], [alone("2026-015", "S-2")]] },
  {
    shows: "two projects with the same marks",
    letters: [[alone("EG-500", "S-1")], [alone("EG-501", "S-1", otherProject)]],
  },
  {
    shows: "two projects, a digit more",
    letters: [[alone("EG-500", "S-1")], [alone("EG-5000", "S-2", otherProject)]],
  },
  {
    shows: "the word Order before one of them",
    letters: [[alone("Order 22-8147", "S-1"), alone("22-8147", "S-2")]],
  },
  {
    shows: "PO written in three ways",
    letters: [[alone("PO EG-500", "S-1"), alone("P.O. EG-500", "S-2"), alone("PO# EG-500", "S-3")]],
  },
  { shows: "No. before one of them", letters: [[alone("No. 4512", "S-1")], [alone("4512", "S-2")]] },
  { shows: "PO Number with a colon", letters: [[alone("PO Number: 4512", "S-1"), alone("po 4512", "S-2")]] },
  { shows: "a series for each building", letters: [[alone("A-100", "S-1"), alone("B-100", "S-2")]] },
  { shows: "north tower and south tower", letters: [[alone("NT-100", "S-1"), alone("ST-100", "S-2")]] },
  {
    shows: "a number for each floor",
    letters: [[alone("LK-101", "S-1"), alone("LK-201", "S-2"), alone("LK-301", "S-3")]],
  },
  { shows: "an addition with a letter", letters: [[alone("EG-500", "S-1")], [alone("EG-500A", "S-2")]] },
  {
    shows: "a remake under its own suffix",
    letters: [[alone("EG-500", "S-1")], [alone("EG-500-R1", "S-2")]],
  },
  { shows: "numbers far apart", letters: [[alone("4512", "S-1")], [alone("7781", "S-2")]] },
  {
    shows: "two projects, two digits swapped",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-2270", "S-2", otherProject)]],
  },
  { shows: "from three digits to four", letters: [[alone("EG-999", "S-1"), alone("EG-1000", "S-2")]] },
  {
    shows: "releases 1, 10 and 11",
    letters: [["22-8147-1", "22-8147-10", "22-8147-11"].map((n, i) => alone(n, `S-${i + 1}`))],
  },
  {
    shows: "floors as projects, the same marks on each",
    letters: [
      [alone("W-641", "K-1", { project: "Wharf Street floor 2" })],
      [alone("W-642", "K-1", { project: "Wharf Street floor 3" })],
    ],
  },
  {
    shows: "one more station in a later letter",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-2207", "S-2")]],
  },
  {
    shows: "the same job number a year later",
    letters: [[alone("J26-101", "S-1")], [alone("J27-101", "S-2")]],
  },
  { shows: "ten numbers on in a later letter", letters: [[alone("4512", "S-1")], [alone("4522", "S-2")]] },
  {
    shows: "a hundred numbers on in a later letter",
    letters: [[alone("22-8147", "S-1")], [alone("22-8247", "S-2")]],
  },
  { shows: "neighbouring stations", letters: [[...station("S-104"), ...station("S-105")]] },
  {
    shows: "marks of the same digits",
    letters: [["S-101", "S-110", "S-111"].map((mark) => alone("BW-2207", mark))],
  },
  {
    shows: "lettered stations",
    letters: [["S-10A", "S-10B", "S-10C"].map((mark) => alone("BW-2207", mark))],
  },
  {
    shows: "the letter B and the number 8",
    letters: [[alone("BW-2207", "S-10B"), alone("BW-2207", "S-108")]],
  },
  { shows: "level 1 and the first floor", letters: [[alone("BW-2207", "L-1"), alone("BW-2207", "1-1")]] },
  { shows: "an island and the first floor", letters: [[alone("BW-2207", "I-1"), alone("BW-2207", "1-1")]] },
  {
    shows: "north and south of 10, and 105",
    letters: [["S-10N", "S-10S", "S-105"].map((mark) => alone("BW-2207", mark))],
  },
  { shows: "office 1 and corridor 1", letters: [[alone("BW-2207", "O-1"), alone("BW-2207", "C-1")]] },
  { shows: "a mark written in two ways", letters: [but(station("S-104"), 1, { mark: "S 104" })] },
  {
    shows: "twelve stations",
    letters: [Array.from({ length: 12 }, (_, i) => alone("BW-2207", `S-${i + 1}`))],
  },
  { shows: "one lettering throughout", letters: [station("S-104", 3)] },
  {
    shows: "a plate of tin, devices lettered otherwise",
    letters: [
      station("S-104", 2, "BW-2207", { finish: "TIN" }).map((s) =>
        s.kind === "plate" ? s : { ...s, finish: "SOT", lettering: "MLK" },
      ),
    ],
  },
  {
    shows: "a device alone in other colours",
    letters: [[...station("S-104"), alone("BW-2207", "S-110", { finish: "SOT", lettering: "MLK" })]],
  },
  {
    shows: "the same two buttons under two room names",
    letters: [
      station("S-104").map((s) => (s.kind === "plate" ? s : { ...s, layouts: ["D2"], legends: onOff })),
    ],
  },
  {
    shows: "four devices alike under four room names",
    letters: [station("S-104", 4).map((s) => (s.kind === "plate" ? s : { ...s, legends: sample.legends }))],
  },
  {
    shows: "three zones alike and a master",
    letters: [
      but(
        station("S-104", 4).map((s) => (s.kind === "plate" ? s : { ...s, legends: sample.legends })),
        4,
        { legends: device({}, rows("MASTER")).legends },
      ),
    ],
  },
  {
    shows: "position and gangs in the file's name",
    letters: [but(station("S-104"), 2, { file: "S-104 pos 2 of 2.pdf" })],
  },
  {
    shows: "a range of positions in the file's name",
    letters: [but(station("S-104"), 2, { file: "S-104 pos 1-2.pdf" })],
  },
  {
    shows: "the number that a browser adds",
    letters: [but(station("S-104"), 1, { file: "device sheet (3).pdf" })],
  },
  {
    shows: "a revision in the file's name",
    letters: [but(station("S-104"), 2, { file: "BW-2207_S-104_pos_2_rev1.pdf" })],
  },
  {
    shows: "gangs before the mark",
    letters: [but(station("S-104"), 1, { file: "2 gang S104 position 1.pdf" })],
  },
  {
    shows: "a neighbour named beside the own mark",
    letters: [[alone("BW-2207", "S-110", { file: "S-110 like S-104.pdf" })]],
  },
  {
    shows: "a file named after the room",
    letters: [[alone("BW-2207", "S-110", { file: "Rm 204 staff door.pdf" })]],
  },
  { shows: "an address as project", letters: one({ project: "1200 Main Street" }) },
  { shows: "numbers in both", letters: one({ project: "2026-114", order: "22-8147" }) },
  { shows: "a name for an order number", letters: one({ order: "Verbal Ines" }) },
  { shows: "the project as order number", letters: one({ order: "Larkspur" }) },
  { shows: "a tower's number in the project", letters: one({ project: "Tower 7", order: "T7-2207" }) },
  { shows: "a mark with a letter", letters: one({ mark: "S-201B" }) },
  { shows: "a mark with the room", letters: one({ mark: "K-1 Island" }) },
  { shows: "units in the project's name", letters: one({ project: "Wharf Street Phase 2 (Units 1-12)" }) },
  { shows: "a measure in the project's name", letters: one({ project: "4x4 Ranch House" }) },
  { shows: "a height above the floor", letters: one({ notes: '48" AFF' }) },
  { shows: "where to mount it", letters: one({ notes: 'MOUNT AT 48" AFF' }) },
  { shows: "the wall box in the notes", letters: one({ notes: "2x4 wall box" }) },
  {
    shows: "a short name of a person, a city called Normal",
    letters: one({
      contact: { ...contact, name: "Bo Xu" },
      billTo: { ...billTo, city: "Normal", postcode: "61761" },
    }),
  },
  {
    shows: "a firm that begins like a placeholder",
    letters: one({ billTo: { ...billTo, name: "TBA Architects" } }),
  },
  { shows: "care of somebody", letters: one({ billTo: { ...billTo, name: "c/o Larkspur Library" } }) },
  { shows: "PRESHOW", letters: one({}, rows("PRESHOW")) },
  { shows: "CLOSED", letters: one({}, rows("CLOSED")) },
  { shows: "SAME DAY surgery", letters: one({}, rows("SAME DAY", "SURGERY")) },
  { shows: "ABOVE the bar", letters: one({}, rows("ABOVE", "BAR")) },
  { shows: "X-RAY", letters: one({}, rows("X-RAY 2")) },
  { shows: "a big provider's address", letters: one(mail("ines@gmail.com")) },
  { shows: "a provider that looks like another", letters: one(mail("ines@ymail.com")) },
  { shows: "a Canadian provider", letters: one(mail("ines@yahoo.ca")) },
  {
    shows: "a subdomain beside the domain",
    letters: [[alone("BW-2207", "S-1"), alone("BW-2207", "S-2", mail("ines@mail.brightwire.example"))]],
  },
  {
    shows: "two firms in one order",
    letters: [[alone("BW-2207", "S-1"), alone("BW-2207", "S-2", mail("joe@larkspur.example"))]],
  },
  { shows: "Ill. with a ZIP of Illinois", letters: one({ billTo: { ...billTo, state: "Ill." } }) },
  { shows: "a state in small letters", letters: one({ billTo: { ...billTo, state: "illinois" } }) },
  {
    shows: "a site to ship to, on every sheet",
    letters: [["S-1", "S-2"].map((mark) => alone("BW-2207", mark, { shipSame: false, shipTo: site }))],
  },
];

const complete = station("S-104", 2);
const lacksLast = station("S-104", 3).slice(0, -1);

/** Slips that a good clerk sees. Each is one fault: one check finds it, and nothing else is asked for. */
export const defects: readonly Case[] = [
  {
    shows: "the letter O for a zero",
    letters: [[alone("EG-500", "S-1"), alone("EG-50O", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the letter O for a zero, a later letter, another project",
    letters: [[alone("EG-500", "S-1")], [alone("EG-50O", "S-2", otherProject)]],
    finds: "order-number-near-miss",
  },
  {
    shows: "letters swapped",
    letters: [[alone("EG-500", "S-1"), alone("GE-500", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a zero too many",
    letters: [[alone("EG-500", "S-1")], [alone("EG-5000", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a prefix that is no word",
    letters: [[alone("EG-500", "S-1"), alone("WO EG-500", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "four numbers that are one",
    letters: [["EG-500", "EG-50O", "GE-500", "EG-5000"].map((n, i) => alone(n, `S-${i + 1}`))],
    finds: "order-number-near-miss",
    times: 3,
  },
  {
    shows: "digits swapped",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-2270", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a digit mistyped in one letter",
    letters: [[alone("22-8147", "S-1"), alone("22-8147", "S-2"), alone("22-8187", "S-3")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a leading zero",
    letters: [[alone("EG-500", "S-1")], [alone("EG-0500", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a small L for a one",
    letters: [[alone("BW-3107", "S-1"), alone("BW-3l07", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a zero for the letter O",
    letters: [[alone("OG-5518", "S-1"), alone("0G-5518", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the same sheet under a corrected number",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-9034", "S-1")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the same stations under a number far away",
    letters: [[alone("BW-2207", "S-1")], [{ ...alone("BW-9034", "S-1"), finish: "CHK" }]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the same stations under the next number",
    letters: [[alone("EG-500", "S-1"), alone("EG-500", "S-2")], [alone("EG-501", "S-1", { finish: "CHK" })]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the missing device under letters O",
    letters: [
      lacksLast.map((s) => ({ ...s, order: "EG-500" })),
      [inPlate("S-104", 3, 3, { order: "EG-5OO" })],
    ],
    finds: "order-number-near-miss",
  },
  {
    shows: "the missing device under an added prefix",
    letters: [[...lacksLast, inPlate("S-104", 3, 3, { order: "GC BW-2207" })]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the missing device under a number far away",
    letters: [[...lacksLast, inPlate("S-104", 3, 3, { order: "BW-9107" })]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a letter mistyped",
    letters: [[alone("EG-500", "S-1"), alone("EQ-500", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a digit left out",
    letters: [[alone("22-8147", "S-1")], [alone("22-847", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a digit doubled",
    letters: [[alone("22-8147", "S-1"), alone("22-88147", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the same stations, the project mistyped",
    letters: [
      [alone("BW-2207", "S-1")],
      [alone("BW-9034", "S-1", { project: "Larkspur Libary", finish: "CHK" })],
    ],
    finds: "order-number-near-miss",
  },
  {
    shows: "a mark with the letter O, both complete",
    letters: [[...complete, alone("BW-2207", "S-1O4")]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "a mark with a leading zero",
    letters: [[...complete, alone("BW-2207", "S-0104")]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "a mark with a small L",
    letters: [[alone("BW-2207", "S-101"), alone("BW-2207", "S-10l")]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "a mark with I and O",
    letters: [[...complete, ...station("S-1O4"), alone("BW-2207", "S-110")]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "a mark with B for 8",
    letters: [[alone("BW-2207", "S-184"), alone("BW-2207", "S-1B4")]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "4 and 04",
    letters: [[alone("BW-2207", "S-4"), alone("BW-2207", "S-04")]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "the missing device at a mark with the letter O",
    letters: [[...lacksLast, inPlate("S-1O4", 3, 3)]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "the missing device at a mark with a zero more",
    letters: [[...lacksLast, inPlate("S-0104", 3, 3)]],
    finds: "station-mark-near-miss",
  },
  {
    shows: "one device lettered otherwise",
    letters: [
      but(
        station("S-104", 3, "BW-2207", {}).map((s) => ({ ...s, finish: "CHK" })),
        2,
        { lettering: "RST" },
      ),
    ],
    finds: "lettering-differs-in-plate",
  },
  {
    shows: "the plate lettered otherwise",
    letters: [
      station("S-104").map((s) => ({
        ...s,
        finish: "CHK",
        lettering: s.kind === "plate" ? "RST" : "INK",
      })),
    ],
    finds: "lettering-differs-in-plate",
  },
  {
    shows: "one device copied to another position",
    letters: [but(station("S-104", 4), 2, { legends: inPlate("S-104", 1, 4).legends })],
    finds: "device-copied-in-plate",
  },
  {
    shows: "two devices alike, the plate plain",
    letters: [
      station("S-104").map((s) =>
        s.kind === "plate"
          ? { ...s, legends: s.legends.map(({ face }) => ({ face, rows: ["", ""], plain: true })) }
          : { ...s, layouts: ["D2"], legends: onOff },
      ),
    ],
    finds: "device-copied-in-plate",
  },
  {
    shows: "another position in the file's name",
    letters: [but(but(complete, 1, { file: "S-104 pos 2.pdf" }), 2, { file: "S-104 right.pdf" })],
    finds: "file-name-contradicts",
  },
  {
    shows: "another mark in the file's name",
    letters: [but(complete, 1, { file: "S-105 pos 1.pdf" })],
    finds: "file-name-contradicts",
  },
  {
    shows: "another position, written at length",
    letters: [but(but(complete, 1, { file: "left.pdf" }), 2, { file: "S104_position-1.pdf" })],
    finds: "file-name-contradicts",
  },
  {
    shows: "another mark on a device alone",
    letters: [[alone("BW-2207", "S-110", { file: "S-111.pdf" })]],
    finds: "file-name-contradicts",
  },
  {
    shows: "project and order number exchanged",
    letters: one({ order: "Larkspur Library", project: "BW-2207" }),
    finds: "project-order-exchanged",
  },
  {
    shows: "a PO in the project",
    letters: one({ order: "Quarry School", project: "PO 4512" }),
    finds: "project-order-exchanged",
  },
  { shows: "two marks with a comma", letters: one({ mark: "S-201, S-201B" }), finds: "mark-names-several" },
  { shows: "two marks with a stroke", letters: one({ mark: "S-201 / S-202" }), finds: "mark-names-several" },
  { shows: "a mark times three", letters: one({ mark: "S-201 x3" }), finds: "mark-names-several" },
  { shows: "typical of four", letters: one({ mark: "TYP OF 4" }), finds: "mark-names-several" },
  {
    shows: "a quantity behind the mark",
    letters: one({ mark: "S-201 (QTY 2)" }),
    finds: "mark-names-several",
  },
  {
    shows: "two marks with an ampersand",
    letters: one({ mark: "S-201 & S-202" }),
    finds: "mark-names-several",
  },
  { shows: "a range of marks", letters: one({ mark: "S-201 TO S-204" }), finds: "mark-names-several" },
  {
    shows: "a quantity in the project",
    letters: one({ project: "Larkspur Library (3 ea)" }),
    finds: "mark-names-several",
  },
  {
    shows: "the project times three",
    letters: one({ project: "Larkspur Library x3" }),
    finds: "mark-names-several",
  },
  { shows: "typical in the notes", letters: one({ notes: "TYP OF 4" }), finds: "notes-carry-orders" },
  { shows: "a quantity in the notes", letters: one({ notes: "qty 3" }), finds: "notes-carry-orders" },
  {
    shows: "other stations in the notes",
    letters: one({ notes: "S-110, S-202 and S-203" }),
    finds: "notes-carry-orders",
  },
  {
    shows: "an x for the contact",
    letters: one({ contact: { ...contact, name: "x" } }),
    finds: "field-placeholder",
  },
  {
    shows: "a dot for the street",
    letters: one({ billTo: { ...billTo, street: "." } }),
    finds: "field-placeholder",
  },
  {
    shows: "N/A for the city",
    letters: one({ billTo: { ...billTo, city: "N/A" } }),
    finds: "field-placeholder",
  },
  {
    shows: "an address on file",
    letters: one({ billTo: { ...billTo, street: "on file", city: "on file" } }),
    finds: "field-placeholder",
  },
  { shows: "a project to be decided", letters: one({ project: "TBD" }), finds: "field-placeholder" },
  {
    shows: "ship to the same, in words",
    letters: one({ shipSame: false, shipTo: { name: "SAME" } }),
    finds: "field-placeholder",
  },
  {
    shows: "a placeholder on one sheet of three",
    letters: [
      but(
        ["S-1", "S-2", "S-3"].map((mark) => alone("BW-2207", mark)),
        1,
        { project: "TBD" },
      ),
    ],
    finds: "field-placeholder",
  },
  { shows: "QTY 2", letters: one({}, rows("QTY 2")), finds: "legend-placeholder" },
  { shows: "SEE DWG", letters: one({}, rows("SEE DWG")), finds: "legend-placeholder" },
  { shows: "AS ABOVE", letters: one({}, rows("AS ABOVE")), finds: "legend-placeholder" },
  { shows: "SEE NOTES", letters: one({}, rows("SEE", "NOTES")), finds: "legend-placeholder" },
  { shows: "PER PLAN", letters: one({}, rows("PER PLAN")), finds: "legend-placeholder" },
  { shows: "TYP OF 4", letters: one({}, rows("TYP OF 4")), finds: "legend-placeholder" },
  { shows: "gmial", letters: one(mail("ines@gmial.com")), finds: "email-domain-slip" },
  {
    shows: "an ending that does not exist",
    letters: one(mail("ines@gmail.con")),
    finds: "email-domain-slip",
  },
  { shows: "hotmial", letters: one(mail("ines@hotmial.com")), finds: "email-domain-slip" },
  {
    shows: "a letter left out of the firm's domain",
    letters: [
      but(
        ["S-1", "S-2", "S-3"].map((mark) => alone("BW-2207", mark)),
        1,
        mail("ines@brightwre.example"),
      ),
    ],
    finds: "email-domain-slip",
  },
  {
    shows: "a state that is none",
    letters: one({ billTo: { ...billTo, state: "ZZ" } }),
    finds: "postcode-state-mismatch",
  },
  {
    shows: "a state that is none, on a form without ZIP",
    letters: one({
      billTo: { name: "Brightwire Electric", street: "48 Foundry Row", city: "Chicago", state: "ZZ" },
      prints: Object.fromEntries(
        Object.entries(aloneDevice().prints).filter(([place]) => place !== "bill.postcode"),
      ),
    }),
    finds: "postcode-state-mismatch",
  },
  {
    shows: "a ZIP of another state on one sheet",
    letters: [
      but(
        ["S-1", "S-2", "S-3"].map((mark) => alone("BW-2207", mark)),
        1,
        { billTo: { ...billTo, postcode: "06070" } },
      ),
    ],
    finds: "postcode-state-mismatch",
  },
  {
    shows: "half a ship-to on one sheet",
    letters: [
      but(
        ["S-1", "S-2"].map((mark) => alone("BW-2207", mark)),
        1,
        { shipSame: false, shipTo: { name: "Larkspur Library", city: "Chicago" } },
      ),
    ],
    finds: "address-incomplete",
  },
  {
    shows: "position 1 twice and no 2",
    letters: [but(complete, 2, { position: 1, file: "right.pdf" })],
    finds: "position-taken-twice",
  },
  { shows: "an invisible character", letters: one({}, rows("\uFEFFENTRY")), finds: "invisible-character" },
  {
    shows: "an invisible character at the end",
    letters: one({}, rows("ENTRY\u200B")),
    finds: "invisible-character",
  },
  {
    shows: "an unbreakable blank in front",
    letters: one({}, rows("\u00A0ENTRY")),
    finds: "character-not-cuttable",
  },
  {
    shows: "a position beyond the plate",
    letters: [but(complete, 2, { position: 3, file: "right.pdf" })],
    finds: "position-out-of-range",
  },
  {
    shows: "a mark left from the station before",
    letters: [but([...complete, ...station("S-105")], 4, { mark: "S-104", file: "a.pdf" })],
    finds: "position-taken-twice",
  },
  {
    shows: "a plate with the mark of the station before",
    letters: [but([...complete, ...station("S-105", 3)], 3, { mark: "S-104", file: "b.pdf" })],
    finds: "plate-twice",
  },
  {
    shows: "a finish that is not made so wide",
    letters: [station("S-104", 6)],
    finds: "finish-not-made",
  },
];

/** Orders of honest buyers written when the checks were there, to try them on what they were not made for. */
export const honestLater: readonly Case[] = [
  {
    shows: "purchase orders of a month",
    letters: [["4471", "4498", "4502", "4519"].map((n, i) => alone(n, `S-${i + 1}`))],
  },
  { shows: "days for numbers", letters: [[alone("11-09-26", "S-1")], [alone("11-19-26", "S-2")]] },
  {
    shows: "an order for each unit",
    letters: [["UNIT 102", "UNIT 120", "UNIT 130"].map((n, i) => alone(n, `S-${i + 1}`))],
  },
  {
    shows: "units of a tower",
    letters: [["1204", "1214", "1224", "1234"].map((n, i) => alone(n, `S-${i + 1}`))],
  },
  {
    shows: "lots of a builder",
    letters: [
      ["LOT 17", "LOT 71", "LOT 18"].map((n, i) => alone(n, "K-1", { project: `Heath Row lot ${i}` })),
    ],
  },
  {
    shows: "an order and its change order",
    letters: [[alone("22-8147", "S-1")], [alone("22-8147-CO1", "S-2")]],
  },
  { shows: "an order in two parts", letters: [[alone("EG-500/1", "S-1"), alone("EG-500/2", "S-2")]] },
  {
    shows: "the day's first and second order",
    letters: [[alone("261109A", "S-1")], [alone("261109B", "S-2")]],
  },
  {
    shows: "the same order corrected by the same sheet",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-2207", "S-1", { finish: "CHK" })]],
  },
  {
    shows: "purchase orders with zeros, of two projects",
    letters: [[alone("000451", "S-1")], [alone("000452", "S-1", otherProject)]],
  },
  {
    shows: "marks that are numbers",
    letters: [["1", "2", "11", "12"].map((mark) => alone("BW-2207", mark))],
  },
  { shows: "rooms as marks", letters: [["101", "110", "111"].map((mark) => alone("BW-2207", mark))] },
  { shows: "east and west", letters: [["S-10E", "S-10W", "S-10"].map((mark) => alone("BW-2207", mark))] },
  {
    shows: "ground floor and lobby",
    letters: [["G-1", "L-1", "B-1", "8-1"].map((mark) => alone("BW-2207", mark))],
  },
  { shows: "a wall behind a stroke", letters: one({ mark: "CR-1 / north wall" }) },
  { shows: "a place behind a comma", letters: one({ mark: "K-1, by door" }) },
  { shows: "building and station", letters: one({ mark: "B2-S104" }) },
  { shows: "a pier with a number", letters: one({ project: "Pier 4 Lofts, Phase 2" }) },
  { shows: "a house number", letters: one({ project: "2 Park Place" }) },
  { shows: "verbal with a day", letters: one({ order: "Dave verbal 11/9" }) },
  { shows: "a height to the middle", letters: one({ notes: '+48" to center' }) },
  { shows: "a typical height", letters: one({ notes: "Typical height 48 in AFF" }) },
  { shows: "left of the door", letters: one({ notes: "Left of entry door, 6' from corner" }) },
  {
    shows: "initials that look like a placeholder",
    letters: one({ contact: { ...contact, name: "N. A. Patel" } }),
  },
  { shows: "XX in a firm's name", letters: one({ billTo: { ...billTo, name: "XX Lighting" } }) },
  {
    shows: "Ont. with a code of Ontario",
    letters: one({ billTo: { ...billTo, city: "Ottawa", state: "Ont.", postcode: "K1A 0B1" } }),
  },
  { shows: "a page in the file's name", letters: [but(station("S-104"), 2, { file: "S-104 p1 of 2.pdf" })] },
  {
    shows: "the position before the mark",
    letters: [but(station("S-104"), 2, { file: "Pos 2 - S-104.pdf" })],
  },
  {
    shows: "the order before the mark",
    letters: [but(station("S-104"), 2, { file: "PO S-220 S-104 pos2.pdf" })],
  },
  { shows: "the reference desk", letters: one({}, rows("REF DESK")) },
  {
    shows: "two offices of one firm",
    letters: [[alone("BW-2207", "S-1"), alone("BW-2207", "S-2", mail("office@brightwire.example"))]],
  },
  { shows: "a domain of two letters", letters: one(mail("ines@bw.co")) },
];

/** Slips written at the same time. */
export const defectsLater: readonly Case[] = [
  {
    shows: "an 8 for the letter B",
    letters: [[alone("BW-2207", "S-1"), alone("8W-2207", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "an O in the middle and another project spelling",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-22O7", "S-2", { project: "LARKSPUR LIBARY" })]],
    finds: "order-number-near-miss",
  },
  {
    shows: "a zero left out of the suffix",
    letters: [[alone("BW-2207-01", "S-1"), alone("BW-2207-1", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "PO glued before the letters",
    letters: [[alone("EG-500", "S-1"), alone("POEG-500", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "the whole order again under the right number",
    letters: [station("S-104").map((s) => ({ ...s, order: "BW-1111" })), station("S-104")],
    finds: "order-number-near-miss",
  },
  {
    shows: "a plate under one number, its devices under another",
    letters: [station("S-104").map((s, i) => ({ ...s, order: i === 0 ? "BW-2207" : "BW-2307" }))],
    finds: "order-number-near-miss",
  },
  {
    shows: "letters typed one key off",
    letters: [[alone("22-8147", "S-1"), alone("22-8l47", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "digits swapped in front",
    letters: [[alone("BW-2207", "S-1")], [alone("BW-2027", "S-2")]],
    finds: "order-number-near-miss",
  },
  {
    shows: "plate and devices, one mark with O",
    letters: [but(station("S-104"), 0, { mark: "S-1O4" })],
    finds: "station-mark-near-miss",
  },
  {
    shows: "two complete plates, S-20 and S-2O",
    letters: [[...station("S-20"), ...station("S-2O", 3)]],
    finds: "station-mark-near-miss",
  },
  { shows: "a number before the mark", letters: one({ mark: "(2) S-201" }), finds: "mark-names-several" },
  { shows: "times with a blank", letters: one({ mark: "S-201 x 2" }), finds: "mark-names-several" },
  { shows: "required", letters: one({ mark: "S-201 (4 REQ'D)" }), finds: "mark-names-several" },
  { shows: "on each floor", letters: one({ mark: "S-201 EACH FLOOR" }), finds: "mark-names-several" },
  { shows: "marks with a blank between", letters: one({ mark: "S-201 S-202" }), finds: "mark-names-several" },
  {
    shows: "marks with a hyphen between",
    letters: one({ mark: "S-201-S-204" }),
    finds: "mark-names-several",
  },
  {
    shows: "pieces in the order number",
    letters: one({ order: "BW-2207 (2 pcs)" }),
    finds: "mark-names-several",
  },
  {
    shows: "same for other rooms",
    letters: one({ notes: "same for rooms 201-204" }),
    finds: "notes-carry-orders",
  },
  {
    shows: "each floor in the notes",
    letters: one({ notes: "one on each floor" }),
    finds: "notes-carry-orders",
  },
  {
    shows: "as usual",
    letters: one({ billTo: { ...billTo, street: "as usual" } }),
    finds: "field-placeholder",
  },
  {
    shows: "on file with you",
    letters: one({ billTo: { ...billTo, street: "on file w/ you" } }),
    finds: "field-placeholder",
  },
  {
    shows: "dashes for the name",
    letters: one({ contact: { ...contact, name: "--" } }),
    finds: "field-placeholder",
  },
  { shows: "question marks for the project", letters: one({ project: "???" }), finds: "field-placeholder" },
  { shows: "see schedule", letters: one({}, rows("SEE", "SCHED")), finds: "legend-placeholder" },
  { shows: "same as another", letters: one({}, rows("SAME AS", "S-103")), finds: "legend-placeholder" },
  { shows: "two each", letters: one({}, rows("2 EA")), finds: "legend-placeholder" },
  { shows: "yahoo without an o", letters: one(mail("ines@yaho.com")), finds: "email-domain-slip" },
  { shows: "outlook.co", letters: one(mail("ines@outlook.co")), finds: "email-domain-slip" },
  {
    shows: "a hyphen left out of the firm's domain",
    letters: [
      ["S-1", "S-2", "S-3"].map((mark) =>
        alone("BW-2207", mark, mail(mark === "S-2" ? "a@brightwire.example" : "a@bright-wire.example")),
      ),
    ],
    finds: "email-domain-slip",
  },
  {
    shows: "exchanged, a blank in the number",
    letters: one({ order: "Larkspur Library", project: "bw 2207" }),
    finds: "project-order-exchanged",
  },
  {
    shows: "two files exchanged",
    letters: [but(but(complete, 1, { file: "S-104 pos 2.pdf" }), 2, { file: "S-104 pos 1.pdf" })],
    finds: "file-name-contradicts",
    times: 2,
  },
  {
    shows: "position 2 twice and no 1",
    letters: [but(complete, 1, { position: 2, file: "left.pdf" })],
    finds: "position-taken-twice",
  },
  {
    shows: "a sheet without its position",
    letters: [but(complete, 2, { position: undefined, file: "right.pdf" } as unknown as Changes)],
    finds: "field-missing",
  },
  {
    shows: "a state of another country",
    letters: one({ billTo: { ...billTo, state: "Bavaria" } }),
    finds: "postcode-state-mismatch",
  },
];
