import { expect, test } from "vitest";
import { temporaryDesk } from "../make/desk.ts";
import { pagedDesk } from "../make/desk-page.ts";
import { post } from "../make/thread.ts";

test("the page of a day tells of a slip, and refuses days that end before they begin", async () => {
  const plain = await temporaryDesk();
  const desk = { ...plain, clock: { now: () => new Date("2026-11-09T15:00:00Z") } };
  await post(desk, { sheets: [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } }] });
  const browser = await (await pagedDesk({ desk })).as("see");
  const day = await (await browser.get("/day?from=2026-11-09")).text();
  expect(day).toContain("<svg");
  expect(day).toContain("spelling");
  const checks = await (await browser.get("/checks")).text();
  expect(checks).toContain("0 yes, 0 settled by us, 0 corrected, 0 withdrawn, 1 no answer");
  expect((await browser.get("/day?from=2026-11-09&to=2026-11-01")).status).toBe(400);
});
