import { describe, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { takeDue, takeLetter } from "../../src/intake/take.ts";
import type { SenderProof } from "../../src/trade/sender-proof.ts";
import { temporaryDesk } from "../make/desk.ts";
import { letterOf, post } from "../make/thread.ts";

const sheet = (mark: string, order: string) => ({ mark, legend: ["POOL"], fill: { order } });

test("a letter with sheets is its sender's, though its words name a colleague's order", async () => {
  const made = await temporaryDesk();
  // The name servers prove every sender.
  const desk = {
    ...made,
    reader: { ...made.reader, sender: () => Promise.resolve({ ok: true, value: "pass" } as const) },
    rules: { ...made.rules, nameServers: [] },
  };
  await post(desk, { sheets: [sheet("P-1", "FM-80")] });
  const omar = { from: "Omar <omar@fallowmere.example>", text: "As we did for FM-80." };
  await post(desk, { ...omar, sheets: [sheet("Q-1", "GC-4100")] });
  expect((await desk.store.orders.named("GC-4100")).map(({ buyer }) => buyer)).toEqual([
    "omar@fallowmere.example",
  ]);
  // words alone reach the order that they name
  const { letter } = await post(desk, omar);
  expect((await desk.store.letters.read(letter)).orders).toEqual(["FM-80"]);
});

test("a reply with sheets is about the orders that they name, one without about all that were answered for", async () => {
  const desk = await temporaryDesk();
  const first = await post(desk, { sheets: [sheet("P-1", "FM-80"), sheet("Q-1", "GC-4100")] });
  expect(first.orders).toEqual(["FM-80", "GC-4100"]);
  const brings = await post(desk, { to: first, sheets: [sheet("P-2", "FM-80")] });
  expect(brings.orders).toEqual(["FM-80"]);
  const says = await post(desk, { to: first, text: "When will you ship?" });
  expect(says.orders).toEqual(["FM-80", "GC-4100"]);
});

describe("a sender who could not be proved just now", () => {
  /** What a letter is after so many seconds, of a sender whom the name servers prove so, one time after the other. */
  async function judgedAt(proofs: readonly SenderProof[], rules: Partial<Desk["rules"]> = {}) {
    const made = await temporaryDesk();
    let [asked, seconds] = [0, 0];
    const desk: Desk = {
      ...made,
      clock: { now: () => new Date(made.clock.now().getTime() + seconds * 1000) },
      reader: {
        ...made.reader,
        sender: () => Promise.resolve({ ok: true, value: proofs[asked++] ?? "pass" }),
      },
      rules: { ...made.rules, nameServers: [], ...rules },
    };
    const found = "Authentication-Results: mx.quillgate.example; spf=temperror\r\n";
    const bytes = Buffer.concat([Buffer.from(found), await letterOf({ sheets: [sheet("P-1", "FM-80")] })]);
    const { letter } = await takeLetter(desk, bytes, desk.clock.now());
    const states: (string | undefined)[] = [];
    for (seconds of [0, 599, 600, 1199, 1200]) {
      while (await takeDue(desk));
      const { state, verdict } = await desk.store.letters.read(letter);
      states.push(state === "received" ? "waits" : verdict);
    }
    return states;
  }

  test("is asked about again after ten minutes", async () => {
    const states = await judgedAt(["temporary", "pass"]);
    expect(states).toEqual(["waits", "waits", "pass", "pass", "pass"]);
  });

  test("is left to a person the third time", async () => {
    const states = await judgedAt(["temporary", "temporary", "temporary", "pass"]);
    expect(states).toEqual(["waits", "waits", "waits", "waits", "person"]);
  });

  test("is left to a person at once where our own mail server says so in the letter", async () => {
    expect((await judgedAt([], { authority: "mx.quillgate.example" }))[0]).toBe("person");
  });
});
