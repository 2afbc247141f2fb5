import { describe, expect, test } from "vitest";
import {
  forwardedIn,
  foundIn,
  readDeliveryReport,
  repliesToInvitation,
} from "../../../src/reading/letter/machine-report.ts";
import { bytesOf, filePart, forwarded, mixed, multipart } from "../../make/mime.ts";

/** A delivery report with these fields of a recipient. RFC 3464 §2.3 */
const report = (...fields: string[]): Buffer =>
  bytesOf(
    multipart(
      "b",
      "report",
      ["", "Your letter did not arrive."],
      [
        "Content-Type: message/delivery-status",
        "",
        "Reporting-MTA: dns; mx.brightwire.example",
        "",
        ...fields,
      ],
    ),
  );

describe("a delivery report says", () => {
  test.each([
    ["that a letter came back", ["Action: failed"], true],
    ["the same in capitals, with blanks", ["ACTION : Failed"], true],
    ["that a letter is late", ["Action: delayed"], false],
    ["that it was passed on", ["Action: relayed"], false],
    ["that it reached one of two", ["Action: delivered", "", "Action: failed"], true],
    ["nothing of what became of it, which counts as a failure", ["Status: 5.1.1"], true],
    ["only in another field that it failed", ["Action: delayed", "X-Action: failed"], false],
  ])("%s", (_, fields, failed) => {
    expect(readDeliveryReport(report(...fields)).failed).toBe(failed);
  });

  test("that a letter came back, if it is in free words", () => {
    const bytes = bytesOf(["Subject: Undelivered", "", "Action: delayed"]);
    expect(readDeliveryReport(bytes)).toEqual({ failed: true, words: "", recipients: [] });
  });

  test.each([
    ["with its kind", ["Diagnostic-Code: smtp; 550 no such user"], "550 no such user"],
    ["without its kind", ["Diagnostic-Code: no such user"], "no such user"],
    ["over two lines", ["Diagnostic-Code: smtp; 550 no", "\tsuch user"], "550 no such user"],
    ["not at all", ["X-Diagnostic-Code: smtp; 550"], ""],
    [
      "at length, of which 300 characters count",
      [`Diagnostic-Code: smtp; ${"x".repeat(301)}`],
      "x".repeat(300),
    ],
  ])("why, %s", (_, fields, words) => {
    expect(readDeliveryReport(report("Action: failed", ...fields)).words).toBe(words);
  });
});

describe("what is looked for in a report is found", () => {
  const ids = /^message-id: (\S+)/gim;

  test("in its header, and in what it repeats, each once", () => {
    const back = forwarded(["Message-ID: <b@x.example>", "", "Hello"]);
    const bytes = bytesOf(["Message-ID: <a@x.example>", ...mixed("b", back, back)]);
    expect(foundIn(bytes, ids)).toEqual(["<a@x.example>", "<b@x.example>"]);
  });

  test("up to the fiftieth", () => {
    const lines = Array.from({ length: 60 }, (_, i) => `Message-ID: <${i}@x.example>`);
    expect(foundIn(bytesOf(lines), ids)).toHaveLength(50);
  });

  const line = "Message-ID: <a@x.example>";
  test.each([
    ["64 KB of its header", 65_536, (fill: string) => [`X: ${fill.slice(3)}`, line, "", ""]],
    ["256 KB of a part", 262_144, (fill: string) => ["", fill, line]],
  ])("within %s, and no byte further", (_, most, letter) => {
    const fill = "x".repeat(most - line.length - 2);
    expect(foundIn(bytesOf(letter(fill)), ids)).toEqual(["<a@x.example>"]);
    expect(foundIn(bytesOf(letter(`${fill}x`)), ids)).toEqual(["<a@x.example"]);
  });
});

test.each([
  ["a reply", "REPLY", true],
  ["a counter-proposal", "counter", true],
  ["an invitation", "REQUEST", false],
  ["a word that only begins so", "REPLYING", false],
])("%s to an invitation is known by its method", (_, method, replies) => {
  const lines = ["BEGIN:VCALENDAR", `METHOD:${method}`, "END:VCALENDAR"];
  expect(repliesToInvitation(bytesOf(["Content-Type: text/calendar", "", ...lines]))).toBe(replies);
  expect(repliesToInvitation(bytesOf(["Content-Type: text/plain", "", ...lines]))).toBe(false);
});

test("a letter that is forwarded whole is one, and a report's part of another type is not", () => {
  const status = ["Content-Type: message/delivery-status", "", "Action: failed"];
  const inner = bytesOf(mixed("b", forwarded(["Subject: a", "", "x"]), status, filePart("a.pdf")));
  expect(forwardedIn(inner).map(String)).toEqual(["Subject: a\r\n\r\nx"]);
  const other = ["Content-Type: message/global", "", "Subject: b", "", "y"];
  expect(forwardedIn(bytesOf(mixed("b", other))).map(String)).toEqual(["Subject: b\r\n\r\ny"]);
});
