import { beforeEach, expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import type { LetterRecord } from "../../src/trade/record.ts";
import { temporaryDesk } from "../make/desk.ts";
import { answerTo, post } from "../make/thread.ts";

const checksOf = ({ problems }: LetterRecord): string[] => problems.map(({ check }) => check);
const [first, second] = [
  { mark: "B-1", legend: ["SAUNA"] },
  { mark: "B-2", legend: ["LOBBY"] },
];

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});

test("an order of which more is announced passes when the rest has come", async () => {
  const asked = await post(desk, { sheets: [first], text: "Hi,\n\nThe rest will follow.\n\nGreta" });
  expect(asked.verdict).toBe("confirm");
  expect(checksOf(asked)).toEqual(["more-announced"]);
  expect(await answerTo(desk, asked)).toContain("Or reply “1 YES”");
  expect((await post(desk, { sheets: [second], text: "Here they are." })).verdict).toBe("pass");
  expect((await desk.store.orders.named("FM-72"))[0]?.verdict).toBe("pass");
});

test("whoever says that it is all of it has it pass", async () => {
  const asked = await post(desk, { sheets: [first], text: "Part 1 of 2 is attached." });
  expect(await post(desk, { to: asked, text: "1 YES" })).toMatchObject({
    verdict: "pass",
    orders: ["FM-72"],
  });
});
