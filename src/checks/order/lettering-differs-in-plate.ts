import { letteringOf } from "../../catalogue/catalogue.ts";
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
  ],
  *find({ order }, catalogue, say) {
    for (const { mark: station, plates, devices } of order.stations) {
      const [sheet] = plates;
      const usual = letteringOf(catalogue, sheet?.lettering ?? "");
      if (sheet?.finish === undefined || usual === undefined || !isLettered(sheet)) continue;
      // On another finish another lettering is usual; and of that finish there is a question already.
      const alike = devices.filter(
        (device) =>
          goesIntoPlate(device) &&
          isLettered(device) &&
          plainText(device.finish ?? "") === plainText(sheet.finish ?? ""),
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
