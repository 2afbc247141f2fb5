import { memoized } from "../../trade/memoized.ts";
import { anyOf } from "./any-of.ts";
import { namesGoods, speaksOfMaking } from "./cues.ts";
import { speaksAgainst } from "./doubt.ts";
import { isForeign } from "./foreign.ts";
import { turnsElsewhere } from "./other-tongues.ts";
import { undoes } from "./undoes.ts";

/*
 * Words that keep a sentence from being mere talk beside an answer. Each class has its reason. They stand beside those
 * of cues.ts, and are wider: what a cover note may say, an answer may not be bound by.
 */

const classes = {
  // Conditions: the yes may hold only then.
  condition: String.raw`
    if|once|unless|provid(?:ed|ing)|as long as|so long as|assuming|until|till|til|before|beforehand|
    when(?:ever)?|while it|as soon as|depend\p{L}*|subject|in case|whether|condition\p{L}*|pending|
    await\p{L}*|wait(?:s|ed|ing)?|or`,
  // Contrast and exception: something differs.
  contrast: String.raw`
    but|except\p{L}*|excluding|only|however|although|though|apart|other|others|another|different\p{L}*|
    instead|rather|otherwise|else|elsewhere|despite|still|yet|unlike|whereas|actually|versus|alternat\p{L}*|
    either|neither|nor|without|minus|than|even`,
  // Doubt: no yes that can be relied on.
  doubt: String.raw`
    maybe|perhaps|gambl\p{L}+|time being|review\p{L}*|discuss\p{L}*|consult\p{L}*|negotiat\p{L}*|debat\p{L}*|unresolved|undecided|outstanding|think|thinks|thought|guess\p{L}*|probab\p{L}+|likely|possib\p{L}+|suppos\p{L}+|
    presum\p{L}+|believes?|seems?|appears?|apparent\p{L}*|hopefully|allegedly|reckon\p{L}*|assum\p{L}+|
    doubt\p{L}*|sure|unsure|certain|almost|nearly|roughly|approx\p{L}*|somewhat|sort of|kind of|theory|
    at least|at any rate|any ?way|so far|for now|for the moment|as far as|wonder\p{L}*|confus\p{L}+|unclear|
    question(?:s|ed|able)?|jok\p{L}+|kidding|sarcas\p{L}+|hop(?:e|es|ed|ing)|swear|willing|permitting|
    tentativ\p{L}*|provisional\p{L}*|conditional\p{L}*|reluctant\p{L}*|grudging\p{L}*|theoretic\p{L}*|
    technically|basically|essentially|ostensib\p{L}+|arguabl\p{L}+|nominal\p{L}*|reported\p{L}*|
    partial\p{L}*|mostly|largely|mainly|chiefly|initial\p{L}*|original\p{L}*|ideal\p{L}*|temporar\p{L}+|
    somehow|experts?|trust\p{L}*|judge?ment|percent|fingers? crossed|touch wood|memory|knock on wood|fairly`,
  // Regret and praise of a find: whoever says so agrees that the word is wrong.
  regret: String.raw`
    typed?|typing|typos?|autocorrect\p{L}*|catch(?:es|ing)?|caught (?:it|that|this|them)|spott\p{L}+|spot|
    eagle|slip\p{L}*|mistak\p{L}+|errors?|silly|stupid|blame|fault|embarrass\p{L}+|oops|whoops|my bad|
    correct\p{L}*|right|wrong\p{L}*|misspel\p{L}+|mess(?:ed)?|blunder|goof\p{L}*|
    glad you (?:saw|found|noticed)`,
  // Negation.
  negation: String.raw`
    ok|okay|yes|yep|yeah|yup|aye|nope|nah|no|not|never|none|nothing|nobody|noone|nowhere|cannot|hardly|
    barely|scarcely|lack\p{L}*|n['’]t|refus\p{L}+|declin\p{L}+|reject\p{L}*|object(?:s|ed|ions?)?|
    disagree\p{L}*|against|undo|oppos\p{L}+|contrary|divorc\p{L}+|no longer|anymore`,
  // Wishes and requests, and what is planned: the sheet is not the last word.
  wish: String.raw`
    (?:i|we|you|he|she|they|it)['’](?:d|ll)|would|could|should|shall|will|won['’]?t|may|might|can|must|
    ought|going to|gonna|gotta|has to|have to|had to|got to|need\p{L}*|wants?|wanted|wish(?:es|ed)?(?! you)|
    like[ds]?|prefer\p{L}*|fanc(?:y|ies|ied)|desir\p{L}+|crav\p{L}+|happier|nicer|better|would love|
    love(?:s|d)? (?:it|them|to)|why|what|who|as in|fill(?:s|ed|ing)?|let(?:['’]?s)?|pass(?:es|ed|ing)?|forward(?:s|ed|ing)?|which|
    asked|please|pls|plz|kindly|ask(?:s|ing)?|tell(?:s)? (?:him|her|them|us)|plan(?:s|ned|ning)?|
    intend\p{L}*|consider\p{L}*|decid\p{L}+|promis\p{L}+|insist\p{L}*|suggest\p{L}*|propos\p{L}+|
    recommend\p{L}*|request\p{L}*|demand\p{L}*|expect\p{L}*|get(?:s)? (?:the|a|an|it|them)|forget(?:s)?|
    remember|mind|note|beware|careful|watch|choose|chose|pick(?:ed|s)?|leave|hold|keep|stick|lose|
    drop\p{L}*|throw\p{L}*|knock\p{L}*|take(?:s)? (?:it|them|off|out|the)|give (?:us|me|it|them|him|her)|
    stop\p{L}*|off|scrap\p{L}*|rush\p{L}*|due|deadlines?|ready`,
  // What is made, changed, put or sent.
  making: String.raw`
    ma[kd]e|makes|making|chang\p{L}+|add(?:s|ed|ing)?|remov\p{L}+|mov(?:e|es|ed|ing)|swap\p{L}*|
    put(?:s|ting)?|us(?:e|es|ed|ing)|turn(?:s|ed|ing)?|becom\p{L}+|became|renam\p{L}+|replac\p{L}+|redo|
    revis\p{L}+|updat\p{L}+|edit\p{L}*|adjust\p{L}*|alter\p{L}*|shorten\p{L}*|squeez\p{L}+|abbreviat\p{L}+|
    cut(?:s|ting)?|writ(?:e|es|ing|ten)|wrote|spell\p{L}*|spelt|read|reads|says?|said|call(?:s|ed)?|
    nam(?:e|es|ed|ing)|titl\p{L}+|label\p{L}*|show(?:s|n|ed)?|see|refer\p{L}*|look(?:s)? (?:at|like|up|it)|
    match\p{L}*|same|similar|identical|compar\p{L}+|according|per|cop(?:y|ies|ied)|sheets?|forms?|pdfs?|
    files?|photos?|pictures?|drawings?|drawn|proofs?|samples?|sketch\p{L}*|list(?:s|ed)?|sent|
    send(?:s|ing)?|resen[dt]\p{L}*|attach\p{L}*|enclos\p{L}+|follow(?:s|ing)?|order(?:s|ed|ing)?|cheque|
    check|checks|invoice\p{L}*|account|ship\p{L}*|deliver\p{L}*|courier|parcel|post(?:age)?|truck|warehouse|
    go(?:es)? (?:in|on|to|by|under|over|up|with|for)|underneath|above|below|beneath|beside|next to|fits?|
    fitt\p{L}+|install\p{L}*|belongs?|stands? for|confirm\p{L}*|approv\p{L}+|sign(?:s|ed|ing)?|agre\p{L}+`,
  // How many, and of which: digits are looked at apart.
  count: String.raw`
    one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|dozen\p{L}*|both|each|every|
    all (?:of|the|three|four)|some|any|few|several|many|more|most|less|fewer|half|double|twice|pair|extra|
    spare|single|times|first|second|third|fourth|fifth|sixth|ninth|last|next|latter|former|top|bottom|left|
    middle|cent(?:er|re)|end|side|upper|lower|front|back of|also|too many|too few|missing|short by`,
  // What is cut, and how it looks.
  look: String.raw`
    letters?|lettering|legends?|text|words?|wording|terms?|spelling|font|type|script|caps?|capitals?|
    bold\p{L}*|big(?:ger)?|small(?:er)?|large\p{L}*|tall\p{L}*|wid(?:e|er)|narrow\p{L}*|deep\p{L}*|
    thick\p{L}*|thin\p{L}*|high(?:er)?|low(?:er)?|round(?:er|ed)|curly|fancy|accents?|umlauts?|hyphen\p{L}*|
    dash\p{L}*|dots?|comma|apostroph\p{L}*|full stop|ampersand|spaces?|plural|singular|numerals?|initials?|
    long form|long one|logo|hearts?|stars?|symbols?|crest|rows?|lines?|buttons?|gangs?|plates?|devices?|
    stations?|keypads?|switch\p{L}*|dimmers?|boxe?s?|colou?rs?|dark|light(?:er)?|white|black|brass|silver|
    gold\p{L}*|steel|stainless|chrome|bronze|oak|walnut|marble|slate|wood\p{L}*|glass|finish\p{L}*|
    paint(?:ed)?|engrav\p{L}+|vertical\p{L}*|horizontal\p{L}*|upside|blank|empty|items?|points?|numbers?|
    version|part|parts|ones`,
  // Where it goes: rooms are legends.
  place: String.raw`
    rooms?|lobby|foyer|kitchen|den|pantry|cellar|basement|attic|garage|shed|hall|hallway|lounge|salon|
    bath\p{L}*|bed\p{L}*|closet|porch|patio|study|library|wing|floors?|doors?|walls?|windows?|panel|snug|
    parlou?r|nursery|studio|bar|gym|annexe?`,
  // What the order is worth.
  money: String.raw`
    pric\p{L}+|cost\p{L}*|pay\p{L}*|paid|bills?|discount|refund|cheap\p{L}*|charge[ds]?|credit|quot\p{L}+|
    budget|money|lawyers?|sue|cancel\p{L}*|business elsewhere|complain\p{L}*|enough of`,
  // Times by which something is wished or holds.
  time: String.raw`
    asap|urgent\p{L}*|by (?:then|noon|the|this|next|end|tomorrow|tonight|\p{L}+day|june|may)|
    from (?:then|\p{L}+day|tomorrow)|tomorrow|these days|old|since last|former\p{L}*|previous\p{L}*|ex|new|this time|
    time will|soon|later|sooner|latest|now (?:it|is|the|called|a|an)|nowadays|used to`,
  // What ends a job, or says that its place is another now: "the site burned down", "we lost it".
  end: String.raw`
    burn(?:t|ed|s)?|lost|lose|losing|broke|bankrupt\p{L}*|insolv\p{L}+|die[ds]?|dead|death|fired|
    flood\p{L}*|demolish\p{L}*|collaps\p{L}+|clos(?:ed|es|ing)|shut|gone|sold|sells?|selling|fell through|
    fallen through|filled (?:in|up)|torn down|tore down|upstairs|downstairs|laugh\p{L}*|quit|retired|
    evict\p{L}*|bust|anew|over (?:and|with)|ended`,
} as const;

/** The job, its place and whom it is for. */
const ofTheJob = anyOf(
  String.raw`sites?|jobs?|projects?|contracts?|orders?|house|home|building|property|pool|theat(?:re|er)|shop|store|school|
    church|chapel|hotel|clinic|hospital|boat|yacht|barn|cabin|cottage|tower|restaurant|owners?|clients?|customers?|
    landlord|tenants?|architects?|inspectors?|bank|insur\p{L}+`,
);

/** Whether words tell of the job, and so of more than their writer. A reason beside a yes may name its people and places. */
export function tellsOfJob(said: string): boolean {
  return ofTheJob.test(said);
}

const dangers = anyOf(...Object.values(classes));
const single = /(?<![\p{L}\p{N}'’.])(?![aAiIxX](?![\p{L}\p{N}]))\p{L}(?![\p{L}\p{N}'’])/u;
const signs = /[?\d%$€£#"“”«»„:;=<>@◇○]/u;

/** Whether words may bind an answer beside them, or say something of the order. Digits always do. */
export const isDangerous = memoized((said: string): boolean => {
  return (
    signs.test(said) ||
    dangers.test(said) ||
    single.test(said) ||
    speaksAgainst(said) ||
    speaksOfMaking(said) ||
    undoes(said) ||
    namesGoods(said, false) ||
    turnsElsewhere(said) ||
    isForeign(said)
  );
});

/**
 * All that makes words dangerous, each class with its word. It tells why a person has to read them.
 *
 * @internal Only the bench asks.
 */
export function dangersIn(said: string): string[] {
  return [
    ...Object.entries(classes).flatMap(
      ([name, list]) =>
        anyOf(list)
          .exec(said)
          ?.slice(0, 1)
          .map((word) => `${name}: ${word}`) ?? [],
    ),
    ...(signs.test(said) || single.test(said) ? ["sign or single letter"] : []),
    ...(speaksAgainst(said) ? ["doubt.ts"] : []),
    ...(speaksOfMaking(said) || namesGoods(said, false) ? ["cues.ts"] : []),
    ...(turnsElsewhere(said) || isForeign(said) ? ["another language"] : []),
  ];
}
