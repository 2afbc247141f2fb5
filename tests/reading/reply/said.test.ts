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
