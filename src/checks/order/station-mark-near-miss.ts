import { differByZeros, markPart } from "../../orders/alike.ts";
import { plainText } from "../../orders/keys.ts";
import { lookAlikeMarks, slipsOfMark } from "../../orders/slip-of-mark.ts";
import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject } from "../sample.ts";

const lacksFour = (sample: Sample) =>
  sample.completeOrder().filter((sheet) => sheet.file !== "S-104 pos 4.pdf");
const next = (sample: Sample) =>
  sample.completeOrder().map((sheet) => ({ ...sheet, id: `2${sheet.id}`, mark: "S-105" }));

export const stationMarkNearMiss = defineOrderCheck({
  id: "station-mark-near-miss",
  title: "A station mark looks mistyped",
  severity: "asks",
  source: { kind: "house" },
  why: "Neighbouring stations have marks that differ by one character, which is no fault. It is one when a station lacks just the sheets that lie at its neighbour, or when only a look-alike character tells two marks apart.",
  wordings: {
    near: {
      says: "Station marks {station} and {meant} are nearly the same, and {meant} lacks just what came for {station}.",
      fix: "Did you mean {meant}? Confirm it, or that {station} is a station of its own.",
    },
    looks: {
      says: "Station marks {station} and {meant} differ only by letters that look like digits.",
      fix: "Did you mean {meant}? Confirm it, or that {station} is a station of its own.",
    },
    words: {
      says: "Station marks {station} and {meant} differ only by a word in front.",
      fix: "Did you mean {meant}? Confirm it, or that {station} is a station of its own.",
    },
    zeros: {
      says: "Station marks {station} and {meant} differ only by zeros in front.",
      fix: "Did you mean {meant}? Confirm it, or that {station} is a station of its own.",
    },
  },
  passing: [
    {
      shows: "neighbours that are both complete",
      given: (sample) => subject([...sample.completeOrder(), ...next(sample)]),
    },
    {
      shows: "a neighbour waiting for other positions",
      given: (sample) => subject([...lacksFour(sample), sample.deviceAt(3, { id: "1/8", mark: "S-105" })]),
    },
    {
      shows: "letters before and behind a number",
      given: ({ aloneDevice }) =>
        subject(
          ["S-10B", "S-108", "S-10S", "S-105", "I1", "11"].map((mark, i) =>
            aloneDevice({ mark, id: `1/${i}` }),
          ),
        ),
    },
    {
      shows: "one mark typed in three ways",
      given: ({ deviceAt, plate }) =>
        subject([plate(), deviceAt(1, { mark: "S104" }), deviceAt(2, { mark: "s 104" })]),
    },
  ],
  failing: [
    {
      shows: "the missing device at a neighbour that has no plate",
      given: (sample) => subject([...lacksFour(sample), sample.deviceAt(4, { mark: "S-140" })]),
      wording: "near",
      says: "Station marks S-140 and S-104 are nearly the same, and S-104 lacks just what came for S-140.",
      fix: "Did you mean S-104? Confirm it, or that S-140 is a station of its own.",
    },
    {
      shows: "the plate at one mark and its devices at another",
      given: ({ completeOrder, plate }) => subject([plate({ mark: "S-1O4" }), ...completeOrder().slice(1)]),
      wording: "near",
      says: "Station marks S-1O4 and S-104 are nearly the same, and S-104 lacks just what came for S-1O4.",
      fix: "Did you mean S-104? Confirm it, or that S-1O4 is a station of its own.",
    },
    {
      shows: "a letter O, though both stations are complete",
      given: ({ aloneDevice, completeOrder }) =>
        subject([...completeOrder(), aloneDevice({ mark: "S-1O4" })]),
      wording: "looks",
      says: "Station marks S-1O4 and S-104 differ only by letters that look like digits.",
      fix: "Did you mean S-104? Confirm it, or that S-1O4 is a station of its own.",
    },
    {
      shows: "a word in front",
      given: ({ aloneDevice, completeOrder }) =>
        subject([...completeOrder(), aloneDevice({ mark: "Station S-104" })]),
      wording: "words",
      says: "Station marks Station S-104 and S-104 differ only by a word in front.",
      fix: "Did you mean S-104? Confirm it, or that Station S-104 is a station of its own.",
    },
    {
      shows: "a zero in front, though both stations are complete",
      given: ({ aloneDevice, completeOrder }) =>
        subject([...completeOrder(), aloneDevice({ mark: "S-0104" })]),
      wording: "zeros",
      says: "Station marks S-0104 and S-104 differ only by zeros in front.",
      fix: "Did you mean S-104? Confirm it, or that S-0104 is a station of its own.",
    },
  ],
  *find({ order }, _, say) {
    const slips = slipsOfMark(order);
    const told = new Set(slips.flatMap(({ station, meant }) => [station, meant]));
    const looks = lookAlikeMarks(order).filter(({ station }) => !told.has(station));
    for (const slip of [...slips, ...looks]) {
      const [station, meant] = [slip.station.mark, slip.meant.mark];
      const wording = slips.includes(slip) ? "near" : differenceOf(markPart(station), markPart(meant));
      const sheets = [...slip.station.plates, ...slip.station.devices];
      yield say(
        wording,
        { station, meant },
        sheets.flatMap((sheet) => at(sheet, "mark")),
      );
    }
  },
});

/** What tells two marks apart that look the same. */
function differenceOf(one: string, other: string): "words" | "zeros" | "looks" {
  if (plainText(one) === plainText(other)) return "words";
  return differByZeros(one, other) ? "zeros" : "looks";
}
