import { expect, test } from "vitest";
import { peopleLines } from "../../src/audit/people-text.ts";
import { readPeople } from "../../src/intake/tell-people.ts";
import { temporaryDesk } from "../make/desk.ts";
import { pagedDesk } from "../make/desk-page.ts";
import { aloneAt, deviceIn, plateOf, quickReader, takeQuick } from "../make/quick.ts";

const safety = "1. S-1 position 2, T-1, T-2: “MAIN SW” on button 1 speaks of safety.";

test("what one answer settles on several sheets is one point, and names them all", async () => {
  const desk = await temporaryDesk({ reader: quickReader });
  const { as } = await pagedDesk({ desk });
  const at = desk.clock.now();
  const sheets = [
    plateOf("S-1", 2),
    deviceIn("S-1", 1, 2, "ENTRY"),
    deviceIn("S-1", 2, 2, "MAIN SW"),
    aloneAt("T-1", "MAIN SW"),
    aloneAt("T-2", "MAIN SW"),
  ];
  await takeQuick(desk, { id: "a", dated: at, receivedAt: at, sheets });
  const own = await as("act");
  const order = await (await own.get("/orders/BW-2207")).text();
  const [point, ...others] = order.split('<li class="ticket').slice(1);
  expect(others).toEqual([]);
  expect(point).toContain("S-1 pos 2.pdf, T-1.pdf, T-2.pdf");
  const people = await (await own.get("/people")).text();
  expect(people.match(/action="\/orders\/BW-2207\/points"/g)).toHaveLength(1);
  expect(people.replaceAll(/\s+/g, " ")).toContain(safety);
  const [lines = ""] = peopleLines(await readPeople(desk.store, at), at);
  expect(lines.split("speaks of safety")).toHaveLength(2);
  expect(lines).toContain(safety);
});

test("of many places of a point the first are named, and the others counted", async () => {
  const desk = await temporaryDesk({ reader: quickReader });
  const at = desk.clock.now();
  const sheets = Array.from({ length: 9 }, (_, i) => aloneAt(`T-${i + 1}`, "MAIN SW"));
  await takeQuick(desk, { id: "a", dated: at, receivedAt: at, sheets });
  const [lines] = peopleLines(await readPeople(desk.store, at), at);
  expect(lines).toContain("1. T-1, T-2, T-3, T-4, T-5, T-6 and 3 more: “MAIN SW”");
});
