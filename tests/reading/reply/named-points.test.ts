import { describe, expect, test } from "vitest";
import { isOther, namesIn, notesIn, othersIn, questionsIn } from "../../../src/reading/reply/named-points.ts";

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

const whole = [
  "CONFIRM: questions to answer.",
  "",
  "hall plan.pdf",
  "Plate, W-1",
  "  1. Shorten it, and send the sheet again.",
  "W-2.pdf",
  "Device, W-2 position 1 of 2",
  "  2. “SALONA” in row 1 of button 1 looks misspelt.",
  "     If you mean SALOON, send the sheet again.",
  "lobby.pdf",
  "Device alone, W-3",
  "  3. Fill it in.",
  "foyer.pdf",
  "Device alone, W-4",
  "  4. The device is Chalk, but plate W-1 is Barley.",
].join("\n");

describe("what each open question says", () => {
  const asked = (open: readonly number[], answer: string) => [...questionsIn({ open, answer })];
  test("goes over lines that are set in by five, and leaves out the others", () => {
    expect(asked([2], whole)).toEqual([
      [2, "“SALONA” in row 1 of button 1 looks misspelt. If you mean SALOON, send the sheet again."],
    ]);
    expect(asked([2], "  2. Fill it in.\n    Soon.")).toEqual([[2, "Fill it in."]]);
  });
  test("has a number of four digits, at the beginning of its line", () => {
    expect(asked([1234, 2345], "1234. Fill it in.")).toEqual([[1234, "Fill it in."]]);
    expect(asked([12_345, 2345], "12345. Fill it in.")).toEqual([]);
    expect(asked([7], "See 7. Fill it in.")).toEqual([]);
  });
});

test("points worth knowing are those below that title", () => {
  const noted = (...lines: string[]) => notesIn(["  1. Fill it in.", ...lines].join("\n"));
  const below = ["  2. It is long.", "1234. It is short.", "12345. It is odd.", "See 3. of it."];
  expect(noted("WORTH KNOWING", ...below)).toEqual([2, 1234]);
  expect(noted("> WORTH KNOWING", ...below)).toEqual([2, 1234]);
  expect(noted("NOT WORTH KNOWING", ...below)).toEqual([]);
  expect(noted("WORTH KNOWING", "  2. It is long.", "QUESTIONS", "  3. Is it?")).toEqual([2]);
});

describe("a sheet that no question is about stands for its points", () => {
  const { withPoints, withSheets } = namesIn({ open: [2, 4], answer: whole });
  test.each([
    ["hall plan.pdf attached", "sheet for 1 attached"],
    ["hall plan sheet attached", "sheet for 1 attached"],
    ["plate sheet attached", "sheet for 1 attached"],
    ["the plate attached", "the sheet for 1 attached"],
    ["lobby sheet attached", "sheet for 3 attached"],
    ["lobby attached", "lobby attached"],
    ["W-2 attached", "W-2 attached"],
    ["foyer sheet attached", "foyer sheet attached"],
  ])("%s: %s", (line, read) => {
    expect(withPoints(line)).toBe(read);
  });
  test.each([
    ["sheets for the lobby and the foyer attached", "sheet attached"],
    ["W-2 attached", "sheet attached"],
    ["hall plan attached", "hall plan attached"],
    ["hall plan sheet and foyer sheet attached", "sheets attached"],
  ])("and is a sheet: %s: %s", (line, read) => {
    expect(withSheets(line)).toBe(read);
  });
  test("the plate is none where two plates were told of", () => {
    const two = whole.replace("Device alone, W-3", "Plate, W-3");
    expect(namesIn({ open: [2, 4], answer: two }).withPoints("the plate attached")).toBe(
      "the plate attached",
    );
  });
  test("what stands below a point tells of no plate, and a sheet without points stands for none", () => {
    const told = "lobby.pdf\n  1. Fill it in.\nPlate, W-1\nfoyer.pdf\nPlate, W-2";
    const { withPoints: read } = namesIn({ open: [], answer: told });
    expect(read("the plate attached")).toBe("the plate attached");
    expect(read("foyer sheet attached")).toBe("foyer sheet attached");
    expect(read("lobby sheet attached")).toBe("sheet for 1 attached");
  });
});

describe("names of sheets", () => {
  const names = (name: string) => namesIn({ open: [], answer: `${name}.pdf` }).withSheets;
  test.each([
    ["den", "den sheet attached", "sheet attached"],
    ["ab", "ab sheet attached", "ab sheet attached"],
    ["ab", "ab.pdf attached", "sheet attached"],
    ["ab 2", "ab 2 attached", "sheet attached"],
    ["den", "sheets for den attached", "sheet attached"],
    ["ab", "sheets for ab attached", "sheets for ab attached"],
  ])("%s: %s: %s", (name, line, read) => {
    expect(names(name)(line)).toBe(read);
  });
  test("are looked for in full", () => {
    const { withSheets } = namesIn({
      open: [],
      answer: "W-1.pdf\nW-1 pos 2.pdf\n  W-3.pdf\nSee W-4.pdf for more",
    });
    expect(withSheets("W-1 pos 2 attached")).toBe("sheet attached");
    expect(withSheets("W-3 attached")).toBe("sheet attached");
    expect(withSheets("W-4 attached")).toBe("W-4 attached");
  });
  test("nothing is named where no sheet is", () => {
    const { withSheets, withNumbers } = namesIn({ open: [], answer: "Fill it in." });
    expect(withSheets("the new one attached")).toBe("the new one attached");
    expect(withNumbers("the new one is right")).toBe("the new one is right");
  });
});

describe("the finish that one question alone is about", () => {
  const asks = (...points: string[]) => {
    const answer = points.map((one, at) => `  ${at + 2}. ${one}`).join("\n");
    return namesIn({ open: points.map((_, at) => at + 2), answer }).withNumbers;
  };
  const plum = "The device is Plum, but plate W-1 is Barley.";
  const chalk = "The finish is Chalk here and Slate on the other 3 devices of this order.";
  test("is that question", () => {
    expect(asks(plum)("plum on barley is right")).toBe("2 is right");
    expect(asks(chalk)("the Chalk is right")).toBe("2 is right");
    expect(asks(chalk, plum)("plum on barley is right")).toBe("plum on barley is right");
    expect(asks(`See: ${plum}`)("plum on barley is right")).toBe("plum on barley is right");
  });
});

test("each word in question stands for its own question", () => {
  const two = `${answer}\n  3. “COMDOR” looks misspelt.`;
  const { withNumbers } = namesIn({ open: [2, 3], answer: two });
  expect(withNumbers("Comdor is right, Salona is not")).toBe("3 is right, 2 is not");
});

describe("the word of a question beside the number of another", () => {
  const three = [answer, "  3. “COMDOR” looks misspelt.", "  4. “SALONA BAR” looks misspelt."].join("\n");
  const { areOthers } = namesIn({ open: [2, 3, 4], answer: three });
  test.each<[string, number[], boolean]>([
    ["2. COMDOR is right", [2], true],
    ["2 comdor: yes", [2], true],
    ["2 YES, 3 SALONA is right", [2, 3], true],
    ["2: COMDOR is right\n3: SALONA is right", [2, 3], true],
    ["2 SALONA BAR: yes", [2], true],
    ["Question two: COMDOR is right", [2], true],
    ["2. SALONA is right", [2], false],
    ["4 SALONA BAR: yes", [4], false],
    ["2 YES (B-3), 3 COMDOR yes", [2, 3], false],
    ["2, 3: yes, COMDOR and SALONA are right", [2, 3], false],
    ["COMDOR and SALONA are right", [2, 3], false],
    ["2 YES, as Comdors are", [2], false],
    ["Salona is a name, so 2 is right. Comdor is too", [2, 3], false],
  ])("%s", (line, numbers, are) => {
    const said = numbers.map((number) => ({ number, is: true }));
    expect(areOthers(line, said)).toBe(are);
    // A no leaves the question open, and may tell the right word.
    expect(
      areOthers(
        line,
        said.map(({ number }) => ({ number, is: false })),
      ),
    ).toBe(false);
  });
});

test("a line that only names a sheet or a point among its words begins none", () => {
  const { withPoints, withSheets } = namesIn({
    open: [],
    answer: "W-5.pdf is long.\nlobby.pdf\nSee 7. of our terms.\n12345. Odd.\n  1. Fill it in.",
  });
  expect(withSheets("W-5 attached")).toBe("W-5 attached");
  expect(withPoints("lobby sheet attached")).toBe("sheet for 1 attached");
});

test("where nothing is named or asked about, words stay", () => {
  const short = namesIn({ open: [], answer: "ab.pdf" });
  expect(short.withSheets("sheets for (2) attached")).toBe("sheets for (2) attached");
  expect(short.withWords("it is right")).toBe("it is right");
  expect(short.areOthers("2 YES, it is right", [{ number: 2, is: true }])).toBe(false);
});
