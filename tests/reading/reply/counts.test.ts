import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { countsIn, leadsToCounts, whatIsCounted } from "../../../src/reading/reply/counts.ts";
import { statementsIn, statementsInFiles } from "../../../src/reading/reply/statements.ts";
import type { Statement } from "../../../src/trade/statement.ts";
import { listsIn, sentencesIn, written } from "../../bench/counts.ts";
import { catalogue } from "../../make/config.ts";

const known = {
  facts: {
    numbers: ["EL-100"],
    projects: ["Larkspur Library"],
    marks: ["S-101", "S-102"],
    names: ["Dana Whitlock"],
    finishes: [],
    otherFinishes: catalogue.finishes.flatMap(({ code, name }) => [code, name]),
    called: new Map(),
    sheets: [],
    earlier: [],
    files: [],
    // None of these counts is right.
    plates: [77],
    devices: [777],
    attached: [78],
  },
  goods: catalogue,
  furniture: new Set<string>(),
  quoted: [],
  understood: new Set<string>(),
};

const inText = (text: string): Statement[] => statementsIn({ subject: "EL-100", text }, known);
const inFile = (text: string): Statement[] => statementsInFiles([{ file: "list.csv", text }], known);

/** What is counted; "" where a person reads some of it. */
function counted(statements: readonly Statement[]): string {
  const isRead = statements.some(({ kind }) => kind !== "counts");
  return isRead ? "" : statements.map((one) => (one.kind === "counts" ? written(one.counts) : "")).join("; ");
}

/** Misses that are known: nothing of them is lost, since a person reads them as before. */
const toPerson = ["Here are the 7 sheets for S-101 and S-102.", "20 ea. four-button devices"];

describe("words that only count are counted", () => {
  test.each(sentencesIn("told").filter(({ text }) => !toPerson.includes(text)))(
    "$text",
    ({ text, counts }) => {
      expect(counted(inText(text))).toBe(counts);
    },
  );

  test.each(toPerson)("but a person reads %j", (text) => {
    expect(inText(text).map(({ kind }) => kind)).toEqual(["said"]);
  });
});

describe("nothing is counted where words say anything else", () => {
  test.each(sentencesIn("none"))("$text", ({ text }) => {
    expect(inText(text).filter(({ kind }) => kind === "counts")).toEqual([]);
  });
});

test.each(listsIn())("a list that is attached: $text", ({ text, counts }) => {
  expect(counted(inFile(text))).toBe(counts);
});

test("a count beside a wish is counted, and a person reads the wish", () => {
  const all = inText("12 devices and 3 plates attached. Please engrave them in red.");
  expect(all.map(({ kind }) => kind).toSorted()).toEqual(["counts", "said"]);
});

test("a count in a quotation is nobody's now", () => {
  const all = inText("See below.\n\nOn Monday Dana Whitlock wrote:\n> 12 devices, 3 plates");
  expect(all.filter(({ kind }) => kind === "counts")).toEqual([]);
});

test("any word beside a count that may make something else of it leaves it to a person", () => {
  const more = ["not", "spare", "more", "about", "only", "cancel", "or", "each", "lobby", "if", "red"];
  fc.assert(
    fc.property(
      fc.constantFrom(...sentencesIn("told").map(({ text }) => text)),
      fc.constantFrom(...more),
      fc.boolean(),
      (text, word, isBehind) => {
        const words = isBehind
          ? `${text.replace(/[.!]$/, "")} ${word}`
          : text.replace(/^(?:- )?/, `$&${word} `);
        const all = inText(words.split("\n").at(isBehind ? -1 : 0) ?? "");
        // A blank with a dash ends a sentence. Then the word stands in one of its own.
        expect(all.every(({ kind }) => kind === "counts") ? all : []).toEqual([]);
      },
    ),
  );
});

test.each([
  ["keypads", "device"],
  ["4-gang", "plate"],
  ["plates", "plate"],
  ["forms", "sheet"],
  ["pdfs", "file"],
  ["plates of devices", undefined],
  ["templates", undefined],
  ["plateaus", undefined],
  ["worksheets", undefined],
  ["formsets", undefined],
  ["profiles", undefined],
  ["filesystems", undefined],
  ["widgets", undefined],
  ["subdevices", undefined],
  ["devicelike", undefined],
])("%s are counted as %s", (words, of) => {
  expect(whatIsCounted(words, catalogue)?.of).toBe(of);
});

test.each([
  ["4-gang plates in Oat", { of: "plate", gangs: 4, finish: "OAT" }],
  ["D4 CHK devices", { of: "device", layout: "D4", finish: "CHK" }],
  ["four-button D4 devices", { of: "device", layout: "D4" }],
  ["sheets", { of: "sheet" }],
  ["2-gang 4-gang plates", undefined],
  ["2-gang 2-gang plates", undefined],
  ["four-button four-button devices", undefined],
  ["two-button four-button devices", undefined],
  ["D2 D4 devices", undefined],
  ["five-button devices", undefined],
  ["Oat Slate plates", undefined],
  ["Oat sheets", undefined],
  ["Oat files", undefined],
  ["2-gang D4", undefined],
])("“%s” counts %j", (words, counted) => {
  expect(whatIsCounted(words, catalogue)).toEqual(counted);
});

test.each([
  ["Total:", true],
  [" Here is the summary. ", true],
  ["Order quantities", true],
  ["Total: soon", false],
  ["Subtotal:", false],
])("“%s” only leads to counts: %s", (words, leads) => {
  expect(leadsToCounts(words)).toBe(leads);
});

test.each([
  ["Plate: 3", undefined],
  ["Qty plate: 3", 3],
  ["Plate count: 3", 3],
  ["1 plate attached", 1],
  ["2 plate attached", undefined],
  ["no plates attached", undefined],
  ["3 plates input together", undefined],
])("“%s” counts %j plates", (words, number) => {
  expect(countsIn(words, [], catalogue)).toEqual(
    number === undefined ? undefined : [{ of: "plate", number }],
  );
});

test("a layout whose code is a single letter is counted by no code, since that may be a word", () => {
  const [layout] = catalogue.layouts;
  if (layout === undefined) throw new Error("no layout");
  const codes = (code: string) => ({ ...catalogue, layouts: [{ ...layout, code }] });
  expect(countsIn("3 AB devices", [], codes("AB"))).toEqual([{ of: "device", layout: "AB", number: 3 }]);
  expect(countsIn("3 A devices", [], codes("A"))).toBeUndefined();
});

test("twenty counts are totals, and more of them are for a person", () => {
  const kinds = (count: number): string[] =>
    inText(Array.from({ length: count }, (_, i) => `${i + 100} plates.`).join("\n\n")).map(
      ({ kind }) => kind,
    );
  expect(kinds(20)).toEqual(Array<string>(20).fill("counts"));
  expect(kinds(21)).toEqual(Array<string>(8).fill("said"));
});

test.each([
  ["three (3) plates attached", "3 plate"],
  ["three (4) plates attached", undefined],
  ["2 plates and 4 devices", "2 plate; 4 device"],
  ["2 plates and 3 plates", undefined],
  ["2 plates and 2 plates", undefined],
])("“%s” counts %s", (words, counts) => {
  const found = countsIn(words, [], catalogue);
  expect(found && written(found)).toBe(counts);
});
