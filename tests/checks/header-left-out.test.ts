import { expect, test } from "vitest";
import { headerLeftOut } from "../../src/checks/order/header-left-out.ts";
import { subject } from "../../src/checks/sample.ts";
import type { Entry } from "../../src/trade/place.ts";
import { catalogue } from "../make/config.ts";
import { deviceAt, plate } from "../make/sample.ts";

const heir = (position: number, from: string, ...places: Entry[]) =>
  deviceAt(position, { inherited: [{ places, from }] });
const told = (...sheets: ReturnType<typeof heir>[]) =>
  [...headerLeftOut.find(subject([plate(), ...sheets]), catalogue)].map(({ facts, spots }) => ({
    ...facts,
    spots: spots.map(({ file, place }) => `${file} ${place}`),
  }));

test("sheets that leave out the same, and have it from the same sheet, are told of as one", () => {
  expect(told(heir(1, "a.pdf", "project"), heir(2, "a.pdf", "project"))).toEqual([
    { count: 2, what: ["the project"], from: ["a.pdf"], spots: ["1/2 project", "1/3 project"] },
  ]);
  expect(told(heir(1, "a.pdf", "project"), heir(2, "b.pdf", "project"))).toHaveLength(2);
  expect(told(heir(1, "a.pdf", "project"), heir(2, "a.pdf", "order"))).toHaveLength(2);
});

test("what is left out is named once, and each sheet that it was taken from", () => {
  const sheet = deviceAt(1, {
    inherited: [
      { places: ["contact.name", "contact.phone", "bill.city"], from: "a.pdf" },
      { places: ["ship.city"], from: "b.pdf" },
      { places: ["order"], from: "a.pdf" },
    ],
  });
  expect(told(sheet)).toMatchObject([
    {
      what: ["the order number", "the contact", "the bill-to address", "the ship-to address"],
      from: ["a.pdf", "b.pdf"],
    },
  ]);
});

test("a sheet that leaves out nothing that an order says alike is not told of", () => {
  expect(told(heir(1, "a.pdf", "notes"), deviceAt(2))).toEqual([]);
});
