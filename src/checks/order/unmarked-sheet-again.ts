import { letterOf } from "../../orders/ids.ts";
import { isMarked } from "../../orders/placed.ts";
import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject, without } from "../sample.ts";

const first = (sample: Sample) => without(sample.aloneDevice({ id: "1/9", file: "device.pdf" }), "mark");
const again = (sample: Sample) =>
  without(sample.aloneDevice({ id: "2/1", file: "device.pdf", finish: sample.otherFinish }), "mark");

export const unmarkedSheetAgain = defineOrderCheck({
  id: "unmarked-sheet-again",
  title: "A file without a station mark came in an earlier letter too",
  severity: "asks",
  source: { kind: "house" },
  why: "Without a station mark nobody can tell a corrected sheet from the sheet of one more device.",
  wordings: {
    unclear: {
      says: "A file called {file} came before and counts already; neither of the two has a station mark.",
      fix: "Tell us whether the new one replaces the old one or orders one more device. With a station mark on each sheet we need not ask.",
    },
  },
  passing: [
    {
      shows: "the same name twice in one letter",
      given: (sample) => subject([first(sample), { ...again(sample), id: "1/8" }]),
    },
    {
      shows: "sheets with a station mark",
      given: ({ aloneDevice, completeOrder }) => subject([...completeOrder(), aloneDevice({ id: "2/1" })]),
    },
  ],
  failing: [
    {
      shows: "device.pdf in two letters",
      given: (sample) => subject([first(sample), again(sample)]),
      wording: "unclear",
      says: "A file called device.pdf came before and counts already; neither of the two has a station mark.",
    },
  ],
  *find({ order }, _, say) {
    const unmarked = order.sheets.filter(
      (sheet) => sheet.kind === "device" && sheet.standing === "alone" && !isMarked(sheet),
    );
    for (const [file, sheets] of Map.groupBy(unmarked, (sheet) => sheet.named ?? sheet.file)) {
      const letters = new Set(sheets.map(({ id }) => letterOf(id)));
      const latest = sheets.at(-1);
      if (letters.size > 1 && latest !== undefined) yield say("unclear", { file }, at(latest));
    }
  },
});
