import { expect, test } from "vitest";
import { errorWords, reasonOf } from "../../src/mail/server.ts";

test.each([
  [
    "the server's words",
    { message: "failed", response: "550 5.1.1\r\n  no such person" },
    "550 5.1.1 no such person",
  ],
  ["the message", { message: "failed", response: undefined }, "failed"],
  ["the code of a failure without words", { message: "", code: "ECONNREFUSED" }, "ECONNREFUSED"],
  ["no more than 300 characters", { message: "x".repeat(400) }, "x".repeat(300)],
])("what went wrong is told by %s", (_, fields, words) => {
  expect(errorWords(Object.assign(new Error(), fields))).toBe(words);
});

test("what goes to the log holds no address", () => {
  expect(reasonOf(new Error("550 <alice@brightwire.example>: unknown"))).toBe("550 <(address)>: unknown");
});
