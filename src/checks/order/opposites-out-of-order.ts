import type { DeviceSheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { rowPlaces } from "../limits.ts";
import { legend, type Sample, subject } from "../sample.ts";

const opposites = [
  ["ON", "OFF"],
  ["UP", "DOWN"],
  ["RAISE", "LOWER"],
  ["OPEN", "CLOSE"],
] as const;

export const oppositesOutOfOrder = defineOrderCheck({
  id: "opposites-out-of-order",
  title: "Opposites stand the other way round than elsewhere",
  severity: "notes",
  source: { kind: "common practice" },
  why: "A hand that has learnt that ON is above OFF presses without reading. One device of an order that has them the other way round is mostly a slip.",
  wordings: {
    turned: {
      says: "“{first}” comes before “{second}” here; on {usual:other device} of this order it comes after.",
      fix: "Nothing to do if it is meant so; it is cut as typed.",
    },
  },
  passing: [
    { shows: "no opposites", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "one way throughout",
      given: (sample) => subject([pair(sample, 1, "ON", "OFF"), pair(sample, 2, "ON", "OFF")]),
    },
    {
      shows: "legends that are not cut, one on a plate, and two of one word",
      given: (sample) => {
        const { legends, ...third } = pair(sample, 3, "OFF", "ON");
        return subject([
          pair(sample, 1, "ON", "OFF"),
          pair(sample, 2, "ON", "OFF"),
          { ...third, legends: legends.map((one) => ({ ...one, plain: true })) },
          pair(sample, 4, "OFF", "ON"),
          pair(sample, 5, "OFF", "ON"),
          sample.aloneDevice({ legends: [legend("1", "ON"), legend("plate", "ALL", "OFF")] }),
          sample.deviceAt(6, { legends: [legend("1", "OFF"), legend("2", "ON"), legend("3", "OFF")] }),
        ]);
      },
    },
    {
      shows: "one of each way",
      given: (sample) => subject([pair(sample, 1, "ON", "OFF"), pair(sample, 2, "OFF", "ON")]),
    },
  ],
  failing: [
    {
      shows: "one of three the other way round",
      given: (sample) =>
        subject([
          pair(sample, 1, "SHADES UP", "SHADES DOWN"),
          pair(sample, 2, "UP", "DOWN"),
          pair(sample, 3, "DOWN", "UP"),
        ]),
      wording: "turned",
      says: "“DOWN” comes before “UP” here; on 2 other devices of this order it comes after.",
    },
    {
      shows: "the usual way on one, where all others have the other",
      given: (sample) =>
        subject([
          pair(sample, 1, "OFF ", "ON "),
          pair(sample, 2, "All off", "All on"),
          pair(sample, 3, "ON", "OFF"),
        ]),
      wording: "turned",
      says: "“ON” comes before “OFF” here; on 2 other devices of this order it comes after.",
    },
  ],
  *find({ order }, catalogue, say) {
    const devices = order.sheets.filter((sheet) => sheet.kind === "device");
    for (const [one, other] of opposites) {
      const placed = devices.flatMap((sheet) => {
        const [a, b] = [buttonThatEnds(sheet, one), buttonThatEnds(sheet, other)];
        return a === undefined || b === undefined ? [] : [{ sheet, a, b, turned: a > b }];
      });
      const turned = placed.filter((device) => device.turned);
      const straight = placed.filter((device) => !device.turned);
      const [odd, usual] =
        turned.length < straight.length ? [turned, straight.length] : [straight, turned.length];
      if (odd.length === usual) continue;
      for (const { sheet, a, b, turned: isTurned } of odd)
        yield say(
          "turned",
          { first: isTurned ? other : one, second: isTurned ? one : other, usual },
          at(sheet, ...[a, b].flatMap((n) => rowPlaces(sheet, `${n}`, catalogue))),
        );
    }
  },
});

/** The number of the only button whose legend ends in this word. */
function buttonThatEnds({ legends }: DeviceSheet, word: string): number | undefined {
  const found = legends.filter(
    ({ face, rows, plain }) =>
      face !== "plate" && !plain && rows.join(" ").trim().toUpperCase().split(/\s+/).at(-1) === word,
  );
  return found.length === 1 ? Number(found[0]?.face) : undefined;
}

function pair(sample: Sample, position: number, first: string, second: string): DeviceSheet {
  const legends = [legend("1", ...first.split(" ")), legend("2", ...second.split(" "))];
  return sample.deviceAt(position, { layouts: [sample.otherLayout.code], legends });
}
