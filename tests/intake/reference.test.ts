import * as fc from "fast-check";
import { beforeEach, describe, expect, test } from "vitest";
import { keyReadsRight } from "../../src/catalogue/part-key.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { referenceOf, refersTo } from "../../src/intake/reference.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { temporaryDesk } from "../make/desk.ts";
import { answerTo, pageTo, post } from "../make/thread.ts";

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});
const salona = { mark: "B-1", legend: ["SALONA"] };
const reference = (letter: number): string => referenceOf(letter, desk.secret);
const verdictOf = async (number = "FM-72"): Promise<string | undefined> =>
  (await desk.store.orders.named(number))[0]?.verdict;

describe("a reference", () => {
  test("has no character that is taken for another, and ends with a check character by ISO/IEC 7064", () => {
    fc.assert(
      fc.property(fc.nat(10_000_000), fc.string({ minLength: 1 }), (letter, secret) => {
        const made = referenceOf(letter, secret);
        expect(made).toMatch(/^[34679CDFGHJKMNPRTWXY]{3,6}-[34679CDFGHJKMNPRTWXY]{5}$/);
        expect(keyReadsRight(made)).toBe(true);
        expect(referenceOf(letter, secret)).toBe(made);
      }),
    );
  });
  test("is another for every letter, and follows from the secret", () => {
    const all = Array.from({ length: 5000 }, (_, i) => referenceOf(i + 1, "a secret"));
    expect(new Set(all).size).toBe(all.length);
    expect(referenceOf(1, "another secret")).not.toBe(all[0]);
  });
});

test("stands beside the questions of an answer, and in no answer that asks nothing", async () => {
  const asked = await post(desk, { sheets: [salona] });
  const answer = await answerTo(desk, asked);
  expect(answer).toContain(`PLEASE CONFIRM (REFERENCE ${reference(asked.letter)})`);
  expect(answer.replace(/\s+/g, " ")).toContain(
    `In a new letter instead of a reply, give the reference ${reference(asked.letter)}.`,
  );
  const passed = await post(desk, { to: asked, text: "1 YES" });
  expect(await answerTo(desk, passed)).not.toMatch(/reference/i);
});

describe("a new letter that gives it is a reply to that answer", () => {
  test.each<[string, (made: string) => string]>([
    ["in a line above", (made) => `Reference ${made}\n\n1 YES\n\nGreta`],
    ["in a line below", (made) => `1 YES\n\nYour ref.: ${made}`],
    ["in the line", (made) => `Ref ${made}: 1 YES`],
    [
      "in small letters, with a blank",
      (made) => `reference no. ${made.toLowerCase().replace("-", " ")}\n1 yes`,
    ],
    ["run together", (made) => `${made.replace("-", "")}\n1 yes`],
  ])("%s", async (_, text) => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { text: text(reference(asked.letter)) });
    expect(reply).toMatchObject({ verdict: "pass", orders: ["FM-72"] });
    expect(await verdictOf()).toBe("pass");
  });

  test("in its subject", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { subject: `Answer, ref ${reference(asked.letter)}`, text: "1 YES" });
    expect(reply.verdict).toBe("pass");
  });

  test("and may withdraw sheets", async () => {
    const asked = await post(desk, { sheets: [salona, { mark: "B-2", legend: ["SAUNA"] }] });
    const reply = await post(desk, { text: `Reference ${reference(asked.letter)}\nCANCEL B-1` });
    expect(reply.verdict).toBe("pass");
  });
});

describe("the page of an answer begins a letter for each YES", () => {
  /** The letters that a mail program would begin (RFC 6068). */
  const lettersOn = (
    page: string,
  ): { readonly to: string; readonly subject: string; readonly text: string }[] =>
    [...page.matchAll(/<a href="(mailto:[^"]+)">/g)].map(([, link = ""]) => {
      const { pathname, searchParams } = new URL(link.replaceAll("&amp;", "&"));
      return {
        to: decodeURIComponent(pathname),
        subject: searchParams.get("subject") ?? "",
        text: searchParams.get("body") ?? "",
      };
    });

  test("which settles its question when it is sent", async () => {
    const asked = await post(desk, { sheets: [salona, { mark: "B-2", legend: ["SAUNNA"] }] });
    const [first, second, ...more] = lettersOn(await pageTo(desk, asked));
    expect(more).toEqual([]);
    const subject = `Reference ${reference(asked.letter)}`;
    expect(first).toEqual({ to: "orders@quillgate.example", subject, text: "1 YES" });
    expect(second).toEqual({ to: "orders@quillgate.example", subject, text: "2 YES" });
    const reply = { subject, text: `${first?.text}\n\nSent from my phone` };
    expect((await post(desk, reply)).verdict).toBe("confirm");
    expect((await post(desk, { subject, text: second?.text ?? "" })).verdict).toBe("pass");
  });

  test("and for no question that a person settles", async () => {
    const asked = await post(desk, { sheets: [{ mark: "B-1", legend: ["EXIT"] }] });
    expect(await answerTo(desk, asked)).toContain("A person reads it.");
    expect(lettersOn(await pageTo(desk, asked))).toEqual([]);
  });
});

describe("nothing is taken", () => {
  const slips: readonly [string, (made: string, letter: number) => string][] = [
    ["with a wrong character", (made) => made.replace(/.$/, (last) => (last === "3" ? "4" : "3"))],
    ["with two exchanged", (made) => made.replace(/(.)(.)$/, "$2$1")],
    ["with one missing", (made) => made.slice(0, -1)],
    ["with one more", (made) => `${made}3`],
    ["of another letter", () => reference(99)],
    ["that somebody has made up, check character and all", (_made, letter) => referenceOf(letter, "a guess")],
  ];
  test.each(slips)("from a reference %s", async (_, slip) => {
    // The last two characters differ, so that they can be exchanged.
    while (/(.)\1$/.test(reference((await post(desk, { text: "Hello" })).letter + 1)));
    const asked = await post(desk, { sheets: [salona] });
    const mistyped = slip(reference(asked.letter), asked.letter);
    expect(mistyped).not.toBe(reference(asked.letter));
    await post(desk, { text: `Reference ${mistyped}\n1 YES` });
    expect(await verdictOf()).toBe("confirm");
    expect(await desk.store.buyers.keptWords("greta@fallowmere.example")).toEqual([]);
  });

  test("from a stranger, who learns nothing", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const from = "Noor Vale <noor@otterlane.example>";
    const reply = await post(desk, { from, text: `Reference ${reference(asked.letter)}\n1 YES` });
    expect(reply.verdict).toBe("person");
    expect(await answerTo(desk, reply)).not.toContain("FM-72");
    expect(await verdictOf()).toBe("confirm");
  });

  test("from a reference that is only quoted", async () => {
    const asked = await post(desk, { sheets: [salona] });
    await post(desk, { text: `1 YES\n\n> Reference ${reference(asked.letter)}` });
    expect(await verdictOf()).toBe("confirm");
  });

  test("beside a condition, or for a number that was not asked", async () => {
    const asked = await post(desk, { sheets: [salona] });
    for (const text of ["1 YES if it fits", "7 YES"]) {
      const reply = await post(desk, { text: `Reference ${reference(asked.letter)}\n${text}` });
      expect(reply.verdict).toBe("person");
    }
    expect(await desk.store.buyers.keptWords("greta@fallowmere.example")).toEqual([]);
  });
});

test("a reply in a thread may give it too", async () => {
  const asked = await post(desk, { sheets: [salona] });
  const reply = await post(desk, { to: asked, text: `Reference ${reference(asked.letter)}\n1 YES` });
  expect(reply.verdict).toBe("pass");
});

test("of many references the first five are looked up", async () => {
  const looked: number[] = [];
  const { store, secret } = desk;
  const of = (letter: number) => Promise.resolve(void looked.push(letter));
  const letters = [1, 2, 3, 2, 4, 5, 6];
  await refersTo(
    { subject: "", references: [], attachments: [], text: letters.map(reference).join("\n") },
    { store: { ...store, answers: { ...store.answers, of } }, secret },
  );
  expect(looked).toEqual([1, 2, 3, 4, 5]);
});

describe("a copy of our answer that no mark sets apart", () => {
  const copied = async (asked: LetterRecord): Promise<string> =>
    (await answerTo(desk, asked)).replace(/^(.{30,}?) (.{10,})$/gm, "$1\n$2");
  test("is read as a quotation, wherever its lines are broken", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const reply = await post(desk, { text: `1 YES\n\n${await copied(asked)}` });
    expect(reply).toMatchObject({ verdict: "pass", orders: ["FM-72"] });
  });
  test("hides no wish between its lines", async () => {
    const asked = await post(desk, { sheets: [salona] });
    const text = (await copied(asked)).replace("SHEETS", "In red, please.\nSHEETS");
    const reply = await post(desk, { text: `1 YES\n\n${text}` });
    expect(reply).toMatchObject({ verdict: "person", orders: ["FM-72"] });
    expect(reply.problems.filter(({ check }) => check === "letter-says-more").length).toBeLessThan(3);
  });
});

test("a reference of another order than the thread's answers neither", async () => {
  const asked = await post(desk, { sheets: [{ mark: "B-1", legend: ["SALONA"] }] });
  const other = await post(desk, {
    sheets: [{ mark: "B-1", legend: ["LOUNJA"], fill: { order: "QX-551" } }],
  });
  const reply = await post(desk, { to: other, text: `Reference ${reference(asked.letter)}\n1 YES` });
  expect(reply.verdict).toBe("person");
  for (const number of ["FM-72", "QX-551"]) {
    const [order] = await desk.store.orders.named(number);
    expect(order?.verdict).toBe("confirm");
  }
});
