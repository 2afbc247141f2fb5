import { differByZeros } from "../../orders/alike.ts";
import { alikeOrders } from "../../orders/alike-order.ts";
import { lackedElsewhere } from "../../orders/still-missing.ts";
import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject, without } from "../sample.ts";

const lacksTwo = (sample: Sample) =>
  sample.completeOrder().filter((sheet) => sheet.file !== "S-104 pos 2.pdf");
const mistyped = { order: "BW-2270", id: "1/8" };

export const orderNumberNearMiss = defineOrderCheck({
  id: "order-number-near-miss",
  title: "An order number looks mistyped",
  severity: "asks",
  source: { kind: "house" },
  why: "One wrong digit makes a second order of a single sheet, while the first waits for it in vain. Numbers that follow each other are usual and not asked about, unless the sheets fit together or the same stations come again.",
  wordings: {
    near: {
      says: "Order numbers {number} and {other} are nearly the same, and their sheets seem to belong together.",
      fix: "Did you mean {other}? Confirm which number is right, or that both are.",
    },
    looks: {
      says: "Order numbers {number} and {other} differ only by letters that look like digits.",
      fix: "Did you mean {other}? Confirm which number is right, or that both are.",
    },
    zeros: {
      says: "Order numbers {number} and {other} differ only by zeros in front.",
      fix: "Did you mean {other}? Confirm which number is right, or that both are.",
    },
    slip: {
      says: "Order number {number} is nearly the same as {other}, another order of this project.",
      fix: "Did you mean {other}? Confirm which number is right, or that both are.",
    },
    again: {
      says: "Orders {number} and {other} are for one project, and both have a station {station}.",
      fix: "Tell us whether {number} takes the place of {other}, or whether both are wanted.",
    },
    same: {
      says: "Orders {number} and {other} say the same, sheet for sheet.",
      fix: "Tell us whether {number} is the right number for what came as {other}, or whether you want all of it twice.",
    },
    awaited: {
      says: "What station {station} lacks seems to have come under order {other}, about which we ask.",
      fix: "Nothing to send; it is enough to answer the question about {other}.",
      severity: "notes",
      verdict: "waiting",
    },
  },
  passing: [
    { shows: "the only order of its buyer", given: (sample) => subject(lacksTwo(sample)) },
    {
      shows: "two orders in a row, each complete",
      given: ({ aloneDevice, completeOrder }) =>
        subject(completeOrder(), [aloneDevice({ order: "BW-2208" })]),
    },
    {
      shows: "two orders in a row, each waiting for its own devices",
      given: (sample) =>
        subject(lacksTwo(sample), [sample.plate({ order: "BW-2208", id: "1/8", mark: "S-201" })]),
    },
    {
      shows: "numbers that count on past a swap, in one project",
      given: (sample) => subject([other(sample, "BW-2221")], [other(sample, "BW-2212", "S-2")]),
    },
    {
      shows: "an addition, a building, a floor",
      given: (sample) =>
        subject(
          [other(sample, "BW-220A", "S-1")],
          ["BW-220", "BX-220", "BW-120"].map((number, i) => other(sample, number, `S-${i + 2}`)),
        ),
    },
    {
      shows: "two projects with the same station marks",
      given: (sample) =>
        subject([sample.deviceAt(2, { ...mistyped, project: "Quarry Street School" })], lacksTwo(sample)),
    },
    {
      shows: "two projects whose numbers are one slip apart",
      given: (sample) =>
        subject(
          [other(sample, "BW-2270")],
          [{ ...other(sample, "BW-2207"), project: "Quarry Street School" }],
        ),
    },
  ],
  failing: [
    {
      shows: "the missing device under a number with two digits swapped",
      given: (sample) => subject([sample.deviceAt(2, mistyped)], lacksTwo(sample)),
      wording: "near",
      says: "Order numbers BW-2270 and BW-2207 are nearly the same, and their sheets seem to belong together.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "a device for no plate in the same project",
      given: ({ completeOrder, deviceAt }) =>
        subject([without(deviceAt(2, mistyped), "mark")], completeOrder()),
      wording: "near",
      says: "Order numbers BW-2270 and BW-2207 are nearly the same, and their sheets seem to belong together.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "the letter O for a zero, in an order complete by itself",
      given: (sample) => subject([other(sample, "BW-22O7")], sample.completeOrder()),
      wording: "looks",
      says: "Order numbers BW-22O7 and BW-2207 differ only by letters that look like digits.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "a zero in front",
      given: (sample) => subject([other(sample, "BW-02207")], sample.completeOrder()),
      wording: "zeros",
      says: "Order numbers BW-02207 and BW-2207 differ only by zeros in front.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "two digits swapped",
      given: (sample) => subject([other(sample, "BW-2270")], sample.completeOrder()),
      wording: "slip",
      says: "Order number BW-2270 is nearly the same as BW-2207, another order of this project.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "letters swapped",
      given: (sample) => subject([other(sample, "WB-2207")], sample.completeOrder()),
      wording: "slip",
      says: "Order number WB-2207 is nearly the same as BW-2207, another order of this project.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "a digit too many",
      given: (sample) => subject([other(sample, "BW-22070")], sample.completeOrder()),
      wording: "slip",
      says: "Order number BW-22070 is nearly the same as BW-2207, another order of this project.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "letters in front",
      given: (sample) => subject([other(sample, "GC BW-2207")], sample.completeOrder()),
      wording: "slip",
      says: "Order number GC BW-2207 is nearly the same as BW-2207, another order of this project.",
      fix: "Did you mean BW-2207? Confirm which number is right, or that both are.",
    },
    {
      shows: "the next number with the same station",
      given: (sample) =>
        subject(
          [{ ...other(sample, "BW-2208"), id: "2/1", finish: sample.otherFinish }],
          [other(sample, "BW-2207")],
        ),
      wording: "again",
      says: "Orders BW-2208 and BW-2207 are for one project, and both have a station S-110.",
      fix: "Tell us whether BW-2208 takes the place of BW-2207, or whether both are wanted.",
    },
    {
      shows: "a sheet that came again under another number",
      given: (sample) => subject([{ ...other(sample, "BW-9034"), id: "2/1" }], [other(sample, "BW-2207")]),
      wording: "same",
      says: "Orders BW-9034 and BW-2207 say the same, sheet for sheet.",
      fix: "Tell us whether BW-9034 is the right number for what came as BW-2207, or whether you want all of it twice.",
    },
    {
      shows: "the order that lacks what came under the number mistyped",
      given: (sample) => subject(lacksTwo(sample), [sample.deviceAt(2, mistyped)]),
      wording: "awaited",
      says: "What station S-104 lacks seems to have come under order BW-2270, about which we ask.",
      fix: "Nothing to send; it is enough to answer the question about BW-2270.",
    },
  ],
  *find({ order, others }, _, say) {
    const alike = alikeOrders(order, others);
    const spots = order.sheets
      .filter((sheet) => sheet.order !== undefined)
      .flatMap((sheet) => at(sheet, "order"));
    const meant = alike.find(({ asked }) => asked);
    if (meant !== undefined && meant.how !== "exchanged") {
      const { how, station = "" } = meant;
      const facts = { number: order.number, other: meant.other.number };
      if (how === "looks" && differByZeros(facts.number, facts.other)) yield say("zeros", facts, spots);
      else if (how === "again") yield say(how, { ...facts, station }, spots);
      else yield say(how, facts, spots);
      return;
    }
    // The other order is asked about; but this one is not complete before that is answered.
    const [first] = alike;
    const lacked = first === undefined ? undefined : lackedElsewhere(order, others);
    if (lacked !== undefined && first !== undefined)
      yield say("awaited", { station: lacked.station, other: first.other.number }, spots);
  },
});

function other(sample: Sample, order: string, mark = "S-110"): DeviceSheet {
  return sample.aloneDevice({ order, mark });
}
