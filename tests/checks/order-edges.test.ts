import { expect, test } from "vitest";
import { orderChecks } from "../../src/checks/catalogue.ts";
import type { OrderSubject } from "../../src/checks/check.ts";
import { legend, subject, without } from "../../src/checks/sample.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import { pieceKey } from "../../src/orders/piece.ts";
import type { Aside } from "../../src/trade/order.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";

/** What a check tells of an order: each wording, the sheets that it points at, and the facts that are asked for. */
function about(check: string, order: OrderSubject, ...facts: string[]): string[] {
  const [one] = orderChecks.filter(({ id }) => id === check);
  if (one === undefined) throw new Error(`no check ${check}`);
  return [...one.find(order, catalogue)].map((problem) =>
    [
      problem.wording,
      ...new Set(problem.spots.map(({ file }) => file)),
      ...facts.map((fact) => `${fact}=${String(problem.facts[fact])}`),
    ].join(" "),
  );
}
const told = (check: string, sheets: readonly Sheet[], ...facts: string[]): string[] =>
  about(check, subject(sheets), ...facts);

test.each<[string, Sheet[], string[]]>([
  ["a complete plate", completeOrder(), []],
  [
    "one of four",
    [plate(), deviceAt(1), deviceAt(2), deviceAt(3)],
    ["one 1/1 position=4 positions=undefined"],
  ],
  ["two of four", [plate(), deviceAt(2), deviceAt(3)], ["more 1/1 position=undefined positions=1,4"]],
  ["a plate that does not say its gangs", [without(plate(), "gangs"), deviceAt(1)], []],
  ["no plate", [deviceAt(1)], []],
])("plate-missing-devices: %s", (_name, sheets, says) => {
  expect(told("plate-missing-devices", sheets, "position", "positions")).toEqual(says);
});

test("device-without-plate counts the devices that go into the plate, at stations that lack one", () => {
  const elsewhere = deviceAt(1, { id: "1/8", mark: "T-1" });
  const standing = aloneDevice({ mark: "T-1", file: "alone.pdf" });
  const says = (...sheets: Sheet[]) => told("device-without-plate", sheets, "station", "count");
  expect(says(...completeOrder(), elsewhere)).toEqual(["unordered 1/8 station=T-1 count=1"]);
  expect(says(elsewhere, standing)).toEqual(["unordered 1/8 station=T-1 count=1"]);
});

const alone = (id: string, mark: string): Sheet => aloneDevice({ id, mark, file: `${id}.pdf` });
test.each<[string, Sheet[], string[]]>([
  ["one alone", [alone("1/8", "S-104")], []],
  ["one alone at a plate's station", [plate(), alone("1/8", "S-104")], ["marked 1/8 station=S-104"]],
  [
    "one alone beside a device in the plate",
    [deviceAt(1), alone("1/8", "S-104")],
    ["marked 1/8 station=S-104"],
  ],
  ["one alone elsewhere", [plate(), deviceAt(1), alone("1/8", "T-1")], []],
])("standalone-in-plate: %s", (_name, sheets, says) => {
  expect(told("standalone-in-plate", sheets, "station")).toEqual(says);
});

const again = (sheet: Sheet, id: string, finish = "CHK"): Sheet => ({
  ...sheet,
  id,
  file: `${id}.pdf`,
  finish,
});
test.each<[string, Sheet[], string[]]>([
  [
    "two alone at one station",
    [alone("1/8", "T-1"), again(alone("1/9", "T-1"), "1/9")],
    ["alone 1/8 1/9 count=2"],
  ],
  ["two of one position", [...completeOrder(), again(deviceAt(2), "1/9")], ["position 1/3 1/9 count=2"]],
  [
    "two of one position while another is empty",
    [plate(), deviceAt(1), deviceAt(2), deviceAt(3), again(deviceAt(2), "1/9")],
    ["forgotten 1/3 1/9 count=2"],
  ],
  ["each in a position of its own", completeOrder(), []],
])("position-taken-twice: %s", (_name, sheets, says) => {
  expect(told("position-taken-twice", sheets, "count")).toEqual(says);
});

test.each<[string, Sheet[], string[]]>([
  ["one", completeOrder(), []],
  ["two", [...completeOrder(), again(plate(), "1/9")], ["twice 1/1 1/9 count=2 other=undefined"]],
  [
    "two, while a station has none",
    [
      ...completeOrder(),
      again(plate(), "1/9"),
      ...completeOrder()
        .slice(1)
        .map((sheet, n): Sheet => ({ ...sheet, id: `1/2${n}`, mark: "S-110" })),
    ],
    ["forgotten 1/1 1/9 count=2 other=S-110"],
  ],
])("plate-twice: %s of a station", (_name, sheets, says) => {
  expect(told("plate-twice", sheets, "count", "other")).toEqual(says);
});

test("same-sheet-twice tells one that has a place apart from one without a mark, and no blank one", () => {
  const twice = (sheet: Sheet): string[] => told("same-sheet-twice", [sheet, { ...sheet, id: "1/9" }]);
  expect(twice(deviceAt(1))).toEqual(["placed 1/9"]);
  expect(twice(without(aloneDevice(), "mark"))).toEqual(["unplaced 1/9"]);
  expect(told("same-sheet-twice", completeOrder())).toEqual([]);
});

test("same-file-name-twice names the files that came under one name", () => {
  const named = (id: string, name: string): Sheet => deviceAt(Number(id), { id: `1/${id}`, named: name });
  expect(
    told("same-file-name-twice", [named("1", "a.pdf"), named("2", "a.pdf"), deviceAt(3)], "named"),
  ).toEqual(["told 1/1 1/2 named=a.pdf"]);
});

test.each<[Aside["why"], Sheet, string]>([
  ["dates", deviceAt(2), "dates 1/3 1/8 position=undefined station=undefined"],
  ["again", deviceAt(2), "again 1/3 1/8 position=undefined station=undefined"],
  ["alone", deviceAt(2), "alone 1/3 1/8 position=undefined station=S-104"],
  ["in-plate", deviceAt(2), "in-plate 1/3 1/8 position=undefined station=S-104"],
  ["beyond", deviceAt(2), "beyond 1/3 1/8 position=2 station=S-104"],
])("which-sheet-counts: %s", (why, sheet, says) => {
  const { order, others } = subject(completeOrder());
  const aside: Aside[] = [{ sheet, beside: plate({ id: "1/8" }), why }];
  expect(about("which-sheet-counts", { order: { ...order, aside }, others }, "position", "station")).toEqual([
    says,
  ]);
});

test.each<[string, string, string[]]>([
  ["T-104", "T-104", []],
  ["T-104", "T-0104", ["zeros"]],
  ["T-104", "T-1O4", ["looks"]],
  ["T-104", "Station T-104", ["words"]],
])("station-mark-near-miss: one device alone at %s and one at %s", (usual, odd, wordings) => {
  const says = told("station-mark-near-miss", [alone("1/8", usual), again(alone("1/9", odd), "1/9")]);
  expect(says.map((one) => one.split(" ")[0])).toEqual(wordings);
});

test("station-mark-near-miss asks whether the sheet that a plate lacks is the one of a mistyped mark", () => {
  const sheets = [plate(), deviceAt(1), deviceAt(2), deviceAt(3), deviceAt(4, { mark: "S-140" })];
  expect(told("station-mark-near-miss", sheets, "station", "meant")).toEqual([
    "near 1/5 station=S-140 meant=S-104",
  ]);
});

test("abbreviation-inconsistent compares legends that are cut, whatever number a room has", () => {
  const cut = (...legends: (readonly string[])[]): Sheet =>
    device({ legends: legends.map((rows, i) => legend(`${i + 1}` as "1", ...rows)) });
  const says = (sheet: Sheet) => told("abbreviation-inconsistent", [sheet], "ways");
  expect(says(cut(["CONF RM"], ["CONFERENCE", "ROOM"]))).toEqual([
    "differs 1/2 ways=“CONF RM”,“CONFERENCE ROOM”",
  ]);
  expect(says(cut(["conf rm 2"], ["CONFERENCE", "ROOM 1"]))).toEqual([
    "differs 1/2 ways=“CONFERENCE ROOM 1”,“conf rm 2”",
  ]);
  expect(says(cut(["CONF RM 1"], ["CONF", "RM 2"]))).toEqual([]);
  expect(says(cut(["CONF RM"], ["conf rm"]))).toEqual([]);
  expect(says(cut(["CONF RM", ""], ["conference", "room"]))).toEqual([
    "differs 1/2 ways=“CONF RM”,“conference room”",
  ]);
  expect(says(cut(["CONF RM 2"], ["CONF RM 1"], ["CONFERENCE", "ROOM 3"]))).toEqual([
    "differs 1/2 ways=“CONF RM 1”,“CONFERENCE ROOM 3”",
  ]);
  expect(says(cut(["CONF RM"], ["CONFERENCE", "HALL"]))).toEqual([]);
  const [one, two] = cut(["CONF RM"], ["CONFERENCE", "ROOM"]).legends;
  if (one === undefined || two === undefined) throw new Error("no legends");
  expect(says(device({ legends: [one, { ...two, plain: true }] }))).toEqual([]);
});

test("sheet-replaced tells what changed, what did not, and what came too late", () => {
  const { order, others } = subject(completeOrder());
  const pair = (changes: Partial<Sheet>) => ({
    old: device(),
    now: { ...device(), id: "2/1", file: "again.pdf", ...changes } as Sheet,
    how: "place" as const,
  });
  const says = (one: Partial<Pick<OrderSubject, "replaced" | "late">>) =>
    about("sheet-replaced", { order, others, ...one }, "changes", "count");
  expect(says({ replaced: [pair({ finish: "CHK" })] })).toEqual([
    "changed 2/1 changes=Finish: “Oat” → “Chalk” count=undefined",
  ]);
  expect(says({ replaced: [pair({}), pair({})] })).toEqual(["unchanged 2/1 changes=undefined count=2"]);
  expect(says({ late: [pair({ finish: "CHK" })] })).toEqual([
    "late 1/2 changes=Finish: “Chalk” → “Oat” count=undefined",
  ]);
  expect(says({ late: [pair({})] })).toEqual(["late 1/2 changes=nothing differs count=undefined"]);
  expect(says({})).toEqual([]);
});

test("unmarked-sheet-again asks at the latest of those that came under one name in several letters", () => {
  const unmarked = (id: string, changes: Partial<DeviceSheet> = {}): DeviceSheet => ({
    ...without(aloneDevice({ id, file: "hall.pdf", finish: id }), "mark"),
    ...changes,
  });
  const says = (...sheets: Sheet[]) => told("unmarked-sheet-again", sheets, "file");
  expect(says(unmarked("1/1"), unmarked("2/1"))).toEqual(["unclear 2/1 file=hall.pdf"]);
  expect(says(unmarked("1/1"), unmarked("2/1"), unmarked("3/1"))).toEqual(["unclear 3/1 file=hall.pdf"]);
  expect(says(unmarked("1/1"), unmarked("1/2"))).toEqual([]);
  expect(says(unmarked("1/1"), unmarked("2/1", { file: "lobby.pdf" }))).toEqual([]);
  expect(says(unmarked("1/1"), unmarked("2/1", { file: "hall (2).pdf", named: "hall.pdf" }))).toEqual([
    "unclear 2/1 file=hall.pdf",
  ]);
  expect(says(unmarked("1/1"), unmarked("2/1", { mark: "T-1" }))).toEqual([]);
  const inPlate = { standing: "in-plate" } as const;
  expect(says(unmarked("1/1", inPlate), unmarked("2/1", inPlate))).toEqual([]);
});

test.each<[string, Sheet[], string[]]>([
  ["the file of its own place", [plate(), deviceAt(1, { file: "S-104 pos 1.pdf" })], []],
  ["a file of another position", [plate(), deviceAt(1, { file: "S-104 pos 3.pdf" })], ["position 1/2"]],
  ["a file of another mark", [plate(), deviceAt(1, { file: "S-105 pos 1.pdf" })], ["mark 1/2"]],
  ["a plate's file of another mark", [plate({ file: "S-105.pdf" })], ["mark 1/1"]],
  ["a file that tells no place", [plate(), deviceAt(1, { file: "keypad.pdf" })], []],
  [
    "a sheet made of a list",
    [
      plate(),
      deviceAt(1, { file: "S-104 pos 3.pdf", list: { file: "stations.csv", row: 3, cells: {}, unread: [] } }),
    ],
    [],
  ],
  ["a position for one that stands alone", [aloneDevice({ file: "S-110 pos 2.pdf" })], []],
  [
    "a position for one that stands alone, typed",
    [aloneDevice({ file: "S-110 pos 2.pdf", position: 1 })],
    [],
  ],
  [
    "a position for two sheets of another, which is asked about as taken twice",
    [plate(), deviceAt(1, { file: "S-104 pos 3.pdf" }), again(deviceAt(1), "1/8")],
    [],
  ],
  [
    "the file of a place whose own tells no position",
    [plate(), deviceAt(1, { file: "S-104 pos 3.pdf" }), deviceAt(3, { file: "S-104 right.pdf" })],
    ["position 1/2"],
  ],
  [
    "the file of a place that has its own",
    [plate(), deviceAt(1, { file: "S-104 pos 3.pdf" }), deviceAt(3, { file: "S-104 pos 3 new.pdf" })],
    [],
  ],
  [
    "a plate's file of a mark that has its own",
    [plate({ file: "S-105.pdf" }), plate({ id: "1/9", mark: "S-105", file: "S-105 plate.pdf" })],
    [],
  ],
  [
    "two files whose names are exchanged",
    [plate(), deviceAt(1, { file: "S-104 pos 3.pdf" }), deviceAt(3, { file: "S-104 pos 1.pdf" })],
    ["position 1/2", "position 1/4"],
  ],
  [
    "two files whose names are exchanged, in a later letter",
    [
      plate(),
      deviceAt(1, { id: "2/1", file: "S-104 pos 3.pdf" }),
      deviceAt(3, { id: "2/2", file: "S-104 pos 1.pdf" }),
    ],
    ["position 2/1", "position 2/2"],
  ],
  [
    "an old file, mended in a later letter",
    [plate(), deviceAt(1, { id: "2/1", file: "S-104 pos 3.pdf" })],
    [],
  ],
])("file-name-contradicts: %s", (_name, sheets, says) => {
  expect(told("file-name-contradicts", sheets)).toEqual(says);
});

test("finish-of-plate-not-made speaks of the devices that go into the plate, in its finish", () => {
  const six = { gangs: 6 };
  const [other, alone] = [deviceAt(2, { ...six, finish: "CHK" }), aloneDevice({ mark: "S-104" })];
  const says = (...sheets: Sheet[]) => told("finish-of-plate-not-made", [plate(six), ...sheets]);
  expect(says(deviceAt(1, six), other, alone)).toEqual(["devices 1/2"]);
  expect(says(other, alone)).toEqual([]);
});

test("order-number-near-miss points at the sheets that bear the number, not at one that has joined them", () => {
  const orders = gatherOrders([
    ...completeOrder(),
    aloneDevice({ id: "2/1", file: "2/1", order: "BW-22O7" }),
    without(aloneDevice({ id: "2/2", file: "2/2", mark: "S-111", order: "BW-22O7" }), "order"),
  ]);
  const order = orders.find(({ number }) => number === "BW-22O7");
  if (order === undefined) throw new Error("no such order");
  const others = orders.filter((one) => one !== order);
  expect(order.sheets).toHaveLength(2);
  expect(about("order-number-near-miss", { order, others }, "other")).toEqual(["looks 2/1 other=BW-2207"]);
});

test("order-released names what came in the order in which it came", () => {
  const released = { revision: 1, at: "", on: "2026-11-09", by: "Rosa Imhoff", pieces: [] };
  const sheets = [deviceAt(4, { id: "2/2", file: "b.pdf" }), deviceAt(3, { id: "2/1", file: "a.pdf" })];
  expect(about("order-released", { ...subject(sheets), released }, "files")).toEqual([
    "different 2/1 2/2 files=a.pdf,b.pdf",
  ]);
});

test("order-released tells the same difference as one, in whatever order its sheets come", () => {
  const released = {
    revision: 1,
    at: "2026-11-09T15:00:00.000Z",
    on: "2026-11-09",
    by: "Rosa Imhoff",
    pieces: completeOrder().map((sheet) => ({ sheet: sheet.id, key: pieceKey(sheet), engraved: false })),
  };
  const differs = (...changed: Sheet[]) => {
    const { order, others } = subject([...completeOrder().slice(0, 3), ...changed]);
    return about("order-released", { order, others, released }, "differs");
  };
  const [three, four] = [
    deviceAt(3, { finish: "CHK", file: "a" }),
    deviceAt(4, { finish: "CHK", file: "a" }),
  ];
  const [as, or] = [{ id: "2/1" }, { id: "2/2" }];
  const one = differs({ ...three, ...as }, { ...four, ...or });
  expect(differs({ ...three, ...or }, { ...four, ...as })).toEqual(one);
  expect(differs({ ...three, ...as })).not.toEqual(differs({ ...four, ...as }));
});
