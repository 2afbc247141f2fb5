import type { Catalogue } from "../catalogue/catalogue.ts";
import { areBuyersWords, askedWords, maySettle, mayWaive } from "../checks/asked.ts";
import { questionAnswered } from "../checks/letter/question-answered.ts";
import type { BuyerState } from "../judging/state.ts";
import type { KeptWord } from "../trade/kept-word.ts";
import type { Note, PointAct } from "../trade/note.ts";
import type { Problem } from "../trade/problem.ts";
import type { KnownQuestion, QuestionOf } from "../trade/question.ts";
import { movesIn } from "./moves.ts";
import { faultOfCut, orderIn } from "./note-release.ts";

/** Why a note cannot be taken. */
export function faultOf(note: Note, state: BuyerState): string | undefined {
  const order = orderIn(note, state);
  if (order === undefined) return `no order ${note.order} of ${note.buyer} is known`;
  if (note.isSenders && note.acts.some(({ kind }) => kind !== "yes" && kind !== "no"))
    return "only questions are answered there";
  // Whoever is written to is told how the order stands. Of one that is gone there is nothing to tell.
  if (order.sheets.length === 0 && note.acts.some(({ kind }) => kind === "write"))
    return `nothing is left of order ${note.order}: write to ${note.buyer} yourself`;
  for (const act of note.acts) {
    // Only what is about a point, or about released stations, can be wrong here.
    if (!("number" in act) && act.kind !== "cut") continue;
    if (act.kind === "cut") {
      const why = faultOfCut(act, order);
      if (why !== undefined) return why;
      continue;
    }
    const question = openIn(order.questions, act);
    if (question === undefined) return `order ${note.order} has no open point ${act.number}`;
    const isTakenBack =
      act.kind === "yes" && order.released === undefined && areBuyersWords(question.problem);
    if (note.isSenders && !maySettle(question.problem) && !isTakenBack)
      return `point ${act.number} needs one of us`;
    if (note.isSenders && act.kind === "yes" && isDeniedTo(note, question))
      return `point ${act.number} was answered NO since: answer it in a reply to our last letter`;
    const stops = question.problem.severity === "stops";
    if (act.kind === "yes" && stops)
      return `point ${act.number} stops the order: mend it, or let it stand with --waive`;
    if (act.kind === "waive" && !stops) return `point ${act.number} is a question: answer it with --yes`;
    if (act.kind === "waive" && !mayWaive(question.problem))
      return `point ${act.number} cannot be let stand: it could not be cut`;
  }
  const moves = movesIn(note, state, "0");
  return typeof moves === "string" ? moves : undefined;
}

function openIn(questions: readonly KnownQuestion[], { number }: PointAct): KnownQuestion | undefined {
  return questions.find((question) => question.number === number && question.state === "open");
}

/** Whether somebody else has said NO behind the letter whose answer led to the page on which a note says YES. */
function isDeniedTo({ by, repliesTo = 0 }: Note, { denied = [] }: KnownQuestion): boolean {
  return denied.some((no) => no.by !== by && repliesTo < no.letter);
}

/** What a note answers with NO, as the record has it of letters. */
export function saidNo({ acts }: Note, catalogue: Catalogue): Problem[] {
  const no = acts.flatMap((act) => (act.kind === "no" ? [act.number] : []));
  const answers = { yes: [], no };
  return [
    ...questionAnswered.find(
      { files: [], orders: [], held: false, reply: true, links: [], answers },
      catalogue,
    ),
  ];
}

/** All questions that a note decides. Several can share a number, since they read the same. */
export function decidedBy(note: Note, state: BuyerState): QuestionOf[] {
  const order = orderIn(note, state);
  const numbers = new Set(
    note.acts.flatMap((act) => (act.kind === "yes" || act.kind === "waive" ? [act.number] : [])),
  );
  return (order?.questions ?? [])
    .filter(({ number, state: is }) => is === "open" && numbers.has(number))
    .map(({ key }) => ({ order: note.order, key }));
}

/** Words of legends that a note says are right. */
export function keptBy(note: Note, state: BuyerState): KeptWord[] {
  const order = orderIn(note, state);
  const yes = note.acts.flatMap((act) => (act.kind === "yes" ? [act.number] : []));
  const problems = (order?.questions ?? [])
    .filter(({ number, state: is }) => is === "open" && yes.includes(number))
    .map(({ problem }) => problem);
  return askedWords(problems, order?.sheets ?? []).map(({ word, project }) => ({ word, project }));
}
