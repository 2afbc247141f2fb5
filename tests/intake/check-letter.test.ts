import { expect, test } from "vitest";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

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
