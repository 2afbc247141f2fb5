import { contentKey } from "../orders/keys.ts";
import { missingAt } from "../orders/missing.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import { hasText } from "../trade/legend.ts";
import type { Station } from "../trade/order.ts";
import type { DeviceSheet } from "../trade/sheet.ts";

/** What a control may say in every room, so that a room's name above it is enough to tell two of them apart. */
const anywhere = new Set(
  (
    "ON OFF ALL UP DOWN RAISE LOWER OPEN CLOSE CLOSED STOP DIM BRIGHT HIGH MEDIUM MED LOW FULL HALF MAX MIN AUTO MANUAL MODE " +
    "LIGHT LIGHTS LTS LTG LIGHTING LAMP LAMPS SHADE SHADES BLIND BLINDS SHEER SHEERS DRAPE DRAPES CURTAIN CURTAINS SCREEN FAN " +
    "FANS HEAT SCENE PRESET ZONE DAY NIGHT EVENING MORNING CLEAN CLEANING MEETING PRESENT PRESENTATION VIDEO AV MOVIE READING " +
    "READ RELAX PARTY WELCOME AWAY SLEEP EXAM WORK TASK ACCENT COVE WALL CEILING DOWNLIGHTS FRONT REAR BACK CENTER LEFT RIGHT " +
    "MUTE VOLUME MUSIC PLAY PAUSE TV GAME BREAKFAST LUNCH DINNER DANCE COCKTAIL BANQUET LECTURE SPEECH WORSHIP SERMON PRAYER " +
    "PENDANT PENDANTS SCONCE SCONCES TRACK SPOT SPOTS CANS CHANDELIER UNDER TABLE BED VANITY MIRROR SHOWER NIGHTLIGHT"
  ).split(" "),
);

/** Two devices of a complete plate that are one, while all others differ. Where more are alike it is a plan, no slip. */
export function copiedIn(station: Station): readonly DeviceSheet[] {
  const { plates, devices } = station;
  const fitted = devices.filter(goesIntoPlate);
  const isComplete = fitted.length === plates[0]?.gangs && missingAt(station).length === 0;
  if (plates.length !== 1 || !isComplete) return [];
  const alike = [
    ...Map.groupBy(
      fitted.filter(({ legends }) => legends.some((one) => !one.plain && hasText(one))),
      ({ layouts, legendPlace = "", legends }) => contentKey({ layouts, legendPlace, legends }),
    ).values(),
  ].filter((group) => group.length > 1);
  return alike.length === 1 && alike[0]?.length === 2 ? alike[0] : [];
}

/** Whether the plate's own legends tell two devices apart that say nothing but what any control says. */
export function isToldApart({ plates }: Station, [one, other]: readonly DeviceSheet[]): boolean {
  const above = (device: DeviceSheet | undefined): string =>
    plates[0]?.legends
      .filter((legend) => legend.face === `${device?.position}` && !legend.plain)
      .flatMap(({ rows }) => rows.map((row) => row.trim()))
      .join(" ") ?? "";
  const [here, there] = [above(one), above(other)];
  if (here === there) return false;
  if (series(here) === series(there)) return true;
  const words = one?.legends.flatMap(({ rows, plain }) =>
    plain
      ? []
      : (rows
          .join(" ")
          .toUpperCase()
          .match(/[\p{L}']+/gu) ?? []),
  );
  return words?.every((word) => word.length < 2 || anywhere.has(word)) ?? false;
}

/** A legend without what tells one of a series from another: BALLROOM A and BALLROOM B. */
function series(legend: string): string {
  return legend
    .toUpperCase()
    .replace(/\b(\p{L}|\d+\p{L}?|NORTH|SOUTH|EAST|WEST|LEFT|RIGHT|FRONT|REAR)\b/gu, "");
}
