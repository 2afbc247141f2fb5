import { describe, expect, test } from "vitest";
import { plainly, read } from "./read-reply.ts";

const unread = { yes: [], no: [], person: true };

describe("answers in turn", () => {
  test("stand above a telephone's number", () => {
    expect(read("yes\nyes\n555-0142", { others: 0 })).toEqual(plainly([2, 3]));
  });
  test.each(["yes\nso no", "yes\nno, new sheet for 3 attached"])("are not %j", (text) => {
    expect(read(text, { others: 0 })).toEqual(unread);
  });
  test("may be joined", () => {
    expect(read("yes and yes", { others: 0 })).toEqual(plainly([2, 3]));
    expect(read("Both are right, so that is yes and yes.", { others: 0 })).toEqual(plainly([2, 3]));
    expect(read("no and no, new sheet attached", { others: 0 })).toEqual(unread);
    expect(read("yes and yes", { open: [2, 3, 4], others: 0 })).toEqual(unread);
    expect(read("yes and yes")).toEqual(unread);
  });
  test("may be two in one word", () => {
    expect(read("yes yes, yes", { open: [2, 3, 4], others: 0 })).toEqual(plainly([2, 3, 4]));
    expect(read("yes yes", { open: [2, 3, 4], others: 0 })).toEqual(unread);
  });
});

test("“the other two” are those that the reply has not named", () => {
  const three = { open: [2, 3, 4], others: 0 };
  expect(read("3 YES\nNew sheet for the other two follows.", three)).toEqual(plainly([3], [2, 4]));
  expect(read("3 YES\nThe other two points: new sheet follows.", three)).toEqual(plainly([3], [2, 4]));
  expect(read("New sheet for the other two follows.", three)).toMatchObject({ yes: [], no: [] });
  expect(read("2 NO, new sheet attached. The other two are right.")).toEqual(unread);
  expect(read("2 NO, new sheet attached. The other two are corrected.")).toEqual(plainly([], [2]));
});

test.each([
  "3 yes. Hold it, thanks for catching those.",
  "well, yes and no",
  "Yes and no.",
  "so DW: 3 YES",
  "2 and 3. not right",
])("%j answers nothing", (text) => {
  expect(read(text)).toEqual(unread);
});

test("a new sheet is for what has to be mended, and where nothing has, for the word in question", () => {
  expect(read("3 yes. New sheet attached.")).toEqual(plainly([3]));
  expect(read("3 yes. New sheet attached.", { others: 0 })).toEqual(unread);
  expect(read("2: no, redone and put right, new sheet attached. 3: yes")).toEqual(plainly([3], [2]));
});

test.each(["> Date: yesterday", "> To: eyes"])("a header that is quoted answers nothing: %s", (line) => {
  const quoted = "> 3. “SALONA” in row 1 of button 2 looks misspelt.";
  expect(read(`3 YES\n\n${quoted}\n${line}`)).toEqual(plainly([3]));
});

test("a sentence that a program has broken goes on, whatever ends before it", () => {
  const line = "3 YES, the owner of the house has told us. It is a name";
  expect(read(`${line}\nof a boat`)).toEqual(plainly([3]));
});
