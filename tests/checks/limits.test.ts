import { expect, test } from "vitest";
import { facesOf, roomOn } from "../../src/catalogue/faces.ts";
import { fittedLegends } from "../../src/checks/fitted.ts";
import { plainMark, tooLongRows, typedRows } from "../../src/checks/limits.ts";
import { legend, sampleOf, without } from "../../src/checks/sample.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, device, plate } from "../make/sample.ts";

const { layout, otherLayout, widest } = sampleOf(catalogue);
const faces = (n: number): string[] => Array.from({ length: n }, (_, i) => `${i + 1}`);

test("a plate has a face for each gang, where such a plate is made", () => {
  expect(facesOf(plate({ gangs: 1 }), catalogue)).toEqual(["1"]);
  expect(facesOf(plate({ gangs: widest }), catalogue)).toEqual(faces(widest));
  expect(facesOf(plate({ gangs: widest + 1 }), catalogue)).toBeUndefined();
  expect(facesOf(plate({ gangs: 0 }), catalogue)).toBeUndefined();
  expect(facesOf(without(plate(), "gangs"), catalogue)).toBeUndefined();
});

test("a device has the faces of its only layout, and its own plate where it stands alone", () => {
  const buttons = facesOf(device(), catalogue);
  expect(buttons).toEqual(faces(buttons?.length ?? 0));
  expect(facesOf(aloneDevice(), catalogue)).toEqual([...(buttons ?? []), "plate"]);
  expect(facesOf(device({ layouts: [] }), catalogue)).toBeUndefined();
  expect(facesOf(device({ layouts: [layout.code, otherLayout.code] }), catalogue)).toBeUndefined();
  expect(facesOf(device({ layouts: ["?"] }), catalogue)).toBeUndefined();
});

test("the room on a face is the layout's, on a plate the plate's", () => {
  expect(roomOn(device(), "1", catalogue)).toBe(layout);
  expect(roomOn(aloneDevice(), "plate", catalogue)).toBe(catalogue.plate);
  expect(roomOn(plate(), "1", catalogue)).toBe(catalogue.plate);
});

test("rows with something typed are told from 1, blanks among them", () => {
  const legends = [legend("1", "", " "), legend("2", "B", "")];
  expect(typedRows(device({ legends }))).toEqual([
    { place: "row.1.2", face: "1", row: 2, text: " " },
    { place: "row.2.1", face: "2", row: 1, text: "B" },
  ]);
});

test("a row is too long by its characters, and an accent is none", () => {
  const { characters } = layout;
  const long = (text: string) => tooLongRows(device({}, { "1": [text] }), catalogue);
  expect(long("I".repeat(characters))).toEqual([]);
  expect(long(`${"I".repeat(characters - 1)}E\u0301`)).toEqual([]);
  expect(long("I".repeat(characters + 1))).toMatchObject([{ length: characters + 1, limit: characters }]);
});

test("the mark to leave a face plain is told where the form has one", () => {
  expect(plainMark(plate(), "1")).toMatch(/^“.+”$/);
  expect(plainMark({ ...plate(), prints: {} }, "1")).toBeUndefined();
});

test("only legends with something to cut, on faces that are there, are fitted", () => {
  const fitted = (legends: ReturnType<typeof legend>[]) =>
    fittedLegends(device({ legends }), catalogue).map(({ face, rows }) => [face, rows.length]);
  const [one, two] = [legend("1", "ENTRY"), legend("2", "DIM")];
  expect(fitted([one, two])).toEqual([
    ["1", 1],
    ["2", 1],
  ]);
  expect(fitted([one, { ...two, plain: true }])).toEqual([["1", 1]]);
  expect(fitted([one, { ...two, face: "plate" }])).toEqual([["1", 1]]);
  expect(fitted([legend("1", "", " ")])).toEqual([]);
  expect(fitted([legend("1", "I".repeat(layout.characters)), two])).toHaveLength(2);
  expect(fitted([legend("1", "I".repeat(layout.characters + 1))])).toEqual([["1", 0]]);
});
