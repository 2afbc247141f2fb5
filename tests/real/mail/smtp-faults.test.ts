import { describe, expect, test } from "vitest";
import { smtpSender } from "../../../src/mail/smtp.ts";
import type { Sending } from "../../../src/ports/sender.ts";
import { answerOf, comes, hasCome, senderOf, serverOf, until, witnessOf } from "../rig/desk.ts";
import { plainLetter } from "../rig/letter.ts";
import type { Fault } from "../rig/proxy.ts";
import { alice } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";

await withRig("an answer whose sending goes wrong", (rig) => {
  const witness = witnessOf(rig);

  /** A sender with a witness, whose connections fail as said. */
  async function failing(fault: Fault, silence?: number) {
    const proxy = await rig.proxy("smtps", { faults: [fault] });
    const server = serverOf(rig, "smtps", { port: proxy.port });
    const sender = smtpSender(
      senderOf(rig, { server, witness, ...(silence === undefined ? {} : { silence, patience: silence }) }),
    );
    return { proxy, sender };
  }

  test.each([
    ["later", "temp", "451 4.3.0"],
    ["later", "grey", "450 4.2.0"],
    ["later", "full", "452 4.2.2"],
    ["later", "shut", "421 4.3.2"],
    ["refused", "gone", "550 5.1.1"],
  ])(
    "is %s when the server says so of its recipient (%s), and leaves no witness",
    async (kind, name, words) => {
      const sender = smtpSender(senderOf(rig, { witness }));
      const answer = answerOf(`to ${name}`, `${name}@fault.example`);
      expect(await sender.send(answer)).toEqual({ kind, words: expect.stringContaining(words) });
      expect(await hasCome(rig, witness.address, `to ${name}`)).toBe(false);
      expect(await sender.find(answer.messageId)).toBe(false);
    },
  );

  test("waits, and nobody gets it, when the witness is refused", async () => {
    const sender = smtpSender(senderOf(rig, { witness: { ...witness, address: "full@fault.example" } }));
    expect(await sender.send(answerOf("without witness"))).toEqual({
      kind: "later",
      words: expect.stringMatching(/witness was refused: 452 4\.2\.2/),
    });
    expect(await hasCome(rig, alice, "without witness")).toBe(false);
  });

  test("is sent when only a copy is refused, once, and says who was not reached", async () => {
    const sender = smtpSender(senderOf(rig, { witness }));
    const answer = { ...answerOf("a copy refused"), copies: ["gone@fault.example"] };
    expect(await sender.send(answer)).toMatchObject({
      kind: "sent",
      unreached: expect.stringMatching(/^gone@fault\.example: 550 5\.1\.1/),
    });
    await comes(rig, alice, "a copy refused");
    expect(await sender.find(answer.messageId)).toBe(true);
  });

  test("goes to nobody when its recipient is refused, although its copy is not", async () => {
    const sender = smtpSender(senderOf(rig, { witness }));
    const answer = { ...answerOf("only the copy", "gone@fault.example"), copies: [alice] };
    expect((await sender.send(answer)).kind).toBe("refused");
    expect(await hasCome(rig, alice, "only the copy")).toBe(false);
  });

  const dot = /\r\n\.\r\n$/;
  describe.each(["drop", "reset"] as const)("by a connection that ends (%s)", (does) => {
    const steps: [string, Sending["kind"], boolean, Omit<Fault, "does">][] = [
      ["at the greeting", "later", false, { from: "server", at: /^220 / }],
      ["at the sign-in", "later", false, { from: "client", at: /AUTH / }],
      ["at its sender", "later", false, { from: "client", at: /MAIL FROM/ }],
      ["at its recipients", "later", false, { from: "server", at: /354 / }],
      ["just before the final dot", "unknown", false, { from: "client", at: dot }],
      ["just after the final dot", "unknown", true, { from: "server", at: /250 2\.0\.0 Ok: queued/ }],
    ];
    test.each(steps)("%s is %s", async (step, kind, goes, fault) => {
      const { proxy, sender } = await failing({ ...fault, does });
      const subject = `${step} (${does})`;
      const answer = answerOf(subject);
      expect((await sender.send(answer)).kind).toBe(kind);
      expect(proxy.faults).toEqual([]);
      for (const address of [witness.address, alice]) {
        if (goes) await comes(rig, address, subject);
        else expect(await hasCome(rig, address, subject)).toBe(false);
      }
      expect(await sender.find(answer.messageId)).toBe(goes);
    });
  });

  test("by a connection that ends amid its bytes waits, for its end never left", async () => {
    const { sender } = await failing({ from: "client", at: /the-first-part/, does: "reset" });
    const bytes = Buffer.concat([
      Buffer.from(plainLetter("amid", "the-first-part")),
      Buffer.alloc(40_000_000, "0123456789\r\n"),
    ]);
    expect((await sender.send({ ...answerOf("amid"), bytes })).kind).toBe("later");
  });

  test("by silence after the final dot is unknown, and found", async () => {
    const { sender } = await failing({ from: "client", at: dot, does: "stall", after: true }, 500);
    const answer = answerOf("no word after the dot");
    expect((await sender.send(answer)).kind).toBe("unknown");
    await until(async () => (await sender.find(answer.messageId)) === true);
  });

  test("by silence before that waits", async () => {
    const { sender } = await failing({ from: "server", at: /354 /, does: "stall" }, 500);
    expect((await sender.send(answerOf("no word before the dot"))).kind).toBe("later");
  });

  test("by a server that goes away after the final dot is as the server says", async () => {
    const { port, replaced } = await rig.proxy("smtps");
    replaced.set("250 2.0.0 Ok: queued", "421 4.3.2 closing");
    const sender = smtpSender(senderOf(rig, { server: serverOf(rig, "smtps", { port }) }));
    expect(await sender.send(answerOf("closing"))).toEqual({
      kind: "later",
      words: expect.stringContaining("421 4.3.2"),
    });
  });
});
