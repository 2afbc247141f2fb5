import { letterOf } from "../../orders/ids.ts";
import { contentKey } from "../../orders/keys.ts";
import { isMarked } from "../../orders/placed.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck } from "../check.ts";
import { type Sample, subject, without } from "../sample.ts";

const first = (sample: Sample) => without(sample.aloneDevice({ id: "1/9", file: "device.pdf" }), "mark");
const again = (sample: Sample) =>
  without(sample.aloneDevice({ id: "2/1", file: "device.pdf", finish: sample.otherFinish }), "mark");

export const unmarkedSheetAgain = defineOrderCheck({
  id: "unmarked-sheet-again",
  title: "A sheet without a station mark may have come before",
  severity: "asks",
  source: { kind: "house" },
  why: "Without a station mark nobody can tell a corrected sheet from the sheet of one more device.",
  wordings: {
    unclear: {
      says: "A file called {file} came before and counts already; neither of the two has a station mark.",
      fix: "Tell us whether the new one replaces the old one or orders one more device. With a station mark on each sheet we need not ask.",
    },
    marked: {
      says: "{file} has no station mark. {other}, for {mark}, says the same in everything else.",
      fix: "Tell us whether the two are one device. If they are two, give this one its own station mark and send it again.",
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
      shows: "a sheet that is there with a station mark too",
      given: (sample) => subject([first(sample), sample.aloneDevice({ id: "1/8" })]),
      wording: "marked",
      says: "device.pdf has no station mark. S-110.pdf, for S-110, says the same in everything else.",
    },
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
    const marked = Map.groupBy(order.sheets.filter(isMarked), cutAs);
    for (const sheet of unmarked) {
      const [other, ...more] = marked.get(cutAs(sheet)) ?? [];
      // Where several stations are alike, one more may well be.
      if (other?.mark !== undefined && more.length === 0)
        yield say("marked", { file: sheet.file, other: other.file, mark: other.mark }, at(sheet));
    }
  },
});

/** What a sheet says besides its mark and its notes. */
function cutAs({ kind, legends, finish, lettering, ...rest }: Sheet): string {
  const {
    standing,
    layouts,
    legendPlace = "",
  } = "layouts" in rest ? rest : { standing: undefined, layouts: [], legendPlace: "" };
  return contentKey({ kind, legends, finish, lettering, standing, layouts, legendPlace });
}
