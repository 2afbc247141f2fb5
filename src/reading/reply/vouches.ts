import { bids } from "./cues.ts";
import { type LetterFacts, patternOf } from "./tallies.ts";

const words = (pattern: string, flags = "iu"): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}'’-])(?:${pattern})(?![\\p{L}\\p{N}])`, flags);

const sheets =
  "(?:(?:the|our|my|these|those|this|your|both|all|each)(?: the)? )?(?:attached )?(?:sheets?|forms?)";
/** How somebody says that the sheets say it: "as on the form", "and that's how we have it on the sheet". */
const shown = words(
  `(?:${[
    `as (?:(?:it )?(?:is |stands )?(?:on|in)|shown (?:on|in)|stated (?:on|in)|seen (?:on|in)) ${sheets}`,
    `as (?:you['’]?(?:ll| will| can| ll)? (?:can )?see|youll see) (?:it |them )?(?:on|in) (?:${sheets}|them|each)`,
    `as ${sheets} (?:shows?|says?|ha(?:s|ve) it)`,
    `as (?:marked|listed|named|noted|typed|written|filled in) (?:on|in) (?:${sheets}|them|each|all of them)`,
    `(?:and )?that(?:['’]s| is) (?:how (?:we|i) (?:have|put|typed|wrote) (?:it|them)|what(?:['’]s| is| we (?:have|put|typed|wrote))|how (?:it|they) (?:is|are|stands?|reads?)) (?:on|in) ${sheets}`,
    `(?:and|but|so) (?:it['’]?s|they['’]?re|it is|they are|this is|we['’]ve done (?:that|so|it)) (?:all )?(?:on|in) ${sheets}`,
    `(?:and|but|so) ${sheets} (?:is right|are right|has it(?: so)?|have it(?: so)?|says? so(?: too)?|shows? (?:it|that|so)|shows? what (?:he|she|they|we) (?:ended up with|settled on|chose|decided|agreed on))`,
    "(?:and|so) (?:that|this)(?:['’]s| is) (?:how|what) (?:we|i) (?:went with|used|put|did|laid (?:it|them) out|have|typed|wrote)",
    `(?:the )?(?:everything|finish(?:es)?|lettering|legends?|marks?|positions?|address(?:es)?|all)(?:(?:,| and|, and) (?:the )?(?:finish(?:es)?|lettering|legends?|marks?|positions?|address(?:es)?|order number|project))*(?: (?:that |what )?(?:you need|is needed))? (?:is|are|stands?) (?:all )?(?:written |given |filled in )?(?:on|in) ${sheets}`,
    `(?:the )?${sheets} says? it all`,
    `what(?:['’]s| is) on ${sheets} is what (?:he|she|they|we) (?:settled on|chose|decided|agreed on|ended up with)`,
  ].join("|")})(?=[.!]*$)`,
);
/** What makes more of it than a story. */
const more = words(
  "except\\p{L}*|excluding|second|third|top|bottom|but not|other than|apart from|only|if|unless|until|till|once|when|pending|should|would|could|must|needs?|wants?|please|pls|will|won['’]t|\\p{L}+['’]ll|going to|not|n['’]t|\\p{L}+n['’]t|never|nothing|wrong|mistake|typo|instead|different|other|another|more|half|part|most|some|both|extra|rest|remaining|also|too|yet|still|may|might|maybe|perhaps|think|guess|hope|\\d+",
);
const looks = words(
  "red|white|black|blue|green|yellow|orange|purple|pink|amber|brass|chrome|stainless|steel|nickel|copper|gold|silver|bronze|ivory|almond|gr[ae]y|brown|beige|cream|tan|navy|teal|maroon|charcoal|pewter|walnut|oak",
  "giu",
);

const names = words(
  "spell\\p{L}*|spelt|call\\p{L}*|name[sd]?|wr(?:ite|ote|itten)\\p{L}*|says?|said|reads?|words?",
);

/**
 * Whether a sentence tells what the sheets are said to show too: "she chose Pumice after all, as you'll see on the
 * sheet". It is none if it asks for something, makes an exception, or names a look or words that no sheet has.
 */
export function pointsToSheets(
  sentence: string,
  { finishes, otherFinishes, sheets: came, marks }: LetterFacts,
): boolean {
  if (!shown.test(sentence)) return false;
  const rest = sentence.replace(shown, " ");
  const has = (word: string): boolean =>
    finishes.some((finish) => finish.toLowerCase().split(" ").includes(word.toLowerCase()));
  // "He spells it Jon", and the sheet has it otherwise.
  const told = names.test(rest)
    ? /(?<=\S )\p{Lu}[\p{L}\p{N}'’-]+/gu
    : /(?<!\p{L})\p{Lu}[\p{Lu}\p{N}'’-]{2,}/gu;
  const onSheets = [...marks, ...came.flatMap(({ legends }) => legends.flatMap(({ rows }) => rows))].join(
    " ",
  );
  return (
    !more.test(rest) &&
    !bids(rest) &&
    !rest.includes("?") &&
    [...rest.matchAll(looks)].every(([word]) => has(word)) &&
    !otherFinishes.some((finish) => patternOf(finish)?.test(rest)) &&
    (rest.match(told) ?? []).every((legend) => patternOf(legend)?.test(onSheets))
  );
}

const who =
  "(?:(?:the |our |my |his |her |their )?(?:[\\p{L}.'’]+ ){0,6}[\\p{L}.'’]+(?:, (?:\\p{Lu}\\p{L}+ ?){1,3},)?)";
const soFar =
  "(?:(?:has|have|had|already|just|finally|all|both|also|since|now|even|himself|herself|themselves) )*";
const agreed =
  "(?:approved|aproved|signed off(?: on)?|signed|initial(?:l)?ed|ok(?:ay)?(?:ed|['’]?d)|blessed|proofread|proof ?read|checked|double[- ]checked|reviewed|went over|gone over|looked (?:over|through)|read(?: (?:over|through))?)";
const all =
  "(?:(?:it|both|they|each|them|these|this|those|everything|all of (?:it|them|these)|(?:(?:the|each|every|all the|every single|each and every|every one of (?:the|those)) )(?:whole thing|lists?|sheets?|forms?|pages?|lines?|legends?|words?|wording|names?|spellings?|room names|order|package|submittals?|schedule|last page|text))(?: (?:below|attached|here))?)";
const how =
  "(?:in writing|in person|with me|against (?:the|our|his|her) (?:\\p{L}+ )?(?:plans?|drawings?|list|schedule|as-builts)|by (?:two|three) \\p{L}+(?: \\p{L}+)?|twice|(?:two|three|four) times|line by line|word (?:by|for) word|yesterday|today|this (?:morning|afternoon|week)|last (?:week|night|month|\\p{L}+day)|on (?:\\p{L}+day)|\\p{L}{3,6}day|at last|already|without (?:a (?:single )?)?(?:questions?|comments?|changes?|remarks?)|no exceptions(?: taken)?|stamped|which never happens|no less|i have (?:it|that) on file(?: here)?|before (?:he|she|they) left|personally)";
const by = `(?: by ${who})?`;
/** Whole sentences by which somebody has agreed to it all. A word more, and they may say more. */
const assents = new RegExp(
  `^(?:(?:and|so|fyi|ok|well|yes|good news|the good news is),? )*(?:${[
    `${who} ${soFar}${agreed} ${all}(?: ${how})*(?: and (?:signed|initialed|approved|agreed)(?: off)?(?: (?:on|to))?(?: ${all})?)?`,
    `${who} (?:is|are|was|were) (?:all )?(?:fine|ok(?:ay)?|happy|good|pleased|on board) with ${all}`,
    `${all} (?:(?:has|have|had|was|were|is|are|got|been|now|all|already|finally|just) )*${agreed}${by}`,
    `(?:the )?(?:\\p{L}+ )?submittals?(?: for ${who})? (?:came|is|are|was|were)(?: back)?(?: approved| stamped)?`,
    `(?:re?ceived|recieved|got) (?:the )?approved submittals?(?: back)?`,
    // Who orders on sheets says no more.
    `(?:(?:order|sheets?|forms?|all) attached,? )?(?:please|pls|kindly) (?:go ahead|proceed)(?: with (?:the|this|our) order)?`,
  ].join("|")})(?:,? ${how})*[.!]*$`,
  "iu",
);
const unlike = words(
  "not|only|wrong|another|other|first|previous|nobody|no one|none|hardly|barely|half|most(?:ly)?|some|part(?:ly)?|almost|nearly|except|but|was|were to be|who|which|if|should|must|will|to be|\\p{L}+n['’]t|(?:is|are|was|were|has|have|had|did)nt|cannot|never|neither|yet|still|may|might|would|could|can|wants?|needs?|ha(?:s|ve|d) to|refus\\p{L}+|forgot|unless|until|once|when|hardly|sort of|kind of",
);

const asTyped =
  "(?:exactly |just |precisely )?(?:as (?:typed|written|shown|submitted|attached|is|filled in)|per (?:the )?(?:attached|sheets?|forms?)(?: sheets?| forms?)?)";
const filled = "(?:filled|done|did|got|typed)";
/** Whole sentences about what is done with any sheet: it is cut as typed, checked, and shown in a proof. */
const needless = new RegExp(
  `^(?:(?:and|so|ok|well|please|pls|kindly),? )*(?:${[
    `(?:engrave|cut|make) (?:(?:it|them|all|everything|the legends) )?${asTyped}`,
    `(?:(?:everything|it|all|the legends)(?: is| are)? )?typed (?:exactly|just) as (?:it|they) should (?:be|read)`,
    `(?:(?:i|we) )?(?:really )?hope (?:(?:that )?(?:i|we)(?: have|['’]ve)? ${filled} (?:it|this|these|them|all|everything|the (?:sheets?|forms?))(?: in| out)?(?: all)?|(?:it|this|everything|that)(?: is|['’]s)|(?:they|these)(?: are|['’]re))(?: all)? (?:right|correctly|correct|ok|okay|in order)`,
    `(?:i |we )?${filled} (?:in |out )?(?:it|these|them|the (?:sheets?|forms?))(?: in| out)? as best (?:as )?(?:i|we) (?:could|can|know how)`,
    `let (?:me|us) know if (?:i|we)(?: have|['’]ve)? (?:${filled} )?(?:it|this|these|them|anything|something)(?: in| out)? (?:wrong|incorrectly)`,
    "(?:send|include|attach) (?:me |us )?(?:a |the )?proofs?|no proofs? (?:is |are )?(?:needed|required|necessary)|(?:i|we) (?:do not|don['’]t|will not|won['’]t) need (?:a |any |the )?proofs?",
    "(?:owner|client|customer|architect)[- ]approved",
  ].join("|")})[.!]*$`,
  "iu",
);

/**
 * Whether a sentence only says that somebody has approved or checked it all, as "the owner signed off on these Friday"
 * does, or asks for what is done anyway.
 */
export function onlyAssents(sentence: string): boolean {
  const plainly = sentence.replace(/\s+/gu, " ").trim();
  if (needless.test(plainly)) return true;
  return (
    assents.test(plainly) &&
    !unlike.test(plainly.replace(/which never happens/iu, "").replace(/\b(?:was|were) (?=\p{L}+ed\b)/iu, ""))
  );
}
