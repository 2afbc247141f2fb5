import { at, defineSheetCheck } from "../check.ts";
import { typedRows } from "../limits.ts";
import { legend } from "../sample.ts";

export const legendCaseMixed = defineSheetCheck({
  id: "legend-case-mixed",
  title: "Some legends are in capitals and some are not",
  severity: "notes",
  source: { kind: "common practice" },
  why: "Capitals and small letters are cut as typed. Side by side on one wall the difference shows, and mostly nobody meant it.",
  wordings: {
    mixed: {
      says: "Some rows are in capitals, such as “{capitals}”, and some are not, such as “{small}”.",
      fix: "Nothing to do if it is meant so; both are cut as typed.",
    },
  },
  passing: [
    { shows: "capitals throughout", given: ({ plate }) => plate() },
    {
      shows: "small letters throughout, beside a single letter",
      given: ({ device }) =>
        device({
          legends: [legend("1", "Entry", "A"), legend("2", "Stacks", ""), legend("3", "All", "off")],
        }),
    },
  ],
  failing: [
    {
      shows: "one legend with small letters",
      given: ({ device }) => device({}, { "1": ["Entry", ""] }),
      wording: "mixed",
      says: "Some rows are in capitals, such as “STACKS”, and some are not, such as “Entry”.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const rows = typedRows(sheet);
    const small = rows.filter(({ text }) => /\p{Ll}/u.test(text));
    // A single capital, as in "A" or "2B", goes with either.
    const capitals = rows.filter(({ text }) => /\p{Lu}\P{L}*\p{Lu}/u.test(text) && !/\p{Ll}/u.test(text));
    const [oneSmall] = small;
    const [oneCapitals] = capitals;
    if (oneSmall === undefined || oneCapitals === undefined) return;
    const fewer = small.length <= capitals.length ? small : capitals;
    yield say(
      "mixed",
      { capitals: oneCapitals.text.trim(), small: oneSmall.text.trim() },
      at(sheet, ...fewer.map(({ place }) => place)),
    );
  },
});
