import { expect, test } from "vitest";
import { outcomeOf, type SmtpError, type Transaction } from "../../src/mail/smtp-outcome.ts";

const recipient = "alice@brightwire.example";

const failed = (fields: Partial<SmtpError>): SmtpError => Object.assign(new Error("failed"), fields);

const reply = (responseCode: number, more: Partial<SmtpError> = {}): SmtpError =>
  failed({ responseCode, response: `${responseCode} words`, ...more });

const went = (fields: Partial<Transaction>): Transaction => ({
  recipient,
  refused: [],
  handedOver: false,
  ...fields,
});

test.each([
  ["sent", went({ taken: "250 queued", handedOver: true }), "250 queued"],
  ["refused", went({ error: reply(550), handedOver: true }), "550 words"],
  ["later", went({ error: reply(451), handedOver: true }), "451 words"],
  ["later", went({ error: reply(421), handedOver: true }), "421 words"],
  ["later", went({ error: reply(503) }), "503 words"],
  ["refused", went({ error: reply(553, { command: "MAIL FROM" }) }), "553 words"],
  ["refused", went({ error: failed({ code: "EMESSAGE", command: "MAIL FROM" }) }), "failed"],
  ["refused", went({ refused: [reply(550, { recipient })], error: failed({}) }), "550 words"],
  ["later", went({ refused: [reply(450, { recipient })], error: failed({}) }), "450 words"],
  ["unknown", went({ error: failed({ code: "ECONNECTION" }), handedOver: true }), "failed"],
  ["unknown", went({ error: failed({ code: "ETIMEDOUT" }), handedOver: true }), "failed"],
  ["later", went({ error: failed({ code: "ECONNECTION" }) }), "failed"],
] as const)("%s: %j", (kind, transaction, words) => {
  expect(outcomeOf(transaction)).toEqual({ kind, words });
});

test("the recipient's refusal counts, whatever the witness's was", () => {
  const refused = [reply(451, { recipient: "witness@quillgate.example" }), reply(550, { recipient })];
  expect(outcomeOf(went({ refused, error: reply(451) })).kind).toBe("refused");
});

test("a refused copy: the answer is sent, and who was not reached is told", () => {
  const copies = ["ana@quillgate.example"];
  const refused = [reply(550, { recipient: copies[0] })];
  expect(outcomeOf(went({ copies, refused, taken: "250 queued", handedOver: true }))).toEqual({
    kind: "sent",
    words: "250 queued",
    unreached: "ana@quillgate.example: 550 words",
  });
});

test("a refused copy does not hide that the recipient or the witness was refused", () => {
  const copies = ["ana@quillgate.example"];
  const copy = reply(550, { recipient: copies[0] });
  const witness = reply(451, { recipient: "witness@quillgate.example" });
  expect(outcomeOf(went({ copies, refused: [copy, witness], error: failed({}) })).words).toContain("witness");
  const own = reply(550, { recipient });
  expect(outcomeOf(went({ copies, refused: [copy, own], error: failed({}) })).kind).toBe("refused");
});

test("an answer whose copy was refused, and whose end may have left, is unknown", () => {
  const copies = ["ana@quillgate.example"];
  const refused = [reply(550, { recipient: copies[0] })];
  const lost = went({ copies, refused, error: failed({ code: "ECONNECTION" }), handedOver: true });
  expect(outcomeOf(lost).kind).toBe("unknown");
});

test("a witness refused for good makes the answer wait, not fail", () => {
  const refused = [reply(550, { recipient: "witness@quillgate.example" })];
  expect(outcomeOf(went({ refused, error: failed({ code: "ESTREAM" }) }))).toEqual({
    kind: "later",
    words: "not sent, for the witness was refused: 550 words",
  });
});
