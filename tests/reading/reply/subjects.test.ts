import { expect, test } from "vitest";
import { subjectSays } from "../../../src/reading/reply/subjects.ts";

const facts = {
  numbers: ["EL-100"],
  projects: ["Red Lion Inn"],
  marks: ["S-101", "S-102"],
  names: ["Dana Whitlock", "Whitlock Controls"],
  files: ["S-101 plate.pdf"],
  finishes: ["Oat"],
  otherFinishes: ["Chalk"],
  called: new Map<string, string>(),
  sheets: [],
  earlier: [],
  plates: [1],
  devices: [4],
  attached: [5],
};
const says = (subject: string): boolean => subjectSays(subject, { facts, quoted: [] });

// Common practice, no source. Beside clean sheets the first is for a person, and the second says what the letter is about.
test.each([
  ["EL-100 trial", "EL-100"],
  ["Practice sheet", "Sheets"],
  ["Sample order", "Order"],
  ["TEST order EL-100", "Order EL-100"],
  ["EL-100 dummy", "EL-100!!"],
  ["EL-100 old", "EL-100 final"],
  ["EL-100 for review", "EL-100 v2"],
  ["EL-100 draft", "Fwd: EL-100"],
  ["Copy of EL-100", "Re: EL-100"],
  ["Recall: EL-100", "RE: your visit"],
  ["EL-100 next year", "EL-100 - November"],
  ["Red Lion Inn sold", "Red Lion Inn"],
  ["Stations for the other building", "Stations for the Red Lion Inn"],
  ["Tern Point Library stations", "Whitlock Controls stations"],
  ["Stations for Willow Bend Veterinary", "Stations for Dana Whitlock"],
  ["Stations for S-103", "Stations for S-101"],
  ["S-101 to S-103", "S-101 and S-102"],
  ["EL-101", "EL 100"],
  ["call me", "Order sheets"],
  ["Please call", "Please find our sheets"],
  ["EL-100, ring back", "EL-100, ring road"],
  ["EL-100 - in gold", "EL-100 - sheets"],
  ["EL-100, in triplicate", "EL-100, in full"],
  ["EL-100 (names to follow)", "EL-100 (PO to follow)"],
  ["EL-100 for both houses", "EL-100 for you all"],
  ["EL-100 with frames", "EL-100 with thanks"],
  ["EL-100 (with our remarks)", "EL-100 (with our thanks)"],
  ["EL-100, lobby missing", "EL-100, lobby"],
  ["EL-100 copy", "EL-100 copy room"],
  ["EL-100 semi-final", "EL-100 final"],
])("%j says more than its sheets, and %j does not", (more, plain) => {
  expect([says(more), says(plain)]).toEqual([true, false]);
});

test.each(["", "(no subject)", "No subject", "Sorry!", "Oops"])("%j says nothing", (subject) => {
  expect(says(subject)).toBe(false);
});

test("where no sheet names a project, no building is another", () => {
  const without = { facts: { ...facts, projects: [] }, quoted: [] };
  expect(subjectSays("Tern Point Library stations", without)).toBe(false);
});
