import { tongue } from "./clause-words.ts";
import { isDangerous } from "./danger.ts";
import { explains } from "./explains.ts";
import {
  atCapitals,
  atFinish,
  atSame,
  atSpelling,
  atWord,
  type Fits,
  hasLetters,
  isSpeltOut,
  nearWord,
} from "./fits.ts";

/*
 * Why something is meant as it stands, from closed lists, as in clause-words.ts. Some of it is said only of questions
 * that it fits: "the east wall is white" where finishes differ.
 */

/** Something that stands behind a yes, or ahead of one. */
export interface Why {
  readonly source: string;
  readonly fits?: Fits;
  /** It fits as soon as it does one of the questions that were spoken of. */
  readonly any?: true;
  /** It is about the word in question, and what it may say of that is known. */
  readonly ofWord?: true;
  readonly holds?: (groups: Record<string, string | undefined>, whole: string) => boolean;
}

const join = (...all: readonly string[]): string => `(?:${all.join("|")})`;

/** No word for another one, for a paper that comes or a part that is made, and none that wishes or denies. */
export const plainly = String.raw`(?!(?:same|other|others|another|different|wrong|misspel\p{L}+|misspelt|incorrect|previous|draft|working|temporary|provisional|placeholder|old|new|last|next|first|second|left|right|top|bottom|former|attached|enclosed|corrected|revised|sheets?|forms?|pdfs?|files?|rows?|buttons?|plates?|devices?|one|ones|should|must|shall|would|could|can|will|might|may|used|to|not|never|now|no|longer|needs?|did|does|if|once|until|and|or|but|so|who|which|that|it|them)(?!\p{L}))`;
export const word = String.raw`${plainly}\p{L}[\p{L}'’-]*`;
export const det = "(?:the|our|their|his|her|its)";
const place = String.raw`(?: (?:here|there|round here|around here|on (?:the )?(?:job|site|ward)|in (?:the|that|this|our|their) ${word}))?`;
export const bareFolk =
  "(?:tenant|brewery|company|library|clients?|owners?|school|hotel|customers?|tenants|gym|church|office|hall|museum|clinic|pub|bar|club|team|family|landlord|vicar|nurses|staff|teachers|pupils|kids|members|locals|regulars|architect|designer)";
export const folk = join(
  `(?:we|they|he|she|everyone|everybody|people|${bareFolk})${place}`,
  `${det} ${word}(?: ${word})?${place}`,
);
const surface = String.raw`(?:(?:all|both|every) )?(?:(?:of )?${det} )?(?:(?:own|existing|door|front|street|shop|room|floor|approved|architect's|(?:library|school|gym|hotel|church|tenant|owner|client|customer)'?s'?|tenants|owners) )*(?:signs?|signage|posters?|doors?|flyers?|leaflets?|menus?|websites?|stationery|letterheads?|brochures?|timetables?|plans?|drawings?|schedules?|room lists?|door ?plates|name ?plates)(?: (?:in|on|at|around|of|over|outside|above) ${det} ${word})*`;
export const that = "(?:it|that|this|they|these|those|which)";
export const very = "(?:all |both |also |just |only |really |exactly |simply |indeed |always |actually )*";
const calls = "(?:calls?|spells?|writes?|knows?|names?|words?)";
const him = "(?:it|them|that|this|these|those)";
const so = "(?:that way|this way|like that|like this|by that name|as that|the same way|that|so)";

const field =
  "(?:training|room|church|theatre|theater|stage|music|musical|medical|hospital|nursing|trade|kitchen|cooking|nautical|sailing|legal|sports?|rugby|gym|fitness|school|science|biology|dance|dancing|building|army|navy|railway|farming|wine|art|office|hotel|architectural|technical|clinical|place|dialect|brand|class)";
const term =
  "(?:words?|terms?|names?|talk|slang|lingo|jargon|abbreviations?|shorthand|spellings?|expressions?|trademarks?|brands?)";
export const colour =
  "(?:white|cream|beige|gr[ea]y|black|light|lighter|dark|darker|pale|bright|blue|green|red|brown|pink|yellow|wood|wooden|oak|walnut|pine|brick|stone|marble|tile|tiled|painted|panelled|paneled)";
export const wall =
  "(?:walls?|panell?ing|tiles?|tiling|paint|paintwork|woodwork|wallpaper|brickwork|plaster|stone|room)";
export const spot = String.raw`(?:(?:the|that|this|our|their) )?(?:(?:east|west|north|south|front|back|far|end|whole|main|kitchen|entrance|other) )*(?:walls?|wing|rooms?|corridor|side|end|panell?ing|tiles?|tiling|paint|paintwork|woodwork|wallpaper|block|kitchen|lobby|hall|bar|lounge|foyer|landing|stairs)`;
export const looks =
  "(?:contrast|two[- ]tone(?: look)?|mix|combination|difference|two colou?rs|two finishes|different (?:colou?r|finish(?:e)?)s?|look)";
const given = `(?:picked|chosen|given|supplied|approved|checked|confirmed) by ${folk}`;

/** What may follow "it is". It tells why as well if it stands alone. */
export const whats: readonly Why[] = [
  {
    source: "(?:exactly |just )?what (?:we|they|i) (?:always|normally|usually) (?:put|use|write)(?: there)?",
  },
  { source: `(?:in )?${tongue}(?: too| as well)?` },
  {
    source: String.raw`(?:exactly |just |simply )?(?:what|how) ${folk} (?:all |always |really |just |actually )?(?:${calls}(?: (?:it|them|that|this|(?:the|that|their|this|these) ${word}(?: ${word})?))?|(?:says?|pronounces?) (?:it|them))(?: (?:on|in) ${surface}| in \p{Lu}\p{Ll}+)?`,
  },
  {
    source: String.raw`(?:just |exactly )?(?:what|how|where) (?:the|that|this) (?:room|bar|hall|class|place|wing|lounge|house|den|office|ward|area|type|station|mark)s? (?:is|are|was) (?:called|named|known as|spelled|spelt|signed|marked)(?: (?:on|in) ${surface})?`,
  },
  {
    source: String.raw`(?:what is |what it is |whats )?(?:written |spelled |spelt |printed |painted |shown |called |like that |that way |so )?(?:on|in|over) ${surface}(?: too| as well)?`,
  },
  {
    source: String.raw`(?:an? |the |our |their |his |her )?(?:(?:proper|real|normal|usual|standard|common|correct|actual|local|genuine|just) )*(?:(?:${field}|${tongue}) )+${term}(?: for (?<what>(?:an? |the |our |their )?\p{L}+(?: \p{L}+)?))?(?:,? ${given})?`,
    holds: ({ what }) =>
      what === undefined || explains(`it is the ${what.replace(/^(?:an?|the|our|their) /u, "")}`),
  },
  {
    source: String.raw`(?:(?:${det} )?${plainly}\p{L}+'?s'?|its|their|our|his|her) (?:own )?(?:(?:house|corporate|brand|class|room|sur|nick|family|pet|trade) ?)?(?:names?|trademarks?|brands?|style|standards?|branding|mascot|idea|choice|wording|spelling|abbreviations?)(?: (?:of|for) (?:an? name|it|them|${det} ${word}))?(?: for ${det} ${word})?`,
  },
  { source: String.raw`(?:an? |the )?name of (?:an? |${det} )?${word}(?: ${word})?` },
  {
    source: String.raw`(?:(?:an? )?(?:abbreviations?|acronyms?|short form)(?: (?:for|of) ${word}(?: ${word})?)?|abbreviated|short for (?:the |an? )?${word}(?: ${word})?)`,
  },
  { source: given },
  // "Science room", "stage word for the curtains", "name of hall", "tech company".
  {
    source: String.raw`(?:an? |the |their |our )?(?:${word} ){1,2}(?:company|firm|business|school|club|society|department|team|family|church|lodge|saint|donor|founder|composer|painter|dancer?|room|hall|lab|laboratory|tank|horse|dog|cat|people|folks)`,
    fits: atWord,
    holds: (_, whole) => !new RegExp(`(?<!\\p{L})${colour}(?!\\p{L})`, "iu").test(whole),
  },
  {
    source: String.raw`(?:an? |the |their |our )?${word} (?:word|term|name|talk|slang|lingo|jargon|shorthand)(?: for ${det} ${word})?`,
    fits: atWord,
  },
  { source: String.raw`(?:the )?name of (?:${det} |an? )?${word}`, fits: atWord },
  {
    source: String.raw`(?:all )?(?:the )?(?:parts?|bits?|names?|words?|terms?) (?:of|for|from|in) (?:an? |${det} )?(?!(?:jobs?|orders?|projects?|deals?|problems?|works?)(?!\p{L}))${word}`,
    fits: atWord,
    any: true,
  },
  {
    source: String.raw`(?:the|an?) ${looks} (?:(?:that )?(?:they|we|he|she|the (?:owner|client|customer|designer|architect)) (?:are after|is after|wants?|wanted|asked for|likes?|chose))`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?:switched|controlled|operated|worked) from (?:the )?(?:two|both|either|opposite) (?:places|ends?|sides?|doors?|positions|rooms|entrances)|(?:at|on|by) (?:both|opposite|either) (?:ends?|sides?|doors?|walls?)(?: of ${det} (?:the )?${word})?`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:(?:pronounced|rhymes with|rhyming with|sounds like)|(?<said>said|spoken|you say it|say it))(?: like| as)? \p{L}+(?:[ -]\p{L}+){0,3}`,
    holds: ({ said }, whole) =>
      !/\p{Lu}{2}/u.test(whole) && (said === undefined || /\p{Ll}-\p{Ll}/u.test(whole)),
  },
  { source: String.raw`(?:named|called) (?:after|for) (?:\p{L}+ ){0,2}the word` },
  {
    source: String.raw`(?:named|called) (?:after|for) ${det} ${word}(?: ${word}){0,2}|after (?:the|our|their|his|her) (?:(?!new)\p{L}+ ){0,2}(?:dog|cat|horse|wife|husband|daughter|son|mother|father|grand\p{L}+|founder|donor|patron|saint|poet|composer)`,
  },
  {
    source:
      "(?:short|shortened|abbreviated|cut short|cut down|clipped)(?: (?:on purpose|deliberately|intentionally|to fit|so (?:that )?it fits|for space|to save space|for lack of (?:space|room)|(?:because|cos|as|since) (?:it|the (?:full|whole|long) (?:word|name)) (?:would not|wouldn'?t|does not|doesn'?t|did not|didn'?t|will not|won'?t) fit))+(?:,? (?:(?:because|cos|as|since) )?it (?:would not|wouldn'?t|does not|doesn'?t|did not|didn'?t|will not|won'?t) fit)?(?: otherwise)?",
    fits: atWord,
    any: true,
  },
  {
    source:
      "all (?:that |which )?(?:fits|would fit|will fit|could fit|we could fit|i could fit|we can fit|i can fit|there is (?:room|space) for|we have (?:room|space) for)(?: (?:in|on|there))?(?: (?:the|one) (?:row|line|button))?",
    fits: atWord,
    any: true,
  },
  {
    source: String.raw`(?:in|at|by) (?:the|a|our|their) ${word}(?: room| wing| block| hall)?|(?:in|for) (?:an?|another) (?:different |separate |other )?(?:room|wing|part|area|space|block|building)`,
    fits: atFinish,
  },
  {
    source: `${spot.replace("(?:(?:the|that|this|our|their) )?", "(?:the |that |this )")} (?:with the )?${colour} ${wall}`,
    fits: atFinish,
  },
];

/** Clauses of their own behind a yes. */
export const whys: readonly Why[] = [
  { source: String.raw`${folk} ${very}${calls} ${him} ${so}(?: (?:on|in) ${surface})?` },
  {
    source: String.raw`${folk} ${very}(?:has|have|keeps?|wants?|likes?|prefers?) ${him} ${so}(?: (?:on|in) ${surface})?`,
  },
  {
    source: String.raw`${folk} ${very}(?:has|have|had|got) ${him} (?:all )?(?:painted|written|printed|carved|lettered|up)(?: (?:big|large))? (?:on|over|above|across|beside|outside|in) ${det} ${word}`,
  },
  {
    source: String.raw`${folk} ${very}(?:speaks?|talks?) ${tongue}(?: (?:at home|there|here|among themselves))?`,
  },
  { source: String.raw`${that} ${very}match(?:es)? ${surface}|matches ${surface}` },
  {
    source: String.raw`(?:${that} ${very}match(?:es)?|matches) (?:what is (?:on|in) )?${det} (?:(?:existing|other) )?(?:switches|stations|keypads|signs|labels|rooms|fittings)(?: (?:in|on|at|around|of) ${det} (?:building|house|hall|school|site|office|library|rest of the building))?`,
    fits: atCapitals,
  },
  {
    source: String.raw`(?:(?:${that}|it) )?(?:(?:is )?(?:as )?per|follows?|is|in|in line with|according to) ${det} (?:${word} )?(?:house|corporate|brand|signage|sign) (?:style|standards?|guide(?:line)?s?|book)|same as (?:on )?${surface}`,
  },
  { source: String.raw`(?:${that}|the words?) comes? (?:straight )?(?:from|off) (?:${surface}|${folk})` },
  {
    source: String.raw`(?:i|we) thought (?:so|(?:it|that|this) was an? (?:typo|mistake|error|slip))(?: (?:too|myself|ourselves|as well|at first))*,? but ${folk} (?:(?:assures?|assured) (?:me|us|him)|says?|confirms?|confirmed|insists?|said)(?: that)? (?:it|that|this) is (?:right|correct|so|intended|fine|meant)`,
  },
  {
    source: String.raw`(?:i|we) (?:just |also |even |did |had to |have |actually )*(?:call|called|ring|rang|phoned|phone|ask|asked|check|checked|double[- ]checked|look|looked|google|googled|text|texted|e-?mailed)(?: (?:it|this|that|them|him|her|the same(?: (?:thing|question))?|twice|again|up|myself|too|as well|${det} ${word}|(?:with|against) (?:${det} ${word}|him|her|them)))*(?: to (?:be|make) (?:sure|certain|safe))?`,
  },
  {
    source: String.raw`(?:${det} )?(?:${bareFolk}|boss|engineer|contractor|verger|librarian|headmaster|head|manager|committee|they|he|she)s? (?:(?:has|have|also|just|already|himself|herself|themselves|both|all) )*(?:signed|approved|checked|confirmed|chose|chosen|picked|wrote|written|came up with|okayed|agreed)(?: (?:it|them|this|that|these|off|on|to|${det} (?:names?|list|wording|words?|abbreviations?|spellings?|legends?|room names)|himself|herself|themselves|ourselves|too|as well))+(?: and (?:has|have) (?:signed off on|approved|checked|confirmed) (?:it|them|these|this))?`,
  },
  {
    source: String.raw`(?:${det} )?(?:${bareFolk}|they|he|she)s? (?:is|are) ${tongue}(?: and (?:wrote|chose|picked|named|spelled|gave us) (?:it|them|${det} (?:names?|list|wording|words?|abbreviations?|spellings?|legends?|room names))(?: (?:himself|herself|themselves))?)?`,
  },
  {
    source: String.raw`(?:they|we) have (?:(?:funny|odd|strange|silly|weird|fancy|special|their own|our own|pet) )+(?:names?|words?) for (?:everything|all (?:of )?(?:their|our|the) rooms|things|(?:their|our|the) rooms)${place}`,
  },
  {
    source: String.raw`${folk} (?:likes?|loves?|uses?|has|have|prefers?) (?:(?:funny|odd|strange|silly|weird|fancy|unusual|short|their own) )+(?:names?|words?|abbreviations?)`,
  },
  {
    source: String.raw`(?:they|it|that|this|these|those|which|the words?|the names?) (?:just |simply |all |both )*had to be (?:shortened|abbreviated|cut down|short|squeezed in|clipped)(?: (?:to fit|so (?:that )?(?:it|they) fits?|for space|to save space))?`,
    fits: atWord,
    any: true,
  },
  // "Mrs. Krebbs is the donor": plain() puts the owner for her.
  {
    source: `(?:an? )?the owner is (?:the|an?|our|their|one of the) (?:(?:school|church|parish|chief|main|late|old|first|founding) )*(?:donor|founder|patron|benefactor|sponsor|namesake|headmaster|headmistress|headteacher|principal|teacher|priest|vicar|pastor|minister|mayor|director|doctor|dentist|librarian|composer|gardener|housekeeper)s?`,
    fits: atWord,
  },
  {
    source: String.raw`as in (?:the )?(?<what>\p{L}+)`,
    holds: ({ what = "" }) => !isDangerous(what) && !/^\p{Lu}{2}/u.test(what),
  },
  {
    source: String.raw`(?:(?:it|that|which|this) )?(?:(?:is|has|just|always|definitely|really|spelled|spelt|written) )*(?:with )?(?<count>one|two|three|single|double|a single|a double|a|an|only one|just one|no|no second|no double|without (?:a|an|the)|without (?:a|the) second|without (?:a|the) double)[ -](?:capital )?(?<letter>\p{L}) ?(?:'? ?s)?`,
    fits: hasLetters,
    ofWord: true,
  },
  {
    source: String.raw`(?:(?:spelled|spelt|written) )?(?<letters>\p{L}(?:[ .,-]+\p{L}){2,14})`,
    fits: isSpeltOut,
    ofWord: true,
  },
  {
    source: String.raw`(?:(?:and|it is|definitely|certainly|really|absolutely|most|of course) )*not (?:an? |the )?(?<full>\p{L}{3,20})`,
    fits: (question, found) => atWord(question, found) && atSpelling(question, found),
    ofWord: true,
  },
  {
    source:
      "(?:(?:we|i|they|just|only|have|had) )*(?:dropped|left out|took out|skipped|had to (?:drop|leave out|take out|skip))(?: (?:the|some|most|all|of)| a few| a couple of)* (?:vowels?|letters?|(?:[b-z]|a(?! ))(?!\\p{L}))(?: (?:so (?:that )?it (?:fits|would fit|will fit)|to fit|to make it fit|to save (?:space|room)|for (?:space|room)|on purpose|deliberately|intentionally))?",
    fits: atWord,
  },
  {
    source: String.raw`(?:there (?:is|was) )?(?:no|not enough) (?:more )?(?:room|space) for (?:the |an? )?(?:(?:other|second|last|extra|rest|another|full|whole) ?)*(?:\p{L}(?!\p{L})|word|letters|name|of it)?`,
    fits: atWord,
    any: true,
  },
  {
    source: String.raw`(?:the (?:full|whole|long) (?:word|name|spelling)|(?<full>\p{L}{3,20})) (?:would not|wouldn't|does not|doesn't|did not|didn't|will not|won't) fit(?: (?:in|on|at) (?:the|that|one) (?:row|line|button|size|face)(?: (?:they|we) (?:wanted|want|chose|have))?)?`,
    fits: (question, found) => atWord(question, found) && atSpelling(question, found),
    ofWord: true,
  },
  {
    source: String.raw`the word (?:tanks?|lights|lamps|lighting|lab|pond|pump|club|class|team|society|dances?)(?: (?:in|over|at|on|by) ${det} ${word}(?: ${word})?)?|(?:(?:the word )?as in )?(?:the |our )?(?<near>\p{L}{3,20}) (?:lights|lighting|lamps)(?: (?:over|in|at|above|along|behind|under|around) ${det} ${word}(?: ${word})?)?`,
    fits: nearWord,
    ofWord: true,
    holds: (_, whole) => !/\p{Lu}{2}/u.test(whole),
  },
  {
    source: String.raw`(?:that|it|this) is where (?:they|we|people|you|the ${word}) (?:all )?(?:take|draw|do|keep|hold|serve|have|store|park|teach|practi[sc]e|play|eat|sit|meet|sing|dance|bake|wash|grow|wait|sleep|work)(?: (?:the|their|our|all))*(?: ${word})?(?: ${word})?`,
    fits: atWord,
  },
  {
    source: String.raw`(?:no|not enough) (?:room|space) for (?:the )?(?<full>\p{L}{3,20})`,
    fits: (question, found) => atWord(question, found) && atSpelling(question, found),
    ofWord: true,
  },
];
