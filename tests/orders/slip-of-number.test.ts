import { expect, test } from "vitest";
import { isSlip } from "../../src/orders/slip-of-number.ts";

/** Whether two numbers are asked about in one project, and whether they are only where both came in one letter. */
test.each([
  ["EG-500", "GE-500", "always"],
  ["EG-500", "EQ-500", "always"],
  ["EG-500", "EG-5000", "always"],
  ["22-8147", "22-847", "always"],
  ["BW-2207", "BW-2270", "always"],
  ["22-8147", "22-8187", "together"],
  ["22-8147", "22-8247", "together"],
  // Numbers that count on, by ones or by floors, suffixes, buildings: common practice, no source.
  ["EG-500", "EG-501", "never"],
  ["4512", "4521", "never"],
  ["1019", "1020", "never"],
  ["EG-500-1", "EG-500-2", "never"],
  ["EG-500-1", "EG-500-10", "never"],
  ["EG-500", "EG-500-1", "never"],
  ["EG-500", "EG-500A", "never"],
  ["A-100", "B-100", "never"],
  ["NT-100", "ST-100", "never"],
  ["LK-101", "LK-301", "never"],
  ["LK-201", "LK-1201", "never"],
  ["EG-500", "EG-500", "never"],
  ["EG-500", "QQ-712", "never"],
  ["LK-1101", "LK-1301", "never"],
  ["LK-1129", "LK-1329", "never"],
  ["LK-1130", "LK-1330", "together"],
  ["12", "21", "never"],
  ["ABX1", "ABQ1", "always"],
  ["AB1", "AX1", "never"],
  ["ABX1", "AB1", "never"],
  ["NAB-FD", "NAF-BD", "never"],
  ["UNIT 102", "UNIT 120", "never"],
  ["UNIT 102", "UNIT 142", "never"],
  ["bw-2207", "BW-2270", "always"],
  ["PO 2207", "Job 2270", "always"],
  ["EGR-4512", "EG-4512", "always"],
  ["LE-4512", "LSE-4512", "always"],
  ["BW-2207", "BW-12207", "always"],
  ["AB-4512", "CB-4512", "always"],
  ["BW-250", "BW-1250", "always"],
  ["BW-201", "BW-2011", "always"],
  ["BW-2207", "BW-2217", "together"],
  ["BW-2207", "BW-2214", "never"],
  ["4512 A", "4512 Q", "never"],
  ["EA-4512", "EB-4512", "never"],
  ["BW-4512-A", "BW-4512-8", "never"],
  ["BW-11-450", "BW-11-50", "never"],
])("%s and %s are asked about %s", (one, other, when) => {
  const asked = { always: [true, true], together: [false, true], never: [false, false] }[when];
  expect([isSlip(one, other, false), isSlip(one, other, true)]).toEqual(asked);
  expect([isSlip(other, one, false), isSlip(other, one, true)]).toEqual(asked);
});
