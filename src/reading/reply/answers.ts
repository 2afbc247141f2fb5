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
  /** Numbers of questions: it is meant so. */
  readonly yes: ReadonlySet<number>;
  /** It is not: a corrected sheet comes. */
  readonly no: ReadonlySet<number>;
  /** The lines that say so, trimmed. */
  readonly lines: ReadonlySet<string>;
}

/** What a reply is read against. */
export interface Asked {
  /** Numbers of the questions that are open and were asked in the answer that it replies to. */
  readonly open: readonly number[];
  /** How many other points that answer has that the sender must do something about. */
  readonly others: number;
  /** The text of that answer, which it may quote, and its subject. */
  readonly answer: string;
  readonly subject: string;
  /** Whether a line stood in earlier letters of the sender. */
  readonly isFurniture: (line: string) => boolean;
  /** What the sender is called. */
  readonly names: readonly string[];
  /** Sheets came with the reply, so that some of its words are about them. */
  readonly bringsSheets: boolean;
}

const noAnswers: Answers = { yes: new Set(), no: new Set(), lines: new Set() };

/** In characters; our own answers about an order of 60 sheets are shorter. */
const longestText = 30_000;
/** Words that make what stands beside them less than a YES. */
const binds =
  /\b(?:if|when|once|unless|until|till|provided|assuming|as long as|subject to|depends?|depending|but|only|except|wait|hold|maybe|perhaps|probably|think|guess|hope|not sure|unsure|kidding|joke|scratch|wenn|falls|aber|nur|si|mais|sauf|pero|cuando)\b/i;
/** Longer lines are sentences. */
const longestLine = 160;

/**
 * Reads lines such as "3 YES", "3, 4: ok", "4 no, new sheet attached" or "all yes" among those that the sender of a
 * reply wrote, above, below or between the lines that it quotes. What is said twice and differently, beside words
 * that may be a condition, or of a number that is not asked is no answer.
 */
function readAnswers(text: string, asked: Asked): Answers & { readonly unread: readonly string[] } {
  const plain = text.replace(/\p{Cf}/gu, "");
  const { quoted } = takeApart(plain, asked.subject);
  const yes = new Set<number>();
  const no = new Set<number>();
  const lines = new Set<string>();
  const unread: string[] = [];
  let [signed, isBound] = [false, remarksIn(quoted, `${asked.subject}\n${asked.answer}`).length > 0];
  for (const own of ownLines(plain, asked.subject)) {
    const { line } = own;
    const said = saidIn(own, asked);
    if (said?.every(({ number }) => asked.open.includes(number)) === true) {
      for (const { number, is } of said) (is ? yes : no).add(number);
      lines.add(line);
    } else if (!isIdle(line, signed, asked)) {
      unread.push(line);
      isBound ||= otherPoint(line) === undefined;
    }
    signed ||= line === "--" || isGoodBye(line) || isNamed(line, asked.names);
  }
  return isBound || !yes.isDisjointFrom(no) ? { ...noAnswers, unread } : { yes, no, lines, unread };
}

/** Whether a line neither answers nor binds what stands beside it. `signed`: it stands below a name or a good-bye. */
function isIdle(line: string, signed: boolean, { names, isFurniture, bringsSheets }: Asked): boolean {
  const isLegend = /\p{Lu}{3}/u.test(line) && !/\p{Ll}/u.test(line);
  if (isLegend) return false;
  if (isFurniture(line) || isGoodBye(line) || isNamed(line, names)) return true;
  if (binds.test(line) && !isBoilerplate(line)) return false;
  if (bringsSheets || isBoilerplate(line) || (signed && isOfSignature(line))) return true;
  return !/[\p{L}\p{N}]|\p{Extended_Pictographic}/u.test(withoutCourtesies(line));
}

/** Whether a line is made of a sender's names and of what people write around them. */
function isNamed(line: string, names: readonly string[]): boolean {
  const known = new Set([...polite, ...names.flatMap(tokensOf).filter((name) => !speaksAgainst(name))]);
  const tokens = tokensOf(line);
  return tokens.length > 0 && tokens.every((token) => known.has(token)) && !hasSigns(line);
}

const polite = tokensOf(
  `hi hello dear good morning afternoon evening day team everyone all there burin order orders desk thanks thank you so
  very much many in advance for your help best kind kindest warm regards greetings wishes sincerely yours truly
  faithfully cheers have a nice sent from my iphone ipad android phone mobile ta hallo guten tag danke und gruß grüße
  viele bonjour merci cordialement hola gracias saludo saludos un buenos días`,
);

interface OwnLine {
  readonly line: string;
  /** The number of the point that is quoted right above it. */
  readonly under?: number;
  /** More than one point is quoted there, so that a bare answer is of nobody knows which. */
  readonly afterSeveral: boolean;
}

/** The lines that the sender wrote: above an unmarked quotation, or anywhere among marked lines. */
function* ownLines(text: string, subject: string): Generator<OwnLine> {
  const lines = text.split(/\r\n|\r|\n/);
  /** The point that the last quoted line is of, and all that were quoted since the sender wrote last. */
  let point: number | undefined;
  let points = new Set<number | undefined>();
  for (let at = 0; at < lines.length; at++) {
    const line = lines[at] ?? "";
    const lead = isMarked(line) ? undefined : leadAt(lines, at, subject);
    if (lead?.sure === true) {
      at += Math.max(lead.lines, 1) - 1;
      const next = lines.slice(at + 1).find((one) => one.trim() !== "");
      // Behind a lead comes what is quoted; without marks nobody can tell where that ends.
      if (!isMarked(next ?? "")) return;
    } else if (isMarked(line)) {
      point = pointIn(line.replace(/^\s*>\s?/, ""), point);
      points.add(point);
    } else if (line.trim() !== "") {
      const [under, ...more] = points;
      yield {
        line: line.trim(),
        ...(point === undefined || under === undefined || more.length > 0 ? {} : { under: point }),
        afterSeveral: more.length > 0 || (points.size > 0 && point === undefined),
      };
      points = new Set();
      point = undefined;
    }
  }
}

/** The number of the point that a quoted line is of, where the one before it was of point `before`. */
function pointIn(line: string, before: number | undefined): number | undefined {
  const [, number] = /^\s{0,4}(\d{1,4})\.\s/.exec(line) ?? [];
  if (number !== undefined) return Number(number);
  return line.trim() === "" || /^\s{4}/.test(line) ? before : undefined;
}

const spelt = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

const label =
  "(?:(?:referring to |regarding |re |concerning |about |for |to |on )?(?:your |the )?(?:both questions |questions? |items? |points? |pts?\\. ?|numbers? |punkte? |frage |pregunta |no\\. ?|nr\\.? ?|n° ?|#|q)?)";
const one = `${label}[([]?\\d{1,4}[)\\]]?`;
const list = `${one}(?: ?(?:,|;|&|\\+|/|and|und|et|y|-|–|to|thru|through|(?<=\\d) (?=\\d)) ?${one})*`;
const good =
  "(?:all |exactly )?(?:right|correct|ok|okay|o\\.k\\.|fine|good|true|meant(?: exactly)? so|meant|intended|on purpose|confirmed|approved|so|as (?:typed|is|intended|meant|it should be|we want it))";
const meant = `(?:as (?:typed|is|it is|they are|it stands|written|shown|it was|before|submitted|ordered)|like that|as meant|definitely|absolutely|of course|exactly|both as typed|(?:please )?go ahead|yes|es así|es correcto|c'est (?:bien )?(?:voulu|correct|ça)|das (?:ist|stimmt)(?: so)?(?: richtig| gewollt)?|stimmt|so gewollt|${good}|(?:that|it|this)(?: is|'s) (?:${good}|what we want))`;
const yes = `(?:y|yes+|yse|eys|yeah|yep|yup|ja|oui|s[ií]|ok|okay|o\\.k\\.|correcto?|richtig|(?:das )?stimmt(?: so)?|passt(?: so)?|exact|right|confirmed|confirm|approved|true|fine|good|all (?:correct|right|good|fine)|(?:that|it|this)(?: is|'s) ${good}|👍|✓|✔|✅|meant so|(?:is|are|'s) ${good}|stays?(?: as (?:it )?is)?|(?:leave|keep) (?:it )?as (?:it )?is|as is|as typed)(?:(?:[,.: -]{1,3}|(?= ?👍) ?)(?:${meant}|👍))*`;
const sheet =
  "(?:the )?(?:a )?(?:new|corrected|revised|right|fixed|updated|neues) (?:sheet|one|file|pdf|list|blatt)(?: is)?(?: (?:attached|enclosed|follows|to follow|coming|comes|below|will follow|will come|on its way|sent|tomorrow|kommt|folgt))*";
const no = `(?:no|nope|nein|non|wrong|incorrect|(?:stimmt )?nicht|not (?:right|correct|ok|meant so)|(?:is|are) (?:wrong|incorrect|not (?:right|correct|meant so)))(?:[,.:; -]{1,3}(?:${sheet}|sorry|my mistake|typo|a typo|(?:that|it)(?: is|'s) (?:a mistake|wrong|a typo)|(?:we|i)(?: will|'ll) send (?:you )?(?:a |the )?(?:new|corrected|right) (?:sheet|one)))*`;
const courtesy = "(?:please|pls|thanks|thank you|thx|sir|madam|hi|hello|cheers|many thanks|thanks again)";

const group = new RegExp(
  `^(?:(?<list>${list}) ?(?:[.):=,–—-]|is|are|->)* ?(?<word>${yes}|${no}|(?:too|also|as well|likewise))|leave (?<left>${list}) as (?:it is|is|they are)|(?<before>${yes}|${no}) ?(?:to|for|on|pour|zu|:|,|-|=)? ?(?<after>${list}))(?=$|[\\s,;.])`,
  "iu",
);
const sets =
  "(?:all|both|everything|beides|beide|alle|all of them|both of them|(?:all|both)(?: the)? questions|all (?:\\d+|points))";
const everything = new RegExp(
  `^(?:(?<before>${yes}|${no}) (?:to|for|on) (?<set>${sets})|(?<those>${sets})[:,]? (?:are |is )?(?<word>${yes}|${good}|${no}))$`,
  "iu",
);
/** What leads answers in, and says nothing by itself. */
const leadIn =
  /^(?:(?:hi|hello|dear \w+)[, ]+)?(?:(?:my |our |see )?(?:answers?|replies|reply|comments)(?: are| is)? (?:below|inline|in ?line|above|between)|\W*(?:point|question|no\.?|number|item)\W+(?:answer|reply|yes\/no)\W*)$/i;
const bare = new RegExp(`^(?:(?<yes>${yes})|${no})$`, "iu");

/**
 * What a reply answers, and what else it says that a person has to read. What else it says may be a condition, so
 * that it answers nothing, unless it is only of another point. `besides` gives what is said beside some lines.
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
  // A reply of words alone says something, even if it reads like a courtesy.
  const isUntold = all.length === 0 && first !== undefined && !asked.bringsSheets;
  return {
    answers: noAnswers,
    statements: isUntold ? [{ kind: "said", where: "text", words: first.slice(0, longestLine) }] : all,
  };
}

/** Whether a statement is only of a point that is not among some answers: "4: make it SALON" beside "3 YES". */
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

const isNo = new RegExp(`^${no}$`, "iu");
const again = /^(?:too|also|as well|likewise)$/i;

interface Said {
  readonly number: number;
  readonly is: boolean;
}

/** What a line answers; undefined where it says anything else. */
function saidIn({ line, under, afterSeveral }: OwnLine, { open, others }: Asked): Said[] | undefined {
  if (line.length > longestLine || line.includes("?")) return undefined;
  const words = bared(line);
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
  let rest = words.replace(/^(?:i|we) (?=confirm)/i, "");
  while (rest !== "") {
    const found = group.exec(rest);
    if (found?.groups === undefined) return undefined;
    const { list: first, word, left, before, after } = found.groups;
    const answer = left === undefined ? (word ?? before ?? "") : "yes";
    const is = again.test(answer) ? said.at(-1)?.is : !isNo.test(answer);
    if (is === undefined) return undefined;
    const numbers = numbersIn(first ?? left ?? after ?? "");
    // An answer that stands under another point than it names is for nobody to guess.
    if (under !== undefined && !numbers.every((number) => number === under)) return undefined;
    said.push(...numbers.map((number) => ({ number, is })));
    rest = rest.slice(found[0].length).replace(/^[\s,;.]+(?:and |und |et |y )?/iu, "");
  }
  return said;
}

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
    .replace(/[.,;]\s+(?:thanks|thank you|have a|sorry)[\p{L} ,']*[.]?$/iu, "")
    .replace(new RegExp(`${around}$`, "iu"), "")
    .replace(/[\s.,;]+$/u, "")
    .trim();
}

function numbersIn(list: string): number[] {
  const found = [...list.matchAll(/(\d{1,4})(?:\s?(?:-|–|to|thru|through)\s?\D{0,12}?(\d{1,4}))?/giu)];
  return found.flatMap(([, from = "", to = from]) => {
    const count = Number(to) - Number(from) + 1;
    // A range that runs backwards or far is none.
    return count < 1 || count > 50 ? [-1] : Array.from({ length: count }, (_, i) => Number(from) + i);
  });
}
