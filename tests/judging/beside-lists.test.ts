import { expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { besideLists } from "../../src/judging/beside-lists.ts";
import type { ReadFile } from "../../src/trade/attachment.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice, blankDevice, device, deviceAt, plate } from "../make/sample.ts";

const list: ReadFile = { id: "1/7", file: "stations.csv", kind: "list" };
const origin = { file: list.file, row: 3, cells: {}, unread: [] };
const fileOf = ({ id, file }: Sheet): ReadFile => ({ id, file, kind: "sheet" });
const ordered: Sheet = { ...device({ finish: "CHK" }), id: "1/8", list: origin };
const alone: Sheet = { ...deviceAt(1), id: "1/9", list: origin };

test("of a sheet and a list for one place the sheet counts, told what the list says otherwise", () => {
  const sheets = [plate(), device(), ordered, alone];
  const came = besideLists({ files: [list, ...sheets.map(fileOf)], sheets });
  expect(came.files.map(({ id, beside }) => [id, beside])).toEqual([
    ["1/7", 1],
    ["1/1", undefined],
    ["1/2", undefined],
    ["1/9", undefined],
  ]);
  expect(came.sheets.map(({ id, otherwise }) => [id, otherwise?.places.map(({ says }) => says)])).toEqual([
    ["1/1", undefined],
    ["1/2", ["CHK"]],
    ["1/9", undefined],
  ]);
});

test("a list that says what its sheet says is told as beside it, and nothing of the sheet", () => {
  const came = besideLists({ files: [list], sheets: [device(), { ...device(), id: "1/8", list: origin }] });
  expect(came).toEqual({ files: [{ ...list, beside: 1 }], sheets: [device()] });
});

test("a sheet on which nothing is filled in is not held against a list for its place, nor told to be lacked", () => {
  const known = { mark: "S-104", order: "BW-2207", position: 2, gangs: 4, standing: "in-plate" } as const;
  const sheets = [deviceAt(1), blankDevice({ id: "1/3", ...known }), ordered, alone];
  const came = besideLists({ files: [list, ...sheets.map(fileOf)], sheets });
  expect(came.sheets.map(({ id, otherwise }) => [id, otherwise])).toEqual([
    [deviceAt(1).id, undefined],
    ["1/3", undefined],
    ["1/8", undefined],
  ]);
});

test("a list beside sheets for other places is left as it came", () => {
  const came = { files: [list], sheets: [plate(), ordered] };
  expect(besideLists(came)).toEqual(came);
});

test("a sheet that the list of the others lacks is told so, if the list orders sheets of its kind", () => {
  const lacked = (...sheets: Sheet[]) =>
    besideLists({ files: [list], sheets }).sheets.flatMap(({ id, otherwise }) =>
      otherwise?.lacks ? id : [],
    );
  const listed: Sheet = { ...device(), id: "1/8", list: origin };
  const more = deviceAt(1, { id: "1/5" });
  expect(lacked(device(), more, listed)).toEqual(["1/5"]);
  expect(lacked(device(), plate(), listed)).toEqual([]);
  // A list that orders nothing of its own counts what the sheets order.
  expect(lacked(device(), aloneDevice(), listed)).toEqual(["1/9"]);
  const own: Sheet = { ...deviceAt(3), id: "1/11", list: origin };
  expect(lacked(device(), aloneDevice(), listed, own)).toEqual([]);
  expect(lacked(device(), { ...more, order: "BW-3110" }, listed)).toEqual([]);
  expect(lacked(device(), without(more, "mark"), listed)).toEqual([]);
  expect(lacked(more, listed)).toEqual([]);
  const other: Sheet = { ...deviceAt(3), id: "1/10", list: { ...origin, file: "more.csv" } };
  expect(lacked(device(), more, listed, other)).toEqual([]);
});
