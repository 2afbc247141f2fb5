import { expect, test } from "vitest";
import { claimsIn } from "../../../src/reading/reply/claims.ts";

const told = (text: string, subject = "Order BW-2207") =>
  claimsIn({ subject, text: `Hi,\n\n${text}\n\nRegards,\nInes` }).map(({ claims }) => claims);

test.each([
  "Here is B-2 again.",
  "B-2 again, corrected.",
  "Corrected B-2 attached.",
  "Attached is station B-2.",
  "Here's the corrected sheet for B-2.",
  "Revised sheet for B-2.",
])("a sheet is said to be here: %s", (text) => {
  expect(told(text)).toEqual(["named"]);
});

test.each(["Complete set attached.", "Attached is the whole order.", "All sheets of the order again."])(
  "all sheets are said to be here: %s",
  (text) => {
    expect(told(text)).toEqual(["whole"]);
  },
);

test.each(["Part 3 of 3.", "This is e-mail (2/2).", "2 of 2", "Letter 2 of 2 attached."])(
  "a letter is said to be the last: %s",
  (text) => {
    expect(told(text)).toContain("last");
    expect(claimsIn({ subject: text, text: "" })).toEqual([
      { words: text, claims: "last", of: text.includes("3") ? 3 : 2 },
    ]);
  },
);

test.each([
  ["BW-2207 (2/2)", "2026-08-20T15:00:00Z", ["last"]],
  ["BW-2207 2 of 2", "2026-08-20T15:00:00Z", ["last"]],
  ["BW-2207 (1/2)", "2026-08-20T15:00:00Z", []],
  // a day
  ["BW-2207 (2/2)", "2026-01-20T15:00:00Z", []],
])("a subject %j of %s says that its letter is the last: %j", (subject, date, said) => {
  expect(claimsIn({ subject, text: "", date: new Date(date) }).map(({ claims }) => claims)).toEqual(said);
});

test.each([
  "Sheets attached.",
  "Attached is B-1, with the same buttons as B-2.",
  "B-2 is fine.",
  "Attached is B-1, B-2 follows.",
  "B-2 was sent last week.",
  "Did you get B-2 again?",
  "No sheet for B-2 attached.",
  "Complete set for B-2 attached.",
  "Part 1 of 3.",
  "Drawing A12 of 12.",
  "Our counterpart 2 of 2 agrees.",
  "Sheet 2 of 2.",
  `Here is B-2, ${"and so on ".repeat(20)}.`,
])("nothing is said of what is here: %s", (text) => {
  expect(told(text)).toEqual([]);
});

test("what is quoted says nothing of this letter", () => {
  expect(claimsIn({ subject: "", text: "On Monday Ines wrote:\n> Here is B-2 again.\n" })).toEqual([]);
});
