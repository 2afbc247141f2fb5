import { expect, test } from "vitest";
import { cancelledIn, mayCancel } from "../../../src/reading/reply/cancels.ts";

test.each([
  ["CANCEL S-104", "S-104"],
  ["CANCEL S-104 – S-106", "S-104 – S-106"],
  ["Please cancel order BW-2207.", "order BW-2207"],
  ["Hi, please cancel S-104. Thanks!", "S-104"],
  ["- *Cancel* S-104", "S-104"],
  ["• Cancel: S-104", "S-104"],
  ["We hereby withdraw S-104", "S-104"],
  ["I’d like to cancel S-104", "S-104"],
  ["I´d like to cancel S-104", "S-104"],
  ["  - cancel  S-104 ", "S-104"],
  ["We need to withdraw position 2 of S-104", "position 2 of S-104"],
  ["Cancellation of S-104", "S-104"],
  ["S-104 is cancelled", "S-104"],
  ["S-104 and S-105 are hereby withdrawn.", "S-104 and S-105"],
  ["Bitte S-104 stornieren", "S-104"],
  ["Hiermit storniere ich S-104", "S-104"],
  ["Storno S-104", "S-104"],
  ["Veuillez annuler S-104 svp", "S-104"],
  ["Favor de cancelar S-104, gracias", "S-104"],
  [`CANCEL ${"x".repeat(153)}`, "x".repeat(153)],
])("%j takes back what it names", (line, what) => {
  expect(cancelledIn(line)).toBe(what);
  expect(mayCancel(`Hello,\n${line}`)).toBe(true);
});

test.each([
  "CANCEL S-104?",
  "Can we cancel S-104?",
  "S-104: CANCEL",
  "CANCEL",
  "Do not cancel S-104",
  "Bitte S-104 stornieren Sie nicht",
  "S-104 stornierend",
  "S-104 is cancelled by mistake",
  "S-104 was withdrawn",
  "We may cancel S-104",
  "S-104 was cancelled by mistake",
  "The client wants to cancel S-104",
  "If it is late, cancel S-104",
  `CANCEL ${"x".repeat(154)}`,
])("%j takes nothing back", (line) => {
  expect(cancelledIn(line)).toBeUndefined();
});
