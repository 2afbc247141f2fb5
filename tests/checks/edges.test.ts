import { expect, test } from "vitest";
import { orderChecks, sheetChecks } from "../../src/checks/catalogue.ts";
import { wordsOf } from "../../src/checks/run.ts";
import { legend, subject, without } from "../../src/checks/sample.ts";
import { fitLegend } from "../../src/lettering/fit.ts";
import type { Place } from "../../src/trade/place.ts";
import type { Problem } from "../../src/trade/problem.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";

const told = (problems: Iterable<Problem>) =>
  [...problems].map(({ wording, spots }) => [wording, ...new Set(spots.map(({ file }) => file))].join(" "));

/** What one check finds on a sheet, or on the order of some. */
function onSheet(check: string, sheet: Sheet): string[] {
  return sheetChecks.filter(({ id }) => id === check).flatMap((one) => told(one.find(sheet, catalogue)));
}
function onOrder(check: string, ...sheets: Sheet[]): string[] {
  const about = subject(sheets);
  return orderChecks.filter(({ id }) => id === check).flatMap((one) => told(one.find(about, catalogue)));
}
const at = (position: number, email: string): Sheet =>
  deviceAt(position, { contact: { ...device().contact, email } });

test("contact-differs leaves a mistyped domain to its own check, and tells another address", () => {
  expect(onOrder("contact-differs", plate(), deviceAt(1), at(2, "ines@brightwre.example"))).toEqual([]);
  expect(onOrder("contact-differs", plate(), deviceAt(1), at(2, "omar@brightwire.example"))).toEqual([
    "differs 1/3",
  ]);
});

test("contact-differs compares no placeholder, and no country code", () => {
  const says = (changes: object): string[] =>
    onOrder("contact-differs", plate(), deviceAt(2, { contact: { ...device().contact, ...changes } }));
  expect(says({ name: "TBD" })).toEqual([]);
  expect(says({ name: "Omar Reyes" })).toEqual(["differs 1/3"]);
  expect(says({ phone: "1 312 555 0117" })).toEqual([]);
  expect(says({ phone: "1 312 555 01171" })).toEqual(["differs 1/3"]);
});

test("gang-count-differs looks at devices of the plate alone, and clears a plate that another agrees with", () => {
  const check = "gang-count-differs";
  expect(onOrder(check, plate(), aloneDevice({ mark: "S-104", gangs: 6 }))).toEqual([]);
  expect(onOrder(check, plate(), deviceAt(1, { gangs: 6 }))).toEqual(["differs 1/2 1/1"]);
  expect(onOrder(check, plate(), deviceAt(1, { gangs: 6 }), deviceAt(2))).toEqual(["differs 1/2"]);
  expect(onOrder(check, plate({ gangs: 2 }), without(deviceAt(3), "gangs"))).toEqual(["beyond 1/4 1/1"]);
  expect(onOrder(check, plate({ gangs: 3 }), without(deviceAt(3), "gangs"))).toEqual([]);
  expect(onOrder(check, without(plate(), "gangs"), deviceAt(3))).toEqual([]);
});

test("lettering-differs-in-plate looks at what is lettered, of one finish, in the plate", () => {
  const other = { lettering: "MLK" };
  const check = "lettering-differs-in-plate";
  const plain = (sheet: Sheet) => sheet.legends.map((one) => ({ ...one, plain: true }));
  expect(onOrder(check, plate(), deviceAt(1, other))).toEqual(["differs 1/2"]);
  expect(onOrder(check, plate({ legends: plain(plate()) }), deviceAt(1, other))).toEqual([]);
  expect(onOrder(check, plate(), deviceAt(1, { ...other, legends: plain(device()) }))).toEqual([]);
  expect(onOrder(check, plate(), deviceAt(1, { ...other, legends: [legend("1", "")] }))).toEqual([]);
  expect(onOrder(check, plate(), deviceAt(1, { ...other, finish: "SLT" }))).toEqual([]);
  expect(onOrder(check, plate(), aloneDevice({ ...other, mark: "S-104" }))).toEqual([]);
  expect(onOrder(check, without(plate(), "finish"), without(deviceAt(1, other), "finish"))).toEqual([]);
  expect(onOrder(check, plate(), deviceAt(1, { lettering: "Gold" }))).toEqual([]);
});

test("finish-differs-in-plate looks at devices in the plate, and compares what is chosen", () => {
  const check = "finish-differs-in-plate";
  expect(onOrder(check, plate(), deviceAt(1, { finish: "SLT" }))).toEqual(["differs 1/2"]);
  expect(onOrder(check, plate(), deviceAt(1, { finish: "oat" }))).toEqual([]);
  expect(onOrder(check, plate(), without(deviceAt(1), "finish"))).toEqual([]);
  expect(onOrder(check, plate(), aloneDevice({ finish: "SLT", mark: "S-104" }))).toEqual([]);
  expect(onOrder(check, deviceAt(1, { finish: "SLT" }), deviceAt(2))).toEqual([]);
});

test("sheet-replaced names twelve changes at most, and counts the others", () => {
  const { order, others } = subject(completeOrder());
  const [check] = orderChecks.filter(({ id }) => id === "sheet-replaced");
  const changes = (n: number): unknown => {
    const row = (text: string) => [legend("1", ...Array.from({ length: n }, () => text))];
    const [old, now] = [device({ legends: row("A") }), device({ id: "2/1", legends: row("B") })];
    const replaced = [{ old, now, how: "place" as const }];
    return [...(check?.find({ order, others, replaced }, catalogue) ?? [])][0]?.facts["changes"];
  };
  expect(changes(12)).toHaveLength(12);
  expect(changes(12)).not.toContain("2 more fields");
  expect(changes(13)).toHaveLength(12);
  expect(changes(13)).toContain("2 more fields");
});

test("field-missing leaves mark, layout and the billing address to checks of their own", () => {
  expect(onSheet("field-missing", without(device(), "mark"))).toEqual([]);
  expect(onSheet("field-missing", device({ layouts: [] }))).toEqual([]);
  expect(onSheet("field-missing", device({ billTo: {} }))).toEqual([]);
  expect(onSheet("field-missing", without(device(), "lettering"))).toEqual(["missing 1/2"]);
});

test("legend-case-mixed takes a row with small letters for no row of capitals", () => {
  const rows = (...some: string[]) =>
    onSheet("legend-case-mixed", device({ legends: [legend("1", ...some)] }));
  expect(rows("Entry", "Stacks EAST")).toEqual([]);
  expect(rows("Entry", "2B")).toEqual([]);
  expect(rows("Entry", "B 2 B")).toEqual(["mixed 1/2"]);
});

test("project-order-exchanged needs words without a digit for the number, and a number for the project", () => {
  const says = (order: string, project: string) =>
    onSheet("project-order-exchanged", device({ order, project }));
  expect(says("Larkspur Library", "BW-2207")).toEqual(["exchanged 1/2"]);
  expect(says("Larkspur Library 2", "BW-2207")).toEqual([]);
  expect(says("LL", "BW-2207")).toEqual([]);
  expect(says("Larkspur", "Floor 7")).toEqual([]);
  expect(says("Larkspur", "ABCDE-2207")).toEqual([]);
  expect(says("TBD", "BW-2207")).toEqual([]);
  expect(says("Lib", "BW-2207")).toEqual(["exchanged 1/2"]);
  for (const number of [
    "2207",
    "22",
    "ABCD-2207",
    "BW 22/07",
    "J26/101A",
    "22-8147",
    " # 2207 ",
    "PO: BW.2207",
  ])
    expect(says("Larkspur", number), number).toEqual(["exchanged 1/2"]);
  for (const name of ["7", "2207 Main", "Halls 2207", "BW-2207AB", "2207-", "B-W-2207", "22 07"])
    expect(says("Larkspur", name), name).toEqual([]);
  expect(says("Larkspur", "1".repeat(39))).toEqual(["exchanged 1/2"]);
  expect(says("Larkspur", "1".repeat(40))).toEqual([]);
});

test("legend-empty leaves a face alone where something was typed that nobody could read for certain", () => {
  const empty = device({}, { "3": ["", ""] });
  const says = (place: Place) =>
    onSheet("legend-empty", { ...empty, unsure: [{ place, one: "ENTRY", other: "" }] });
  expect(onSheet("legend-empty", empty)).toEqual(["empty 1/2"]);
  expect(says("row.3.1")).toEqual([]);
  expect(says("row.3.2")).toEqual([]);
  expect(says("plain.3")).toEqual([]);
  expect(says("row.2.1")).toEqual(["empty 1/2"]);
});

test("opposites-out-of-order looks at the last words of buttons that are cut, the only ones of their word", () => {
  const alone = (n: number, ...rows: (readonly string[])[]): Sheet =>
    aloneDevice({
      id: `1/${n}`,
      mark: `T-${n}`,
      legends: rows.map((row, i) => legend(`${i + 1}` as "1", ...row)),
    });
  const says = (turned: Sheet) =>
    onOrder("opposites-out-of-order", alone(1, ["ON"], ["OFF"]), alone(2, ["LIGHTS", "on"], ["OFF"]), turned);
  const turned = alone(3, ["LIGHTS OFF"], ["ON"]);
  expect(says(turned)).toEqual(["turned 1/3"]);
  const [off, on] = turned.legends;
  if (off === undefined || on === undefined) throw new Error("no legends");
  const withLegends = (...legends: Sheet["legends"]): Sheet => ({ ...turned, legends });
  expect(says(withLegends(off, on, { ...on, face: "plate" }))).toEqual(["turned 1/3"]);
  expect(says(withLegends(off, on, { ...on, face: "3", plain: true }))).toEqual(["turned 1/3"]);
  expect(says(withLegends(off, { ...on, plain: true }))).toEqual([]);
  expect(says(withLegends(off, on, { ...on, face: "3" }))).toEqual([]);
  expect(says(alone(3, ["OFF PEAK"], ["ON"]))).toEqual([]);
  expect(says(alone(3, ["OFF", ""], ["ON", ""]))).toEqual(["turned 1/3"]);
  expect(says(alone(3, ["ON"], ["OFF"]))).toEqual([]);
});

test("letters-too-small lets letters be as high as the least, and tells which of the two limits it is", () => {
  const [check] = sheetChecks.filter(({ id }) => id === "letters-too-small");
  const sheet = device({ layouts: ["D6"] }, { "1": ["NNNNNNAA"] });
  const face = catalogue.layouts.find(({ code }) => code === "D6")?.face;
  if (face === undefined) throw new Error("no such layout");
  const { cap } = fitLegend(["NNNNNNAA"], face, catalogue.engraving);
  const reasons = (least_cap: number, reading_distance: number) => {
    const engraving = { ...catalogue.engraving, least_cap, reading_distance };
    return [...(check?.find(sheet, { ...catalogue, engraving }) ?? [])].map(({ facts }) => facts["reason"]);
  };
  expect(reasons(cap, 100)).toEqual([]);
  expect(reasons(cap + 0.001, 100)).toEqual(["that is cut without asking"]);
  expect(reasons(cap, 600)).toEqual(["that is read with ease from 600 mm away"]);
});

test("ship-to-differs points at the tick where that says where to, and else at the parts that differ", () => {
  const [check] = orderChecks.filter(({ id }) => id === "ship-to-differs");
  const toSite = {
    shipSame: false,
    shipTo: { ...device().billTo, street: "9 Quarry Street", postcode: "60618" },
  };
  const places = (...sheets: Sheet[]) =>
    [...(check?.find(subject(sheets), catalogue) ?? [])].flatMap(({ spots }) =>
      spots.map(({ place }) => place),
    );
  expect(places(plate(), deviceAt(1), deviceAt(2, toSite))).toEqual(["ship.street", "ship.postcode"]);
  expect(places(plate(toSite), deviceAt(1, toSite), deviceAt(2))).toEqual(["ship.same"]);
});

test("opposites-out-of-order tells of the fewer, whichever way round those are", () => {
  const [check] = orderChecks.filter(({ id }) => id === "opposites-out-of-order");
  const placed = (n: number, ...words: string[]): Sheet =>
    aloneDevice({
      id: `1/${n}`,
      mark: `T-${n}`,
      legends: words.map((word, i) => legend(`${i + 1}` as "1", word)),
    });
  const says = (...sheets: Sheet[]) =>
    [...(check?.find(subject(sheets), catalogue) ?? [])].map((problem) => wordsOf(problem).says);
  const [up, down] = [placed(1, "UP", "DOWN"), placed(2, "DOWN", "UP")];
  expect(says(up, down, placed(3, "UP", "DOWN"))).toEqual([
    "“DOWN” comes before “UP” here; on 2 other devices of this order it comes after.",
  ]);
  expect(says(up, down, placed(3, "DOWN", "UP"))).toEqual([
    "“UP” comes before “DOWN” here; on 2 other devices of this order it comes after.",
  ]);
  expect(says(up, down)).toEqual([]);
});
