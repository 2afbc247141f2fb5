import { beforeEach, describe, expect, test } from "vitest";
import { without } from "../../src/checks/sample.ts";
import { takeNote } from "../../src/intake/check-note.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { movesIn } from "../../src/intake/moves.ts";
import { takeDue } from "../../src/intake/take.ts";
import { newBuyer } from "../../src/judging/state.ts";
import type { Act, Note } from "../../src/trade/note.ts";
import type { OrderRecord } from "../../src/trade/record.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { temporaryDesk } from "../make/desk.ts";
import { aloneDevice, device, deviceAt, plate as plateSheet } from "../make/sample.ts";
import { answerTo, post, type Sent } from "../make/thread.ts";

let desk: Desk;
beforeEach(async () => {
  desk = await temporaryDesk();
});

const inPlate = { standing: "in-plate", gangs: "2" };
const plate: Sent = { mark: "B-1", kind: "plate", legend: ["SPA"], fill: { gangs: "2" } };
const sauna: Sent = { mark: "B-1", legend: ["SAUNA"], fill: { ...inPlate, position: "1" } };
const shower: Sent = { mark: "B-1", legend: ["SHOWER"], fill: { ...inPlate, position: "2" } };
const loose: Sent = { mark: "", legend: ["SHOWER"], fill: { ...inPlate } };
const elsewhere = (sent: Sent, order = "FM-90"): Sent => ({ ...sent, fill: { ...sent.fill, order } });

let noted = 0;
const noteOf = (act: Omit<Extract<Act, { kind: "place" }>, "kind">, order = "FM-72"): Note => ({
  id: `m${++noted}`,
  buyer: "greta@fallowmere.example",
  order,
  by: "Rosa Imhoff",
  why: "Greta said so on the telephone",
  acts: [{ kind: "place", ...act }],
});

async function orderOf(number = "FM-72"): Promise<OrderRecord> {
  const [order] = await desk.store.orders.named(number);
  if (order === undefined) throw new Error(`no order ${number}`);
  return order;
}

async function idOf(legend: string, number = "FM-72"): Promise<string> {
  const { sheets } = await orderOf(number);
  const found = sheets.find(({ legends }) => legends.some(({ rows }) => rows.includes(legend)));
  if (found === undefined) throw new Error(`no sheet of ${legend}`);
  return found.id;
}

const standing = ({ sheets }: OrderRecord): string[] =>
  sheets
    .map(
      (sheet) =>
        `${sheet.mark ?? "?"} ${sheet.kind === "plate" ? "plate" : sheet.standing === "alone" ? "alone" : (sheet.position ?? "?")}`,
    )
    .toSorted();

test("a loose device that one of us links to its station makes the order pass, and its sender is told", async () => {
  const first = await post(desk, { sheets: [plate, sauna, loose] });
  expect(first.verdict).toBe("fail");
  const sheet = await idOf("SHOWER");
  const taken = await takeNote(desk, noteOf({ sheet, mark: "b 1", position: 2 }));
  expect(taken.kind).toBe("judged");
  const order = await orderOf();
  expect(order).toMatchObject({ verdict: "pass", missing: [], questions: [] });
  expect(standing(order)).toEqual(["B-1 1", "B-1 2", "B-1 plate"]);
  expect(order.withdrawn).toMatchObject([{ letter: first.letter + 1, sheet: { id: sheet } }]);
  while (await takeDue(desk));
  const note = await desk.store.letters.read(first.letter + 1);
  expect(note).toMatchObject({ state: "sent", verdict: "pass", sheets: 1 });
  expect((await answerTo(desk, note)).replaceAll(/\s+/g, " ")).toMatch(
    /^PASS: order FM-72 is complete, nothing to fix\. Please read below what will be cut\. You need do nothing more\. Rosa Imhoff has put 1 sheet elsewhere \(“Greta said so on the telephone”\): - \.pdf: Station mark — → B-1; Position — → 2 Your own file stays as it is\. If this is not right, reply to this letter\. Order FM-72, [^:]*3 sheets came earlier\./,
  );
  // The original of the copy is what came.
  const copy = `${first.letter + 1}/1`;
  const originals = await desk.store.orders.originals([sheet, copy]);
  expect(originals.get(copy)).toEqual(originals.get(sheet));
  expect(await desk.store.verify()).toMatchObject({ orders: 1, differ: [], older: 0 });
});

test("a sheet moves to another order of its buyer, and both are judged again", async () => {
  await post(desk, { sheets: [plate, sauna] });
  await post(desk, { sheets: [elsewhere({ mark: "B-2", legend: ["GYM"] }), elsewhere(shower)] });
  const [here, there] = [await orderOf(), await orderOf("FM-90")];
  expect([here.verdict, there.verdict]).toEqual(["waiting", "confirm"]);
  const sheet = await idOf("SHOWER", "FM-90");
  await takeNote(desk, noteOf({ sheet, order: "fm 72" }, "FM-90"));
  expect(await orderOf()).toMatchObject({ verdict: "pass", revision: 2 });
  expect(await orderOf("FM-90")).toMatchObject({ verdict: "pass", revision: 2 });
  expect(standing(await orderOf())).toEqual(["B-1 1", "B-1 2", "B-1 plate"]);
  expect(standing(await orderOf("FM-90"))).toEqual(["B-2 alone"]);
  const note = await desk.store.letters.read(3);
  expect(note.orders.toSorted()).toEqual(["FM-72", "FM-90"]);
  expect(await answerTo(desk, note)).toContain("B-1.pdf: Order number FM-90 → FM-72");
  expect(await desk.store.verify()).toMatchObject({ orders: 2, differ: [], older: 0 });
});

test("an order that a move leaves empty has no verdict, and its buyer is told", async () => {
  await post(desk, { sheets: [plate, sauna] });
  await post(desk, { sheets: [elsewhere(shower)] });
  await takeNote(desk, noteOf({ sheet: await idOf("SHOWER", "FM-90"), order: "FM-72" }, "FM-90"));
  expect((await orderOf("FM-90")).verdict).toBeUndefined();
  expect((await orderOf()).verdict).toBe("pass");
  expect((await answerTo(desk, await desk.store.letters.read(3))).replaceAll(/\s+/g, " ")).toContain(
    "Nothing is left of order FM-90.",
  );
  expect(await desk.store.verify()).toMatchObject({ orders: 2, differ: [], older: 0 });
});

test("what was put elsewhere gives way to a newer sheet of its buyer, as any sheet does", async () => {
  await post(desk, { sheets: [plate, sauna, loose] });
  await takeNote(desk, noteOf({ sheet: await idOf("SHOWER"), mark: "B-1", position: 2 }));
  const letter = await post(desk, { sheets: [{ ...shower, legend: ["STEAM"] }] });
  expect(letter.problems.map(({ check }) => check)).toContain("sheet-replaced");
  const { sheets } = await orderOf();
  expect(sheets.flatMap(({ legends }) => legends[0]?.rows[0] ?? []).toSorted()).toEqual([
    "SAUNA",
    "SPA",
    "STEAM",
  ]);
});

test("what somebody else has to look at stays: a scan that came is not taken for the sheet that moves", async () => {
  const scan = { file: "B-1 pos 2.pdf", bytes: new TextEncoder().encode("%PDF-1.7 nothing more") };
  await post(desk, { sheets: [plate, sauna, loose], files: [scan] });
  const { carried } = await orderOf();
  expect(carried.map(({ what }) => what)).toEqual(["file"]);
  await takeNote(desk, noteOf({ sheet: await idOf("SHOWER"), mark: "B-1", position: 2 }));
  const after = await orderOf();
  expect(after.carried).toEqual(carried);
  expect(after.verdict).not.toBe("pass");
});

test("what cannot be is refused with its reason, and changes nothing", async () => {
  await post(desk, { sheets: [plate, sauna, shower, { mark: "B-2", legend: ["GYM"] }, loose] });
  await post(desk, { from: "Eve <eve@stranger.example>", sheets: [elsewhere(sauna, "EV-1")] });
  const { sheets } = await orderOf();
  const [first, , , alone, astray] = sheets.map(({ id }) => id);
  const why = async (act: Parameters<typeof noteOf>[0]): Promise<string> => {
    const taken = await takeNote(desk, noteOf(act));
    return taken.kind === "wrong" ? taken.why : taken.kind;
  };
  const sheet = astray ?? "";
  expect(await why({ sheet, mark: "B-1", position: 2 })).toBe(
    "its place in order FM-72 is taken by sheet 1/3 (B-1 (3).pdf)",
  );
  expect(await why({ sheet: first ?? "", position: 2 })).toBe(
    "sheet 1/1 is of a plate, and has no position in a plate",
  );
  expect(await why({ sheet: alone ?? "", position: 2 })).toBe(
    "sheet 1/4 is of a device that stands alone, and has no position in a plate",
  );
  expect(await why({ sheet, mark: "TBA" })).toBe("“TBA” is no station mark");
  expect(await why({ sheet: alone ?? "", mark: "B-2" })).toBe("sheet 1/4 is there already");
  expect(await why({ sheet: "2/1", mark: "B-7" })).toBe("sheet 2/1 does not stand in order FM-72");
  // Another buyer's order is none of his.
  expect(await why({ sheet, order: "EV-1" })).toBe("no order EV-1 of greta@fallowmere.example is known");
  expect(await orderOf()).toMatchObject({ revision: 1, sheets });
});

test("a sheet that was replaced meanwhile is not moved", async () => {
  await post(desk, { sheets: [plate, sauna, shower] });
  const sheet = await idOf("SHOWER");
  await post(desk, { sheets: [{ ...shower, legend: ["STEAM"] }] });
  expect(await takeNote(desk, noteOf({ sheet, mark: "B-9" }))).toEqual({
    kind: "wrong",
    why: `sheet ${sheet} does not stand in order FM-72`,
  });
});

test("a released sheet goes to no other order, and the engraving room is told if it moves within its own", async () => {
  await post(desk, { sheets: [plate, sauna, shower, { mark: "B-2", legend: ["GYM"] }] });
  await post(desk, { sheets: [elsewhere({ mark: "B-3", legend: ["GYM"] })] });
  const release = { ...noteOf({ sheet: "" }), acts: [{ kind: "release", on: "2026-11-09" }] } as const;
  expect(await takeNote(desk, release)).toMatchObject({ kind: "judged" });
  const sheet = await idOf("GYM");
  expect(await takeNote(desk, noteOf({ sheet, order: "FM-90" }))).toEqual({
    kind: "wrong",
    why: "sheet 1/4 is released to engraving in order FM-72",
  });
  expect(await takeNote(desk, noteOf({ sheet, mark: "B-4" }))).toMatchObject({ kind: "judged" });
  expect(await orderOf()).toMatchObject({ verdict: "person" });
  expect(await desk.store.people.takeAlarms(desk.clock.now())).toMatchObject([
    { alarm: [{ order: "FM-72", on: "2026-11-09" }] },
  ]);
});

test("two people who put sheets at one place: the first is taken, and the second is told why not", async () => {
  await post(desk, { sheets: [plate, sauna, loose, { ...loose, legend: ["STEAM"] }] });
  const ids = [await idOf("SHOWER"), await idOf("STEAM")];
  const taken = await Promise.all(
    ids.map((sheet) => takeNote(desk, noteOf({ sheet, mark: "B-1", position: 2 }))),
  );
  while (await takeDue(desk));
  expect(taken.map(({ kind }) => kind)).not.toContain("wrong");
  expect(standing(await orderOf())).toEqual(["? ?", "B-1 1", "B-1 2", "B-1 plate"]);
  expect(await desk.store.letters.read(3)).toMatchObject({ state: "held", sheets: 0 });
  expect(await desk.store.verify()).toMatchObject({ orders: 1, differ: [], older: 0 });
});

describe("a place is taken by a sheet for the same place of the same station, and by no other", () => {
  const order = "BW-2207";
  const whole = { order, mark: "S-1", gangs: 3, standing: "in-plate" } as const;
  const there: readonly Sheet[] = [
    plateSheet({ id: "1/1", file: "plate.pdf", order, mark: "S-1", gangs: 3 }),
    deviceAt(1, { id: "1/2", file: "first.pdf", ...whole }),
    without(device({ id: "1/3", file: "loose.pdf", ...whole }), "position"),
    aloneDevice({ id: "1/4", file: "alone.pdf", order, mark: "S-2" }),
    without(deviceAt(3, { id: "1/5", file: "nowhere.pdf", ...whole }), "mark"),
    plateSheet({ id: "1/6", file: "astray plate.pdf", order, mark: "S-9", gangs: 3 }),
    deviceAt(2, { id: "1/7", file: "astray.pdf", ...whole, mark: "S-9" }),
    without(device({ id: "1/8", file: "astray loose.pdf", ...whole, mark: "S-9" }), "position"),
    aloneDevice({ id: "1/9", file: "astray alone.pdf", order, mark: "S-9" }),
    without(deviceAt(2, { id: "1/10", file: "nowhere either.pdf", ...whole }), "mark"),
    aloneDevice({ id: "1/11", file: "alone first.pdf", order, mark: "S-3", position: 1 }),
  ];
  const stateOf = (sheets: readonly Sheet[]) => ({
    ...newBuyer("greta@fallowmere.example"),
    orders: [{ number: order, sheets, carried: [], questions: [] }],
  });
  type Where = Omit<Extract<Act, { kind: "place" }>, "kind">;
  /** Where sheets stand then, or why they cannot. */
  const moved = (...acts: readonly Where[]): string | string[] => {
    const note = {
      ...noteOf({ sheet: "" }, order),
      acts: acts.map((act) => ({ kind: "place", ...act }) as const),
    };
    const moves = movesIn(note, stateOf(there), "7");
    return typeof moves === "string"
      ? moves
      : moves.map(
          ({ now }) =>
            `${now.id} ${now.mark ?? "?"} ${now.kind === "plate" ? "plate" : (now.position ?? "?")}`,
        );
  };
  const taken = (by: string): string => `its place in order ${order} is taken by sheet ${by}`;

  test.each<[string, readonly Where[], string | string[]]>([
    ["a plate, by a plate", [{ sheet: "1/6", mark: "S-1" }], taken("1/1 (plate.pdf)")],
    ["a plate, by no device", [{ sheet: "1/6", mark: "S-2" }], ["7/1 S-2 plate"]],
    ["a position, by a device at it", [{ sheet: "1/7", mark: "S-1", position: 1 }], taken("1/2 (first.pdf)")],
    ["a position, by none at another", [{ sheet: "1/7", mark: "S-1" }], ["7/1 S-1 2"]],
    ["no position, by nothing", [{ sheet: "1/8", mark: "S-1" }], ["7/1 S-1 ?"]],
    ["a device alone, by one alone", [{ sheet: "1/9", mark: "S-2" }], taken("1/4 (alone.pdf)")],
    ["a device alone, by none of a plate", [{ sheet: "1/9", mark: "S-1" }], ["7/1 S-1 ?"]],
    [
      "a position, by no device alone that has it typed",
      [{ sheet: "1/7", mark: "S-3", position: 1 }],
      ["7/1 S-3 1"],
    ],
    [
      "a device alone that has a position typed, by none at it",
      [{ sheet: "1/11", mark: "S-1" }],
      ["7/1 S-1 1"],
    ],
    ["a mark that is written anew, by its own sheet never", [{ sheet: "1/4", mark: "s 2" }], ["7/1 s 2 ?"]],
    ["where no station is named, by nothing", [{ sheet: "1/10", position: 3 }], ["7/1 ? 3"]],
    [
      "by what the same note has put there",
      [
        { sheet: "1/7", mark: "S-1", position: 3 },
        { sheet: "1/5", mark: "S-1" },
      ],
      taken("7/1 (astray.pdf)"),
    ],
    [
      "and not by what it has put elsewhere before",
      [
        { sheet: "1/2", position: 3 },
        { sheet: "1/7", mark: "S-1", position: 1 },
      ],
      ["7/1 S-1 3", "7/2 S-1 1"],
    ],
    [
      "and no sheet is put at two places",
      [
        { sheet: "1/7", mark: "S-1", position: 3 },
        { sheet: "1/7", mark: "S-8" },
      ],
      `sheet 1/7 does not stand in order ${order}`,
    ],
  ])("%s", (_, acts, becomes) => {
    expect(moved(...acts)).toEqual(becomes);
  });

  test("what the fields left in doubt about a place is settled where it is named, and nothing else", () => {
    const doubt = (place: "mark" | "position" | "order") => ({ place, typed: "?", wants: "text" }) as const;
    const unread = [doubt("mark"), doubt("position"), doubt("order")];
    const [first, ...others] = there;
    if (first === undefined) throw new Error("no sheet");
    const state = stateOf([{ ...first, unread }, ...others]);
    const note = { ...noteOf({ sheet: "1/1", mark: "S-7" }, order) };
    const moves = movesIn(note, state, "7");
    expect(typeof moves === "string" ? moves : moves[0]?.now.unread.map(({ place }) => place)).toEqual([
      "position",
      "order",
    ]);
  });
});
