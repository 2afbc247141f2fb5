import { expect, test } from "vitest";
import { lookForAnswer, sendAnswer } from "../../src/intake/answer.ts";
import { answerId } from "../../src/intake/compose.ts";
import type { Desk } from "../../src/intake/desk.ts";
import type { Sending } from "../../src/ports/sender.ts";
import type { Claim } from "../../src/ports/store.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";

const now = new Date("2026-11-09T15:00:00Z");
const claim: Claim = {
  letter: 1,
  receivedAt: now,
  state: "ready",
  kind: "letter",
  fence: 1,
  opened: 1,
  tries: 0,
};
const seconds = (moment: Date | undefined) => moment && (moment.getTime() - now.getTime()) / 1000;

/** What is written of a letter with an answer: how far its claim is renewed, and each state with its wait. */
async function written(
  act: (desk: Desk) => Promise<void>,
  says: Sending["kind"],
  changes: Partial<Desk> = {},
) {
  const desk = await temporaryDesk({
    sender: keepingSender(() => ({ kind: says, words: "451" })),
    ...changes,
  });
  const marks: [string, number | undefined][] = [];
  const renewed: (number | undefined)[] = [];
  const answer = {
    letter: 1,
    messageId: "<1@quillgate.example>",
    recipient: "a@b.example",
    bytes: now as never,
  };
  await act({
    ...desk,
    store: {
      ...desk.store,
      answers: { ...desk.store.answers, of: () => Promise.resolve(answer) },
      letters: {
        ...desk.store.letters,
        renew: (_, until) => Promise.resolve(void renewed.push(seconds(until))),
        mark: (_, state, __, ___, due) => Promise.resolve(void marks.push([state, seconds(due)])),
        sent: () => Promise.resolve(void marks.push(["sent", undefined])),
      },
    },
  });
  return { marks, renewed };
}
const send = (tries: number, says: Sending["kind"], changes: Partial<Desk> = {}) =>
  written((desk) => sendAnswer(desk, { ...claim, tries }), says, changes);

test.each([
  [0, 60],
  [1, 120],
  [2, 240],
  [7, 7680],
  [8, 14_400],
  [34, 14_400],
])("after %d tries the next one waits for %d seconds", async (tries, wait) => {
  expect((await send(tries, "later")).marks).toEqual([
    ["sending", undefined],
    ["later", wait],
  ]);
});

// RFC 5321 §4.5.4.1: a sender gives up after 4 to 5 days. These tries take four days and two thirds.
test("the thirty-sixth try is the last", async () => {
  expect((await send(35, "later")).marks.at(-1)).toEqual(["refused", undefined]);
});

test("waits are spread by chance, a quarter about the usual", async () => {
  expect((await send(0, "later", { chance: () => 0 })).marks.at(-1)).toEqual(["later", 45]);
  expect((await send(0, "later", { chance: () => 1 })).marks.at(-1)).toEqual(["later", 75]);
});

test("an answer of which nothing is known is looked for after the grace", async () => {
  expect((await send(0, "unknown")).marks.at(-1)).toEqual(["unknown", 120]);
  expect((await send(0, "sent")).marks.at(-1)).toEqual(["sent", undefined]);
});

test("a claim lasts for longer than the patience with the server", async () => {
  const { rules } = await temporaryDesk();
  const renewed = async (lease: number, patience: number) =>
    (await send(0, "sent", { rules: { ...rules, lease, patience } })).renewed;
  expect(await renewed(600, 600)).toEqual([660]);
  expect(await renewed(600, 10)).toEqual([600]);
  expect(await renewed(10, 20)).toEqual([40]);
});

const look = (found: boolean | undefined | Error, unsure?: number) =>
  written((desk) => lookForAnswer(desk, { ...claim, ...(unsure === undefined ? {} : { unsure }) }), "sent", {
    sender: {
      ...keepingSender(),
      find: () => (found instanceof Error ? Promise.reject(found) : Promise.resolve(found)),
    },
  });

test("an answer that is found was sent, and one that is not is sent again, three times at most", async () => {
  expect((await look(true)).marks).toEqual([["sent", undefined]]);
  expect((await look(false)).marks.map(([state]) => state)).toEqual(["sending", "sent"]);
  expect((await look(false, 2)).marks.map(([state]) => state)).toEqual(["sending", "sent"]);
  expect((await look(false, 3)).marks).toEqual([["held", undefined]]);
});

test("where nobody can look a person does, and where nobody can look just now it is tried again", async () => {
  expect((await look(undefined)).marks).toEqual([["held", undefined]]);
  expect((await look(new Error("no line"))).marks).toEqual([["unknown", 120]]);
});

test("the Message-ID of an answer follows from the letter and a secret, and is of our domain", () => {
  const id = (text: string, secret: string): string =>
    answerId(new TextEncoder().encode(text), "orders@quillgate.example", secret);
  expect(id("From: a\n\nb", "s")).toMatch(/^<burin\.[0-9a-f]{32}@quillgate\.example>$/);
  expect(id("From: a\n\nb", "s")).toBe(id("From: a\n\nb", "s"));
  expect(id("From: a\n\nb", "t")).not.toBe(id("From: a\n\nb", "s"));
  expect(id("From: a\n\nc", "s")).not.toBe(id("From: a\n\nb", "s"));
});
