import { finishOf } from "../../catalogue/catalogue.ts";
import { plainText } from "../../orders/keys.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const finishDiffersInPlate = defineOrderCheck({
  id: "finish-differs-in-plate",
  title: "A device has another finish than its plate",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Plate and devices of one station nearly always match. Two colours side by side can be wanted, but are more often a slip.",
  wordings: {
    differs: {
      says: "The device is {finish}, but plate {station} is {usual}.",
      fix: "If only one is wanted, send the sheet again with the right finish.",
    },
    apart: {
      says: "The devices in plate {station} are not all of one finish: {finishes}.",
      fix: "If only one is wanted, send the sheets that are wrong again with the right finish.",
    },
  },
  passing: [
    {
      shows: "one finish throughout",
      given: ({ aloneDevice, completeOrder, otherFinish }) =>
        subject([...completeOrder(), aloneDevice({ finish: otherFinish })]),
    },
    {
      shows: "a plate finish in which no device is made",
      given: ({ deviceAt, plate, finishThat }) =>
        subject([plate({ finish: finishThat(({ devices }) => !devices) }), deviceAt(1), deviceAt(2)]),
    },
  ],
  failing: [
    {
      shows: "a device in another finish than its plate",
      given: ({ deviceAt, plate, otherFinish }) =>
        subject([plate(), deviceAt(1), deviceAt(2, { finish: otherFinish })]),
      wording: "differs",
      says: "The device is Slate, but plate S-104 is Oat.",
    },
    {
      shows: "devices of two finishes in a plate whose finish no device is made in",
      given: ({ deviceAt, plate, finishThat, otherFinish }) =>
        subject([
          plate({ finish: finishThat(({ devices }) => !devices) }),
          deviceAt(1),
          deviceAt(2, { finish: otherFinish }),
        ]),
      wording: "apart",
      says: "The devices in plate S-104 are not all of one finish: Oat and Slate.",
    },
  ],
  *find({ order }, catalogue, say) {
    const nameOf = (code: string): string => finishOf(catalogue, code)?.name ?? code;
    for (const { mark: station, plates, devices } of order.stations) {
      const usual = plates[0]?.finish;
      if (usual === undefined) continue;
      const fitted = devices.filter((device) => device.finish !== undefined && goesIntoPlate(device));
      if (finishOf(catalogue, usual)?.devices === false) {
        const finishes = [...new Set(fitted.map(({ finish = "" }) => nameOf(finish)))];
        const spots = fitted.flatMap((device) => at(device, "finish"));
        if (finishes.length > 1) yield say("apart", { station, finishes }, spots);
        continue;
      }
      for (const [finish, odd] of Map.groupBy(fitted, (device) => device.finish))
        if (finish !== undefined && plainText(finish) !== plainText(usual))
          yield say(
            "differs",
            { finish: nameOf(finish), station, usual: nameOf(usual) },
            odd.flatMap((device) => at(device, "finish")),
          );
    }
  },
});
