import { contentKey } from "../orders/keys.ts";
import { missingAt } from "../orders/missing.ts";
import { goesIntoPlate } from "../orders/standing.ts";
import { hasText } from "../trade/legend.ts";
import type { Order, Replacement, Station } from "../trade/order.ts";
import type { DeviceSheet, Sheet } from "../trade/sheet.ts";

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
  const alike = [...Map.groupBy(fitted.filter(isLettered), cutOn).values()].filter(
    (group) => group.length > 1,
  );
  return alike.length === 1 && alike[0]?.length === 2 ? alike[0] : [];
}

/**
 * The one other sheet whose legends a sheet has taken over whole, where most of them were others before. In a plate it
 * is that of another position, else that of another station.
 */
export function takenOverFrom({ old, now }: Replacement, { stations }: Order): Sheet | undefined {
  const before = new Map(old.legends.map(({ face, rows, plain }) => [face, contentKey({ rows, plain })]));
  const lettered = now.legends.filter((one) => !one.plain && hasText(one));
  const others = lettered.filter(({ face, rows, plain }) => before.get(face) !== contentKey({ rows, plain }));
  if (others.length < 2 || others.length * 2 <= lettered.length) return undefined;
  const station = stations.find((one) => [...one.plates, ...one.devices].some(({ id }) => id === now.id));
  if (now.kind === "device" && goesIntoPlate(now)) {
    const pair = station === undefined ? [] : copiedIn(station);
    // Where nothing tells the two apart, they are asked about as a pair.
    const isOfPair =
      pair.some(({ id }) => id === now.id) && station !== undefined && isToldApart(station, pair);
    return isOfPair ? pair.find(({ id }) => id !== now.id) : undefined;
  }
  // Where nothing on the plate names a room, stations may well be alike.
  if (now.kind === "device" && !lettered.some(({ face }) => face === "plate")) return undefined;
  const [other, ...more] = stations
    .filter((one) => one !== station)
    .flatMap(({ plates, devices }): Sheet[] => (now.kind === "plate" ? [...plates] : [...devices]))
    .filter((one) => cutOn(one) === cutOn(now));
  return more.length > 0 ? undefined : other;
}

function isLettered({ legends }: Sheet): boolean {
  return legends.some((one) => !one.plain && hasText(one));
}

/** What is cut on a sheet's faces, and what faces those are. */
function cutOn(sheet: Sheet): string {
  const { legends, gangs } = sheet;
  const { layouts, legendPlace = "" } = sheet.kind === "device" ? sheet : { layouts: [gangs] };
  return contentKey({ layouts, legendPlace, legends });
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
