import { expect, test } from "vitest";
import { isNoNumber } from "../../src/orders/no-number.ts";

test.each([
  "",
  "TBD",
  "verbal",
  "P.O. # pending",
  "Job no. TBD",
  "PO number: none",
  "No. 000",
  "0",
  "po",
  "NO",
  "no PO",
  "PO no.",
  "Order number",
  "XX",
])("“%s” is no number", (typed) => {
  expect(isNoNumber(typed)).toBe(true);
});

// Words that announce a number are left out in front of it only, and zeros only where nothing else is.
test.each(["XPO", "XNO", "0 JOB", "HOLD 2", "NO-1042", "100", "0010", "P.O. 0017", "Job TBD-2", "VERBAL 7"])(
  "“%s” is a number",
  (typed) => {
    expect(isNoNumber(typed)).toBe(false);
  },
);
