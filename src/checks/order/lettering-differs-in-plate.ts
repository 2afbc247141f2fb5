import { finishOf, letteringOf } from "../../catalogue/catalogue.ts";
import { plainText } from "../../orders/keys.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import { hasText } from "../../trade/legend.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const letteringDiffersInPlate = defineOrderCheck({
  id: "lettering-differs-in-plate",
  title: "A device has another lettering than its plate",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Legends of one station in two colours side by side can be wanted, but are more often a slip.",
  wordings: {
    differs: {
      says: "The device's lettering is {lettering}, but that of plate {station} is {usual}.",
      fix: "If only one is wanted, send the sheet again with the right lettering.",
    },
    apart: {
      says: "The devices in plate {station} are not all of one lettering: {letterings}.",
      fix: "If only one is wanted, send the sheets that are wrong again with the right lettering.",
    },
  },
  passing: [
    {
      shows: "one lettering throughout",
      given: ({ aloneDevice, completeOrder, otherLettering }) =>
        subject([...completeOrder(), aloneDevice({ lettering: otherLettering })]),
    },
    {
      shows: "another finish too, which is asked about already",
      given: ({ deviceAt, plate, otherFinish, otherLettering }) =>
        subject([plate(), deviceAt(1, { finish: otherFinish, lettering: otherLettering })]),
    },
    {
      shows: "devices of two finishes in a plate whose finish no device is made in",
      given: ({ deviceAt, plate, finishThat, otherFinish, otherLettering }) =>
        subject([
          plate({ finish: finishThat(({ devices }) => !devices) }),
          deviceAt(1),
          deviceAt(2, { finish: otherFinish, lettering: otherLettering }),
        ]),
    },
    {
      shows: "a plate on which nothing is cut",
      given: ({ deviceAt, plate, otherLettering }) =>
        subject([plate({ legends: [] }), deviceAt(1, { lettering: otherLettering })]),
    },
    {
      shows: "a lettering that is not made",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1, { lettering: "Gold" })]),
    },
  ],
  failing: [
    {
      shows: "one device in rust, the plate in ink",
      given: ({ deviceAt, plate, otherLettering }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { lettering: otherLettering })]),
      wording: "differs",
      says: "The device's lettering is Milk, but that of plate S-104 is Ink.",
    },
    {
      shows: "devices of two letterings in a plate whose finish no device is made in",
      given: ({ deviceAt, plate, finishThat, otherLettering }) =>
        subject([
          plate({ finish: finishThat(({ devices }) => !devices) }),
          deviceAt(1),
          deviceAt(2, { lettering: otherLettering }),
        ]),
      wording: "apart",
      says: "The devices in plate S-104 are not all of one lettering: Ink and Milk.",
    },
  ],
  *find({ order }, catalogue, say) {
    for (const { mark: station, plates, devices } of order.stations) {
      const [sheet] = plates;
      const lettered = devices.filter((device) => goesIntoPlate(device) && isLettered(device));
      if (finishOf(catalogue, sheet?.finish ?? "")?.devices === false) {
        const names = lettered.flatMap(({ lettering = "" }) => letteringOf(catalogue, lettering)?.name ?? []);
        const letterings = [...new Set(names)];
        const isOfOneFinish = new Set(lettered.map(({ finish = "" }) => plainText(finish))).size === 1;
        const spots = lettered.flatMap((device) => at(device, "lettering"));
        if (isOfOneFinish && letterings.length > 1) yield say("apart", { station, letterings }, spots);
        continue;
      }
      const usual = letteringOf(catalogue, sheet?.lettering ?? "");
      if (sheet?.finish === undefined || usual === undefined || !isLettered(sheet)) continue;
      // On another finish another lettering is usual; and of that finish there is a question already.
      const alike = lettered.filter(
        (device) => plainText(device.finish ?? "") === plainText(sheet.finish ?? ""),
      );
      for (const [code, odd] of Map.groupBy(alike, ({ lettering }) => lettering)) {
        const other = letteringOf(catalogue, code ?? "");
        if (other !== undefined && other !== usual)
          yield say(
            "differs",
            { lettering: other.name, station, usual: usual.name },
            odd.flatMap((device) => at(device, "lettering")),
          );
      }
    }
  },
});

function isLettered({ legends }: Sheet): boolean {
  return legends.some((legend) => !legend.plain && hasText(legend));
}
