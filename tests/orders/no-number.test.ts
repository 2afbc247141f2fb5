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
  "per e-mail",
  "E-mail",
  "by phone",
  "FM-XX",
  "FM-xxx.",
  "4512-##",
  "PO ____",
])("“%s” is no number", (typed) => {
  expect(isNoNumber(typed)).toBe(true);
});

// Words that announce a number are left out in front of it only, and zeros only where nothing else is.
test.each([
  "XPO",
  "XNO",
  "0 JOB",
  "HOLD 2",
  "NO-1042",
  "100",
  "0010",
  "P.O. 0017",
  "Job TBD-2",
  "VERBAL 7",
  "MAIL-3",
  "PHONE 4",
  "AXX",
  "FM-X",
  "XX-4",
  "45#12",
])("“%s” is a number", (typed) => {
  expect(isNoNumber(typed)).toBe(false);
});
