import { describe, expect, test } from "vitest";
import { isOther, namesIn, othersIn } from "../../../src/reading/reply/named-points.ts";

const answer = [
  "CONFIRM: see 7. of our terms.",
  "W-1.pdf",
  "  plan.pdf",
  "  1. Shorten it, and send the sheet again.",
  "  2. “SALONA” in row 1 of button 1 looks misspelt.",
  "1234. Fill it in.",
  "12345. Fill it in.",
].join("\n");

test("points of our answer that are no open questions are those at the beginning of its lines", () => {
  expect(othersIn({ open: [2], answer })).toEqual([1, 1234]);
  expect([1, 2, 3, 7].filter((number) => isOther(number, { open: [2], answer }))).toEqual([1]);
});

describe("a word that a question asks about", () => {
  const asked = (line: string, open = [2]) => namesIn({ open, answer: line }).words;
  test.each([
    ["  2. “SALONA” looks misspelt.", ["salona"]],
    ["See 2. “SALONA” above.", []],
    ["  3. “SALONA” looks misspelt.", []],
    ["  2. Fill it in.", []],
    ["  2. “AB” looks misspelt.", []],
    [`  2. “${"A".repeat(40)}” looks misspelt.`, ["a".repeat(40)]],
    [`  2. “${"A".repeat(41)}” looks misspelt.`, []],
  ])("%s", (line, words) => {
    expect(asked(line)).toEqual(words);
  });
  test("has a number of four digits at most", () => {
    expect(asked("1234. “SALONA” looks misspelt.", [1234])).toEqual(["salona"]);
    expect(asked("12345. “SALONA” looks misspelt.", [2345, 12_345])).toEqual([]);
  });
  test("stands for its question, if that is the only one about it", () => {
    const [once, twice] = [answer, `${answer}\n  3. “SALONA” looks misspelt.`].map((text) =>
      namesIn({ open: [2, 3], answer: text }),
    );
    expect(once?.withWords("Salona is right")).toBe("the word is right");
    expect(once?.withNumbers("“Salona” is right")).toBe("2 is right");
    expect(twice?.withNumbers("Salona is right")).toBe("Salona is right");
    expect(once?.withNumbers("Salonas are right, so is Dr. Salona")).toBe(
      "Salonas are right, so is Dr. Salona",
    );
  });
});

describe("a sheet that our answer names", () => {
  const { withSheets } = namesIn({ open: [2], answer });
  test.each([
    ["corrected W-1.pdf attached", "corrected sheet attached"],
    ["corrected sheet W-1 attached", "corrected sheet attached"],
    ["plan.pdf attached", "sheet attached"],
    ["the plan attached", "the plan attached"],
    ["W-12.pdf attached", "W-12.pdf attached"],
    ["CONFIRM attached", "CONFIRM attached"],
  ])("%s", (line, as) => {
    expect(withSheets(line)).toBe(as);
  });
  test("has a name of 81 characters at most", () => {
    const named = (name: string) => namesIn({ open: [], answer: `${name}.pdf` }).withSheets(`${name}.pdf`);
    expect(named(`W${"1".repeat(80)}`)).toBe("sheet");
    expect(named(`W${"1".repeat(81)}`)).toBe(`W${"1".repeat(81)}.pdf`);
    expect(namesIn({ open: [], answer: `${"long ".repeat(20)}W-1.pdf` }).withSheets("W-1.pdf")).toBe(
      "W-1.pdf",
    );
  });
});

describe("sheets of positions", () => {
  const [told, untold] = ["Device, W-1 position 1 of 2", "Device alone, W-1"].map((text) =>
    namesIn({ open: [2], answer: text }),
  );
  test.each([
    ["Sheets for pos 1 and pos 2 attached", "sheet attached"],
    ["Corrected pos 1 sheet attached", "Corrected sheet attached"],
    ["Attached is the new sheet for position 1.", "Attached is the new sheet."],
    ["The one in pos 1 is brass", "The one in pos 1 is brass"],
    ["sheet for pos 12", "sheet for pos 12"],
  ])("are sheets where our answer tells of positions: %s", (line, read) => {
    expect(told?.withSheets(line)).toBe(read);
    expect(untold?.withSheets(line)).toBe(line);
  });
});
