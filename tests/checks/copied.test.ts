import { expect, test } from "vitest";
import { copiedIn, isToldApart, takenOverFrom } from "../../src/checks/copied.ts";
import { legend, subject, without } from "../../src/checks/sample.ts";
import type { Station } from "../../src/trade/order.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

const says = (position: number, ...rows: string[]): DeviceSheet =>
  deviceAt(position, { legends: [legend("1", ...rows)] });
function stationOf(...sheets: Sheet[]): Station {
  const [station] = subject(sheets).order.stations;
  if (station === undefined) throw new Error("no station");
  return station;
}
const copied = (...sheets: Sheet[]) => copiedIn(stationOf(...sheets)).map(({ position }) => position);
const three = plate({ gangs: 3 });

test("two devices of a complete plate that are one are told, where all others differ", () => {
  expect(copied(three, says(1, "STAGE"), says(2, "STAGE"), says(3, "FOYER"))).toEqual([1, 2]);
  expect(copied(three, says(1, "STAGE"), says(2, "LOBBY"), says(3, "FOYER"))).toEqual([]);
  expect(copied(three, says(1, "STAGE"), says(2, "STAGE"), says(3, "STAGE"))).toEqual([]);
  expect(copied(plate(), says(1, "A"), says(2, "A"), says(3, "B"), says(4, "B"))).toEqual([]);
});

test("devices without legends are no copies, nor are those that are left plain", () => {
  expect(copied(three, says(1, ""), says(2, ""), says(3, "FOYER"))).toEqual([]);
  const plain = (position: number): Sheet =>
    deviceAt(position, { legends: [{ ...legend("1", "STAGE"), plain: true }] });
  expect(copied(three, plain(1), plain(2), says(3, "FOYER"))).toEqual([]);
});

test("nothing is told of a plate that is not complete, or that came twice", () => {
  const pair = [says(1, "STAGE"), says(2, "STAGE")];
  expect(copied(three, ...pair)).toEqual([]);
  expect(copied(three, ...pair, without(says(3, "FOYER"), "position"))).toEqual([]);
  expect(copied(three, plate({ gangs: 3, id: "1/8", finish: "x" }), ...pair, says(3, "FOYER"))).toEqual([]);
});

/** Whether the plate's legends above them tell two devices apart that say the same. */
function apart(above: readonly [string, string], ...rows: string[]): boolean {
  const station = stationOf(
    plate({ gangs: 2, legends: [legend("1", above[0]), legend("2", above[1])] }),
    says(1, ...rows),
    says(2, ...rows),
  );
  return isToldApart(station, station.devices);
}

test("a room's name above tells devices apart that say what any control says", () => {
  expect(apart(["FOYER", "STAGE"], "ALL", "OFF")).toBe(true);
  expect(apart(["FOYER", "STAGE"], "all off")).toBe(true);
  expect(apart(["FOYER", "STAGE"], "LECTERN")).toBe(false);
  expect(apart(["FOYER", "STAGE"], "Q")).toBe(true);
  expect(apart(["FOYER", "STAGE"], "QZ")).toBe(false);
  expect(apart(["FOYER", "FOYER"], "ALL", "OFF")).toBe(false);
  expect(apart(["FOYER", " FOYER "], "ALL", "OFF")).toBe(false);
  expect(apart(["", ""], "ALL", "OFF")).toBe(false);
});

test("a name above that is not cut tells nothing apart", () => {
  const [foyer, stage] = [legend("1", "FOYER"), legend("2", "STAGE")];
  const station = (first: typeof foyer, second: typeof stage): Station =>
    stationOf(plate({ gangs: 2, legends: [first, second] }), says(1, "ALL", "OFF"), says(2, "ALL", "OFF"));
  const isApart = (one: Station): boolean => isToldApart(one, one.devices);
  expect(isApart(station(foyer, stage))).toBe(true);
  expect(isApart(station({ ...foyer, plain: true }, { ...stage, plain: true }))).toBe(false);
});

test("names of one series tell any devices apart", () => {
  expect(apart(["BALLROOM A", "BALLROOM B"], "LECTERN")).toBe(true);
  expect(apart(["ballroom 1", "BALLROOM 12C"], "LECTERN")).toBe(true);
  expect(apart(["NORTH WING", "SOUTH WING"], "LECTERN")).toBe(true);
  expect(apart(["NORTHERN WING", "SOUTHERN WING"], "LECTERN")).toBe(false);
});

/** The file whose legends the last of some sheets has taken over, where it takes the place of another. */
function from(old: Sheet, now: Sheet, ...beside: Sheet[]): string | undefined {
  const again = { ...now, id: "2/1" } as Sheet;
  return takenOverFrom({ old, now: again, how: "place" }, subject([...beside, again]).order)?.file;
}
const scenes = (position: number, ...words: string[]): DeviceSheet =>
  deviceAt(position, { gangs: 2, legends: words.map((word, i) => legend(`${i + 1}`, word)) });
const named = plate({ gangs: 2, legends: [legend("1", "FOYER"), legend("2", "STAGE")] });
const [on, up] = [scenes(1, "ON", "OFF"), scenes(2, "UP", "DOWN")];

test("a position that is sent again with all that another one says has taken it over", () => {
  expect(from(on, scenes(1, "UP", "DOWN"), named, up)).toBe("S-104 pos 2.pdf");
  // both changed
  expect(from(on, scenes(1, "UP", "DOWN"), named, scenes(2, "ON", "OFF"))).toBeUndefined();
  // one word mended
  expect(from(scenes(1, "UP", "DWN"), scenes(1, "UP", "DOWN"), named, up)).toBeUndefined();
  // half of it was so before
  expect(
    from(scenes(1, "ON", "OFF", "DIM"), scenes(1, "UP", "DOWN"), named, scenes(2, "UP", "DOWN", "DIM")),
  ).toBeUndefined();
  // what nothing tells apart is asked about as a pair
  expect(from(on, scenes(1, "UP", "DOWN"), plate({ gangs: 2, legends: [] }), up)).toBeUndefined();
  // the plate lacks a sheet
  expect(from(on, scenes(1, "UP", "DOWN"), plate({ gangs: 3 }), up)).toBeUndefined();
});

const atStation = (mark: string, room: string, ...words: string[]): DeviceSheet =>
  aloneDevice({
    id: `1/${mark}`,
    mark,
    file: `${mark}.pdf`,
    legends: [...words.map((word, i) => legend(`${i + 1}`, word)), legend("plate", room)],
  });

test("so has a station that is sent again with the room of another", () => {
  const pantry = atStation("S-2", "PANTRY", "UP", "DOWN");
  const old = atStation("S-1", "LOBBY", "ON", "OFF");
  expect(from(old, atStation("S-1", "PANTRY", "UP", "DOWN"), pantry)).toBe("S-2.pdf");
  expect(from(old, atStation("S-1", "LOBBY", "UP", "DOWN"), pantry)).toBeUndefined();
  expect(from(old, atStation("S-1", "", "UP", "DOWN"), atStation("S-2", "", "UP", "DOWN"))).toBeUndefined();
  // where several are alike it is a plan
  expect(
    from(old, atStation("S-1", "PANTRY", "UP", "DOWN"), pantry, atStation("S-3", "PANTRY", "UP", "DOWN")),
  ).toBeUndefined();
  const plates = ["S-1", "S-2"].map((mark) => ({ ...named, id: `1/${mark}`, mark, file: `${mark}.pdf` }));
  const [first = named, second = named] = plates;
  const bar = { ...first, legends: [legend("1", "BAR"), legend("2", "HALL")] };
  expect(from(bar, first, second)).toBe("S-2.pdf");
  expect(
    from({ ...bar, legends: [legend("1", "BAR"), legend("2", "STAGE")] }, first, second),
  ).toBeUndefined();
});
