import {
  atCapitals,
  atDigits,
  atExchanged,
  atFinish,
  atSame,
  atSeveral,
  hasButton,
  isAsFound,
  isOfTwice,
} from "./fits.ts";
import { bareFolk, colour, det, folk, looks, spot, that, very, type Why, wall, word } from "./why-words.ts";

/*
 * Why something is meant as it stands, where it is said of questions of one kind: finishes that differ, a mark that asks
 * for several, buttons that say the same, and rows in capitals beside others.
 */

const aim =
  "(?:walls?|wallpaper|tiles?|tiling|paint|trim|room|furniture|decor|bar|panell?ing|woodwork|doors?|door furniture|floor|kitchen|curtains|carpet|splashback|worktop)";
/** What stands in a room or is in a building, twice: no goods of this trade, which would be a count of them. */
const stood = String.raw`(?!(?:units?|pieces?|pcs|sets?|off|lots?|packs?|samples?|of|more|each|please|sorts?|kinds?|types?|versions?|problems?|issues?|things?|questions?|options?|ways|minds)(?!\p{L}))${word}`;
const letters =
  "(?:capitals?(?: letters)?|caps|upper ?case|small (?:ones|letters)|lower ?case|upper and lower ?case|mixed case)";
/** Such clauses. */
export const whysOfQuestions: readonly Why[] = [
  // Finishes.
  {
    source: String.raw`(?:\p{L}{1,3}-\d{1,4}|that one|this one|the (?:device|station)) is (?:in|at|by) (?:the|a|our|their) ${word}(?: room| wing| block| hall)?|(?:in|for) (?:an?|another) (?:different |separate |other )?(?:room|wing|part|area|space|block|building)`,
    fits: atFinish,
  },
  {
    source: String.raw`${spot}(?: (?:there|in there))? (?:is|are|has|have|gets?)(?: (?:all|mostly|in|painted|the|a|got|very|much|quite))* ${colour}(?: (?:trim|${wall}|ones?))*(?: (?:there|too|as well))*`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?:the |a )?${colour} ${wall}(?: (?:there|in there|in that (?:room|wing)|behind it|in (?:that|the) ${word}))*`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?:(?:${det} )?(?:${bareFolk}|boss|they|she|he|we)s? ${very}(?:wants?|wanted|likes?|liked|asked for|chose|is after|are after) (?:the|a|some|that) ${looks}|(?:(?:it is|just) )?(?:for )?(?:the |a )?(?:contrast|two[- ]tone(?: look)?)|${that} (?:is|are) (?:meant|supposed|intended) to (?:contrast|stand out|differ|be different)|${that} (?:contrasts?|stands? out)|(?:to|it|they|that) (?:match|matches|go with|goes with|suits?) ${det} (?:${colour} )?${aim})`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?<finish>\p{L}+)(?: (?:on|with|in|and) (?:the |an? )?(?<under>\p{L}+)(?: plate)?)? (?:is|was) (?:(?:exactly|just|really) )?(?:(?:what|how) (?:${folk}|was|is) (?:wants?|wanted(?: (?:it|there|here))?|asked for|chose|chosen|likes?|ordered|specified|picked|agreed)|(?:meant|wanted|intended|chosen|right|correct|specified|asked for))(?: (?:for|in) (?:that|the|this) (?:(?:east|west|north|south) )?(?:room|wall|wing|block|hall|corridor|kitchen|bar|lobby|building))?`,
    fits: isAsFound,
    any: true,
  },
  {
    source: String.raw`${folk} ${very}(?:wants?|wanted|picked|chose|asked for|specified|likes?) (?<finish>\p{L}+)(?: (?:there|here|(?:for|in|on) (?:that|this|the) (?:${spot}|one|${word})|on purpose))+`,
    fits: isAsFound,
    any: true,
  },
  {
    source: String.raw`${spot} is (?:(?:to be|meant to be) )?(?<finish>\p{L}+)(?:(?: as)? per ${folk}| on purpose)?`,
    fits: isAsFound,
    any: true,
  },
  {
    source: String.raw`${folk} (?:wants?|wanted|likes?) (?:it|that one|this one|them) (?:to (?:stand out|contrast|differ|be different)|(?:lighter|darker|different) (?:there|in there|in that (?:room|wing)))`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?:the |that )?${looks}(?: (?:between|of|in) (?:(?:the|device|plate|devices|plates|finish|finishes|colou?rs?|two|and) ?)+)? ?(?:is|was) (?:(?:quite|very|all|just|exactly|really) )*(?:on purpose|deliberate|intentional|intended|meant|wanted|by design|what (?:${folk}) (?:wants?|wanted|asked for|chose|likes?))`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?<finish>\p{L}+) (?:on|with|in) (?:the |an? )?(?<under>\p{L}+)(?: plate)?`,
    fits: isAsFound,
    any: true,
  },
  {
    source: String.raw`(?:(?:the )?(?:plate and (?:the )?device|device and (?:the )?plate|two|finishes|colou?rs)|they|these|both|those) (?:are|is) (?:all |both )?(?:meant|supposed|intended) to (?:be different|differ|contrast)|(?:an? |the |for (?:an?|the) )?(?:feature|accent) wall`,
    fits: atFinish,
    any: true,
  },
  {
    source: String.raw`(?:${that}|that one|this one|the (?:device|station)|${spot}) is (?:meant|supposed|intended) to be (?<finish>\p{L}+)(?: (?:there|in there))?`,
    fits: isAsFound,
    any: true,
  },
  // A mark that seems to ask for several.
  {
    source: String.raw`(?:(?:we|i|they|it is|there is|that is|for|are|am|is|will|do|really) )*(?:just|only)(?: (?:need|want|make|making|ordering|buying|getting|require|after))?(?: (?:just|only))? (?:the )?(?:one|1)(?: (?:single|station|piece|unit))?(?: please)?(?:(?: is| was)?(?: (?:wanted|needed|required|ordered|meant|made|to be (?:made|cut|engraved)|for now|this time|here|of (?:it|them|these|those)|on this (?:order|job)))+)?|(?:the )?(?:one|1) (?:is|will be) (?:all (?:that )?(?:we|i|they) (?:need|want|ordered|require|are after)|all that is (?:needed|wanted|required)|plenty|enough|right|correct|what we (?:need|want))|(?:the )?(?:quantity|qty)(?: is)? (?:just |only )?(?:one|1)|(?:(?:we|i|they) )?(?:want|need|ordered)? ?(?:just |only )?an? single (?:one|station)`,
    fits: atSeveral,
  },
  {
    source: String.raw`(?:the )?(?:mark|note|text|wording|(?<quoted>typ\.? of \d{1,2})) (?:is|was)(?: (?:just|only|simply))? (?:(?:the mark|how it is marked|what it says|copied|taken|straight|written) )*(?:off|from|on|in|as on) (?:the|our|his|their) (?:\p{L}+(?: ?'s)? )?(?:drawings?|plans?|schedule)|(?:the mark|(?<typ>typ\.? of \d{1,2})|(?:that|it)) is (?:(?:just|only|simply) )?(?:how|what|the way) (?:it (?:is|was) (?:marked|shown|called|written|labell?ed|noted)|(?:it|the mark|the drawing|the plan|the schedule) (?:reads|says|shows|has it|calls it))(?: (?:on|in) (?:the|our|his|their) (?:\p{L}+(?: ?'s)? )?(?:drawings?|plans?|schedule))?`,
    fits: atSeveral,
  },
  // Buttons that say the same.
  {
    source: String.raw`(?:(?:and|there is|with|it is|they are|we have|that is) )*(?:one|1)(?: (?:button|of them|set))?(?: (?:is|goes|for|at|by|on|in|near|to|from))* (?:each|either|every|both) (?:doors?|ends?|sides?|beds?|entrances?|entry|rooms?|walls?|tables?|desks?|windows?)(?: of (?:the|a) (?:the )?${word})?`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:(?:${that}|both|it is|they are) )?(?:(?:is|are) )?(?:for )?(?:an? )?(?:two|three|four|[2-4])[- ]way(?: (?:switching|switch|pair|circuit|lighting|control|lights?|(?:the )?(?:hall|corridor|passage|stairs|landing|room|the word)))?(?: (?:from|at|between) (?:the )?(?:both|either|each|two) (?:ends?|sides?|doors?)(?: of the (?:the )?${word})?)?|(?:both|the two) (?:ends|sides|doors|rooms|walls)(?: (?:are|is|read|say))? (?:the )?(?:same|alike|identical)`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:(?:the )?(?:two |both )?(?:the word )?(?:\d{1,3} )?buttons?|both(?: buttons)?|they)(?: (?:both|all))? (?:run|do|switch|control|work|operate|dim|turn on|turn off) the same (?:lamps?|lights?|circuits?|thing|zone|scene|group|the word|\d{1,3}(?!\d))(?: from (?:two|both|either|opposite|different) (?:buttons|places|spots|sides|ends|doors|walls))?|(?:the )?same (?:lamps?|lights?|circuits?|zone|scene|group)(?: from (?:both|either|each|two) (?:ends?|sides?|doors?)(?: of the (?:the )?${word})?)?`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:button )?(?<button>\d) is (?:(?:on|off)(?=,? and )|(?:for )?(?:the |a )?(?:(?:dimmed|full|evening|night|low|bright|cleaning|main|soft) )?(?:scene|dimmer|setting)(?: (?:for|in|of) (?:the )?(?:same )?(?:the )?${word})?)(?:,? and (?:button )?(?<other>\d) is (?:on|off|(?:for )?(?:the |a )?(?:(?:dimmed|full|evening|night|low|bright|cleaning|main|soft) )?(?:scene|dimmer|setting)(?: (?:for|in|of) (?:the )?(?:same )?${word})?))?`,
    fits: hasButton,
    any: true,
  },
  {
    source: String.raw`(?:and )?(?:the|our) ${word} (?:knows?|can tell|will know|remembers?) which (?:one )?is which|(?:and )?(?:they|we|staff|everyone|everybody) (?:all )?(?:know|knows|can tell) which (?:one )?is which|${folk} (?:wants?|wanted|likes?) (?:it|them|both|the two)(?: (?:both|to be|to read|to say|worded|named|called|labell?ed|marked))* (?:the same|alike)`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:(?:there (?:is|are)|we have|it has|they have) )?(?:an?|two|three|both) (?:separate )?(?:the word|aisles?|doors?|doorways?|entrances?|ways in(?:to ${det} (?:the )?${word})?)(?: (?:on|at|in|to) (?:each|either|both|the|opposite) (?:(?:the )?${word}))?|(?:left and right|both) sides? of ${det} (?:the )?${word}|(?:both|the two)(?: of them)?(?: buttons)? (?:say|read) (?:the word|the same)|${folk} (?:wants?|wanted) (?:them |it )?both(?: of them| buttons)? to (?:say|read|be) (?:the word|the same|that)|(?:they|both)(?: buttons)?(?: both| all)? do the same(?: thing| job)?|(?:it|that|they) (?:is|are) (?:for |on )?the same (?:the word|lamps?|lights?|circuits?|zone|scene|group)`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:the word|the ${word}|it|that room|they|we|there) (?:has|have|is|are|got|gets?)(?: got)? (?:two|three|four|2|3|4|a pair of|several) (?:separate |identical |different )?(?:rows? of (?:lights|lamps|fittings|pendants)|doors?|entrances|doorways|ends|sides|ways in|boards|screens|zones|circuits|beds|stations|sets)(?: (?:with|and) (?:an?|one) (?:station|button|switch|device|keypad|plate)(?: (?:at|on|by|for|to|beside|inside))+ (?:each|either|every|both)(?: (?:one|door|end|side))?)?(?: (?:in|on|at|to|of) (?:the|each|that) (?:the )?${word})?`,
    fits: atSame,
    any: true,
  },
  {
    source: String.raw`(?:(?:there (?:is|are)|(?:we|they|it|that room)(?: do)?(?: really)? (?:has|have|got))(?: got)? )?(?:two|three|four|both|a pair of) (?:separate |identical |different )?(?:${stood} )?${stood}(?: (?:in|on|at|to|of|by|for) (?:${det}|that|this|each|either|every|both) (?:the )?${word}(?: of ${det} (?:the )?${word})?)?`,
    fits: atSame,
  },
  {
    source: String.raw`(?:(?:there (?:is|are)|(?:we|they|it|that room)(?: do)?(?: really)? (?:has|have|got))(?: got)? )?(?:two|both|a pair of) (?<near>(?:the word|\p{L}{3,20}))(?: (?:in|on|at|to|of|by|for) (?:${det}|that|this|each|either|every|both) ${word}(?: of ${det} ${word})?)?`,
    fits: isOfTwice,
    ofWord: true,
  },
  {
    source: String.raw`(?:on |at |one (?:on|at|for) )?(?:the )?(?:front|east|north|left|top|one)(?: (?:wall|end|side|door))? and (?:(?:one )?(?:on|at|for) )?(?:the )?(?:back|rear|west|south|right|bottom|other)(?: (?:walls?|ends?|sides?|doors?))?(?: of ${det} (?:the )?${word})?`,
    fits: atSame,
  },
  {
    source: String.raw`(?:both|they|the two)(?: (?:the )?(?:the word|${word}))? (?:are|is) (?:both |all )?(?:for |on )?the same (?:the word|lamps?|lights?|circuits?|zone|scene|group)|(?:both|all) (?:are )?(?:the )?(?:same|alike|identical) (?:on purpose|intentionally|deliberately|by design)|(?:the )?same (?:hall|hallway|corridor|stairs|landing|lobby|kitchen|area|space|passage)|(?:at |from )?both (?:ends|sides|doors)(?: of (?:it|the room|the hall))?`,
    fits: atSame,
    any: true,
  },
  {
    source: "(?:so|hence|thus|therefore) (?:(?:it is|it stands|we have) )?the word (?:is )?(?:twice|on both)",
    fits: atSame,
    any: true,
    ofWord: true,
  },
  {
    source: String.raw`(?:(?:a|one) (?:station|button|switch|device|keypad|plate) )?(?:at|on|by) (?:each|either|both) (?:doors?|ends?|sides?|doorways?|entrances?)(?: of (?:the|that) (?:the )?${word})?`,
    fits: atSame,
    any: true,
  },
  // Legends that suit another gang.
  {
    source: String.raw`(?:the )?(?:(?:scene|button) )?(?:names|legends|words|labels|buttons)(?: (?:on|of|for|in|at) (?:pos(?:ition|\.)? ?\d|that one|both|position \d|the (?:first|second|left|right) (?:one|device)))? (?:is|are) (?:(?:just|really|all) )?(?:(?:for )?(?:the )?(?:lighting|light|shade|blind|curtain|dimming) )?(?:scenes?|presets?|names|lights|shades|blinds)(?:,? (?:even (?:if|though) )(?:they|it) (?:sounds?|looks?|reads?) (?:like|as) (?:the )?(?:blinds|shades|lights|curtains))?`,
    fits: atExchanged,
  },
  {
    source: String.raw`(?:the )?positions (?:are|is) (?:(?:as|the way) )?(?:right|correct|as drawn|as (?:shown|drawn|planned)|on the drawing)|(?:right|correct)? ?as drawn|(?:it|that|they) (?:is|are) (?:how|what|as) (?:the )?(?:drawing|plan|schedule)s? (?:shows?|has|says?|reads?)(?: (?:it|them))?`,
    fits: atExchanged,
  },
  // A number behind letters.
  {
    source: String.raw`(?:(?:it|that|the word) (?:is|means|stands for) )?(?:(?:the |a )?(?:number|figure|digit|numeral) (?:one|two|three|zero|1|0)|(?:the |a )?(?:one|zero|1|0) (?:as in|like) (?:the )?(?:number|figure|digit)|(?:an? )?(?:one|zero),? not (?:an? )?(?:i|l|o|letter|eye)|(?:\p{Lu}{1,4} (?:number )?(?:one|two|three|zero|1))|(?:lighting |dimmer )?(?:circuit|channel|zone|group|line|feed) (?:number )?(?:one|1))(?:,? (?:theatre|theater|stage|lighting|av|trade) (?:talk|speak|shorthand|jargon|slang) for ${word})?`,
    fits: atDigits,
  },
  // Legends in capitals beside others.
  {
    source: String.raw`(?:the )?${word}(?: names)? (?:(?:are|is) )?(?:all )?in ${letters},? (?:and|while|with)? ?(?:the )?${word}(?: names)? (?:(?:are|is) )?(?:all )?in ${letters}|${that} (?:is|are) (?:meant|supposed|intended) to be (?:mixed|a mix|mixed case|different|like that)`,
    fits: atCapitals,
  },
  {
    source: String.raw`(?:the )?(?:ones in )?${letters} (?:are|is|=) (?:the )?${word}(?: ${word})?(?:,? (?:and|while) (?:the )?(?:ones in )?${letters} (?:(?:are|is|=) )?(?:the )?${word}(?: ${word})?)?`,
    fits: atCapitals,
  },
  {
    source: String.raw`${det} (?:${word}(?: 's)? )?(?:schedule|drawings?|plans?|list|spec|standard|signs|signage) (?:has|have|shows?|puts?|writes?|gives?|uses?|lists?) ${det} ${word}(?: ${word})? (?:all )?in ${letters},? (?:and|with) (?:${det} )?(?:${word}(?: ${word})?|rest|others) (?:all )?in ${letters}`,
    fits: atCapitals,
  },
  {
    source: String.raw`(?:${det} )?(?:head |chief |lead )?(?:${bareFolk}|librarian|boss|they|he|she|we|manager|headmaster|curator)s? (?:is|was|are|were) (?:(?:very|quite|really|most|rather) )*(?:particular|picky|fussy|specific|precise|clear|firm) (?:about|on|over) (?:it|that|this|them|the capitals|which (?:ones|words|rows|of them)? ?(?:are|get|go|have|in)(?: in)? capitals(?: and which (?:ones )?(?:are|do|get|have)? ?not)?)`,
    fits: atCapitals,
  },
  {
    source: String.raw`(?:the )?(?:room|place) names (?:are )?(?:in )?(?:small letters|lower ?case|capitals|caps|upper ?case),? (?:and )?(?:the )?(?:functions?|scenes?|rest|others) (?:are )?(?:in )?(?:small letters|lower ?case|capitals|caps|upper ?case)|(?:an? )?(?:mixed case|mix(?:ture)? of (?:capitals|upper case|caps) and (?:small letters|lower ?case|small)) is (?:what|how) ${folk} (?:asked for|wants?|wanted|likes?|chose|specified|ordered|uses?)(?: it)?`,
    fits: atCapitals,
  },
];
