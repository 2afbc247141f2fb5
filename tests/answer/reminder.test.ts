import { describe, expect, test } from "vitest";
import { numbersIn } from "../../src/answer/numbered.ts";
import { composeReminder } from "../../src/answer/reminder.ts";
import { changesOf } from "../../src/judging/changes.ts";
import type { Due, WaitingOrder } from "../../src/judging/reminders.ts";
import { makeReport } from "../../src/judging/report.ts";
import { newBuyer } from "../../src/judging/state.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, completeOrder, deviceAt, plate } from "../make/sample.ts";
import { sentencesOf, tooLong } from "../make/sentences.ts";

/** The order that a first letter with these sheets leaves. */
function orderOf(sheets: readonly Sheet[]): WaitingOrder {
  const report = makeReport({ files: [], sheets }, catalogue);
  const numbers = numbersIn(report);
  const [revision] = changesOf(report, newBuyer(), (problem) => numbers.get(problem) ?? 0);
  if (revision === undefined) throw new Error("no order");
  return { ...revision, buyer: "ines@brightwire.example", since: new Date("2026-11-02T15:00:00Z"), sheets };
}

const first = (order: WaitingOrder): Due & { readonly what: "remind" } => ({
  order,
  what: "remind",
  nth: 1,
  lastOn: "2026-11-09",
});

test("a reminder of sheets to come names each place, what to do and when the last one comes", () => {
  const { subject, text } = composeReminder(first(orderOf([plate(), deviceAt(1)])), catalogue);
  expect(subject).toBe("Reminder: order BW-2207, 3 sheets to come");
  expect(text.split("\n\n").slice(0, 4)).toEqual([
    "Order BW-2207, Larkspur Library, waits for you: 3 sheets to come. Nothing of it is cut until then.",
    "STILL TO COME\n  - Station S-104: the device sheets for positions 2, 3 and 4",
    [
      "Reply to this letter.",
      "Attach the missing sheets. All others are kept; do not send them again.",
      "If you need more time or no longer want the order, say so in a sentence, or call 312-555-0140.",
    ].join("\n"),
    "If we hear nothing, the last reminder comes on Monday, November 9.",
  ]);
});

test("the last one says so, and who comes then", () => {
  const { subject, text } = composeReminder({ order: orderOf([plate()]), what: "last", nth: 2 }, catalogue);
  expect(subject).toBe("Last reminder: order BW-2207, 4 sheets to come");
  expect(text).toContain("This is our last reminder. If we hear nothing, a person at Quillgate Stations");
  expect(text).not.toContain("the last reminder comes");
});

test("questions bear the numbers that the answer gave them", () => {
  const order = orderOf([...completeOrder().slice(0, -1), deviceAt(4, { finish: "CHK" })]);
  const { text } = composeReminder(
    first({ ...order, questions: order.questions.map((one) => ({ ...one, number: 7 })) }),
    catalogue,
  );
  expect(text).toContain(
    "PLEASE CONFIRM\n  7. Station S-104, position 4: The device is Chalk, but plate S-104 is Oat.\n     If only one is wanted, send the sheet again with the right finish.\n     Or reply “7 YES” if it is meant as it stands.\n\nReply to this letter.\nAnswer each question by its number.\n",
  );
  expect(text).not.toContain("STILL TO COME");
});

test("a thing to fix names its file and the way to fix it", () => {
  const { subject, text } = composeReminder(
    first(orderOf([aloneDevice({ file: "desk.pdf", layouts: [] })])),
    catalogue,
  );
  expect(subject).toContain("1 to fix");
  expect(text).toMatch(/ {2}- desk\.pdf: No layout is chosen\.\n {4}Choose one of these/);
  expect(text).toContain("Attach the corrected sheets. All others are kept");
});

test("a reminder names the sheets that it encloses, and how many more are missing", () => {
  const sheets = [1, 2].map((n) => ({
    file: `S-104 position ${n}.pdf`,
    type: "application/pdf" as const,
    bytes: new Uint8Array(),
  }));
  const { text } = composeReminder(first(orderOf([plate()])), catalogue, { sheets, more: 2 });
  expect(text).toContain(
    "\n\nEnclosed: S-104 position 1.pdf and S-104 position 2.pdf. They are the missing sheets, with what your other sheets say. Check that, fill in the rest on a computer, save, and send them to us.\n\n2 more sheets are missing; send some of these, and our answer encloses the next.\n\n",
  );
});

test("no sentence of a reminder is longer than a tired reader can hold", () => {
  const orders = [
    [plate(), deviceAt(1)],
    [aloneDevice({ layouts: [], notes: "as above" })],
    [...completeOrder().slice(0, -1), deviceAt(4, { finish: "CHK", project: "Larkspur Libary" })],
  ].map(orderOf);
  const texts = orders.flatMap((order) =>
    [first(order), { order, what: "last", nth: 2 } as const].map(
      (due) => composeReminder(due, catalogue).text,
    ),
  );
  expect(tooLong(sentencesOf(texts.flatMap((text) => text.split(/\n+/))))).toEqual([]);
});

describe("what strangers typed", () => {
  test("stays in its line", () => {
    const order = { ...orderOf([plate()]), number: "BW-1\r\nBcc: x@y.example", project: "A\nB" };
    const { subject, text } = composeReminder(first(order), catalogue);
    expect(subject).not.toMatch(/[\r\n]/);
    expect(text).not.toMatch(/^Bcc/m);
  });

  test("and a long order is not told sheet by sheet", () => {
    const missing = Array.from({ length: 40 }, (_, i) => ({ station: `S-${i}`, kind: "plate" as const }));
    const { text } = composeReminder(first({ ...orderOf([plate()]), missing }), catalogue);
    expect(text).toContain("… and 28 more, as in our last answer.");
  });
});
