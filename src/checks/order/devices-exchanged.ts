import { goesIntoPlate } from "../../orders/standing.ts";
import type { DeviceSheet, Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

/** What a gang is called whose device moves something, and what stands on such a device. Common practice, no source. */
const moved = /^(?:SHADES?|BLINDS?|CURTAINS?|DRAPES?|DRAPERY|SCREENS?|AWNINGS?|SHUTTERS?)$/u;
const moving = new Set(["OPEN", "CLOSE", "CLOSED", "UP", "DOWN", "RAISE", "LOWER", "STOP"]);

export const devicesExchanged = defineOrderCheck({
  id: "devices-exchanged",
  title: "Two devices of a plate may be exchanged",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "The gang that is called SHADES holds the device that moves them. Where neither of two devices suits what stands above it, and each says what stands above the other, their positions were mostly exchanged.",
  wordings: {
    exchanged: {
      says: "The legends of position {position} of plate {station} suit “{other}” above position {there} better than “{own}”.",
      fix: "If the positions are exchanged, correct them on both sheets, and send them again.",
    },
  },
  passing: [
    { shows: "devices below their own names", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "shades below SHADES, and light beside it",
      given: (sample) =>
        subject(pairOf(sample, ["SHADES", "LIGHTS"], ["OPEN", "STOP", "CLOSE"], ["ON", "DIM", "OFF"])),
    },
    {
      shows: "a device for both",
      given: (sample) =>
        subject(pairOf(sample, ["KITCHEN", "HALL"], ["KITCHEN", "HALL", "OFF"], ["ON", "DIM", "OFF"])),
    },
    {
      shows: "a button that is called after another gang",
      given: (sample) =>
        subject(pairOf(sample, ["FOYER", "DESK"], ["ENTRY", "DIM", "OFF"], ["FOYER", "DIM", "OFF"])),
    },
  ],
  failing: [
    {
      shows: "shades below LIGHTS",
      given: (sample) =>
        subject(pairOf(sample, ["SHADES", "LIGHTS"], ["ON", "DIM", "OFF"], ["OPEN", "STOP", "CLOSE"])),
      wording: "exchanged",
      says: "The legends of position 2 of plate S-104 suit “SHADES” above position 1 better than “LIGHTS”.",
    },
    {
      shows: "the kitchen below HALL",
      given: (sample) =>
        subject(pairOf(sample, ["KITCHEN", "HALL"], ["HALL", "DIM", "OFF"], ["KITCHEN", "DIM", "OFF"])),
      wording: "exchanged",
      says: "The legends of position 1 of plate S-104 suit “HALL” above position 2 better than “KITCHEN”.",
    },
  ],
  *find({ order }, _catalogue, say) {
    for (const { mark: station, plates, devices } of order.stations) {
      const [plate, second] = plates;
      if (plate === undefined || second !== undefined) continue;
      const lost = devices.filter(goesIntoPlate).flatMap((device) => {
        const { position } = device;
        if (position === undefined) return [];
        const gang = wordsAt(plate, `${position}`);
        return gang.length === 0 || suits(device, gang) ? [] : [{ device, position, gang }];
      });
      for (const { device, position, gang } of lost) {
        const other = lost.find(
          (one) => moves(device, one.gang) || (suits(device, one.gang) && suits(one.device, gang)),
        );
        if (other === undefined) continue;
        yield say(
          "exchanged",
          { position, station, there: other.position, other: other.gang.join(" "), own: gang.join(" ") },
          [...at(device, "position"), ...at(other.device, "position")],
        );
        break;
      }
    }
  },
});

function wordsAt({ legends }: Sheet, face: string): string[] {
  const rows = legends.filter((one) => one.face === face && !one.plain).flatMap((one) => one.rows);
  return (
    rows
      .join(" ")
      .toUpperCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  );
}

const wordsOn = (device: DeviceSheet): string[] =>
  device.legends.filter(({ face }) => face !== "plate").flatMap(({ face }) => wordsAt(device, face));

/** Whether a device moves what a gang is called after. */
function moves(device: DeviceSheet, gang: readonly string[]): boolean {
  return (
    gang.some((word) => moved.test(word)) && wordsOn(device).filter((word) => moving.has(word)).length > 1
  );
}

/** Whether a device says the name of a gang, or moves what it is called after. */
function suits(device: DeviceSheet, gang: readonly string[]): boolean {
  const words = wordsOn(device);
  return gang.some((word) => word.length > 2 && words.includes(word)) || moves(device, gang);
}

/** A plate of two gangs with its devices. */
function pairOf(
  { plate, deviceAt }: Sample,
  gangs: readonly [string, string],
  ...devices: readonly (readonly string[])[]
): Sheet[] {
  return [
    plate({ gangs: 2 }, { "1": [gangs[0]], "2": [gangs[1]] }),
    ...devices.map((legends, i) =>
      deviceAt(i + 1, {
        gangs: 2,
        legends: legends.map((text, n) => ({ face: `${n + 1}` as const, rows: [text, ""], plain: false })),
      }),
    ),
  ];
}
