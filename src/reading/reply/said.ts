import { bared, isCourtesy } from "./bare-line.ts";
import type { OwnLine } from "./own-lines.ts";
import { sheetsPromisedIn } from "./promises.ts";
import { reason, somebody } from "./reasons.ts";

/** The numbers that a line may answer: those that are open, and how many other points there are. */
export interface Points {
  readonly open: readonly number[];
  readonly others: number;
}

/** Longer lines are sentences. */
export const longestLine = 160;

const label =
  "(?:(?:in )?(?:the |my |our )?answers? (?=to |for |on ))?(?:(?:referring to |with reference to |in reference to |with regard to |in regard to |as to |as for |regarding |re |concerning |about |for |to |on |zu |à |pour )?(?:your |the |le |la |den )?(?:both questions |both |questions? |items? |points? |pts?\\. ?|numbers? |punkte? |frage |pregunta |no\\. ?|nr\\.? ?|n° ?|#|q)?)";
const one = `${label}[([]?\\d{1,4}[)\\]]?`;
const list = `${one}(?: ?(?:,|;|&|\\+|/|and|und|et|y|-|–|to|thru|through|(?<=\\d) (?=\\d)) ?${one})*`;
const good =
  "(?:all |both |exactly |a )?(?:yes|right|correct|ok|okay|o\\.k\\.|fine|good|true|meant(?: exactly)?(?: so| as (?:it|they) stands?)?|intended|intentional|on purpose|confirmed|approved|so|as (?:typed|is|intended|meant|it should be|we want it))";
const meant = `(?:the (?:wording|text|spelling|legend|name|word) is (?:as )?${good}|${reason}|está bien(?: así)?|das passt(?: so)?|sir|boss|too|as well|so gemeint|as (?:typed|is|it is|they are|it stands|they stand|written|shown|it was|before|submitted|ordered)|like that|as meant|definitely|absolutely|of course|exactly|both as typed|(?:please )?go ahead|yes|(?:please )?(?:leave|keep|engrave|cut) (?:it|them|that)(?: (?:as|like|the way|how) (?:it|they|that) (?:is|are|stands?)| alone| so| like that)?|(?:please )?(?:engrave|cut|leave) as (?:it|they) (?:is|are|stands?)|es así(?: a propósito)?|es correcto|dejarlo (?:tal cual|así)|c'est (?:bien )?(?:voulu|correct|ça)(?: ainsi)?|(?:à laisser )?tel quel|(?:das )?ist (?:so )?(?:absicht|gewollt|richtig)|das (?:ist|stimmt)(?: so)?(?: richtig| gewollt)?|(?:das )?passt(?: so)?|stimmt|so gewollt|${good}|(?:that|it|this)(?: is|'s) (?:${good}|what we want))`;
const yes = `(?:y|yes+|yse|eys|ys|yeah|yep|yup|ja|oui|s[iíì]|(?:ok|okay)(?= as )|correcto?|richtig|(?:das )?stimmt(?: so)?|passt(?: so)?|exact|right|confirmed|confirm|approved|true|fine|good|all (?:yes|correct|right|good|fine)|(?:that|it|this)(?: is|'s) ${good}|👍|✓|✔|✅|meant so|(?:is|are|'s) ${good}|stays?(?: as (?:it )?is)?|(?:leave|keep) (?:it )?as (?:it )?is|as is|as typed|meant as (?:it|they) stands?)(?:(?:[,.: -]{1,3}(?:and )?|(?= ?👍) ?)(?:${meant}|👍))*`;
const sheet =
  "(?:(?:korrigiertes|neues) blatt (?:folgt|kommt|anbei)|(?:je|nous) vous (?:r?envoie|r?envoyons|renverrons) la feuille corrigée|(?:enviaremos|enviamos|envío) la hoja corregida|(?:the )?(?:a )?(?:new|corrected|revised|right|fixed|updated|neues) (?:sheet|one|file|pdf|list|blatt)(?: is)?(?: (?:attached|enclosed|follows|to follow|coming|comes|below|will follow|will come|on its way|sent|soon|shortly|today|this (?:morning|afternoon)|tomorrow|kommt|folgt))*)";
const no = `(?:no|nope|nein|non|wrong|incorrect|(?:stimmt )?nicht|not (?:right|correct|ok|intended|meant(?: so| as (?:it|they) stands?)?)|(?:is|are) (?:wrong|incorrect|not (?:right|correct|intended|meant(?: so| as (?:it|they) stands?)?)))(?:[,.:; -]{1,3}(?:${sheet}|sorry|my mistake|typo|a typo|(?:my|our) (?:mistake|typo|slip)|(?:that|it)(?: is|'s) (?:a mistake|wrong|a typo)|(?:we|i)(?: will|'ll) send (?:you )?(?:a |the )?(?:new|corrected|right) (?:sheet|one)(?: (?:soon|shortly|today|tomorrow|this (?:morning|afternoon)))?))*`;
const group = new RegExp(
  `^(?:(?<list>${list}) ?(?:[.):=,–—-]|is(?: an?)?|are|->)* ?(?<word>${yes}|${no}|n|(?:too|also|as well|likewise))|leave (?<left>${list}) as (?:it is|is|they are)|(?<before>${yes}|${no}) ?(?:to|for|on|pour|zu|:|,|-|=)? ?(?<after>${list})(?: (?:is|are) (?<also>${yes}|${no}))?)(?=$|[\\s,;.])`,
  "iu",
);
const sets =
  "(?:all|both|everything|beides|beide|alle|all of them|both of them|(?:all|both)(?: the)? questions|all (?:\\d+|three|four|five|points))";
const everything = new RegExp(
  `^(?:(?<before>${yes}|${no}) (?:to|for|on) (?<set>${sets})|(?<those>${sets})[:,]? (?:are |is )?(?<word>${yes}|${good}|${no}))$`,
  "iu",
);
/** Words that introduce answers and say nothing themselves. */
const found =
  "(?:below|inline|in ?line|above|between (?:the|your) lines|in (?:your|the) text|as follows|in (?:red|blue|green|caps|capitals|bold))";
const leadIn = new RegExp(
  `^(?:${[
    `(?:(?:please )?(?:see|find)|here (?:are|is))(?: (?:my|our|the|your))?(?: (?:answers?|replies|reply|responses?|comments))(?: (?:to|for|on) (?:your|the) (?:questions?|points))?(?: ${found})*`,
    `(?:please )?see ${found}`,
    `(?:my |our |the )?(?:answers?|replies|reply|responses?|comments)(?: are| is)?(?: ${found})+`,
    "answers between(?: the lines)?",
    `${somebody} (?:came back|got back|has answered|answered|replied)(?: to (?:me|us))?(?: as follows)?`,
    "with reference to your (?:answer|letter|e-?mail|message)(?: of (?:today(?:'s date)?|yesterday))?,? we (?:answer|confirm)(?: as follows)?",
    "(?:meine|unsere) antworten (?:im text|unten)|(?:mes|nos) réponses (?:ci-dessous|dans le texte)",
    "\\W*(?:point|question|no\\.?|number|item)\\W+(?:answer|reply|yes/no)\\W*",
  ].join("|")}):?$`,
  "iu",
);
const bare = new RegExp(`^(?:(?<yes>${yes})|${no})$`, "iu");

const isNo = new RegExp(`^(?:${no}|n)$`, "iu");
const isPlain = /\b(?:yes|no)\b/i;
const again = /^(?:too|also|as well|likewise)$/i;

/** "We confirm 3 yes", "Yes, 3 yes and 4 yes", "Confirmed - 1 YES", "I asked the client and 3 is a YES". */
const introduced = new RegExp(
  `^(?:(?:i|we) (?=confirm)|(?:i|we)(?: hereby)? confirm(?:ed)?[:,]? (?=\\d)|(?:yes|yep|yeah)(?:[,!]| -| (?=\\d)) ?(?=.*\\byes\\b)|confirm(?:ed)?(?:[:,]| -) (?=\\d)|(?:i|we)(?:'ve| have)?(?: just)? (?:asked|checked with|spoke (?:to|with)|talked (?:to|with)|heard (?:back )?from) ${somebody}(?:,? and|:| -) )`,
  "iu",
);
export interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** Sentences end here, also in a line such as "4 is yes. Will fix the rest." */
const ends = /(?<=[\p{L})]{2}|\p{L} \d{1,3})(?<!\bn[or])[.;!]+\s+/iu;

/**
 * What a line answers, sentence by sentence. Undefined if a sentence says anything else. `isIdle`: whether a sentence
 * beside an answer says nothing.
 */
export function saidIn(
  own: OwnLine,
  points: Points,
  isIdle: (sentence: string) => boolean,
): Said[] | undefined {
  const { line } = own;
  if (line.length > longestLine || line.includes("?")) return undefined;
  const said: Said[] = [];
  const sentences = bared(line).split(ends);
  const rest = sentences.filter((sentence) => isCourtesy(sentence) || !isIdle(sentence));
  for (const sentence of rest) {
    const answers = isCourtesy(sentence)
      ? []
      : (answersIn(bared(sentence), own, points) ?? promisedIn(sentence, own, points, said));
    if (answers === undefined) return undefined;
    said.push(...answers);
  }
  return rest.length > 0 ? said : undefined;
}

/**
 * A promised sheet is a no to the points that it names. If it names none it is for what must be mended anyway, as long
 * as there is such a thing.
 */
function promisedIn(
  sentence: string,
  { under }: OwnLine,
  { open, others }: Points,
  said: readonly Said[],
): Said[] | undefined {
  const named = sheetsPromisedIn(sentence);
  if (named === undefined) return undefined;
  const numbers = named.length > 0 || under === undefined ? named : [under];
  if (numbers.length === 0 && others === 0 && said.every(({ is }) => is)) return undefined;
  return numbers.filter((number) => open.includes(number)).map((number) => ({ number, is: false }));
}

function answersIn(
  words: string,
  { under, afterSeveral }: OwnLine,
  { open, others }: Points,
): Said[] | undefined {
  if (leadIn.test(words)) return [];
  const all = everything.exec(words)?.groups;
  if (all !== undefined) {
    const set = all["set"] ?? all["those"] ?? "";
    const is = !isNo.test(all["before"] ?? all["word"] ?? "");
    // Of points to fix nobody says yes. "Both are right" may mean two of them, and "all" may mean them too.
    const isBoth = /both|beides|beide/i.test(set);
    const isWrongSet = isBoth
      ? open.length !== 2 || (others === 2 && !isPlain.test(words))
      : others > 0 && !/question/i.test(set);
    return isWrongSet || under !== undefined ? undefined : open.map((number) => ({ number, is }));
  }
  const alone = bare.exec(words);
  if (alone !== null) {
    const [only, ...more] = open;
    const number = under ?? (more.length === 0 && others === 0 && !afterSeveral ? only : undefined);
    return number === undefined ? undefined : [{ number, is: alone.groups?.["yes"] !== undefined }];
  }
  return listedIn(words, under) ?? listedIn(words.replace(introduced, ""), under);
}

/** "3 yes, 4 no and yes to 5". */
function listedIn(words: string, under: number | undefined): Said[] | undefined {
  const said: Said[] = [];
  let rest = words;
  while (rest !== "") {
    const found = group.exec(rest);
    if (found?.groups === undefined) return undefined;
    const { list: first, word, left, before, after, also } = found.groups;
    const answer = left === undefined ? (word ?? before ?? "") : "yes";
    const is = again.test(answer) ? said.at(-1)?.is : !isNo.test(answer);
    if (is === undefined || (also !== undefined && isNo.test(also) === is)) return undefined;
    const numbers = numbersIn(first ?? left ?? after ?? "");
    // An answer that names one point and stands under another is not guessed at.
    if (under !== undefined && !numbers.every((number) => number === under)) return undefined;
    said.push(...numbers.map((number) => ({ number, is })));
    rest = rest.slice(found[0].length).replace(/^[\s,;.]+(?:and |und |et |y )?/iu, "");
  }
  return said;
}

function numbersIn(list: string): number[] {
  const found = [...list.matchAll(/(\d{1,4})(?:\s?(?:-|–|to|thru|through)\s?\D{0,12}?(\d{1,4}))?/giu)];
  return found.flatMap(([, from = "", to = from]) => {
    const count = Number(to) - Number(from) + 1;
    // A range that runs backwards, or too far, is none.
    return count < 1 || count > 50 ? [-1] : Array.from({ length: count }, (_, i) => Number(from) + i);
  });
}
