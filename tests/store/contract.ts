import { expect, test } from "vitest";
import { completeOrder, device, deviceAt, plate } from "../../src/checks/sample.ts";
import type { Outcome, Store } from "../../src/ports/store.ts";
import { makeReport } from "../../src/report/report.ts";
import type { Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";

const monday = new Date("2026-11-09T14:00:00Z");
const later = new Date("2026-11-09T14:00:03Z");
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

/** What every record must do, whatever database is below it. */
export function storeContract(open: () => Promise<Store>): void {
  test("a letter is kept byte for byte", async () => {
    const store = await open();
    const { letter } = await store.receive("k1", bytes("From: a\n\nb"), monday);
    expect(await store.bytesOf(letter)).toEqual(bytes("From: a\n\nb"));
    expect(await store.inState("received")).toEqual([letter]);
  });

  test("the same letter twice is one row", async () => {
    const store = await open();
    const first = await store.receive("k1", bytes("x"), monday);
    expect(await store.receive("k1", bytes("x"), later)).toEqual({ ...first, again: true });
    const both = await Promise.all([
      store.receive("k2", bytes("y"), monday),
      store.receive("k2", bytes("y"), monday),
    ]);
    expect(new Set(both.map(({ letter }) => letter)).size).toBe(1);
  });

  test("an outcome comes back as it went in", async () => {
    const store = await open();
    const letter = await settled(store, "k1", [
      plate(),
      deviceAt(1),
      device({ id: "1/3" }, { "1": ["RECEPTION", ""] }),
    ]);
    const record = await store.letter(letter);
    expect(record).toMatchObject({
      verdict: "fail",
      state: "ready",
      from: "ines@brightwire.example",
      orders: ["BW-2207"],
      sheets: 3,
    });
    expect(record.problems.map(({ check }) => check)).toContain("row-too-long");
    expect((await store.answer(letter))?.bytes).toEqual(bytes("answer to k1"));
  });

  test("sheets with a stopping problem do not count, their sisters do", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1), device({ id: "1/3" }, { "1": ["RECEPTION", ""] })]);
    const counting = await store.countingSheets("ines@brightwire.example", ["BW-2207"]);
    expect(counting.map(({ file }) => file)).toEqual(["S-104 plate.pdf", "S-104 pos 1.pdf"]);
    expect(counting[0]).toEqual({ ...plate(), id: "1/1" });
  });

  test("a new sheet for the same place takes the place of the old one", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    await settled(store, "k2", [{ ...deviceAt(2), id: "2/1", finish: "CHK" }]);
    const counting = await store.countingSheets("ines@brightwire.example", []);
    expect(counting).toHaveLength(5);
    expect(counting.find((sheet) => sheet.kind === "device" && sheet.position === 2)?.finish).toBe("CHK");
  });

  test("another buyer's order of the same number is another order", async () => {
    const store = await open();
    await settled(store, "k1", completeOrder());
    expect(await store.belongsToAnother("bw 2207", "ines@brightwire.example")).toBe(false);
    expect(await store.belongsToAnother("bw 2207", "eve@stranger.example")).toBe(true);
    expect(await store.belongsToAnother("BW-9", "eve@stranger.example")).toBe(false);
    expect(await store.countingSheets("eve@stranger.example", ["BW-2207"])).toEqual([]);
  });

  test("a past moment is counted as it stood then", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1)], monday);
    await settled(
      store,
      "k2",
      [2, 3, 4].map((position) => ({ ...deviceAt(position), id: `2/${position}` })),
      new Date("2026-11-10T14:00:00Z"),
    );
    const [open1] = await store.openOrdersAt(new Date("2026-11-10T06:00:00Z"));
    expect(open1).toMatchObject({ number: "BW-2207", verdict: "waiting" });
    expect(open1?.missing.map(({ position }) => position)).toEqual([2, 3, 4]);
    expect(await store.openOrdersAt(new Date("2026-11-11T06:00:00Z"))).toEqual([]);
    expect(await store.lettersBetween(monday, new Date("2026-11-10T00:00:00Z"))).toHaveLength(1);
  });

  test("an order whose last sheet comes again under another number is open no more", async () => {
    const store = await open();
    await settled(store, "k1", [plate(), deviceAt(1), deviceAt(2), deviceAt(3)]);
    await settled(store, "k2", [deviceAt(4, { id: "2/1", order: "BW-2270" })]);
    const tuesday = new Date("2026-11-10T06:00:00Z");
    expect((await store.openOrdersAt(tuesday)).map(({ number }) => number)).toEqual(["BW-2207", "BW-2270"]);
    await settled(store, "k3", [deviceAt(4, { id: "3/1" })], new Date("2026-11-10T14:00:00Z"));
    expect(await store.openOrdersAt(new Date("2026-11-11T06:00:00Z"))).toEqual([]);
    expect((await store.openOrdersAt(tuesday)).map(({ number }) => number)).toEqual(["BW-2207", "BW-2270"]);
    const [left] = await store.orders("BW-2270");
    expect(left).toMatchObject({ sheets: [] });
    expect(left).not.toHaveProperty("verdict");
  });

  test("a sent answer keeps its time and the server's words", async () => {
    const store = await open();
    const letter = await settled(store, "k1", completeOrder());
    await store.mark(letter, "sending", "", monday);
    expect(await store.inState("sending")).toEqual([letter]);
    await store.mark(letter, "sent", "250 queued", later);
    expect((await store.letter(letter)).answer?.sentAt).toEqual(later);
  });
}

async function settled(store: Store, key: string, sheets: readonly Sheet[], at = monday): Promise<number> {
  const { letter } = await store.receive(key, bytes(key), at);
  const earlier = await store.countingSheets("ines@brightwire.example", ["BW-2207"]);
  const files = sheets.map(({ id, file }) => ({ id, file, kind: "sheet" as const }));
  const outcome: Outcome = {
    letter: {
      from: "ines@brightwire.example",
      subject: "sheets",
      references: [],
      text: "",
      attachments: files.map((file) => ({ ...file, bytes: bytes(file.id) })),
    },
    report: makeReport({ files, sheets, earlier }, catalogue),
    buyer: "ines@brightwire.example",
    answer: {
      messageId: `<${key}@quillgate.example>`,
      recipient: "ines@brightwire.example",
      subject: "Re: sheets",
      bytes: bytes(`answer to ${key}`),
    },
  };
  await store.settle(letter, outcome, at);
  return letter;
}
