import { expect, test } from "vitest";
import { settleOrder } from "../../src/intake/settle.ts";
import { temporaryDesk } from "../make/desk.ts";
import { pagedDesk } from "../make/desk-page.ts";
import { aloneAt, quickReader, takeQuick } from "../make/quick.ts";

/** The numbers of orders that a page lists, by the titles above them. */
function ordersUnder(page: string): Record<string, string[]> {
  const parts = page.split("<h2").slice(1);
  return Object.fromEntries(
    parts.map((part) => [
      />([^<]*)<\/h2>/.exec(part)?.[1] ?? "",
      [...part.matchAll(/href="\/orders\/([^"]+)"/g)].map(([, number = ""]) => number),
    ]),
  );
}

test("what may be released is not hidden among what was released", async () => {
  const desk = await temporaryDesk({ reader: quickReader });
  const { as } = await pagedDesk({ desk });
  const at = desk.clock.now();
  const by = { name: "Rosa Imhoff", why: "released" };
  for (const [nth, word] of ["ENTRY", "LOBBY", "OFFICE"].entries()) {
    const order = { buyer: "ines@brightwire.example", number: `BW-22${nth}7` };
    const sheets = [aloneAt(`T-${nth}`, word, { order_number: order.number })];
    await takeQuick(desk, { id: `l${nth}`, dated: at, receivedAt: at, sheets });
    if (nth > 0) await settleOrder(desk, order, [{ kind: "release", on: "2026-11-09" }], by);
  }
  const own = await as("see");
  const shown = ordersUnder(await (await own.get("/")).text());
  expect(shown).toMatchObject({ Passed: ["BW-2207"], Released: ["BW-2227", "BW-2217"] });
  for (const [name, numbers] of [
    ["pass", ["BW-2207"]],
    ["released", ["BW-2227", "BW-2217"]],
  ] as const) {
    const page = await (await own.get(`/orders?verdict=${name}`)).text();
    expect(Object.values(ordersUnder(page))).toEqual([numbers]);
  }
});
