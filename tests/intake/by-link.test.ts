import { expect, test } from "vitest";
import { answerable, answerByLink } from "../../src/intake/by-link.ts";
import type { OrderRecord } from "../../src/trade/record.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const sheet = (mark: string, legend: string) => ({ mark, legend: [legend], fill: { order: "FM-80" } });
const behind = { letter: 1, recipient: "greta@fallowmere.example", orders: [] };

async function asked() {
  const desk = await temporaryDesk();
  await post(desk, { sheets: [sheet("P-1", "SALONA"), sheet("P-2", "SALONA"), sheet("P-3", "KITCHN")] });
  const order = async (): Promise<OrderRecord> => {
    const [one] = await desk.store.orders.named("FM-80");
    if (one === undefined) throw new Error("no order");
    return one;
  };
  return { desk, order };
}

test("questions that read the same are one on the page, and those that need one of us are not there", async () => {
  const { order } = await asked();
  const record = await order();
  expect(answerable(record).map(({ number }) => number)).toEqual([
    ...new Set(record.questions.map(({ number }) => number)),
  ]);
  expect(answerable(record).length).toBeLessThan(record.questions.length);
  const ours = record.questions.map((question) => ({
    ...question,
    problem: { ...question.problem, verdict: "person" as const },
  }));
  expect(answerable({ ...record, questions: ours })).toEqual([]);
});

test("whoever answers on the page is thanked, and told why an answer could not be taken", async () => {
  const { desk, order } = await asked();
  expect(await answerByLink(desk, behind, await order(), [{ kind: "yes", number: 1 }])).toEqual({
    done: true,
    words: "Thank you. We have your answer about order FM-80, and write to you how the order stands now.",
  });
  expect(await answerByLink(desk, behind, await order(), [{ kind: "yes", number: 1 }])).toEqual({
    done: false,
    words: "It could not be taken: order FM-80 has no open point 1.",
  });
  const [confirmed] = await desk.store.orders.confirmed("greta@fallowmere.example", "FM-80");
  expect(confirmed?.by).toBe("greta@fallowmere.example");
});

test("words that wait for a person are taken back on the page, and are not answered NO there", async () => {
  const desk = await temporaryDesk();
  const text = "There are two whiteboards, one at each end of the hall.";
  await post(desk, { text, sheets: [sheet("P-1", "SAUNA")] });
  const [order] = await desk.store.orders.named("FM-80");
  if (order === undefined) throw new Error("no order");
  expect(answerable(order).map(({ number }) => number)).toEqual([1]);
  expect(await answerByLink(desk, behind, order, [{ kind: "no", number: 1 }])).toEqual({
    done: false,
    words: "It could not be taken: point 1 needs one of us.",
  });
  expect(await answerByLink(desk, behind, order, [{ kind: "yes", number: 1 }])).toMatchObject({ done: true });
  expect(await desk.store.orders.named("FM-80")).toMatchObject([{ verdict: "pass", carried: [] }]);
});
