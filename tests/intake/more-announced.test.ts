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

const both = { sheets: [first, second] };
const verdictOf = async (): Promise<string | undefined> =>
  (await desk.store.orders.named("FM-72"))[0]?.verdict;

test.each([
  "The rest will follow.",
  "I will send a corrected B-2 tomorrow.",
  "Corrected sheet to follow.",
  "Sheet follows.",
  "Corrected sheet attached, sorry.",
  "Please see attached.",
  "Here is the new sheet.",
])("a letter without a sheet stops an order that has passed: %s", async (text) => {
  const passed = await post(desk, both);
  expect(passed.verdict).toBe("pass");
  const told = await post(desk, { to: passed, text });
  expect(told.verdict).toBe("confirm");
  expect(checksOf(told)).toEqual(["more-announced"]);
  expect(await verdictOf()).toBe("confirm");
});

test("a sheet that is still to be mended is waited for, though sheets are attached", async () => {
  const told = await post(desk, { ...both, text: "Sheets attached. A corrected B-2 will follow." });
  expect(told.verdict).toBe("confirm");
  const corrected = { mark: "B-2", legend: ["LOUNGE"] };
  expect((await post(desk, { to: told, text: "Here it is.", sheets: [corrected] })).verdict).toBe("pass");
});

test("nothing but a sheet that changes something, or its sender's yes, ends it", async () => {
  const asked = await post(desk, { sheets: [first], text: "The rest will follow." });
  expect((await post(desk, { to: asked, text: "Thanks!" })).verdict).toBe("confirm");
  const again = await post(desk, { to: asked, text: "Sheet attached.", sheets: [first] });
  expect(checksOf(again)).toContain("more-announced");
  expect((await post(desk, { to: asked, sheets: [second] })).verdict).toBe("pass");
  const more = await post(desk, { to: asked, text: "The rest will follow." });
  expect(more.verdict).toBe("confirm");
  expect((await post(desk, { to: more, text: "2 YES" })).verdict).toBe("pass");
});

test.each([
  ["Corrected sheet attached.", [second], "confirm"],
  ["Revised B-2 attached.", [second], "confirm"],
  ["Revised B-2 attached.", [{ mark: "B-3", legend: ["GYM"] }], "confirm"],
  ["Revised B-2 attached.", [second, { mark: "B-3", legend: ["GYM"] }], "confirm"],
  ["Revised sheets for B-1 and B-2 attached.", [{ ...second, legend: ["HALL"] }], "confirm"],
  ["Additional station.", [second], "confirm"],
  ["Revised B-2 attached.", [{ ...second, legend: ["HALL"] }], "pass"],
  ["Additional station.", [{ mark: "B-3", legend: ["GYM"] }], "pass"],
  ["Resending, in case you did not get it.", [second], "pass"],
  ["Sheets attached.", [first, second], "pass"],
] as const)("what is said to be mended must be: “%s”, %j: %s", async (text, sheets, verdict) => {
  const passed = await post(desk, both);
  expect((await post(desk, { to: passed, text, sheets })).verdict).toBe(verdict);
});

test("while something else is open, a sheet to be mended is not asked about", async () => {
  const asked = await post(desk, { sheets: [first, { mark: "B-2", legend: ["SALONA"] }] });
  expect(asked.verdict).toBe("confirm");
  const told = await post(desk, { to: asked, text: "1 NO, corrected sheet to follow." });
  expect(checksOf(told)).not.toContain("more-announced");
  expect((await post(desk, { to: asked, text: "Here it is.", sheets: [second] })).verdict).toBe("pass");
});

test("what is said beside sheets of one order is not said of another", async () => {
  const other = { mark: "C-1", legend: ["GYM"], fill: { order: "FM-73" } };
  await post(desk, both);
  await post(desk, { sheets: [other] });
  const again = await post(desk, { text: "Corrected sheet attached.", sheets: [other] });
  expect(again).toMatchObject({ verdict: "confirm", orders: ["FM-73"] });
  expect(await verdictOf()).toBe("pass");
});

test("whoever promises anew is asked about that alone", async () => {
  const passed = await post(desk, both);
  await post(desk, { to: passed, text: "I will send a corrected B-2 tomorrow." });
  const told = await post(desk, { to: passed, text: "Corrected sheet attached." });
  expect((await answerTo(desk, told)).replace(/\s+/g, " ")).toContain(
    "Your letter says “Corrected sheet attached.”, and nothing was attached to it.",
  );
  expect((await post(desk, { to: told, text: "2 YES" })).verdict).toBe("pass");
});

test("a sheet for another position than the letter names does not keep its promise", async () => {
  const place = { gangs: "2", standing: "in-plate" };
  const at = (position: string, legend: string) => ({
    mark: "B-5",
    legend: [legend],
    fill: { ...place, position },
  });
  const plate = { mark: "B-5", legend: ["STEAM"], kind: "plate" as const, fill: { gangs: "2" } };
  const passed = await post(desk, { sheets: [plate, at("1", "SAUNA"), at("2", "LOBBY")] });
  expect(passed.verdict).toBe("pass");
  const text = "Corrected position 2 attached.";
  const wrong = await post(desk, { to: passed, text, sheets: [at("1", "CAFE")] });
  expect(checksOf(wrong)).toContain("more-announced");
  expect(await verdictOf()).toBe("confirm");
  expect(await post(desk, { to: wrong, text, sheets: [at("2", "FOYER")] })).toMatchObject({
    verdict: "pass",
  });
});

test.each([
  ["Here is B-2 again.", [{ ...first, legend: ["HALL"] }], "confirm"],
  ["Here is B-2 again.", [{ ...second, legend: ["HALL"] }], "pass"],
  ["Here is B-2 again.", [second], "pass"],
  ["Complete set attached.", [{ ...first, legend: ["HALL"] }], "confirm"],
  ["Complete set attached.", [{ ...first, legend: ["HALL"] }, second], "pass"],
  ["Complete set attached.", [{ mark: "B-3", legend: ["GYM"] }], "pass"],
] as const)("what is said to be here must be: “%s”, %j: %s", async (text, sheets, verdict) => {
  await post(desk, both);
  const told = await post(desk, { text, sheets });
  expect(told.verdict).toBe(verdict);
  if (verdict === "pass") return;
  expect(checksOf(told)).toContain("more-announced");
  expect((await post(desk, { sheets: [second] })).verdict).toBe("pass");
});

test("the last part is not all of it while others have not come", async () => {
  const text = "Part 3 of 3.";
  const asked = await post(desk, { sheets: [first], text });
  expect(checksOf(asked)).toEqual(["more-announced"]);
  const third = { mark: "B-3", legend: ["GYM"] };
  expect((await post(desk, { sheets: [second], text: "Part 2 of 3." })).verdict).toBe("confirm");
  expect((await post(desk, { sheets: [third], text: "Sheet attached." })).verdict).toBe("pass");
});

test("a sheet in the place of one that came is not the rest that was to follow", async () => {
  await post(desk, { sheets: [first], text: "The rest will follow." });
  const mended = await post(desk, { sheets: [{ ...first, legend: ["HALL"] }] });
  expect(checksOf(mended)).toContain("more-announced");
  expect((await post(desk, { sheets: [second] })).verdict).toBe("pass");
});

test("a sheet that is called 2 of 2 waits for the other, or for its sender's yes", async () => {
  const numbered = { ...second, fill: { notes: "sheet 2 of 2" } };
  const asked = await post(desk, { sheets: [numbered] });
  expect([asked.verdict, checksOf(asked)]).toEqual(["confirm", ["notes-carry-orders", "more-announced"]]);
  expect((await post(desk, { to: asked, text: "1 YES" })).verdict).toBe("pass");
  const other = await temporaryDesk();
  await post(other, { sheets: [numbered] });
  expect((await post(other, { sheets: [first] })).verdict).toBe("pass");
});
