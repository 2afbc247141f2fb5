import { expect, test } from "vitest";
import { plain, tokensIn } from "../../../src/reading/reply/tokens.ts";

test.each([
  ["Point - Answer:", "answers"],
  ["my point - answer", "my point - answer"],
  ["✅ 2 yes", "2 yes"],
  ["nº 2: yes", "number 2: yes"],
  ["№ 2", "number 2"],
  ["plan°2", "plan°2"],
  ["no 1204: yes", "no 1204: yes"],
  ["2\uFE0F\u20E3 yes", "2 yes"],
  ["it’s `yes´", "it is 'yes'"],
  ["“2” is *yes*", "2 is yes"],
  ["• 2 yes", "2 yes"],
  ["a) 2 yes", "2 yes"],
  ["see a) 2", "see a) 2"],
  ["e) yes", "e) yes"],
  ["[DW] 2 yes", "2 yes"],
  ["[D] 2 yes", "[D] 2 yes"],
  ["[DWXYZ] 2 yes", "[DWXYZ] 2 yes"],
  ["w/ thanks", "with thanks"],
  ["RE: 2", "re 2"],
  ["S.No. 2", "number 2"],
  ["Sl no 1204", "Sl no 1204"],
  ["that would be a yes", "that is a yes"],
  ["so it would be a yes", "so it would be a yes"],
  ["it would be a yesterday", "it would be a yesterday"],
  ["Qs. 2", "number 2"],
  ["q2", "number 2"],
  ["faq2", "faq2"],
  ["2.: yes", "2: yes"],
  ["yes x3", "all three yes"],
  ["oh yes x3", "oh yes x3"],
  ["yes x3 or so", "yes x3 or so"],
  ["three times yes!", "all three yes"],
  ["three times yes or no", "three times yes or no"],
  ["punto 2 yes", "number 2 yes"],
  ["punto 1204 yes", "punto 1204 yes"],
  ["no 2: yes, no 3: no", "number 2: yes, number 3: no"],
  ["no 2: yesterday", "no 2: yesterday"],
  ["no 2 is right", "number 2 is right"],
  ["and no 2 is right", "and no 2 is right"],
  ["the owners' name", "the owners name"],
  ["2's a yes", "2 is a yes"],
  ["2yes, 3n", "2 yes, 3 n"],
  ["2nd", "2nd"],
  ["so since the 1890s", "so for generations"],
  ["since 2310", "since 2310"],
  ["since 19995", "since 19995"],
  ["longsince 1890", "longsince 1890"],
  ["Mr. Whitlock said", "the owner said"],
  ["mr whitlock", "mr whitlock"],
  ["HMr. Whitlock", "HMr. Whitlock"],
  ["yyeesss", "yes"],
  ["yesss", "yes"],
  ["eyes", "eyes"],
  ["nooo", "no"],
  ["noon", "noon"],
  ["there's one", "there is one"],
  ["the owner's word", "the owner 's word"],
  ["the bits are", "the bits are"],
  ["i'm", "i am"],
  ["ask him", "ask him"],
  ["an image", "an image"],
  ["theyres and youres", "theyres and youres"],
  ["give it to Ivey", "give it to Ivey"],
  ["im text", "im text"],
  ["you're, they're, we're", "you are, they are, we are"],
  ["we've", "we have"],
  ["don't, don´t, don’t, don`t", "do not, do not, do not, do not"],
  ["isn't", "is not"],
  ["thanks xx", "thanks"],
  ["thanks xx and", "thanks xx and"],
  ["Morning, all", "hello, all"],
  ["this morning, all", "this morning, all"],
  ["  so   it   is ", "so it is"],
  ["point - answer 2", "point - answer 2"],
  ["so ✅ 2", "so ✅ 2"],
  ["2 - yes", "2 - yes"],
  ["see [DW] 2", "see [DW] 2"],
  ["how/why", "how/why"],
  ["some more: 2", "some more: 2"],
  ["this no 2", "this no 2"],
  ["on the plan. 2 yes", "on the plan. 2 yes"],
  ["oh three times yes", "oh three times yes"],
  ["in punto 2 yes", "in punto 2 yes"],
  ["no 1204 is right", "no 1204 is right"],
  ["eyesss", "eyesss"],
  ["yessir", "yessir"],
  ["casinoo", "casinoo"],
  ["O'Shea", "O'Shea"],
  ["allyou're, allthey're, owe're, owe've", "allyou're, allthey're, owe're, owe've"],
  ["london't, donts", "london't, donts"],
  ["o'sullivan", "o'sullivan"],
  ["we'red", "we'red"],
  ["irisn't, isnts", "irisn't, isnts"],
])("“%s” is read as “%s”", (line, is) => {
  expect(plain(line)).toBe(is);
});

const kinds = (line: string, ...names: string[]) =>
  tokensIn(line, new Set(names)).map(({ kind, text }) => `${kind} ${text}`);

test.each([
  ["2", "Num 2"],
  ["1204", "Num 1204"],
  ["12045", "Other 12045"],
  ["twelve", "Count twelve"],
  ["thirteen", "Other thirteen"],
  ["first", "Nth first"],
  ["3rd", "Nth 3rd"],
  ["6th", "Other 6th"],
  ["blast", "Other blast"],
  ["lastly", "Other lastly"],
  ["🙂", "Smile 🙂"],
  [":-)", "Smile :-)"],
  ["!!", "Stop !!"],
  [";", "Stop ;"],
  ["...", "Mark ..."],
  ["=>", "Mark =>"],
  ["1.5", "Other 1.5"],
  ["2a", "Other 2a"],
  [".!", "Other .!"],
  ["!.", "Other !."],
  ["!..", "Other !.."],
])("%s is a word of the kind and text “%s”", (word, is) => {
  expect(kinds(word)).toEqual([is]);
});

test("names of the sender, and marks that follow each other, are one token each", () => {
  expect(kinds("2 - : 3 dana", "dana")).toEqual(["Num 2", "Mark :", "Num 3", "Sender dana"]);
  expect(kinds("dana")).toEqual(["Other dana"]);
});

test("a token knows its place in the line", () => {
  expect(tokensIn("2  YES", new Set()).map(({ from, to }) => [from, to])).toEqual([
    [0, 1],
    [3, 6],
  ]);
});

test.each([
  ["YES", ["Yes yes"]],
  ["Thanks, Marta", ["Polite thanks", "Mark ,", "Sender marta"]],
  ["thanks, marta", ["Polite thanks", "Mark ,", "Other marta"]],
  ["yes Marta", ["Yes yes", "Other marta"]],
  ["thanks yes Marta", ["Polite thanks", "Yes yes", "Other marta"]],
  ["my colleague Marta", ["My my", "Person colleague", "Person marta"]],
  ["my colleague, Marta", ["My my", "Person colleague", "Mark ,", "Other marta"]],
  ["thanks Kitchen", ["Polite thanks", "Thing kitchen"]],
  ["my colleague Kitchen", ["My my", "Person colleague", "Thing kitchen"]],
  ["the fjords", ["The the", "Thing fjords"]],
  ["the fjordy", ["The the", "Other fjordy"]],
])("“%s” is read word by word as %j", (line, words) => {
  expect(kinds(line)).toEqual(words);
});

test("people are of the kind of one of them", () => {
  expect(kinds("the architects")).toEqual(["The the", "Person architects"]);
});
