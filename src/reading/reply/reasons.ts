import { isPlainReason, nation } from "./plain-reasons.ts";

/** Whoever it is that says so. Patterns here are for words without marks, in one line. */
export const somebody =
  "(?:(?:the|our|my|their) )?(?:end )?(?:client|customer|end[- ]user|user|owner|homeowner|tenant|architect|designer|engineer|contractor|builder|foreman|superintendent|boss|they|we|he|she|i)";
/** Words by which a name is another than the one on the sheet. */
const another =
  "(?!(?:wrong|old|other|another|former|previous|different|last|ex|not|never|new|bad|false|incorrect|mistaken|original|working|temporary|placeholder|dummy|test|only|first|second)\\b)";
const which = `(?:${another}[\\w-]{2,15}(?:'s)? ){0,2}`;
const title = `(?:last name|first name|second name|place name|family name|street name|name|surname|word|term|spelling|wording|brand|initials|acronym|abbreviation|nickname)(?: of (?:the|a|an|our|their|his|her) (?:(?:${another}\\w{2,15} )?(?:room|hall|wing|floor|suite|building|house|lobby|office|company|family|firm|place|street|ship|boat|brand|owner|town|village|city|river|lake|island|country|region|artist|painter|building|school|street|farm|hotel|founder|daughter|son|mother|father|grandmother|grandfather|wife|husband|dog|cat|horse|god|goddess)|${another}\\w{2,15}))?(?: (?:they|we|he|she) (?:gave us|want|use|chose|picked))?`;
const itIs =
  "(?:that|it|this)(?: (?:really|actually|just|indeed))?(?: is|'?s)(?: (?:really|actually|just|indeed))?";
const today = "(?: (?:this morning|today|yesterday|again))?";

const looksOdd =
  "(?:looks|sounds|reads|may look|does look) (?:a bit |a little |very )?(?:funny|odd|strange|weird|unusual|wrong|misspelt|misspelled)";

const isRight =
  "(?:is|are|'s) (?:right|correct|deliberate|intentional|intended|fine|ok|okay|good|as (?:typed|intended|wanted))(?: (?:as (?:it )?is|as it stands|the way it is|like (?:this|that)))?";
const spoke = `(?:i|we)(?:'ve| have)?(?: just)? (?:spoken|talked|spoke|checked) (?:to|with) ${somebody}`;
/** "I've spoken to the client and they've confirmed the wording is right". */
export const vouched = `(?:${spoke}(?:,? and|,) )?${somebody}(?:'ve|'s| have| has)? (?:confirmed|confirms?|agreed?|agrees|says?|said)(?: that)? (?:(?:the|this|that) (?:wording|spelling|name|word|legend|text) |it |that |this )${isRight}`;

/** Why something is meant as it stands. None of these can be a condition. */
export const reason = `(?:${[
  `${itIs} (?:(?:exactly )?(?:how|the way|what) ${somebody} (?:spells?|writes?|wants?|calls?|likes?)(?: it)?(?: on (?:the|this|that) (?:plate|device|button|wall|door))?|${somebody}'s (?:spelling|wording))`,
  `(?:${itIs}(?: (?:the|its|their|our|his|her|a|an|${somebody}'s))?|(?:its|their|our|his|her|a|an|${somebody}'s)) ${which}${title}`,
  `the word(?:,? (?:it is|it's)| is) (?:the|its|their|our|his|her|a|an) ${which}${title}`,
  `(?:${itIs} )?named (?:for|after) (?:the|our|my|their|a|an) (?:founder|owner|family|town|village|city|river|lake|island|street|school|hotel|ship|boat|saint|poet|painter|artist|mayor|director|chairman|president|teacher|doctor|mother|father|daughter|son|grandmother|grandfather|wife|husband|dog|cat|horse)(?:,? (?:(?:dr|mrs?|ms|st) )?${another}\\w{2,15})?`,
  `(?:that|this|it)(?: is|'s) how (?:(?:dr|mrs?|ms) )?(?!nobody|no)\\w{3,15} (?:spells|writes) (?:it|(?:her|his|their|the) name)`,
  "the (?:name|word|spelling) is (?:this|the) same",
  `${itIs} (?:how|the way) (?:it is|it's|its) (?:spelled|spelt|written|called)`,
  `${itIs} (?:spelled|spelt|written|called)(?: (?:so|that way|this way|like that|like this|as shown))?(?: (?:on|in) (?:the|our|their) (?:drawings?|plans?|schedule))?`,
  `(?:as )?(?:confirmed|agreed|checked) (?:with|by) (?:${somebody}|(?:the|our|my|their) ${another}\\w{2,15})`,
  `(?:i|we)(?:'ve| have)?(?: just)? (?:asked|checked with|spoke (?:to|with)|talked (?:to|with)|confirmed (?:it )?with) ${somebody}${today}`,
  `(?:i|we)(?:'ve| have)?(?: just)? checked(?: (?:it|this|that))? (?:against|with|on|in) (?:the|our|my) (?:drawings?|plans?|schedule|list)${today}`,
  `(?:as )?per ${somebody}`,
  `${somebody} (?:has )?(?:confirmed|approved|agreed|checked)(?: (?:it|this|that))?`,
  `${itIs} (?:(?:spelled|spelt|written) )?(?:that way |like that |so )?(?:on|in) (?:the|our|their) (?:approved |architect's )?(?:drawings?|plans?|schedule)(?: (?:like that|that way|too|as well))?`,
  `(?:${itIs} )?(?:short|the short form|an? (?:abbreviation|short form|acronym|nickname)) (?:for|of) (?:the )?[a-z]{3,20}`,
  `(?:they|those|these|both|all)(?: are|'re)?(?: (?:all|both))? (?:exactly )?(?:how|the way|what) ${somebody} (?:spells?|writes?|wants?|likes?|asked for)(?: (?:it|them))?`,
  `(?:they|those|these)(?: are|'re)(?: (?:all|both))? (?:right|correct|fine|ok|okay|as (?:typed|intended|wanted))`,
  `(?:it|that|this|the (?:word|name|spelling|wording|legend|text)) ${isRight}`,
  `${itIs} (?:spelled|spelt|written|called|said) (?:(?:so|that way|this way|like that|like this) )?in ${nation}`,
  vouched,
  `${itIs} what (?:the|our|their) (?:drawings?|plans?|schedule) (?:says?|shows?)`,
  `(?:${itIs}|(?:${somebody}|the family|the (?:company|family|owner)s?)(?: is|'s| are)) ${nation}(?: for [a-z]{3,12}(?: [a-z]{3,12})?)?`,
  `${somebody} (?:is|are|comes?) from (?:\\w+land|\\w+ia|greece|spain|italy|france|germany|brazil|mexico|japan|norway|denmark)`,
  `(?:${somebody}|everybody|everyone|people)(?: (?:here|there|around here))? (?:always |really |all )?(?:do|does|spells?|writes?|calls?|says?|pronounces?|wants?|likes?|has|have) it (?:exactly )?(?:that way|like that|this way|like this|so|as typed)(?: (?:here|there|in this building|on all (?:their|our) (?:signs|drawings)))?`,
  `(?:(?:i|we) know,? (?:that )?it ${looksOdd}|it ${looksOdd},? (?:i|we) (?:know|agree)|(?:funny|odd|strange|weird|unusual) (?:name|word|spelling),? (?:i|we) (?:know|agree))`,
  `${itIs} an old (?:building|house|place|mill|school|church|farm|castle|hospital)`,
  `${somebody} (?:is|are|was|were) (?:aware of|sure about|sure of|certain about|happy with) (?:it|that|this)`,
  `how ${somebody} (?:spells?|writes?|wants?|calls?) it|the way ${somebody} (?:spells?|writes?|wants?|calls?) it`,
  "no (?:changes?|corrections?)(?: (?:needed|necessary|required))?|nothing to (?:change|correct|fix)",
  "(?:do not|don't|please don't|please do not) (?:change|touch|correct)(?: (?:it|that|anything))?",
  `(?:${itIs} )?not an? (?:typo|mistake|error|misspelling)`,
  "(?:as )?(?:per|shown (?:on|in)|it matches|matches|that matches) (?:the|our|their) (?:approved )?(?:drawings?|plans?|schedule|specs?|submittal)",
  "same(?: again| here)?|ditto|as drawn",
].join("|")})`;

const alone = new RegExp(`^(?=\\S+ \\S+ \\S)${reason}$`, "iu");

/** "Run it." */
const approving =
  /^(?:run it|(?:(?:you're|you are|ur|u r) )?good to go|(?:please )?make (?:it|them) (?:like this|like that|as it is)|go ahead|please (?:proceed|go ahead))$/iu;

/** "That's the client's spelling": whether a sentence beside a yes only says why, or lets the work go on. */
export function isReason(sentence: string): boolean {
  return alone.test(sentence) || approving.test(sentence) || isPlainReason(sentence);
}

const asked = new RegExp(
  `^(?:(?:i|we)(?:'ve| have)?(?: just| now)? )?(?:checked|confirmed|asked|spoken|spoke|talked)(?: (?:it|this|that))? (?:(?:with|to) )?${somebody}${today}[.!]?$`,
  "iu",
);

/** "We confirmed with the end user.": it may also stand before the answer. */
export function tellsWhoWasAsked(sentence: string): boolean {
  return asked.test(sentence);
}
