import { defineLetterCheck } from "../check.ts";

const bare = { files: [], orders: [], held: false, reply: true, links: [] } as const;

export const wordKept = defineLetterCheck({
  id: "word-kept",
  title: "A word is kept as it stands",
  severity: "notes",
  source: { kind: "house" },
  why: "Names and firms' own abbreviations are right and in no dictionary, so they are asked about. What its buyer has once confirmed need not be asked about on every other sheet of the same project.",
  wordings: {
    kept: {
      says: "“{word}” is kept as it stands, and is not asked about again for {project}.",
      fix: "Nothing to do. If it is wrong after all, send its sheet again.",
    },
  },
  passing: [{ shows: "a reply that keeps no word", given: bare }],
  failing: [
    {
      shows: "a reply that keeps a word",
      given: { ...bare, kept: [{ word: "NIMBUS", project: "Larkspur Library" }] },
      wording: "kept",
    },
  ],
  *find({ kept = [] }, _, say) {
    for (const { word, project } of kept) yield say("kept", { word, project }, []);
  },
});
