import { afterAll, expect, test } from "vitest";
import { until } from "../rig/desk.ts";
import { alice, desk } from "../rig/rig.ts";
import { withRig } from "../rig/with-rig.ts";
import { answersTo, fieldOf, rowOf, rowsOf, setUp, startWorker } from "./burin.ts";
import { letterBytes } from "./letters.ts";

await withRig("a desk among machines", (rig) => {
  const setup = setUp(rig);
  const worker = startWorker(setup);
  afterAll(() => worker.end("SIGKILL"));

  const plain = (subject: string, ...header: string[]): string =>
    [...header, `Subject: ${subject}`, `Message-ID: <${subject}@test.example>`, "", "A letter."].join("\r\n");
  /** What the record says of the letter of this subject, once it is done with. */
  const ended = async (subject: string) => {
    await until(() => !["received", "ready", "sending", undefined].includes(rowOf(setup, subject)?.state));
    const row = rowOf(setup, subject);
    return [row?.state, row?.why];
  };
  const lettersIn = async (address: string) =>
    (await rig.lettersOf(address)).map((letter) => fieldOf(letter, "Subject"));

  test("starts no loop with an absence responder, and stays silent when one writes to it", async () => {
    const bob = "bob@fernhill.example";
    await rig.sieve(bob, 'require "vacation"; vacation :days 1 :subject "Away" "Back on Monday.";');
    // the answer goes to somebody who is away
    await rig.deliver(bob, desk, await letterBytes("to-bob", { from: `Bob <${bob}>` }));
    await until(async () => (await answersTo(rig, bob, "<to-bob@fernhill.example>")).length === 1);
    // a person at the desk writes to him, and his responder answers the desk
    await rig.deliver(desk, bob, plain("a person writes", `From: ${desk}`, `To: ${bob}`));
    expect(await ended("Away")).toEqual(["silent", "a machine sent it (Auto-Submitted)"]);
    expect((await lettersIn(bob)).length).toBe(2);
    expect(rowsOf(setup).map(({ subject }) => subject)).toEqual(["to-bob", "Away"]);
  });

  test("stays silent when its own answer comes back", async () => {
    const dana = "dana@oakmoor.example";
    await rig.sieve(dana, `redirect "${desk}";`);
    await rig.deliver(dana, desk, await letterBytes("to-dana", { from: `Dana <${dana}>` }));
    expect(await ended("to-dana")).toEqual(["sent", null]);
    const back = () => rowsOf(setup).find(({ message_id }) => message_id?.startsWith("<burin."));
    await until(() => back()?.state === "silent");
    expect(back()?.why).toMatch(/^(a machine sent it|it comes from this desk itself)/);
    expect(await lettersIn(dana)).toEqual([]);
  });

  test("stays silent to a letter that could not be delivered", async () => {
    await rig.deliver(desk, "nobody@brightwire.example", plain("into the void", `From: ${desk}`));
    expect(await ended("Undelivered Mail Returned to Sender")).toEqual([
      "silent",
      "it is a report of a mail system (multipart/report)",
    ]);
  });

  test("leaves a letter to a list of which it is a member to a person", async () => {
    const list = "everyone@lists.example";
    await rig.deliver(alice, list, plain("to everyone", `From: ${alice}`, `To: ${list}`));
    expect(await ended("to everyone")).toEqual(["held", "it does not name this desk as a recipient"]);
    expect(await answersTo(rig, alice, "<to everyone@test.example>")).toEqual([]);
  });

  test("leaves to a person what comes from its own address and is none of its answers", async () => {
    await rig.deliver(desk, desk, plain("from myself", `From: ${desk}`, `To: ${desk}`));
    expect(await ended("from myself")).toEqual(["held", "it comes from this desk itself"]);
  });

  test("stops after one answer with a desk of its own kind", async () => {
    const other = "orders@larchgate.example";
    const theirs = setUp(rig, { address: other, witness: false });
    const second = startWorker(theirs);
    await rig.deliver(other, desk, plain("between desks", `From: ${other}`, `To: ${desk}`));
    expect(await ended("between desks")).toEqual(["sent", null]);
    // the blank sheets that it encloses are files for somebody to see
    await until(() => rowsOf(theirs)[0]?.state === "held");
    expect(rowsOf(theirs)).toHaveLength(1);
    expect(
      (await rig.lettersOf(desk)).filter((letter) => fieldOf(letter, "From")?.includes(other)),
    ).toHaveLength(1);
    expect(await second.end("SIGTERM")).toBe(0);
  });
});
