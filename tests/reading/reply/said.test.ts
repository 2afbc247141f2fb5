import { expect, test } from "vitest";
import { bindsNothing, isUnclear, regrets, saidIn } from "../../../src/reading/reply/said.ts";

const said = (line: string): unknown =>
  saidIn({ line, afterSeveral: false }, { open: [3], others: 0, names: [] }, (sentence) =>
    /^x+$/.test(sentence),
  );

test("a line of 320 characters may answer, a longer one is a sentence that a person reads", () => {
  expect(said(`3 YES. ${"x".repeat(313)}`)).toEqual([{ number: 3, is: true }]);
  expect(said(`3 YES. ${"x".repeat(314)}`)).toBeUndefined();
});

test("a line that asks answers nothing", () => {
  expect(said("3 YES")).toEqual([{ number: 3, is: true }]);
  expect(said("3 YES?")).toBeUndefined();
  expect(said("3 YES. xxx?")).toBeUndefined();
});

test.each([
  ["Thanks", true],
  ["Thanks?", false],
  ["It is a name", true],
  ["It is a name?", false],
  ["Question – answer", true],
  ["Question – answer?", false],
  // It may be said of another point.
  ["Yes", false],
])("%j binds nothing below a yes: %s", (line, none) => {
  expect(bindsNothing(line, [], true)).toBe(none);
});

test("things and people after which something is named may be several", () => {
  for (const whom of ["the fjord", "two fjords", "the sister", "two sisters"])
    expect(said(`3 YES, it is the name of ${whom}`)).toEqual([{ number: 3, is: true }]);
});

test.each([
  ["1-3 yes", [1, 2, 3]],
  ["one to three yes", [1, 2, 3]],
  ["3-3 yes", [3]],
  ["3-1 yes", [-1]],
  ["1-50 yes", Array.from({ length: 50 }, (_, i) => i + 1)],
  ["1-51 yes", [-1]],
])("%j is about %j: a range that runs backwards or too far is none", (line, numbers) => {
  expect(said(line)).toEqual(numbers.map((number) => ({ number, is: true })));
});

test.each(["3 yes, 2", "3 yes - 2", "3: yes, 2:", "3 is a yes, and 2", "the answer to 3 is yes, 2"])(
  "%j leaves open what is said of 2",
  (line) => {
    expect(saidIn({ line, afterSeveral: false }, { open: [2, 3], others: 1, names: [] }, () => false)).toBe(
      undefined,
    );
  },
);

test("who is sorry and says yes says yes; who is sorry that a number is right may mean that it is not", () => {
  expect(["Sorry, 3 is a yes", "3 yes, sorry"].map(said)).toEqual([
    [{ number: 3, is: true }],
    [{ number: 3, is: true }],
  ]);
  expect(["Sorry, 3 is right", "3 is correct, sorry"].map(said)).toEqual([undefined, undefined]);
});

test.each([
  ["3: the same is intended", true],
  ["3 – same is intentional", true],
  ["3: the same is in the lobby", false],
  ["3: the same is as typed", false],
])("%j says yes where “the same” means the word: %s", (line, yes) => {
  expect(said(line)).toEqual(yes ? [{ number: 3, is: true }] : undefined);
});

test.each([
  ["yes yes", true],
  ["Yes, yes", true],
  ["no no", false],
  ["No, no", false],
  ["yes yes yes", undefined],
  ["yes", undefined],
])("%j answers both of two questions: %s", (line, is) => {
  const both = saidIn({ line, afterSeveral: false }, { open: [2, 3], others: 0, names: [] }, () => false);
  expect(both).toEqual(is === undefined ? undefined : [2, 3].map((number) => ({ number, is })));
});

test.each(["no 2 yes, 3", "No. 2 yes, and 3.", "no 2: ok 3"])(
  "%j leaves open which number is answered, and with what",
  (line) => {
    const points = { open: [2, 3], others: 0, names: [] };
    expect(saidIn({ line, afterSeveral: false }, points, () => false)).toBeUndefined();
  },
);

test.each([
  ["3 yes. Czech", true],
  ["3 yes, a family name", true],
  ["Czech. 3 yes", false],
  ["The family name. 3 yes", false],
])("%j: what a word is stands behind its yes, and not before: %s", (line, yes) => {
  expect(said(line)).toEqual(yes ? [{ number: 3, is: true }] : undefined);
});

test.each([
  ["2 yes :-P", true],
  ["2 yes ;)", true],
  ["2 yes :-)", false],
  ['2" yes', true],
  ['12345" yes', false],
  ["2's a yes", false],
  ["“2” yes", false],
  ["2 correct please", true],
  ["2 is correct please", false],
  ["2 incorrect please", false],
  ["2 correct, pleased", false],
  ["3 yeah, right", true],
  ["3 yeah, rights", false],
  ["yes and yes x 2", true],
  ["eyes yes x 2", false],
  ["yesterday and yes x 2", false],
  ["yes eyes x 2", false],
  ["yes yesterday x 2", false],
  ["yes yes box 2", false],
  ["thesame as it", false],
  ["this correct, please", true],
  ["papaya, right", false],
  ["same as its owner", true],
  ["same as item", false],
  ["3 yes 2", true],
  ["3 yes 2 no", false],
  ["No. 2 yes, 3", true],
  ["no 2: ok and 3.", true],
  ["no 2 yes, 3 no", false],
  ["casino 2 yes, 3", false],
  ["3 no, leave it like it is", true],
  ["3 no, family name", true],
  ["3 no, family names", false],
  ["3 no, sheet attached as is", false],
  ["3 no, it was as typed", false],
  ["3 noon, as is", false],
  ["3 no, 2 as is", false],
  ["3 no, the basis", false],
  ["3 no, the atlas is", false],
  ["the casino as is", false],
  ["3 no, worksheet as is", true],
  ["3 no, washed as is", true],
  [`3 no ${"x".repeat(28)} as is`, true],
  [`3 no ${"x".repeat(29)} as is`, false],
  ["Item 3 yes 2", false],
  ["123 yes 123", true],
  ["1234 yes 2", false],
  ["2 yes 1234", false],
  ["no 123: ok and 123.", true],
  ["no 1234: ok and 3.", false],
  ["no 2: ok and 1234.", false],
  ["The bright one is in the hall", false],
  ["The right name is intended", false],
  ["They want it to be decidedly Czech", false],
  ["3 no, the casino I meant", true],
  ["3 no, I meant Sophie", false],
  [`3 yes "typ of ${"x".repeat(31)} 4" here`, false],
  [`3 yes "typ of ${"x".repeat(32)} 4" here`, true],
])("“%s” can be read in two ways: %s", (line, either) => {
  expect(isUnclear(line)).toBe(either);
});

test.each([
  ["sorry", true],
  ["apologies", true],
  ["unpardoned", false],
  ["sorrying", false],
  ["sorry for the delay", false],
  ["sorry to bother you", false],
  ["sorry, short answer", false],
  ["unapologetic", false],
  ["sorry, prolong it", true],
  ["sorry, lately it is red", true],
])("“%s” is said by who may agree that a word is wrong: %s", (line, is) => {
  expect(regrets.test(line)).toBe(is);
});

test("“yes, I saw it” only acknowledges, except below the point that it answers", () => {
  const at = (line: string, under?: number): unknown =>
    saidIn(
      { line, afterSeveral: false, ...(under === undefined ? {} : { under }) },
      { open: [3], others: 0, names: [] },
      () => false,
    );
  expect(at("Oh yes")).toBeUndefined();
  expect(at("Oh yes", 3)).toEqual([{ number: 3, is: true }]);
  expect(at("Oh yes, 3")).toEqual([{ number: 3, is: true }]);
});

test.each<[string, string | undefined]>([
  ["forgot, yes", "3+"],
  ["I got it, yes", undefined],
  ["yes, it is a reader", "3+"],
  ["yes, it is the readers' name", "3+"],
  ["Ahmed: yes", "3+"],
  ["Yes, oh", "3+"],
  ["Oh yes, often", undefined],
  ["Oh yes, finest", undefined],
  ["It looks like a typo but it is not", "3+"],
  ["3 yes, it looks like a typo but it is not", "3+ 3+"],
  ["3 YES. ready?", undefined],
  ["3 no, it is Czech", undefined],
  ["3 yes, yes", "3+ 3+"],
  ["3 yes, 3 no", undefined],
  ["3 yes, same island", undefined],
  ["It looks like a typo but it is not intended", "3-"],
  ["Yes, I saw it overall", undefined],
  ["Yes, I have seen it lastly", undefined],
])("“%s” says %s of the only question", (line, is) => {
  const all = saidIn(
    { line, afterSeveral: false },
    { open: [3], others: 0, names: ["Ahmed Lane"] },
    (sentence) => /ready/.test(sentence),
  );
  expect(all?.map((one) => `${one.number}${one.is ? "+" : "-"}`).join(" ")).toBe(is);
});

test.each<[string, string | undefined]>([
  ["he said 2 and 3 are both YES", "2+ 3+"],
  ["I just got off the phone with the owner and he confirmed that questions 2 and 3 are both YES.", "2+ 3+"],
  ["We met the owner and he said 2 and 3 are both YES", "2+ 3+"],
  [`We met the owner${" here".repeat(20)} and he said 2 and 3 are both YES`, "2+ 3+"],
  [`We met the owner${" here".repeat(20)} so and he said 2 and 3 are both YES`, "2+ 3+"],
  [`We met the owner${" here".repeat(20)} now and he said 2 and 3 are both YES`, undefined],
  [`We met the owner${" here".repeat(21)} and he said 2 and 3 are both YES`, undefined],
  ["The panel is red and he said 2 and 3 are both YES", undefined],
  ["I held the order and he confirmed that questions 2 and 3 are both YES.", undefined],
  ["The panel is red. We met the owner and he said 2 and 3 are both YES", undefined],
  ["Confirm 2 and 3 all YES.", "2+ 3+"],
  ["Confirm 2 and 3 all YES please", undefined],
  ["2 yes, yes", "2+"],
  ["Please confirm 2 and 3 all YES.", undefined],
  ["For 4 he said 2 and 3 are both YES", undefined],
  ["Per the contractor everything is correct.", "2+ 3+"],
  ["Both are meant as they stand: 2 YES, 3 YES.", "2+ 3+"],
  ["Both are meant as they stand: 2 YES, 3 NO.", undefined],
])("“%s” says %s as somebody reported it", (line, is) => {
  const all = saidIn({ line, afterSeveral: false }, { open: [2, 3], others: 0, names: [] }, () => false);
  expect(all?.map((one) => `${one.number}${one.is ? "+" : "-"}`).join(" ")).toBe(is);
});

test.each<[string, string | undefined]>([
  ["2y 3n", "2+ 3-"],
  ["Q2y Q3n", "2+ 3-"],
  ["123 y", "123+"],
  ["1234 y", undefined],
  ["and so 2y 3n", undefined],
  ["thanks thank you thank you thank you thank you cheers cheers: 2y 3n", "2+ 3-"],
  ["thanks thanks thank you thank you cheers cheers cheers cheers: 2y 3n", undefined],
  ["thanks thanks thank you thank you thank you thank you cheers cheers: 2y 3n", undefined],
])("“%s” says %s in letters", (line, is) => {
  const all = saidIn({ line, afterSeveral: false }, { open: [2, 3], others: 0, names: [] }, () => false);
  expect(all?.map((one) => `${one.number}${one.is ? "+" : "-"}`).join(" ")).toBe(is);
});

test("what binds nothing is 320 characters long at most, and may be about a point to mend", () => {
  expect(bindsNothing(`Thanks.${".".repeat(313)}`, [], true)).toBe(true);
  expect(bindsNothing(`Thanks.${".".repeat(314)}`, [], true)).toBe(false);
  expect(bindsNothing("1. Shorten it, and send the sheet again.", [], true)).toBe(true);
});

test.each([
  ["The right word is on the drawings.", true],
  ["2 YES, the correct names are in the schedule", true],
  ["The right word, and on the drawings", false],
])("who says where the right word stands may mean another: %s: %s", (line, unclear) => {
  expect(isUnclear(line)).toBe(unclear);
});

test("who only thanks, or only gives a reason, answers nothing", () => {
  expect(said("Thanks")).toBeUndefined();
  expect(said("It is a family name")).toBeUndefined();
});

test("a reason binds nothing below an answer, and alone it may", () => {
  expect(bindsNothing("It is a family name", [], true)).toBe(true);
  expect(bindsNothing("It is a family name", [], undefined)).toBe(false);
});
