import { expect, test } from "vitest";
import { readReply } from "../../src/intake/reply.ts";
import type { Answered } from "../../src/ports/store.ts";
import { temporaryDesk } from "../make/desk.ts";
import { aloneDevice } from "../make/sample.ts";

const ines = "ines@brightwire.example";
const answered = (letter: number, buyer: string, why?: string): Answered => ({
  letter,
  buyer,
  receivedAt: new Date("2026-11-09T15:00:00Z"),
  subject: "Stations",
  state: "sent",
  orders: [],
  sheets: 1,
  problems: [],
  attachments: [],
  ...(why === undefined ? {} : { why }),
});
const all = [answered(1, ines), answered(2, "omar@oakmoor.example"), answered(3, ines, "it was held")];

async function goesOn(changes: Partial<Parameters<typeof readReply>[0]>): Promise<number[]> {
  const letter = { from: ines, subject: "", references: [], text: "", attachments: [] };
  const party = { buyer: ines, mayAnswer: true };
  const reply = { letter, answered: all, proof: "pass", party, sheets: [], ...changes } as const;
  return (await readReply(reply, await temporaryDesk())).goesOn.map((one) => one.letter);
}

test.each([
  ["words", []],
  ["sheets", [aloneDevice()]],
])("a reply of %s goes on with answers to its buyer's letters, none of them held", async (_, sheets) => {
  expect(await goesOn({ sheets })).toEqual([1]);
});

test("a reply goes on with nothing where a person has to see it first, or where it replies to nothing", async () => {
  const held = { buyer: ines, mayAnswer: true, why: "it names an order number of another buyer" };
  expect(await goesOn({ sheets: [aloneDevice()], party: held })).toEqual([]);
  expect(await goesOn({ answered: [] })).toEqual([]);
  expect(await goesOn({ proof: "fail" })).toEqual([]);
});
