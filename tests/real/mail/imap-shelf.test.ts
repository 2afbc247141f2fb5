import { expect, test } from "vitest";
import { imapMailbox } from "../../../src/mail/imap.ts";
import { arrive, asPerson, inboxOf, readOnce, serverOf } from "../rig/desk.ts";
import { withRig } from "../rig/with-rig.ts";

await withRig("a letter in a real mailbox is put on its shelf", (rig) => {
  /** Subjects and keywords in a folder. */
  const shelf = (user: string, folder: string): Promise<string> =>
    asPerson(rig, user, async (client) => {
      const opened = await client.mailboxOpen(folder).catch(() => undefined);
      if (opened === undefined || opened.exists === 0) return "";
      const rows = await client.fetchAll("1:*", { flags: true, envelope: true });
      return rows
        .map(({ flags, envelope }) => [envelope?.subject, ...(flags ?? [])].join(" "))
        .join(", ")
        .replaceAll(" \\Recent", "");
    });

  test("by a keyword and a folder that is made when needed, and twice does no harm", async () => {
    const user = "orders@quillgate.example";
    await arrive(rig, user, "a letter");
    const mailbox = imapMailbox(inboxOf(rig, { shelves: { passed: "Desk/Passed" } }));
    const [mail] = await readOnce(mailbox);
    await mail?.shelve("waiting");
    await mail?.shelve("waiting");
    expect(await shelf(user, "INBOX")).toBe("a letter BurinWaiting");
    await mail?.shelve("passed");
    await mail?.shelve("passed");
    expect(await shelf(user, "INBOX")).toBe("");
    expect(await shelf(user, "Desk/Passed")).toBe("a letter BurinPassed");
    await mailbox.close();
  });

  test.each([
    [
      "by copy and removal where the server cannot move",
      "bob@fernhill.example",
      [" MOVE"],
      ["", "a letter BurinPerson"],
    ],
    [
      "by keyword alone where no letter can be removed alone",
      "dana@oakmoor.example",
      [" MOVE", " UIDPLUS"],
      ["a letter BurinPerson", ""],
    ],
    ["by folder alone where there are no keywords", "alice@brightwire.example", ["\\*"], ["", "a letter"]],
    [
      "not at all where neither can be",
      "service@quillgate.example",
      [" MOVE", " UIDPLUS", "\\*"],
      ["a letter", ""],
    ],
  ])("%s", async (_, user, without, lies) => {
    await arrive(rig, user, "a letter");
    const { port, replaced } = await rig.proxy("imaps");
    for (const word of without) replaced.set(word, "");
    const server = serverOf(rig, "imaps", { user, port });
    const mailbox = imapMailbox(inboxOf(rig, { server, shelves: { person: "Person" } }));
    const [mail] = await readOnce(mailbox);
    await mail?.shelve("person");
    await mail?.shelve("person");
    await mailbox.close();
    expect([await shelf(user, "INBOX"), await shelf(user, "Person")]).toEqual(lies);
  });
});
