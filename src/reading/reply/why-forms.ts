import { type Act, type Form, form, type Groups, numbersIn, subject } from "./clause.ts";
import { be, it, much } from "./clause-words.ts";
import { tellsOnly } from "./explains.ts";
import { whysOfQuestions } from "./why-questions.ts";
import { plainly, type Why, whats, whys } from "./why-words.ts";
import { tokensOf } from "./word-bag.ts";

/** Words for several points. */
const severalAre =
  "(?:(?:they|these|those|both|all|the (?:words|names|legends|others?|other two)) (?:is|are) |all |both )";
/** The words of a pattern. Of "walls?" both. */
const wordsIn = (source: string): ReadonlySet<string> =>
  new Set(
    [...source.replaceAll("'?", "").matchAll(/[\p{L}?]+/gu)].flatMap(([one]) => [
      one.replaceAll("?", ""),
      one.replace(/\p{L}\?/gu, ""),
    ]),
  );

/** Whether those words of a reason that stand in no list bind nothing. */
const areOfNoDanger = (said: string, listed: ReadonlySet<string>): boolean =>
  tokensOf(said).every((one) => listed.has(one) || /^\d+$/u.test(one) || tellsOnly(one));

/** The words that were held against the word in question. */
const wordsOf = (groups: Groups): ReadonlySet<string> => new Set(tokensOf(Object.values(groups).join(" ")));

/** Why something is meant so: what stands alone, behind "it is", and behind some points or words in question. */
function reasoning({ source, holds, ofWord, ...fitting }: Why, isWhat: boolean): Form[] {
  const listed = wordsIn(`${source.replaceAll(plainly, "")} ${subject} ${severalAre} ${it} ${much}`);
  const why = (before: string, act: (of?: string) => Act): Form =>
    form(
      before + source,
      (groups, whole) =>
        holds?.(groups, whole) === false ||
        !areOfNoDanger(whole, ofWord === true ? listed.union(wordsOf(groups)) : listed)
          ? undefined
          : act(groups["of"]),
      {
        ...fitting,
        isOpen: ofWord !== true,
      },
    );
  const alone = (before: string): Form => why(before, () => ({ kind: "why" }));
  return isWhat
    ? [
        alone(`(?:(?:${it} )?${be} |which ${be} )?${much}`),
        why(`${severalAre}${much}`, () => ({ kind: "because" })),
        why(`${subject} ${be} ${much}`, (of) => ({ kind: "about", of: numbersIn(of) })),
      ]
    : [alone("")];
}

/** Clauses that tell why something is meant so. */
export const whyForms: readonly Form[] = [
  ...whats.flatMap((one) => reasoning(one, true)),
  ...[...whys, ...whysOfQuestions].flatMap((one) => reasoning(one, false)),
];
