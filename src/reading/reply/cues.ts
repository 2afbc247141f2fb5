import { speaksAgainst } from "./doubt.ts";
import { tokensOf } from "./word-bag.ts";

/*
 * What makes a sentence a statement. Words of the trade do so wherever they stand (`trade`). Words that turn, bind
 * or ask (`turns`) do so unless the sentence tells of its writer's own affairs (chat.ts) and names nothing of the
 * order (`goods`). Orders do so unless they order what this desk does anyway (`errands`).
 */

const words = (list: readonly string[]): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}'’-])(?:${list.join("|")})(?![\\p{L}\\p{N}])`, "iu");

const number = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen";

/** What only a sheet should say, or a clerk must know: wherever it stands, a person reads it. */
const trade = words([
  // Stopping and undoing.
  "cancel\\p{L}*|holds?|hold off|on hold|halt(?:ed)?|paus(?:e[ds]?|ing)|suspend\\p{L}*|abort\\p{L}*|kill(?:ed)?|scrap(?:ped)?|void(?:ed)?|withdr[ae]w\\p{L}*|retract\\p{L}*|disregard\\p{L}*|ignor(?:e[ds]?|ing)|discard\\p{L}*|throw (?:out|away)|obsolete|outdated|out of date|supers[ce]d\\p{L}*|overrid\\p{L}*|substitut\\p{L}*|swap(?:ped)?|omit\\p{L}*|delet(?:e[ds]?|ing)|remov(?:e[ds]?|ing|al)|postpon\\p{L}*|replac(?:e[ds]?|ing)|instead|insolvent|bankrupt(?:cy)?|lawyers?|attorney|storno|stornier\\p{L}*|annul\\p{L}*|cancela\\p{L}*|unsubscribe",
  // Wishes.
  "(?<!you )(?<!you may )(?<!you might )needs?|needed|wants?|wanted|wanna|would (?:\\p{L}+ )?(?:like|love|prefer|want|appreciate if)|['’]d (?:rather|like|love|prefer|take|go|want)|prefer\\p{L}*|requir(?:e[ds]?|ing|ements?)|request(?:s|ed|ing)?|insists?|rather|expect(?:s|ed|ing)?|supposed|meant|intended|must be|special instructions?",
  // Whether it is an order, and who says so.
  "approv(?:e[ds]?|al|als|ing)|reject\\p{L}*|go ahead|go-ahead|proceed\\p{L}*|green[- ]light|releas(?:e[ds]?|ing)|as is|as noted|prelim(?:inary)?|drafts?|tentative|provisional|tb[dac]|pending|(?:will|may|might|['’]ll|to|still|could) (?:\\p{L}+ )?(?:change|revise|redo)|(?:wait|waiting) (?:for|with|until|till|on) (?!you)|estimat\\p{L}*|submittals?|samples?(?! (?:order|form|sheet))|mock-?ups?|placeholders?|decid(?:e[ds]?|ing)|undecided|options?|alternat(?:e|es|ives?)|finali[sz]e[ds]?|on spec|production|agree[ds]?|accept(?:s|ed)|guarantee[ds]?|certif\\p{L}*|comments? in|see my comments?|new version|second version",
  // How many.
  "qtys?|quantit(?:y|ies)|pcs|pieces?|ea|dozens?|doubl(?:e[ds]?|ing)|twice|triple|thrice|extras?|spares?|fewer|pairs?|repeat(?:s|ed)?|reorder\\p{L}*|surplus|x ?\\d+|\\d+ ?x|per (?:room|door|floor|house|unit|station)",
  `(?:${number}|\\d+|another|a couple of|a few) (?:more |extra |of )?(?:\\p{L}+ )?(?:sets|lots|plates?|devices?|singles|keypads?|buttons?|stations|gangs?|sheets|rows|lines|houses|lefts?|rights?|(?:of )?(?:them|these|those|each))`,
  `(?<!(?:at|till|until|by|to|before|around|past|after|for|the|all|part|of) )(?:${number}|ten)(?=$|[.,;!]| (?:and|but|please|instead))`,
  // What is cut, and how.
  "etch(?:ed|ing)?|(?:laser|deep|hand)[- ]?(?:cut|engraved)|infill(?:ed)?|fonts?|typefaces?|serifs?|bold|italics?|thick(?:er)?|thin(?:ner)?|bigger|larger|smaller|taller|wider|narrower|deeper|mm|inch(?:es)?|cm|upper ?case|lower ?case|(?:all|small|in) caps|caps|capitals?|capitali[sz]ed?|logos?|symbols?|icons?|artwork|arrows?|centre[ds]?|centere?d?(?= everything| all| the (?:text|legends?|words?|letters?)|$)|align(?:ed|ment)?|justified|blanks|left blank|braille|tactile|backlit|illuminated|glow\\p{L}*|leds?|screws?|screwless|bezels?|gaskets?|back ?box(?:es)?|mounting|mirror(?:ed)?|upside|portrait|landscape|vertical(?:ly)?|horizontal(?:ly)?|orientation|both sides|other way (?:round|around)|accents?|umlauts?|commas?|apostrophes?|hyphens?|dash(?:es)?|ampersands?|punctuation|abbreviat\\p{L}*|wording|spacing|trademark|serial numbers?|barcodes?|glass|rounded|beveled",
  "colou?r(?:s|ed)?|red|white|black|blue|green|yellow|orange|purple|pink|amber|brass|chrome|stainless|steel|nickel|copper|gold(?:en)?|silver|bronze|ivory|almond|gr[ae]y|brown|beige|cream|matte?|gloss(?:y)?|brushed|satin|matching|finish(?:es)?",
  // When, and how it travels.
  "asap|a\\.s\\.a\\.p|urgent(?:ly)?|rush(?:ed)?|expedit\\p{L}*|hurry|sooner|deadlines?|due|lead ?times?|eta|overnight|how (?:long|soon|much|many|fast|quick(?:ly)?)|priority|emergency|timeline|squeeze|schedule for",
  "ship(?:s|ped|ping|ment|ments|-?to)?|deliver(?:s|ed|y|ies|ing)?|couriers?|freight|carriers?|ups|fedex|dhl|will[ -]call|pick(?:ed|ing)? (?:it |them |these )?up|pick-?up|pallets?|docks?|packaging|packed in|label(?:s|l?ed|l?ing)?|wrap(?:ped)?|bag(?:s|ged)|consolidate|partials?|backorder\\p{L}*|in stock|out of stock|availability|capacity|goods|tracking",
  // Money.
  "pric(?:e|es|ed|ing)|quot(?:e|es|ed|ation|ing)|costs?|discounts?|rebate|invoic(?:e|es|ed|ing)|bill(?:s|ed|ing)?|tax(?:es)?|exempt|budget(?:ary)?|pay(?:s|ing|ments?)?|paid|deposit|credit|charge[ds]?|terms|net \\d+|cheap(?:er)?|warranty|refund(?:s|ed)?|bids?|rfq|rfp|the total|bank details|on account",
  // Wiring and fit.
  "wir(?:e|es|ed|ing)|relays?|dimmers?|circuits?|loads?|low[- ]voltage|volt(?:s|age)?|\\d+ ?v|breakers?|fuses?|programmed|programming|compatible|scenes?|motors?|momentary|toggles?|thermostats?|sensors?|card reader|contacts(?= |$)(?! (?:is|are|on))",
  // Complaints and errors.
  "crack(?:ed|s)?|damag(?:e[ds]?|ing)|crooked|scratch(?:es|ed)?|wrong(?:ly)?|faulty|defect(?:s|ive)?|discolou?red|faded|peel(?:ed|ing)|ridiculous|unhappy|unacceptable|disappoint(?:ed|ing)|complain(?:ts?|ing)?|spell(?:s|ed|ing)?|spelt|misspell?\\p{L}*|mis-?spelt|misprint\\p{L}*|never (?:received|got|came|arrived|ordered)|ordered (?:six|\\p{L}+) (?:and|but)|hard to read",
  // Places that are not the sheets'.
  "(?:we|office|shop|company) (?:have |has |just )?moved|moved to|new (?:address|ship-to|delivery address|shipping address|name|logo)|wrong address|now called|renamed to|goes away|go away",
]);

/** What turns, binds or asks. In the small talk of a letter it does as well. */
const turns = words([
  "no|not|cannot|never|none|nothing|neither|nor|nope|nein|yes|yep|yeah|yup|without|but|except|unless|until|til|till|only|if|whether|either|otherwise|however|although|whichever|whatever|in case",
  "[\\p{L}]+n['’]?t(?<=(?:do|does|did|ca|wo|is|are|was|were|should|would|could|must|have|has|had|need|ai)n['’]?t)",
  "should|must|shall|has to|have to|got to|gotta|let['’]?s|(?:can|could|would|will) (?:you|u|somebody|someone|anybody|anyone)|wish(?:es)?|suppose|mean|means|mind|careful(?:ly)?|attention|warning|note|note that|nb|p\\.?s|fyi the|watch|beware|make sure|be sure|ensure|remember",
  "(?:client|customer|owner|architect|he|she|they|it|inspector|contractor|designer|boss|gc|city|tenant|truck|plate|device)(?: \\p{L}+)? (?:will|['’]ll|wants|is going to|still|might|may)|still (?:ha[sv]e?|being|waiting|open|with|to)|to be|going to|becom(?:e|es|ing)|turn(?:s|ed)? (?:out|into)|might|may|maybe|perhaps|probably|unsure|guess|mistake|typo|slip|errors?|incorrect|off by|chang(?:e[ds]?|ing)|revis(?:e|ion)|edit(?:s|ed)?|modif(?:y|ied)|adjust\\p{L}*|differ(?:s|ent|ently)?|redo|drop(?:ped)?|dead|lost|burn(?:ed|t)|fell|broken?|bad|poor|worn|short|too (?:many|much|few|big|small|long|high|low)|problems?|confus(?:ed|ing)|odd|strange",
  "same|similar|identical|like (?:the|what|you did|we|before|last|those|that|these|on|in)|as (?:before|last time|usual|always)|match(?:es)?|exactly|also|too|as well|plus|more|less|each|every|both|additional|another|extra|second|times|copies|separate(?:ly)?",
  "yet|first|before|after|once|already|wait(?:ing|s)?|later?|early|earlier|soon|today|tonight|quick(?:ly)?|fast|when|by (?:then|the)|stop(?:s|ped)?|delay(?:s|ed)?|back",
  "says?|said|reads?|spell(?:s|ed|ing)?|spelt|call(?:ed)? it|named|confirm(?:s|ed|ing)?|verif\\p{L}*|correct|right(?= ?\\?)|ok(?:ay)?|fine|looks? good|sign(?:ed|s)? off|make|made|makes|use|keep|keeps|leave|left (?:out|off|it|them|empty|blank)|put|add(?:s|ed)?|includ\\p{L}*|gets|takes?|fit(?:s|ting)?|go(?:es)? (?:to|in|on|with|by|under|next|above|below|where|into)|how|where|why|what|who|cut|empty|blank|plain",
]);

/** What the order is made of. */
const goods =
  /[◇○]|(?<![\p{L}\p{N}])(?:plates?|devices?|buttons?|keys?|faces?|gangs?|legends?|engrav(?:ed?|es|ings?|er)|lettering|letters?(?! of\b)|words?|text|rows?|lines?|spellings?|stations?|keypads?|singles?|covers?|orders?|items?|materials?|units?|parts?|ones|(?:this|that|the|first|second|third|last|other|top|bottom|big|small|little|lobby|foyer|kitchen) one|them|these|those|switch(?:es)?|panels?|names?|titles?|proofs?|lobby|foyer|kitchen|frames?|box(?:es)?|cutting|cut)(?![\p{L}\p{N}])/iu;
/** What people send and write with. Pronouns beside it mean it. */
const paper =
  /(?<![\p{L}\p{N}])(?:sheets?|forms?|pdfs?|files?|e-?mails?|mail|message|attachments?|attached|attaching|docs?|documents?|scan(?:s|ned|ner)?|zip|paper(?:s|work)?|folder|computer|laptop|phone|browser|printer|outbox|inbox|spam|internet|wifi|server|link|reader|acrobat|excel|spreadsheet|software|keyboard|screen|version|adobe|typed?|typing|fill(?:ed|ing)?|to you|to send|submit\p{L}*)(?![\p{L}\p{N}])/iu;
const pronoun = /^(?:ones|them|these|those|(?:this|that|the|first|second|third|last|other) one|letters?|names?|lines?|orders?|words?|text|parts?)$/iu;

/** Whether words name something of the order, and not only the papers that it is written on. */
export function namesGoods(said: string): boolean {
  const onPaper = paper.test(said);
  for (const [word] of said.matchAll(new RegExp(goods, "giu")))
    if (!onPaper || !pronoun.test(word)) return true;
  return false;
}

/** Not yet an order, whatever it is said of. */
const unsettled =
  /\b(?:not|n['’]?t|never|nothing|none)\b[^.!?]{0,40}\b(?:final|complete|ready|right|correct|checked|reviewed|seen|sure|settled|confirmed|authori[sz]ed|signed|an? (?:order|release)|yet|ours?)\b/iu;

/** Quotation marks around a word, an arrow, "A = B": somebody says what is to stand somewhere. */
const shown = /["“”«»][^"“”«»]{1,40}["“”«»]|(?<!\p{L})['‘][^'‘’]{2,40}['’](?!\p{L})|[→⇒]|[-=]>|\S\s?=\s?\S/u;

/** Dates that bind: "by Friday", "before the 20th". Days and dates have become △ (tallies.ts). */
const limit =
  /\b(?:by|before|until|till|for|latest|than|on|needed|required|is|here|there|comes?|arrives?|receiv\w+|in) (?:the |this |next |end of )?△/iu;

/** What this desk does anyway, so that it may be asked for. */
const errands =
  "(?:find|see|open|process|enter|review|check|refer|advise|call|contact|acknowledge|accept|book|handle|submit|forward|look|place|reply|receive|thanks?|thank|let|get|take a look|bear|excuse|forgive|pardon|say|feel|ring|text|phone|e-?mail|shout|input|log|disregard my|consider|treat|work|go over|run (?:this|these|it|them) (?:by|past|through))";
const bidden = new RegExp(
  `\\b(?:please|pls|plz|kindly)(?: also| just| kindly| do)? (?!${errands}\\b)(?!advise\\b)\\p{L}+`,
  "iu",
);
/** Verbs that begin an order, at the beginning of a sentence or of a part of it. */
const orders =
  /(?:^|[,;:(–-]\s*|[.!]\s+|\b(?:please|pls|plz|kindly|just|also|and|so|then|or|but|oh|ps|btw|way),?\s)(?:do|don['’]?t|go with|go for|run|start|begin|write|make|put|use|add|leave|skip|match|spell|give (?:it|them|the|each|these)|move|set (?:up|it|them|the)|turn|take|keep|change|fix|correct|cut|engrave|print|paint|drop|include|exclude|combine|merge|split|group|figure|pick|choose|send (?:it|them|the|these|those|me|us|two|to|by|via|only)|bring|tell me|tell us|show|mind|watch|note|follow|stick|copy (?:it|them|the|what)|reverse|rotate|flip|mark|mount|fill (?:it|them|the|in)|finish|double|center|centre|align|shorten|lengthen|abbreviate|let(?! (?:me|us) know)|sit tight|wait|stop|stay|raise|lower|line up|ask|mail|pack|route|treat .{1,20} as|test (?:it|them|the)|give us|give me (?!a (?:call|ring|shout|bell|buzz)))(?![\p{L}\p{N}'’])/iu;

/** "Please call before you start": an errand with a condition. */
const bound =
  /\b(?:please|pls|plz|kindly)\b[^.!?]{0,60}\b(?:before|first|only|until|unless|after|not|no|but|once|without|by △)\b/iu;

/** Words in capitals among others, which may be legends. */
export function hasLegend(said: string): boolean {
  const tokens = said.match(/\p{L}[\p{L}\p{N}'’-]*/gu) ?? [];
  const capitals = tokens.filter((token) => /^\p{Lu}[\p{Lu}\p{N}'’-]+$/u.test(token));
  return capitals.length < tokens.length && capitals.some((token) => token.length > 3);
}

/** Whether words say, wherever they stand, what a person must read. */
export function speaksOfMaking(said: string): boolean {
  return trade.test(said) || bidden.test(said) || bound.test(said) || orders.test(said) || shown.test(said) || unsettled.test(said);
}

/** Whether words turn, bind or ask something, if only of their writer's own affairs. */
export function turnsSomething(said: string): boolean {
  return turns.test(said) || limit.test(said) || /\?/.test(said) || speaksAgainst(said);
}

/** Whether words may ask for something or say something that a person must read. */
export function asksFor(said: string): boolean {
  return speaksOfMaking(said) || turnsSomething(said);
}

/** Words that stand in no disclaimer and no signature, but in wishes. */
const ofTrade =
  /\b(?:engrav(?:e|ed)|etch|cut|buttons?|legends?|plates?|sheets?|devices?|stations?|gangs?|lettering|qty|quantity|pcs|spares?|finish|cancel|hold|ship (?:to|by|via)|urgent|asap|rush|red|white|black|blue|green|brass|wire)\b/i;

export function speaksOfTrade(said: string): boolean {
  return ofTrade.test(said);
}
