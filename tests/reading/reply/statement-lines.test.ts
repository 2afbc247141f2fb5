import { describe, expect, test } from "vitest";
import { type KnownWords, statementsIn, statementsInFiles } from "../../../src/reading/reply/statements.ts";
import type { Statement } from "../../../src/trade/statement.ts";
import { catalogue } from "../../make/config.ts";

const known: KnownWords = {
  facts: {
    numbers: ["EL-100"],
    projects: ["Red Lion Inn"],
    marks: ["S-101"],
    names: ["Dana Whitlock", "Whitlock Controls"],
    files: [],
    finishes: [],
    otherFinishes: [],
    called: new Map(),
    sheets: [],
    earlier: [],
    plates: [1],
    devices: [4],
    attached: [5],
  },
  goods: catalogue,
  furniture: new Set(),
  quoted: [],
  understood: new Set(),
};
const told = (all: readonly Statement[]): string[] =>
  all.map((one) => (one.kind === "said" ? `${one.where}: ${one.words}` : one.kind));
const said = (text: string, more: Partial<KnownWords> = {}): string[] =>
  told(statementsIn({ subject: "EL-100", text }, { ...known, ...more }));

describe("pages of a paper are heard where they speak against the order, and a note whole", () => {
  const clause = "The contractor shall supply all devices as shown on the drawings. ";
  const inFiles = (...texts: { text: string; pages?: true }[]): string[] =>
    told(
      statementsInFiles(
        texts.map((one) => ({ file: "a.pdf", ...one })),
        known,
      ),
    );
  test("of a PDF", () => {
    expect(inFiles({ text: clause.repeat(60), pages: true })).toEqual([]);
    expect(inFiles({ text: "Make it red.", pages: true })).toEqual(["file: Make it red."]);
  });
  test("of no other text", () => {
    expect(inFiles({ text: clause.repeat(60) })).toHaveLength(8);
  });
  test("however long two of them are together", () => {
    const long = { text: clause.repeat(840), pages: true } as const;
    expect(inFiles(long, long)).toEqual([]);
  });
});

test.each([
  ["Total:\n4 devices", ["counts"]],
  ["Total:", ["text: Total:"]],
  ["4 devices - 1 plate", ["counts", "counts"]],
  ["attached - 4 devices", ["counts"]],
  ["Lobby - 4 devices", []],
  ["4 devices - lobby", []],
  ["1 plate.\nLobby - 4 devices", ["counts"]],
])("counts that a dash joins to other words count a part: %j", (text, all) => {
  expect(said(text)).toEqual(all);
});

describe("around a name stands furniture", () => {
  test.each([
    "Thanks\nSenior estimator, lighting",
    "Thanks\n14 Dock Road",
    "See attached.\n=====\nMarta Lee\n=====",
    "See attached.\n\nbr",
    "Thanks\ndana",
    "--\nwhitlock",
    "See attached.\n\nMarta (abcdefghijkl)",
  ])("%j says nothing", (text) => {
    expect(said(text)).toEqual([]);
  });
  test.each([
    ["14 Dock Road", "14 Dock Road"],
    ["Marta", "Marta"],
    ["Marta Lee\n\nSee attached.", "Marta Lee"],
    ["See attached.\n\nMarta & Lee", "Marta & Lee"],
    ["See attached.\n\nMarta (abcdefghijklm)", "Marta (abcdefghijklm)"],
    ["make it red ====", "make it red ===="],
    ["==== make it red", "==== make it red"],
    ["S-101 attdx", "S-101 attdx"],
  ])("%j says %j", (text, words) => {
    expect(said(text)).toEqual([`text: ${words}`]);
  });
});

describe("a quotation is told where it says more than what was quoted", () => {
  const quoted = [{ subject: "CONFIRM: order EL-100, questions", text: " 1. Shorten it." }];
  const header = "From: Burin\nDate: Monday\nSubject: Re: CONFIRM: order EL-100, questions";
  test("below the header of our answer", () => {
    expect(said(`See attached.\n\n${header}\n\nShorten it.`, { quoted })).toEqual([]);
    expect(said(`See attached.\n\n${header}\n\nMake it red.`, { quoted })).toEqual([
      "quotation: Make it red.",
    ]);
  });
  test.each([
    ["> Ship to: the brass yard", "Ship to: the brass yard"],
    ["> Hello\n> -----Original Message-----\n> make it red", "make it red"],
    ["> Hello\n> On Mon, Nov 9, 2026 at 4:05 PM Marta Lee wrote:\n> > make it red", "make it red"],
  ])("%j", (text, words) => {
    expect(said(`See below.\n\n${text}`)).toEqual([`quotation: ${words}`]);
  });
  test("and no header of it", () => {
    expect(said("See below.\n\n> To: brass yard")).toEqual([]);
  });
});
