import { doubledPlates } from "../../orders/doubled.ts";
import { at, defineOrderCheck } from "../check.ts";
import { subject } from "../sample.ts";

export const plateTwice = defineOrderCheck({
  id: "plate-twice",
  title: "Two plate sheets carry one station mark",
  severity: "stops",
  source: { kind: "common practice" },
  why: "A station has one plate. With two sheets for it nobody can tell which one to cut, or where the devices go.",
  wordings: {
    twice: {
      says: "{count:plate sheet} carry the station mark {station}: {files}.",
      fix: "Correct the wrong mark and send each of these sheets again: none of them counts now. Leave out what is not wanted.",
    },
    forgotten: {
      says: "{count:plate sheet} carry the station mark {station}: {files}. None came for {other}.",
      fix: "Correct the wrong mark and send each of these sheets again: none of them counts now.",
    },
  },
  passing: [
    { shows: "one plate", given: ({ completeOrder }) => subject(completeOrder()) },
    {
      shows: "one sheet under two names",
      given: ({ completeOrder, plate }) =>
        subject([...completeOrder(), plate({ id: "1/8", file: "copy.pdf" })]),
    },
  ],
  failing: [
    {
      shows: "two plates that differ",
      given: ({ completeOrder, plate }) =>
        subject([...completeOrder(), plate({ id: "1/8", file: "copy.pdf", gangs: 3 })]),
      wording: "twice",
      says: "2 plate sheets carry the station mark S-104: S-104 plate.pdf and copy.pdf.",
    },
    {
      shows: "two plates of one mark beside devices that have none",
      given: ({ completeOrder, deviceAt, plate, otherFinish }) =>
        subject([
          ...completeOrder(),
          plate({ id: "1/8", file: "copy.pdf", finish: otherFinish }),
          ...[1, 2, 3, 4].map((n) => deviceAt(n, { id: `1/${n + 8}`, mark: "S-105" })),
        ]),
      wording: "forgotten",
      says: "2 plate sheets carry the station mark S-104: S-104 plate.pdf and copy.pdf. None came for S-105.",
    },
  ],
  *find({ order }, _, say) {
    for (const { station, other } of doubledPlates(order)) {
      const { mark, plates } = station;
      if (mark === "") continue;
      const facts = { station: mark, count: plates.length, files: plates.map(({ file }) => file) };
      const spots = plates.flatMap((sheet) => at(sheet, "mark"));
      if (other === undefined) yield say("twice", facts, spots);
      else yield say("forgotten", { ...facts, other: other.mark }, spots);
    }
  },
});
