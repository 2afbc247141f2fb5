import { describe, expect, test } from "vitest";
import type { OwnLine } from "../../../src/reading/reply/own-lines.ts";
import { keyOf, type Points, waysIn } from "../../../src/reading/reply/ways.ts";

type Around = Partial<Points & OwnLine>;

/** The ways to read a line: what it answers, a yes or no without a number, and whether it gives a reason. */
function ways(line: string, { under, ...around }: Around = {}): string[] {
  const own = { line, afterSeveral: false, ...around, ...(under === undefined ? {} : { under }) };
  return waysIn(line, own, { open: [2, 3], others: 0, names: [], ...around }, (words) =>
    /^(?:zonk ?)+$/.test(words),
  )
    .map(({ said, bare, reason }) =>
      [
        ...said.map(({ number, is }) => `${number}${is ? "+" : "-"}`),
        ...bare.map((is) => (is ? "yes" : "no")),
        ...(reason ? ["why"] : []),
      ].join(" "),
    )
    .toSorted();
}

const only = { open: [2] };
const mending = { others: 1 };

describe("the ways to read a line", () => {
  test.each<[string, string[], Around?]>([
    ["2 yes n", []],
    ["2 yes, all good", ["2+", "2+ 2+ 3+", "2+ why"]],
    ["2 yes, all good", ["2+", "2+ why"], mending],
    ["2 yes all good", ["2+", "2+ why"], mending],
    ["2 yes good", ["2+", "2+ why"], { under: 2 }],
    ["all good", ["", "2+", "why"], only],
    ["all good", ["", "why"], mending],
    ["all good 2 yes", ["2+"], mending],
    ["all good and 2 yes", ["2+"], mending],
    ["2 yes Czech", []],
    ["2 yes, Czech", ["2+ why"]],
    ["I confirm", ["yes"]],
    ["I confirm", ["2+"], only],
    ["thanks I confirm", [], only],
    ["here are the answers 2 yes", []],
    ["here are the answers: 2 yes", ["2+"]],
    ["zonk zonk. 2 yes", ["2+"]],
    ["2 yes. zonk zonk", ["2+"]],
    ["2 yes zonk", []],
    ["zonk 2 yes", []],
    ["2 no my mistake and 3 yes", ["2- 3+"]],
    ["3 no, sheet attached as is", []],
  ])("what stands beside an answer: %j", (line, all, around) => {
    expect(ways(line, around)).toEqual(all);
  });

  test.each<[string, string[], Around?]>([
    ["go ahead", ["2+", "why"], only],
    ["go ahead", ["why", "yes"], { ...only, afterSeveral: true }],
    ["go ahead", ["why", "yes"], { ...only, ...mending }],
    ["yes and yes", ["2+ 3+", "yes yes"]],
    ["yes yes sure", ["yes"]],
    ["yes and yes too", ["yes", "yes yes"]],
    ["they are yes", ["2+ 3+"]],
    ["they are yes", ["yes"], mending],
    ["they are wrong", ["no"]],
    ["those are fine", ["2+ 3+", "why"]],
    ["all yes", ["2+"], { under: 2 }],
    ["1 to 3 yes", ["1+ 2+ 3+"]],
    ["1 to 3 yes", [], { under: 2 }],
    ["2 yes, same for 3", ["2+ 3+"]],
    ["2 no, same for 3", [], { under: 2 }],
    ["3 too", []],
    ["3 too", ["3+"], { last: true }],
    ["3 too", ["3-"], { last: false }],
    ["yes. 3 too", [], { last: true }],
  ])("answers that name no number, or more than one: %j", (line, all, around) => {
    expect(ways(line, around)).toEqual(all);
  });

  test.each<[string, string[], Around?]>([
    ["2. yes", ["2+"]],
    ["2! yes", []],
    ["2.", []],
    ["item 2. yes", ["2+"]],
    ["item 2.", []],
    ["2. yes 3. no", ["2+ 3+ no"]],
    ["2. yes 3. no", [], { under: 2 }],
    ["all. yes", []],
    ["Thanks 2. yes", []],
    ["yes n 2. no", []],
    ["and 2. no", ["2-"]],
    ["and 2. no mistake", []],
    ["and 2. yes", ["2+"]],
    ["is 2. new", []],
  ])("a full stop behind a number: %j", (line, all, around) => {
    expect(ways(line, around)).toEqual(all);
  });

  test.each<[string, string[], Around?]>([
    ["1 is fixed", [""], mending],
    ["1 is fixed", []],
    ["2 is fixed", [], mending],
    ["1 and 2 are fixed", [], mending],
    ["2 yes, 1 done", ["2+"], mending],
    ["2 yes, 1 done", []],
    ["2 yes, 1 and 3 done", [], mending],
    ["new sheet attached", []],
    ["new sheet attached", [""], mending],
    ["new sheet attached", ["2-"], { under: 2 }],
    ["new sheet for 2 attached", ["2-"], mending],
    ["new sheet for 1 attached", [""], mending],
    ["new sheet for 1 and 2 attached", ["2-"], mending],
    ["new sheet for 3 attached", ["3-"], { under: 2 }],
    ["2 yes, new sheet attached", []],
    ["2 no, new sheet attached", ["2-"]],
    ["2 yes, 3 no, new sheet attached", ["2+ 3-"]],
    ["2 yes and new sheet for 3 attached", ["2+ 3-"], mending],
  ])("a sheet that comes, and what is mended: %j", (line, all, around) => {
    expect(ways(line, around)).toEqual(all);
  });

  test.each<[string, string[], Around?]>([
    ["dana yes yes", ["2+ 3+"], { names: ["Dana Whitlock"] }],
    ["yes and yes and yes", ["yes", "yes yes", "yes yes yes"]],
    ["yes and yes and yes", ["1+ 2+ 3+", "yes yes", "yes yes yes"], { open: [1, 2, 3] }],
    ["thanks yes and yes", ["yes", "yes yes"], mending],
    ["no, no", ["2- 3-", "no no"]],
    ["no no", ["2- 3-"]],
    ["2 yes because we call it that", []],
    ["2 yes, we call it that", ["2+ why"]],
    ["I was away and 2 yes", ["2+"]],
    ["2 no, my mistake, 3 yes", ["2- 3+"]],
    ["my answers", [""]],
    ["yes yes and the answer", []],
    ["yes, a family name", []],
  ])("a yes for each, and what stands between answers: %j", (line, all, around) => {
    expect(ways(line, around)).toEqual(all);
  });

  test("are fewer where something is quoted, since it may be a legend", () => {
    expect(ways("all good 2 yes", { ...mending, line: "“all good” 2 yes" })).toEqual([]);
    expect(ways("2 yes, all good", { ...mending, line: "2 yes, “all good”" })).toEqual(["2+ why"]);
  });
});

test("the same answers in another order, or twice, say the same", () => {
  const [two, three] = [
    { number: 2, is: true },
    { number: 3, is: false },
  ];
  expect(keyOf([three, two, two])).toBe(keyOf([two, three]));
  expect(keyOf([two])).not.toBe(keyOf([{ ...two, is: false }]));
});
