import { expect, test } from "vitest";
import { judgedWords } from "../../src/checks/judged.ts";
import { legend } from "../../src/checks/sample.ts";
import { withKept } from "../../src/lettering/with-kept.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";

type Kind = Parameters<typeof judgedWords>[2];

/** The words of a sheet that are judged so, and what was meant. */
const judged = (kind: Kind, sheet: Sheet, by = catalogue): string[] =>
  judgedWords(sheet, by, kind).map(({ text, meant: [meant = ""] }) => `${text} → ${meant}`);
/** A device with these legends, row by row. */
const faces = (...legends: (readonly string[])[]): Sheet =>
  device({ legends: legends.map((rows, i) => legend(`${i + 1}` as "1", ...rows)) });

test("a word is judged by the other legends of its device, and not once more by its own", () => {
  expect(judged("slipped", faces(["BERTH 1"], ["BIRTH 2"]))).toEqual(["BIRTH → BERTH"]);
  expect(judged("slipped", faces(["BIRTH 2"]))).toEqual([]);
  expect(judged("slipped", faces(["WELCOME"], ["HOPE"]))).toEqual(["HOPE → HOME"]);
  expect(judged("slipped", faces(["WELCOME", "HOPE"]))).toEqual([]);
});

test("a word is judged by what stands before and behind it in its legend, in the row or another", () => {
  for (const rows of [["DR ZU"], ["DR", "ZU"]]) expect(judged("name", faces(rows))).toEqual(["ZU → "]);
  expect(judged("unknown", faces(["ZU"]))).toEqual(["ZU → "]);
  for (const rows of [["OF ALL"], ["OF", "ALL"]]) expect(judged("slipped", faces(rows))).toEqual([]);
  expect(judged("slipped", faces(["OF"]))).toEqual(["OF → OFF"]);
});

test("a word that goes on in the row below, or began above, is judged as a whole", () => {
  const misspelt = (...rows: string[]) => judged("misspelt", faces(rows));
  expect(misspelt("LOBB", "Y")).toEqual([]);
  expect(misspelt("LOBB ON", "Y")).toEqual(["LOBB → LOBBY"]);
  expect(misspelt("LOBB", "UP Y")).toEqual(["LOBB → LOBBY"]);
  expect(misspelt("UP KI", "TCHEN UP")).toEqual([]);
  expect(misspelt("KI UP", "TCHEN")).toEqual(["TCHEN → THEN"]);
  expect(misspelt("KI", "UP TCHEN")).toEqual(["TCHEN → THEN"]);
});

test("legends that are not cut, stand for others or have too many characters are not judged", () => {
  const [one] = faces(["KITCHNE"]).legends;
  if (one === undefined) throw new Error("no legend");
  expect(judged("misspelt", device({ legends: [one] }))).toEqual(["KITCHNE → KITCHEN"]);
  expect(judged("misspelt", device({ legends: [{ ...one, plain: true }] }))).toEqual([]);
  expect(judged("misspelt", faces(["KITCHNE A"]))).toEqual([]);
  expect(judged("misspelt", faces(["KITCHN A"]))).toEqual(["KITCHN → KITCHEN"]);
  expect(judged("misspelt", faces(["SAME ", "AS"], ["KITCHNE"]))).toEqual(["KITCHNE → KITCHEN"]);
  expect(judged("misspelt", faces(["SAME AS", "KITCHNE"]))).toEqual([]);
});

test("a word that the project's buyers keep, or that the sheet calls somebody by, is right", () => {
  const kept = withKept(catalogue, [{ word: "KITCHNE", project: "Larkspur Library" }]);
  const sheet = faces(["KITCHNE"]);
  expect(judged("misspelt", sheet)).toEqual(["KITCHNE → KITCHEN"]);
  expect(judged("misspelt", sheet, kept)).toEqual([]);
  expect(judged("misspelt", sheet)).toEqual(["KITCHNE → KITCHEN"]);
  expect(judged("misspelt", { ...sheet, project: "Larkspur House" }, kept)).toEqual(["KITCHNE → KITCHEN"]);
  expect(judged("misspelt", { ...sheet, contact: { name: "Ines Kitchne" } })).toEqual([]);
  const named = { ...faces(["EK"]), contact: { name: "Bo Ek" } };
  expect(judged("name", faces(["EK"]))).toEqual(["EK → "]);
  expect(judged("name", named)).toEqual([]);
});

test("only the last word of a full row may be cut, where nothing stands behind it and the row is not kept", () => {
  const cut = (row: string, by = catalogue) => judged("cut", faces([row]), by);
  expect(cut("RECEPTIO")).toEqual(["RECEPTIO → RECEPTION"]);
  expect(cut("LIGHTS O")).toEqual(["O → ON"]);
  expect(judgedWords(faces([" LIGHT O"]), catalogue, "cut")).toMatchObject([
    { text: "O", typed: "LIGHT O", face: "button 1", row: 1, place: "row.1.1" },
  ]);
  expect(cut("LIGHT O")).toEqual([]);
  expect(cut("O STUDIO")).toEqual([]);
  expect(cut("(DEPT O)")).toEqual([]);
  const kept = withKept(catalogue, [{ word: "LIGHTS O", project: "Larkspur Library" }]);
  expect(cut("LIGHTS O", kept)).toEqual([]);
});

test("initials at the end of a full row are not cut, and what only looks like them may be", () => {
  const cut = (row: string) => judged("cut", faces([row]));
  for (const row of ["LOFT R&D", "LOFT R/D", "LOFT R.D", "LOFT R+D", "LOFT R-D"])
    expect(cut(row)).toEqual([]);
  expect(cut("LOFT2R/D")).toEqual(["D → DOWN"]);
  expect(cut("LOFTR/ D")).toEqual(["D → DOWN"]);
  expect(cut("OFF ON/O")).toEqual(["O → OFF"]);
  expect(cut("A/V ON O")).toEqual(["O → OFF"]);
});
