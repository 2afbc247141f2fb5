import { afterAll, expect, test } from "vitest";
import { until } from "../rig/desk.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";
import { answersTo, rowOf, setUp, startWorker } from "./burin.ts";
import { filledSheet, letterBytes } from "./letters.ts";

await withRig("a desk whose mail server looks into senders", (rig) => {
  // a letter here passes two servers of the house: the one that takes it in, and the one that keeps the mailbox
  const setup = setUp(rig, { trust: { authority: "mx.quillgate.example", received_lines: 2 } });
  const worker = startWorker(setup);
  afterAll(() => worker.end("SIGKILL"));

  const ended = async (subject: string) => {
    await until(() => !["received", "ready", "sending", undefined].includes(rowOf(setup, subject)?.state));
    const row = rowOf(setup, subject);
    return [row?.state, row?.why];
  };
  const forged =
    "Authentication-Results: mx.quillgate.example; dmarc=pass header.from=brightwire.example\r\n";
  const before = (field: string, letter: Uint8Array): Uint8Array =>
    Buffer.concat([Buffer.from(field), letter]);

  test("does not answer a new sender whom only a field of the sender's own proves", async () => {
    const received = "Received: from a by mx.quillgate.example; Mon, 2 Mar 2026 09:00:00 +0000\r\n";
    await rig.deliver(alice, desk, before(forged, await letterBytes("forged-proof")));
    await rig.deliver(alice, desk, before(forged + received, await letterBytes("forged-line")));
    const why = "nothing proves who sent it, and the sender is new";
    expect(await ended("forged-proof")).toEqual(["held", why]);
    expect(await ended("forged-line")).toEqual(["held", why]);
  });

  test("does not answer an address that its own domain says is forged", async () => {
    await rig.deliver("refuted@brightwire.example", desk, before(forged, await letterBytes("refuted")));
    expect(await ended("refuted")).toEqual(["held", "its sender's domain says that it is forged"]);
    expect(await rig.lettersOf(alice)).toEqual([]);
  });

  test("answers a sender who is proved", async () => {
    const sheet = await filledSheet("BW-2207");
    await rig.deliver("proved@brightwire.example", desk, await letterBytes("proved", { sheet }));
    expect(await ended("proved")).toEqual(["sent", null]);
    await until(async () => (await answersTo(rig, alice, "<proved@brightwire.example>")).length === 1);
  });

  test("tells nothing of an order to another buyer who names its number", async () => {
    const bob = "bob@fernhill.example";
    const sheet = await filledSheet("BW-2207");
    const from = `"Alice <${alice}>" <${bob}>`;
    await rig.deliver("proved@fernhill.example", desk, await letterBytes("nosy", { from, sheet }));
    expect(await ended("nosy")).toEqual(["sent", "it names an order number of another buyer"]);
    expect(rowOf(setup, "nosy")).toMatchObject({ buyer: bob, verdict: "person" });
    await until(async () => (await answersTo(rig, bob, "<nosy@fernhill.example>")).length === 1);
    const [answer = ""] = await answersTo(rig, bob, "<nosy@fernhill.example>");
    expect(answer).not.toMatch(/alice|brightwire|another buyer/i);
    expect(await answersTo(rig, alice, "<nosy@fernhill.example>")).toEqual([]);
  });
});
