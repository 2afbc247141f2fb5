import { at, defineSheetCheck } from "../check.ts";
import { faceWords, plainMark, type TypedRow, typedRows } from "../limits.ts";
import { isNever, plainly } from "../no-legend.ts";

/** Words that mostly stand for nothing, but are cut now and then. */
const seldom = new Set(
  (
    "BLANK|PLAIN|EMPTY|NOT USED|UNUSED|?|-|TEXT|WORDING|WORDS|LABEL|SAMPLE|EXAMPLE|PENDING|LATER|TO COME|IGNORE|VOID|" +
    "OMIT|OMITTED|DELETE|DELETED|CANCELLED|CANCELED|ABC|ABCD|XYZ|ASD|ASDF|ASDFG|QWE|QWER|QWERTY|ZXC|ZXCV|" +
    "XX|TESTING|ENGRAVE|MAYBE|UNKNOWN|NAME|CHOICE|CLICK|REMOVE|REMOVED|CAPS|ALL CAPS|NO CAPS|BOLD|ITALIC|" +
    "UPPER CASE|LOWER CASE|UPPERCASE|LOWERCASE|CENTERED|CENTRED"
  ).split("|"),
);
/** The name of a field, AAAA, a colour to engrave in, a number of rows, and whom to ask. */
const seldomLike = [
  /^(?:LABEL|TEXT|NAME|CHOICE|POS|POSITION)[ .#]*\d+$/u,
  /^(\p{L})\1{2,}$/u,
  /^IN (?:RED|WHITE|BLACK|GOLD|SILVER|BLUE|GREEN|BOLD|CAPS|CAPITALS|SMALL LETTERS)$/u,
  /^[1-9] (?:ROWS?|LINES?)$/u,
  /^(?:ASK|(?:CONFIRM|CHECK|VERIFY) (?:W\/|WITH|BY)) ?\p{L}+$/u,
];
/** STUDY OR DEN is a choice that is not made. An operating room has a number or a kind: OR 3, PREP OR. */
const undecided = /^\p{L}{3,}(?: \p{L}+)? OR \p{L}{3,}$/u;

export const legendPlaceholder = defineSheetCheck({
  id: "legend-placeholder",
  title: "A placeholder would be cut as typed",
  severity: "stops",
  waivable: true,
  sender: "settles",
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
      fix: "If nothing is to be cut, clear it and {plain}.",
      severity: "asks",
    },
    sign: {
      says: "“{typed}” in row {row} of {face} would be cut as typed.",
      fix: "If nothing is to be cut there, send the sheet again with the row cleared.",
      severity: "asks",
    },
    undecided: {
      says: "“{typed}” on {face} would be cut as typed, with its OR.",
      fix: "If you had not decided yet, send the sheet again with the one that is to be cut.",
      severity: "asks",
    },
    unsure: {
      says: "“{typed}” in row {row} of {face} would be cut with its question mark.",
      fix: "If the mark only says that you are not sure, send the sheet again with what is to be cut.",
      severity: "asks",
    },
  },
  passing: [
    { shows: "legends", given: ({ plate }) => plate() },
    {
      shows: "a word that begins like a placeholder",
      given: ({ device }) => device({}, { "1": ["NATURE", "ROOM"] }),
    },
    {
      shows: "words that send nobody anywhere",
      given: ({ device }) =>
        device({}, { "1": ["SAME", "DAY"], "2": ["ABOVE", "BAR"], "3": ["SEE & DO", ""] }),
    },
    {
      shows: "operating rooms",
      given: ({ device }) =>
        device({}, { "1": ["PREP OR 3", ""], "2": ["MAIN", "OR"], "3": ["OR", "LIGHTS"] }),
    },
    { shows: "a minus beside a plus", given: ({ device }) => device({}, { "1": ["+", ""], "2": ["-", ""] }) },
    {
      shows: "one letter under a word, beside others",
      given: ({ device }) => device({}, { "1": ["GATE", "X"], "2": ["GATE", "Y"], "3": ["WING", "A"] }),
    },
  ],
  failing: [
    {
      shows: "NONE",
      given: ({ device }) => device({}, { "1": ["None", ""] }),
      wording: "legend",
      says: "“None” on button 1 would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 1: leave plain”.",
    },
    {
      shows: "a phrase over two rows",
      given: ({ device }) => device({}, { "2": ["SAME AS", "ABOVE"] }),
      wording: "legend",
      says: "“SAME AS ABOVE” on button 2 would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 2: leave plain”.",
    },
    {
      shows: "the name of the field",
      given: ({ device }) => device({}, { "1": ["BUTTON 1", ""] }),
      wording: "legend",
      says: "“BUTTON 1” on button 1 would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 1: leave plain”.",
    },
    {
      shows: "ditto marks",
      given: ({ plate }) => plate({}, { "2": ['"', ""] }),
      wording: "legend",
      says: '“"” on gang 2 would be cut as typed.',
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 2: leave plain”.",
    },
    {
      shows: "a quantity",
      given: ({ device }) => device({}, { "2": ["QTY 2", ""] }),
      wording: "legend",
      says: "“QTY 2” on button 2 would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 2: leave plain”.",
    },
    {
      shows: "a drawing to look at",
      given: ({ device }) => device({}, { "2": ["SEE DWG", "E-101"] }),
      wording: "legend",
      says: "“SEE DWG E-101” on button 2 would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 2: leave plain”.",
    },
    {
      shows: "typical",
      given: ({ plate }) => plate({}, { "1": ["TYP OF 4", ""] }),
      wording: "legend",
      says: "“TYP OF 4” on gang 1 would be cut as typed.",
      fix: "Type what is to be cut; if nothing is, clear it and tick “Face 1: leave plain”.",
    },
    {
      shows: "N/A under a legend",
      given: ({ device }) => device({}, { "1": ["ENTRY", "N/A"] }),
      wording: "row",
      says: "“N/A” in row 2 of button 1 would be cut as typed.",
    },
    {
      shows: "a stroke under a legend",
      given: ({ device }) => device({}, { "1": ["ENTRY", "/"] }),
      wording: "sign",
      says: "“/” in row 2 of button 1 would be cut as typed.",
    },
    {
      shows: "an X under a legend",
      given: ({ plate }) => plate({}, { "1": ["FOYER", "x"] }),
      wording: "sign",
      says: "“x” in row 2 of gang 1 would be cut as typed.",
    },
    {
      shows: "BLANK, which a screen's button may say",
      given: ({ device }) => device({}, { "3": ["BLANK", ""] }),
      wording: "seldom",
      says: "“BLANK” on button 3 would be cut as typed.",
      fix: "If nothing is to be cut, clear it and tick “Face 3: leave plain”.",
    },
    {
      shows: "what somebody types to try the form",
      given: ({ device }) => device({}, { "3": ["Asdf", ""] }),
      wording: "seldom",
      says: "“Asdf” on button 3 would be cut as typed.",
      fix: "If nothing is to be cut, clear it and tick “Face 3: leave plain”.",
    },
    {
      shows: "a choice that is not made",
      given: ({ device }) => device({}, { "3": ["STUDY", "OR DEN"] }),
      wording: "undecided",
      says: "“STUDY OR DEN” on button 3 would be cut as typed, with its OR.",
    },
    {
      shows: "a dash without a plus",
      given: ({ device }) => device({}, { "3": ["-", ""] }),
      wording: "seldom",
      says: "“-” on button 3 would be cut as typed.",
      fix: "If nothing is to be cut, clear it and tick “Face 3: leave plain”.",
    },
    {
      shows: "a legend that its buyer was not sure of",
      given: ({ device }) => device({}, { "1": ["LOBBY?", ""] }),
      wording: "unsure",
      says: "“LOBBY?” in row 1 of button 1 would be cut with its question mark.",
    },
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
      else if (undecided.test(plainly(typed))) yield say("undecided", { typed, face: words }, spots);
      else if (isSeldom(plainly(typed)) && !(typed === "-" && hasPlus))
        yield say("seldom", { typed, face: words, plain }, spots);
      // SAME over DAY is the beginning of a legend.
      else
        for (const { text, row, place } of onFace)
          if (isNever(text) && plainly(text) !== "SAME")
            yield say("row", { typed: text, row, face: words }, at(sheet, place));
          else if (row > 1 && isSign(text, rows) && !(text.trim() === "-" && hasPlus))
            yield say("sign", { typed: text, row, face: words }, at(sheet, place));
          else if (text.includes("?"))
            yield say("unsure", { typed: text, row, face: words }, at(sheet, place));
    }
  },
});

function isSeldom(plain: string): boolean {
  return seldom.has(plain) || seldomLike.some((pattern) => pattern.test(plain));
}

/** Whether a row is a dash, a stroke, or an X where no other row is a single letter. */
function isSign(text: string, rows: readonly TypedRow[]): boolean {
  const isLetter = rows.some(
    (other) => /^\p{L}$/u.test(other.text.trim()) && !/^x$/i.test(other.text.trim()),
  );
  return /^[-/\\*]$/.test(text.trim()) || (/^x$/i.test(text.trim()) && !isLetter);
}
