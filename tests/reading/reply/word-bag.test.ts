import { describe, expect, test } from "vitest";
import { onlyChats, withoutTimes } from "../../../src/reading/reply/chat.ts";
import { asksFor, hasLegend } from "../../../src/reading/reply/cues.ts";
import { remarksIn } from "../../../src/reading/reply/remarks.ts";
import { areTerms } from "../../../src/reading/reply/terms.ts";
import {
  hasMoreWords,
  moreWords,
  withoutLetterLinks,
  withoutLinks,
} from "../../../src/reading/reply/word-bag.ts";

describe("a quotation has more words than the text it quotes", () => {
  test.each([
    ["red as well", "make it red as well", "make it"],
    ["not", "make it not", "make it"],
    ["it", "make it it", "make it"],
    ["?", "make it?", "make it"],
    ["👎", "make it 👎", "make it"],
    ["makeitnow", "makeitnow", "make it"],
    ["itmakeit", "itmakeit", "make it"],
    // Five words in one are more than a program runs together.
    ["aabbccddee", "aabbccddee", "aa bb cc dd ee"],
  ])("%s", (more, quoting, quoted) => {
    expect(moreWords(quoting, quoted).join(" ")).toBe(more);
    expect(hasMoreWords(quoting, quoted)).toBe(true);
  });

  test.each([
    ["in another order", "it make", "Make it!"],
    ["with words run together", "makeit", "make it"],
    ["with four words run together", "aabbccdd", "aa bb cc dd"],
    ["with links of a program", "make it<mailto:orders@quillgate.example> [https://x.example]", "make it"],
    ["less of it", "make", "make it"],
    [
      "of eighty letters run together",
      `${"a".repeat(40)}${"b".repeat(40)}`,
      `${"a".repeat(40)} ${"b".repeat(40)}`,
    ],
  ])("or none: %s", (_, quoting, quoted) => {
    expect(moreWords(quoting, quoted)).toEqual([]);
    expect(hasMoreWords(quoting, quoted)).toBe(false);
  });

  test("words are taken apart up to eighty letters, and five hundred of them", () => {
    const [a, b] = ["a".repeat(40), "b".repeat(41)];
    expect(moreWords(`${a}${b}`, `${a} ${b}`)).toHaveLength(1);
    const run = (count: number): string => Array<string>(count).fill("aabb").join(" ");
    expect(moreWords(run(500), run(500).replaceAll("aabb", "aa bb"))).toEqual([]);
    expect(moreWords(run(501), run(501).replaceAll("aabb", "aa bb"))).toEqual(["aabb"]);
  });
});

describe("what a quotation says beyond what it quotes", () => {
  const answer = "SALON looks misspelt\nReply NO if it is not meant so\nHold";
  test.each<[string, string[], string[]]>([
    ["nothing", ["SALON looks misspelt", "Reply NO if it is not", "meant so"], []],
    ["a new word", ["SALON looks red"], ["red"]],
    ["a word against it", ["looks not"], ["looks not"]],
    ["a new word and one against it", ["not red"], ["red", "not red"]],
    ["a whole line that is against it", ["Hold"], []],
    ["one word of a line", ["NO"], ["NO"]],
  ])("is %s", (_, quoted, said) => {
    expect(remarksIn(quoted, answer)).toEqual(said);
  });
});

test("two words that speak against something are no remark where the text has them so", () => {
  expect(remarksIn(["not right"], "it is not right here")).toEqual([]);
  expect(remarksIn(["not it"], "it is not right here")).toEqual(["not it"]);
  expect(remarksIn(["not"], "it is not right here")).toEqual(["not"]);
});

test.each([
  ["All orders are subject to our standard terms", true],
  ["No order is binding", true],
  ["Prices over $500 need a purchase order", true],
  ["Ask us about our offers", true],
  ["Whitlock Controls: same-day service", true],
  ["All orders are unwritten", false],
  ["All orders need a termsheet", false],
  ["Reorders are binding", false],
  ["Please ask us about our offers", false],
  ["All orders are binding?", false],
  ["All orders are binding today", false],
  [`All orders are binding ${"x".repeat(277)}`, true],
  [`All orders are binding ${"x".repeat(278)}`, false],
])("%j are terms for everybody: %s", (sentence, are) => {
  expect(areTerms(sentence)).toBe(are);
});

test.each([
  ["Lobby: SA", true],
  ["see SALON there", true],
  ["see SPA there", false],
  ["SALON", false],
  ["twenty-one letters are: SA", false],
  ["see S4LON there", true],
])("%j has a legend among other words: %s", (said, has) => {
  expect(hasLegend(said)).toBe(has);
});

test.each([
  ["incorrect", true],
  ["don’t", true],
  ["jamais", true],
  ["held", true],
  ["the kitchen", false],
  ["and mark them", true],
  // The end of a word is no "and", and no "or".
  ["the brand mark", false],
  ["for show", false],
])("%j asks for something: %s", (said, asks) => {
  expect(asksFor(said)).toBe(asks);
});

test.each([
  ["I was there at 4 pm", "I was there  "],
  ["It took 3 hours", "It took  hours"],
  ["Thanks for the 2 minutes", "Thanks for the  minutes"],
  // Whose hour it is, or of what, nobody knows.
  ["Ready at 4 pm", "Ready at 4 pm"],
  ["I put the plates there at 4", "I put the plates there at 4"],
])("hours of people are no numbers of an order: %j", (said, left) => {
  expect(withoutTimes(said).trimEnd()).toBe(left.trimEnd());
});

test.each([
  ["We had a long week", "We had a long week", true],
  ["Happy Monday", "Happy Monday", true],
  ["Music room", "Music room", true],
  ["the last two", "the last two", true],
  ["Bare", "Bare", false],
  ["Could he do it?", "Could he do it?", false],
  ["Had a good game?", "Had a good game?", true],
])("%j only chats: %s", (sentence, rest, chats) => {
  expect(onlyChats(sentence, rest)).toBe(chats);
});

test("what stands behind an address is a link, up to 600 characters", () => {
  const linked = (length: number): string => `<a@${"b".repeat(length - 2)}>`;
  expect(withoutLinks("Dana<mailto:dana@whitlock.example>, 2 [https://whitlock.example]")).toBe("Dana, 2 ");
  expect(withoutLinks("<b> [x]")).toBe("<b> [x]");
  expect(withoutLinks(linked(600))).toBe("");
  expect(withoutLinks(linked(601))).toBe(linked(601));
});

test("links that begin letters are taken out of a text, and no address is", () => {
  const link = "orders@quillgate.example?subject=Reference%2034K-7CD9T&body=3%20YES";
  for (const shown of [`3 YES<mailto:${link}>`, `3 YES <${link}>`, `3 YES\n> > [mailto:${link}]`])
    expect(withoutLetterLinks(`Or reply “${shown}” if it is`)).toBe("Or reply “3 YES” if it is");
  for (const kept of ["Dana <dana@whitlock.example>", "<who?>", "[see me@noon ? maybe]"])
    expect(withoutLetterLinks(kept)).toBe(kept);
});
