import { withoutCourtesies } from "./courtesy.ts";
import { namesGoods, speaksOfMaking } from "./cues.ts";
import { isDangerous } from "./danger.ts";
import { speaksAgainst } from "./doubt.ts";
import {
  isBoilerplate,
  isGoodBye,
  isOfSignature,
  isTelephone,
  mottoIn,
  withoutContacts,
} from "./furniture.ts";
import { isSomebody } from "./somebody.ts";
import { areTalks, isNearQuestion, isShortLine, type Topic } from "./talk.ts";
import { areTerms } from "./terms.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** Words that make a YES beside them less than a YES. Whoever praises a find agrees that the word is wrong. */
const binds =
  /^\W*p\.? ?s\b|\b(?:catch(?:ing)?|caught|spott(?:ed|ing)|signs? off|if|when|once|unless|until|till|provided|assuming|as long as|subject to|depends?|depending|but|only|except|wait|hold|maybe|perhaps|probably|think|guess|hope|not sure|unsure|kidding|jok(?:e|es|ing)|sarcas\w*|scratch|wenn|falls|aber|nur|si|mais|sauf|pero|cuando)\b/i;

/** Whether words may make an answer beside them less than one. */
export function bindsAnswer(words: string): boolean {
  return binds.test(words);
}

/** A number and a yes: no line of a footer. */
const answers = /(?<![\d-])\d{1,3}(?![\d-])\W{0,6}yes\b|\byes\W{0,3}(?:(?:to|on|for) )?\d{1,3}(?![\d-])/iu;

/** Courtesies beside sheets. Where none came they may take something back. */
const mends = /\b(?:corrected|wrong|to follow|revised|amended|changed|fixed|updated|as far as)\b/i;

/** What is known of a reply's sender, and of what came with it. */
export interface Replier extends Topic {
  /** Whether a line stood in earlier letters of the sender. `signed`: it stands below a name or a good-bye. */
  readonly isFurniture: (line: string, signed: boolean) => boolean;
  /** What the sender is called. */
  readonly names: readonly string[];
  /** Sheets came with the reply, and some of its words are about them. */
  readonly bringsSheets: boolean;
}

/**
 * Whether a line neither answers anything nor binds an answer beside it. `signed`: it stands below a name or a
 * good-bye.
 */
export function isIdle(
  given: string,
  signed: boolean,
  { names, isFurniture, bringsSheets, inQuestion }: Replier,
): boolean {
  // "2 yes, it is their name since 1931" is no motto.
  if (answers.test(given) && !signed) return isFurniture(given, signed);
  const line = given
    .replace(/[*_|]+/g, " ")
    // What stands for a picture, and where it leads.
    .replace(/^(?:i\. ?[AV]\.|ppa\.|p\. ?p\.|gez\.) ?(?=\p{Lu})/u, "")
    .replace(/\[cid:[^\]\s]{1,200}\](?:<[^<>\s]{1,300}>)?/gu, " ")
    .trim();
  if (signed && (areTermsOnly(line) || isTelephone(line) || isLongMotto(line, inQuestion))) return true;
  const isLegend =
    !(signed && /\d{5}$|\d{3}[-. ]\d{4}/.test(line)) && /\p{Lu}{3}/u.test(line) && !/\p{Ll}/u.test(line);
  // A firm's name in capitals has several words, and stood in earlier letters.
  if (isLegend)
    return signed && /\p{L}\P{L}+\p{L}{2}/u.test(line) && (isFurniture(line, signed) || firm.test(line));
  if (isFurniture(line, signed) || isGoodBye(line) || isSignedOff(line)) return true;
  if (isNamed(line.replace(pronouns, ""), names)) return true;
  if (beginsNamed(given, names) && !binds.test(line)) return true;
  if (binds.test(line) && !isBoilerplate(line)) return false;
  if (!bringsSheets && mends.test(line) && !isBoilerplate(line)) return false;
  if (
    (isBoilerplate(line) && (signed || !/\bsince \d/iu.test(line))) ||
    (signed && (isOfSignature(line) || isShortLine(line) || isTitled(line)))
  )
    return true;
  return !/[\p{L}\p{N}]/u.test(withoutCourtesies(line)) && !hasSigns(line);
}

/** "A town without a library is only a crossroads" below a name. No word in question is among its words. */
function isLongMotto(line: string, asked: readonly string[] = []): boolean {
  const said = mottoIn(line);
  return (
    said !== undefined &&
    tokensOf(said).length >= fewestOfMotto &&
    !/[?\d]/u.test(said) &&
    !speaksOfMaking(said) &&
    !namesGoods(said, false) &&
    !isNearQuestion(said, asked)
  );
}

/** In words. */
const fewestOfMotto = 6;

/** "Goldfinch Lighting Supply - Will Call / Counter": a trade or a firm, each word of which begins with a capital. */
function isTitled(line: string): boolean {
  const words = line.match(/\p{L}[\p{L}'’.-]*/gu) ?? [];
  return (
    words.length <= mostOfTitle &&
    !/[\d?!:"“”]/u.test(line) &&
    words.every(
      (word) =>
        /^(?:and|of|the|for|at|in|de|der|van|von)$/u.test(word) || /^\p{Lu}[\p{L}.]*\p{Ll}/u.test(word),
    ) &&
    !speaksAgainst(line) &&
    !binds.test(line)
  );
}

/** In words. */
const mostOfTitle = 8;

/** "ALDER ELECTRIC LLC". */
const firm =
  /^(?:[\p{Lu}&.'’-]+ ){1,5}(?:LLC|INC|LTD|CO|CORP|PLC|LLP|GMBH|AG|SA|SRL|BV|AS|AB|PTY LTD|PVT LTD|PROPERTIES|CONSTRUCTION|CONTRACTORS|CONTRACTING|BUILDERS|ASSOCIATES|ENTERPRISES|DISTRIBUTORS)\.?$/u;

/** "Ricky Olmedo | Lighting Controls". */
export function beginsNamed(line: string, names: readonly string[]): boolean {
  const [first = "", ...others] = line
    .trim()
    .replace(/\)$/u, "")
    .split(/\s?[|,(@]\s?|\s[-–—]\s/u);
  if (others.length === 0) return false;
  return namesSender(first, names)
    ? others.every((one) => isOfSignature(one) || isShortLine(one))
    : isSomebody(first) && others.every((one) => namesSender(one, names));
}

/** "Felicity Amberley (she/her)". */
const pronouns = /\s*[([](?:she|he|they)(?:[/ ,]+(?:her|him|his|them|they|hers|theirs)){1,2}[)\]]$/iu;

/** Whether lines are a footer: short lines in capital letters, one of which tells how to reach somebody. */
export function areFooter(lines: readonly string[]): boolean {
  const isOne = (line: string): boolean => {
    const rest = withoutContacts(line).replace(/[\d&|:;@·•]+/gu, " ");
    const isShort = tokensOf(rest).length < 8 && /^\P{L}*(?:\p{Lu}|$)/u.test(rest);
    return isTelephone(line) || isGoodBye(line) || (isShort && !isDangerous(rest));
  };
  return lines.some((line) => isTelephone(line) || /\S@\S|\bwww\.|https?:/u.test(line)) && lines.every(isOne);
}

/** Whether a line is the sender's name. */
export function namesSender(line: string, names: readonly string[]): boolean {
  const known = new Set(tokensOfNames(names));
  const name = line.replace(pronouns, "");
  return isNamed(name, names) && tokensOfNames([name]).some((token) => known.has(token));
}

/** "Regards, Ros". */
export function isSignedOff(line: string): boolean {
  const [, bye = "", who = ""] = /^([^,]+), (.+)$/u.exec(line) ?? [];
  return isGoodBye(bye) && isSomebody(who);
}

export function sentencesOf(line: string): string[] {
  return line.split(/(?<=[.!;])\s+/u);
}

/** Whether a line of a footer consists of terms, and of what else stands in footers. */
function areTermsOnly(line: string): boolean {
  // "Goldfinch Lighting - celebrating 40 years!"
  const sentences = sentencesOf(line).flatMap((one) =>
    areTerms(one) ? [one] : one.split(/\s[–-]\s|\s{3,}/u),
  );
  return (
    sentences.some((one) => areTerms(withoutContacts(one))) &&
    sentences.every(
      (one) =>
        areTerms(withoutContacts(one)) || (!binds.test(one) && (isBoilerplate(one) || isOfSignature(one))),
    )
  );
}

/** Whether a sentence in a line that answers something says nothing itself. */
export function saysNothing(sentence: string, asked: Replier): boolean {
  const greeted = sentence.replace(
    /^(?:hello|hi|hey|good (?:morning|afternoon|day))(?: all| there)?[,!] +/iu,
    "",
  );
  return (
    isIdle(sentence, false, { ...asked, bringsSheets: false }) ||
    areTalks(sentence, asked) ||
    isInitials(sentence.replace(/[.!]$/u, ""), asked.names) ||
    (greeted !== sentence && saysNothing(greeted, asked))
  );
}

/** "DW" or "dw" below or behind an answer by Dana Whitlock. "Ok" is not Olive Kern's. */
function isInitials(word: string, names: readonly string[]): boolean {
  return names
    .map(initialsOf)
    .some((one) => one === word || (one.toLowerCase() === word && word.length > 1 && !isDangerous(word)));
}

/** The first letters of a name. */
export function initialsOf(name: string): string {
  return name
    .split(/\s+/u)
    .map(([first = ""]) => first.toUpperCase())
    .join("");
}

/** Words of names. "Siobhán" is Siobhan. */
function tokensOfNames(names: readonly string[]): string[] {
  return names.flatMap((name) => tokensOf(name.normalize("NFD").replace(/\p{M}/gu, "")));
}

/** Whether a line consists of the sender's names and of words that people write around them. */
function isNamed(line: string, names: readonly string[]): boolean {
  const known = new Set([...polite, ...tokensOfNames(names).filter((name) => !speaksAgainst(name))]);
  const tokens = tokensOfNames([line]);
  const isNick = isNickname(line.replace(/[.,!]$/u, ""), names);
  return isNick || (tokens.length > 0 && tokens.every((token) => known.has(token)) && !hasSigns(line));
}

/** "Jo" is Joanne. */
function isNickname(word: string, names: readonly string[]): boolean {
  const first = names.flatMap((name) => tokensOfNames([name]).slice(0, 1));
  return (
    /^\p{Lu}\p{Ll}{1,5}$/u.test(word) &&
    first.some((name) => name.startsWith(word.toLowerCase())) &&
    !isDangerous(word)
  );
}

const polite = tokensOfNames([
  `hi hello dear sir sirs madam good morning afternoon evening day team everyone all there burin order orders desk thanks thank you so
  very much many in advance for your help best kind kindest warm regards greetings wishes sincerely yours truly
  faithfully cheers have a nice sent from my iphone ipad android phone mobile ta hallo guten tag morgen moin danke und
  gruß grüße viele bonjour merci cordialement hola gracias saludo saludos un buenos días servus lg mfg gents folks bien
  à vous hei hej med vennlig hilsen mvh hälsning vänlig vänliga hälsningar buongiorno buonasera cordiali distinti saluti
  grazie met vriendelijke groet goedemorgen goedemiddag goedendag br kr rgds tks thx tnx bom dia boa tarde pozdrawiam sehr geehrte
  geehrter geehrten damen herren madame monsieur mesdames messieurs bonne journée soirée estimados señores venlig bien dipl ing prof msc bsc beng meng gruss grüsse`,
]);
