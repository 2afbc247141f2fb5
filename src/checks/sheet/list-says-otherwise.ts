import { at, defineSheetCheck, labelOf } from "../check.ts";
import { quotedChoice } from "../choice-name.ts";

export const listSaysOtherwise = defineSheetCheck({
  id: "list-says-otherwise",
  title: "A sheet and a list beside it contradict each other",
  severity: "stops",
  sender: "settles",
  source: { kind: "house" },
  why: "A list and sheets for the same places are kept by hand, and one of the two is older. Only the buyer knows which one is meant.",
  wordings: {
    differs: {
      says: "“{field}” says {typed}; the list {list} says {listed}.",
      fix: "Send the one that is right, without the other: this sheet, or the list.",
    },
    lacks: {
      says: "The list {list} orders what other sheets order too, and nothing for this place.",
      fix: "If this one is not to be made, or belongs to another order, tell us so.",
      severity: "asks",
    },
  },
  passing: [{ shows: "a sheet without a list beside it", given: ({ device }) => device() }],
  failing: [
    {
      shows: "another legend in the list",
      given: ({ device }) =>
        device({
          otherwise: {
            file: "stations.xlsx",
            places: [{ place: "row.1.1", cell: "F14", says: "LOBBY", typed: "ENTRY" }],
          },
        }),
      wording: "differs",
      says: "“Face 1, row 1” says “ENTRY”; the list stations.xlsx, F14, says “LOBBY”.",
    },
    {
      shows: "a sheet that a list of the others lacks",
      given: ({ device }) => device({ otherwise: { file: "stations.xlsx", places: [], lacks: true } }),
      wording: "lacks",
      says: "The list stations.xlsx orders what other sheets order too, and nothing for this place.",
    },
  ],
  *find(sheet, catalogue, say) {
    const { file = "", places = [], lacks } = sheet.otherwise ?? {};
    if (lacks) yield say("lacks", { list: file }, at(sheet));
    for (const { place, cell, typed, says } of places) {
      const [own, listed] = [typed, says].map((text) => quotedChoice(text, catalogue));
      if (own === undefined || listed === undefined) continue;
      const list = cell === "" ? file : `${file}, ${cell},`;
      yield say("differs", { field: labelOf(sheet, place), typed: own, list, listed }, at(sheet, place));
    }
  },
});
