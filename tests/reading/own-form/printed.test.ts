import { expect, test } from "vitest";
import type { Printed } from "../../../src/reading/own-form/outline.ts";
import { joined } from "../../../src/reading/own-form/printed.ts";
import { readOutline } from "../../../src/reading/own-form/read-outline.ts";

/** A piece 10 points high, from its lower left corner. */
const piece = (text: string, x: number, y: number, wide = 20, page = 1): Printed => ({
  page,
  text,
  box: [x, y, x + wide, y + 10],
});
const texts = (...pieces: Printed[]): string[] => joined(pieces).map(({ text }) => text);

test("pieces that follow close on each other on a line are one label", () => {
  expect(texts(piece("Or", 100, 500), piece("der", 121, 500))).toEqual(["Order"]);
  expect(texts(piece("Order", 100, 500), piece("number", 122, 500))).toEqual(["Order number"]);
  expect(texts(piece("Order", 100, 500), piece("number", 124, 500))).toEqual(["Order number"]);
  expect(texts(piece("Order", 100, 500), piece("number", 125, 500))).toEqual(["Order", "number"]);
  expect(texts(piece("Order", 100, 500), piece("number", 116, 500))).toEqual(["Ordernumber"]);
  expect(texts(piece("Order", 100, 500), piece("number", 115, 500))).toEqual(["Order", "number"]);
  expect(texts(piece("Order", 100, 501), piece("number", 122, 500))).toEqual(["Order number"]);
  expect(texts(piece("Order", 100, 502), piece("number", 122, 500))).toEqual(["Order", "number"]);
  expect(texts(piece("Order", 100, 500), piece("number", 122, 500, 20, 2))).toEqual(["Order", "number"]);
});

test("in whatever order they are printed, lines are told from the top, and each from the left", () => {
  const pieces = [piece("Project", 100, 400), piece("number", 122, 500), piece("Order", 100, 500)];
  expect(joined(pieces)).toEqual([
    { page: 1, text: "Order number", box: [100, 500, 142, 510] },
    { page: 1, text: "Project", box: [100, 400, 120, 410] },
  ]);
});

test("stars, dots and lines beside a label are none of its words", () => {
  expect(texts(piece("* Order  number ____", 100, 500))).toEqual(["Order number"]);
  expect(texts(piece("Order ......", 100, 500), piece("***", 300, 500))).toEqual(["Order"]);
});

test("what is no PDF has no outline", async () => {
  expect(await readOutline(Buffer.from("Order number"))).toEqual({ kind: "other" });
});
