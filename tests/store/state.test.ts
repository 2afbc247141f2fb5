import { expect, test } from "vitest";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const sheet = (mark: string, legend: string) => ({ mark, legend: [legend], fill: { order: "FM-80" } });

test("a question about no sheet is gone once it is asked no more, and not withdrawn with a sheet", async () => {
  const desk = await temporaryDesk();
  const asked = await post(desk, { text: "3 devices", sheets: [sheet("T-1", "POOL"), sheet("T-2", "SPA")] });
  expect(asked.problems.map(({ check }) => check)).toEqual(["count-differs"]);
  const states = async () => {
    const { orders } = await desk.store.buyers.stateOf("greta@fallowmere.example", []);
    return orders.flatMap(({ questions }) => questions.map(({ state, problem }) => [problem.check, state]));
  };
  expect(await states()).toEqual([["count-differs", "open"]]);
  await post(desk, { sheets: [sheet("T-3", "GYM")] });
  expect(await states()).toEqual([["count-differs", "gone"]]);
});

test("of the letters that brought a buyer's sheets it is known when they came", async () => {
  const desk = await temporaryDesk();
  const buyer = "greta@fallowmere.example";
  const came = { receivedAt: desk.clock.now(), dated: new Date("2026-11-09T14:00:00Z") };
  const arrivals = async () => (await desk.store.buyers.stateOf(buyer, [])).arrivals;
  expect(await arrivals()).toEqual(new Map());
  await post(desk, { sheets: [sheet("T-1", "POOL")] });
  expect(await arrivals()).toEqual(new Map([["1", came]]));
  await post(desk, { sheets: [sheet("T-2", "SPA")] });
  expect(await arrivals()).toEqual(
    new Map([
      ["1", came],
      ["2", came],
    ]),
  );
});
