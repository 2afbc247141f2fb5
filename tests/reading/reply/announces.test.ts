import { describe, expect, test } from "vitest";
import { announcedIn } from "../../../src/reading/reply/announces.ts";

const told = (text: string, brings = true) => announcedIn({ subject: "Order BW-2207", text }, brings);
const inText = (text: string): string | undefined => {
  const { words, tells } = told(text) ?? {};
  return tells === "more" ? words : undefined;
};

test.each([
  "The rest will follow.",
  "Attached is part 1 of 2.",
  "I will send the others later this week.",
  "Here is the first half of the order.",
  "More sheets to come tomorrow.",
  "The remaining two are on their way.",
  "Second batch follows on Monday.",
  "The last device will come with the next mail.",
  "Le reste suivra demain.",
  "Der Rest folgt.",
  "El resto sigue mañana.",
  "E-mail 1/3",
  "This is e-mail (1/2).",
  "Another mail brings the rest, which will follow at noon.",
  "More tomorrow.",
  "The rest tomorrow, I promise.",
  "The others are coming next week.",
  "The remaining plates on Friday.",
  "First of three mails.",
  "The first of two sheets.",
  "This is part one.",
  "Sheet 1 of 2 attached.",
  "2 of 5 attached.",
  "3 of 4 sheets are enclosed.",
])("tells of more: %s", (text) => {
  expect(inText(`Hi,\n\n${text}\n\nRegards,\nInes`)).toBe(text);
});

test.each([
  "This is part 2 of 2.",
  "Nothing more will follow.",
  "No more to come.",
  "The sheets are attached. Call me if you need more.",
  "Please find the sheets attached, and have a nice rest of the day.",
  "This is all of it.",
  "Sheet 1 of 2. Sheet 2 of 2.",
  "5 of 5 attached.",
  "Our counterpart 1 of 2 agrees.",
  "Call me for more on Fridays.",
  "He is the first of two sons.",
  "Part one of me wants to sleep.",
  "Second batch, same order.",
  "Our drawings are dated 11/12.",
  "Our PO (11/27) is attached.",
  "This is part 1 of 100.",
  "Thanks for the rest of your answers.",
])("tells of nothing more: %s", (text) => {
  expect(inText(text)).toBeUndefined();
});

test("of parts that are numbered, all have come when the last has", () => {
  expect(inText("Sheet 1 of 3. Sheet 2 of 3.")).toBe("Sheet 1 of 3.");
  expect(inText("Sheet 1 of 3. Sheet 3 of 3.")).toBeUndefined();
});

test("a subject counts, and what is quoted does not", () => {
  expect(announcedIn({ subject: "BW-2207 (1 of 2)", text: "" }, true)?.words).toBe("BW-2207 (1 of 2)");
  expect(inText("See attached.\n\nOn Monday Ines wrote:\n> The rest will follow.\n")).toBeUndefined();
});

test.each([
  ["BW-2207 (1/2)", "BW-2207 (1/2)"],
  // "(1/5)" may be a day of January
  ["BW-2207 (1/5)", undefined],
  ["BW-2207 (3/2)", undefined],
  ["(1/2)", undefined],
])("the subject %j tells of more: %j", (subject, words) => {
  const date = new Date(subject.includes("5") ? "2026-12-20T15:00:00Z" : "2026-08-20T15:00:00Z");
  expect(announcedIn({ subject, text: "", date }, true)?.words).toBe(words);
});

describe("a letter without a file", () => {
  test.each<[string, string]>([
    ["I will send a corrected B-2 tomorrow.", "later"],
    ["I'll resend it.", "later"],
    ["We will fix it.", "later"],
    ["Revised sheets will follow on Monday.", "later"],
    ["New sheet to come.", "later"],
    ["Sheet follows.", "later"],
    ["The corrected sheet will be sent on Monday.", "later"],
    ["I will send a corrected one before noon.", "later"],
    ["The sheets will follow.", "later"],
    ["will get you the sheets monday", "later"],
    ["you will have the sheets tomorrow", "later"],
    ["Will send 4 sheets in the morning", "later"],
    ["I'll make out four separate sheets and send them over.", "later"],
    ["I'll send the sheet in Slate shortly", "later"],
    ["We will send one sheet for each.", "later"],
    ["Will send sala.pdf again tonight with the address on it.", "later"],
    ["See attached.", "attached"],
    ["Corrected sheet attached, sorry.", "attached"],
    ["Hi, here is the new file.", "attached"],
    ["Revised sheet for the sauna.", "attached"],
  ])("tells of a sheet: %s", (text, tells) => {
    expect(told(text, false)).toEqual({ words: text, tells });
  });

  test.each([
    "Thanks for the new plates!",
    "The corrected sheet went out yesterday.",
    "You will get the cheque tomorrow.",
    "Who will get you the coffee on Monday?",
    "I will send four boxes on Monday.",
    "Did you get the revised sheet?",
    "If you want a corrected sheet, tell me.",
    "No corrected sheet will follow.",
    "This e-mail and any attached files are confidential and intended for the addressee.",
    "Thanks for the proof you attached.",
    "I have corrected him.",
    "We look forward to the final result.",
  ])("tells of none: %s", (text) => {
    expect(told(text, false)).toBeUndefined();
  });
});

describe("a letter with sheets", () => {
  test.each<[string, string | undefined]>([
    ["Corrected sheet attached.", "mended"],
    ["B-2 corrected.", "mended"],
    ["Both are fixed now.", "mended"],
    ["I have revised it.", "mended"],
    ["Resending with the fixes.", "mended"],
    ["Replacement for B-2.", "mended"],
    ["One more station.", "mended"],
    ["Forgot this one.", "mended"],
    ["Corrected sheet to follow.", "later"],
    // What is said to come is here.
    ["Attached. The corrected sheet is coming with this mail.", "mended"],
    ["Sheets attached. A corrected sheet will follow.", "later"],
    ["Sheets attached.\n\nI will send the revised sheet for B-2 tomorrow.", "later"],
    ["Sheet attached, a corrected one follows.", "later"],
    ["Attached. Revised sheet for B-2 to follow.", "later"],
    ["Attached. A corrected B-2 follows on Monday.", "later"],
    ["I will send a corrected sheet as follows. See attached.", "mended"],
    ["Sheets attached.", undefined],
    ["Resending, in case you did not get the corrected ones.", undefined],
    ["These are for the new wing.", undefined],
  ])("%s: %s", (text, tells) => {
    expect(told(text)?.tells).toBe(tells);
  });
});

test("a word that only begins or ends like one that denies or tells of earlier is none", () => {
  expect(told("The new casino sheet will follow.", false)?.tells).toBe("later");
  expect(told("Corrected sheet for the sentry box attached.")?.tells).toBe("mended");
});

test.each(["Drawing A12 of 15 attached.", "2 of 150 attached."])("%s: nothing more comes", (text) => {
  expect(inText(text)).toBeUndefined();
});

test("a part of another count says nothing of the others", () => {
  expect(inText("Sheet 1 of 2 attached. This is mail 3 of 3.")).toBe("Sheet 1 of 2 attached.");
});

test("what is to come is told first where nothing came", () => {
  const text = "I will send a corrected sheet. See attached.";
  expect(told(text, false)?.tells).toBe("later");
  expect(told(text, true)?.tells).toBe("mended");
});

test("a subject tells of no sheet, and neither do more than two hundred characters", () => {
  expect(announcedIn({ subject: "Corrected sheet", text: "Hello." }, true)).toBeUndefined();
  const begun = "Corrected sheet attached, ";
  expect(told(begun.padEnd(200, "x"))?.tells).toBe("mended");
  expect(told(begun.padEnd(201, "x"))).toBeUndefined();
});
