import { at, defineSheetCheck } from "../check.ts";
import { faceWords, plainMark, typedRows } from "../limits.ts";
import { device, plate } from "../sample.ts";

/** Words that stand for a legend and are never one. */
const never = new Set(
  (
    "NONE|N/A|NA|N.A.|NIL|TBD|T.B.D.|TBA|TBC|DITTO|SAME|AS BEFORE|AS PREVIOUS|TO FOLLOW|TO BE DETERMINED|ON FILE|" +
    "NO TEXT|NO LEGEND|NO ENGRAVING|LEAVE BLANK|LEAVE PLAIN|LEGEND HERE|TEXT HERE|YOUR TEXT"
  ).split("|"),
);
/** Where a reader is sent instead: SEE DWG, PER PLAN, SAME AS S-103. Not SEE & DO nor AS IS. */
const elsewhere =
  "ABOVE|BELOW|BACK|NOTES?|ATTACHED|DWGS?|DRAWINGS?|PLANS?|SCHED(ULE)?S?|SPECS?|SHEETS?|SHT|SKETCH|DETAILS?|E-?MAIL|LETTER|PO|RFI|ARCH(ITECT)?|OWNER|ENGR?|ENGINEER|PAGE|PG|SHOWN|NOTED";
/** XXXX, BUTTON 1, LEGEND 2, quantities, and marks such as -- or ditto marks. */
const neverLike = [
  new RegExp(`^(SEE|PER|AS( PER)?|REFER TO|REF) (THE )?(${elsewhere})( #?[A-Z]{0,2}-?[0-9.]{1,5})?$`),
  /^(SAME|LIKE) AS\b/,
  /^(QTY|QUANTITY)\W*\d{0,3}$/,
  /^TYP(ICAL)?\.?( (OF|X) ?\d{1,3}| EACH| ALL)?$/,
  /^\(?\d{1,3} ?(EA|EACH|PCS?)\.?\)?$/,
  /^X{3,}$/,
  /^(BUTTON|BTN|GANG|LEGEND)( ?#?\d+)?$/,
  /^(["'“”’′]+|-{2,}|[–—]+|\.+|\?{2,}|_+)$/,
];
/** Words that mostly stand for nothing, but are cut now and then. */
const seldom = new Set(["BLANK", "PLAIN", "EMPTY", "NOT USED", "UNUSED", "?", "-"]);

export const legendPlaceholder = defineSheetCheck({
  id: "legend-placeholder",
  title: "A placeholder would be cut as typed",
  severity: "stops",
  source: { kind: "common practice" },
  why: "What is typed is what is cut. NONE on a sheet becomes the word NONE on a button.",
  wordings: {
    legend: {
      says: "“{typed}” on {face} would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and {plain}.",
    },
    row: {
      says: "“{typed}” in row {row} of {face} would be cut as typed.",
      fix: "Type what is to be cut, or clear the row.",
    },
    seldom: {
      says: "“{typed}” on {face} would be cut as typed.",
      fix: "Reply that it is meant so. If nothing is to be cut, clear it and {plain}.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "legends", given: plate() },
    { shows: "a word that begins like a placeholder", given: device({}, { "1": ["NATURE", "ROOM"] }) },
    {
      shows: "words that send nobody anywhere",
      given: device({}, { "1": ["SAME DAY", "SURGERY"], "2": ["ABOVE", "BAR"], "3": ["SEE & DO", ""] }),
    },
    { shows: "a minus beside a plus", given: device({}, { "1": ["+", ""], "2": ["-", ""] }) },
  ],
  failing: [
    { shows: "NONE", given: device({}, { "1": ["None", ""] }), wording: "legend" },
    { shows: "a phrase over two rows", given: device({}, { "2": ["SAME AS", "ABOVE"] }), wording: "legend" },
    { shows: "the name of the field", given: device({}, { "1": ["BUTTON 1", ""] }), wording: "legend" },
    { shows: "ditto marks", given: plate({}, { "2": ['"', ""] }), wording: "legend" },
    { shows: "a quantity", given: device({}, { "2": ["QTY 2", ""] }), wording: "legend" },
    { shows: "a drawing to look at", given: device({}, { "2": ["SEE DWG", "E-101"] }), wording: "legend" },
    { shows: "typical", given: plate({}, { "1": ["TYP OF 4", ""] }), wording: "legend" },
    { shows: "N/A under a legend", given: device({}, { "1": ["ENTRY", "N/A"] }), wording: "row" },
    {
      shows: "BLANK, which a screen's button may say",
      given: device({}, { "3": ["BLANK", ""] }),
      wording: "seldom",
    },
    { shows: "a dash without a plus", given: device({}, { "3": ["-", ""] }), wording: "seldom" },
  ],
  *find(sheet, _catalogue, say) {
    const rows = typedRows(sheet).filter(({ text }) => text.trim() !== "");
    const hasPlus = rows.some(({ text }) => text.includes("+"));
    for (const [face, onFace] of Map.groupBy(rows, (row) => row.face)) {
      const mark = plainMark(sheet, face);
      const plain = mark === undefined ? "reply that it stays plain" : `tick ${mark}`;
      const words = faceWords(sheet, face);
      const typed = onFace.map(({ text }) => text.trim()).join(" ");
      const spots = at(sheet, ...onFace.map(({ place }) => place));
      if (isNever(typed)) yield say("legend", { typed, face: words, plain }, spots);
      else if (seldom.has(plainly(typed)) && !(typed === "-" && hasPlus))
        yield say("seldom", { typed, face: words, plain }, spots);
      else
        for (const { text, row, place } of onFace)
          if (isNever(text)) yield say("row", { typed: text, row, face: words }, at(sheet, place));
    }
  },
});

function isNever(text: string): boolean {
  const plain = plainly(text);
  return never.has(plain) || neverLike.some((pattern) => pattern.test(plain));
}

function plainly(text: string): string {
  return text.normalize("NFKC").trim().replace(/\s+/g, " ").toUpperCase();
}
