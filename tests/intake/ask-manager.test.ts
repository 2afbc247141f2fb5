import { expect, test } from "vitest";
import { managersToAsk } from "../../src/intake/ask-manager.ts";
import type { Desk } from "../../src/intake/desk.ts";
import type { StoredAnswer } from "../../src/ports/store.ts";
import type { Managing } from "../../src/trade/manager.ts";

const ana: Managing = {
  buyer: "fallowmere.example",
  manager: { name: "Ana Reyes", address: "ana@quillgate.example" },
  waits: true,
};
const order = {
  number: "FM-80",
  buyer: "greta@fallowmere.example",
  sheets: [],
  questions: [{ problem: { check: "spelling" } }, { problem: { check: "manager-word" } }],
  letters: [{ letter: 3 }, { letter: 7 }, { letter: 5 }],
  changedAt: new Date("2026-11-09T15:00:00Z"),
};
/** The latest letter of the order is letter 7. */
const answer: StoredAnswer = {
  letter: 7,
  messageId: "<1@quillgate.example>",
  recipient: order.buyer,
  bytes: new Uint8Array(),
};

async function asked(changes: {
  readonly managing?: Managing;
  readonly order?: object;
  readonly answer?: Partial<StoredAnswer> | undefined;
}) {
  const { managing = ana } = changes;
  const desk = {
    rules: { managing: [managing] },
    store: {
      people: { orders: () => Promise.resolve([{ ...order, ...changes.order }]) },
      answers: {
        of: (letter: number) =>
          Promise.resolve(
            letter === 7 && !("answer" in changes && changes.answer === undefined)
              ? { ...answer, ...changes.answer }
              : undefined,
          ),
      },
    },
  } as unknown as Desk;
  return managersToAsk(desk);
}

test("a manager who has not seen the last answer about an order that waits for his word is asked", async () => {
  expect(await asked({})).toEqual([
    {
      id: "asking ana@quillgate.example about greta@fallowmere.example FM80 since 2026-11-09T15:00:00.000Z",
      buyer: order.buyer,
      order: "FM-80",
      by: "burin",
      why: "its manager is asked",
      acts: [
        {
          kind: "write",
          words:
            "Our last letter was about other orders too. This one is about order FM-80 alone, for Ana Reyes to agree.",
        },
      ],
    },
  ]);
  expect(await asked({ answer: { copies: ["jo@quillgate.example"] } })).toHaveLength(1);
});

test.each<[string, Parameters<typeof asked>[0]]>([
  ["who has had a copy", { answer: { copies: ["jo@quillgate.example", ana.manager.address] } }],
  ["to whom it went", { answer: { recipient: ana.manager.address } }],
  ["where there is no answer", { answer: undefined }],
  ["where nothing waits for a manager's word", { order: { questions: [order.questions[0]] } }],
  ["of another buyer's orders", { order: { buyer: "jo@oakmoor.example" } }],
  ["whose orders do not wait", { managing: { ...ana, waits: false } }],
])("no manager is asked %s", async (_, changes) => {
  expect(await asked(changes)).toEqual([]);
});
