import { stillMissing } from "../../orders/still-missing.ts";
import { isRight, tallyIn } from "../../orders/tally.ts";
import type { Carried, CarriedCount } from "../../trade/carried.ts";
import type { Count } from "../../trade/count.ts";
import type { Spot } from "../../trade/problem.ts";
import { at, defineOrderCheck } from "../check.ts";
import { countInWords, notedCounts } from "../noted-counts.ts";
import { type Sample, subject } from "../sample.ts";

const saying = (count: Count, from: Pick<CarriedCount, "file" | "by"> = {}): Carried => ({
  letter: "1",
  what: "count",
  count,
  text: "",
  ...from,
});
const complete = (sample: Sample, count: Count, from?: Pick<CarriedCount, "file" | "by">) => ({
  ...subject(sample.completeOrder()),
  carried: [saying(count, from)],
});
const unfinished = ({ deviceAt, plate }: Sample, count: Count) => ({
  ...subject([plate(), deviceAt(1), deviceAt(2), deviceAt(3)]),
  carried: [saying(count)],
});

// A YES may mean the number that was written as well as the sheets that came, so no YES settles it.
export const countDiffers = defineOrderCheck({
  id: "count-differs",
  title: "Somebody counts other than came",
  severity: "asks",
  source: { kind: "common practice" },
  why: "Whoever writes how many there are knows what should be made. If another number came, a sheet was forgotten, or one is too many. While sheets are still to come, a number that is not reached yet is only told.",
  wordings: {
    fewer: {
      says: "{where} says {told}; {came} came.",
      fix: "Send the sheets that are missing, or write how many there should be.",
    },
    more: {
      says: "{where} says {told}, but {came} came.",
      fix: "Write how many there should be, and which not to make.",
    },
    soFar: {
      says: "{where} says {told}; {came} came so far.",
      fix: "Nothing to do now, if the others are still to come.",
      severity: "notes",
    },
  },
  passing: [
    { shows: "nobody counts", given: ({ completeOrder }) => subject(completeOrder()) },
    { shows: "a right total", given: (sample) => complete(sample, { of: "device", number: 4 }) },
    { shows: "a right total of sheets", given: (sample) => complete(sample, { of: "sheet", number: 5 }) },
    {
      shows: "a right total in the notes",
      given: ({ completeOrder, plate }) =>
        subject([...completeOrder().slice(1), plate({ notes: "Total: 4 devices, 1 plate" })]),
    },
  ],
  failing: [
    {
      shows: "a device too few",
      given: (sample) => complete(sample, { of: "device", number: 5 }),
      wording: "fewer",
      says: "Your letter says 5 devices; 4 came.",
    },
    {
      shows: "none of a layout, in a list that is attached",
      given: (sample) =>
        complete(sample, { of: "device", layout: sample.otherLayout.code, number: 2 }, { file: "list.csv" }),
      wording: "fewer",
      says: "The file list.csv says 2 devices of 2 buttons; none came.",
    },
    {
      shows: "a device too few for what the order's manager counts",
      given: (sample) => complete(sample, { of: "device", number: 5 }, { by: "Ana Reyes" }),
      wording: "fewer",
      says: "Ana Reyes, who manages this order, says 5 devices; 4 came.",
    },
    {
      shows: "a device too many",
      given: (sample) => complete(sample, { of: "device", number: 3 }),
      wording: "more",
      says: "Your letter says 3 devices, but 4 came.",
    },
    {
      shows: "another number of plates in the notes",
      given: ({ completeOrder, device }) =>
        subject([...completeOrder().filter(({ id }) => id !== device().id), device({ notes: "2 plates" })]),
      wording: "fewer",
      says: "A note on a sheet says 2 plates; 1 came.",
    },
    {
      shows: "a total that may still be reached",
      given: (sample) => unfinished(sample, { of: "device", number: 6 }),
      wording: "soFar",
      says: "Your letter says 6 devices; 3 came so far.",
    },
    {
      shows: "a total that is exceeded before all sheets are here",
      given: (sample) => unfinished(sample, { of: "device", number: 2 }),
      wording: "more",
      says: "Your letter says 2 devices, but 3 came.",
    },
  ],
  *find({ order, others, carried = [] }, catalogue, say) {
    const isAwaited = stillMissing(order, others).length > 0 || carried.some(({ what }) => what === "file");
    const stated = [
      ...carried.flatMap((one) => (one.what === "count" ? [{ ...one, spots: [] as readonly Spot[] }] : [])),
      ...order.sheets.flatMap((sheet) =>
        notedCounts(sheet, catalogue).map((count) => ({
          count,
          file: undefined,
          by: undefined,
          spots: at(sheet, "notes"),
        })),
      ),
    ];
    const once = new Set<string>();
    for (const { count, spots, ...one } of stated) {
      const tally = tallyIn(count, order);
      if (isRight(count, tally, order.sheets)) continue;
      const where = spots.length > 0 ? "A note on a sheet" : writerOf(one);
      const told = countInWords(count, catalogue);
      if (once.has(`${where} ${told}`)) continue;
      once.add(`${where} ${told}`);
      const facts = { where, told, came: tally.least === 0 ? "none" : tally.least };
      const isReached = count.number < tally.least;
      yield say(isReached ? "more" : isAwaited ? "soFar" : "fewer", facts, spots);
    }
  },
});

function writerOf({
  file,
  by,
}: {
  readonly file?: string | undefined;
  readonly by?: string | undefined;
}): string {
  if (by !== undefined) return `${by}, who manages this order,`;
  return file === undefined ? "Your letter" : `The file ${file}`;
}
