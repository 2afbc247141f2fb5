import { expect, test } from "vitest";
import { carriedBy } from "../../src/judging/carries.ts";
import { makeReport } from "../../src/judging/report.ts";
import type { Submission } from "../../src/judging/submission.ts";
import type { ReadFile } from "../../src/trade/attachment.ts";
import type { ForPerson } from "../../src/trade/statement.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, blankDevice } from "../make/sample.ts";

const letter = { number: "1", came: { receivedAt: new Date("2026-11-09T14:00:00Z") } };
const sheet = aloneDevice();
const own: ReadFile = { id: sheet.id, file: sheet.file, kind: "sheet" };
const attached = (kind: ReadFile["kind"], n = 1): ReadFile => ({ id: `1/${n}`, file: `${kind}.pdf`, kind });

/** What a letter with a good sheet leaves open, whatever else it brings. */
const leaves = (came: Partial<Submission>) =>
  carriedBy(
    makeReport({ sheets: [sheet], ...came, files: [own, ...(came.files ?? [])], letter }, catalogue),
  ).map(({ letter: from, what, text }) => `${from} ${what} ${text}`);
const said = (...statements: ForPerson[]) => leaves({ statements });

test("a letter of sheets alone leaves nothing open", () => {
  expect(leaves({})).toEqual([]);
  expect(leaves({ files: [attached("decoration")] })).toEqual([]);
});

test("files that have to come as sheets stay open, each once, and so do sheets that were saved blank", () => {
  expect(leaves({ files: [attached("locked"), attached("scanned", 2)] })).toEqual([
    "1 file locked.pdf",
    "1 file scanned.pdf",
  ]);
  const blank = blankDevice({ id: "1/3", file: "blank.pdf" });
  const files: ReadFile[] = [{ id: "1/3", file: "blank.pdf", kind: "sheet" }];
  expect(leaves({ sheets: [sheet, blank], files })).toEqual(["1 file blank.pdf"]);
});

test("words for a person stay open as they were written, and those that cannot be told by what they are", () => {
  expect(said({ kind: "said", where: "text", words: "Do not cut yet." })).toEqual([
    "1 words Do not cut yet.",
  ]);
  expect(said({ kind: "unsure" })).toEqual(["1 words (words that are struck out or hidden)"]);
  expect(said({ kind: "long" })).toEqual(["1 words (more than a program reads)"]);
});

test("files that only a person can open stay open beside sheets, each by its name", () => {
  expect(leaves({ files: [attached("recording"), attached("office-document", 2)] })).toEqual([
    "1 words (the file recording.pdf)",
    "1 words (the file office-document.pdf)",
  ]);
});

test("files that are no sheets, or a link to some, stay open where no sheet came", () => {
  const about = { sheets: [], about: ["BW-2207"] };
  const without = (came: Partial<Submission>) =>
    carriedBy(makeReport({ files: [], ...about, ...came, letter }, catalogue)).map(({ text }) => text);
  expect(without({ files: [attached("no-form")] })).toEqual(["(files that are no sheets)"]);
  expect(without({ links: ["https://share.brightwire.example/f/1"] })).toEqual([
    "(a link to files, which the program has not opened)",
  ]);
});
