import { expect, test } from "vitest";
import { smtpSender } from "../../../src/mail/smtp.ts";
import { answerOf, arrive, hasCome, senderOf, serverOf, tokensOf, until, witnessOf } from "../rig/desk.ts";
import { subjectOf } from "../rig/letter.ts";
import { oauthClient } from "../rig/oauth.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";

await withRig("an answer", (rig) => {
  const starttls = { security: "starttls", port: rig.ports.submission } as const;
  test.each([
    ["a password over TLS", {}],
    ["a password over STARTTLS", starttls],
    ["a client's own token over TLS", { secret: tokensOf(rig) }],
    [
      "a token for a refresh token over STARTTLS",
      { ...starttls, secret: tokensOf(rig, { refreshToken: oauthClient.refreshToken }) },
    ],
  ])("is sent, byte for byte, after signing in by %s", async (way, over) => {
    const sender = smtpSender(senderOf(rig, { server: serverOf(rig, "smtps", over) }));
    const answer = answerOf(`by ${way}`);
    expect(await sender.send(answer)).toEqual({ kind: "sent", words: expect.stringMatching(/^250 /) });
    const find = async () => (await rig.lettersOf(alice)).find((text) => subjectOf(text) === `by ${way}`);
    await until(async () => (await find()) !== undefined);
    const came = (await find())?.replaceAll(/\r?\n/g, "\r\n");
    expect(came).toContain(Buffer.from(answer.bytes).toString());
    expect(came).toContain("Return-Path: <bounces@quillgate.example>");
  });

  test("is sent after signing in by OAUTHBEARER where the server has nothing older", async () => {
    const { port, replaced } = await rig.proxy("smtps");
    replaced.set(" XOAUTH2", "");
    const server = serverOf(rig, "smtps", { port, secret: tokensOf(rig) });
    expect((await smtpSender(senderOf(rig, { server })).send(answerOf("by bearer"))).kind).toBe("sent");
  });

  test("gets a new token when the one at hand is withdrawn", async () => {
    const server = serverOf(rig, "smtps", { secret: tokensOf(rig) });
    const sender = smtpSender(senderOf(rig, { server }));
    await sender.send(answerOf("with the first token"));
    rig.oauth.revokeAll();
    expect((await sender.send(answerOf("with the next token"))).kind).toBe("sent");
  });

  test("waits when the server cannot prove who it is", async () => {
    const strange = await rig.proxy("smtps", { strange: true });
    const { authority: _, ...unknown } = serverOf(rig, "smtps");
    const servers = [unknown, { ...unknown, ...starttls }, serverOf(rig, "smtps", { port: strange.port })];
    const outcomes = [];
    for (const server of servers)
      outcomes.push(await smtpSender(senderOf(rig, { server })).send(answerOf("to a stranger")));
    expect(outcomes).toEqual([
      { kind: "later", words: expect.stringMatching(/unable to verify/) },
      { kind: "later", words: expect.stringMatching(/unable to verify/) },
      { kind: "later", words: expect.stringMatching(/does not match certificate's altnames/) },
    ]);
  });

  test.each([
    ["refuses the password", { secret: { password: "wrong" } }, /^535 /],
    ["is not there", { port: 1 }, /ECONNREFUSED/],
  ])("waits when the server %s", async (_, over, words) => {
    const sender = smtpSender(senderOf(rig, { server: serverOf(rig, "smtps", over) }));
    expect(await sender.send(answerOf("not sent"))).toEqual({
      kind: "later",
      words: expect.stringMatching(words),
    });
  });

  test("waits while the server is stopped, and goes when it is back", async () => {
    const sender = smtpSender(senderOf(rig));
    await rig.stopSmtp();
    expect((await sender.send(answerOf("while stopped"))).kind).toBe("later");
    await rig.startSmtp();
    expect((await sender.send(answerOf("when back"))).kind).toBe("sent");
  });

  test.each([
    `bob@fernhill.example>\r\nRCPT TO:<${alice}`,
    `bob@fernhill.example, ${alice}`,
    `Bob <${alice}>`,
  ])("goes to one address and to nothing else: %j", async (recipient) => {
    const sender = smtpSender(senderOf(rig));
    expect((await sender.send(answerOf("two at once", recipient))).kind).toBe("refused");
    expect(await hasCome(rig, alice, "two at once")).toBe(false);
  });

  test("is refused when it is larger than the server takes", async () => {
    const bytes = Buffer.alloc(60_000_001, "a");
    const outcome = await smtpSender(senderOf(rig)).send({ ...answerOf("too large"), bytes });
    expect(outcome.kind).toBe("refused");
  });

  test("is put into the folder of answers sent, where its absence proves nothing", async () => {
    const sent = { mailbox: serverOf(rig, "imaps"), folder: "Sent" };
    const sender = smtpSender(senderOf(rig, { sent: { ...sent, filledBy: "us" } }));
    const answer = answerOf("with a copy");
    await sender.send(answer);
    await sender.close();
    expect((await rig.lettersOf(desk, "Sent")).map(subjectOf)).toEqual(["with a copy"]);
    expect(await sender.find(answer.messageId)).toBe(true);
    expect(await sender.find("<never-sent@quillgate.example>")).toBe(undefined);
    // a server that keeps its own copies keeps them all
    const kept = smtpSender(senderOf(rig, { sent: { ...sent, filledBy: "server" } }));
    expect(await kept.find("<never-sent@quillgate.example>")).toBe(false);
  });

  test("is looked for among the witness copies", async () => {
    const sender = smtpSender(senderOf(rig, { witness: witnessOf(rig) }));
    await arrive(rig, "witness@quillgate.example", "seen");
    expect(await sender.find(answerOf("seen").messageId)).toBe(true);
    expect(await sender.find(answerOf("unseen").messageId)).toBe(false);
  });

  test("is not looked for where nobody can look, and later where that fails", async () => {
    const shut = witnessOf(rig, { secret: { password: "wrong" } });
    await expect(smtpSender(senderOf(rig, { witness: shut })).find("<a@b.example>")).rejects.toThrow();
    expect(await smtpSender(senderOf(rig)).find("<a@b.example>")).toBe(undefined);
  });
});
