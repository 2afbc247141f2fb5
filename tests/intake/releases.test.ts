import { simpleParser } from "mailparser";
import { describe, expect, test } from "vitest";
import { peopleLines } from "../../src/audit/people-text.ts";
import { sendAlarms } from "../../src/intake/alarm.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { prepareRelease, releaseOrder, releasesDue } from "../../src/intake/release.ts";
import { putAside, recordCut } from "../../src/intake/settle.ts";
import { takeDue } from "../../src/intake/take.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import type { PackageFile } from "../../src/release/release.ts";
import type { Act, Note } from "../../src/trade/note.ts";
import type { OrderRecord } from "../../src/trade/record.ts";
import { keepingSender, temporaryDesk } from "../make/desk.ts";
import { answerTo, post } from "../make/thread.ts";

const room = "engraving@quillgate.example";
const on = "2026-11-09";
let noted = 0;

const noteOf = (...acts: Act[]): Note => ({
  id: `r${++noted}`,
  buyer: "greta@fallowmere.example",
  order: "FM-80",
  by: "Rosa Imhoff",
  why: "all is right",
  acts,
});

async function deskWithRoom(): Promise<Desk & { readonly sender: ReturnType<typeof keepingSender> }> {
  const sender = keepingSender();
  const made = await temporaryDesk({ sender });
  return { ...made, sender, rules: { ...made.rules, room } };
}

async function orderIn(desk: Desk): Promise<OrderRecord> {
  const [order] = await desk.store.orders.named("FM-80");
  if (order === undefined) throw new Error("no order");
  return order;
}

const sheetOf = (mark: string, ...legend: string[]) => ({ mark, legend, fill: { order: "FM-80" } });
const release = (desk: Desk) => takeNote(desk, noteOf({ kind: "release", on }));

/** What the engraving room was told. */
async function alarms({ sender }: { readonly sender: ReturnType<typeof keepingSender> }): Promise<string[]> {
  const told = sender.kept.filter(({ recipient }) => recipient === room);
  const read = await Promise.all(told.map(({ bytes }) => simpleParser(Buffer.from(bytes))));
  return read.map(({ subject, text }) => `${subject}\n${text}`);
}

/** The orders that are released by themselves now. */
async function numbersDue(desk: Desk): Promise<string[]> {
  return (await releasesDue(desk)).map(({ number }) => number);
}

/** What a package says of the release before. */
function changesIn(files: readonly PackageFile[]): string {
  return new TextDecoder().decode(files.find(({ path }) => path === "changes.txt")?.bytes);
}

test("an order that has not passed is not released", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "SALONA")] });
  const taken = await release(desk);
  expect(await desk.store.letters.read(taken.kind === "wrong" ? 0 : taken.letter)).toMatchObject({
    state: "held",
    why: "the order has not passed",
  });
  expect((await orderIn(desk)).released).toBeUndefined();
});

test("a released order tells its buyer so, and stays as it is while nothing changes", async () => {
  const desk = await deskWithRoom();
  const { letter } = await post(desk, { sheets: [sheetOf("P-1", "NORTH")] });
  await release(desk);
  while (await takeDue(desk));
  const answer = await answerTo(desk, await desk.store.letters.read(letter + 1));
  expect(answer).toContain("Released to engraving on 2026-11-09 by Rosa Imhoff");
  expect(answer).toContain("the engraving room has what it needs");
  expect(answer).not.toContain("releases the order");
  const { released, sheets } = await orderIn(desk);
  expect(released).toMatchObject({ revision: 2, on });
  expect(released?.pieces.map(({ sheet, engraved }) => [sheet, engraved])).toEqual(
    sheets.map(({ id }) => [id, false]),
  );
  // The same sheet once more changes nothing.
  expect((await post(desk, { sheets: [sheetOf("P-1", "NORTH")] })).verdict).toBe("pass");
  await sendAlarms(desk);
  expect(await alarms(desk)).toEqual([]);
});

test("what touches a released order stops it, alarms the engraving room once, and is for a person", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  const changed = await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
  expect(changed.verdict).toBe("person");
  expect(await answerTo(desk, changed)).toMatch(
    /released to engraving on 2026-11-09\.\s+Different\s+now:\s+P-2/,
  );
  // It may lie under the cutter.
  expect(await answerTo(desk, changed)).not.toContain("Nothing is cut");
  expect(await answerTo(desk, changed)).toMatch(/The\s+engraving\s+room\s+has\s+order\s+FM-80/);
  expect(await sendAlarms(desk)).toBe(true);
  expect(await sendAlarms(desk)).toBe(false);
  expect(await alarms(desk)).toEqual([
    expect.stringMatching(/^STOP: order FM-80 has changed\n[^]*Different now: P-2/),
  ]);
  const { messageId } = desk.sender.kept.find(({ recipient }) => recipient === room) ?? {};
  expect(messageId).toMatch(/^<burin\.[\w.]+@quillgate\.example>$/);
  // One of us decides, and releases anew. What was cut of the sheet before is void.
  const before = (await orderIn(desk)).released;
  const number = (await orderIn(desk)).questions[0]?.number ?? 0;
  await takeNote(desk, noteOf({ kind: "yes", number }));
  await release(desk);
  const packed = await prepareRelease("FM-80", { by: "Rosa Imhoff", before }, desk);
  const changes = packed.ok ? packed.files.find(({ path }) => path === "changes.txt") : undefined;
  const text = new TextDecoder().decode(changes?.bytes);
  expect(text).toMatch(/VOID: P-2 position .* \(P-2\.pdf, \w+\): “SOUTH”, “OFF”, “POOL”\n/);
  expect(text).toMatch(/NEW: {2}P-2 position .*: “WEST”, “OFF”, “POOL”\n/);
  expect(text).not.toContain("P-1");
  expect((await post(desk, { sheets: [sheetOf("P-1", "NORTH")] })).verdict).toBe("pass");
});

test("an order is released by itself only for buyers who are named, after the hours, and if nothing came", async () => {
  const made = await deskWithRoom();
  let now = made.clock.now();
  const put = (name: string) => Promise.resolve(`released/${name}`);
  const deskFor = (...buyers: string[]): Desk => ({
    ...made,
    clock: { now: () => now },
    rules: { ...made.rules, releasing: { afterHours: 24, buyers, put } },
  });
  const desk = deskFor("fallowmere.example");
  const after = (hours: number): void => {
    now = new Date(now.getTime() + hours * 3_600_000);
  };
  await post(desk, { sheets: [sheetOf("P-1", "NORTH")] });
  after(23);
  expect(await numbersDue(desk)).toEqual([]);
  // Another letter about it begins anew.
  await post(desk, { sheets: [sheetOf("P-2", "SOUTH")] });
  after(23);
  expect(await numbersDue(desk)).toEqual([]);
  after(1);
  expect(await numbersDue(deskFor("brightwire.example"))).toEqual([]);
  expect(await numbersDue(deskFor("mere.example"))).toEqual([]);
  expect(await numbersDue(desk)).toEqual(["FM-80"]);
  expect(await releaseOrder(desk, "FM-80", "Burin", put)).toEqual({
    ok: true,
    path: "released/FM-80 revision 3",
  });
  expect(await numbersDue(desk)).toEqual([]);
  // The same again writes the same package again, and releases nothing anew.
  expect(await releaseOrder(desk, "FM-80", "Ada", put)).toEqual({
    ok: true,
    path: "released/FM-80 revision 3",
  });
  expect((await orderIn(desk)).released).toMatchObject({ by: "Burin", revision: 3 });
});

describe("an order is not released while something that may concern it is open", () => {
  const put = (name: string) => Promise.resolve(`released/${name}`);
  const rules = { releasing: { afterHours: 1, buyers: ["fallowmere.example"], put } };
  const omar = "Omar Pell <omar@fallowmere.example>";
  const by = { name: "Rosa Imhoff", why: "read it" };

  async function passed(more: Partial<Desk["rules"]> = {}): Promise<Desk> {
    const made = await deskWithRoom();
    let now = made.clock.now();
    const clock = {
      now: () => {
        now = new Date(now.getTime() + 60_000);
        return now;
      },
    };
    const desk = { ...made, clock, rules: { ...made.rules, ...rules, ...more } };
    await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
    return desk;
  }
  const due = (desk: Desk) => {
    const later = new Date(desk.clock.now().getTime() + 2 * 3_600_000);
    return numbersDue({ ...desk, clock: { now: () => later } });
  };
  const byHand = (desk: Desk) => releaseOrder(desk, "FM-80", "Rosa Imhoff", put);

  test("a letter of its buyer that waits for its turn", async () => {
    const made = await passed();
    const mostAnswers = { ...made.rules.mostAnswers, toOneADay: 1 };
    const desk = { ...made, rules: { ...made.rules, mostAnswers } };
    const waits = await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
    expect(waits.state).toBe("received");
    expect(await due(desk)).toEqual([]);
    expect(await byHand(desk)).toEqual({
      ok: false,
      why: ["letter 2 of greta@fallowmere.example waits to be judged, and may concern it"],
    });
  });

  test("a letter of its buyer's company that is held", async () => {
    const desk = await passed();
    const authority = "mx.quillgate.example";
    const held = await post({ ...desk, rules: { ...desk.rules, authority } }, { from: omar, text: "Stop!" });
    expect(held.state).toBe("held");
    expect(await due(desk)).toEqual([]);
    expect(await byHand(desk)).toMatchObject({ why: [expect.stringMatching(/^letter 2 .* is held/)] });
    await putAside(desk, held.letter, by);
    expect(await due(desk)).toEqual(["FM-80"]);
  });

  test("a stranger's letter with its number holds it back by itself, and no person who releases it", async () => {
    const desk = await passed();
    const held = await post(desk, {
      from: "Eve Marsh <eve@marsh.example>",
      sheets: [sheetOf("P-3", "WEST")],
    });
    expect(held.why).toBeDefined();
    expect(await due(desk)).toEqual([]);
    expect(await byHand(desk)).toMatchObject({ ok: true });
  });

  test.each([
    ["Stop, B-2 has the wrong legend.", "greta@fallowmere.example"],
    ["Please do not engrave anything for Mill Race Baths yet.", omar],
  ])("words that name no number: %s", async (text, from) => {
    const desk = await passed();
    const words = await post(desk, { text, from });
    expect((await orderIn(desk)).verdict).toBe("pass");
    expect(await due(desk)).toEqual([]);
    expect(await byHand(desk)).toMatchObject({ why: [expect.stringMatching(/^letter 2 .* to read/)] });
    await putAside(desk, words.letter, by);
    expect(await due(desk)).toEqual(["FM-80"]);
    expect(await byHand(desk)).toMatchObject({ ok: true });
  });

  test("words about another order of the buyer are for a person, who may release this one", async () => {
    const desk = await passed();
    const other = await post(desk, {
      sheets: [{ mark: "R-1", legend: ["NORTH"], fill: { order: "KX-551" } }],
    });
    await post(desk, { to: other, text: "Stop, all the legends are wrong." });
    expect(await due(desk)).toEqual([]);
    expect(await byHand(desk)).toMatchObject({ ok: true });
  });

  test("what somebody else wrote, or what has passed itself, holds nothing up", async () => {
    const desk = await passed();
    await post(desk, { from: "Eve Marsh <eve@marsh.example>", text: "Stop, B-2 has the wrong legend." });
    await post(desk, { sheets: [{ mark: "R-1", legend: ["NORTH"], fill: { order: "KX-551" } }] });
    expect(await due(desk)).toEqual(["FM-80", "KX-551"]);
  });

  test("a sheet of one of its stations under another number, until it is answered", async () => {
    const desk = await passed();
    const corrected = { mark: "P-2", legend: ["WEST"], fill: { order: "FM-08" } };
    expect((await post(desk, { sheets: [corrected] })).verdict).toBe("confirm");
    expect((await orderIn(desk)).verdict).toBe("pass");
    expect(await due(desk)).toEqual([]);
    expect(await byHand(desk)).toEqual({
      ok: false,
      why: ["order FM-08 is asked whether it is meant for this one"],
    });
    const [asked] = await desk.store.orders.named("FM-08");
    const number = asked?.questions[0]?.number ?? 0;
    await takeNote(desk, { ...noteOf({ kind: "yes", number }), order: "FM-08" });
    expect(await due(desk)).toEqual(["FM-80", "FM-08"]);
  });

  test("a later sheet of one of its stations without a number, until one with the number comes", async () => {
    const desk = await passed();
    await post(desk, { sheets: [{ mark: "R-1", legend: ["NORTH"], fill: { order: "KX-551" } }] });
    const noNumber = { mark: "P-2", legend: ["WEST"], fill: { order: "" } };
    const came = await post(desk, { text: "Corrected P-2 attached.", sheets: [noNumber] });
    expect(came.verdict).toBe("fail");
    // No station of the other order is meant.
    expect(await due(desk)).toEqual(["KX-551"]);
    expect(await byHand(desk)).toMatchObject({ why: [expect.stringContaining("P-2.pdf came later")] });
    await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
    expect(await due(desk)).toContain("FM-80");
  });
});

test("nobody outside takes back what is released", async () => {
  const desk = await deskWithRoom();
  const first = await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  const cancelled = await post(desk, { text: "CANCEL P-2", to: first });
  expect(cancelled.verdict).toBe("person");
  expect((await orderIn(desk)).sheets).toHaveLength(2);
  await sendAlarms(desk);
  expect(await alarms(desk)).toEqual([expect.stringContaining("CANCEL P-2")]);
});

test("nobody outside takes back what is released, though its sheet came again since", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  // Another contact changes no piece, and the sheet stands under another id.
  const fill = { order: "FM-80", "contact.name": "Hanna Brook" };
  const again = await post(desk, { sheets: [{ ...sheetOf("P-2", "SOUTH"), fill }] });
  expect(again.verdict).toBe("pass");
  const { sheets, released } = await orderIn(desk);
  expect(sheets.map(({ id }) => id)).not.toEqual(released?.pieces.map(({ sheet }) => sheet));
  const cancelled = await post(desk, { text: "CANCEL P-2", to: again });
  expect(cancelled.verdict).toBe("person");
  expect((await orderIn(desk)).sheets).toHaveLength(2);
});

test("nobody outside takes back all that is left of a released order, and nobody moves it away", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [{ mark: "R-1", legend: ["NORTH"], fill: { order: "FM-81" } }] });
  await post(desk, { sheets: [sheetOf("P-1", "NORTH")] });
  await release(desk);
  const changed = await post(desk, { sheets: [sheetOf("P-1", "EAST")] });
  const cancelled = await post(desk, { text: "CANCEL P-1", to: changed });
  expect(cancelled.verdict).toBe("person");
  const { sheets, questions } = await orderIn(desk);
  expect(sheets).toHaveLength(1);
  expect(questions.map(({ problem }) => problem.check)).toContain("order-released");
  const sheet = sheets[0]?.id ?? "";
  expect(await takeNote(desk, noteOf({ kind: "place", sheet, mark: "R-2", order: "FM-81" }))).toEqual({
    kind: "wrong",
    why: "order FM-80 is released to engraving, and nothing would be left of it",
  });
});

describe("a change of what is released that was decided settles no other", () => {
  const decide = async (desk: Desk): Promise<void> => {
    const { verdict, questions } = await orderIn(desk);
    expect(verdict).toBe("person");
    await takeNote(desk, noteOf({ kind: "yes", number: questions[0]?.number ?? 0 }));
    expect((await orderIn(desk)).verdict).toBe("pass");
  };
  const threeReleased = async (): Promise<Desk> => {
    const desk = await deskWithRoom();
    await post(desk, { sheets: [{ mark: "R-1", legend: ["NORTH"], fill: { order: "FM-81" } }] });
    await post(desk, {
      sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH"), sheetOf("P-3", "WEST")],
    });
    await release(desk);
    return desk;
  };
  const moveAway = async (desk: Desk, from: string): Promise<void> => {
    const sheet = (await orderIn(desk)).sheets.find(({ mark }) => mark === from)?.id ?? "";
    const moved = await takeNote(desk, noteOf({ kind: "place", sheet, mark: `R-${from}`, order: "FM-81" }));
    expect(moved.kind).toBe("judged");
  };

  test("of two sheets that changed, one goes away", async () => {
    const desk = await threeReleased();
    await post(desk, { sheets: [sheetOf("P-1", "EAST")] });
    await decide(desk);
    await post(desk, { sheets: [sheetOf("P-2", "EAST")] });
    await decide(desk);
    // What is different now reads as it did before P-2 changed, and a piece is missing.
    await moveAway(desk, "P-2");
    await decide(desk);
  });

  test("one sheet is lost, comes again, and another is lost", async () => {
    const desk = await threeReleased();
    for (const [mark, legend] of [
      ["P-2", "SOUTH"],
      ["P-3", "WEST"],
    ] as const) {
      await post(desk, { sheets: [sheetOf(mark, "EAST")] });
      await moveAway(desk, mark);
      await decide(desk);
      await post(desk, { sheets: [sheetOf(mark, legend)] });
      expect((await orderIn(desk)).verdict).toBe("pass");
    }
  });
});

test("what is settled after a release waits for a second one: its buyer and our own people are told", async () => {
  const desk = await deskWithRoom();
  const list = () => readPeople(desk.store, desk.clock.now());
  await post(desk, { sheets: [sheetOf("P-1", "NORTH")] });
  await release(desk);
  expect(await list()).toEqual([]);
  await post(desk, { sheets: [sheetOf("P-1", "EAST")] });
  const number = (await orderIn(desk)).questions[0]?.number ?? 0;
  const settled = await takeNote(desk, noteOf({ kind: "yes", number }));
  while (await takeDue(desk));
  expect((await orderIn(desk)).verdict).toBe("pass");
  const { letter } = settled as { readonly letter: number };
  const answer = await answerTo(desk, await desk.store.letters.read(letter));
  expect(answer.replaceAll(/\s+/g, " ")).toContain(
    "- The engraving room still has order FM-80 as it was before the change. - A person at Quillgate Stations releases it once more; only then is the change cut. - If a legend is wrong, call 312-555-0140 at once.",
  );
  const waiting = await list();
  expect(waiting).toMatchObject([{ what: "order", order: "FM-80", letters: [] }]);
  expect(peopleLines(waiting, desk.clock.now()).join("\n")).toMatch(
    /^ 1\. Order FM-80[^]*\n {4}changed since its release on 2026-11-09, and all of that is settled: it has to be released once more\n {4}→ burin release 'FM-80' --by NAME$/,
  );
  const listed = await desk.store.orders.list({ forPerson: true, most: 9 });
  expect(listed.map((one) => one.number)).toEqual(["FM-80"]);
  await release(desk);
  expect(await list()).toEqual([]);
  expect(await desk.store.orders.list({ forPerson: true, most: 9 })).toEqual([]);
});

test("a released order that its buyer has to mend stays on the people's list until it is mended", async () => {
  const desk = await deskWithRoom();
  const list = () => readPeople(desk.store, desk.clock.now());
  const first = await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  // The first row is wider than its face.
  await post(desk, { sheets: [sheetOf("P-2", "WESTERN TERRACES AND WALKS")] });
  const { verdict, questions } = await orderIn(desk);
  expect(verdict).toBe("fail");
  const released = questions.find(({ problem }) => problem.check === "order-released");
  await takeNote(desk, noteOf({ kind: "yes", number: released?.number ?? 0 }));
  expect((await orderIn(desk)).verdict).toBe("fail");
  const lines = peopleLines(await list(), desk.clock.now()).join("\n");
  expect(lines).toMatch(
    /^ 1\. Order FM-80[^]*released on 2026-11-09, and now waits for its buyer, who is not reminded \(fail\): Row 1 of button 1/,
  );
  expect(lines).not.toContain("burin release");
  expect((await desk.store.verify()).differ).toEqual([]);
  await post(desk, { sheets: [sheetOf("P-2", "SOUTH")] });
  expect((await orderIn(desk)).verdict).toBe("pass");
  expect(await list()).toEqual([]);
  expect(first.verdict).toBe("pass");
});

test("what is engraved is recorded station by station, and a change is told to have come too late", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  expect(await takeNote(desk, noteOf({ kind: "cut", stations: [] }))).toMatchObject({ kind: "wrong" });
  await release(desk);
  expect(await takeNote(desk, noteOf({ kind: "cut", stations: ["P-9"] }))).toMatchObject({ kind: "wrong" });
  const { kept } = desk.sender;
  while (await takeDue(desk));
  const told = kept.length;
  await takeNote(desk, noteOf({ kind: "cut", stations: ["p-2"] }));
  while (await takeDue(desk));
  expect(kept).toHaveLength(told);
  const { released, sheets, verdict } = await orderIn(desk);
  expect(verdict).toBe("pass");
  expect(released?.pieces.flatMap((one) => (one.engraved ? one.sheet : []))).toEqual(
    sheets.filter(({ mark }) => mark === "P-2").map(({ id }) => id),
  );
  const late = await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
  expect(await answerTo(desk, late)).toMatch(/some\s+of\s+it\s+is\s+engraved\s+already/);
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("what lies engraved of a station is recorded though its sheet has changed since, and is void then", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
  const order = await orderIn(desk);
  expect(await recordCut(desk, order, ["P-2"], "Bo")).toEqual({
    done: true,
    words:
      "Order FM-80: 1 of 2 pieces are engraved. It has changed since it was released: some of them may be void.",
  });
  // Whoever has settled the change is told that it came after the cutter.
  for (const says of ["different", "engraved"]) {
    const [question] = (await orderIn(desk)).questions;
    expect(question?.problem.wording).toBe(says);
    await takeNote(desk, noteOf({ kind: "yes", number: question?.number ?? 0 }));
  }
  const put = (_: string, files: readonly PackageFile[]) => Promise.resolve(changesIn(files));
  expect(await releaseOrder(desk, "FM-80", "Rosa Imhoff", put)).toMatchObject({
    path: expect.stringMatching(/VOID: P-2 .*“SOUTH”.* \(engraved already: scrap it\)\n/),
  });
  // The new piece is not engraved yet.
  expect((await orderIn(desk)).released?.pieces.some(({ engraved }) => engraved)).toBe(false);
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("the engraving room that was told to stop is told when it can go on: as it was, or by a second release", async () => {
  const desk = await deskWithRoom();
  const told = async (): Promise<string | undefined> => {
    while (await sendAlarms(desk));
    return (await alarms(desk)).at(-1)?.replaceAll(/\s+/g, " ");
  };
  const first = await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  expect(await told()).toBeUndefined();
  await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
  expect(await told()).toContain("STOP: order FM-80 has changed");
  await post(desk, { sheets: [sheetOf("P-2", "SOUTH")] });
  expect(await told()).toMatch(/^GO ON: order FM-80 can be cut .* It is as it was released\./);
  const said = await post(desk, { text: "Please wait with it.", to: first });
  expect(await told()).toContain("STOP");
  await putAside(desk, said.letter, { name: "Rosa Imhoff", why: "called: go on" });
  expect(await told()).toContain("GO ON");
  // What is settled otherwise than released holds only when it is released once more.
  await post(desk, { sheets: [sheetOf("P-2", "EAST")] });
  await told();
  const stops = (await alarms(desk)).length;
  const [question] = (await orderIn(desk)).questions;
  await takeNote(desk, noteOf({ kind: "yes", number: question?.number ?? 0 }));
  await told();
  expect(await alarms(desk)).toHaveLength(stops);
  await release(desk);
  expect(await told()).toMatch(
    /^GO ON: .* released once more, as revision \d+\. In the new package, changes\.txt/,
  );
});

test("an order whose package cannot be written is not released, and its buyer is told nothing", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH")] });
  const sent = desk.sender.kept.length;
  const put = Object.assign(() => Promise.resolve("here"), {
    try: () => Promise.reject(new Error("no room on the disk")),
  });
  await expect(releaseOrder(desk, "FM-80", "Rosa Imhoff", put)).rejects.toThrow("no room");
  expect((await orderIn(desk)).released).toBeUndefined();
  expect(desk.sender.kept.length).toBe(sent);
  expect(await releaseOrder(desk, "FM-80", "Rosa Imhoff", () => Promise.resolve("here"))).toMatchObject({
    ok: true,
  });
});

test("a second release that died before it was written says what is void when it is written", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH"), sheetOf("P-2", "SOUTH")] });
  await release(desk);
  await post(desk, { sheets: [sheetOf("P-2", "WEST")] });
  await takeNote(desk, noteOf({ kind: "yes", number: (await orderIn(desk)).questions[0]?.number ?? 0 }));
  const dies = () => Promise.reject(new Error("no room on the disk"));
  await expect(releaseOrder(desk, "FM-80", "Rosa Imhoff", dies)).rejects.toThrow("no room");
  const put = (_: string, files: readonly PackageFile[]) => Promise.resolve(changesIn(files));
  expect(await releaseOrder(desk, "FM-80", "Rosa Imhoff", put)).toMatchObject({
    path: expect.stringMatching(/revision 2.*\nVOID: P-2 .*\nNEW: {2}P-2 /),
  });
});

test("each change of a released order is asked about, and told to the engraving room, once more", async () => {
  const desk = await deskWithRoom();
  await post(desk, { sheets: [sheetOf("P-1", "NORTH")] });
  await release(desk);
  for (const [i, legend] of ["SOUTH", "EAST"].entries()) {
    await post(desk, { sheets: [sheetOf("P-1", legend)] });
    const { verdict, questions } = await orderIn(desk);
    expect(verdict).toBe("person");
    expect(questions.map(({ problem }) => problem.check)).toEqual(["order-released"]);
    while (await sendAlarms(desk));
    expect(await alarms(desk)).toHaveLength(i + 1);
    await takeNote(desk, noteOf({ kind: "yes", number: questions[0]?.number ?? 0 }));
    // What is decided stays so while nothing else changes.
    await takeNote(desk, noteOf({ kind: "read", letter: 1 }));
    expect((await orderIn(desk)).verdict).toBe("pass");
  }
});
