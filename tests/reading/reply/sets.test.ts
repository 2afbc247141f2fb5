import { describe, expect, test } from "vitest";
import { speaksAgainstIt } from "../../../src/reading/reply/file-names.ts";
import {
  factsIn,
  isToldBeside,
  lettersIn,
  namesIn,
  notesIn,
  sentencesIn,
  talesIn,
  toldIn,
} from "../../bench/notes.ts";
import { misses, readHalf, readingOf, sets } from "../../bench/reply-sets.ts";

/*
 * Letters and replies written for this project (tests/bench/letter-words.ts and replies.ts tell how, and print all
 * figures). No figure gets worse unseen.
 */

const halves = new Map<string, ReturnType<typeof readHalf>>();

/** What each reply of a half is taken for. Read once, since it takes its time. */
function judgedIn(set: (typeof sets)[number], half: 1 | 2): ReturnType<typeof readHalf> {
  const judged = halves.get(`${set} ${half}`) ?? readHalf(set, half);
  halves.set(`${set} ${half}`, judged);
  return judged;
}

describe("replies", () => {
  test.each([
    ["first", 1, 1, 0],
    ["first", 2, 3, 1],
    ["second", 1, 1, 3],
    ["second", 2, 1, 3],
    ["third", 1, 1, 2],
    ["third", 2, 2, 0],
    ["fourth", 1, 0, 0],
    ["fourth", 2, 0, 0],
    ["fifth", 1, 0, 0],
    ["fifth", 2, 0, 0],
    ["sixth", 1, 0, 2],
    ["sixth", 2, 0, 2],
    ["seventh", 1, 0, 7],
    ["seventh", 2, 0, 18],
    ["eighth", 1, 0, 5],
    ["eighth", 2, 0, 6],
    ["ninth", 1, 0, 4],
    ["ninth", 2, 0, 20],
    ["tenth", 1, 0, 19],
    ["tenth", 2, 0, 20],
    ["eleventh", 1, 0, 15],
    ["eleventh", 2, 0, 7],
    ["twelfth", 1, 0, 4],
    ["twelfth", 2, 0, 14],
    ["thirteenth", 1, 0, 9],
    ["thirteenth", 2, 0, 7],
    ["fourteenth", 1, 0, 3],
    ["fourteenth", 2, 0, 8],
    ["fifteenth", 1, 0, 13],
    ["fifteenth", 2, 0, 4],
    ["sixteenth", 1, 0, 0],
    ["sixteenth", 2, 1, 12],
    ["seventeenth", 1, 0, 13],
    ["seventeenth", 2, 0, 10],
    ["eighteenth", 1, 0, 6],
    ["eighteenth", 2, 1, 16],
    ["nineteenth", 1, 1, 8],
    ["nineteenth", 2, 0, 18],
    ["twentieth", 1, 0, 1],
    ["twentieth", 2, 0, 11],
    ["twenty-first", 1, 0, 0],
    ["twenty-first", 2, 0, 8],
    ["twenty-second", 1, 0, 0],
    ["twenty-second", 2, 0, 7],
    ["twenty-third", 1, 0, 0],
    ["twenty-third", 2, 0, 10],
    ["twenty-fourth", 1, 0, 2],
    ["twenty-fourth", 2, 0, 5],
    ["twenty-fifth", 1, 0, 2],
    ["twenty-fifth", 2, 0, 17],
    ["twenty-sixth", 1, 0, 4],
    ["twenty-sixth", 2, 0, 13],
    ["twenty-seventh", 1, 0, 7],
    ["twenty-seventh", 2, 0, 8],
    ["twenty-eighth", 1, 0, 7],
    ["twenty-eighth", 2, 0, 13],
    ["twenty-ninth", 1, 0, 23],
    ["twenty-ninth", 2, 0, 29],
    ["thirtieth", 1, 0, 21],
    ["thirtieth", 2, 0, 31],
    ["thirty-first", 1, 0, 31],
    ["thirty-first", 2, 0, 36],
    ["thirty-second", 1, 0, 19],
    ["thirty-second", 2, 0, 18],
    ["thirty-third", 1, 0, 16],
    ["thirty-third", 2, 0, 26],
  ] as const)("of the %s set, half %i: none is wrongly taken as YES or NO", (set, half, untold, unread) => {
    const judged = judgedIn(set, half);
    expect(judged.length).toBeGreaterThan(40);
    const most: Record<keyof typeof misses, number> = {
      "wrongly taken as YES": 0,
      "wrongly taken as NO": 0,
      "for a person, and not so told": untold,
      "understood without a person, and not so read": unread,
    };
    for (const [what, { may, does }] of Object.entries(misses)) {
      const missed = judged.filter(({ reply, got }) => may(reply) && does(reply, got));
      expect(missed.length, what).toBeLessThanOrEqual(most[what] ?? 0);
    }
  });

  // With -u the readings are written anew, for a look at what a change to the rules does to them.
  test.each(sets)("of the set “%s” each is read as it is written down", async (set) => {
    const [odd, even] = [judgedIn(set, 1), judgedIn(set, 2)];
    const lines = odd.flatMap((one, i) => [one, even[i]]).flatMap((one) => (one ? [readingOf(one.got)] : []));
    expect(lines.length).toBe(odd.length + even.length);
    const numbered = lines.map((line, i) => `${i + 1}: ${line}\n`).join("");
    await expect(numbered).toMatchFileSnapshot(`../../bench/replies/${set}.read.txt`);
  });
});

describe("letters", () => {
  test.each([
    ["", 4, 0],
    ["unseen-", 5, 0],
    ["unseen2-", 4, 0],
    ["unseen3-", 3, 1],
    ["unseen4-", 1, 0],
    ["unseen5-", 14, 0],
    ["unseen6-", 4, 0],
    ["unseen7-", 9, 0],
    ["unseen8-", 17, 0],
    ["unseen9-", 8, 1],
    ["unseen10-", 9, 0],
    ["unseen11-", 14, 0],
    ["unseen12-", 11, 0],
    ["unseen13-", 36, 0],
    ["unseen14-", 60, 0],
  ])(
    "of the set “%s”: at most %i cover notes are asked about, and %i wishes go through",
    (set, asked, through) => {
      const [notes, wishes] = [notesIn(`${set}cover`), notesIn(`${set}wishes`)];
      expect(Math.min(notes.length, wishes.length)).toBeGreaterThan(14);
      expect(notes.filter((note) => toldIn(note).length > 0).length).toBeLessThanOrEqual(asked);
      expect(wishes.filter((note) => toldIn(note).length === 0).length).toBeLessThanOrEqual(through);
    },
  );

  test("of 351 wishes that sound like talk four go through", () => {
    const untold = talesIn().filter((tale) => !isToldBeside(tale));
    expect(talesIn().length).toBe(351);
    expect(untold.length).toBeLessThanOrEqual(4);
  });

  test.each([
    ["tuned on", false, 0, 105],
    ["set aside", true, 12, 108],
  ] as const)(
    "of notes that were %s, few facts that undo an order go through",
    (_, aside, through, asked) => {
      const [undone, talk] = [factsIn("undone", aside), factsIn("at-ease", aside)];
      expect([undone.length, talk.length]).toEqual([150, 150]);
      expect(undone.filter((note) => !isToldBeside(note)).length).toBeLessThanOrEqual(through);
      expect(talk.filter(isToldBeside).length).toBeLessThanOrEqual(asked);
    },
  );

  test("of single sentences beside complete sheets no wish goes through, and a third of the others does", () => {
    const told = sentencesIn().filter(({ text }) => isToldBeside(text));
    expect(told.filter(({ label }) => label === "person").length).toBe(270);
    expect(told.filter(({ label }) => label === "pass").length).toBeLessThanOrEqual(223);
  });

  test.each([
    ["tuned on", false, 1, 76],
    ["set aside", true, 3, 96],
  ] as const)("of short letters that were %s, at most %s wishes go through", (_, aside, through, asked) => {
    const [wishes, others] = [lettersIn("person", aside), lettersIn("pass", aside)];
    expect([wishes.length, others.length]).toEqual([200, 200]);
    expect(wishes.filter((note) => toldIn(note).length === 0).length).toBeLessThanOrEqual(through);
    expect(others.filter((note) => toldIn(note).length > 0).length).toBeLessThanOrEqual(asked);
  });

  test.each([
    ["tuned on", false, 0, 0],
    ["set aside", true, 1, 2],
  ] as const)("names of files, those %s", (_, aside, asked, through) => {
    const [{ facts } = { facts: undefined }] = notesIn("cover");
    if (facts === undefined) throw new Error("no notes");
    const speaks = (name: string): boolean => speaksAgainstIt(name, facts);
    expect(namesIn("honest", aside).filter(speaks).length).toBeLessThanOrEqual(asked);
    expect(namesIn("wishes", aside).filter((name) => !speaks(name)).length).toBeLessThanOrEqual(through);
  });
});
