/** Whoever it is that says so. Patterns here are for words without marks, in one line. */
export const somebody =
  "(?:(?:the|our|my|their) )?(?:end )?(?:client|customer|owner|homeowner|tenant|architect|designer|engineer|contractor|builder|foreman|superintendent|boss|they|we|he|she|i)";
/** Words by which a name is another than the one on the sheet. */
const another =
  "(?!(?:wrong|old|other|another|former|previous|different|last|ex|not|never|new|bad|false|incorrect|mistaken|original|working|temporary|placeholder|dummy|test|only|first|second)\\b)";
const which = `(?:${another}[\\w-]{2,15}(?:'s)? ){0,2}`;
const title = `(?:last name|first name|second name|name|surname|spelling|wording|brand|initials|acronym|abbreviation|nickname)(?: of (?:the|a|an|our|their|his|her) (?:(?:${another}\\w{2,15} )?(?:room|hall|wing|floor|suite|building|house|lobby|office|company|family|firm|place|street|ship|brand|owner)|${another}\\w{2,15}))?(?: (?:they|we|he|she) (?:gave us|want|use|chose|picked))?`;
const itIs =
  "(?:that|it|this)(?: (?:really|actually|just|indeed))?(?: is|'?s)(?: (?:really|actually|just|indeed))?";
const today = "(?: (?:this morning|today|yesterday|again))?";

/** Why something is meant as it stands. None of these can be a condition. */
export const reason = `(?:${[
  `${itIs} (?:(?:exactly )?(?:how|the way|what) ${somebody} (?:spells?|writes?|wants?|calls?|likes?)(?: it)?|${somebody}'s (?:spelling|wording))`,
  `(?:${itIs} (?:the|its|their|our|his|her|a|an|${somebody}'s)|(?:its|their|our|his|her|a|an|${somebody}'s)) ${which}${title}`,
  `\\w{2,15} is (?:the|its|their|our|his|her|a|an) ${which}${title}`,
  `${itIs} (?:how|the way) (?:it is|it's|its) (?:spelled|spelt|written|called)`,
  `${itIs} (?:spelled|spelt|written|called)(?: (?:so|that way|this way|like that|like this|as shown))?(?: (?:on|in) (?:the|our|their) (?:drawings?|plans?|schedule))?`,
  `(?:as )?(?:confirmed|agreed|checked) (?:with|by) ${somebody}`,
  `(?:i|we)(?:'ve| have)?(?: just)? (?:asked|checked with|spoke (?:to|with)|talked (?:to|with)|confirmed (?:it )?with) ${somebody}${today}`,
  `(?:i|we)(?:'ve| have)?(?: just)? checked(?: (?:it|this|that))? (?:against|with|on|in) (?:the|our|my) (?:drawings?|plans?|schedule|list)${today}`,
  `(?:as )?per ${somebody}`,
  `${somebody} (?:has )?(?:confirmed|approved|agreed)(?: (?:it|this|that))?`,
  `${itIs} (?:(?:spelled|spelt|written) )?(?:that way |like that |so )?(?:on|in) (?:the|our|their) (?:drawings?|plans?|schedule)(?: like that)?`,
  `${itIs} what (?:the|our|their) (?:drawings?|plans?|schedule) (?:says?|shows?)`,
  `${itIs} (?:italian|spanish|french|german|latin|greek|dutch|portuguese)`,
  "no (?:changes?|corrections?)(?: (?:needed|necessary|required))?|nothing to (?:change|correct|fix)",
  "(?:do not|don't|please don't|please do not) (?:change|touch|correct)(?: (?:it|that|anything))?",
  `(?:${itIs} )?not an? (?:typo|mistake|error|misspelling)`,
  "(?:as )?(?:per|shown (?:on|in)|it matches|matches|that matches) (?:the|our|their) (?:approved )?(?:drawings?|plans?|schedule|specs?|submittal)",
  "same(?: again| here)?|ditto|as drawn",
].join("|")})`;

const alone = new RegExp(`^(?=\\S+ \\S+ \\S)${reason}$`, "iu");

/** "That's the client's spelling": whether a sentence beside a yes only says why. */
export function isReason(sentence: string): boolean {
  return alone.test(sentence);
}
