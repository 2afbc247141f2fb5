import { createServer, type Socket } from "node:net";
import { expect, onTestFinished, test } from "vitest";
import { openImap } from "../../src/mail/imap-connection.ts";
import { smtpSender } from "../../src/mail/smtp.ts";

/** A server in the clear that answers each line; returns its port and what was said to it. */
async function plainServer(greeting: string, answer: (line: string) => string) {
  const heard: string[] = [];
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on("error", () => {});
    socket.write(`${greeting}\r\n`);
    socket.on("data", (bytes) => {
      for (const line of bytes.toString().split("\r\n").filter(Boolean)) {
        heard.push(line);
        socket.write(`${answer(line)}\r\n`);
      }
    });
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  onTestFinished(() => {
    for (const socket of sockets) socket.destroy();
    server.close();
  });
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("no port");
  return { heard, port: address.port };
}

const login = {
  host: "127.0.0.1",
  security: "starttls",
  user: "orders@quillgate.example",
  secret: { password: "orders-plainly" },
} as const;

test("a mailbox whose server offers no encryption is told no password", async () => {
  const { heard, port } = await plainServer("* OK [CAPABILITY IMAP4rev1 AUTH=PLAIN] ready", (line) => {
    const [tag, command] = line.split(" ");
    return command === "CAPABILITY"
      ? `* CAPABILITY IMAP4rev1 AUTH=PLAIN\r\n${tag} OK done`
      : `${tag} OK done`;
  });
  await expect(openImap({ ...login, port })).rejects.toThrow(/STARTTLS/);
  expect(heard.filter((line) => /AUTHENTICATE|LOGIN/.test(line))).toEqual([]);
});

test("a sender whose server offers no encryption is told no password, and the answer waits", async () => {
  const { heard, port } = await plainServer("220 ready", (line) =>
    line.startsWith("EHLO") ? "250-ready\r\n250 AUTH PLAIN" : "502 no such command",
  );
  const sender = smtpSender({
    server: { ...login, port },
    bounces: "bounces@quillgate.example",
    log: { info() {}, warn() {} },
  });
  const bytes = Buffer.from("Subject: x\r\n\r\nx\r\n");
  const outcome = await sender.send({
    messageId: "<x@quillgate.example>",
    recipient: "alice@brightwire.example",
    bytes,
  });
  expect(outcome.kind).toBe("later");
  expect(heard.map((line) => line.split(" ")[0])).toEqual(["EHLO", "STARTTLS"]);
});
