import { zipSync } from "fflate";
import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { temporaryDesk } from "../make/desk.ts";
import { letterOf, post, type Written } from "../make/thread.ts";

const sheetWith = (legend: string): Pick<Written, "sheets"> => ({
  sheets: [{ mark: "B-1", legend: [legend] }],
});
const at = (time: string): string => `2026-11-09T${time}:00Z`;
const eml = async (mail: Written) => [{ file: "Stations.eml", bytes: await letterOf(mail) }];

test("sheets of a letter that is forwarded as a file are as old as that letter", async () => {
  const desk = await temporaryDesk();
  const when = (time: string): Desk => ({ ...desk, clock: { now: () => new Date(at(time)) } });
  await post(when("14:10"), { ...sheetWith("SAUNA"), date: at("14:10") });
  const old = await eml({ ...sheetWith("GYM"), date: at("13:00") });
  const forwarded = await post(when("14:30"), { files: old, date: at("14:30"), text: "Forwarded." });
  expect(forwarded.verdict).toBe("confirm");
  expect((await desk.store.orders.named("FM-72"))[0]?.sheets).toHaveLength(2);
});

test("so are sheets of a letter that lies in an archive", async () => {
  const desk = await temporaryDesk();
  const when = (time: string): Desk => ({ ...desk, clock: { now: () => new Date(at(time)) } });
  await post(when("14:10"), { ...sheetWith("SAUNA"), date: at("14:10") });
  const old = await letterOf({ ...sheetWith("GYM"), date: at("13:00") });
  const files = [{ file: "mails.zip", bytes: zipSync({ "Stations.eml": old }) }];
  expect((await post(when("14:30"), { files, date: at("14:30") })).verdict).toBe("confirm");
  expect((await desk.store.orders.named("FM-72"))[0]?.sheets).toHaveLength(2);
});

test("a newer letter that is forwarded as a file replaces an older sheet", async () => {
  const desk = await temporaryDesk();
  await post(desk, { ...sheetWith("SAUNA"), date: at("13:00") });
  await post(desk, { files: await eml({ ...sheetWith("GYM"), date: at("14:10") }), date: at("14:30") });
  expect(await desk.store.orders.named("FM-72")).toMatchObject([
    { verdict: "pass", sheets: [{ mark: "B-1" }] },
  ]);
});

test("a sheet beside a forwarded letter is as old as its own letter", async () => {
  const desk = await temporaryDesk();
  await post(desk, { ...sheetWith("SAUNA"), date: at("14:10") });
  const words = await eml({ date: at("13:00"), text: "Thank you" });
  await post(desk, { ...sheetWith("GYM"), files: words, date: at("14:30") });
  expect((await desk.store.orders.named("FM-72"))[0]?.sheets).toHaveLength(1);
});
