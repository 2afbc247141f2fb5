import type { Statement } from "../../trade/statement.ts";
import { withoutCourtesies } from "./courtesy.ts";
import { speaksAgainst } from "./doubt.ts";
import { isBoilerplate, isGoodBye, isOfSignature } from "./furniture.ts";
import { isMarked, leadAt } from "./leads.ts";
import { takeApart } from "./own-text.ts";
import { remarksIn } from "./remarks.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** What a reply answers of the questions that it was asked. */
export interface Answers {
  /** Numbers of the questions that it answers with yes: it is meant so. */
  readonly yes: ReadonlySet<number>;
  /** Numbers that it answers with no: a corrected sheet comes. */
  readonly no: ReadonlySet<number>;
  /** The lines that say so, and the lines beside them that say nothing. Trimmed. */
  readonly lines: ReadonlySet<string>;
}

/** What a reply is read against. */
export interface Asked {
  /** Numbers of the open questions that the answer it replies to has asked. */
  readonly open: readonly number[];
  /** How many other points of that answer the sender must do something about. */
  readonly others: number;
  /** The text of that answer, which may be quoted, and its subject. */
  readonly answer: string;
  readonly subject: string;
  /** Whether a line stood in earlier letters of the sender. */
  readonly isFurniture: (line: string) => boolean;
  /** What the sender is called. */
  readonly names: readonly string[];
  /** Sheets came with the reply, and some of its words are about them. */
  readonly bringsSheets: boolean;
}

const noAnswers: Answers = { yes: new Set(), no: new Set(), lines: new Set() };

/** In characters. Our own answer about an order of 60 sheets is shorter. */
const longestText = 30_000;
/** Words that make a YES beside them less than a YES. */
const binds =
  /\b(?:if|when|once|unless|until|till|provided|assuming|as long as|subject to|depends?|depending|but|only|except|wait|hold|maybe|perhaps|probably|think|guess|hope|not sure|unsure|kidding|joke|scratch|wenn|falls|aber|nur|si|mais|sauf|pero|cuando)\b/i;
/** Longer lines are sentences. */
const longestLine = 160;

/**
 * Reads lines such as "3 YES", "3, 4: yes", "4 no, new sheet attached" or "all yes". They may stand above, below or
 * between the lines that the reply quotes. It is no answer if a number is answered twice and differently, if the
 * words beside it may be a condition, or if the number was not asked.
 */
function readAnswers(text: string, asked: Asked): Answers & { readonly unread: readonly string[] } {
  const plain = text.replace(/\p{Cf}/gu, "");
  const { quoted } = takeApart(plain, asked.subject);
  const yes = new Set<number>();
  const no = new Set<number>();
  const lines = new Set<string>();
  const unread: string[] = [];
  const idle: string[] = [];
  let [signed, isBound] = [false, remarksIn(quoted, `${asked.subject}\n${asked.answer}`).length > 0];
  const all = [...ownLines(plain, asked.subject)];
  const inAnswer = new Set(tokensOf(asked.answer));
  for (const [i, own] of all.entries()) {
    const { line } = own;
    // A line below the answers is a name, unless it is a word that was asked about.
    const isLast = i > 0 && all.slice(i + 1).every((next) => isIdle(next.line, true, asked));
    const isSigned = isLast && isSomebody.test(line) && !tokensOf(line).some((token) => inAnswer.has(token));
    const said = saidIn(own, asked);
    if (said?.every(({ number }) => asked.open.includes(number)) === true) {
      for (const { number, is } of said) (is ? yes : no).add(number);
      lines.add(line);
    } else if (isSigned || isIdle(line, signed, asked)) idle.push(line);
    else {
      unread.push(line);
      isBound ||= otherPoint(line) === undefined;
    }
    signed ||= line === "--" || isSigned || isGoodBye(line) || isNamed(line, asked.names);
  }
  const isNone = isBound || lines.size === 0 || !yes.isDisjointFrom(no);
  return isNone ? { ...noAnswers, unread } : { yes, no, lines: new Set([...lines, ...idle]), unread };
}

/** "Bill", "C. Vireton", "HB", "/LZ". */
const isSomebody =
  /^[-–—/~]?\s?(?:(?:\p{Lu}\p{Ll}+|\p{Lu}\.-?){1,2}(?: \p{Lu}[\p{L}'’.-]*){0,2}|\p{Lu}{1,3})[.,]?$/u;

/**
 * Whether a line neither answers anything nor binds an answer beside it. `signed`: it stands below a name or a
 * good-bye.
 */
function isIdle(given: string, signed: boolean, { names, isFurniture, bringsSheets }: Asked): boolean {
  const line = given.replace(/[*_|]+/g, " ").trim();
  const isLegend = /\p{Lu}{3}/u.test(line) && !/\p{Ll}/u.test(line);
  if (isLegend) return false;
  if (isFurniture(line) || isGoodBye(line) || isNamed(line, names)) return true;
  if (binds.test(line) && !isBoilerplate(line)) return false;
  if (bringsSheets || isBoilerplate(line) || (signed && isOfSignature(line))) return true;
  return !/[\p{L}\p{N}]|\p{Extended_Pictographic}/u.test(withoutCourtesies(line));
}

/** Whether a line consists of the sender's names and of words that people write around them. */
function isNamed(line: string, names: readonly string[]): boolean {
  const known = new Set([...polite, ...names.flatMap(tokensOf).filter((name) => !speaksAgainst(name))]);
  const tokens = tokensOf(line);
  return tokens.length > 0 && tokens.every((token) => known.has(token)) && !hasSigns(line);
}

const polite = tokensOf(
  `hi hello dear good morning afternoon evening day team everyone all there burin order orders desk thanks thank you so
  very much many in advance for your help best kind kindest warm regards greetings wishes sincerely yours truly
  faithfully cheers have a nice sent from my iphone ipad android phone mobile ta hallo guten tag danke und gruß grüße
  viele bonjour merci cordialement hola gracias saludo saludos un buenos días servus lg mfg gents folks bien à vous`,
);

interface OwnLine {
  readonly line: string;
  /** The number of the point that is quoted right above it. */
  readonly under?: number;
  /** More than one point is quoted there, so that nobody knows which one a bare answer is for. */
  readonly afterSeveral: boolean;
}

/** The lines that the sender wrote: all above an unmarked quotation, or those among marked lines. */
function* ownLines(text: string, subject: string): Generator<OwnLine> {
  const lines = text.split(/\r\n|\r|\n/);
  /** The point of the last quoted line, and all points quoted since the sender's last line. */
  let point: number | undefined;
  let points = new Set<number>();
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] ?? "";
    const lead = isMarked(line) ? undefined : leadAt(lines, at, subject);
    if (lead?.sure === true) {
      at += Math.max(lead.lines, 1) - 1;
      const next = lines.slice(at + 1).find((one) => one.trim() !== "");
      // A quotation follows a lead. Without marks nobody can tell where it ends.
      if (!isMarked(next ?? "")) return;
    } else if (isMarked(line)) {
      point = pointIn(line.replace(/^\s*>\s?/, ""), point);
      if (point !== undefined) points.add(point);
    } else if (line.trim() !== "") {
      const isOne = points.size === 1;
      yield {
        line: line.trim(),
        ...(point === undefined || !isOne ? {} : { under: point }),
        afterSeveral: points.size > 1,
      };
      points = new Set();
      point = undefined;
    }
  }
}

/** The number of the point that a quoted line belongs to. The line before it belonged to point `before`. */
function pointIn(line: string, before: number | undefined): number | undefined {
  const [, number] = /^\s{0,4}(\d{1,4})\.\s/.exec(line) ?? [];
  if (number !== undefined) return Number(number);
  return line.trim() === "" || /^\s{4}/.test(line) ? before : undefined;
}

const spelt = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

const label =
  "(?:(?:referring to |regarding |re |concerning |about |for |to |on |zu |à |pour )?(?:your |the )?(?:both questions |both |questions? |items? |points? |pts?\\. ?|numbers? |punkte? |frage |pregunta |no\\. ?|nr\\.? ?|n° ?|#|q)?)";
const one = `${label}[([]?\\d{1,4}[)\\]]?`;
const list = `${one}(?: ?(?:,|;|&|\\+|/|and|und|et|y|-|–|to|thru|through|(?<=\\d) (?=\\d)) ?${one})*`;
const good =
  "(?:all |both |exactly |a )?(?:yes|right|correct|ok|okay|o\\.k\\.|fine|good|true|meant(?: exactly)?(?: so| as (?:it|they) stands?)?|intended|intentional|on purpose|confirmed|approved|so|as (?:typed|is|intended|meant|it should be|we want it))";
const meant = `(?:sir|boss|too|as well|so gemeint|as (?:typed|is|it is|they are|it stands|they stand|written|shown|it was|before|submitted|ordered)|like that|as meant|definitely|absolutely|of course|exactly|both as typed|(?:please )?go ahead|yes|(?:leave|keep) (?:it|them) (?:as|like) (?:it|they) (?:is|are)|es así(?: a propósito)?|es correcto|dejarlo (?:tal cual|así)|c'est (?:bien )?(?:voulu|correct|ça)(?: ainsi)?|(?:à laisser )?tel quel|(?:das )?ist (?:so )?(?:absicht|gewollt|richtig)|das (?:ist|stimmt)(?: so)?(?: richtig| gewollt)?|stimmt|so gewollt|${good}|(?:that|it|this)(?: is|'s) (?:${good}|what we want))`;
const yes = `(?:y|yes+|yse|eys|yeah|yep|yup|ja|oui|s[ií]|(?:ok|okay)(?= as )|correcto?|richtig|(?:das )?stimmt(?: so)?|passt(?: so)?|exact|right|confirmed|confirm|approved|true|fine|good|all (?:yes|correct|right|good|fine)|(?:that|it|this)(?: is|'s) ${good}|👍|✓|✔|✅|meant so|(?:is|are|'s) ${good}|stays?(?: as (?:it )?is)?|(?:leave|keep) (?:it )?as (?:it )?is|as is|as typed|meant as (?:it|they) stands?)(?:(?:[,.: -]{1,3}(?:and )?|(?= ?👍) ?)(?:${meant}|👍))*`;
const sheet =
  "(?:the )?(?:a )?(?:new|corrected|revised|right|fixed|updated|neues) (?:sheet|one|file|pdf|list|blatt)(?: is)?(?: (?:attached|enclosed|follows|to follow|coming|comes|below|will follow|will come|on its way|sent|tomorrow|kommt|folgt))*";
const no = `(?:no|nope|nein|non|wrong|incorrect|(?:stimmt )?nicht|not (?:right|correct|ok|intended|meant(?: so| as (?:it|they) stands?)?)|(?:is|are) (?:wrong|incorrect|not (?:right|correct|intended|meant(?: so| as (?:it|they) stands?)?)))(?:[,.:; -]{1,3}(?:${sheet}|sorry|my mistake|typo|a typo|(?:that|it)(?: is|'s) (?:a mistake|wrong|a typo)|(?:we|i)(?: will|'ll) send (?:you )?(?:a |the )?(?:new|corrected|right) (?:sheet|one)))*`;
const courtesy =
  "(?:please|pls|thanks|thank you|thx|sir|madam|hi|hello|cheers|many thanks|thanks again|gracias|merci|danke)";

const group = new RegExp(
  `^(?:(?<list>${list}) ?(?:[.):=,–—-]|is|are|->)* ?(?<word>${yes}|${no}|(?:too|also|as well|likewise))|leave (?<left>${list}) as (?:it is|is|they are)|(?<before>${yes}|${no}) ?(?:to|for|on|pour|zu|:|,|-|=)? ?(?<after>${list})(?: (?:is|are) (?<also>${yes}|${no}))?)(?=$|[\\s,;.])`,
  "iu",
);
const sets =
  "(?:all|both|everything|beides|beide|alle|all of them|both of them|(?:all|both)(?: the)? questions|all (?:\\d+|points))";
const everything = new RegExp(
  `^(?:(?<before>${yes}|${no}) (?:to|for|on) (?<set>${sets})|(?<those>${sets})[:,]? (?:are |is )?(?<word>${yes}|${good}|${no}))$`,
  "iu",
);
/** Words that introduce answers and say nothing themselves. */
const leadIn =
  /^(?:see below|(?:please )?(?:see )?(?:my |our |the )?(?:answers?|replies|reply|comments)(?: are| is)? (?:below|inline|in ?line|above|between(?: the lines)?|in your text|in the text)|\W*(?:point|question|no\.?|number|item)\W+(?:answer|reply|yes\/no)\W*)$/i;
const bare = new RegExp(`^(?:(?<yes>${yes})|${no})$`, "iu");

/**
 * What a reply answers, and what else it says that a person has to read. Other words may be a condition, so then it
 * answers nothing, unless they are only about another point. `besides` gives what is said beside some lines.
 */
export function answersBeside(
  text: string,
  asked: Asked,
  besides: (understood: ReadonlySet<string>) => readonly Statement[],
): { readonly answers: Answers; readonly statements: readonly Statement[] } {
  if (asked.open.length === 0 || text.length > longestText)
    return { answers: noAnswers, statements: besides(new Set()) };
  const { unread, ...answers } = readAnswers(text, asked);
  const statements = besides(answers.lines);
  if (answers.lines.size > 0 && statements.every((one) => isOfOtherPoint(one, answers)))
    return { answers, statements };
  const all = besides(new Set());
  const [first] = unread;
  // A reply of words alone says something, even if it looks like a courtesy.
  const isUntold = all.length === 0 && first !== undefined && !asked.bringsSheets;
  return {
    answers: noAnswers,
    statements: isUntold ? [{ kind: "said", where: "text", words: first.slice(0, longestLine) }] : all,
  };
}

/** Whether a statement is only about a point that is not answered: "4: make it SALON" beside "3 YES". */
function isOfOtherPoint(statement: Statement, { yes, no, lines }: Answers): boolean {
  if (lines.size === 0) return true;
  const number =
    statement.kind === "said" && statement.where === "text" ? otherPoint(statement.words) : undefined;
  return number !== undefined && !yes.has(number) && !no.has(number);
}

/** The number that a line begins with. */
function otherPoint(line: string): number | undefined {
  const [, number] = /^(?:[#q(]|no\. ?|question |point |item )?(\d{1,4})(?![\p{L}\p{N}])/iu.exec(line) ?? [];
  return number === undefined ? undefined : Number(number);
}

/** A sentence that stands beside an answer in one line and says nothing. */
const idleSentence =
  /^(?:(?:good )?(?:morning|afternoon|evening|day)|hi|hello|thanks?|thank you|thx|ta|cheers|sorry|have a (?:good|nice|great) [\p{L} ]{1,20}|(?:thanks|thank you)(?: [\p{L}']{1,12}){1,4})?(?:,? \p{Lu}\p{Ll}+)?$/iu;
const isNo = new RegExp(`^${no}$`, "iu");
const again = /^(?:too|also|as well|likewise)$/i;

interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** What a line answers, sentence by sentence. Undefined if a sentence says anything else. */
function saidIn(own: OwnLine, asked: Asked): Said[] | undefined {
  const { line } = own;
  if (line.length > longestLine || line.includes("?")) return undefined;
  const said: Said[] = [];
  for (const sentence of bared(line).split(/(?<=\p{L}{2}|\p{L} \d{1,3})(?<!\bn[or])[.;]\s+/iu)) {
    const answers = idleSentence.test(sentence) ? [] : answersIn(sentence, own, asked);
    if (answers === undefined) return undefined;
    said.push(...answers);
  }
  return said;
}

function answersIn(
  words: string,
  { under, afterSeveral }: OwnLine,
  { open, others }: Asked,
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
  /^(?:(?:hi|hello|hey|hiya|dear|good morning|morning|good afternoon|afternoon|good evening|evening|hallo|guten tag|servus|bonjour|hola|buenas|gents|folks)(?: there| all| team| both|\s\p{Lu}\p{Ll}+)?[,!:.]\s*)?(?:(?:it is|it's|that's|that is|so it's) (?:a )?(?=yes|no))?/iu;

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
    .replace(/^[-*•·–]\s+/u, "");
  const around = `(?:[\\s,.;:]*\\b${courtesy}\\b)+[\\s,.;:]*`;
  return inner
    .replace(new RegExp(`^${around}(?=\\S)`, "iu"), "")
    .replace(salutation, "")
    .replace(/[.,;]\s+(?:thanks|thank you|have a|sorry)[\p{L} ,']*[.]?$/iu, "")
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
