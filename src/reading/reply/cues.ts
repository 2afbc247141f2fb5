import { speaksAgainst } from "./doubt.ts";

/**
 * Words by which people ask for something, change or forbid something, or name what only a sheet should say. One
 * of them makes a sentence a statement, unless it stands in a courtesy (courtesy.ts).
 */
const cues = [
  // Changes and wishes.
  "add(?:s|ed|ing|itional(?:ly)?)?|includ(?:e|es|ing)|instead|rather|but|though|although|however|without|unless|until|till|except|only|if|whether|else",
  "stays?|gets|bring|set up|wrap(?:ped)?|swap(?:ped)?|move[ds]?|flip(?:ped)?|revers(?:e|ed)|rotate[ds]?|leave|skip(?:ped)?|match(?:es|ed)?|make|makes|made|keep|ensure|remember|note that|nb|p\\.?s|must|ha(?:s|ve) to|got to|gotta|should|would|could|want(?:s|ed)?|wish(?:es|ed)?|wanna|prefer(?:s|red)?|need(?:s|ed)?|require[sd]?|request(?:s|ed)?|insist|like|same|similar|identical|suppose[ds]?|meant|mean|say|says|said|read|reads|spel(?:l|ls|led|t|ling)|call(?:ed)? it|becomes?|goes|go to|other way (?:round|around)|upside|turn(?:s|ed)?|let|give|use|using|put|take|combine|merge|split|group",
  "supers[ce]de[ds]?|overrid(?:e|es|den)|obsolete|outdated|samples?|test|how|where|why|ignor|scrap(?:ped)?|stop|halt|abort|kill|wait|hold|held|pending|tbd|tba|tbc|yet|once|already|premature|early|late|later|first|before|after",
  "prelim(?:inary)?|draft|tentative|final(?:i[sz]e[ds]?)?|estimate|approx(?:imately)?|approv(?:e|es|ed|al)|reject(?:ed)?|sign(?:s|ed)? off|go ahead|go-ahead|proceed|green light|release[ds]?|as is|yes|yep|yeah|yup|ok(?:ay)?|agree[ds]?|accept(?:s|ed)?|confirm(?:s|ed|ing)?|verif(?:y|ies|ied)|guarantee[ds]?",
  // Quantities beyond the sheets.
  "(?:two|three|four|five|six|\\d+) (?:sets|lots|of (?:them|these|those|each))|sets of|qty|qtys|quantit(?:y|ies)|pcs|pieces?|ea|each|every|dozen|double|twice|triple|thrice|times|extras?|spares?|additional|another|more|less|fewer|pairs?|copies|repeat(?:ed)?|reorder|x ?\\d+|\\d+ ?x",
  // What is cut, and how.
  "engrav(?:e|es|ed)|etch(?:ed)?|cut|print(?:ed)?|paint(?:ed)?|infill(?:ed)?|letters?|lettering|fonts?|typeface|bold|italics?|sizes?|bigger|larger|smaller|taller|mm|inch(?:es)?|cm|upper ?case|lower ?case|caps|capitals?|words?|wording|text|rows?|lines?|button(?:s)?|keys?|faces?|logos?|symbols?|icons?|arrows?|cent(?:er|re)(?:ed|d)?|align(?:ed)?|blank|plain|braille|backlit|leds?|screws?|frames?|box(?:es)?|back ?box(?:es)?|gasket|mounting",
  "colou?r(?:s|ed)?|finish(?:es)?|red|white|black|blue|green|yellow|orange|purple|pink|amber|brass|chrome|stainless|steel|nickel|copper|gold(?:en)?|silver|bronze|ivory|almond|gr[ae]y|brown|beige|cream|matte?|gloss(?:y)?|brushed|satin",
  // When, and how it travels.
  "asap|a\\.s\\.a\\.p|urgent(?:ly)?|rush(?:ed)?|expedit(?:e|ed|ing)|hurry|quick(?:ly)?|soon(?:er|est)?|fast(?:er)?|deadline|due|lead ?times?|eta|overnight|when|how long|how soon|priority|emergency|critical|timeline",
  "ship(?:s|ped|ping|ment|ments|-?to)?|deliver(?:s|ed|y|ies|ing)?|courier|freight|carriers?|ups|fedex|dhl|will[ -]call|pick(?:ed)?[ -]?up|collect|packaging|label(?:s|l?ed)?|bag(?:s|ged)?|route",
  // Money.
  "pric(?:e|es|ed|ing)|quot(?:e|es|ed|ation|ing)|costs?|discount|rebate|invoic(?:e|es|ed|ing)|bill(?:s|ed|ing)?|tax(?:es)?|exempt|budget(?:ary)?|pay(?:s|ment|ments)?|paid|how (?:much|many)|credit|charge[ds]?|terms|cheap(?:er)?|warranty|refund|bid|rfq|rfp",
  // Wiring and fit.
  "wir(?:e|es|ed|ing)|relays?|dimmers?|panels?|circuits?|loads?|volt(?:s|age)?|breakers?|fus(?:e|es|ed)|program(?:med|ming)?|fits?|install(?:ed)?|compatible|scenes?|motors?|channels?|zones?",
  // Complaints.
  "broken|broke|crack(?:ed)?|damag(?:e|ed)|crooked|scratch(?:es|ed)?|faulty|defect(?:s|ive)?|bad|poor|never|returns?|returned|unhappy|disappoint(?:ed|ing)?|complain(?:t|ing)?|careful(?:ly)?|worn|faded|missed|short|lost|problem|issue|confus(?:ed|ing)|strange|odd",
  // Of other languages only what stands in subjects.
  "storno|stornier(?:en|t)|annul(?:er|ation|ez)|cancela(?:r|cion|ción)|dringend|eilig|urgente?|bitte|attention|warning",
].join("|");

const cue = new RegExp(`(?<![\\p{L}\\p{N}'’])(?:${cues})(?![\\p{L}\\p{N}])`, "iu");

/** Quotation marks around a word, an arrow, "A = B": somebody says what is to stand somewhere. */
const shown = /["“”«»][^"“”«»]{1,40}["“”«»]|(?<!\p{L})['‘][^'‘’]{2,40}['’](?!\p{L})|[→⇒]|[-=]>|\S\s?=\s?\S/u;

/** Limits of time: "by Friday", "before the 20th". Days and dates have become △ (tallies.ts). */
const limit =
  /\b(?:by|before|until|till|for|latest|than|on|needed|required) (?:the |this |next |end of )?△/iu;

/** "Please" before anything that a cover note does not ask for, and orders that begin a sentence. */
const bidden =
  /\b(?:please|pls|plz|kindly)(?: also| just| kindly)? (?!(?:find|see|open|process|enter|review|check|refer|advise|call|contact|acknowledge|accept|book|handle|submit|forward|look|place|reply|receive|thanks?|thank)\b)\p{L}+|^(?:do|go|run|start|begin|write) (?!you\b)/iu;

/** Whether words ask for something or say something that a person must read. */
export function asksFor(words: string): boolean {
  return (
    cue.test(words) ||
    bidden.test(words) ||
    shown.test(words) ||
    limit.test(words) ||
    /\?/.test(words) ||
    speaksAgainst(words)
  );
}

/** Words that stand in no disclaimer and no signature, but in wishes. */
const ofTrade =
  /\b(?:engrav(?:e|ed)|etch|cut|buttons?|legends?|plates?|sheets?|devices?|stations?|gangs?|lettering|qty|quantity|pcs|spares?|finish|cancel|hold|ship (?:to|by|via)|urgent|asap|rush|red|white|black|blue|green|brass|wire)\b/i;

export function speaksOfTrade(words: string): boolean {
  return ofTrade.test(words);
}
