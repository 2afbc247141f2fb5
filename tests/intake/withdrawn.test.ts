import { writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { beforeEach, describe, expect, test } from "vitest";
import { order } from "../../src/commands/order.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { LetterRecord, OrderRecord } from "../../src/trade/record.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { answerTo, post, type Sent } from "../make/thread.ts";

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});

const inPlate = { standing: "in-plate", gangs: "2" };
const pool: readonly Sent[] = [
  { mark: "B-1", kind: "plate", legend: ["SPA"], fill: { gangs: "2" } },
  { mark: "B-1", legend: ["SAUNA"], fill: { ...inPlate, position: "1" } },
  { mark: "B-1", legend: ["SHOWER"], fill: { ...inPlate, position: "2" } },
  { mark: "B-2", legend: ["GYM"] },
];

async function orderOf(number = "FM-72"): Promise<OrderRecord> {
  const [order] = await desk.store.orders.named(number);
  if (order === undefined) throw new Error(`no order ${number}`);
  return order;
}

const standing = ({ sheets }: OrderRecord): string[] =>
  sheets.map((sheet) => `${sheet.mark} ${sheet.kind === "plate" ? "plate" : (sheet.position ?? "alone")}`);
const checksOf = ({ problems }: LetterRecord): string[] =>
  problems.map(({ check }) => check).filter((check) => check !== "same-file-name-twice");

test("a position is withdrawn: its sheet stands no longer, the record keeps it, and the plate waits", async () => {
  const first = await post(desk, { sheets: pool });
  expect(first.verdict).toBe("pass");
  const reply = await post(desk, { to: first, text: "Hello,\n\nCANCEL B-1 position 2\n\nThanks, Greta" });
  expect(reply).toMatchObject({ verdict: "waiting", state: "sent", orders: ["FM-72"] });
  const order = await orderOf();
  expect(standing(order)).toEqual(["B-1 plate", "B-1 1", "B-2 alone"]);
  expect(order.missing).toEqual([{ station: "B-1", kind: "device", position: 2 }]);
  expect(order.withdrawn).toMatchObject([{ letter: reply.letter, sheet: { mark: "B-1", position: 2 } }]);
  expect(await answerTo(desk, reply)).toMatch(
    /^WAITING: order FM-72 is right so far, 1 sheet to come\.\n\nSend the missing sheets when they are ready, in a reply to this letter\.\n\nAs you ask, 1 sheet of order FM-72 is withdrawn and not made:\n- Device, B-1 position 2 of 2 \(B-1 \(3\)\.pdf\)\nTo undo it, send the sheet again\.\n/,
  );
  // It comes back when it is sent again.
  const again = await post(desk, { to: reply, sheets: pool.slice(2, 3) });
  expect(again.verdict).toBe("pass");
  expect(standing(await orderOf())).toEqual(["B-1 plate", "B-1 1", "B-2 alone", "B-1 2"]);
  expect((await orderOf()).withdrawn).toHaveLength(1);
});

test("a station is withdrawn, and what is left passes", async () => {
  const wrong = { mark: "B-2", legend: ["SALONA"] };
  const first = await post(desk, { sheets: [...pool.slice(0, 3), wrong] });
  expect(first.verdict).toBe("confirm");
  const reply = await post(desk, { to: first, text: "Please cancel B-2." });
  expect(reply).toMatchObject({ verdict: "pass", state: "sent" });
  expect(standing(await orderOf())).toEqual(["B-1 plate", "B-1 1", "B-1 2"]);
  expect(await answerTo(desk, reply)).toMatch(
    /^PASS: order FM-72 is complete, nothing to fix\.\n\nPlease read below what will be cut\. You need do nothing more\.\n\nAs you ask, 1 sheet/,
  );
});

test("the whole order is withdrawn: a revision without verdict, which the next sheet ends", async () => {
  const first = await post(desk, { sheets: pool });
  const reply = await post(desk, { to: first, text: "Cancel order FM-72" });
  expect(reply).toMatchObject({ verdict: "pass", state: "sent", orders: ["FM-72"] });
  const order = await orderOf();
  expect(order.verdict).toBeUndefined();
  expect(order).toMatchObject({ sheets: [], missing: [], questions: [], problems: [], revision: 2 });
  expect(order.withdrawn).toHaveLength(4);
  const answer = await answerTo(desk, reply);
  expect(answer).toMatch(
    /^WITHDRAWN: nothing is left of order FM-72\.\n\nAs you ask, 4 sheets of order FM-72 are withdrawn and not made:\n- Plate of 2, B-1/,
  );
  expect(answer).toContain("To undo it, send the sheets again.");
  expect(answer).not.toMatch(/PASS|releases|attach/i);
  expect(await desk.store.orders.openAt(new Date("2026-11-10T00:00:00Z"))).toEqual([]);
  expect((await post(desk, { sheets: pool.slice(3) })).verdict).toBe("pass");
});

test("a late YES for a withdrawn sheet changes nothing, and the sheet is asked about when it comes again", async () => {
  const asked = await post(desk, { sheets: [...pool.slice(0, 3), { mark: "B-2", legend: ["SALONA"] }] });
  const cancelled = await post(desk, { to: asked, text: "CANCEL B-2" });
  for (const text of ["1 YES", "1 no"]) {
    const late = await post(desk, { to: asked, text });
    expect(late).toMatchObject({ verdict: "pass" });
    expect(checksOf(late)).toEqual(["question-answered"]);
    expect(await answerTo(desk, late)).toContain(
      "You answered 1 question about sheets that are withdrawn: 1.",
    );
  }
  expect(standing(await orderOf())).toEqual(["B-1 plate", "B-1 1", "B-1 2"]);
  expect(await desk.store.buyers.keptWords("greta@fallowmere.example")).toEqual([]);
  const again = await post(desk, { to: cancelled, sheets: [{ mark: "B-2", legend: ["SALONA"] }] });
  expect(again.verdict).toBe("confirm");
  expect(checksOf(again)).toEqual(["spelling"]);
  expect((await post(desk, { to: again, text: "1 YES" })).verdict).toBe("pass");
});

test("what is asked of several stations keeps its number for those that are left", async () => {
  const other = { "bill.street": "9 Quarry Street" };
  const first = await post(desk, {
    sheets: [
      ...pool,
      { mark: "B-3", legend: ["SALONA"] },
      { mark: "B-4", legend: ["OFFICE"], fill: other },
      { mark: "B-5", legend: ["STORE"], fill: other },
    ],
  });
  const numbers = async () =>
    (await orderOf()).questions.map(({ number, problem }) => `${number} ${problem.check}`).toSorted();
  expect(checksOf(first)).toEqual(["spelling", "bill-to-differs"]);
  const before = await numbers();
  const reply = await post(desk, { to: first, text: "CANCEL B-5" });
  expect(await numbers()).toEqual(before);
  const text = (await answerTo(desk, reply)).replaceAll(/\s+/g, " ");
  expect(text).toContain("Still open: numbers 1 and 2.");
  expect(text).not.toContain("no longer asked");
  // Once more stations say so it is another question.
  await post(desk, { to: reply, sheets: [{ mark: "B-6", legend: ["SHOWER"], fill: other }] });
  expect(await numbers()).toEqual(["2 spelling", "3 bill-to-differs"]);
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("an answer and a withdrawal in one letter both count", async () => {
  const asked = await post(desk, { sheets: [...pool.slice(0, 3), { mark: "B-2", legend: ["SALONA"] }] });
  const reply = await post(desk, { to: asked, text: "1 YES\nCANCEL B-1" });
  expect(reply.verdict).toBe("pass");
  expect(standing(await orderOf())).toEqual(["B-2 alone"]);
});

describe("nothing is withdrawn, and a person reads", () => {
  test.each([
    ["a near miss of a mark", "CANCEL B-3"],
    ["a position that the plate has not", "CANCEL B-1 position 3"],
    ["the number of another order", "Cancel order FM-73"],
    ["a condition", "CANCEL B-2 if it costs less"],
    ["a condition below", "CANCEL B-2\nif the client agrees"],
    ["a question", "Should we cancel B-2?"],
    ["a refusal", "Don't cancel B-2"],
    ["another wish beside it", "CANCEL B-2\nMake B-1 in white instead."],
    ["an answer that names no number", "Yes\nCANCEL B-1"],
    ["an answer to another number", "CANCEL B-2\n7 YES"],
  ])("%s", async (_, text) => {
    const first = await post(desk, { sheets: [...pool.slice(0, 3), { mark: "B-2", legend: ["SALONA"] }] });
    const reply = await post(desk, { to: first, text });
    expect(reply.verdict).toBe("person");
    expect(checksOf(reply)).toContain("letter-says-more");
    expect(standing(await orderOf())).toHaveLength(4);
    expect((await orderOf()).withdrawn).toEqual([]);
  });

  test("where the letter brings a sheet for the same station", async () => {
    const first = await post(desk, { sheets: pool });
    const reply = await post(desk, { to: first, text: "CANCEL B-2", sheets: pool.slice(3) });
    expect(reply.verdict).toBe("person");
    expect((await orderOf()).withdrawn).toEqual([]);
    const all = await post(desk, {
      to: first,
      text: "Cancel order",
      sheets: [{ mark: "B-9", legend: ["GYM"] }],
    });
    expect(all.verdict).toBe("person");
    expect((await orderOf()).withdrawn).toEqual([]);
  });

  test("where a newer sheet has come than the letter is dated", async () => {
    const first = await post(desk, { sheets: pool });
    const later = { ...desk, clock: { now: () => new Date("2026-11-08T15:00:00Z") } };
    const reply = await post(later, { to: first, text: "CANCEL B-2" });
    expect(reply.verdict).toBe("person");
    expect((await orderOf()).withdrawn).toEqual([]);
  });
});

test("a sheet that was under way when its place was cancelled is asked about, and one of later date is not", async () => {
  const at = (time: string): Desk => ({ ...desk, clock: { now: () => new Date(`2026-11-09T${time}:00Z`) } });
  const gym = pool.slice(3);
  const first = await post(at("14:00"), { sheets: pool, date: "2026-11-09T14:00:00Z" });
  const cancel = { text: "CANCEL B-2", date: "2026-11-09T14:20:00Z" };
  await post(at("14:20"), { ...cancel, to: first });
  const late = await post(at("14:30"), { sheets: gym, date: "2026-11-09T14:10:00Z" });
  expect(late.verdict).toBe("confirm");
  expect(checksOf(late)).toEqual(["sheet-after-cancellation"]);
  expect((await answerTo(desk, late)).replaceAll(/\s+/g, " ")).toContain(
    "1. B-2.pdf came after you had cancelled it, but its letter bears the earlier date. If it is not wanted, cancel it once more in a reply to this letter. Or reply “1 YES” if it is meant as it stands.",
  );
  // It stays open until it is answered, and then stays settled.
  const more = { sheets: [{ mark: "B-3", legend: ["GYM"] }], date: "2026-11-09T14:40:00Z" };
  await post(at("14:40"), more);
  expect((await orderOf()).verdict).toBe("confirm");
  const yes = await post(at("14:50"), { text: "1 YES", to: late, date: "2026-11-09T14:50:00Z" });
  expect(yes.verdict).toBe("pass");
  // Cancelled once more and sent again, it is wanted.
  await post(at("15:00"), { text: "CANCEL B-2", to: yes, date: "2026-11-09T15:00:00Z" });
  expect(standing(await orderOf())).not.toContain("B-2 alone");
  const again = await post(at("15:10"), { sheets: gym, date: "2026-11-09T15:10:00Z" });
  expect(again.verdict).toBe("pass");
});

test("what crossed with its cancellation can be cancelled once more, and is asked about anew if it crosses again", async () => {
  const at = (time: string): Desk => ({ ...desk, clock: { now: () => new Date(`2026-11-09T${time}:00Z`) } });
  const date = (time: string) => ({ date: `2026-11-09T${time}:00Z` });
  const first = await post(at("14:00"), { sheets: pool, ...date("14:00") });
  await post(at("14:20"), { text: "CANCEL B-2", to: first, ...date("14:20") });
  const late = await post(at("14:30"), { sheets: pool.slice(3), ...date("14:10") });
  const yes = await post(at("14:40"), { text: "1 YES", to: late, ...date("14:40") });
  expect(yes.verdict).toBe("pass");
  const gone = await post(at("14:50"), { text: "CANCEL B-2", to: yes, ...date("14:50") });
  expect(gone.verdict).toBe("pass");
  const crossed = await post(at("15:00"), { sheets: pool.slice(3), ...date("14:45") });
  expect(checksOf(crossed)).toEqual(["sheet-after-cancellation"]);
});

test("a cancelled sheet that comes back unchanged in a whole set is asked about, and one by itself is not", async () => {
  const first = await post(desk, { sheets: pool });
  await post(desk, { text: "CANCEL B-2", to: first });
  const set = await post(desk, { sheets: pool });
  expect(checksOf(set)).toContain("sheet-after-cancellation");
  expect(set.verdict).toBe("confirm");
  // It stays open when the rest comes again, and is settled once.
  await post(desk, { sheets: [{ mark: "B-3", legend: ["GYM"] }] });
  expect((await orderOf()).verdict).toBe("confirm");
  expect((await post(desk, { sheets: pool.slice(0, 3) })).verdict).toBe("confirm");
  expect((await post(desk, { text: "1 YES", to: set })).verdict).toBe("pass");
  expect((await post(desk, { sheets: pool })).verdict).toBe("pass");
});

test("a sheet that was put elsewhere and comes back where it stood is asked about, alone and in a whole set", async () => {
  await post(desk, { sheets: pool });
  const gymOf = async () => (await orderOf()).sheets.find(({ mark }) => mark === "B-2");
  const acts = [{ kind: "place", sheet: (await gymOf())?.id ?? "", mark: "B-5" }] as const;
  const note = {
    id: "1",
    buyer: "greta@fallowmere.example",
    order: "FM-72",
    by: "Rosa Imhoff",
    why: "told by phone",
  };
  await takeNote(desk, { ...note, acts });
  expect(standing(await orderOf())).toContain("B-5 alone");
  // Another sheet for the place that it has left is just that.
  expect((await post(desk, { sheets: [{ mark: "B-2", legend: ["SAUNA"] }] })).verdict).toBe("pass");
  const alone = await post(desk, { sheets: pool.slice(3) });
  expect(checksOf(alone)).toContain("sheet-after-cancellation");
  expect((await post(desk, { text: "1 YES", to: alone })).verdict).toBe("pass");
  await takeNote(desk, {
    ...note,
    id: "2",
    acts: [{ ...acts[0], sheet: (await gymOf())?.id ?? "", mark: "B-6" }],
  });
  expect(checksOf(await post(desk, { sheets: pool }))).toContain("sheet-after-cancellation");
});

test("beside a sheet for another station it counts", async () => {
  const first = await post(desk, { sheets: pool });
  const reply = await post(desk, {
    to: first,
    text: "CANCEL B-2\n\nThanks\nGreta",
    sheets: [{ mark: "B-3", legend: ["GYM"] }],
  });
  expect(reply.verdict).toBe("pass");
  expect(standing(await orderOf())).toEqual(["B-1 plate", "B-1 1", "B-1 2", "B-3 alone"]);
});

test("nobody but a party to the order withdraws anything, in no other thread than its own", async () => {
  const first = await post(desk, { sheets: pool });
  const theirs = { from: "Noor Vale <noor@otterlane.example>" };
  const stranger = await post(desk, { ...theirs, to: first, text: "Cancel order" });
  expect(stranger.verdict).toBe("person");
  expect(await answerTo(desk, stranger)).not.toContain("FM-72");
  const other = await post(desk, { sheets: [{ mark: "C-1", legend: ["GYM"], fill: { order: "FM-80" } }] });
  expect((await post(desk, { to: other, text: "CANCEL B-2" })).verdict).toBe("person");
  expect((await post(desk, { text: "CANCEL B-2" })).verdict).toBe("person");
  expect((await post(desk, { text: "Cancel order FM-72" })).verdict).toBe("person");
  expect((await orderOf()).withdrawn).toEqual([]);
});

test("burin order shows what was withdrawn and what was moved, where to, and by what", async () => {
  const folder = temporaryFolder();
  const store = await openStore(openSqlite(join(folder, "record.sqlite")), openBlobs(join(folder, "blobs")));
  desk = await temporaryDesk({ store });
  const first = await post(desk, { sheets: pool });
  await post(desk, { to: first, text: "CANCEL B-1 position 2" });
  await post(desk, { sheets: [{ mark: "C-1", legend: ["GYM"], fill: { order: "FM-80" } }] });
  const gym = (await orderOf()).sheets.find(({ mark }) => mark === "B-2")?.id ?? "";
  const by = { buyer: "greta@fallowmere.example", by: "Rosa Imhoff", why: "Greta says so" };
  const move = { kind: "place", sheet: gym, mark: "C-2", order: "FM-80" } as const;
  await takeNote(desk, { id: "n1", order: "FM-72", ...by, acts: [move] });
  const other = (await orderOf("FM-80")).sheets.find(({ mark }) => mark === "C-1")?.id ?? "";
  const within = { kind: "place", sheet: other, mark: "C-3" } as const;
  await takeNote(desk, { id: "n2", order: "FM-80", ...by, acts: [within] });
  await store.close();
  const config = resolve("config");
  writeFileSync(
    join(folder, "burin.yaml"),
    `catalogue: ${config}/catalogue.yaml\neditions: ${config}/editions\nrecord: .\nfolders: [in]\nanswers: { folder: a, from: { name: A, address: a@b.example } }\ntime_zone: Etc/UTC\n`,
  );
  const lines: string[] = [];
  const io = {
    out: (text: string) => lines.push(text),
    err: (text: string) => lines.push(text),
    progress: () => undefined,
  };
  await order.run(["FM-72", "--settings", join(folder, "burin.yaml")], io);
  expect(lines.join("\n")).toContain(
    "\n\nWithdrawn:\n  B-1 device D2, position 2 (B-1 (3).pdf), by letter 2\n\nPut elsewhere:\n  B-2 device D2, alone (B-2.pdf): moved to order FM-80, C-2 device D2, alone, by note 4\n\n",
  );
  await order.run(["FM-80", "--settings", join(folder, "burin.yaml")], io);
  expect(lines.at(-1)).toContain(
    "\n\nPut elsewhere:\n  C-1 device D2, alone (C-1.pdf): moved to C-3 device D2, alone, by note 5\n\n",
  );
  expect(lines.at(-1)).not.toContain("Withdrawn:");
});
