import { meantOrder } from "../../orders/meant-order.ts";
import { at, defineOrderCheck } from "../check.ts";
import { aloneDevice, completeOrder, deviceAt, plate, subject, without } from "../sample.ts";

const lacksTwo = completeOrder().filter((sheet) => sheet.file !== "S-104 pos 2.pdf");
const mistyped = { order: "BW-2270", id: "1/8" };

export const orderNumberNearMiss = defineOrderCheck({
  id: "order-number-near-miss",
  title: "An order number looks mistyped",
  severity: "asks",
  source: { kind: "house" },
  why: "One wrong digit makes a second order of a single sheet, while the first waits for it in vain. Numbers that follow each other are usual, so only orders that fit together are asked about.",
  wordings: {
    near: {
      says: "Order numbers {number} and {other} are nearly the same, and their sheets seem to belong together.",
      fix: "Did you mean {other}? Confirm which number is right, or that both are.",
    },
  },
  passing: [
    { shows: "the only order of its buyer", given: subject(lacksTwo) },
    {
      shows: "two orders in a row, each complete",
      given: subject(completeOrder(), [aloneDevice({ order: "BW-2208" })]),
    },
    {
      shows: "two orders in a row, each waiting for its own devices",
      given: subject(lacksTwo, [plate({ order: "BW-2208", id: "1/8", mark: "S-201" })]),
    },
    {
      shows: "the order that has most of the sheets; the other one is asked about",
      given: subject(lacksTwo, [deviceAt(2, mistyped)]),
    },
    {
      shows: "two projects with the same station marks",
      given: subject([deviceAt(2, { ...mistyped, project: "Quarry Street School" })], lacksTwo),
    },
    {
      shows: "an order that a newer letter fits; that letter is asked about",
      given: subject(
        [deviceAt(2, mistyped)],
        lacksTwo.map((sheet) => ({ ...sheet, id: `2${sheet.id}` })),
      ),
    },
  ],
  failing: [
    {
      shows: "the missing device under a number with two digits swapped",
      given: subject([deviceAt(2, mistyped)], lacksTwo),
      wording: "near",
    },
    {
      shows: "a device for no plate in the same project",
      given: subject([without(deviceAt(2, mistyped), "mark")], completeOrder()),
      wording: "near",
    },
  ],
  *find({ order, others }, _, say) {
    const other = meantOrder(order, others);
    if (other === undefined) return;
    yield say(
      "near",
      { number: order.number, other: other.number },
      order.sheets.filter((sheet) => sheet.order !== undefined).flatMap((sheet) => at(sheet, "order")),
    );
  },
});
