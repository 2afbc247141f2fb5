import { goesIntoPlate } from "../../orders/standing.ts";
import type { Spot } from "../../trade/problem.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject, without } from "../sample.ts";

export const gangCountDiffers = defineOrderCheck({
  id: "gang-count-differs",
  title: "A device and its plate disagree on the number of gangs",
  severity: "stops",
  source: { kind: "common practice" },
  why: "The gangs decide the width of the plate and how many devices belong to it. If two sheets count differently, one of them is wrong.",
  wordings: {
    differs: {
      says: "Plate {station} has {gangs:gang} by its own sheet, but {claimed} by {files}.",
      fix: "Which is right? Correct the sheet that is wrong, be it {again} or the plate sheet, and send it again.",
    },
    beyond: {
      says: "{file} is for position {position}, but plate {station} has {gangs:gang}.",
      fix: "Correct the position or the gangs, whichever is wrong, and send {again} again.",
    },
  },
  passing: [
    { shows: "four devices for a plate of four", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "a form that does not ask for the gangs",
      given: ({ deviceAt, plate }) => subject([plate(), without(deviceAt(3), "gangs")]),
    },
  ],
  failing: [
    {
      shows: "a device for a plate of six",
      given: ({ deviceAt, plate }) => subject([plate(), deviceAt(1, { gangs: 6 }), deviceAt(2)]),
      wording: "differs",
      says: "Plate S-104 has 4 gangs by its own sheet, but 6 by S-104 pos 1.pdf.",
      fix: "Which is right? Correct the sheet that is wrong, be it S-104 pos 1.pdf or the plate sheet, and send it again.",
    },
    {
      shows: "a device in the fifth position of four",
      given: ({ deviceAt, plate }) => subject([plate(), without(deviceAt(5), "gangs")]),
      wording: "beyond",
      says: "S-104 pos 5.pdf is for position 5, but plate S-104 has 4 gangs.",
      fix: "Correct the position or the gangs, whichever is wrong, and send S-104 plate.pdf and S-104 pos 5.pdf again.",
    },
  ],
  *find({ order }, _, say) {
    for (const { mark: station, plates, devices } of order.stations) {
      const [sheet] = plates;
      const gangs = sheet?.gangs;
      if (sheet === undefined || gangs === undefined) continue;
      const fitted = devices.filter(goesIntoPlate);
      // Where another device agrees with the plate, it is not the plate that must be sent again.
      const agreed = fitted.some((device) => device.gangs === gangs);
      const doubtful: readonly Spot[] = agreed ? [] : at(sheet, "gangs");
      const again = (files: string[]): string[] => (agreed ? files : [sheet.file, ...files]);
      for (const [claimed, claims] of Map.groupBy(fitted, (device) => device.gangs)) {
        if (claimed === undefined || claimed === gangs) continue;
        const files = claims.map(({ file }) => file);
        yield say("differs", { station, gangs, claimed, files, again: again(files) }, [
          ...claims.flatMap((device) => at(device, "gangs")),
          ...doubtful,
        ]);
      }
      for (const device of fitted) {
        const { file, position } = device;
        if (device.gangs === undefined && position !== undefined && position > gangs)
          yield say("beyond", { file, position, station, gangs, again: again([file]) }, [
            ...at(device, "position"),
            ...doubtful,
          ]);
      }
    }
  },
});
