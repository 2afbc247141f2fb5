import { execFile } from "node:child_process";
import { promisify } from "node:util";
import { expect, test } from "vitest";
import { imapMailbox } from "../../../src/mail/imap.ts";
import {
  arrive,
  asPerson,
  inboxOf,
  readOn,
  readOnce,
  serverOf,
  subjects,
  tokensOf,
  until,
} from "../rig/desk.ts";
import { plainLetter } from "../rig/letter.ts";
import { oauthClient } from "../rig/oauth.ts";
import { alice, desk, passwordOf } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";

await withRig("a real mailbox", (rig) => {
  /** The inbox of somebody whom no other test uses. */
  const inboxOfUser = (user: string) => inboxOf(rig, { server: serverOf(rig, "imaps", { user }) });

  const starttls = { security: "starttls", port: rig.ports.imap } as const;
  test.each([
    ["a password over TLS", {}],
    ["a password over STARTTLS", starttls],
    ["a client's own token over TLS", { secret: tokensOf(rig) }],
    [
      "a token for a refresh token over STARTTLS",
      { ...starttls, secret: tokensOf(rig, { refreshToken: oauthClient.refreshToken }) },
    ],
  ])("is read after signing in by %s", async (way, over) => {
    await arrive(rig, desk, `by ${way}`);
    const mailbox = imapMailbox(inboxOf(rig, { server: serverOf(rig, "imaps", over) }));
    expect((await subjects(await readOnce(mailbox))).at(-1)).toBe(`by ${way}`);
    await mailbox.close();
  });

  test("is not read when the server cannot prove who it is", async () => {
    const strange = await rig.proxy("imaps", { strange: true });
    const { authority: _, ...unknown } = serverOf(rig, "imaps");
    const servers = [unknown, { ...unknown, ...starttls }, serverOf(rig, "imaps", { port: strange.port })];
    const why: string[] = [];
    for (const server of servers) {
      const mailbox = imapMailbox(inboxOf(rig, { server }));
      await readOnce(mailbox).catch((error: Error) => why.push(error.message));
      await mailbox.close();
    }
    expect(why).toEqual([
      expect.stringMatching(/unable to verify/),
      expect.stringMatching(/unable to verify/),
      expect.stringMatching(/does not match certificate's altnames/),
    ]);
  });

  test("gets a new token when the one at hand is withdrawn", async () => {
    const { port, faults } = await rig.proxy("imaps");
    const server = serverOf(rig, "imaps", { port, secret: tokensOf(rig) });
    const { read, stop } = readOn(imapMailbox(inboxOf(rig, { server })));
    await arrive(rig, desk, "before the withdrawal");
    await until(() => read.includes("before the withdrawal"));
    const granted = rig.oauth.granted.length;
    rig.oauth.revokeAll();
    faults.push({ from: "server", at: /EXISTS/, does: "drop" });
    await arrive(rig, desk, "after the withdrawal");
    await until(() => read.includes("after the withdrawal"));
    expect(rig.oauth.granted.length).toBe(granted + 1);
    await stop();
  });

  test("wakes the desk when a letter arrives", async () => {
    const user = "service@quillgate.example";
    const { at, stop } = readOn(imapMailbox(inboxOfUser(user)));
    await arrive(rig, user, "first");
    await until(() => at.has("first"));
    const waits: number[] = [];
    for (let i = 0; i < 8; i++) {
      await rig.deliver(alice, user, plainLetter(`wake ${i}`));
      const sent = performance.now();
      await until(() => at.has(`wake ${i}`));
      waits.push((at.get(`wake ${i}`) ?? 0) - sent);
    }
    await stop();
    waits.sort((a, b) => a - b);
    const share = (part: number) => Math.round(waits[Math.ceil(part * waits.length) - 1] ?? 0);
    console.info(`from delivery to the desk: median ${share(0.5)} ms, p95 ${share(0.95)} ms`);
  });

  test("is read again, the last 30 days of it, when its UIDs have lost their meaning", async () => {
    const user = "bob@fernhill.example";
    const { read, stop } = readOn(imapMailbox(inboxOfUser(user)));
    await arrive(rig, user, "old");
    await until(() => read.length === 1);
    await rig.changeUidValidity(user, "INBOX", 1_234_567);
    await arrive(rig, user, "new");
    await until(() => read.includes("new"));
    expect(read).toEqual(["old", "old", "new"]);
    await stop();
  });

  test("is read behind the mark, and from the beginning when the mark has lost its meaning", async () => {
    const mailbox = imapMailbox(inboxOf(rig));
    const all = await readOnce(mailbox);
    const first = all[0]?.mark ?? { validity: "", uid: 0 };
    expect((await readOnce(mailbox, first)).map((mail) => mail.mark)).toEqual(
      all.slice(1).map((mail) => mail.mark),
    );
    expect(await readOnce(mailbox, all.at(-1)?.mark)).toEqual([]);
    expect(await readOnce(mailbox, { ...first, validity: "other" })).toHaveLength(all.length);
    await mailbox.close();
  });

  test("leaves letters alone that arrived before the day on which the desk began", async () => {
    const mailbox = imapMailbox(inboxOf(rig, { begin: new Date(Date.now() + 2 * 86_400_000) }));
    expect(await readOnce(mailbox)).toEqual([]);
    await mailbox.close();
  });

  test("says of a letter moved or deleted meanwhile that it is gone", async () => {
    const user = "dana@oakmoor.example";
    for (const subject of ["kept", "deleted", "moved"]) await arrive(rig, user, subject);
    const mailbox = imapMailbox(inboxOfUser(user));
    const mails = await readOnce(mailbox);
    await asPerson(rig, user, async (client) => {
      await client.mailboxOpen("INBOX");
      await client.messageDelete("2", { uid: true });
      await client.messageMove("3", "Sent", { uid: true });
    });
    expect(await subjects(mails)).toEqual(["kept", undefined, undefined]);
    for (const mail of mails) await mail.shelve("passed");
    await mailbox.close();
  });

  test("costs by what is new", async () => {
    const user = "orders@larchgate.example";
    await rig.lay(
      user,
      Array.from({ length: 5000 }, (_, i) => plainLetter(`old ${i}`)),
    );
    const look = () => asPerson(rig, user, (client) => client.mailboxOpen("INBOX"));
    // Dovecot's own first look at thousands of new files is not what is measured
    const validity = String((await look()).uidValidity);
    await rig.deliver(alice, user, plainLetter("new"));
    await until(async () => (await look()).exists === 5001);
    const start = performance.now();
    const mailbox = imapMailbox(inboxOfUser(user));
    const mails = await readOnce(mailbox, { validity, uid: 5000 });
    console.info(`of 5,001 letters the new one was found in ${Math.round(performance.now() - start)} ms`);
    expect(await subjects(mails)).toEqual(["new"]);
    await mailbox.close();
  });

  test("gives a letter of 25 MB in little more memory than the letter takes", async () => {
    const user = "witness@quillgate.example";
    const line = `${"A".repeat(76)}\r\n`;
    await arrive(rig, user, "big", line.repeat(Math.ceil(25e6 / line.length)));
    const script = new URL("../rig/peak.ts", import.meta.url).pathname;
    const login = [String(rig.ports.imaps), user, passwordOf(user), rig.authority];
    const { stdout } = await promisify(execFile)(process.execPath, [script, ...login]);
    const { bytes = 0, ms, beforeMB = 0, peakMB = 0 } = JSON.parse(stdout) as Record<string, number>;
    console.info(
      `letter of ${bytes} bytes in ${ms} ms, memory ${beforeMB} MB before, ${peakMB} MB at its peak`,
    );
    expect(bytes).toBeGreaterThan(25e6);
    expect(peakMB - beforeMB).toBeLessThan(100);
  });
});
