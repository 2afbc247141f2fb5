import { pairsNearer } from "../../lettering/row.ts";
import { at, defineSheetCheck } from "../check.ts";
import { fittedLegends } from "../fitted.ts";
import { faceWords } from "../limits.ts";

export const lettersTouch = defineSheetCheck({
  id: "letters-touch",
  title: "Letters stand too near to each other",
  severity: "notes",
  sender: "settles",
  source: {
    kind: "standard",
    name: "NUREG-0700 Revision 2 (2002), 11.4: letters at least one stroke apart; ISO 3098 has the same for close pairs (both from memory)",
  },
  why: "Between two letters there must be left as much as a stroke is wide, or they are read as one. The distance is measured between the strokes as they will be cut, pair by pair.",
  wordings: {
    near: {
      says: "{pairs} stand nearer to each other than a stroke is wide ({cutter} mm), in row {row} of {face}: “{typed}”.",
      fix: "Nothing to do if the proof looks right to you.",
    },
    touch: {
      says: "{pairs} run into each other in row {row} of {face}: “{typed}”.",
      fix: "Choose other words.",
      severity: "asks",
    },
  },
  passing: [
    {
      shows: "letters that lean towards each other",
      given: ({ device }) => device({}, { "1": ["LATVIA", "AVIARY"] }),
    },
    { shows: "an accent wider than its letter", given: ({ device }) => device({}, { "1": ["ÎLE", "MAÏS"] }) },
  ],
  failing: [
    {
      shows: "two accents side by side",
      given: ({ device }) => device({}, { "1": ["ÎÏLE", ""] }),
      wording: "near",
      says: "“ÎÏ” stand nearer to each other than a stroke is wide (0.3 mm), in row 1 of button 1: “ÎÏLE”.",
    },
    {
      shows: "two wide accents on narrow letters",
      given: ({ device }) => device({}, { "1": ["ÏÏLE", ""] }),
      wording: "touch",
      says: "“ÏÏ” run into each other in row 1 of button 1: “ÏÏLE”.",
    },
  ],
  *find(sheet, catalogue, say) {
    for (const { face, fitted, rows } of fittedLegends(sheet, catalogue)) {
      for (const { row, text } of rows) {
        const near = pairsNearer(text, fitted, fitted.cutter);
        const touching = near.filter(({ gap }) => gap <= touch);
        const told = touching.length > 0 ? touching : near;
        if (told.length === 0) continue;
        const pairs = [...new Set(told.map(({ letters }) => `“${letters}”`))];
        const facts = { row, face: faceWords(sheet, face), typed: text, pairs };
        const spots = at(sheet, `row.${face}.${row}`);
        if (touching.length > 0) yield say("touch", facts, spots);
        else yield say("near", { ...facts, cutter: fitted.cutter }, spots);
      }
    }
  },
});

/** Millimetres. What is left between two strokes and is thinner than this breaks away. House rule. */
const touch = 0.02;
