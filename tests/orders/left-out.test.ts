import { expect, test } from "vitest";
import { leftOutIn } from "../../src/orders/left-out.ts";
import type { Replacement } from "../../src/trade/order.ts";
import type { DeviceSheet } from "../../src/trade/sheet.ts";
import { aloneDevice } from "../make/sample.ts";

const list = { file: "stations.xlsx", row: 3, cells: {}, unread: [] } as const;
const listed = (mark: string, changes: Partial<DeviceSheet> = {}): DeviceSheet =>
  aloneDevice({ id: `1/${mark}`, mark, file: `${mark}.pdf`, list, ...changes });
const again = (mark: string, changes: Partial<DeviceSheet> = {}): Replacement => ({
  old: listed(mark),
  now: listed(mark, { id: `2/${mark}`, ...changes }),
  how: "place",
});
const changed = (mark: string): Replacement => again(mark, { notes: "left wall" });

const left = (standing: readonly DeviceSheet[], replaced: readonly Replacement[], late: Replacement[] = []) =>
  leftOutIn({ sheets: [...standing, ...replaced.map(({ now }) => now)], replaced, late }).map(
    ({ mark }) => mark,
  );

test("rows are left out where one of their list came again as it was, or most of their stations came", () => {
  expect(left([listed("S-2"), listed("S-3")], [again("S-1")])).toEqual(["S-2", "S-3"]);
  expect(left([listed("S-3")], [changed("S-1"), changed("S-2")])).toEqual(["S-3"]);
  expect(left([listed("S-2")], [changed("S-1")])).toEqual(["S-2"]);
});

test("a list of what was changed or had to be mended leaves nothing out", () => {
  expect(left([listed("S-2"), listed("S-3")], [changed("S-1")])).toEqual([]);
  expect(left([listed("S-2")], [{ ...changed("S-1"), how: "mended" }])).toEqual([]);
  expect(left([listed("S-2")], [])).toEqual([]);
});

test("only a list leaves out what a list has ordered, and no other list than the one that it corrects", () => {
  const { list: _, ...sheet } = listed("S-2");
  expect(left([sheet], [again("S-1")])).toEqual([]);
  expect(left([listed("S-2", { list: { ...list, file: "floor 2.xlsx" } })], [again("S-1")])).toEqual([]);
  expect(left([listed("S-2", { id: "3/1" })], [again("S-1")])).toEqual([]);
  const { list: __, ...now } = again("S-1").now;
  expect(left([listed("S-2")], [{ ...again("S-1"), now }])).toEqual([]);
});

test("what came again and did not count is not left out", () => {
  const late: Replacement = { old: listed("S-2", { id: "2/9" }), now: listed("S-2"), how: "place" };
  expect(left([listed("S-2")], [again("S-1")], [late])).toEqual([]);
});
