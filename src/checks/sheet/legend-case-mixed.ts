import { at, defineSheetCheck } from "../check.ts";
import { faceWords, typedRows } from "../limits.ts";
import { legend } from "../sample.ts";

/** ENTRY, entry, Entry, McKay, McKAY, TVs, iPad, eBike, kWh. */
const usual =
  /^(?:\p{Lu}+|\p{Lu}{2,4}s|\p{L}\p{Ll}*|(?:\p{Lu}\p{Ll}+){2,}|(?:Mc|Mac|De|Di|Du|La|Le|Van|Von|Fitz)\p{Lu}+|[ie]\p{Lu}\p{Ll}+|k(?:W|VA)h?)$/u;

export const legendCaseMixed = defineSheetCheck({
  id: "legend-case-mixed",
  title: "Some legends are in capitals and some are not",
  severity: "notes",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Capitals and small letters are cut as typed. A key that is let go too early or too late leaves STUDy. Side by side on one wall the difference shows, and mostly nobody meant it.",
  wordings: {
    mixed: {
      says: "Some rows are in capitals, such as “{capitals}”, and some are not, such as “{small}”.",
      fix: "Nothing to do if it is meant so; both are cut as typed.",
    },
    within: {
      says: "“{word}” in row {row} of {face} has capitals and small letters in an odd order.",
      fix: "If the key slipped, send the sheet again.",
      severity: "asks",
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
    {
      shows: "a small letter at the end of capitals",
      given: ({ device }) => device({}, { "1": ["STACKs", ""] }),
      wording: "within",
      says: "“STACKs” in row 1 of button 1 has capitals and small letters in an odd order.",
    },
  ],
  *find(sheet, _catalogue, say) {
    const rows = typedRows(sheet);
    const odd = rows.flatMap(({ text, ...row }) => {
      const [word] = wordsOf(text).filter((one) => !usual.test(one));
      return word === undefined ? [] : [{ ...row, word }];
    });
    for (const { word, face, row, place } of odd)
      yield say("within", { word, row, face: faceWords(sheet, face) }, at(sheet, place));
    if (odd.length > 0) return;
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

function wordsOf(text: string): string[] {
  return text.normalize("NFC").match(/(?<!\p{L})\p{L}{3,}/gu) ?? [];
}
