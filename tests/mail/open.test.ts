import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { openMailbox, openSender, type Surroundings } from "../../src/mail/open.ts";
import { imapMailboxSettings, smtpSenderSettings } from "../../src/settings/mail.ts";

function surroundings(environment: Record<string, string> = {}): Surroundings {
  const folder = mkdtempSync(join(tmpdir(), "burin-open-"));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return {
    log: { info() {}, warn() {} },
    clock: { now: () => new Date() },
    chance: () => 0,
    environment,
    beside: (path) => join(folder, path),
  };
}

const imap = { host: "imap.quillgate.example", user: "orders@quillgate.example" };
const mailbox = (more: object) =>
  imapMailboxSettings.parse({ name: "orders", begin: "2026-03-01", imap: { ...imap, ...more } });

test("a password that the environment lacks is named", async () => {
  await expect(openMailbox(mailbox({ password_env: "DESK_PASSWORD" }), surroundings())).rejects.toThrow(
    "the environment has no DESK_PASSWORD (password)",
  );
});

test("a file with a secret that cannot be read is named", async () => {
  const around = surroundings();
  await expect(openMailbox(mailbox({ password_file: "password" }), around)).rejects.toThrow(
    `cannot read ${around.beside("password")} (password)`,
  );
});

test("the next refresh token takes the place of the last one in its file", async () => {
  const around = surroundings();
  writeFileSync(around.beside("refresh"), "first-refresh\n");
  const server = createServer((_, response) => {
    response.end(JSON.stringify({ access_token: "token", refresh_token: "second-refresh" }));
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => void server.close());
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  const written = smtpSenderSettings.parse({
    smtp: {
      host: "127.0.0.1",
      port: 1,
      user: imap.user,
      oauth: {
        token_url: `http://127.0.0.1:${address.port}/`,
        client_id: "desk",
        refresh_token_file: "refresh",
      },
    },
    bounces: "bounces@quillgate.example",
  });
  const sender = await openSender(written, around);
  const bytes = Buffer.from("x");
  await sender.send({ messageId: "<x@quillgate.example>", recipient: "alice@brightwire.example", bytes });
  expect(readFileSync(around.beside("refresh"), "utf8")).toBe("second-refresh\n");
});

test("a mailbox and a sender open without a word to their servers", async () => {
  const around = surroundings({ DESK_PASSWORD: "orders-plainly" });
  writeFileSync(around.beside("secret"), "desk-plainly\n");
  const oauth = {
    token_url: "https://login.quillgate.example/token",
    client_id: "desk",
    client_secret_file: "secret",
  };
  const opened = await openMailbox(mailbox({ password_env: "DESK_PASSWORD" }), around);
  expect(opened.name).toBe("orders");
  await opened.close();
  const written = smtpSenderSettings.parse({
    smtp: { host: "smtp.quillgate.example", user: imap.user, oauth },
    bounces: "bounces@quillgate.example",
    sent: { imap: { ...imap, oauth }, filled_by: "burin" },
  });
  await (await openSender(written, around)).close();
  expect(readFileSync(around.beside("secret"), "utf8")).toBe("desk-plainly\n");
});
