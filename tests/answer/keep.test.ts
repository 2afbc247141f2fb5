import * as fc from "fast-check";
import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { isAboutWord } from "../../src/checks/asked.ts";
import { everyProblem } from "../../src/judging/report.ts";
import { readLetter } from "../../src/reading/letter/letter.ts";
import { readKeepLines } from "../../src/reading/reply/keep-lines.ts";
import { remarksIn } from "../../src/reading/reply/remarks.ts";
import { catalogue } from "../make/config.ts";
import { reportOn, reports } from "../make/report.ts";
import { device } from "../make/sample.ts";

const hasRemarks = (quoted: string, text: string): boolean =>
  remarksIn(
    quoted.split("\n").map((line) => line.trim()),
    text,
  ).length > 0;
const hint = /nothing\s+but\s+a\s+line\s+that\s+says\s+“KEEP”\s+and\s+that\s+word/;

test("an answer tells how to keep a word where it asks about one, and only there", () => {
  fc.assert(
    fc.property(reports, (report) => {
      const asks = everyProblem(report).some((one) => one.verdict === "confirm" && isAboutWord(one));
      expect(hint.test(composeAnswer(report, catalogue).text)).toBe(asks);
    }),
  );
  const asking = reportOn([device({}, { "1": ["KITCHN", ""], "2": ["ALL", "OF"], "3": ["RECEPTIO", ""] })]);
  expect(everyProblem(asking).filter(isAboutWord)).toHaveLength(3);
  expect(composeAnswer(asking, catalogue).text).toMatch(hint);
});

test("no line of an answer keeps a word, quoted without a mark, whatever was asked about", () => {
  const asking = reportOn([device({}, { "1": ["KITCHN", ""], "2": ["ALL", "OF"], "3": ["LIGHTS O", ""] })]);
  fc.assert(
    fc.property(fc.oneof(reports, fc.constant(asking)), (report) => {
      const { text } = composeAnswer(report, catalogue);
      const words = text.match(/[\p{L}\p{N}']+/gu) ?? [];
      expect([...readKeepLines(text, { words, answer: "", subject: "", names: [] }).words]).toEqual([]);
    }),
  );
});

test("what Outlook quotes of an answer, or makes of its page as text, holds no word more; a remark does", async () => {
  await fc.assert(
    fc.asyncProperty(reports, fc.boolean(), async (report, isLinked) => {
      const { text, html } = composeAnswer(report, catalogue);
      const body = html.slice(html.indexOf("<body"));
      const page = isLinked ? body.replace(/[\w.]+@[\w.]+/g, '<a href="mailto:$&">$&</a>') : body;
      const flattened = async (given: string): Promise<string> => {
        const lines = ["From: a@b.example", "Content-Type: text/html; charset=utf-8", "", given];
        return (await readLetter(new TextEncoder().encode(lines.join("\r\n")))).text;
      };
      expect(hasRemarks(await flattened(page), text)).toBe(false);
      expect(hasRemarks(text, text)).toBe(false);
      expect(hasRemarks(text.replace(/(?<=\w+ \w+) (?=\w+ \w+$)/gm, "\n"), text)).toBe(false);
      expect(hasRemarks(await flattened(page.replace("<h2", "no, this is wrong<h2")), text)).toBe(
        page.includes("<h2"),
      );
      expect(hasRemarks(`${text}\nexchange it`, text)).toBe(true);
    }),
    { numRuns: 60 },
  );
});
