import { defineFileCheck } from "../check.ts";
import { listAs } from "../sample.ts";

export const listBesideSheets = defineFileCheck({
  id: "list-beside-sheets",
  title: "A list that came with the sheets of it",
  severity: "notes",
  source: { kind: "house" },
  why: "Where a list and sheets order the same places, the sheets count, and the list is held against them. The sender should know that nothing is ordered twice.",
  wordings: {
    compared: {
      says: "{count:sheet} came for what this list orders too. The sheets count; the list was held against them.",
      fix: "Nothing to do. Where they contradict each other, it is said of the sheet.",
    },
  },
  passing: [{ shows: "a list alone", given: listAs() }],
  failing: [
    {
      shows: "a list and three sheets of it",
      given: { ...listAs(), beside: 3 },
      wording: "compared",
      says: "3 sheets came for what this list orders too. The sheets count; the list was held against them.",
    },
  ],
  *find({ id, beside }, _, say) {
    if (beside !== undefined) yield say("compared", { count: beside }, [{ file: id }]);
  },
});
