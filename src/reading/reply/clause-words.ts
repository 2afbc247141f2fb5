/*
 * The closed lists from which clauses of replies are put together, as sources of patterns. Blanks in them are single, and
 * short forms are spelt out.
 */

const join = (...all: readonly string[]): string => `(?:${all.join("|")})`;

export const tongue =
  "(?:french|german|spanish|italian|welsh|irish|gaelic|dutch|latin|greek|swedish|danish|norwegian|finnish|polish|czech|croatian|hawaiian|maori|te reo|portuguese|japanese|hebrew|arabic|turkish|hungarian|scots|catalan|basque|galician|yiddish|russian|chinese|swiss german|american|british)";

export const number = String.raw`\d{1,3}(?![\d\p{L}])(?![.,/:]\d)(?! (?:of|more|sheets|forms|words|questions|points|items|letters|characters|times|days|weeks|hours|minutes|ways?)(?!\p{L}))`;
const label = String.raw`(?:(?:the|your|our|sr\.?) )?(?:(?:questions?|points?|items?|numbers?|nr\.?|pos\.?|position|q|pts?|query|queries|comments?|punkt|punto|#) ?#?)?`;
export const counts = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
export const one = `(?:${label}${number}|number (?:${counts.join("|")})(?!\\p{L}))`;
const tie = String.raw`(?: (?=\d{1,2}(?:[ ,]|$))| ?(?:,|&|\+|/) ?(?:and )?| and | through | thru | to (?=\d)| ?[-–] ?(?=\d))`;
export const numbers = `${one}(?:${tie}${one})*`;
export const at = String.raw`(?:on|for|to|re|regarding|about|as for|as to|with|in|zu)`;
export const all = join(
  String.raw`all (?:of )?(?:the |these |those )?(?:two|three|four|five|six|\d)(?: (?:of them|questions|points|items|words|names))?`,
  "all(?: of)?(?: (?:the|your|these|those|my))?(?: (?:questions|points|items|ones|words|names))?(?: of (?:them|these|those|it))?",
  "both(?: of)?(?: (?:the|your|these|those))?(?: (?:questions|points|items|ones|words|names))?(?: of (?:them|these|those))?",
  "everything|(?:they|those|these|it) (?:are|is) (?:all|both)|(?:they|these|those) (?:all|both)",
);
export const rest = String.raw`(?:all )?(?:the )?(?:rest|others|other (?:ones?|(?:two|three|four|five)(?: (?:points|questions|items|ones))?)|remaining (?:ones?|two|three|four|five)|other)(?: of (?:them|the questions|your questions))?`;
export const it =
  "(?:it|that|this|they|these|those|the (?:words?|names?|spellings?|wordings?|legends?|text))";
export const be = "(?:is|are)";
const been = "(?:is|are|was|were)";
export const much =
  "(?:(?:really|indeed|also|all (?:two|three|four|five)|all|both|just|quite|exactly|absolutely|perfectly|definitely|very much|in fact|meant to be|of course|too|dead|spot|totally|completely|entirely|certainly) )*";

export const person = join(
  "we|i|they|he|she",
  String.raw`(?:the|our|my|his|her|their) (?:home ?owner|owner|client|customer|boss|architect|designer|engineer|contractor|foreman|pastor|vicar|wife|husband|lady of the house|tenant|family|office|guys?|boys|team|electrician)s?(?: (?:family|wife|daughter|son))?`,
  "customer|client|owner|boss",
);
export const asIs = join(
  "(?:just |exactly |meant )?(?:as|like|the way|how) (?:it|they|that|these|those)(?: is| are| stands?)(?: (?:now|written|typed|drawn|spelled|spelt|there|on the sheets?|in the sheets?))?",
  "(?:just |exactly )?as (?:we|they|he|she|i|the (?:owner|owners|client|customer|family|architect|designer)) (?:wants?|wanted|likes?|asked for|intend|intends|intended|chose|specified|ordered)(?: (?:it|them|these|those))?",
  "(?:just |exactly )?as (?:is|typed|written|drawn(?: up)?|submitted|per submitted|intended|ordered|wanted|meant|shown|sent|planned|spelled|entered|specified|designed|we intend|we want)",
  "like (?:this|that)|(?:this|that) way",
);
export const wants =
  "(?:wants?|wanted|calls?|spells?|spelled|spelt|writes?|wrote|means?|meant|ordered|intends?|intended|likes?|liked|submitted|typed|asked for|chose)";
export const how = `(?:just |exactly )?(?:how|what|the way|just how) ${person}(?: (?:all|both|do|does|always|really|actually))?(?: (?:want|call|spell|write|mean|intend|like)| ${wants})(?: (?:it|them|that|these))?(?: (?:to be|spelled|written|done))?`;
export const yesWord =
  "(?:yes sir|yes ma'am|yes indeed|yes please|yes|yep|yeah|yup|yea|ya|ja|oui|s[ií]|affirmative)";
const tail = `(?: (?:${asIs}|on (?:both|all|purpose)|either|too|also|as well|by design|for (?:us|me|both|all)|with (?:us|me)|here|so|thanks|please|sir))*`;
/** What is said of something that is meant so. */
export const yes = join(
  `${yesWord}(?:,? and ${yesWord})?(?:,? (?:it is )?(?:${much})(?:correct|right|intentional|intended|on purpose|that is correct|that is right|(?:that is )?the (?:correct|right|proper) (?:spelling|name|word|wording)|${asIs}))?${tail}`,
  `(?:${be} )?${much}(?:correct(?:ly)?(?: written| spelled| spelt)?(?: ${tongue})?|(?:spelled|spelt|written) correctly|right|fine|intended|intentional|deliberate|on purpose|by design|accurate|in order|spelled (?:right|correctly)|all good|spelling is right)${tail}`,
  `${be} ${much}(?:ok|okay|good|grand|perfect|yes|a yes|meant|confirmed|approved)${tail}`,
  `${be} ${much}(?:the (?:correct|right|proper) (?:spelling|name|word|wording)|(?:meant|supposed|intended) to (?:be|read|look|stand)(?: (?:spelled|spelt|written))? (?:like (?:this|that)|that way|this way|so|${asIs}))${tail}`,
  `(?:ok|okay|good|grand|meant) ${asIs}`,
  String.raw`(?:ok|okay)(?=[.;!,]?\s*(?:$|(?:and )?#?\d))`,
  `(?:${be} )?${much}(?:${asIs}|${how})`,
  `${be} not (?:a |an )?(?:mistakes?|typos?|errors?|misspell?ings?|misspelt|misspelled|misprints?|wrong)(?: either)?|not an? (?:mistake|typo|error|misspell?ing|misprint)|(?:${be} )?${much}so (?:intended|wanted|meant)`,
  "(?:can |may |should |must )?(?:stands?|stays?)(?: (?:as (?:it|they) (?:is|are)|so|like (?:this|that)))?",
);
export const noWord =
  "(?:no|nope|nah|nein|non)(?! (?:typos?|mistakes?|errors?|problems?|worries|changes?|issues?)(?!\\p{L}))";
const slip = String.raw`(?:(?:my|our|a|an|the|his|her|the customer's|customer's) )?(?:own )?(?:typos?|typing (?:error|mistake)s?|spelling (?:mistake|error)s?|writing (?:mistake|error)s?|mistakes?|errors?|slips?)(?: (?:of (?:mine|ours)|from (?:us|me|our side)|on (?:our|my) (?:side|end|part)|by (?:us|me|our \p{L}+)))?(?: lol)?`;
const mend =
  "(?:change|fix|correct|redo|shorten|mend|resubmit|resend|amend|revise|make (?:it )?(?:shorter|correct|right))";
/** What is said of something that is not. */
export const wrong = join(
  `(?:${been} )?${much}(?:wrong|incorrect|misspelt|misspelled|not (?:ok|okay|correct|right|intended|meant so|meant))`,
  `${be} ${much}(?:wrong|${slip}) (?:yes|indeed)|${been} ${much}${slip}`,
  `(?:${much})(?:my|our|a|an) ${slip}|${slip}`,
);
export const action = join(
  `(?:(?:i|we|he|she|they) )?(?:(?:will|shall|am going to|are going to|have to) )?${mend}(?: (?:it|this|that|them|these))?`,
  "(?:(?:i|we)(?: have)? )?(?:changed|fixed|corrected|redone|shortened|amended|revised|resubmitted|adapted|updated)(?: (?:it|this|that|them|too|also|as well|both|the (?:wording|legend|text|name|row)s?))*(?: \\(?\\d{1,2} and \\d{1,2}\\)?)?",
);
/** Words that shall stand on the sheet that comes. */
const written = String.raw`(?!and )[\p{L}\p{N}&'’/-]+`;
const legend = `${written}(?: ${written}){0,3}`;
export const words = String.raw`(?<words>["“]?${legend}(?: and ${legend})?["”]?)`;
/** "LOUNGE 1 and LOUNGE 2". */
export const pair = String.raw`(?<words>(?<stem>the word|\p{L}{2,15}) \d)(?: and |, | & | ?/ ?)\k<stem> \d`;
export const should = join(
  `(?:it |this |that |which )?(?:(?:is going to|will|is to) (?:be|say|read)|now (?:is|reads|says|shows|has)) ${words}(?: now)?`,
  `(?:${it} )?(?:(?:is |was |are )?(?:supposed|meant) to|should|must|has to|ought to|shall) (?:be|say|read|have been|have said|of been) ${words}`,
  `(?:it )?is ${words}`,
  `(?:it |this |that )?is ${words} now`,
);
export const correction = join(
  `(?:the )?(?:correct|right)(?: (?:word|name|spelling|one|legend))? is ${words}`,
);

const sheetState = String.raw`(?:(?:new|corrected|fixed|revised|amended|updated|redone|fresh|right|shortened|changed|replacement|good|clean|correct|rev\p{L}*) )`;
export const sheetName = String.raw`(?:sheets? )?(?!(?:and|or|not|all|yes|no)\b)\p{L}{1,3}-\d{1,4}(?:[ _-]?r(?:ev)?\.? ?(?:\p{L}|\d{1,2}))?(?:\.pdf)?`;
export const sheet = String.raw`(?:(?:(?:a|an|the|my|our|both|all|two|three|these|another) )*(?:${sheetState}*(?:(?:plate|device) )?(?:sheets?|shts?|forms?|pdfs?|papers?|drawings?)(?: new)?|${sheetState}+(?:ones?|versions?|cop(?:y|ies)|files?|(?:plate|device)s?(?: (?:sheets?|pages?|ones?|forms?))?|pages?)|(?:sheets?|forms?) for the (?:plate|device)|${sheetState}*${sheetName}))`;
export const when = join(
  "(?:when|once|as soon as) (?:i|we|he|she)(?: (?:am|are|is|get|gets|got))?(?: (?:back|home|in(?! (?:the|my|our))))+ (?:at|to|in|from|on) (?:(?:the|my|our) )?(?:shop|office|truck|desk|yard|van|house|site|work|job|road|computer|lunch|town)",
  "(?:first thing |by )?(?:tomorrow|today|tonight|on monday|monday|on tuesday|tuesday|on wednesday|wednesday|on thursday|thursday|on friday|friday) (?:morning|afternoon|evening|night|noon|at the latest|first thing)|(?:first thing )?in the morning|(?:by )?(?:the )?end of (?:the )?(?:day|week)|early next week|next week",
  "while (?:i|we) (?:was|were) (?:at it|in there|there)|from (?:the|my) (?:office|shop|desk)|today|tomorrow|tonight|monday|tuesday|wednesday|thursday|friday|on monday|on tuesday|on wednesday|on thursday|on friday|before lunch|later(?: today| on)?|soon|shortly|now|again|separately|next|over|back|too|also|as well|here|herewith|momentarily",
  "this (?:morning|afternoon|evening)|(?:tomorrow|first thing(?: in the)?|first thing tomorrow) ?(?:morning)?|(?:later )?this (?:week|morning|afternoon)",
  String.raw`in (?:a|an|the next|\d{1,2}|ten|five) (?:bit|minutes?|moment|few minutes|hours?|few hours|separate (?:mail|e-?mail))|in the same mail|in the a\.?m\.?|tmr?w(?: morning)?|by (?:e-?)?mail|with this (?:e-?mail|mail|letter)|in this (?:e-?mail|mail|letter)|in (?:the )?attach(?:ment)?|after lunch|by (?:tonight|tomorrow|noon|end of day|eod)`,
  "(?:when|once|as soon as) (?:i|we|he|she)(?: (?:am|are|is|get|gets|got))?(?: (?:back|home|in))*(?: (?:at|to|in|from) (?:the|my) (?:shop|office|truck|desk|yard|van|house))?",
);
export const comes = join(
  `(?:(?:is|are|was|were|has been|have been|will be) )?(?:(?:now|also|already|all|both) )*(?:attached|att|att\\.|enclosed|on (?:its|it is|the|their) way|coming|sent|resent|here|on here|with this (?:e-?mail|mail|letter)|in (?:this|the) (?:e-?mail|mail|attachment)|in attach(?:ment)?|corrected and attached)`,
  "(?:will|to|shall) (?:follow|come|be along|be sent)|follows?|following|comes?|to come",
);
export const forNumbers = `(?: (?:for|of|on|to|with|re) (?:(?:no\\.? )?${numbers}|it|that|this|that one|both|all|(?:the )?(?:others?|rest|other (?:one|ones|two|three|four))|(?!(?:and|or|not)\\b)\\p{L}{1,3}-\\d{1,4}))?`;
export const send = join(
  "(?:(?:i|we|he|she|they|(?:the|my|our) (?:boss|office|wife|husband|son|daughter|brother|sister|partner|apprentice|colleague|secretary|assistant|foreman|engineer|architect|designer|draftsman|lad|girl|guys?)|boss|office|will|just|have|am|are|is|now|also|going to|get (?:the|my|our) \\p{L}+ to|in attach(?:ment)? you|please|kindly|pls|you will|you) ?)*(?:send|sends|sending|sent|resend|resending|attach|attached|attaching|enclose|enclosed|enclosing|redo|redid|redoing|fixing|forward|forwarding|e-?mail|e-?mailing)",
);
export const have =
  "(?:(?:i|we|you|now|also|please|kindly|pls|will) )*(?:find(?: attached| enclosed)?|see|got|have)";
export const shows = join(
  `${sheet}${forNumbers}(?: (?:is|are))?(?: (?:now|also|already))* (?:${comes}|redone|corrected|fixed|revised)(?: ${when})*${forNumbers}`,
  `${have} ${sheet}${forNumbers}(?: ${comes})?${forNumbers}`,
  `(?:${send}) (?:you )?(?:${sheet}|it|them|this|that)${forNumbers}(?: ${comes})?(?: ${when})*${forNumbers}(?: ${when})*`,
  `(?:attached|enclosed|here)(?: is| are)?(?: please find)? ${sheet}${forNumbers}(?: ${when})*`,
  `(?:please )?(?:find|see) (?:attached|enclosed) ${sheet}${forNumbers}`,
  `${sheet}${forNumbers} ${when}(?: ${when})*`,
  `(?:will )?(?:resend|send (?:it|them) (?:again|over))(?: ${when})*`,
  `(?:please |kindly |pls )?see (?:the |my |our )?(?:attached|enclosed|annex|attachment|revised|corrected)${forNumbers}|attachment|annex|(?:re)?sending(?: (?:it|them|too|now|shortly|again))*`,
  `(?:please |kindly |pls )?see (?:the |my |our )?(?:attached |enclosed )?${sheet}${forNumbers}`,
  "(?:(?:is|are|was|were|now|also|all|both) )*(?:fixed|corrected|changed|shortened|updated|amended) (?:on|in|with) (?:the |my )?(?:attached|new|same|revised|enclosed)(?: sheet| one| file)?(?: too| as well)?",
  "(?:(?:it|both|all|they|that one) )?(?:is |are )?(?:also )?(?:on|in) the same (?:new |corrected )?(?:sheet|one|pdf|file)(?: too| as well)?",
  "(?:it )?comes? (?:in the same mail|today|tomorrow|tonight|separately)",
  `(?:(?:that|this|which|it) )?(?:takes care of|covers|sorts(?: out)?|fixes|settles|addresses|deals with) ${numbers}`,
);

export const field =
  "(?:(?:contact|company|project) name|(?:(?:billing|shipping|ship-to|bill-to|ship to|bill to|delivery|contact|missing|full) )*(?:address|street|city|town|zip(?: code)?|post(?:al)? ?code|state|country|contact|phone(?: number)?|fields?)(?: and (?:street|city|zip|phone))?)";
/** What was mended on a sheet that comes, beside what was asked: the sheet says so itself. */
export const detail = join(
  `(?:(?:and|with|also|now) )*(?:the |our |my )?${field}(?: (?:is|are|has been|was))?(?: (?:now|also))* (?:filled in|filled out|filled|added|completed|entered|ticked|corrected|in there|on it)(?: (?:now|too|as well|also))*`,
  `(?:(?:and|also|now) )*with (?:the |our )?(?:right |correct |full |missing )?${field}`,
  `(?:(?:i|we)(?: have)? )?(?:filled in|added|completed|entered|ticked) (?:the |our )?${field}`,
  "(?:(?:i|we)(?: have)? )?ticked (?:the )?(?:box (?:for )?)?(?:ship to )?(?:same as bill-to|same address)(?: box)?",
  "(?:(?:the )?(?:legend|row|button|gang|text|word)s?(?: \\d{1,2})?(?: (?:of|on|in) (?:button|row|gang) \\d{1,2})? (?:is |are |has been )?)?(?:now )?(?:split|spread|put) (?:over|across|on|onto|into) (?:the |both |two |2 )?rows",
  "(?:the )?(?:legend|text)s? (?:is |are |has been )?(?:now )?shortened|(?:with|has) (?:the |a )?short(?:er|ened) (?:legend|text)",
);

export const says = join(
  String.raw`(?:${person}|(?<who>[\p{L}'’-]{3,15})) (?:just |also )?(?:said to tell you|says?|said|confirms?|confirmed|tells me|told me|told us)(?: that)?`,
  `${yesWord},?(?! (?:no|nope|nah)(?!\\p{L}))`,
  "(?:please note|kindly note|please be advised|we confirm|i confirm|i can confirm|we can confirm|confirming|just to confirm|to confirm|we hereby confirm|hereby confirm|hence|hence our answer is|so|our answers? (?:is|are)|as you (?:ask|write)(?: in (?:the|your) letter)?|therefore|and|for)(?: that)?:?",
);
export const idle = join(
  "(?:please |kindly |pls )?(?:(?:see|find) )?(?:my |our |the )?(?:answers?|repl(?:y|ies)|responses?|comments?|notes?|remarks?) (?:are )?(?:inline|in ?between|below|above|(?:next to|under|beside|after|behind) each(?: (?:one|point|question))?|in (?:red|blue|green|capitals|caps|bold|line|your text|your letter|your mail)(?: below)?|as follows)",
  "taking (?:your |the )?(?:points|questions|items)(?: in turn| one by one)|(?:to answer|answering|in (?:answer|reply|response) to|regarding|re|further to) your (?:questions|points|letter|mail|e-?mail|message|note)(?: (?:regarding|about|on|for|of) (?:our|the|my|this) (?:order|job|project|sheets))?",
  "burin|gentlemen|gents|ladies|folks|lads|mate|guys|sir|madam|team|friends?|all(?! (?:of |the |these |those )?(?:two|three|four|five|six|\\d))|everybody|everyone|(?:the )?(?:row|legend|text|name|word)s? (?:is|are) (?:now )?(?:\\d{1,2} (?:characters|letters)(?: long)?|shorter|short enough)|(?:now )?(?:it |they )?fits?(?: now)?",
  "all set|ha(?:ha)*|lol|oh|ah|ok|okay|hi|hello|sir|hey|right|sure|oops|thank you(?: (?:again|so much|very much))?|thanks?(?: (?:again|a lot|so much|very much))?|thx|cheers|lets go|let us go|hi (?:all|there|guys|team)",
  "hope (?:that|this|it) is (?:ok|okay|fine)|talk(?:ed)? to (?:him|her|them)|(?:spoke|talked|checked|confirmed) with (?:him|her|them|the (?:owner|client|customer|boss))",
);
/** Who says no owns a slip. */
export const owns = join(
  `(?:very |so )?sorry(?: (?:about|for) (?:that|it|this|those|(?:all )?the (?:mistakes?|errors?|typos?|mix-?up)))?|my bad|oops|oh shoot|whoops|apologies|my (?:spelling|typo|mistake|error|fault)|our (?:mistake|error|fault|typo)|(?:how |so |very |a bit )?embarrassing|(?:this|that|it|here) (?:is|was)(?: (?:a|my|our|indeed a|effectively an))? (?:mistakes?|errors?|typos?)(?: from us)?|fat (?:thumbs|fingers)`,
  `(?:yes,? )?(?:you are (?:quite |absolutely |so )?right|you have (?:reason|me there)|(?:good|great|nice) (?:catch|spot)|well (?:spotted|caught))(?: there)?(?: (?:on|about|with|for) (?:${numbers}|it|that|this|both|all(?: (?:two|three|four|both))?(?: (?:points|counts|of them))?))?`,
  String.raw`(?:spelled|spelt|typed|written) wrong(?:ly)?(?: by (?:us|me|our \p{L}+))?|thanks? (?:you )?for (?:catching|spotting) (?:it|that|this|those|them)|there the sheet was wrong|that one (?:actually )?is wrong|there is (?:an? )?\p{L}{1,6} missing|(?:wife of the |the )?(?:owner|client|customer|boss) (?:caught|noticed|saw) (?:that|it) too|(?:the )?(?:customer|client|owner) (?:made a mistake|got it wrong|misspelled it)`,
);

export const named =
  "(?:(?:family|last|first|given|middle|maiden|pet|house|trade|brand|company|proper|street|boat|dog's|guys?|guy's|owner's|client's|customer's|family's|place) )*(?:sur|nick|last)?names?";
/** What stands behind a yes and tells no more than why. */
export const reason = join(
  `(?:${it}|which|the words)?(?: ?(?:is|are))?(?: (?:also|all|just|both|really|indeed))*(?: in| from)? ?(?:a |the )?${tongue}(?: (?:words?|names?|spelling|term|language))?(?: lol)?`,
  `(?:${it} )?(?:is |are )?(?:just |really )?(?:a |an |the |our |their |his |her |my )(?:\\p{L}+ 's )?(?:own )?(?:${tongue} )?${named}(?: of the (?:family|owners?|house|room|place|boat|dog|client))?`,
  "(?:as )?per (?:the |our |my |their )?(?:approved |latest |signed |project |door |room |client's |architect's |architects |owner's )*(?:standards?|submittals?|schedules?|drawings?|plans?|spec|specs|specifications?|owner|client|customer|architect|designer|engineer)",
  "(?:this|the|that) (?:button|one) is (?:a )?(?:spare|reserve)|spare|for future(?: use)?|no mistake|no typo|not a (?:typo|mistake)|so (?:wanted|meant|intended|gewollt)|both so intended|on purpose|intentional|deliberate",
  `(?:(?:that|it|this|they) (?:is|are) )?(?:exactly |just |really )*${how}`,
  "(?:spelled|spelt|written) (?:just |exactly )?(?:like that|that way|this way|so|right|correctly)|spelling is right(?: on both)?",
  "(?:same|this) (?:is )?(?:the )?same (?:name|word)|the name is (?:this|the) same|(?:the )?(?:same )?reason(?:ing)? as (?:above|\\d{1,3})|likewise|as above|same here|ditto",
  String.raw`short for \p{Ll}{3,15}(?!,? so )|(?:the )?same|(?:it |they )?(?:is |are )?(?:also )?in ${tongue}(?: too| as well)?|${it} is the ${tongue} (?:word|name) for (?:the |a )?\p{Ll}{3,15}`,
  "no (?:actions?|changes?|corrections?) (?:is |are )?(?:needed|required|necessary)(?: (?:on|to|for|in) (?:them|it|both|these|those))?|all good",
  `(?:${it}|which)? ?(?:is|are)?(?: also| all| just| both)* in ${tongue}(?: too| as well)?|(?:please )?leave (?:it|them|those|these)(?: alone| be)?`,
  "(?:(?:it|that) is )?(?:exactly |just )?(?:what|how) it (?:says|is spelled|is spelt|reads|stands|is written)(?: (?:on|in|over|above) (?:the|our|their) \\p{L}+)?",
  "(?:(?:it|that|this) is )?the the word (?:room|hall|bar|lounge|area|shop|store|office|house|lights?|lighting|lamps?)",
  "(?:it is )?the word,? not (?:the |a |an )?\\p{L}+|(?:it is )?the the word|the word",
  "(?:there is |with )?one (?:is )?(?:at|by|for|on|in|near) (?:each|either|every) (?:door|end|side|bed|entrance|entry|room|wall|table|desk|window|lamp|group|zone|circuit)(?: of (?:the|a) \\p{L}+)?|(?:there are )?two (?:separate |different )?(?:circuits|doors|entrances|lamps|groups|zones)|same (?:room|lamps?|circuits?|lights?|zone|scene)",
  "(?:the )?(?:two |both )?(?:buttons|legends|names|they)(?: are)? (?:intentionally|deliberately|meant to be|on purpose) (?:the same|alike|identical)|(?:intentionally|deliberately|meant to be) (?:the same|alike|identical)",
  "believe it or not|weird but (?:true|real|right)|odd but (?:true|right)|crazy but true|honest|really|i (?:asked|checked) (?:twice|again|him|her|them)",
);

/** Why a no is one. */
export const changed = `(?!we |i )${person} (?:has |have )?changed (?:his|her|their) minds?(?: (?:on|about) (?:it|that|this|that one|this one|that name))?(?: (?:anyway|since))?`;
/** What tells of the legends of a sheet on which some are in capitals and some are not. */
const caps = "(?:in )?(?:(?:all|block) )?(?:capitals?|capital letters|caps|upper ?case)";
const allOf =
  "(?:(?:they|these|those|it|all(?: of (?:them|it))?|both|everything|the (?:rows|legends|words))(?: (?:all|both))?)";
export const inCapitals = join(
  `(?:please )?(?:make|put) (?:it|them|everything)(?: all| both)? ${caps}`,
  `(?:${allOf} )?(?:should|must|ought to|has to|have to) (?:(?:all|both) )?(?:be|have been) (?:${caps}|alike|the same)`,
  `(?:${allOf} )?(?:(?:is|are) )?(?:now )?(?:(?:changed|made|set|put) )?(?:(?:it|them) )?(?:(?:all|both) )?(?:to )?${caps}(?: now)?`,
);
/** What tells why a mark that seems to ask for several asks for one. */
export const onlyOne = join(
  "(?:(?:we|i|they) )?(?:(?:do|really|actually) )*(?:just|only)(?: (?:need|want|order|ordering|ordered|meant|require))? (?:the )?(?:one|1)(?: (?:is )?(?:station|needed|required|wanted|ordered|piece|only))?",
  "(?:(?:we|i|they) )?(?:need|want|order|ordered|require) (?:just |only )?(?:the )?(?:one|1)(?: only)?|(?:just |only )?(?:the )?(?:one|1)(?: is)? (?:is enough|only|station only|enough|needed|wanted)",
  "the mark is (?:just |only )?(?:(?:copied|taken|straight) )*(?:from|off|on|as (?:on|per|in)) (?:the|our|his|their) (?:\\p{L}+(?: 's)? )?(?:drawings?|plans?|schedule)",
);
/** What tells why two buttons say the same. */
export const twoOfThem = join(
  String.raw`(?:both|the two|they)(?: of them)?(?: buttons)? (?:work|do|control|run|switch|dim|operate|serve)s? (?:the )?(?:same )?(?:the word|\p{L}+)(?: (?:lights?|lamps?|room|thing|fan))?`,
  String.raw`(?:there are )?two (?:switches|buttons) (?:at|on) (?:each|either) (?:end|side)(?: of the \p{L}+)?(?: (?:do|that do) the same(?: thing)?)?`,
  `(?:(?:${it}|both) (?:is|are) )?(?:for )?(?:an? )?(?:two|three|four|[2-4])[- ]?way(?: (?:switching|switch|pair|circuit|lighting|control|lights?))?`,
  "(?:one|1) (?:is )?(?:at|by|for|on|in|near) (?:each|either|every) (?:door|end|side|bed|entrance|entry|room|wall|table|desk|window|lamp|group|zone|circuit)(?: of (?:the|a) \\p{L}+)?",
);
/** What tells why a word is not written out. */
export const short = join(
  `(?:there (?:is|was) )?(?:no|not enough) (?:more )?(?:room|space)(?: for (?:more|it all|all of it|the (?:full|whole|long) (?:word|name)))?`,
  String.raw`(?:${it} (?:is|was) )?(?:(?:just|only|simply) )?(?:an abbreviation|abbreviated)(?: (?:to fit|so (?:that )?it fits|for space))?`,
  String.raw`(?:the (?:full|whole|long) (?:word|name)|(?<full>\p{L}{3,20})|it) (?:is not|isn'?t|does not|doesn'?t|did not|didn'?t|will not|won'?t|would not|wouldn'?t) fit(?:ting)?(?: (?:in|on) (?:the|one|a|that) (?:row|line|button))?(?: otherwise)?`,
);
/** "Barley throughout", of devices and plates that differ. */
export const inFinish = String.raw`(?:(?:(?:the )?(?:device|plate|both|all|it|everything|they|that one) )?(?:should|must) (?:all |both )?(?:be|have been) |all |both )?(?<finish>\p{L}+(?: \p{L}+)??)(?: (?:throughout|everywhere|for (?:both|all)|on both|too|as well|now|like the (?:plate|device|others?|rest)))*`;
