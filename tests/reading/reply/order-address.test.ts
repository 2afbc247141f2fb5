import { expect, test } from "vitest";
import { shipsElsewhere } from "../../../src/reading/reply/order-address.ts";
import { aloneDevice } from "../../make/sample.ts";

const address = (state: string, postcode: string) => ({
  name: "Brightwire Electric",
  street: "12 Mill Lane",
  city: "Madison",
  state,
  postcode,
});
const toItself = [aloneDevice({ billTo: address("WI", "53703"), shipSame: true })];
const toTheSite = [
  aloneDevice({ billTo: address("WI", "53703"), shipTo: address("ON", "K1A 0B1"), shipSame: false }),
];

test.each([
  ["the same", toItself, ["Ship to:", "Brightwire Electric", "Madison, WI 53703"]],
  ["the same, to nine digits", toItself, ["SHIP TO Madison WI 53703-1234"]],
  ["two columns", toItself, ["Vendor   Ship to", "Chicago, IL 60601   Madison, WI 53703"]],
  ["a Canadian site", toTheSite, ["Deliver to: the site", "Ottawa, ON K1A0B1"]],
  ["no address to ship to", toItself, ["Vendor", "Chicago, IL 60601"]],
  ["no postcode", toItself, ["Ship to: the job site, 90012 keypads"]],
  ["sheets without a postcode", [aloneDevice({ billTo: {}, shipSame: true })], ["Ship to: Gary, IN 46402"]],
])("a purchase order ships where its sheets do: %s", (_, sheets, lines) => {
  expect(shipsElsewhere(lines, sheets)).toBeUndefined();
});

test.each([
  [
    toItself,
    ["PO 7", "Ship to:", "Job site", "Gary, IN 46402", "Terms net 30"],
    "Ship to:, Job site, Gary, IN 46402",
  ],
  [toTheSite, ["Delivery address", "Madison, WI 53703"], "Delivery address, Madison, WI 53703"],
  [toTheSite, ["Ship-to Ottawa, ON K1A 0B2"], "Ship-to Ottawa, ON K1A 0B2"],
])("a purchase order ships elsewhere: %#", (sheets, lines, says) => {
  expect(shipsElsewhere(lines, sheets)).toBe(says);
});
