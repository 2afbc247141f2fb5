import * as fc from "fast-check";
import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { maySettle } from "../../src/checks/asked.ts";
import { everyProblem } from "../../src/judging/report.ts";
import { readLetter } from "../../src/reading/letter/letter.ts";
import { answersBeside } from "../../src/reading/reply/answers-beside.ts";
import { remarksIn } from "../../src/reading/reply/remarks.ts";
import { catalogue } from "../make/config.ts";
import { reports } from "../make/report.ts";

const hasRemarks = (quoted: string, text: string): boolean =>
  remarksIn(
    quoted.split("\n").map((line) => line.trim()),
    text,
  ).length > 0;

const hint = /^ +Or reply “\d+ YES” if it is/m;

test("an answer tells how to answer where a word of its sender settles a question, and only there", () => {
  fc.assert(
    fc.property(reports, (report) => {
      const asks = everyProblem(report).some(maySettle);
      const says = hint.test(composeAnswer(report, catalogue).text);
      // One who has to be looked at first is asked nothing.
      expect(says).toBe(asks && !report.held);
    }),
  );
});

test("no line of an answer answers a question, quoted without a mark", () => {
  fc.assert(
    fc.property(reports, (report) => {
      const { text, subject } = composeAnswer(report, catalogue);
      const open = Array.from({ length: 60 }, (_, i) => i + 1);
      const asked = {
        open,
        others: 0,
        answer: text,
        subject,
        isFurniture: () => false,
        names: [],
        bringsSheets: false,
        isOnSheets: () => false,
        sheetsNamed: () => undefined,
      };
      const { answers } = answersBeside(text, asked, () => []);
      expect([...answers.yes, ...answers.no]).toEqual([]);
    }),
  );
});

test("what Outlook quotes of an answer, or makes of its page as text, holds no word more; a remark does", async () => {
  await fc.assert(
    fc.asyncProperty(reports, fc.boolean(), async (report, isLinked) => {
      const { text, html } = composeAnswer(report, catalogue, undefined, {
        ways: { reference: "34K-7CD9T" },
      });
      const body = html.slice(html.indexOf("<body"));
      const page = isLinked ? body.replace(/(?<![\w.:])[\w.]+@[\w.]+/g, '<a href="mailto:$&">$&</a>') : body;
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
