import { expect, test } from "vitest";
import { besideLists } from "../../src/judging/beside-lists.ts";
import type { ReadFile } from "../../src/trade/attachment.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { device, deviceAt, plate } from "../make/sample.ts";

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

test("a list beside sheets for other places is left as it came", () => {
  const came = { files: [list], sheets: [plate(), ordered] };
  expect(besideLists(came)).toEqual(came);
});
