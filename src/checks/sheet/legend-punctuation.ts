import { at, defineSheetCheck } from "../check.ts";
import { faceWords, typedRows } from "../limits.ts";
import { marksLeft, withoutStrays } from "../stray-marks.ts";

const quoted = /^["“”«‘'](.+)["“”»’']$/u;
const bracketed = /^\((.+)\)$/u;
export const legendPunctuation = defineSheetCheck({
  id: "legend-punctuation",
  title: "A legend has a mark that is perhaps not meant",
  severity: "asks",
  sender: "settles",
  source: { kind: "common practice" },
  why: "Quotation marks, a comma from a list, a slipped key, or a star that points to a remark are cut like any letter.",
  wordings: {
    mark: {
      says: "Row {row} of {face}, “{typed}”, would be cut with its “{mark}”.",
      fix: "Send the sheet again as “{closed}”.",
    },
    around: {
      says: "Row {row} of {face} would be cut with the marks around it: {typed}",
      fix: "Send the sheet again as “{closed}”.",
    },
  },
  passing: [
    {
      shows: "a short form with its full stop",
      given: ({ device }) => device({}, { "1": ["CONF.", "RM."], "2": ["DR. LEE", ""] }),
    },
    {
      shows: "a word that is divided, and marks within",
      given: ({ device }) => device({}, { "1": ["AUDI-", "ENCE"], "2": ["A/V", ""], "3": ["ON, OFF", ""] }),
    },
    {
      shows: "a remark in brackets under a legend",
      given: ({ device }) => device({}, { "1": ["LOBBY", "(EAST)"] }),
    },
  ],
  failing: [
    {
      shows: "quotation marks",
      given: ({ device }) => device({}, { "1": ['"STUDY"', ""] }),
      wording: "around",
      says: 'Row 1 of button 1 would be cut with the marks around it: "STUDY"',
      fix: "Send the sheet again as “STUDY”.",
    },
    {
      shows: "a legend in brackets",
      given: ({ device }) => device({}, { "1": ["(STUDY)", ""] }),
      wording: "around",
      says: "Row 1 of button 1 would be cut with the marks around it: (STUDY)",
      fix: "Send the sheet again as “STUDY”.",
    },
    {
      shows: "a comma behind it",
      given: ({ device }) => device({}, { "1": ["STUDY,", ""] }),
      wording: "mark",
      says: "Row 1 of button 1, “STUDY,”, would be cut with its “,”.",
      fix: "Send the sheet again as “STUDY”.",
    },
    {
      shows: "a star behind it",
      given: ({ device }) => device({}, { "2": ["LOBBY", "EAST *"] }),
      wording: "mark",
      says: "Row 2 of button 2, “EAST *”, would be cut with its “*”.",
      fix: "Send the sheet again as “EAST”.",
    },
    {
      shows: "a hyphen that nothing follows",
      given: ({ device }) => device({}, { "1": ["STUDY-", ""] }),
      wording: "mark",
      says: "Row 1 of button 1, “STUDY-”, would be cut with its “-”.",
      fix: "Send the sheet again as “STUDY”.",
    },
    {
      shows: "a full stop behind a whole word",
      given: ({ device }) => device({}, { "1": ["READING", "STUDY."] }),
      wording: "mark",
      says: "Row 2 of button 1, “STUDY.”, would be cut with its “.”.",
      fix: "Send the sheet again as “STUDY”.",
    },
  ],
  *find(sheet, { words }, say) {
    const rows = typedRows(sheet).filter(({ text }) => text.trim() !== "");
    for (const { face, row, place, text } of rows) {
      const typed = text.trim();
      const onFace = rows.filter((one) => one.face === face);
      const facts = { row, face: faceWords(sheet, face), typed };
      const spots = at(sheet, place);
      const inside =
        quoted.exec(typed)?.[1] ?? (onFace.length === 1 ? bracketed.exec(typed)?.[1] : undefined);
      if (inside !== undefined) {
        yield say("around", { ...facts, closed: inside.trim() }, spots);
        continue;
      }
      const closed = withoutStrays(
        {
          text: typed,
          isFirst: onFace[0]?.row === row,
          isLast: onFace.at(-1)?.row === row,
          face: onFace.map((one) => one.text).join(" "),
          number: face,
          others: rows.filter((one) => one.face !== face).map((one) => one.text.trim()),
        },
        words,
      );
      if (closed !== undefined)
        yield say("mark", { ...facts, mark: marksLeft(typed, closed), closed }, spots);
    }
  },
});
