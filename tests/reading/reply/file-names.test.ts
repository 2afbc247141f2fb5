import { expect, test } from "vitest";
import { speaksAgainstIt } from "../../../src/reading/reply/file-names.ts";

const facts = {
  numbers: ["AW-318"],
  projects: ["Void Deck Apartments"],
  marks: ["K-4", "HOLD-2"],
  names: [],
  finishes: [],
  otherFinishes: [],
  called: new Map(),
  sheets: [],
  earlier: [],
  files: ["K-4 CANCELLED.pdf"],
  plates: [1],
  devices: [1],
  attached: [1],
};

test.each([
  "K-4 CANCELLED.pdf",
  "K-4 CANCELLED do not make.pdf",
  "K4DoNotCut.pdf",
  "k-4_void.pdf",
  "K-4 on hold.pdf",
  "superseded/K-4.pdf",
  "old/K-4.pdf",
  "AW-318 K-4 DRAFT.pdf",
  "K-4 for approval.pdf",
  "K-4 x3.pdf",
  "K-4 (qty 2).pdf",
  "K-4 change button 2 to EXIT.pdf",
  "K-4 wrong.pdf",
  "K-4 cancled.pdf",
  "K-4 pendin.pdf",
  "K-4.old.pdf",
  "K-4 2ea.pdf",
  "3 of K-4.pdf",
  "K-4_notfinal.pdf",
  "K-4?.pdf",
  "K-4 ne pas graver.pdf",
])("a clerk asks about a sheet called %s", (name) => {
  expect(speaksAgainstIt(name, facts)).toBe(true);
});

test.each([
  "K-4.pdf",
  "AW-318 K-4 pos 2 of 4 rev B FINAL (corrected).pdf",
  "Void Deck Apartments K-4.pdf",
  "HOLD-2.pdf",
  "Cargo Hold 2 S-104.pdf",
  "Waiting Room K-4.pdf",
  "K-4 wrong finish fixed.pdf",
  "Old Mill Kitchen K-4.pdf",
  "device sheet (3) copy.pdf",
  "2x4 lobby K-4.pdf",
  "K-4 bending shop.pdf",
  "K-4 pendn.pdf",
  "Cancellara Theatre.pdf",
])("no clerk asks about a sheet called %s", (name) => {
  expect(speaksAgainstIt(name, facts)).toBe(false);
});
