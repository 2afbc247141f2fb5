import { expect, test } from "vitest";
import type { Desk } from "../../src/intake/desk.ts";
import { behindLink, waysTo } from "../../src/intake/link.ts";
import { temporaryDesk } from "../make/desk.ts";
import { post } from "../make/thread.ts";

const address = "https://desk.quillgate.example";
const at = (desk: Desk, now: string): Desk => ({ ...desk, clock: { now: () => new Date(now) } });

async function asked() {
  const made = await temporaryDesk();
  const desk: Desk = { ...made, rules: { ...made.rules, links: { address, days: 14 } } };
  const { letter } = await post(desk, {
    sheets: [{ mark: "P-1", legend: ["SALONA"], fill: { order: "FM-80" } }],
  });
  const { link = "" } = waysTo(letter, desk);
  return { desk, letter, link, token: link.slice(`${address}/answer/`.length) };
}

test("a link leads to the orders of its answer until its days are over", async () => {
  const { desk, token } = await asked();
  // it was made on November 9
  for (const [now, numbers] of [
    ["2026-11-09T15:00:00Z", ["FM-80"]],
    ["2026-11-23T23:59:59Z", ["FM-80"]],
    ["2026-11-24T00:00:00Z", undefined],
  ] as const) {
    const behind = await behindLink(token, at(desk, now));
    expect([now, behind?.orders.map(({ number }) => number)]).toEqual([now, numbers]);
  }
  expect((await behindLink(token, desk))?.recipient).toBe("greta@fallowmere.example");
});

test("where an older record has one number of two buyers, a link leads to the order of its own alone", async () => {
  const { desk, token } = await asked();
  const named = async (number: string) => {
    const own = await desk.store.orders.named(number);
    return [...own.map((order) => ({ ...order, buyer: "omar@oakmoor.example" })), ...own];
  };
  const store = { ...desk.store, orders: { ...desk.store.orders, named } };
  expect((await behindLink(token, { ...desk, store }))?.orders.map(({ buyer }) => buyer)).toEqual([
    "greta@fallowmere.example",
  ]);
});

test("a link that is changed in any part leads nowhere", async () => {
  const { desk, token } = await asked();
  const [letter = "", day = "", code = ""] = /^(\w+)-(\w+)-(.*)$/.exec(token)?.slice(1) ?? [];
  const later = (Number.parseInt(day, 36) + 1).toString(36);
  const other = code.startsWith("A") ? `B${code.slice(1)}` : `A${code.slice(1)}`;
  for (const forged of [
    `2-${day}-${code}`,
    `${letter}-${later}-${code}`,
    `${letter}-${day}-${other}`,
    `${letter}-${day}-${code}A`,
    `${letter}-${day}-${code.slice(1)}`,
    ` ${token}`,
    `x${token}`,
    `${token}\n`,
    `zzzzzzzzzzz-${day}-${code}`,
    `${letter.padStart(12, "0")}-${day}-${code}`,
    `${letter}-${day.padStart(9, "0")}-${code}`,
    `${letter}-${day}`,
    "",
  ])
    expect([forged, await behindLink(forged, desk)]).toEqual([forged, undefined]);
  expect(await behindLink(token, { ...desk, secret: "another" })).toBeUndefined();
});

test("an answer has no link where the desk has no page, or where somebody else has a copy", async () => {
  const { desk, letter, link } = await asked();
  expect(link).toMatch(/^https:\/\/desk\.quillgate\.example\/answer\/1-[0-9a-z]+-[\w-]{22}$/);
  expect(waysTo(letter, desk, ["ana"]).link).toBeUndefined();
  expect(waysTo(letter, await temporaryDesk()).link).toBeUndefined();
  expect(waysTo(letter, desk, ["ana"]).reference).toBe(waysTo(letter, desk).reference);
});
