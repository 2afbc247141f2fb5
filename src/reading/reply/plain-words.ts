import type { OwnLine } from "./own-lines.ts";
import { tokensOf } from "./word-bag.ts";

/*
 * Answers by people who write English as they learnt it: "at the question 3 I answer yes", "I confirm both of them".
 * In what turn their words stand does not matter where all of them are known. A sentence has numbers, says only yes
 * or only no, and none of its other words can bind or turn that.
 */

/** "I confirm", "are correct": they mean yes. "Confirm" and "correct" alone may ask for something. */
const agrees =
  /\bin the affirmative\b|\b(?:i|we) (?:(?:can|do|hereby|also) )?confirm\b|(?<=\b(?:is|are) )(?:all |both |also )?(?:correct|right|fine|ok|okay|good|intended|confirmed|meant so|true)\b/giu;
const yes = new Set(tokensOf("yes yep yeah yup ja oui si sí sì sim tak ano áno igen evet kyllä affirmative"));
const no = new Set(tokensOf("no nope nein não nie nem nej hayır negative"));
const around = new Set(
  tokensOf(
    `hi hello hey hiya dear sirs sir madam guys the a an my our your its it is are s to for on in at of about regarding
    concerning and question questions point points item items number numbers answer answers answering reply replies
    response i we say give confirm confirming confirmed confirmation also too likewise both all them these two please
    thanks thank you here so as follows write writing madame ma am réponse la le al alla per il domanda
    risposta respuesta pregunta pergunta resposta frage antwort auf zu zur punkt nummer numero número pytanie na
    nr nos ok okay good fine of course certainly absolutely definitely exactly indeed us in each every case cases chef boss bud
    mate em`,
  ),
);
/** Where a number is a count: "3 of your questions", "all 3", "we are 3". */
const isCount =
  /\d (?:of|questions?|points?|items?|numbers?|answers?|words?|names?|cases?|texts?|to \d)\b|\b(?:all|both|the|these|my|our|your|its?|is|are|a|an|give|you|them|i|we) \d/iu;
const isOther =
  /^(?:is|are|and is)\b|\b(?:we|i) (?:are|is|am)\b|\b(?:my|our|an?) questions?\b|(?<!\bit )\b(?:is|are)\W*$|\b(?:the|an?|my|our|your|to|for|on|at|in)\W*$|\bof\b|\b(?:thanks|thank you) for\b|\bgood (?:questions?|points?|items?|answers?|numbers?)\b|(?<!thank )\byou\b/iu;

export interface Plain {
  readonly numbers: readonly number[];
  readonly is: boolean;
}

/** What such a sentence answers, or undefined. `open` are the questions that it may answer. */
export function plainlySaid(sentence: string, own: OwnLine, open: readonly number[]): Plain[] | undefined {
  if (/\bplease\b/iu.test(sentence) && !/\b(?:yes|no)\b/iu.test(sentence)) return undefined;
  const words = sentence
    .replace(/\bthe (?:word|spelling|name|text|wording) (?:in|at|of|under) (?=\D{0,12}\d)/giu, " ")
    .replace(/\b(?:no\.|q\.?) ?(?=\d)/giu, "number ")
    .replace(agrees, "yes")
    .replace(/\bboth of (?:them|these)\b|\bboth of 'em\b|\bboth of em\b|\bboth (?:counts|cases)\b/giu, "both")
    .replace(/\bof course\b/giu, " ")
    .replace(
      /(?<=\d[,:]?) (?:are )?both\b(?! \d)|\bboth (?=(?:questions |points |items )?\d{1,4} and \d)/giu,
      " both: ",
    );
  return clauseSaid(words, own, open) ?? inClauses(words, own, open);
}

/** "For 2 it is YES, for 3 it is NO." */
function inClauses(words: string, own: OwnLine, open: readonly number[]): Plain[] | undefined {
  const clauses = words.split(/[,;] (?:and )?| and (?=[^,;]*\b(?:yes|no)\b)/iu);
  const said = clauses.map((clause) =>
    clauseSaid(clause, own, open)?.filter(({ numbers }) => numbers.length > 0),
  );
  const isAll = clauses.length > 1 && clauses.length < 12 && said.every((one) => one !== undefined);
  return isAll && clauses.every((clause) => /\d/.test(clause)) ? said.flatMap((one) => one ?? []) : undefined;
}

function clauseSaid(words: string, { under }: OwnLine, open: readonly number[]): Plain[] | undefined {
  const numbers = words.match(/(?<![\p{L}\p{N}])\d{1,4}(?![\p{L}\p{N}])/gu)?.map(Number) ?? [];
  const tokens = tokensOf(words).filter((token) => !/^\d+$/.test(token));
  const [yeses, noes] = [yes, no].map((some) => tokens.filter((token) => some.has(token)).length);
  if ((yeses === 0) === (noes === 0) || isCount.test(words) || isOther.test(words)) return undefined;
  // Smiles may say that it is a joke.
  if (/[^\p{L}\p{N}\s,.:;!'’()&+–—-]|[;:]-?[()DPpd]/u.test(words)) return undefined;
  if (!tokens.every((token) => yes.has(token) || no.has(token) || around.has(token))) return undefined;
  const is = noes === 0;
  if (numbers.length > 0)
    return !/\b(?:two|all|them|these)\b/iu.test(words) &&
      (numbers.length === 2 || !/\bboth\b/iu.test(words)) &&
      (under === undefined || numbers.every((number) => number === under))
      ? [{ numbers, is }]
      : undefined;
  const areBoth = under === undefined && open.length === 2 && /\b(?:both|the two)\b/iu.test(words);
  return areBoth && !/\b(?:all|these)\b/iu.test(words) ? [{ numbers: open, is }] : undefined;
}

/** "My replies in order:" */
const aboutAnswers = /\b(?:answers?|repl(?:y|ies)|responses?)\b/iu;
const introducing = new Set(
  tokensOf(
    `dear sirs my our the your answer answers reply replies response responses to for on of in order question questions
    points is are as follows following below here please find see we i give you with inline`,
  ),
);

/** Whether a sentence only introduces answers. */
export function introducesAnswers(sentence: string): boolean {
  return (
    aboutAnswers.test(sentence) &&
    !/[?\d"“”]/u.test(sentence) &&
    !/^(?:is|are)\b/iu.test(sentence) &&
    tokensOf(sentence).every((token) => introducing.has(token))
  );
}
