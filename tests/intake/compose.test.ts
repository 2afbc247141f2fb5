import { simpleParser } from "mailparser";
import { expect, test } from "vitest";
import { settleOrder } from "../../src/intake/settle.ts";
import { takeDue } from "../../src/intake/take.ts";
import { look } from "../drawing/look.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

test("the proof in an answer says which revision of the order it shows, after a letter as after a note", async () => {
  const sender = keepingSender();
  const desk = await temporaryDesk({ sender });
  await post(desk, { sheets: [{ mark: "B-1", legend: ["POOL"] }] });
  await post(desk, { sheets: [{ mark: "B-2", legend: ["SALONA"] }] });
  const [order] = await desk.store.orders.named("FM-72");
  if (order === undefined) throw new Error("no order");
  const number = order.questions[0]?.number ?? 0;
  await settleOrder(desk, order, [{ kind: "yes", number }], { name: "Rosa Imhoff", why: "she said so" });
  while (await takeDue(desk));
  const revisions = await Promise.all(
    sender.kept.map(async ({ bytes }) => {
      const { attachments } = await simpleParser(Buffer.from(bytes));
      const proof = attachments.find(({ filename = "" }) => filename.startsWith("proof"));
      const { words } = await look(new Uint8Array(proof?.content ?? []));
      return /Revision \d+/.exec(words)?.[0];
    }),
  );
  expect(revisions).toEqual(["Revision 1", "Revision 2", "Revision 3"]);
});
