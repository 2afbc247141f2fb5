import { expect, test } from "vitest";
import { isForPerson, needsPerson } from "../../src/judging/for-person.ts";
import type { Verdict } from "../../src/trade/problem.ts";
import { reportOn } from "../make/report.ts";
import { aloneDevice } from "../make/sample.ts";

test.each<[string, string, Verdict, boolean]>([
  ["that needs a person is for one", "spelling", "person", true],
  ["that its sender alone may answer is for none", "spelling", "confirm", false],
  ["that its sender alone may not answer is for a person", "order-number-near-miss", "confirm", true],
  ["of a sheet that has to come again is for none", "finish-not-made", "fail", false],
  ["that is only told is for none", "sheet-replaced", "pass", false],
])("a problem %s", (_what, check, verdict, is) => {
  expect(isForPerson({ check, verdict })).toBe(is);
});

test("a letter needs a person if it is held, or if anything in it does", () => {
  expect(needsPerson(reportOn([aloneDevice()]))).toBe(false);
  expect(needsPerson(reportOn([aloneDevice()], { held: true }))).toBe(true);
  expect(needsPerson(reportOn([aloneDevice({ finish: "Mauve" })]))).toBe(false);
  const waits = aloneDevice({ project: "Quarry Street School - ON HOLD" });
  expect(needsPerson(reportOn([waits]))).toBe(true);
});
