import { expect, test } from "vitest";
import { forwardedInline } from "../../../src/reading/letter/forwarded-inline.ts";

const header = ["From: Ines Calloway <Ines@Brightwire.example>", "Subject: sheets", "To: dale@site.example"];
const letter = (lead: string, ...lines: string[]): string => ["For you.", lead, ...lines].join("\r\n");
const gmail = "---------- Forwarded message ---------";

test.each([
  gmail,
  "-----Forwarded Message-----",
  "---------------------- Forwarded by Dale Okafor on 11/24/2026 ----------------------",
  "Begin forwarded message:",
  "  begin forwarded message:  ",
])("“%s” begins a letter that is forwarded", (lead) => {
  expect(forwardedInline(letter(lead, ...header, "", "Four sheets.", "", "Ines"))).toEqual([
    { from: "ines@brightwire.example", text: "For you.\n\nFour sheets.\n\nInes" },
  ]);
});

test.each([
  "See the forwarded message: below",
  "I begin forwarded message:",
  "-- Forwarded message --",
  "Forwarded message",
  "---------- Forwarded message --------- again",
  "-----Original Message-----",
])("“%s” begins none", (lead) => {
  expect(forwardedInline(letter(lead, ...header, "", "Four sheets."))).toEqual([]);
});

test("blank lines may stand above its header, and stars around the names of the fields", () => {
  const stars = ["*From:* Ines <ines@brightwire.example>", "*Date:* today"];
  expect(forwardedInline(letter(gmail, "", "", ...stars, "", "Four sheets."))).toEqual([
    { from: "ines@brightwire.example", text: "For you.\n\nFour sheets." },
  ]);
});

test.each([
  ["names nobody", ["Subject: sheets"]],
  ["names two", ["From: a@b.example, c@d.example"]],
  ["has two From fields", ["From: a@b.example", "From: c@d.example"]],
  ["names somebody in another field", ["To: a@b.example", "Reply-To: from: a@b.example"]],
])("a header that %s has no sender", (_, fields) => {
  expect(forwardedInline(letter(gmail, ...fields, "", "Hello"))).toEqual([{ text: "For you.\n\nHello" }]);
});

test("one address given twice is one sender", () => {
  const [one] = forwardedInline(letter(gmail, "From: a@b.example <A@B.example>", "", "Hello"));
  expect(one?.from).toBe("a@b.example");
});

test("the words of a letter are no header of it", () => {
  const [one] = forwardedInline(letter(gmail, "Subject: sheets", "", "From: a@b.example"));
  expect(one).toEqual({ text: "For you.\n\nFrom: a@b.example" });
});

test("a header has sixteen lines at most", () => {
  const below = (lines: number) =>
    forwardedInline(letter(gmail, ...Array.from({ length: lines }, () => "X: y"), "From: a@b.example"))[0]
      ?.from;
  expect(below(15)).toBe("a@b.example");
  expect(below(16)).toBeUndefined();
});

test("of a letter within a letter each has its sender, and the words above all of them", () => {
  const inner = [gmail, "From: c@d.example", "", "Inner."];
  expect(forwardedInline(letter(gmail, "From: a@b.example", "", "Outer.", ...inner))).toEqual([
    { from: "a@b.example", text: "For you.\n\nOuter." },
    { from: "c@d.example", text: "For you.\n\nInner." },
  ]);
});

test("blank lines above and below the words are none of them", () => {
  const lines = ["", gmail, "From: a@b.example", " ", "Four sheets.", "", " "];
  expect(forwardedInline(lines.join("\n"))).toEqual([{ from: "a@b.example", text: "Four sheets." }]);
});

test("a lead with nothing below it has no words of its own", () => {
  expect(forwardedInline(letter(gmail))).toEqual([{ text: "For you." }]);
});
