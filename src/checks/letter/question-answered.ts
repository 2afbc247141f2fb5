import { defineLetterCheck } from "../check.ts";

const bare = { files: [], orders: [], held: false, reply: true, links: [] } as const;

export const questionAnswered = defineLetterCheck({
  id: "question-answered",
  title: "A question is answered",
  severity: "notes",
  source: { kind: "house" },
  why: "Whoever answers wants to see how the answer was understood. A word that its buyer has once confirmed need not be asked about on every other sheet of the same project.",
  wordings: {
    denied: {
      says: "You answered YES to {count:question}, and another answer says NO: {numbers}. It may be a colleague's, or ours.",
      fix: "Agree on it. Then answer once more, in a reply to this letter.",
    },
    kept: {
      says: "“{word}” is kept as it stands, and is not asked about again for {project}.",
      fix: "Nothing to do. If it is wrong after all, send its sheet again.",
    },
    yes: {
      says: "You answered YES to {count:question}: {numbers}.",
      fix: "Nothing to do. If something is wrong after all, send its sheet again.",
    },
    no: {
      says: "You answered NO to {count:question}: {numbers}.",
      fix: "Send each corrected sheet in a reply to this letter.",
    },
    mended: {
      says: "You answered NO to {count:question}: {numbers}. The sheet that came is checked in place of the one that was asked about.",
      fix: "Nothing to do.",
    },
    nothing: {
      says: "You answered NOTHING to {count:point}: {numbers}.",
      fix: "Nobody has to read it now. If it asks for something after all, write again.",
    },
    late: {
      says: "You answered {count:question} about sheets that are withdrawn: {numbers}. The answer changes nothing.",
      fix: "Nothing to do. If such a sheet is wanted after all, send it again.",
    },
  },
  passing: [{ shows: "a reply that answers nothing", given: bare }],
  failing: [
    {
      shows: "a reply that keeps a word",
      given: { ...bare, kept: [{ word: "NIMBUS", project: "Larkspur Library" }] },
      wording: "kept",
      says: "“NIMBUS” is kept as it stands, and is not asked about again for Larkspur Library.",
    },
    {
      shows: "a reply that says YES",
      given: { ...bare, answers: { yes: [3, 4], no: [] } },
      wording: "yes",
      says: "You answered YES to 2 questions: 3 and 4.",
    },
    {
      shows: "a reply that says NO",
      given: { ...bare, answers: { yes: [], no: [2] } },
      wording: "no",
      says: "You answered NO to 1 question: 2.",
    },
    {
      shows: "a reply that says NO and brings the sheet",
      given: { ...bare, answers: { yes: [], no: [5], mended: [5] } },
      wording: "mended",
      says: "You answered NO to 1 question: 5. The sheet that came is checked in place of the one that was asked about.",
    },
    {
      shows: "a reply that takes words back",
      given: { ...bare, answers: { yes: [], no: [], nothing: [4] } },
      wording: "nothing",
      says: "You answered NOTHING to 1 point: 4.",
    },
    {
      shows: "a YES where somebody else has said NO",
      given: { ...bare, answersDenied: [1] },
      wording: "denied",
      says: "You answered YES to 1 question, and another answer says NO: 1. It may be a colleague's, or ours.",
    },
    {
      shows: "a YES for a sheet that is withdrawn",
      given: { ...bare, answersLate: [4] },
      wording: "late",
      says: "You answered 1 question about sheets that are withdrawn: 4. The answer changes nothing.",
    },
  ],
  *find(letter, _, say) {
    const {
      kept = [],
      answers = { yes: [], no: [] },
      answersLate: late = [],
      answersDenied: denied = [],
    } = letter;
    const { yes, no, mended = [], nothing = [] } = answers;
    const told = { yes, no: no.filter((number) => !mended.includes(number)), mended, nothing };
    for (const wording of ["yes", "no", "mended", "nothing"] as const) {
      const numbers = told[wording].map(String);
      if (numbers.length > 0) yield say(wording, { count: numbers.length, numbers }, []);
    }
    if (denied.length > 0) yield say("denied", { count: denied.length, numbers: denied.map(String) }, []);
    if (late.length > 0) yield say("late", { count: late.length, numbers: late.map(String) }, []);
    for (const { word, project } of kept) yield say("kept", { word, project }, []);
  },
});
