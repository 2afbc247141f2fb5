import { expect, test } from "vitest";
import { takeNote } from "../../src/intake/check-note.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

test("of sheets that stand no longer it is told which letter or note took them out, and where they were put", async () => {
  const desk = await temporaryDesk();
  const sheets = ["T-1", "T-2", "T-3", "T-4"].map((mark, n) => ({
    mark,
    legend: [["POOL", "SPA", "GYM", "SAUNA"][n] ?? ""],
    fill: { order: "FM-80" },
  }));
  const first = await post(desk, { sheets });
  await post(desk, { to: first, text: "CANCEL T-4" });
  const by = { buyer: "greta@fallowmere.example", order: "FM-80", by: "Rosa Imhoff", why: "Greta says so" };
  await takeNote(desk, {
    ...by,
    id: "n1",
    acts: [
      { kind: "place", sheet: "1/1", mark: "C-1" },
      { kind: "place", sheet: "1/2", mark: "C-2" },
    ],
  });
  const [order] = await desk.store.orders.named("FM-80");
  expect(order?.withdrawn.map(({ sheet, letter, movedTo }) => [sheet.id, letter, movedTo?.mark])).toEqual([
    ["1/4", 2, undefined],
    ["1/1", 3, "C-1"],
    ["1/2", 3, "C-2"],
  ]);
  expect(order?.sheets.map(({ mark }) => mark)).toEqual(["T-3", "C-1", "C-2"]);
});
