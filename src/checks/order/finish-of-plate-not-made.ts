import { finishOf } from "../../catalogue/catalogue.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import { at, defineOrderCheck } from "../check.ts";
import { hasFinishMade } from "../finishes.ts";
import { subject } from "../sample.ts";

export const finishOfPlateNotMade = defineOrderCheck({
  id: "finish-of-plate-not-made",
  title: "Devices have the finish that their plate cannot have",
  severity: "notes",
  source: { kind: "common practice" },
  why: "A plate whose finish is not made in its size gets another, and its devices nearly always go with it. Whoever mends the plate alone is asked about the devices next.",
  wordings: {
    devices: {
      says: "Plate {station} cannot have the finish {finish}, and neither can the devices in it: {files}.",
      fix: "Send their sheets again as well, with the finish that you choose for the plate.",
    },
  },
  passing: [
    { shows: "a finish that is made", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "devices in another finish",
      given: ({ deviceAt, plate, otherFinish, widest }) =>
        subject([plate({ gangs: widest }), deviceAt(1, { finish: otherFinish })]),
    },
  ],
  failing: [
    {
      shows: "the widest plate and its devices in a finish that is not made for it",
      given: ({ deviceAt, plate, widest }) =>
        subject([plate({ gangs: widest }), deviceAt(1, { gangs: widest }), deviceAt(2, { gangs: widest })]),
      wording: "devices",
      says: "Plate S-104 cannot have the finish Oat, and neither can the devices in it: S-104 pos 1.pdf and S-104 pos 2.pdf.",
    },
  ],
  *find({ order }, catalogue, say) {
    for (const { mark: station, plates, devices } of order.stations) {
      const [sheet] = plates;
      const finish = finishOf(catalogue, sheet?.finish ?? "");
      if (sheet === undefined || finish === undefined || hasFinishMade(sheet, catalogue) !== false) continue;
      const same = devices.filter((device) => goesIntoPlate(device) && device.finish === sheet.finish);
      if (same.length > 0)
        yield say(
          "devices",
          { files: same.map(({ file }) => file), finish: finish.name, station },
          same.flatMap((device) => at(device, "finish")),
        );
    }
  },
});
