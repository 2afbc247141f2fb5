import * as fc from "fast-check";
import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import type { Report } from "../../src/judging/report.ts";
import { catalogue } from "../make/config.ts";
import { reportOn, reports } from "../make/report.ts";
import { aloneDevice, blankDevice, completeOrder, plate } from "../make/sample.ts";

function subjectOf(report: Report): string {
  return composeAnswer(report, catalogue).subject;
}

test("a subject is one line of bounded length", () => {
  fc.assert(
    fc.property(reports, (report) => {
      expect(subjectOf(report)).toMatch(/^[^\p{C}\u2028\u2029]{1,150}$/u);
    }),
  );
});

test("what is no character is shown as such", () => {
  const sheet = aloneDevice({ order: "BW-\u{3347A}\uE000\uD800" }, { "1": ["RECEPTION", ""] });
  expect(subjectOf(reportOn([sheet]))).toBe("FAIL: order BW-\uFFFD\uFFFD\uFFFD, 1 to fix");
});

test("a header smuggled into an order number stays in the subject", () => {
  const sheet = aloneDevice({ order: "BW-1\r\nBcc: x@y.example" }, { "1": ["RECEPTION", ""] });
  expect(subjectOf(reportOn([sheet]))).toBe("FAIL: order BW-1  Bcc: x@y.example, 1 to fix");
});

test("an order number without end leaves room for the rest", () => {
  const sheet = aloneDevice({ order: "9".repeat(400) }, { "1": ["RECEPTION", ""] });
  expect(subjectOf(reportOn([sheet]))).toMatch(/^FAIL: order 9{26}…9{13}, 1 to fix$/);
});

test("the verdict, the orders and the count are in the subject", () => {
  expect(subjectOf(reportOn(completeOrder()))).toBe("PASS: order BW-2207, nothing to fix");
  expect(subjectOf(reportOn([plate()]))).toBe("WAITING: order BW-2207, 4 sheets to come");
  expect(subjectOf(reportOn([...completeOrder(), aloneDevice({ order: "KM-31" })]))).toBe(
    "PASS: orders BW-2207 and KM-31, nothing to fix",
  );
});

test("of many orders some are named and all counted", () => {
  const sheets = ["KM-31", "TR-840", "Q-7", "ZZ-19555"].map((order, i) =>
    aloneDevice({ order, id: `1/${i}`, file: `${order}.pdf`, project: `Site ${order}` }),
  );
  expect(subjectOf(reportOn(sheets))).toBe("PASS: orders KM-31, TR-840, Q-7 and 1 more, nothing to fix");
});

test("sheets without an order number are told by their file names", () => {
  expect(subjectOf(reportOn([blankDevice()]))).toBe("FAIL: S-104 pos 2.pdf, 1 to fix");
  expect(subjectOf(reportOn([aloneDevice({ order: "TBD" })]))).toBe("FAIL: S-110.pdf, 1 to fix");
});

test("a letter without a sheet has a subject", () => {
  expect(subjectOf(reportOn([]))).toBe("A PERSON WILL LOOK AT THIS: no order sheet came with this letter");
  expect(subjectOf(reportOn([], { reply: true }))).toBe(
    "A PERSON WILL LOOK AT THIS: thank you for your reply",
  );
  expect(subjectOf(reportOn([], { files: [{ id: "1/1", file: "a.pdf", kind: "locked" }] }))).toBe(
    "FAIL: 1 to fix; no sheet that could be read came with this letter",
  );
});
