import { hasText } from "../../trade/legend.ts";
import type { DeviceSheet, Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { copiedIn, isToldApart } from "../copied.ts";
import { type Sample, subject } from "../sample.ts";

export const deviceCopiedInPlate = defineOrderCheck({
  id: "device-copied-in-plate",
  title: "One device stands twice in a plate",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "When a sheet is copied for the next position and only the position is changed, the plate gets the same buttons twice, and those that belong there are missing.",
  wordings: {
    twice: {
      says: "The devices for positions {positions} of plate {station} have the same legends, {legends}.",
      fix: "If one of them is still to be changed, send its sheet again.",
    },
  },
  passing: [
    {
      shows: "four devices alike, each under the name of its room",
      given: ({ completeOrder }) => subject(completeOrder()),
    },
    {
      shows: "two of a kind that serve the rooms named above them",
      given: (sample) =>
        subject([
          sample.plate({ gangs: 2 }),
          ...[1, 2].map((n) => pairOf(sample, n, ["LIGHTS", "ON"], ["LIGHTS", "OFF"])),
        ]),
    },
    {
      shows: "two halves of one room",
      given: (sample) =>
        subject([
          sample.plate({ gangs: 2 }, { "1": ["BALLROOM A"], "2": ["BALLROOM B"] }),
          ...[1, 2].map((n) => pairOf(sample, n, ["CEREMONY", ""], ["RECITAL", ""])),
        ]),
    },
    {
      shows: "a plate that is not complete",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1), deviceAt(2)]),
    },
  ],
  failing: [
    {
      shows: "one device copied, two others beside it",
      given: (sample) =>
        subject([
          sample.plate(),
          ...sample.completeOrder().slice(1, 3),
          ...[3, 4].map((n) =>
            sample.deviceAt(n, { legends: pairOf(sample, n, ["STAGE", `${n}`], ["DIM", ""]).legends }),
          ),
        ] as Sheet[]),
      wording: "twice",
      says: "The devices for positions 1 and 2 of plate S-104 have the same legends, “ENTRY”, “STACKS EAST”, “DIM” and “ALL OFF”.",
    },
    {
      shows: "a plate without legends of its own",
      given: (sample) =>
        subject([
          sample.plate({ gangs: 2, legends: [] }),
          ...[1, 2].map((n) => pairOf(sample, n, ["LIGHTS", "ON"], ["LIGHTS", "OFF"])),
        ]),
      wording: "twice",
      says: "The devices for positions 1 and 2 of plate S-104 have the same legends, “LIGHTS ON” and “LIGHTS OFF”.",
    },
  ],
  *find({ order }, _, say) {
    for (const station of order.stations) {
      const copied = copiedIn(station);
      const [first] = copied;
      if (first?.position === undefined || isToldApart(station, copied)) continue;
      const legends = first.legends.filter((one) => !one.plain && hasText(one));
      yield say(
        "twice",
        {
          station: station.mark,
          positions: copied.map(({ position }) => String(position)),
          legends: legends.map(({ rows }) => `“${rows.join(" ").trim()}”`),
        },
        copied.flatMap((device) => at(device, "position")),
      );
    }
  },
});

function pairOf(
  sample: Sample,
  position: number,
  first: readonly string[],
  second: readonly string[],
): DeviceSheet {
  const { legends } = sample.deviceAt(position);
  const [one, two] = legends;
  if (one === undefined || two === undefined) throw new Error("the sample has lost its buttons");
  return sample.deviceAt(position, {
    gangs: 2,
    layouts: [sample.otherLayout.code],
    legends: [
      { ...one, rows: first },
      { ...two, rows: second },
    ],
  });
}
