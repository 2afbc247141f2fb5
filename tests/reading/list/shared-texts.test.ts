import { expect, test } from "vitest";
import { sharedTexts } from "../../../src/reading/list/workbook/shared-texts.ts";

const shared = (...items: string[]) =>
  sharedTexts(`<sst>${items.map((item) => `<si>${item}</si>`).join("")}</sst>`).map(
    ({ text, struck }) => `${text}${struck ? ", struck" : ""}`,
  );

// ECMA-376-1 §18.4
test.each<[string, string[], string[]]>([
  ["texts", ["<t>ONE</t>", "<t>TWO</t>"], ["ONE", "TWO"]],
  ["a text in parts", ["<r><t>ON</t></r><r><t>E</t></r>"], ["ONE"]],
  ["an empty one", ["", "<t>TWO</t>"], ["", "TWO"]],
  [
    "one of which a part is struck out",
    ["<t>ONE</t>", "<r><rPr><strike/></rPr><t>TWO</t></r>", "<t>X</t>"],
    ["ONE", "TWO, struck", "X"],
  ],
  ["one that is said not to be struck out", ['<r><rPr><strike val="0"/></rPr><t>ONE</t></r>'], ["ONE"]],
  ["one with a guide how to say it", ["<t>ONE</t><rPh><t>won</t></rPh><t>S</t>"], ["ONES"]],
  ["words outside of the text", ["so <t>ONE</t> so"], ["ONE"]],
  ["what XML cannot hold", ["<t>A_x000D_B_x00e9_ _x12_</t>"], ["A\rBé _x12_"]],
])("shared are %s", (_, items, texts) => {
  expect(shared(...items)).toEqual(texts);
});

test("what stands before all texts is none", () => {
  expect(sharedTexts("<sst><strike/><t>ONE</t><si><t>TWO</t></si></sst>")).toEqual([
    { text: "TWO", struck: false },
  ]);
});
