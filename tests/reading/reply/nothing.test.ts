import { expect, test } from "vitest";
import { takenBack } from "../../../src/reading/reply/nothing.ts";
import type { OwnLine } from "../../../src/reading/reply/own-lines.ts";

function read(lines: readonly (string | OwnLine)[], words: readonly number[] = [4, 5]) {
  const own = lines.map((one) => (typeof one === "string" ? { line: one, afterSeveral: false } : one));
  const { nothing, left } = takenBack(own, { words, names: ["Dana Whitlock"], answer: "" });
  return { nothing: [...nothing], left: left.map(({ line }) => line) };
}

test.each<[string, number[], string[]]>([
  ["4 NOTHING", [4], []],
  ["4: Nothing.", [4], []],
  ["4. nothing", [4], []],
  ["#4 - nothing!", [4], []],
  ["4, 5 nothing", [4, 5], []],
  ["4 and 5: NOTHING", [4, 5], []],
  ["4 NOTHING, 5 NOTHING", [4, 5], []],
  ["4\nNOTHING", [4], []],
  ["1 YES, 4 NOTHING", [4], ["1 YES"]],
  ["1 YES and 4 nothing.", [4], ["1 YES"]],
  ["4 NOTHING. 1 YES", [4], ["1 YES"]],
  ["4 NOTHING and 1 YES", [4], ["1 YES"]],
])("%j takes words back", (line, nothing, left) => {
  expect(read([line])).toEqual({ nothing, left });
});

test.each([
  "3 NOTHING",
  "3, 4 NOTHING",
  "4 nothing wrong here",
  "Button 4 nothing",
  "4 is nothing",
  "14 NOTHING",
  "NOTHING",
  "4",
])("%j takes no words back", (line) => {
  expect(read([line])).toEqual({ nothing: [], left: [line] });
});

test("a bare word stands for the point that is quoted above it", () => {
  const under = { line: "nothing", under: 4, afterSeveral: false };
  expect(read([under, { ...under, under: 3 }])).toEqual({ nothing: [4], left: ["nothing"] });
});

test("nothing is read where no words wait, nor below somebody else's name", () => {
  expect(read(["4 NOTHING"], [])).toEqual({ nothing: [], left: ["4 NOTHING"] });
  const lines = ["5 NOTHING", "From: Eve Marsh <eve@stranger.example>", "4 NOTHING"];
  expect(read(lines)).toEqual({ nothing: [5], left: lines.slice(1) });
});
