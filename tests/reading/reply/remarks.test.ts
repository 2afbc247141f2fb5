import { expect, test } from "vitest";
import { remarksIn } from "../../../src/reading/reply/remarks.ts";

const text = "Send a sheet again only if you change it.\nNo power, no light.";

test("a quotation says nothing more, wherever its lines are broken", () => {
  expect(remarksIn(["Send a sheet again only if you", "change", "it. No power, no", "light."], text)).toEqual(
    [],
  );
});

test("a word alone that speaks against something is its sender's, though the quoted text has it elsewhere", () => {
  expect(remarksIn(["Send a sheet again only if you", "no", "it."], text)).not.toEqual([]);
  expect(remarksIn(["change"], text)).not.toEqual([]);
});

test("words that the quoted text has not, or has less often, are its sender's", () => {
  expect(remarksIn(["No power, no light. In red."], text)).toContain("in red");
  expect(remarksIn(["No no no power"], text)).not.toEqual([]);
});
