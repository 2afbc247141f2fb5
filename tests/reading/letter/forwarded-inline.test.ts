import { expect, test } from "vitest";
import { forwardedInline as forwardedUnder } from "../../../src/reading/letter/forwarded-inline.ts";

const forwardedInline = (text: string, subject = "Stations") => forwardedUnder(text, subject);

const header = ["From: Ines Calloway <Ines@Brightwire.example>", "Subject: sheets", "To: dale@site.example"];
const letter = (lead: string, ...lines: string[]): string => ["For you.", lead, ...lines].join("\r\n");
const gmail = "---------- Forwarded message ---------";

test.each([
  gmail,
  "-----Forwarded Message-----",
  "---------------------- Forwarded by Dale Okafor on 11/24/2026 ----------------------",
  "Begin forwarded message:",
  "  begin forwarded message:  ",
  "Anfang der weitergeleiteten Nachricht:",
  "Début du message réexpédié :",
  "-------- Weitergeleitete Nachricht --------",
])("“%s” begins a letter that is forwarded", (lead) => {
  expect(forwardedInline(letter(lead, ...header, "", "Four sheets.", "", "Ines"))).toEqual([
    { from: "ines@brightwire.example", text: "Four sheets.\n\nInes", above: "For you." },
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
    { from: "ines@brightwire.example", text: "Four sheets.", above: "For you." },
  ]);
});

test.each([
  ["names nobody", ["Subject: sheets"]],
  ["names two", ["From: a@b.example, c@d.example"]],
  ["has two From fields", ["From: a@b.example", "From: c@d.example"]],
  ["names somebody in another field", ["To: a@b.example", "Reply-To: from: a@b.example"]],
])("a header that %s has no sender", (_, fields) => {
  expect(forwardedInline(letter(gmail, ...fields, "", "Hello"))).toEqual([
    { text: "Hello", above: "For you." },
  ]);
});

test("one address given twice is one sender", () => {
  const [one] = forwardedInline(letter(gmail, "From: a@b.example <A@B.example>", "", "Hello"));
  expect(one?.from).toBe("a@b.example");
});

test("the words of a letter are no header of it", () => {
  const [one] = forwardedInline(letter(gmail, "Subject: sheets", "", "From: a@b.example"));
  expect(one).toEqual({ text: "From: a@b.example", above: "For you." });
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
    { from: "a@b.example", text: "Outer.", above: "For you." },
    { from: "c@d.example", text: "Inner.", above: "For you." },
  ]);
});

test("blank lines above and below the words are none of them", () => {
  const lines = ["", gmail, "From: a@b.example", " ", "Four sheets.", "", " "];
  expect(forwardedInline(lines.join("\n"))).toEqual([
    { from: "a@b.example", text: "Four sheets.", above: "" },
  ]);
});

test("a lead with nothing below it has no words of its own", () => {
  expect(forwardedInline(letter(gmail))).toEqual([{ text: "", above: "For you." }]);
});

const outlook = [
  "From: Ines Calloway <ines@brightwire.example>",
  "Sent: Monday, November 9, 2026 1:30 PM",
  "To: Dale Okafor <dale@site.example>",
  "Subject: sheets",
];
const german = [
  "Von: Ines Calloway <ines@brightwire.example>",
  "Gesendet: Montag, 9. November 2026 13:30",
  "An: Dale Okafor",
  "Betreff: sheets",
];
const written = { date: "2026-11-09", time: "13:30" };

test.each([
  ["FW: sheets", ["", ...outlook]],
  ["Fwd: sheets", ["________________________________", ...outlook]],
  ["[EXT] FW: sheets", ["-----Original Message-----", ...outlook]],
  ["WG: sheets", ["-----Ursprüngliche Nachricht-----", ...german]],
])("under “%s” a header alone begins a letter that is forwarded", (subject, [above = "", ...lines]) => {
  const text = letter(above, ...lines, "", "Four sheets.", "", ...outlook, "", "Older words.");
  expect(forwardedInline(text, subject)).toEqual([
    {
      from: "ines@brightwire.example",
      written,
      text: ["Four sheets.", "", ...outlook, "", "Older words."].join("\n"),
      above: "For you.",
      bySubject: true,
    },
  ]);
});

test.each([
  ["a reply quotes it", "Re: FW: sheets", outlook],
  ["its subject says nothing", "sheets", outlook],
  ["it has no subject", "FW: sheets", outlook.slice(0, 3)],
  ["it has two senders", "FW: sheets", [...outlook, "From: a@b.example"]],
  ["it is two lines of an address", "FW: sheets", ["From: the site office", "Subject: sheets"]],
  ["words stand right above it", "FW: sheets", ["See below.", ...outlook]],
])("a header alone begins none where %s", (_, subject, lines) => {
  expect(forwardedInline(letter("", ...lines, "", "Four sheets."), subject)).toEqual([]);
});

test("what a program marks as quoted is forwarded under a subject that says so, and only there", () => {
  const text = letter(
    "",
    "> Begin forwarded message:",
    "> ",
    ...header.map((line) => `> ${line}`),
    "> ",
    "> Hello",
  );
  expect(forwardedInline(text, "Fwd: sheets")).toMatchObject([
    { from: "ines@brightwire.example", text: "Hello", above: "For you." },
  ]);
  expect(forwardedInline(text, "Re: sheets")).toEqual([]);
});
