import { expect, test } from "vitest";
import { isNever } from "../../src/checks/no-legend.ts";

// Common practice, no source. Each is never cut, but is no more than a part of the legend behind it.
test.each([
  ["n/a", "N/A HALL"],
  ["(TBD)", "(EAST)"],
  ["[ tbd ]", "[T] BD"],
  [" see (DWG) A-201", "STUDY (DWG) A-201"],
  ["TBD (by owner)", "(TBDBY OWNER)"],
  ["to  be determined", "TO BE DETERMINED NOW"],
  ["TBD by owner", "TBD OWNER"],
  ["tbc per arch", "TBC PERGOLA"],
  ["T.B.D. -- by owner", "TBDBY"],
  ["TBA, pending", "NOT TBA PENDING"],
  ["to be confirmed with client", "TO BE OR NOT"],
  ["to be named later", "TO BE NAMED BYRON"],
  ["to be advised", "NOT TO BE ADVISED"],
  ["see dwg", "I SEE DWG"],
  ["SEE PLAN A-201", "SEE PLAN A-201 LEFT"],
  ["per the schedule #3", "SUPER THE SCHEDULE"],
  ["as per note 12.45", "AS PER NOTE 12.4567"],
  ["AS SHOWN", "AS SHOWER"],
  ["refer to arch AB-5", "REFER TO ARCH ABC-5"],
  ["qty", "QTY LAMPS"],
  ["quantity", "THE QUANTITY"],
  ["QUANTITY: 100", "QUANTITY: 1000"],
  ["typ.", "TYPING"],
  ["TYP OF 120", "TYP OF 1200"],
  ["typical x 4", "ATYPICAL X 4"],
  ["typ each", "TYP EACHES"],
  ["(12 ea)", "A 12 EA"],
  ["3 pcs.", "3 PCS LEFT"],
  ["120 each", "1200 EACH"],
  ["xxx", "XX"],
  ["XXXX", "EXXXX"],
  ["xxxxx", "XXXXX-RAY"],
  ["button 1", "BUTTON 1 ON"],
  ["btn #12", "MY BTN"],
  ["gang", "GANGWAY"],
  ["legend2", "LEGEND2A"],
  ['"', 'HALL "'],
  ["”", "” HALL"],
  ["--", "-"],
  ["???", "?"],
  ["...", "HALL..."],
  ["___", "A_"],
])("“%s” stands for a legend, and “%s” is one", (never, legend) => {
  expect([isNever(never), isNever(legend)]).toEqual([true, false]);
});

test("whatever follows SAME AS or LIKE is no legend either", () => {
  expect(["same as S-103", "Like as above", "SAME AS"].map(isNever)).toEqual([true, true, true]);
  expect(["SAME ASPECT", "THE SAME AS", "LIKE"].map(isNever)).toEqual([false, false, false]);
});
