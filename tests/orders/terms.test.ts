import { expect, test } from "vitest";
import { soughtIn, termsOf } from "../../src/orders/terms.ts";
import { aloneDevice, device } from "../make/sample.ts";

const buyer = "ines@brightwire.example";
const empty = { number: "", buyer: "", sheets: [] };

test("an order is found by its number, its people, its telephone, its stations and its legends", () => {
  const sheet = device(
    {
      mark: "S-104",
      contact: { name: "Ines Duarte", phone: "+1 (212) 555-0142", email: "i.duarte@site.example" },
    },
    { "1": ["ALL OFF", "now"] },
  );
  const terms = termsOf({ number: "PO bw-2207", buyer, project: "Harbor View", sheets: [sheet] });
  for (const typed of [
    "bw-2207",
    buyer,
    "ines brightwire",
    "harbor view",
    "Duarte",
    "212 555-0142",
    "2125550142",
    "(212) 555-0142",
    "i.duarte@site.example",
    "site",
    "s-104",
    "all now",
  ])
    expect([
      typed,
      ...soughtIn(typed).filter((word) => !terms.some((term) => term.startsWith(word))),
    ]).toEqual([typed]);
  expect(terms).not.toContain("");
});

test.each([
  ["212 555-0142", ["2125550142"]],
  ["  +1 (212) 555-0142 ", ["2125550142"]],
  ["212/555.0142", ["2125550142"]],
  // a telephone number has seven digits or more, and nothing else
  ["1234567", ["1234567"]],
  ["12 345", ["12", "345"]],
  ["555-0142 lobby", ["5550142", "LOBBY"]],
  ["lobby 555-0142", ["LOBBY", "5550142"]],
  ["harbor -- view", ["HARBOR", "VIEW"]],
  ["", []],
  ["a b c d e f g h i", ["A", "B", "C", "D", "E", "F", "G", "H"]],
  ["x".repeat(50), ["X".repeat(40)]],
])("who types %j looks for %j", (typed, words) => {
  expect(soughtIn(typed)).toEqual(words);
});

test("of an order with more words than anybody looks for, the first 400 count, each to its 40th character", () => {
  const project = Array.from({ length: 500 }, (_, nth) => `p${nth}`).join(" ");
  const terms = termsOf({ ...empty, project: `${"y".repeat(50)} ${project}` });
  expect(terms).toHaveLength(400);
  expect([terms[0], terms[1], terms[399]]).toEqual(["Y".repeat(40), "P0", "P398"]);
});

test("a sheet that says little adds no empty word", () => {
  const { mark, ...sheet } = aloneDevice({ contact: {} });
  expect(mark).toBeDefined();
  expect(termsOf({ ...empty, number: "4512", sheets: [{ ...sheet, legends: [] }] })).toEqual(["4512"]);
});
