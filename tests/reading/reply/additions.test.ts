import { expect, test } from "vitest";
import { without } from "../../../src/checks/sample.ts";
import { withoutAdditions } from "../../../src/reading/reply/additions.ts";
import { alone, came } from "../../make/came.ts";
import { deviceAt, plate } from "../../make/sample.ts";

const before = alone("B-2", ["SAUNA"]);
const one = came([alone("N-2", ["STEAM"])], [before]);
const two = came([alone("N-2", ["STEAM"]), alone("N-3", ["POOL"])], [before]);

const saysNothing = (said: string, given: typeof one): boolean =>
  !/[\p{L}\p{N}]/u.test(withoutAdditions(said, given));

test.each([
  ["Please add N-2 to the order.", one, two],
  ["One more station for the same order, please add.", one, two],
  ["An additional station", one, two],
  ["Additional station attached, please add to our order.", one, two],
  ["Here is one more sheet to add to the order.", one, two],
  ["Can you add this one to the order?", one, came([], [before])],
  ["Please add this station to our order", one, two],
  ["Please add this.", one, came([before], [before])],
  ["attached, please add.", one, came([before], [before])],
  ["Please add these to our order.", two, one],
  ["Two more stations for the same order", two, one],
  ["Please add two devices to the job", two, one],
  ["More stations attached", two, one],
  ["This goes with S-104", came([deviceAt(2)], [plate(), deviceAt(1)]), one],
  ["This belongs to plate S-104.", came([deviceAt(2)], [plate(), deviceAt(1)]), one],
  [
    "It goes with the plate we sent earlier",
    came([deviceAt(2)], [plate(), deviceAt(1)]),
    came([before], [before]),
  ],
  ["The one you were missing.", one, came([before], [before])],
  ["Please complete our order with this.", one, came([before], [before])],
])("“%s” asks for nothing where it came, and for something where it did not", (said, fits, others) => {
  expect([saysNothing(said, fits), saysNothing(said, others)]).toEqual([true, false]);
});

test.each([
  ["sheets for a place that has one", came([before], [before])],
  ["the first sheets of an order", came([alone("N-2", ["STEAM"])])],
  ["sheets of another order", came([alone("N-2", ["STEAM"], "LOBBY", { order: "QX-1" })], [before])],
  [
    "sheets of no order",
    came([without(alone("N-2", ["STEAM"]), "order")], [without(alone("B-2", ["SAUNA"]), "order")]),
  ],
])("%s are no addition", (_, given) => {
  expect(saysNothing("Please add this station to our order", given)).toBe(false);
});

test.each([
  "Please add N-7 to the order.",
  "Please add N-2 to plate B-2.",
  "Please add one button to the station.",
  "Please add another button",
  "Please add a note to the order.",
  "Please add it.",
  "Please add it to the invoice.",
  "One more device for the same order, in Oat.",
])("“%s” asks for something else", (said) => {
  expect(saysNothing(said, one)).toBe(false);
});
