import { pieceKey } from "../../orders/piece.ts";
import { at, defineSheetCheck } from "../check.ts";

const list = { file: "stations.xlsx", row: 3, cells: {}, unread: [] } as const;

export const sheetFromList = defineSheetCheck({
  id: "sheet-from-list",
  title: "A sheet that was filled in from a station list",
  severity: "asks",
  sender: "settles",
  source: { kind: "house" },
  why: "Nobody has seen these sheets yet but the program that filled them in. The buyer sees them, and what would be cut, before anything is.",
  wordings: {
    filled: {
      says: "Filled in from the list {list}; nobody has looked at it yet.",
      fix: "Look at the proof: what it shows is what will be cut. To change something, send the corrected list.",
    },
  },
  passing: [{ shows: "a sheet that came as a sheet", given: ({ device }) => device() }],
  failing: [
    {
      shows: "a row of a list",
      given: ({ device }) => device({ list }),
      wording: "filled",
      says: "Filled in from the list stations.xlsx; nobody has looked at it yet.",
    },
  ],
  *find(sheet, _, say) {
    if (sheet.list === undefined) return;
    const problem = say("filled", { list: sheet.list.file }, at(sheet));
    // The piece makes it another question once something else would be cut.
    yield { ...problem, facts: { ...problem.facts, piece: pieceKey(sheet) } };
  },
});
