import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { notesCarryOrders } from "../../src/checks/sheet/notes-carry-orders.ts";
import { catalogue } from "../make/config.ts";
import { device } from "../make/sample.ts";

const wordingOf = (notes: string): string | undefined =>
  [...notesCarryOrders.find(device({ notes }), catalogue)][0]?.wording;

// What electrical contractors write into such a box. Common practice, no source.
test.each([
  "2ND FLR NORTH CORRIDOR",
  "by door 114A, column line C-7",
  'mount 48" AFF to center',
  "CKT L2-14",
  "panel LP-3 circuits 12, 14",
  "see dwg E-501 detail 4",
  "ref RFI 22",
  "existing 2-gang box",
  "left of entry door at stair B",
  "Rm 210 lobby side",
  "field verified 11/20",
  "contact: Ida Marlowe",
  "approved by architect 11/12/26",
  "behind reception desk",
  "Phase 2, Area B",
  "low voltage",
  "Main lobby west wall",
  "Submitted 11-09-26",
  "IC 11/9",
  "Approved IC 11/9/26",
  "MK 11/9/26",
  "checked MK 11/9",
  "replaces existing plate",
  "next to existing plate",
  "4 gang, devices 1-4 attached",
  "device sheets attached",
])("%s orders nothing", (notes) => {
  expect(wordingOf(notes)).toBe("remark");
});

test.each([
  "legends TBC",
  "legends to be confirmed by owner",
  "owner to approve",
  "awaiting approval",
  "prelim - wait for PM",
  "provisional",
  "not final yet",
  "glossy face",
  "brass screws",
  "silver trim ring",
  "landscape",
  "vertical text",
  "in Helvetica",
  "ENGR DEPTH 0.5",
  "reverse the order",
  "with pilot light",
  "match panel next door",
  "legends per finish schedule",
  "wording as on the mockup",
  "lettering filled gold",
  "swap 1 and 3",
  "two reqd",
  "for record only",
  "gasketed",
  "supersedes sheet of Monday",
  "TEXT SAME AS S-12",
  "hold",
  "ask Dana about row 2",
  "left handed",
  "void if no answer",
  "tamperproof",
  "SS 3/4",
  "use existing plate",
  "existing plate",
  "w/o plate",
  "DIM=LOW",
  "3 = LOW",
  "see sheet 2",
  "refer to drawing",
  "devices 1-3 attached",
  "no devices attached",
  "devices not attached",
  "devices attached separately",
])("%s is for a person", (notes) => {
  expect(["request", "several"]).toContain(wordingOf(notes));
});

// Two hundred notes by somebody who had not seen how they are read.
test.each([
  { set: "honest", least: 0, most: 14 },
  { set: "wishes", least: 99, most: 100 },
])("of a hundred $set notes $least to $most go to a person", ({ set, least, most }) => {
  const notes = readFileSync(`tests/bench/notes/on-sheets-${set}.txt`, "utf8").trim().split("\n");
  const read = notes.filter((one) => ["request", "several"].includes(wordingOf(one) ?? "")).length;
  expect(notes).toHaveLength(100);
  expect(read).toBeGreaterThanOrEqual(least);
  expect(read).toBeLessThanOrEqual(most);
});
