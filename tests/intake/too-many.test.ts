import { describe, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { threadOf, tooMany } from "../../src/intake/too-many.ts";
import type { RecentAnswers } from "../../src/ports/store.ts";
import { temporaryDesk } from "../make/desk.ts";
import { bytesOf } from "../make/mime.ts";

const now = new Date("2026-11-09T15:00:00Z");
const ago = (minutes: number): Date => new Date(now.getTime() - minutes * 60_000);
const fromNow = (minutes: number): Date => ago(-minutes);
const day = 24 * 60;

const none: RecentAnswers = { toOne: [], toAll: [], inThread: [], waiting: 0 };
const letter = bytesOf(["From: ines@brightwire.example", "To: orders@quillgate.example", "", "Hello"]);

/** A desk that gives two answers an hour to one and three to all, four a day to one and two in a thread. */
async function deskWith(recent: Partial<RecentAnswers>): Promise<Desk> {
  const desk = await temporaryDesk({ clock: { now: () => now } });
  const { store, rules } = desk;
  return {
    ...desk,
    rules: { ...rules, mostAnswers: { toOne: 2, toAll: 3, toOneADay: 4, inThreadADay: 2 } },
    store: {
      ...store,
      answers: { ...store.answers, since: () => Promise.resolve({ ...none, ...recent }) },
    },
  };
}

const until = async (recent: Partial<RecentAnswers>): Promise<Date | undefined> =>
  (await tooMany(await deskWith(recent), letter, undefined))?.until;

describe("a letter waits for its turn", () => {
  test.each<[string, Partial<RecentAnswers>, Date | undefined]>([
    ["after two answers to its sender in an hour", { toOne: [ago(50), ago(10)] }, fromNow(10)],
    [
      "after three, until one more of them is an hour old",
      { toOne: [ago(55), ago(50), ago(10)] },
      fromNow(10),
    ],
    ["after three answers to all", { toAll: [ago(59), ago(9), ago(8)] }, fromNow(1)],
    [
      "after four answers to its sender in a day",
      { toOne: [ago(1400), ago(900), ago(800), ago(700)] },
      fromNow(40),
    ],
    ["after two answers in its thread in a day", { inThread: [ago(1400), ago(10)] }, fromNow(40)],
    [
      "for the longest of these",
      { toAll: [ago(59), ago(9), ago(8)], inThread: [ago(1400), ago(10)] },
      fromNow(40),
    ],
    ["not after one answer", { toOne: [ago(10)] }, undefined],
    ["not when the first of two is an hour old", { toOne: [ago(60), ago(10)] }, undefined],
    ["not after two answers to all", { toAll: [ago(9), ago(8)] }, undefined],
    ["not when the first of three to all is an hour old", { toAll: [ago(60), ago(9), ago(8)] }, undefined],
    ["not when the first in its thread is a day old", { inThread: [ago(day), ago(10)] }, undefined],
  ])("%s", async (_, recent, date) => {
    expect(await until(recent)).toEqual(date);
  });
});

describe("a person looks", () => {
  const over = { toOne: [ago(50), ago(10)] };
  const looks = async (waiting: number, since: Date | undefined): Promise<boolean> => {
    const found = await tooMany(await deskWith({ ...over, waiting }), letter, since);
    if (found === undefined) throw new Error("the letter is over no limit");
    expect(found.sender).toBe("ines@brightwire.example");
    return found.until === undefined;
  };

  test("when as many letters wait as are answered in a day, and the letter itself does not count", async () => {
    expect(await looks(3, undefined)).toBe(false);
    expect(await looks(4, undefined)).toBe(true);
    expect(await looks(4, ago(60))).toBe(false);
    expect(await looks(5, ago(60))).toBe(true);
  });

  test("when a letter has waited for more than a day", async () => {
    expect(await looks(1, ago(day))).toBe(false);
    expect(await looks(1, ago(day + 1))).toBe(true);
  });
});

test("what gets no answer breaks no limit", async () => {
  const desk = await deskWith({ toOne: [ago(50), ago(10)] });
  const nobody = bytesOf(["From: a@b.example, c@d.example", "", ""]);
  const machine = bytesOf(["From: a@b.example", "Auto-Submitted: auto-replied", "", ""]);
  expect(await tooMany(desk, nobody, undefined)).toBeUndefined();
  expect(await tooMany(desk, machine, undefined)).toBeUndefined();
});

test("a thread is that of the answer that is replied to, or its first letter, or the letter itself", async () => {
  const { store } = await temporaryDesk();
  const asked: (readonly string[])[] = [];
  const known = (thread?: string): Desk["store"] => ({
    ...store,
    answers: {
      ...store.answers,
      threadOf: (ids) => {
        asked.push(ids);
        return Promise.resolve(thread);
      },
    },
  });
  const references = Array.from({ length: 101 }, (_, i) => `<${i}@b.example>`);
  const whole = { messageId: "<m@b.example>", inReplyTo: "<r@b.example>", references };
  expect(await threadOf(whole, known("<t@b.example>"))).toBe("<t@b.example>");
  expect(asked).toEqual([[...references.slice(1), "<r@b.example>"]]);
  expect(await threadOf(whole, known())).toBe("<0@b.example>");
  expect(await threadOf({ ...whole, references: [] }, known())).toBe("<r@b.example>");
  expect(await threadOf({ messageId: "<m@b.example>", references: [] }, known())).toBe("<m@b.example>");
  expect(await threadOf({ references: [] }, known())).toBe("");
});
