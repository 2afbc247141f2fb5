import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { makeReport } from "../../src/judging/report.ts";
import type { Statement } from "../../src/trade/statement.ts";
import { catalogue } from "../make/config.ts";
import { completeOrder } from "../make/sample.ts";

const reportWith = (statements: readonly Statement[]) =>
  makeReport({ files: [], sheets: completeOrder(), statements }, catalogue);

test("an order does not pass beside a statement, and nobody is told that there is nothing more to do", () => {
  const report = reportWith([{ kind: "said", where: "text", words: "Do not cut yet." }]);
  expect([report.verdict, ...report.orders.map(({ verdict }) => verdict)]).toEqual(["person", "person"]);
  const { text } = composeAnswer(report, catalogue);
  expect(text).toContain("“Do not cut yet.”");
  expect(text).not.toContain("You need do nothing more");
});

test("it passes beside none", () => {
  const report = reportWith([]);
  expect([report.verdict, ...report.orders.map(({ verdict }) => verdict)]).toEqual(["pass", "pass"]);
  expect(composeAnswer(report, catalogue).text).toContain("You need do nothing more");
});
