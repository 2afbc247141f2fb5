import { slipsOfMark } from "../../orders/slip-of-mark.ts";
import { at, defineOrderCheck } from "../check.ts";
import { completeOrder, deviceAt, plate, subject } from "../sample.ts";

const lacksFour = completeOrder().filter((sheet) => sheet.file !== "S-104 pos 4.pdf");
const next = completeOrder().map((sheet) => ({ ...sheet, id: `2${sheet.id}`, mark: "S-105" }));

export const stationMarkNearMiss = defineOrderCheck({
  id: "station-mark-near-miss",
  title: "A station mark looks mistyped",
  severity: "asks",
  source: { kind: "house" },
  why: "Neighbouring stations have marks that differ by one character, which is no fault. It is one when a station lacks just the sheets that lie at its neighbour.",
  wordings: {
    near: {
      says: "Station marks {station} and {meant} are nearly the same, and {meant} lacks just what came for {station}.",
      fix: "Did you mean {meant}? Confirm it, or that {station} is a station of its own.",
    },
  },
  passing: [
    { shows: "neighbours that are both complete", given: subject([...completeOrder(), ...next]) },
    {
      shows: "a neighbour waiting for other positions",
      given: subject([...lacksFour, deviceAt(3, { id: "1/8", mark: "S-105" })]),
    },
  ],
  failing: [
    {
      shows: "the missing device at a neighbour that has no plate",
      given: subject([...lacksFour, deviceAt(4, { mark: "S-140" })]),
      wording: "near",
    },
    {
      shows: "the plate at one mark and its devices at another",
      given: subject([plate({ mark: "S-1O4" }), ...completeOrder().slice(1)]),
      wording: "near",
    },
  ],
  *find({ order }, _, say) {
    for (const { station, meant } of slipsOfMark(order))
      yield say(
        "near",
        { station: station.mark, meant: meant.mark },
        [...station.plates, ...station.devices].flatMap((sheet) => at(sheet, "mark")),
      );
  },
});
