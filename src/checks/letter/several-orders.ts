import { isNoNumber } from "../../orders/no-number.ts";
import { defineLetterCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const order = ({ completeOrder }: Sample) => subject(completeOrder()).order;
const other = ({ deviceAt }: Sample, number = "BW-3110") =>
  subject([deviceAt(1, { id: "1/8", order: number })]).order;

export const severalOrders = defineLetterCheck({
  id: "several-orders",
  title: "A letter that brings sheets of several orders",
  severity: "notes",
  source: { kind: "house" },
  why: "Each order is checked and made by itself. Sheets that were meant for one order show up here when a number is wrong.",
  wordings: {
    several: {
      says: "This letter brings sheets of {count:order}: {orders}. Each is answered for by itself.",
      fix: "Nothing to do if these numbers are right.",
    },
  },
  passing: [
    {
      shows: "one order",
      given: (sample) => ({ files: [], orders: [order(sample)], held: false, reply: false, links: [] }),
    },
  ],
  failing: [
    {
      shows: "two orders",
      given: (sample) => ({
        files: [],
        orders: [order(sample), other(sample)],
        held: false,
        reply: false,
        links: [],
      }),
      wording: "several",
      says: "This letter brings sheets of 2 orders: BW-2207 and BW-3110. Each is answered for by itself.",
    },
    {
      shows: "an order, and sheets without a number",
      given: (sample) => ({
        files: [],
        orders: [order(sample), other(sample, "TBD")],
        held: false,
        reply: false,
        links: [],
      }),
      wording: "several",
      says: "This letter brings sheets of 2 orders: BW-2207 and one without a number. Each is answered for by itself.",
    },
  ],
  *find({ orders }, _, say) {
    if (orders.length > 1)
      yield say(
        "several",
        {
          count: orders.length,
          orders: orders.map(({ number }) => (isNoNumber(number) ? "one without a number" : number)),
        },
        orders.flatMap(({ sheets: [first] }) => (first === undefined ? [] : [{ file: first.id }])),
      );
  },
});
