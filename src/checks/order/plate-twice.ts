import { at, defineOrderCheck } from "../check.ts";
import { completeOrder, plate, subject } from "../sample.ts";

export const plateTwice = defineOrderCheck({
  id: "plate-twice",
  title: "Two plate sheets carry one station mark",
  severity: "stops",
  source: { kind: "common practice" },
  why: "A station has one plate. With two sheets for it nobody can tell which one to cut, or where the devices go.",
  wordings: {
    twice: {
      says: "{count:plate sheet} carry the station mark {station}: {files}.",
      fix: "Correct the wrong mark and send each of these sheets again, since none of them counts now; leave out what is not wanted.",
    },
  },
  passing: [
    { shows: "one plate", given: subject(completeOrder()) },
    {
      shows: "one sheet under two names",
      given: subject([...completeOrder(), plate({ id: "1/8", file: "copy.pdf" })]),
    },
  ],
  failing: [
    {
      shows: "two plates that differ",
      given: subject([...completeOrder(), plate({ id: "1/8", file: "copy.pdf", gangs: 3 })]),
      wording: "twice",
    },
  ],
  *find({ order }, _, say) {
    for (const { mark: station, plates } of order.stations)
      if (plates.length > 1)
        yield say(
          "twice",
          { station, count: plates.length, files: plates.map(({ file }) => file) },
          plates.flatMap((sheet) => at(sheet, "mark")),
        );
  },
});
