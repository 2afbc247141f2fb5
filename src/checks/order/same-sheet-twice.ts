import { calledElsewhere } from "../called-elsewhere.ts";
import { at, defineOrderCheck } from "../check.ts";
import { isBlank } from "../required.ts";
import { subject, without } from "../sample.ts";

export const sameSheetTwice = defineOrderCheck({
  id: "same-sheet-twice",
  title: "Two files have the same content",
  severity: "notes",
  source: { kind: "house" },
  why: "A file attached twice must not make two devices. Without a station mark nobody can tell whether two of a kind are wanted.",
  wordings: {
    placed: {
      says: "{again} says the same as {kept} and is counted once.",
      fix: "Nothing to do, unless one of the two should say something else.",
    },
    unplaced: {
      says: "{again} says the same as {kept}, neither with a station mark, and is counted once.",
      fix: "Confirm that you want one. If you want two, give each its own station mark and send both again.",
      severity: "asks",
    },
  },
  passing: [
    {
      shows: "sheets that all differ",
      given: ({ aloneDevice, completeOrder }) => subject([...completeOrder(), aloneDevice()]),
    },
    {
      shows: "a copy under the name of another place, which is asked about",
      given: ({ aloneDevice }) => subject([aloneDevice(), aloneDevice({ id: "1/10", file: "S-111.pdf" })]),
    },
    {
      shows: "two blank sheets, which have a check of their own",
      given: ({ blankDevice }) => subject([blankDevice(), blankDevice({ id: "1/8" })]),
    },
  ],
  failing: [
    {
      shows: "a sheet attached under two names",
      given: ({ completeOrder, deviceAt }) =>
        subject([...completeOrder(), deviceAt(2, { id: "1/8", file: "copy.pdf" })]),
      wording: "placed",
      says: "copy.pdf says the same as S-104 pos 2.pdf and is counted once.",
    },
    {
      shows: "two of a kind without a station mark",
      given: ({ aloneDevice }) =>
        subject(["1/8", "1/9"].map((id) => without(aloneDevice({ id, file: `${id.slice(2)}.pdf` }), "mark"))),
      wording: "unplaced",
      says: "9.pdf says the same as 8.pdf, neither with a station mark, and is counted once.",
    },
  ],
  *find({ order }, _, say) {
    const placed = new Set(
      order.stations
        .filter(({ mark }) => mark !== "")
        .flatMap(({ plates, devices }) => [...plates, ...devices].map(({ id }) => id)),
    );
    const elsewhere = new Set(calledElsewhere(order).flatMap(({ copies }) => copies));
    for (const { kept, again } of order.twice.filter((double) => !isBlank(double.kept))) {
      // Under the name of another place it is asked about by another check.
      if (elsewhere.has(again)) continue;
      yield say(
        placed.has(kept.id) ? "placed" : "unplaced",
        { again: again.file, kept: kept.file },
        at(again),
      );
    }
  },
});
