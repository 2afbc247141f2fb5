import type { Catalogue } from "../../catalogue/catalogue.ts";
import { type Difference, differencesOf } from "../../orders/differences.ts";
import type { Replacement } from "../../trade/order.ts";
import type { Sheet } from "../../trade/sheet.ts";
import { at, defineOrderCheck, labelOf, type OrderSubject } from "../check.ts";
import { quotedChoice } from "../choice-name.ts";
import { takenOverFrom } from "../copied.ts";
import { type Sample, subject } from "../sample.ts";

/** Fields named one by one. */
const mostFields = 12;

const again = (sample: Sample) => sample.deviceAt(2, { id: "2/1", file: "again.pdf" });

/** An order with one sheet that has given way to another. */
function gaveWay(sample: Sample, how: "replaced" | "late", old: Sheet, now: Sheet): OrderSubject {
  const { order, others } = subject([sample.plate(), how === "late" ? sample.deviceAt(1) : now]);
  return { order, others, [how]: [{ old, now, how: "place" }] };
}

export const sheetReplaced = defineOrderCheck({
  id: "sheet-replaced",
  title: "A sheet takes the place of one sent before",
  severity: "notes",
  sender: "settles",
  source: { kind: "house" },
  why: "A corrected sheet takes the place of the one before. Its sender must see which one went and what has changed, or a slip in a station mark or a position would make a device vanish.",
  wordings: {
    changed: {
      says: "{now} takes the place of the sheet {old}, sent before. Changed: {changes|each}.",
      fix: "Nothing to do if this is meant. If both are wanted, correct the mark or position of one.",
    },
    older: {
      says: "{now} takes the place of {old}, sent before, though its name says that it is the older one. Changed: {changes|each}.",
      fix: "If {old} is right, send it again.",
      severity: "asks",
      stays: true,
    },
    copied: {
      says: "{now} takes the place of {old}, sent before, and has all legends of {other} now. Changed: {changes|each}.",
      fix: "If it was copied from {other} and is still to be changed, send the right sheet again.",
      severity: "asks",
      stays: true,
    },
    unchanged: {
      says: "{count:sheet} came again and changed nothing: {files}.",
      fix: "Nothing to do.",
    },
    late: {
      says: "{old} does not count: a newer letter has brought {now} for the same place. Other than in that: {changes|each}.",
      fix: "Nothing to do if {now} is right. If not, send the right sheet again.",
    },
    untouched: {
      says: "{blank} has no legend and no layout, and {beside} is for the same place: {blank} was put aside.",
      fix: "Nothing to do if {beside} is right. If not, send the right sheet again.",
    },
  },
  passing: [
    { shows: "sheets for places that were empty", given: ({ completeOrder }) => subject(completeOrder()) },
  ],
  failing: [
    {
      shows: "another finish",
      given: (sample) =>
        gaveWay(sample, "replaced", sample.deviceAt(2), { ...again(sample), finish: sample.otherFinish }),
      wording: "changed",
      says: "again.pdf takes the place of the sheet S-104 pos 2.pdf, sent before. Changed: Finish: “Oat” → “Slate”.",
    },
    {
      shows: "an older revision",
      given: (sample) =>
        gaveWay(
          sample,
          "replaced",
          { ...sample.deviceAt(2), file: "S-104 pos 2 rev C.pdf" },
          { ...again(sample), file: "S-104 pos 2 Rev. B.pdf", finish: sample.otherFinish },
        ),
      wording: "older",
      says: "S-104 pos 2 Rev. B.pdf takes the place of S-104 pos 2 rev C.pdf, sent before, though its name says that it is the older one. Changed: Finish: “Oat” → “Slate”.",
      fix: "If S-104 pos 2 rev C.pdf is right, send it again.",
    },
    {
      shows: "the legends of another plate, copied",
      given: ({ plate }) => {
        const mine = { mark: "S-105", file: "S-105 plate.pdf" };
        const old = plate({ ...mine, id: "1/8" }, { 1: ["BAR"], 2: ["HALL"], 3: ["STAGE"] });
        const now = plate({ ...mine, id: "2/1" });
        return { ...subject([plate(), now]), replaced: [{ old, now, how: "place" }] };
      },
      wording: "copied",
      says: "S-105 plate.pdf takes the place of S-105 plate.pdf, sent before, and has all legends of S-104 plate.pdf now. Changed: Face 1, row 1: “BAR” → “FOYER”. Face 2, row 1: “HALL” → “READING”. Face 3, row 1: “STAGE” → “CHILDREN”. Face 2, row 2: (empty) → “ROOM”.",
      fix: "If it was copied from S-104 plate.pdf and is still to be changed, send the right sheet again.",
    },
    {
      shows: "the same once more",
      given: (sample) => gaveWay(sample, "replaced", sample.deviceAt(2), again(sample)),
      wording: "unchanged",
      says: "1 sheet came again and changed nothing: again.pdf.",
    },
    {
      shows: "a letter that was long on its way",
      given: (sample) =>
        gaveWay(sample, "late", { ...sample.deviceAt(2), finish: sample.otherFinish }, again(sample)),
      wording: "late",
      says: "S-104 pos 2.pdf does not count: a newer letter has brought again.pdf for the same place. Other than in that: Finish: “Oat” → “Slate”.",
      fix: "Nothing to do if again.pdf is right. If not, send the right sheet again.",
    },
    {
      shows: "a sheet of ours that came back as it was, beside the filled one",
      given: ({ deviceAt, completeOrder }) => ({
        ...subject(completeOrder()),
        untouched: [
          {
            blank: deviceAt(2, { id: "1/8", file: "S-104 position 2.pdf", layouts: [], legends: [] }),
            beside: deviceAt(2),
          },
        ],
      }),
      wording: "untouched",
      says: "S-104 position 2.pdf has no legend and no layout, and S-104 pos 2.pdf is for the same place: S-104 position 2.pdf was put aside.",
      fix: "Nothing to do if S-104 pos 2.pdf is right. If not, send the right sheet again.",
    },
  ],
  *find({ order, replaced = [], late = [], untouched = [] }, catalogue, say) {
    const changesIn = ({ old, now }: Replacement, from = old, to = now): string[] =>
      fieldWords(differencesOf(from, to), now, catalogue);
    const changed = replaced.filter(({ old, now }) => differencesOf(old, now).length > 0);
    const same = replaced.filter((one) => !changed.includes(one)).map(({ now }) => now);
    for (const one of changed) {
      const facts = { now: one.now.file, old: one.old.file, changes: changesIn(one) };
      const spots = at(one.now, ...differencesOf(one.old, one.now).map(({ place }) => place));
      const other = takenOverFrom(one, order);
      if (isOlder(one)) yield say("older", facts, spots);
      // The spot on the other sheet lets the question go when that one changes.
      else if (other !== undefined)
        yield say("copied", { ...facts, other: other.file }, [...spots, ...at(other)]);
      else yield say("changed", facts, spots);
    }
    if (same.length > 0)
      yield say(
        "unchanged",
        { count: same.length, files: same.map(({ file }) => file) },
        same.flatMap((sheet) => at(sheet)),
      );
    for (const one of late) {
      const changes = changesIn(one, one.now, one.old);
      const told = changes.length === 0 ? ["nothing differs"] : changes;
      yield say("late", { old: one.old.file, now: one.now.file, changes: told }, at(one.old));
    }
    for (const { blank, beside } of untouched)
      yield say("untouched", { blank: blank.file, beside: beside.file }, at(blank));
  },
});

/** The revision that a file's name tells: "rev B", "Rev. 2", "v3". */
function revisionOf({ file }: Sheet): string | undefined {
  const [, rev, version] =
    /(?<!\p{L})(?:rev(?:ision)?[. _-]{0,2}(\p{L}|\d{1,2})|v\.?(\d{1,2}))(?![\p{L}\p{N}])/iu.exec(file) ?? [];
  return (rev ?? version)?.toUpperCase().padStart(2);
}

/** Whether the newer of two sheets has the older revision in its name, counted alike: in letters, or in numbers. */
function isOlder({ old, now }: Replacement): boolean {
  const [before, after] = [revisionOf(old), revisionOf(now)];
  if (before === undefined || after === undefined) return false;
  return /\d/.test(before) === /\d/.test(after) && after < before;
}

/** "Finish: Oat → Chalk", and so on. A sheet with more changes than anybody reads has the rest counted. */
function fieldWords(differences: readonly Difference[], sheet: Sheet, catalogue: Catalogue): string[] {
  const words = differences.map(({ place, was, now }) => {
    const [from, to] = [was, now].map((typed) => quotedChoice(typed, catalogue));
    return `${labelOf(sheet, place)}: ${from} → ${to}`;
  });
  return words.length <= mostFields
    ? words
    : [...words.slice(0, mostFields - 1), `${words.length - mostFields + 1} more fields`];
}
