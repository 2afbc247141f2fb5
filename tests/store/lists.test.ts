import { expect, onTestFinished, test } from "vitest";
import type { Sought, Store } from "../../src/ports/store.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { temporaryFolder, temporaryStore } from "../make/desk.ts";
import { blankDevice, completeOrder, device, deviceAt, plate } from "../make/sample.ts";
import { settled } from "./contract.ts";

const monday = new Date("2026-11-09T14:00:00Z");
const ines = "ines@brightwire.example";

const listed = async (store: Store, sought: Partial<Sought> = {}) =>
  (await store.orders.list({ most: 10, ...sought })).map(({ number }) => number);

/** Three orders: the first passes, the others are asked about. They changed in this order. */
async function threeOrders(): Promise<Store> {
  const store = await temporaryStore();
  const inOrder = (letter: number, order: string, sheets: readonly Sheet[]) =>
    sheets.map((sheet, nth) => ({ ...sheet, order, id: `${letter}/${nth + 1}` }));
  await settled(store, "k1", inOrder(1, "BW-2207", completeOrder()));
  await settled(store, "k2", inOrder(2, "GC-4100", [plate(), deviceAt(1)]));
  await settled(
    store,
    "k3",
    inOrder(3, "HV-9356", [
      ...completeOrder().filter((sheet) => sheet.id !== deviceAt(2).id),
      device({}, { "1": ["KITCHN", ""] }),
    ]),
  );
  return store;
}

test("orders are listed page by page, those that changed last first", async () => {
  const store = await threeOrders();
  expect(await listed(store)).toEqual(["HV-9356", "GC-4100", "BW-2207"]);
  expect(await listed(store, { most: 2 })).toEqual(["HV-9356", "GC-4100"]);
  const [, second] = await store.orders.list({ most: 2 });
  expect(await listed(store, { most: 2, before: second?.place ?? 0 })).toEqual(["BW-2207"]);
  await settled(store, "k4", [deviceAt(2, { id: "4/1", order: "GC-4100" })]);
  expect(await listed(store)).toEqual(["GC-4100", "HV-9356", "BW-2207"]);
});

test.each<[string, Partial<Sought>, string[]]>([
  ["that pass", { verdicts: ["pass"] }, ["BW-2207"]],
  ["of some verdicts", { verdicts: ["waiting", "confirm"] }, ["HV-9356", "GC-4100"]],
  ["under a number", { search: "gc4100" }, ["GC-4100"]],
  ["under the beginning of a number", { search: "HV" }, ["HV-9356"]],
  ["with a legend", { search: "kitchn" }, ["HV-9356"]],
  ["of a project", { search: "larkspur" }, ["HV-9356", "GC-4100", "BW-2207"]],
  ["with a station", { search: "s-104" }, ["HV-9356", "GC-4100", "BW-2207"]],
  ["with all words of the search", { search: "s-104 kitchn" }, ["HV-9356"]],
  ["with a word that none has", { search: "nowhere" }, []],
  ["with a word and a verdict", { search: "s-104", verdicts: ["pass"] }, ["BW-2207"]],
])("orders %s are found", async (_name, sought, numbers) => {
  expect(await listed(await threeOrders(), sought)).toEqual(numbers);
});

test("an order in a list tells whose it is, how it stands and when it changed", async () => {
  const [, , passed] = await (await threeOrders()).orders.list({ most: 3 });
  expect(passed).toStrictEqual({
    number: "BW-2207",
    buyer: ines,
    project: completeOrder()[0]?.project,
    verdict: "pass",
    changedAt: monday,
    letter: 1,
    isReleased: false,
    place: 1,
  });
});

test("a new letter is judged beside the buyer's thirty latest orders, and those that it names", async () => {
  const store = await temporaryStore();
  const sheets = Array.from({ length: 32 }, (_, n) => device({ id: `1/${n + 1}`, order: `X-${101 + n}` }));
  await settled(store, "k1", sheets);
  const known = async (...numbers: string[]) =>
    (await store.buyers.stateOf(ines, numbers)).orders.map(({ number }) => number);
  expect(await known()).toEqual(Array.from({ length: 30 }, (_, n) => `X-${103 + n}`));
  expect((await known("x 101")).slice(0, 2)).toEqual(["X-101", "X-103"]);
});

test("orders of which something waits for one of us are told, the oldest first, and no others", async () => {
  const store = await temporaryStore();
  const odd = (letter: number, order: string) => [
    deviceAt(1, { id: `${letter}/1`, order, mark: order, doubts: [{ what: "unseen" }] }),
  ];
  await settled(store, "k1", completeOrder());
  await settled(store, "k2", odd(2, "X-9"));
  await settled(store, "k3", odd(3, "C-1"));
  const waiting = async (most?: number) => (await store.people.orders(most)).map(({ number }) => number);
  expect(await waiting()).toEqual(["X-9", "C-1"]);
  expect(await waiting(1)).toEqual(["X-9"]);
  expect(await listed(store, { forPerson: true })).toEqual(["C-1", "X-9"]);
});

test("an order of which nothing is known by which it could be found is kept all the same", async () => {
  const store = await temporaryStore();
  await settled(store, "k1", [blankDevice()], undefined, { buyer: "" });
  expect((await store.buyers.stateOf("", [""])).orders.map(({ number }) => number)).toEqual([""]);
});

test("a search that fits more than a thousand orders finds them all", async () => {
  const db = openSqlite(":memory:");
  const store = await openStore(db, openBlobs(temporaryFolder()));
  onTestFinished(() => store.close());
  const at = monday.toISOString();
  const ids = Array.from({ length: 1_100 }, (_, n) => n + 1);
  const number = (id: number): string => `X${10_000 + id}`;
  await db.transaction().execute(async (tx) => {
    for (const id of ids) {
      const order = { id, buyer: ines, key: number(id), number: number(id), project: null, opened_at: at };
      await tx
        .insertInto("orders")
        .values({ ...order, latest: null, verdict: null })
        .execute();
      const revision = { id, order_id: id, number: 1, at, cause: "letter", letter: null, verdict: null };
      const empty = { missing: "[]", carried: "[]", withdrawn: "[]", problems: "[]", shape: 1 };
      await tx
        .insertInto("revisions")
        .values({ ...revision, ...empty })
        .execute();
      await tx.updateTable("orders").set({ latest: id }).where("id", "=", id).execute();
      await tx
        .insertInto("order_terms")
        .values({ order_id: id, term: number(id) })
        .execute();
    }
  });
  expect(await listed(store, { search: "x", most: 2_000 })).toHaveLength(1_100);
  expect(await listed(store, { search: "x11099" })).toEqual(["X11099"]);
  // What an order has not is not told of it.
  expect(await store.orders.list({ search: "x11099", most: 1 })).toStrictEqual([
    { number: "X11099", buyer: ines, changedAt: monday, isReleased: false, place: 1_099 },
  ]);
});
