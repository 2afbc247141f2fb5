import { expect, test } from "vitest";
import { composeAnswer } from "../../src/answer/answer.ts";
import { answeredProofs, proofsFor } from "../../src/answer/enclosures.ts";
import { shownOf } from "../../src/answer/shown-stations.ts";
import type { Report } from "../../src/judging/report.ts";
import { catalogue } from "../make/config.ts";
import { reportOn, sentEarlier } from "../make/report.ts";
import { aloneDevice } from "../make/sample.ts";

const rest = "have not changed. They are not shown again.";
const devices = (count: number) =>
  Array.from({ length: count }, (_, n) =>
    aloneDevice({ id: `1/${n}`, file: `${n}.pdf`, mark: `S-${101 + n}` }),
  );
const [changed = aloneDevice()] = devices(1);
const marksOf = (report: Report): string[] =>
  report.orders.flatMap((one) => shownOf(one, report).order.stations.map(({ mark }) => mark));
const textOf = (report: Report): string => composeAnswer(report, catalogue).text.replaceAll(/\s+/g, " ");

test("an order of twenty stations is shown whole with every answer", () => {
  const report = reportOn([changed], { earlier: sentEarlier(devices(20)) });
  expect(marksOf(report)).toHaveLength(20);
  expect(textOf(report)).not.toContain(rest);
});

test("of a larger order an answer shows the stations to which sheets came, and counts the rest", async () => {
  const report = reportOn([changed], { earlier: sentEarlier(devices(21)) });
  expect(report.verdict).toBe("pass");
  expect(marksOf(report)).toEqual(["S-101"]);
  expect(textOf(report)).toContain(`20 more stations of this order ${rest}`);
  const [[answered], [whole]] = [await answeredProofs(report, catalogue), await proofsFor(report, catalogue)];
  expect(whole?.bytes.length).toBeGreaterThan(2 * (answered?.bytes.length ?? 0));
});

test("of a larger order an answer shows a station of earlier letters that has something to mend", () => {
  const earlier = sentEarlier(devices(25)).map((sheet, n) =>
    n === 7
      ? aloneDevice({ id: sheet.id, file: sheet.file, mark: "S-108" }, { "1": ["CONFERENCE ROOMS", ""] })
      : sheet,
  );
  const report = reportOn([changed], { earlier });
  expect(report.verdict).toBe("fail");
  expect(marksOf(report)).toEqual(["S-108", "S-101"]);
});

test("a larger order comes whole with its first letter, and where a letter changes none of its stations", () => {
  expect(marksOf(reportOn(devices(25)))).toHaveLength(25);
  const report = reportOn([], { earlier: sentEarlier(devices(25)) });
  const [order] = reportOn(devices(25)).orders;
  expect(order && shownOf(order, report).left).toBe(0);
});
