import { expect, test } from "vitest";
import type { z } from "zod";
import { imapMailboxSettings, smtpSenderSettings } from "../../src/settings/mail.ts";

const mailbox = {
  name: "orders",
  begin: "2026-03-01",
  imap: { host: "imap.quillgate.example", user: "orders@quillgate.example", password_env: "DESK_PASSWORD" },
};

/** Paths and words of what is wrong. */
function faults(schema: z.ZodType, value: unknown): string[] {
  const read = schema.safeParse(value);
  return read.success ? [] : read.error.issues.map(({ path, message }) => `${path.join(".")}: ${message}`);
}

const withImap = (more: object) => ({ ...mailbox, imap: { ...mailbox.imap, ...more } });

test("a mailbox needs a name, a day, a server and one way to sign in", () => {
  expect(imapMailboxSettings.parse(mailbox)).toEqual({
    ...mailbox,
    begin: new Date("2026-03-01T00:00:00Z"),
    imap: { ...mailbox.imap, port: 993, security: "tls" },
    folder: "INBOX",
    poll_seconds: 90,
    shelves: {},
  });
});

const oauth = { token_url: "https://login.quillgate.example/token", client_id: "desk" };

test.each([
  ["two ways to sign in", { password_file: "password" }, "imap: needs exactly one of"],
  ["a connection in the clear", { security: "none" }, "imap.security: "],
  ["a password in the settings", { password: "orders-plainly" }, "imap: "],
  [
    "a token server in the clear",
    { password_env: undefined, oauth: { ...oauth, token_url: "http://login.quillgate.example/token" } },
    "imap.oauth.token_url: has to begin with https:",
  ],
  [
    "a secret from two places",
    { password_env: undefined, oauth: { ...oauth, client_secret_env: "A", client_secret_file: "a" } },
    "imap.oauth.client_secret_file: client_secret_env or client_secret_file, not both",
  ],
])("%s is a fault", (_, more, words) => {
  expect(faults(imapMailboxSettings, withImap(more))).toEqual([expect.stringContaining(words)]);
});

test("a day that is none is a fault", () => {
  expect(faults(imapMailboxSettings, { ...mailbox, begin: "soon" })).toEqual([
    "begin: not a day such as 2026-03-01",
  ]);
});

test("a witness and a folder of answers sent have servers of their own", () => {
  const server = { ...mailbox.imap, password_env: undefined, oauth };
  const written = {
    smtp: { ...server, security: "starttls", port: 587 },
    bounces: "bounces@quillgate.example",
    witness: { address: "witness@quillgate.example", imap: server },
    sent: { imap: server, filled_by: "server" },
  };
  expect(faults(smtpSenderSettings, written)).toEqual([]);
  expect(faults(smtpSenderSettings, { ...written, bounces: "bounces" })).toHaveLength(1);
});
