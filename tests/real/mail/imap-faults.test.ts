import { beforeAll, describe, expect, test } from "vitest";
import { imapMailbox } from "../../../src/mail/imap.ts";
import { arrive, inboxOf, readOn, readOnce, serverOf, subjects, until } from "../rig/desk.ts";
import { plainLetter } from "../rig/letter.ts";
import type { Fault } from "../rig/proxy.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";

await withRig("a real mailbox is read, each letter once, although", (rig) => {
  const steps: [string, Fault["from"], RegExp][] = [
    ["at the greeting", "server", /OK .*Dovecot/],
    ["at the sign-in", "client", /AUTHENTICATE/],
    ["at its answer", "server", /OK .*Logged in/],
    ["when the folder is opened", "client", /SELECT/],
    ["when it is searched", "client", /UID SEARCH/],
    ["when letters are listed", "server", /RFC822\.SIZE/],
    ["within a letter", "server", /BODY\[\] \{/],
  ];

  /** Two letters lie there for all. */
  const user = "service@quillgate.example";
  beforeAll(async () => {
    await arrive(rig, user, "one");
    await arrive(rig, user, "two");
  });

  async function inbox(faults: readonly Fault[], silence?: number) {
    const proxy = await rig.proxy("imaps", { faults });
    const mailbox = imapMailbox(
      inboxOf(rig, {
        server: serverOf(rig, "imaps", { user, port: proxy.port }),
        ...(silence === undefined ? {} : { silence }),
      }),
    );
    return { proxy, mailbox };
  }

  const ways = ["drop", "reset", "halve", 150] as const;
  describe.each(ways)("the connection fails (%s)", (does) => {
    test.concurrent.each(steps)("%s", async (_, from, at) => {
      const { proxy, mailbox } = await inbox([{ from, at, does }]);
      expect(await subjects(await readOnce(mailbox))).toEqual(["one", "two"]);
      expect(proxy.faults).toEqual([]);
      await mailbox.close();
    });
  });

  describe("the connection fails and nobody says so", () => {
    test.concurrent.each(steps)("%s", async (_, from, at) => {
      const { proxy, mailbox } = await inbox([{ from, at, does: "stall" }], 500);
      expect(await subjects(await readOnce(mailbox))).toEqual(["one", "two"]);
      expect(proxy.faults).toEqual([]);
      await mailbox.close();
    });

    test("while there is nothing to say", async () => {
      const { proxy, mailbox } = await inbox([], 500);
      const { read, stop } = readOn(mailbox);
      proxy.faults.push({ from: "server", at: /\+ idling/, does: "stall", after: true });
      await until(() => proxy.faults.length === 0);
      await arrive(rig, user, "three");
      await until(() => read.includes("three"));
      expect(read).toEqual(["one", "two", "three"]);
      await stop();
    });
  });

  test("its server was killed and came back", async () => {
    const { read, stop } = readOn(imapMailbox(inboxOf(rig)));
    await arrive(rig, desk, "before the kill");
    await until(() => read.includes("before the kill"));
    await rig.kill9Imap();
    await rig.deliver(alice, desk, plainLetter("after the kill"));
    await rig.startImap();
    await until(() => read.includes("after the kill"));
    await stop();
    expect(read).toEqual(["before the kill", "after the kill"]);
  });
});
