import { expect, test } from "vitest";
import { takeLetter } from "../../src/intake/take.ts";
import { editions } from "../make/config.ts";
import { temporaryDesk } from "../make/desk.ts";
import { answersFor } from "../make/filled.ts";
import { bytesOf, filePart, mixed } from "../make/mime.ts";
import { filledForm } from "../make/pdf.ts";

const old = editions.find(({ name }) => name === "device-25a");
if (old === undefined) throw new Error("no edition device-25a");
const leaving = editions.map((one) => (one === old ? { ...old, acceptedUntil: "2026-12-31" } : one));
const pdf = await filledForm(old, answersFor(old));
const letter = bytesOf([
  "From: Ines Calloway <ines@brightwire.example>",
  "To: orders@quillgate.example",
  "Message-ID: <1@brightwire.example>",
  "Subject: Stations",
  ...mixed("b", filePart("S-104.pdf", pdf)),
]);

// Chicago is six hours behind UTC in winter.
test.each([
  ["2027-01-01T05:59:00Z", "leaving"],
  ["2027-01-01T06:00:00Z", "outdated"],
])(
  "the last day of an edition ends at midnight where the desk is, whenever the letter is read: came %s",
  async (moment, wording) => {
    const nextWeek = new Date("2027-01-08T15:00:00Z");
    const desk = await temporaryDesk({ editions: leaving, clock: { now: () => nextWeek } });
    const { letter: number } = await takeLetter(desk, letter, new Date(moment));
    const { problems } = await desk.store.letters.read(number);
    expect(problems.filter(({ check }) => check === "outdated-edition").map((one) => one.wording)).toEqual([
      wording,
    ]);
  },
);
