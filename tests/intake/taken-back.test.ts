import { beforeEach, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { settleOrder } from "../../src/intake/settle.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { temporaryDesk } from "../make/desk.ts";
import { answerTo, post, type Written } from "../make/thread.ts";

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});

const remark = "There are two whiteboards, one at each end of the hall.";
const salona = { mark: "B-1", legend: ["SALONA"] };
const sauna = { mark: "B-2", legend: ["SAUNA"] };
const other = { mark: "C-1", legend: ["STEAM"], fill: { order: "QX-551" } };

async function orderOf(number = "FM-72") {
  const [order] = await desk.store.orders.named(number);
  if (order === undefined) throw new Error(`no order ${number}`);
  return order;
}
async function pointsOf(): Promise<string[]> {
  return (await readPeople(desk.store, desk.clock.now())).flatMap(({ points }) =>
    points.map(({ says }) => says),
  );
}
const reply = (to: LetterRecord, text: string, more: Written = {}): Promise<LetterRecord> =>
  post(desk, { to, text, ...more });

test("words are taken back under the number that their answer gave them", async () => {
  const asked = await post(desk, { sheets: [salona, sauna], text: remark });
  expect(asked.verdict).toBe("person");
  expect(await answerTo(desk, asked)).toContain(
    "If it asks for nothing, reply “2 NOTHING”: no person need read it.",
  );
  expect(await pointsOf()).toEqual([`“${remark}”`]);
  const next = await reply(asked, "1 YES");
  expect(await answerTo(desk, next)).toContain("2. An earlier letter about this order says: “There are");
  const back = await reply(next, "2 NOTHING\n\nGreta");
  expect(await answerTo(desk, back)).toContain("You answered NOTHING to 1 point: 2.");
  expect(back.verdict).toBe("pass");
  expect(await orderOf()).toMatchObject({ verdict: "pass", carried: [] });
  expect(await pointsOf()).toEqual([]);
});

test.each([
  "1 YES\n2 NOTHING",
  "1 YES, 2 NOTHING",
  "2: nothing. 1 yes",
  "#2 - Nothing\n1 yes\n\nThanks,\nGreta",
  "1 YES and 2 NOTHING",
])("“%s” answers the question and takes the words back", async (text) => {
  const asked = await post(desk, { sheets: [salona], text: remark });
  expect(await reply(asked, text)).toMatchObject({ verdict: "pass" });
});

test.each([
  ["of a question", "1 NOTHING\n2 YES"],
  ["of a number that was not told", "1 YES\n3 NOTHING"],
  ["beside more words", "1 YES\n2 NOTHING for now"],
  ["beside a wish", "1 YES\n2 NOTHING\nPlease use the brass one for the hall."],
  ["beside the number", "1 YES\nButton 2 nothing"],
  ["of what is wrong", "1 YES\n2. Nothing wrong with that"],
  ["below somebody else's name", "1 YES\nGreta\n\nFrom: Eve Marsh <eve@stranger.example>\n\n2 NOTHING"],
])("nothing is taken back %s: “%s”", async (_, text) => {
  const asked = await post(desk, { sheets: [salona], text: remark });
  expect(await reply(asked, text)).toMatchObject({ verdict: "person" });
  expect((await orderOf()).carried).toContainEqual({
    letter: String(asked.letter),
    what: "words",
    text: remark,
  });
});

test("an answer that could not be read is given again, and what stood beside it taken back", async () => {
  const asked = await post(desk, { sheets: [salona] });
  const unread = await reply(asked, "1 YES. It is what the old boards called the big hall at that end.");
  expect(await answerTo(desk, unread)).toContain("answer once more with the number");
  expect(await reply(unread, "1 YES\n2 NOTHING")).toMatchObject({ verdict: "pass" });
});

test("words that the same sender writes once more keep their number", async () => {
  await post(desk, { sheets: [sauna], text: remark });
  const again = await post(desk, { sheets: [{ ...sauna, mark: "B-3" }], text: remark });
  expect(await answerTo(desk, again)).not.toContain("2 NOTHING");
  expect(await reply(again, "1 NOTHING")).toMatchObject({ verdict: "pass" });
});

test("words about two orders are taken back from both", async () => {
  const asked = await post(desk, { sheets: [sauna, other], text: remark });
  expect(await reply(asked, "1 NOTHING")).toMatchObject({ verdict: "pass" });
  expect([(await orderOf()).verdict, (await orderOf("QX-551")).verdict]).toEqual(["pass", "pass"]);
});

test("nobody but a party to the order takes words back", async () => {
  const asked = await post(desk, { sheets: [sauna], text: remark });
  await reply(asked, "1 NOTHING", { from: "Eve Marsh <eve@stranger.example>" });
  expect(await orderOf()).toMatchObject({ verdict: "person" });
});

test("what no words can tell is read by a person whatever is replied", async () => {
  const asked = await post(desk, { sheets: [sauna], text: "No more. ".repeat(12_000) });
  expect(await answerTo(desk, asked)).not.toContain("NOTHING");
  expect(await reply(asked, "1 NOTHING")).toMatchObject({ verdict: "person" });
});

test("words about a released order have stopped the engraving room, so a person reads them", async () => {
  await post(desk, { sheets: [sauna] });
  const rosa = { name: "Rosa", why: "release" };
  await settleOrder(desk, await orderOf(), [{ kind: "release", on: "2026-11-09" }], rosa);
  const stop = await post(desk, { text: "There is something about FM-72 that Ines has to hear." });
  expect(stop.verdict).toBe("person");
  const { questions } = await orderOf();
  expect(questions).toHaveLength(1);
  expect(await answerTo(desk, stop)).not.toContain("NOTHING");
  expect(await reply(stop, `${questions[0]?.number} NOTHING`)).toMatchObject({ verdict: "person" });
});

test("what one of our own people has read is off the list, though its order has to be mended", async () => {
  const plate = { mark: "B-4", legend: ["HALL"], kind: "plate" } as const;
  expect(await post(desk, { sheets: [plate], text: remark })).toMatchObject({ verdict: "fail" });
  const order = await orderOf();
  const [question] = order.questions.filter(({ problem }) => problem.check === "letter-still-open");
  expect(await pointsOf()).toEqual([`“${remark}”`]);
  await settleOrder(desk, order, [{ kind: "yes", number: question?.number ?? 0 }], {
    name: "Ines",
    why: "a remark",
  });
  expect((await orderOf()).verdict).toBe("fail");
  expect(await pointsOf()).toEqual([]);
});
