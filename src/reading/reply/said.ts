import { speaksAgainst } from "./doubt.ts";
import type { OwnLine } from "./own-lines.ts";

/** The numbers that a line may answer: those that are open, and how many other points there are. */
export interface Points {
  readonly open: readonly number[];
  readonly others: number;
}

/** Longer lines are sentences. */
export const longestLine = 160;

const spelt = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

const label =
  "(?:(?:referring to |regarding |re |concerning |about |for |to |on |zu |à |pour )?(?:your |the |le |la |den )?(?:both questions |both |questions? |items? |points? |pts?\\. ?|numbers? |punkte? |frage |pregunta |no\\. ?|nr\\.? ?|n° ?|#|q)?)";
const one = `${label}[([]?\\d{1,4}[)\\]]?`;
const list = `${one}(?: ?(?:,|;|&|\\+|/|and|und|et|y|-|–|to|thru|through|(?<=\\d) (?=\\d)) ?${one})*`;
const good =
  "(?:all |both |exactly |a )?(?:yes|right|correct|ok|okay|o\\.k\\.|fine|good|true|meant(?: exactly)?(?: so| as (?:it|they) stands?)?|intended|intentional|on purpose|confirmed|approved|so|as (?:typed|is|intended|meant|it should be|we want it))";
/** Whoever it is that says so. */
const somebody = "(?:(?:the|our|my|their) )?(?:client|customer|owner|architect|designer|they|we|he|she)";
/** Why it is meant so. */
const reason = `(?:(?:that|it|this)(?: is|'s) (?:(?:exactly )?(?:how|the way|what) ${somebody} (?:spells?|writes?|wants?|calls?)(?: it)?|${somebody}'s (?:spelling|wording)|(?:the|its|their|a)(?: room's)?(?: actual| real| right| correct| proper| brand| trade)? name)|\\w{2,15} is a (?:brand|trade|family|proper)? ?name|(?:as )?(?:confirmed|agreed|checked) (?:with|by) ${somebody}|same|as drawn)`;
const meant = `(?:${reason}|está bien(?: así)?|das passt(?: so)?|sir|boss|too|as well|so gemeint|as (?:typed|is|it is|they are|it stands|they stand|written|shown|it was|before|submitted|ordered)|like that|as meant|definitely|absolutely|of course|exactly|both as typed|(?:please )?go ahead|yes|(?:leave|keep) (?:it|them) (?:as|like) (?:it|they) (?:is|are)|es así(?: a propósito)?|es correcto|dejarlo (?:tal cual|así)|c'est (?:bien )?(?:voulu|correct|ça)(?: ainsi)?|(?:à laisser )?tel quel|(?:das )?ist (?:so )?(?:absicht|gewollt|richtig)|das (?:ist|stimmt)(?: so)?(?: richtig| gewollt)?|(?:das )?passt(?: so)?|stimmt|so gewollt|${good}|(?:that|it|this)(?: is|'s) (?:${good}|what we want))`;
const yes = `(?:y|yes+|yse|eys|yeah|yep|yup|ja|oui|s[ií]|(?:ok|okay)(?= as )|correcto?|richtig|(?:das )?stimmt(?: so)?|passt(?: so)?|exact|right|confirmed|confirm|approved|true|fine|good|all (?:yes|correct|right|good|fine)|(?:that|it|this)(?: is|'s) ${good}|👍|✓|✔|✅|meant so|(?:is|are|'s) ${good}|stays?(?: as (?:it )?is)?|(?:leave|keep) (?:it )?as (?:it )?is|as is|as typed|meant as (?:it|they) stands?)(?:(?:[,.: -]{1,3}(?:and )?|(?= ?👍) ?)(?:${meant}|👍))*`;
const sheet =
  "(?:(?:korrigiertes|neues) blatt (?:folgt|kommt|anbei)|(?:je|nous) vous (?:r?envoie|r?envoyons|renverrons) la feuille corrigée|(?:enviaremos|enviamos|envío) la hoja corregida|(?:the )?(?:a )?(?:new|corrected|revised|right|fixed|updated|neues) (?:sheet|one|file|pdf|list|blatt)(?: is)?(?: (?:attached|enclosed|follows|to follow|coming|comes|below|will follow|will come|on its way|sent|soon|shortly|today|this (?:morning|afternoon)|tomorrow|kommt|folgt))*)";
const no = `(?:no|nope|nein|non|wrong|incorrect|(?:stimmt )?nicht|not (?:right|correct|ok|intended|meant(?: so| as (?:it|they) stands?)?)|(?:is|are) (?:wrong|incorrect|not (?:right|correct|intended|meant(?: so| as (?:it|they) stands?)?)))(?:[,.:; -]{1,3}(?:${sheet}|sorry|my mistake|typo|a typo|(?:that|it)(?: is|'s) (?:a mistake|wrong|a typo)|(?:we|i)(?: will|'ll) send (?:you )?(?:a |the )?(?:new|corrected|right) (?:sheet|one)(?: (?:soon|shortly|today|tomorrow|this (?:morning|afternoon)))?))*`;
const courtesy =
  "(?:please|pls|thanks|thank you|thx|sir|madam|hi|hello|cheers|many thanks|thanks again|gracias|merci|danke|ta|grazie|takk|dank je)";

const group = new RegExp(
  `^(?:(?<list>${list}) ?(?:[.):=,–—-]|is|are|->)* ?(?<word>${yes}|${no}|(?:too|also|as well|likewise))|leave (?<left>${list}) as (?:it is|is|they are)|(?<before>${yes}|${no}) ?(?:to|for|on|pour|zu|:|,|-|=)? ?(?<after>${list})(?: (?:is|are) (?<also>${yes}|${no}))?)(?=$|[\\s,;.])`,
  "iu",
);
const sets =
  "(?:all|both|everything|beides|beide|alle|all of them|both of them|(?:all|both)(?: the)? questions|all (?:\\d+|three|four|five|points))";
const everything = new RegExp(
  `^(?:(?<before>${yes}|${no}) (?:to|for|on) (?<set>${sets})|(?<those>${sets})[:,]? (?:are |is )?(?<word>${yes}|${good}|${no}))$`,
  "iu",
);
/** Words that introduce answers and say nothing themselves. */
const leadIn =
  /^(?:see below|(?:please )?(?:see|find) (?:my|our|the) (?:answers?|replies|reply)|(?:please )?see (?:my|our) (?:answers?|comments|replies) in (?:red|blue|green|caps|capitals|bold) below|(?:answers?|replies) (?:are )?below in (?:red|blue|green|caps|capitals|bold)|(?:meine|unsere) antworten (?:im text|unten)|(?:mes|nos) réponses (?:ci-dessous|dans le texte)|(?:please )?(?:see )?(?:my |our |the )?(?:answers?|replies|reply|comments)(?: are| is)? (?:below|inline|in ?line|above|between(?: the lines)?|in your text|in the text)|\W*(?:point|question|no\.?|number|item)\W+(?:answer|reply|yes\/no)\W*)$/i;
const bare = new RegExp(`^(?:(?<yes>${yes})|${no})$`, "iu");

/** A sentence that stands beside an answer in one line and says nothing. */
const idleSentence =
  /^(?:(?:good )?(?:morning|afternoon|evening|day)|hi|hello|thanks?|thank you|thx|ta|cheers|sorry|have a (?:good|nice|great) [\p{L} ]{1,20}|(?:thanks|thank you)(?: [\p{L}']{1,12}){1,4})?(?:,? \p{Lu}\p{Ll}+)?$/iu;
/** What people put behind an answer. */
const farewell =
  /[.,;]\s+(?:(?:thanks|thank you)(?: (?:again|so much|very much|a lot|in advance|for [\p{L} ']{1,40}))?|have a (?:\p{L}+ ){0,3}(?:day|one|weekend|week|evening|afternoon)|sorry(?: about that| for (?:the|my|our|any) [\p{L} ']{1,40})?)(?:,? \p{Lu}\p{Ll}+)?[.]?$/iu;

/** "Thanks but hold it": whether a courtesy takes back what it stands beside. */
function saysMore(courteous: string): boolean {
  return speaksAgainst(courteous.replace(/\bsorry\b|\bdelay\b/giu, ""));
}
const isNo = new RegExp(`^${no}$`, "iu");
const again = /^(?:too|also|as well|likewise)$/i;

export interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** What a line answers, sentence by sentence. Undefined if a sentence says anything else. */
export function saidIn(own: OwnLine, points: Points): Said[] | undefined {
  const { line } = own;
  if (line.length > longestLine || line.includes("?")) return undefined;
  const said: Said[] = [];
  for (const sentence of bared(line).split(/(?<=\p{L}{2}|\p{L} \d{1,3})(?<!\bn[or])[.;]\s+/iu)) {
    const answers =
      idleSentence.test(sentence) && !saysMore(sentence) ? [] : answersIn(sentence, own, points);
    if (answers === undefined) return undefined;
    said.push(...answers);
  }
  return said;
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
    const isWrongSet =
      (/both|beides|beide/i.test(set) && open.length !== 2) || (others > 0 && !/question/i.test(set));
    return isWrongSet || under !== undefined ? undefined : open.map((number) => ({ number, is }));
  }
  const alone = bare.exec(words);
  if (alone !== null) {
    const [only, ...more] = open;
    const number = under ?? (more.length === 0 && others === 0 && !afterSeveral ? only : undefined);
    return number === undefined ? undefined : [{ number, is: alone.groups?.["yes"] !== undefined }];
  }
  const said: Said[] = [];
  let rest = words.replace(/^(?:i|we) (?=confirm)|^(?:yes|yep|yeah)[,! -]{1,3}(?=.*\byes\b)/i, "");
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

/** "Hi there, 3 yes", "Hiya, it's a yes to number 3". */
const salutation =
  /^(?:(?:hi|hello|hey|hiya|dear|good morning|morning|good afternoon|afternoon|good evening|evening|hallo|guten tag|servus|bonjour|hola|buenas|gents|folks)(?: there| all| team| both|\s\p{Lu}\p{Ll}+)?[,!:.]\s*)?(?:(?:it is|it's|that's|that is|so it's) (?:a )?(?=yes|no)|(?:the|my|our) answer (?=to (?:question |point |number )?\d))?/iu;

/** A line without its bullet, marks and courtesies. */
function bared(line: string): string {
  const inner = line
    .normalize("NFKC")
    .replace(/[\uFE0F\u20E3]/g, "")
    .replace(/[’`´]/g, "'")
    .replace(/["“”*_!|]+/g, " ")
    .replace(
      new RegExp(`(?<=(?:point|question|number|item) )(${spelt.join("|")})(?![\\p{L}])`, "giu"),
      (word) => String(spelt.indexOf(word.toLowerCase()) + 1),
    )
    .replace(/\s+/g, " ")
    .trim()
    .replace(/^[-*•·–]\s+/u, "")
    // Initials before an answer between the lines: "[HQ] yes".
    .replace(/^\[\p{Lu}{2,4}\]:?\s+/u, "");
  const around = `(?:[\\s,.;:]*\\b${courtesy}\\b)+[\\s,.;:]*`;
  return inner
    .replace(new RegExp(`^${around}(?=\\S)`, "iu"), "")
    .replace(salutation, "")
    .replace(farewell, (tail) => (saysMore(tail) ? tail : ""))
    .replace(new RegExp(`${around}$`, "iu"), "")
    .replace(/[\s.,;]+$/u, "")
    .trim();
}

function numbersIn(list: string): number[] {
  const found = [...list.matchAll(/(\d{1,4})(?:\s?(?:-|–|to|thru|through)\s?\D{0,12}?(\d{1,4}))?/giu)];
  return found.flatMap(([, from = "", to = from]) => {
    const count = Number(to) - Number(from) + 1;
    // A range that runs backwards, or too far, is none.
    return count < 1 || count > 50 ? [-1] : Array.from({ length: count }, (_, i) => Number(from) + i);
  });
}
