import { expect, test } from "vitest";
import { takeNote } from "../../src/intake/check-note.ts";
import { recordCutList } from "../../src/intake/cut-list.ts";
import type { Desk } from "../../src/intake/desk.ts";
import { releaseOrder } from "../../src/intake/release.ts";
import type { PackageFile } from "../../src/release/release.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post, type Sent } from "../make/thread.ts";

const inPlate = (position: string, ...legend: string[]): Sent => ({
  mark: "P-1",
  legend,
  fill: { order: "FM-80", standing: "in-plate", gangs: "2", position },
});
const alone = (order: string, mark: string): Sent => ({ mark, legend: ["NORTH"], fill: { order } });
const plate: Sent = { mark: "P-1", kind: "plate", legend: ["SPA"], fill: { order: "FM-80", gangs: "2" } };

/** A desk that has released FM-80, a plate with two devices and a device alone, and FM-81; and the schedule of FM-80. */
async function released(): Promise<{ readonly desk: Desk; readonly schedule: string }> {
  const desk = await temporaryDesk();
  const one = await post(desk, {
    sheets: [plate, inPlate("1", "NORTH"), inPlate("2", "SOUTH"), alone("FM-80", "P-2")],
  });
  const other = await post(desk, { sheets: [alone("FM-81", "Q-1"), alone("FM-81", "Q-2")] });
  expect([one.verdict, other.verdict]).toEqual(["pass", "pass"]);
  let schedule = "";
  const put = (_: string, files: readonly PackageFile[]): Promise<string> => {
    schedule = new TextDecoder().decode(files.find(({ path }) => path === "schedule.csv")?.bytes);
    return Promise.resolve("here");
  };
  expect(await releaseOrder(desk, "FM-81", "Rosa Imhoff", put)).toMatchObject({ ok: true });
  expect(await releaseOrder(desk, "FM-80", "Rosa Imhoff", put)).toMatchObject({ ok: true });
  return { desk, schedule };
}

const record = (desk: Desk, text: string) =>
  recordCutList(desk, new TextEncoder().encode(text), { name: "Bo" });

/** What is engraved of an order: mark and position, or plate; with the day where it is known. */
async function engraved({ store }: Desk, number = "FM-80"): Promise<string[]> {
  const [order] = await store.orders.named(number);
  const sheets = await store.orders.sheets(order?.released?.pieces.map(({ sheet }) => sheet) ?? []);
  return (order?.released?.pieces ?? [])
    .filter((one) => one.engraved)
    .map(({ sheet: id, engravedOn }) => {
      const sheet = sheets.find((one) => one.id === id);
      const place = sheet?.kind === "plate" ? "plate" : (sheet?.position ?? "alone");
      return [sheet?.mark, place, engravedOn].filter((part) => part !== undefined).join(" ");
    })
    .toSorted();
}

test("a list of several orders is recorded, by position, by plate and by station, with its days", async () => {
  const { desk } = await released();
  expect(
    await record(
      desk,
      "order;station;position;when\nfm 80;p1;2;2026-11-09\nFM-80;P-1;plate;\nFM-81;Q-2;;2026-11-09 09:30\nFM-81;Q-1;1;\n",
    ),
  ).toEqual({
    done: true,
    words: "Order FM-80: 2 of 4 pieces are engraved.\nOrder FM-81 is engraved: 2 of 2 pieces.",
  });
  expect(await engraved(desk)).toEqual(["P-1 2 2026-11-09", "P-1 plate"]);
  expect(await engraved(desk, "FM-81")).toEqual(["Q-1 alone", "Q-2 alone 2026-11-09"]);
  // What is left of a station is recorded by its mark.
  expect(await record(desk, "order,station\nFM-80,P-1\nFM-80,P-2")).toMatchObject({
    words: "Order FM-80 is engraved: 4 of 4 pieces.",
  });
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("the schedule of a package is a list, without the rows that are not engraved yet", async () => {
  const { desk, schedule } = await released();
  const [titles = "", ...rows] = schedule.trimEnd().split("\r\n");
  const own = rows.filter((row) => !/P-1,(?:2|),/.test(row));
  expect(own.length).toBeLessThan(rows.length);
  expect(await record(desk, [titles, ...own].join("\r\n"))).toEqual({
    done: true,
    words: "Order FM-80: 2 of 4 pieces are engraved.",
  });
  expect(await engraved(desk)).toEqual(["P-1 1", "P-2 alone"]);
  const rest = rows.filter((row) => !own.includes(row));
  expect(await record(desk, [titles, ...rest].join("\r\n"))).toMatchObject({
    words: "Order FM-80 is engraved: 4 of 4 pieces.",
  });
});

test("a piece of which the schedule has lost a row is not engraved", async () => {
  const { desk, schedule } = await released();
  const lines = schedule.trimEnd().split("\r\n");
  const lost = lines.findIndex((row) => /P-1,2,button 2/.test(row));
  const left = lines.toSpliced(lost, 1);
  const line = left.findIndex((row) => /P-1,2,/.test(row)) + 1;
  expect(await record(desk, left.join("\r\n"))).toEqual({
    done: false,
    words: `Nothing is recorded:\n  line ${line}: P-1 has position 2 button 2 too, and the list does not: a piece is engraved when all its rows are`,
  });
  expect(await engraved(desk)).toEqual([]);
});

test("one row that cannot be so, and nothing is recorded; each is told with its line", async () => {
  const { desk } = await released();
  await post(desk, { sheets: [alone("FM-82", "R-1")] });
  expect(await record(desk, "order,station\nFM-81,Q-1")).toMatchObject({ done: true });
  const rows = [
    "FM-80,P-1,1,",
    "FM-99,P-1,,",
    "FM-80,P-9,,",
    "FM-80,P-1,3,",
    "FM-80,P-2,plate,",
    "FM-81,Q-1,,",
    "FM-80,,,",
    "FM-82,R-1,,",
    "FM-80,P-2,,2026-11-10",
    "FM-80,P-2,,2026-11-08",
    "FM-80,P-2,,yesterday",
  ];
  expect(await record(desk, ["order,station,position,when", ...rows].join("\n"))).toEqual({
    done: false,
    words: [
      "Nothing is recorded:",
      "  line 3: no order FM-99 is known",
      "  line 4: station P-9 was not released of order FM-80",
      "  line 5: P-1 position 3 was not released of order FM-80",
      "  line 6: P-2 plate was not released of order FM-80",
      "  line 8: no station is named",
      "  line 9: order FM-82 was not released",
      "  line 10: 2026-11-10 is still to come",
      "  line 11: 2026-11-08 is before the order was released, on 2026-11-09",
      "  line 12: “yesterday” is no day: write it as 2026-11-09",
    ].join("\n"),
  });
  expect(await engraved(desk)).toEqual([]);
});

test("a list over which the program died is gone on with when it is given again, and then is recorded already", async () => {
  const { desk } = await released();
  const list = "order,station\nFM-80,P-2\nFM-81,Q-1";
  let received = 0;
  const letters: Desk["store"]["letters"] = {
    ...desk.store.letters,
    receive: (...of) => {
      if (++received === 2) throw new Error("no room on the disk");
      return desk.store.letters.receive(...of);
    },
  };
  await expect(record({ ...desk, store: { ...desk.store, letters } }, list)).rejects.toThrow("no room");
  expect([await engraved(desk), await engraved(desk, "FM-81")]).toEqual([["P-2 alone"], []]);
  expect(await record(desk, list)).toEqual({
    done: true,
    words: "Order FM-81: 1 of 2 pieces are engraved.\nPassed over, as engraved already: 1 row.",
  });
  expect(await record(desk, list)).toEqual({
    done: true,
    words: "Passed over, as engraved already: 2 rows.",
  });
});

test("a list that grows is given again: what is engraved already is passed over, and said", async () => {
  const { desk } = await released();
  const list = "order,station,position,when\nFM-80,P-1,1,2026-11-09\nFM-81,Q-1,,2026-11-09\n";
  expect(await record(desk, list)).toMatchObject({ done: true });
  expect(await record(desk, `${list}FM-80,P-2,,2026-11-09\n`)).toEqual({
    done: true,
    words: "Order FM-80: 2 of 4 pieces are engraved.\nPassed over, as engraved already: 2 rows.",
  });
  expect(await engraved(desk)).toEqual(["P-1 1 2026-11-09", "P-2 alone 2026-11-09"]);
  expect(await record(desk, `${list}FM-80,P-9,,2026-11-09\n`)).toMatchObject({
    done: false,
    words: "Nothing is recorded:\n  line 4: station P-9 was not released of order FM-80",
  });
  expect((await desk.store.verify()).differ).toEqual([]);
});

test("a row of what is void now does not stand for what was released anew in its place", async () => {
  const desk = await temporaryDesk();
  await post(desk, { sheets: [alone("FM-80", "P-1"), alone("FM-80", "P-2")] });
  const put = () => Promise.resolve("here");
  const first = {
    id: "r1",
    buyer: "greta@fallowmere.example",
    order: "FM-80",
    by: "Rosa Imhoff",
    why: "it is right",
  };
  await takeNote(desk, { ...first, acts: [{ kind: "release", on: "2026-11-09" }] });
  expect(await record(desk, "order,station\nFM-80,P-2")).toMatchObject({ done: true });
  await post(desk, { sheets: [{ ...alone("FM-80", "P-2"), legend: ["WEST"] }] });
  const [order] = await desk.store.orders.named("FM-80");
  const acts = (order?.questions ?? []).map(({ number }) => ({ kind: "yes" as const, number }));
  const note = { id: "y1", order: "FM-80", by: "Rosa Imhoff", why: "it is right", acts };
  await takeNote(desk, { ...note, buyer: order?.buyer ?? "" });
  const later = { ...desk, clock: { now: () => new Date("2026-11-11T15:00:00Z") } };
  expect(await releaseOrder(later, "FM-80", "Rosa Imhoff", put)).toEqual({ ok: true, path: "here" });

  expect(await record(later, "order,station\nFM-80,P-1\nFM-80,P-2")).toEqual({
    done: false,
    words:
      "Nothing is recorded:\n  line 3: P-2 was engraved before it was released anew, on 2026-11-11: the column when has to say which day this was",
  });
  expect(await record(later, "order,station,when\nFM-80,P-2,2026-11-09")).toMatchObject({
    done: false,
    words: "Nothing is recorded:\n  line 2: 2026-11-09 is before the order was released, on 2026-11-11",
  });
  expect(await engraved(later)).toEqual([]);
  expect(await record(later, "order,station,when\nFM-80,P-1,2026-11-09\nFM-80,P-2,2026-11-11")).toEqual({
    done: true,
    words: "Order FM-80 is engraved: 2 of 2 pieces.",
  });
});
