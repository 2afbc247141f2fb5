import distance from "damerau-levenshtein";
import { isDangerous, tellsOfJob } from "./danger.ts";
import { harmless } from "./harmless.ts";
import { isSomebody } from "./somebody.ts";
import { plain } from "./tokens.ts";
import { tokensOf } from "./word-bag.ts";

/** What a reply's words are held against. */
export interface Topic {
  /** Numbers of the open questions. */
  readonly open: readonly number[];
  /** The words that they ask about. */
  readonly inQuestion?: readonly string[];
}

/** Of whom or what people talk: themselves, their reader, the weather, the season, their mood. */
const anchor =
  /^(?:been|had|got|took|forgot|was|spent|went)\b|(?<![\p{L}\p{N}])(?:i|im|ive|we|weve|my|our|me|us|mine|ours|myself|ourselves|y['’]?all|thank(?:s|ful)?|sorry|apolog\p{L}+|happy|merry|good|great|grand|nice|lovely|wonderful|fantastic|excellent|brilliant|super|amazing|awesome|fair|fine|sweet|kind(?:ly|ness)?|cheers|congrat\p{L}*|luck\p{L}*|bless\p{L}*|hop(?:e|ing) (?:you|your|this|all|everyone|the weather|to see)|enjoy\p{L}*|appreciat\p{L}*|grateful|pleas(?:ed|ure)|glad|delighted|proud|excited|welcome|greetings|regards|wishes|wishing|weather|snow\p{L}*|rain\p{L}*|sun(?:ny|shine)?|storm\p{L}*|wind(?:s|y)?|heat\p{L}*|cold|warm\p{L}*|hot|freezing|frost\p{L}*|fog\p{L}*|weekend|week|day|days|morning|evening|night|holidays?|vacation|christmas|easter|thanksgiving|summer|winter|spring|autumn|coffee|lunch|dinner|breakfast|beer|tea|traffic|meetings?|busy|crazy|hectic|mad|swamped|slammed|tired|kids?|wife|husband|dog|cat|phone|messages?|lol|haha\p{L}*|phew|whew|wow|gosh|homeowners|people|folks|life|ladders?|roofs?|trucks?|train|bus|plane|airport|harbou?r|lake|boat|mud|site|job ?site|school|hospital|dentist|doctor)(?![\p{L}\p{N}])/iu;

const be =
  "(?:am|is|are|was|were|been|has|have|had|['’]s|['’]m|['’]re|['’]ve|did|does|do|got|went|came|took|left|sat|spent|ran|fell|broke|said|told)";
/** What statements begin with. What begins with any other word may be an order. */
const starter = new RegExp(
  `^(?:(?:and|so|oh|ah|well|yes|ha|aw|anyway|btw|also|just|really|honestly|finally|still|again|today|yesterday|meanwhile|sadly|luckily|fortunately|what an?|how|such|quite|very|so|all|always|as always|as ever|as usual),? )*(?:i|im|ive|we|weve|my|our|me|y['’]?all|you|your|he|she|they|it|its|that|this|these|those|there|here|the|a|an|what|how|such|had|got|been|took|spent|went|forgot|thank(?:s|ful)?|many thanks|sorry|apologies|happy|merry|good|great|grand|nice|lovely|wonderful|fantastic|excellent|brilliant|super|amazing|awesome|fair|sweet|cheers|congrat\\p{L}*|luck|lucky|bless\\p{L}*|god|hope|hoping|enjoy\\p{L}*|appreciat\\p{L}*|much appreciated|grateful|pleased|glad|delighted|proud|excited|welcome|greetings|regards|warm\\p{L}*|best|kind\\p{L}*|all|wishing|snow\\p{L}*|rain\\p{L}*|sunny|storm\\p{L}*|windy|cold|hot|freezing|foggy|busy|crazy|hectic|mad|swamped|slammed|tired|stuck|sitting|standing|driving|running|heading|flying|writing|answering|replying|out|on|at|in|off|up|down|back|from|with|after|between|lol|haha\\p{L}*|phew|whew|wow|gosh|life)(?![\\p{L}\\p{N}])`,
  "iu",
);
const hasSubject = new RegExp(`^\\p{Lu}?\\p{L}+(?: \\p{L}+)? ${be}(?![\\p{L}])`, "iu");
const isVerbal = new RegExp(
  `(?<![\\p{L}])(?:${be}|(?:i|we|you|y['’]?all) (?:(?:just|really|always|so|truly|do|all) )*\\p{L}{2,}|(?:he|she|they|it|that|this|which|who|there) \\p{L}{2,}|\\p{L}{3,}(?:ed|ing))(?![\\p{L}])`,
  "iu",
);
const names =
  /^(?:(?:Mon|Tues|Wednes|Thurs|Fri|Satur|Sun)day|January|February|March|April|May|June|July|August|September|October|November|December|Christmas|Xmas|Easter|Thanksgiving|Halloween|Hanukkah|Diwali|Ramadan|Eid|God|Lord|English|Bob|TVs?|GC|PM|AM|OK|LOL|UK|USA?|NYC|IT|HR|VP|CEO|I|A|XO)$/u;
/** What may stand before a name in talk. */
const leadsToName =
  /^(?:of|from|in|at|after|with|by|for|on|to|near|around|the|and|mr|mrs|ms|dr|my|our|your|old|little|uncle|aunt|boss|colleague|wife|husband|son|daughter|saint|st|happy|merry|over|this|last|next|every|all|a)$/iu;

/** A word without a vowel. */
const codeShape =
  /^(?!(?:mr|mrs|ms|dr|st|thx|pls|tnx|tks|lol|hmm+|pm|tv|pts?|nd|rd|th|s|t|m|d|x|b|w|ll|re|ve)$)[^aeiouyàáâäåæèéêëìíîïòóôöøùúûü'’-]+$/iu;

/** Whether a word in capitals or with one may be what is to be cut. */
export function mayBeLegend(said: string): boolean {
  const tokens = said.match(/\p{L}[\p{L}'’-]*/gu) ?? [];
  return tokens.some((token, at) => {
    if (names.test(token)) return false;
    if (/^\p{Lu}[\p{Lu}'’-]+$/u.test(token) || codeShape.test(token)) return true;
    const before = tokens[at - 1] ?? "";
    return at > 0 && /^\p{Lu}/u.test(token) && !leadsToName.test(before) && !/^\p{Lu}/u.test(before);
  });
}

/** Whether a word is nearly one that was asked about: it may say how that should be spelt. */
export function isNearQuestion(said: string, asked: readonly string[]): boolean {
  const tokens = tokensOf(said).filter(({ length }) => length > 2);
  const isNear = (token: string, word: string): boolean =>
    token === word ||
    (token[0] === word[0] &&
      !ofGrammar.has(token) &&
      distance(token, word).steps <= Math.ceil(word.length / 3));
  return asked.some((word) => tokens.some((token) => isNear(token, word)));
}

/** Words that join others, and no legend is meant by them: "for" is not FOYR. */
const ofGrammar = new Set(
  tokensOf(
    `the and for from with this that these those they them their there here then what how who which was were are has
    have had his her its our your you she say says said yes`,
  ),
);

/** Whether a line names somebody nearly as a word in question: "Mrs. Krebs", where KREBBS is asked about. */
export function namesNear(line: string, asked: readonly string[]): boolean {
  return [...line.matchAll(titled)].some(
    ([, name = ""]) => isNearQuestion(name, asked) && !asked.includes(name.toLowerCase()),
  );
}
const titled = /\b(?:Dr|Mrs?|Ms|Miss|Prof|St)\.? (\p{L}+)/giu;

/** In words. */
const mostWords = 40;

/** A clause as it is looked at: none of its words is a number that is asked, a quotation or nearly a word in question. */
function lookedAt(clause: string, { open, inQuestion = [] }: Topic): string | undefined {
  if (/["“”«»„?]/u.test(clause)) return undefined;
  if (open.some((number) => new RegExp(`(?<!\\d)${number}(?!\\d)`, "u").test(clause))) return undefined;
  if (isNearQuestion(clause, inQuestion)) return undefined;
  const words = harmless(plain(clause.replace(/\n/g, " ")));
  return tokensOf(words).length > mostWords ? undefined : words;
}

/**
 * Whether a clause beside an answer only talks. Any word may stand in it that is of no danger. It tells of its writer
 * or is friendly, and it begins as statements do.
 */
export function isTalk(clause: string, topic: Topic): boolean {
  const words = lookedAt(clause, topic);
  if (words === undefined || words.includes("the word")) return false;
  const said = words
    .replace(/[◈◆△]/gu, " ")
    .replace(/[\s.,!–—()-]+$/u, "")
    .trim();
  const rest = said.replace(/^[\s.,!–—()-]+/u, "");
  if (!/\p{L}/u.test(rest)) return /◆/u.test(words);
  if (isDangerous(rest) || tellsOfJob(rest) || mayBeLegend(rest) || ofOthers.test(rest)) return false;
  const begins = starter.test(rest) || hasSubject.test(rest) || /^\s*◆/u.test(words);
  const hasVerb = isVerbal.test(rest) || /◆/u.test(words);
  if (/◆/u.test(words) || anchor.test(rest)) return begins && (hasVerb || tokensOf(rest).length <= 4);
  return (
    begins &&
    hasVerb &&
    !/^(?:y['’]?all|you|your|in|on|at|out|off|up|down|back|from|with|after|between)(?!\p{L})/iu.test(rest)
  );
}

/** Words between two clauses. Behind those of the second kind stands what happened to the writer. */
const joints =
  /(?:^|,? )(?:(but|though|although|so|and|because|hence|since)|(when|while|as|before|after|until|till)),? /giu;
const happened =
  /^(?:i|we|my \p{L}+|our \p{L}+|it|the (?:phone|power|internet|kids?|dog|truck|storm|snow|rain|boss)) (?:(?:just|finally|only|had|also|really) )*(?:was|were|got|had|went|came|saw|left|drove|landed|woke|sat|ran|hit|stopped|started|melted|froze|heard|reached|returned|arrived|called)(?!\p{L})/iu;

/** No clause ends so. */
const isBroken = /\b(?:an?|the|my|our|your|his|her|of|to|in|at|for|with|and|or|have|had|is|was)$/iu;

/** Whether a sentence consists of clauses that only talk, as "sorry but I was away" does. */
export function areTalks(sentence: string, topic: Topic): boolean {
  if (isTalk(sentence, topic)) return true;
  if (/\d/u.test(sentence)) return false;
  const words = plain(sentence.replace(/\n/gu, " "));
  return [...words.matchAll(joints)].some(({ 0: joint, 1: joins, index }) => {
    const [before, after] = [words.slice(0, index), words.slice(index + joint.length)];
    const isLater = joins !== undefined || happened.test(after);
    return !isBroken.test(before) && isLater && isTalk(before, topic) && areTalks(after, topic);
  });
}

/** A sentence about somebody or something else may tell what a clerk must know: "the stairs came out". */
const ofOthers =
  /^(?:(?:and|so|well|oh|also|just) )*(?:the (?!weather|snow|rain|sun|heat|cold|wind|storm|power|phones?|internet|crew|guys|lads|boys)|an? |he |she |they |his |her |their |this |that |those |these |there |(?:(?:my|our) )?(?:grand)?(?:mother|father|mum|mom|dad|son|daughter|wife|husband|brother|sister) |(?:my|our) (?!best|regards|thanks|apolog\p{L}+|pleasure|crew|phone))/iu;

/** What a word is named, spelt and written like: the vocabulary of reasons. */
const naming =
  /(?<![\p{L}\p{N}])(?:(?:how|what|the way|exactly (?:how|what)|just how|just what) (?:we|they|he|she|everyone|everybody|people|i|the (\p{L}+(?: \p{L}+)?)) (?:all |always |really |do )*(?:spells?|spelt|spelled|writes?|wrote|calls?|called|names?|named|says?|said|reads?|uses?|likes?|wants?|wanted|ordered|knows?) (?:(?:it|them)(?! out)|the room|the place)?|(?:always |really |all )?(?:spells?|writes?|calls?|says?|uses?|pronounces?) (?:it|them)(?! out)(?: (?:that way|this way|so|like that|like this|just so))?|(?:inside|family|running|private) jokes?|in-jokes?|puns?|play on words|(?:Engl|Span|Dan|Swed|Finn|Pol|Scott|Turk|Ir|Brit|Jew|Yidd|Flem|Corn)ish|(?:Japan|Chin|Portugu|Vietnam|Malt)ese|(?:Ital|Norweg|Russ|Hungar|Austr|Austral|Brazil|Bulgar|Roman|Serb|Croat|Ukrain|Ind|Pers|Armen|Georg|Alban|Eston|Latv|Lithuan|Scandinav|Hawai|Bavar|Sloven)ian|French|Latin|Greek|Dutch|Welsh|German|Czech|Swiss|Arabic|Gaelic|how (?:it|they|the (\p{L}+(?: \p{L}+)?)) (?:is|are|has been) (?:always )?(?:spelled|spelt|written|called|named)|abbreviations?|acronyms?|short(?:hand)? for|spellings?|(?:(?:last|first|second|middle|family|maiden|pet|house|trade|brand|room|boat|stage|place|street) )?names?|nicknames?|surnames?|(?:codes?|lists?)|(?:the |his |her |their |our )?(?:rooms?|suites?|halls?|wings?|house|boat|floors?)|terms?|words?|wording|titles?|(?:is|are|was|were|been) (?:(?:really|always|just|indeed|actually|usually|also|correctly|properly|commonly|locally|traditionally|exactly) )?(?:called|named|spelled|spelt|written)(?: (?:just |exactly )?(?:that|this way|so|like that|like this))?|named (?=after|for))(?![\p{L}\p{N}])/giu;
const reports =
  /(?<![\p{L}\p{N}])(?<!\b(?:be|to|not|is|are|was) )(?:(?:has|have|had|just|all|already|also) ){0,3}(?:confirms|says|said|insists(?: on)?|tells? (?:me|us)|told (?:me|us)|confirmed|checked|approved|agreed|verified|signed off(?: on)?|okayed|cleared)(?: (?:it|them|this|that|the (?:wording|spellings?|names?|words?|legends?|texts?)))?(?: (?:that|with (?:me|us|him|her|them)|by phone|today|yesterday|this morning))*(?![\p{L}\p{N}])/giu;
/** Verbs of reasons. */
const tells =
  /(?<!\p{L})(?:is|are|was|were|has|have|comes?|stands?|means?|says?|said|spells?|writes?|wrote|calls?|wants?|likes?|uses?|insists?|insisted|confirms?|confirmed|checked|approved|agreed|verified|signed|named (?:after|for)|short for|per|matches|as (?:per|on|in))(?!\p{L})/iu;
const reasoned =
  /^(?:(?:and|as|because|since|yes|indeed|both|it means) )*(?:i (?:copied|took|got|have)|in (?:our|my|this|the|their|her|his)|same (?:spelling|name|word|wording)|room|tag|matches|straight|taken|copied|per|french|german|spanish|that|this|it|these|those|they|he|she|the|a|an|his|her|their|our|my|we|named|short for|both|all|wording|spelling|names?|words?|owner|customer|client|cust|homeowner|architect)(?![\p{L}\p{N}])/iu;

/** Who is said to name it so, or what is. */
function said(who?: string, what?: string): string {
  return (who ?? what ?? "").replace(/(?<!\p{L})(?:names?|words?|rooms?)(?!\p{L})/giu, "");
}

/** Where a word is from, who gave it, and how old it is. */
const owners = String.raw`(?:(?:the|our|their|his|her) )?(?:(?:owner|client|customer|architect|designer|engineer|boss|contractor)(?: 's)? )?`;
const papers = String.raw`(?:(?:approved|door|room|architectural|latest|signed|wiring) )?(?:drawings?|plans?|schedule|specs?|specification|submittals?|list|sign(?: outside| out front)?|door(?: sign)?|letterhead|contract|website|business card|logo|menu|map)`;
const given = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:${[
    `(?:(?:straight|right|taken|copied|directly) )*(?:from|off|per|as (?:per|on|in)|according to) ${owners}${papers}`,
    `(?:is|are|stands?) (?:also )?(?:so |that way |like that |the same way |the same )?(?:on|in) ${owners}${papers}(?: (?:too|the same way|that way|like that|as well|so))*`,
    `(?:matches|follows|agrees with) (?:what is (?:on|in) )?${owners}${papers}`,
    `(?:copied|took|got|have) (?:it|them|that|this) (?:straight |right |directly )?(?:from|off) ${owners}${papers}`,
    `an? (?:very )?(?:old|ancient|traditional|local|common|real|proper|dialect)(?: \\p{Lu}\\p{Ll}+)? (?:one|name|word|term|expression|spelling|family name)(?! (?:of|for)(?!\\p{L}))`,
    `named (?:it|them|this|that|his|her|their|the)(?: (?!new|other|second)\\p{L}+)? (?:after|for|that|so)`,
    `(?:chose|picked|came up with|selected|invented) (?:it|them|this|that|the (?:names?|words?|wording|spellings?)|(?:this|that) (?:name|word|wording|spelling))`,
    `(?:gave|sent) us(?: (?:it|that|this|them))?`,
    `(?:is|are) (?:indeed |really |all )?(?:intended|wanted|meant|deliberate|intentional|desired)(?: (?:like this|so|that way|this way|as is))?(?=\\s*(?:[.,;!]|$))`,
    `(?:we|they|people|everyone|everybody|he|she) (?:always |all |really )*(?:writes?|spells?|calls?|says?|pronounces?|names?) (?:it|this|that|them) (?:always |all |just )*(?:so|like this|like that|this way|that way)`,
    `what (?:she|he|they|the (?:owner|client|customer|family)) (?:wants?|wanted|asked for|ordered|likes?)(?: (?:on|for) (?:it|there|them))?`,
  ].join("|")})(?![\\p{L}\\p{N}])`,
  "giu",
);

/** Whether a sentence consists of reasons: "it is written with two dots because it is a name". */
export function areWhys(clause: string, topic: Topic): boolean {
  if (isWhy(clause, topic)) return true;
  return [...clause.matchAll(/,? (?:because|since|as|and|so) /giu)].some(
    ({ 0: joint, index }) =>
      isWhy(clause.slice(0, index), topic) && areWhys(clause.slice(index + joint.length), topic),
  );
}

/** "The owner is away" gives no reason. */
function isState(rest: string): boolean {
  return /^(?:(?:the|our|my|his|her|their|an?) )?(?:owner|customer|client|cust|homeowner|architect)s? (?:is|are|was|were|has|have)(?!\p{L})[^◆]*$/iu.test(
    rest,
  );
}

/** Whether a clause that stands beside a yes only says why. It says nothing of letters, and nothing that differs. */
export function isWhy(clause: string, topic: Topic): boolean {
  const words = lookedAt(clause, topic);
  if (words === undefined || !reasoned.test(words) || /(?<!\p{L})now(?!\p{L})/iu.test(words)) return false;
  const isGiven = words.search(given) >= 0;
  const bare = words
    .replace(/(?<!\p{L})(?:these|those|them)(?!\p{L})/giu, "they")
    .replace(/^both(?: of)?(?!\p{L})/iu, "they")
    .replace(/^same (?=(?:spelling|name|wording|word)(?!\p{L}))/iu, "")
    .replace(given, " ◆ ")
    .replace(naming, (_, who?: string, what?: string) => ` ◆ ${said(who, what)} ◆ `)
    .replace(reports, " ◆ ")
    .replace(/\s+/gu, " ")
    .trim();
  const rest = bare.replace(/[\s.,!–—()-]+$/u, "");
  return !isDangerous(rest) && !mayBeLegend(rest) && (isGiven || (tells.test(words) && !isState(rest)));
}

/** What people own who say no. */
export const owning =
  /(?<!\p{L})(?:(?:good|nice|great) (?:catch|spot|eyes?)|thank(?:s| you)(?: so much)? for (?:catching|spotting|seeing|noticing|finding|pointing (?:it|that|this) out)(?: (?:it|this|that|them))?|well (?:spotted|seen|caught)|you are (?:so |quite |absolutely )?right|ma[kd]e (?:a |the |my |this |some )?(?:mistakes?|errors?|slips?|typos?)|(?:mis)?typed|typing|typos?|slip(?:ped)?|mistakes?|errors?|embarrass(?:ed|ing)(?: to say)?|wrong(?:ly)?|silly|clumsy|my bad|(?:my|our|his|her|their) (?:fault|mistakes?|errors?|typos?|slips?)|(?:that|this) one|(?:(?:on|from|by) )?(?:our|my|his|her|their) (?:side|end|part)|(?:they|the (?:positions|devices)|both) (?:are|were|got) (?:exchanged|swapped|mixed up|reversed|the wrong way (?:round|around))|drafting|wrong|fault|sorry|oops|autocorrect|keyboard|(?:fat )?fingers|blame|misspell?ed|missed (?:it|that|this)|misread|mixed (?:it|them|that|those) up|(?:did|wrote|filled|made|copied) (?:it|that|this|them)(?: (?:in|out))?)(?!\p{L})/giu;

/** The same beside a no, where somebody may own a slip. */
export function isOwning(clause: string, topic: Topic): boolean {
  return isTalk(clause.replace(owning, " thanks for asking "), topic);
}

/** Whether a line below a name or a good-bye tells who somebody is: it is short, and of no danger. */
export function isShortLine(line: string): boolean {
  return tokensOf(line).length <= 5 && (isSomebody(line) || !isDangerous(line.replace(/\d/gu, " ")));
}
