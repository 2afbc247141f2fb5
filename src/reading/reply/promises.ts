import { memoized } from "../../trade/memoized.ts";
import { isDangerous } from "./danger.ts";
import { harmless } from "./harmless.ts";
import { isOwning, mayBeLegend, owning } from "./talk.ts";
import { understood } from "./tallies.ts";
import { plain } from "./tokens.ts";

const words = (...list: readonly string[]): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])(?:${list.join("|")})(?![\\p{L}\\p{N}])`, "giu");

const sheet =
  "(?:sheets?|forms?|pdfs?|files?|versions?|cop(?:y|ies)|documents?|attached|replacements?|corrections?|attachments?|(?:new|corrected|right|fixed|correct|revised|good|proper|other|replacement|updated|fresh|another|mended) ones?|blatt|feuille|hoja)";
const mends =
  "(?:fix|correct|mend|revis|updat|amend|redo|re-?typ|sort|address|resend|re-?send|resubmit|re-?issu|replac|shorten|handl|deal)";
const comes = `(?:attach\\p{L}*|enclos\\p{L}*|follow(?:s|ing|ed)?|com(?:e|es|ing)|came|send(?:s|in|ing)?|sent|on (?:its|the|their) way|accompan\\p{L}+|here(?:with|by)?|below|upload\\p{L}*|reach(?:es)?|e-?mail(?:ed|ing|s)?|mail(?:ed|ing|s)?|forward\\p{L}*|goes? out|going out|submit\\p{L}*|with this|in this|see|find|found|got|get(?:s)?|receive|have|has|redone|done|made|did|does|doing|prepar\\p{L}+|draft\\p{L}*|fill(?:ed|ing)?|ready|taken care of|dealt with|${mends}(?:e|s|es|d|ed|t|ing|in|ted|ting)?|renvoi\\p{L}*|renverr\\p{L}*|corrig\\p{L}+|korrigiert\\p{L}*|neue[rsn]?|je|nous|vous|la|les|das|wir|ich|u|kommt|folgt|anbei|schicken|senden|envoie|envoyons|enviaremos|enviamos|envío)`;
const when =
  "(?:(?:when|once|as soon as|after) (?!you|\\p{L}+ed\\b|[^.,;!?\\d]*\\b(?:not|sure|sign\\p{L}*|hate\\p{L}*|decid\\p{L}+|approv\\p{L}+|agree\\p{L}*)\\b)[^.,;!?\\d]{1,70}(?=[.,;!]|$)|(?:when|once|as soon as|after) (?:i|we|he|she|they)(?: (?:am|is|are|have|has|get|gets|got|finish|finishes|do|come|comes|return|returns|land|wake|reach))*(?: (?:back|home|in|up|at|to|from|the|my|our|his|her|a|an|shop|office|desk|computer|harbou?r|port|site|work|lunch|van|truck|ladder|internet|signal|laptop|it|them|this|there|here|down|off|morning|tomorrow|later|tonight))*|(?:by|at|before|around|until|till|after|in|within|for) (?:(?:\\d{1,2}|one|two|three) ?(?::\\d\\d|(?::\\d\\d)? ?[ap]\\.?m\\b\\.?|o'clock|minutes|hours?|days?)|noon|(?:the )?(?:end|close) of (?:the )?(?:day|week|business)|(?:a|an|the next|one|two|three|few) (?:few |couple of )?(?:minutes?|moments?|hours?|days?|bit|while)|lunch|(?:separate|next|new|a|the|another|own|its)(?: \\p{L}+)? (?:mail|e-?mail|letter|message))|(?:by |on |this |next |later |early |first thing )?(?:today|tonight|tonite|tomm?orr?ow|(?:mon|tues|wednes|thurs|fri|satur|sun)day|this (?:morning|afternoon|evening|week)|(?:the |in the )?(?:morning|afternoon|evening)|shortly|soon|later|right away|at once|asap|immediately|presently|directly|momentarily|separately|now|next week|eod|in due course))";
/** What sentences about a sheet consist of. Nothing that stands on one is among it. */
const around = words(
  when,
  "will do",
  sheet,
  comes,
  "(?:will|['’]ll|ll|shall|can|going to|gonna|should|ought to|would) (?:be|have|get|reach|follow|arrive|you|the|a|let)?|should|will|shall|can|let|please|to you|you|you (?:will|should|can)|(?:i|we|he|she|they|it)['’]ll|which|that",
  "(?:new|corrected|correct|right|fixed|revised|good|proper|other|another|fresh|updated|amended|replacement|mended|separate|changed|second|last|missing|remaining|rest|others|again|also|too|as well|back|over|out|in|on|off)",
  "(?:for|of|about|as for|re|regarding|concerning) (?:the |my |your )?(?:points?|questions?|items?|numbers?|nos\\.?|#)?",
  "with (?:the |all |my |our )?(?:corrections?|changes|fixes|revisions?|amendments)",
  "noted|(?:points?|questions?|items?|numbers?|one|ones|two|three|four|five|six|it|them|this|that|both|same|mistakes?|errors?|slips?|typos?|thanks?|sorry|oops)",
  "you are (?:quite |so |absolutely )?right|(?:good|nice|great|well) (?:catch|spot|spotted|caught|eye|eyes)|(?:well )?spotted|should not be (?:there|so|like (?:this|that))|thank(?:s| you) for (?:catching|spotting|seeing|noticing|finding|pointing)(?: (?:it|this|that))?(?: out)?",
);
const noun = words(sheet);

const move = words(comes);
const promise = words(
  `(?:(?:i|we|will|ll|shall) )(?:\\p{L}+ ){0,2}(?:${mends}(?:e|d|ed|s|ing|in|ting)?|send(?:ing|in)? (?:[\\p{L}\\d]+ )?(?:again|over|anew|new|back))`,
);
/** What tells of a sheet by itself: "got" and "did" may tell of anything. */
const sends = words(
  `attach\\p{L}*|enclos\\p{L}*|send(?:s|in|ing)?|sent|follow(?:s|ing)?|(?:on|by) (?:its|the|their) way|upload\\p{L}*|e-?mail(?:ed|ing)?|forward\\p{L}*|submit\\p{L}*|coming|comes|redone|done|ready|taken care of|dealt with|${mends}(?:e|s|es|d|ed|t|ing|in|ted|ting)?`,
);
const has = (pattern: RegExp, said: string): boolean => said.search(pattern) >= 0;

/** Whether a clause beside a sheet tells of it, of a slip, or of nothing. */
function isNoted(clause: string): boolean {
  return (
    /^(?:along |together )?with (?:\d{1,3}(?: ?(?:,|&|and) ?)?)+[\s.!]*$/iu.test(clause) ||
    /(?<!\p{L})(?:that|this|it) (?:was|is) (?:on )?(?:me|us|mine|ours)[\s.!]*$/iu.test(clause) ||
    has(noun, clause) ||
    has(sends, clause) ||
    has(owning, clause) ||
    !/\p{L}/u.test(withoutNotes(clause))
  );
}

function withoutNotes(said: string): string {
  return said
    .replace(/(?:\bno\.? ?)?\d{1,4}/giu, " ")
    .replace(around, ` ${understood.courtesy} `)
    .replace(owning, ` ${understood.courtesy} `);
}

/** Sheets are often called by their names: "revised S-101 attached". */
const sheetName =
  /(?<![\p{L}\p{N}])(?:sheets? )?\(?\p{Lu}{1,4}-\d{1,4}(?:\.pdf)?(?: ?\(?[Rr]ev\.? ?\p{L}?\d{0,2}\)?)?\)?(?![\p{L}\p{N}])/gu;
const withSheets = (sentence: string): string =>
  sentence.replace(sheetName, "sheet").replace(/[#№] ?(?=\d)/gu, "");

/** What a sentence says of sheets: the numbers that it names. Undefined if it says anything else. */
const noteIn = memoized((sentence: string): readonly number[] | undefined => {
  // "As soon as" with nothing that will be is a condition of what it stands beside.
  if (
    /^(?:by tomorrow|as soon as) (?!.*(?<!\p{L})(?:will|shall|can|send|get|follow|come|(?:i|we)['’]ll)(?!\p{L}))/iu.test(
      sentence,
    )
  )
    return undefined;
  // "Please replace the sheet" asks for something.
  if (
    /(?<!\p{L})(?:please|pls|plz|kindly) (?!see|find|refer|note|accept|get|check)|(?<!\p{L})(?:replace|swap|use|take) (?:the )?sheet/iu.test(
      sentence,
    )
  )
    return undefined;
  if (/\b(?:\d{1,2}|two|three|four|five|six|one) of (?:them|these|those|each)\b|\bof each\b/iu.test(sentence))
    return undefined;
  if (/["“”«»„?]|\p{L}\d|\bsame as\b|(?:ca|wo)n['’]t\b/iu.test(sentence)) return undefined;
  const said = harmless(plain(sentence.replace(/\n/g, " ")))
    .replace(/(?<=\d )was (?:my|our) (?:mistake|typo|slip|error)\b/giu, "")
    .replace(words(when), ` ${understood.courtesy} `);
  const numbers = [...said.matchAll(/(?<![\p{L}\d.,-])\d{1,4}(?![\p{L}\d]|[.,]\d)/gu)].map(([number]) =>
    Number(number),
  );
  if (!said.split(/[.!;,()]+\s+/u).every(isNoted)) return undefined;
  const rest = withoutNotes(said)
    .replace(/[◆△\s.,!–—()&+:;-]+/gu, (gap) => (/[◆△]/u.test(gap) ? ` ${understood.courtesy} ` : " "))
    .trim();
  return isDangerous(rest) || mayBeLegend(rest) ? undefined : numbers;
});

/** The numbers for which a sentence promises or brings a sheet, and nothing else. Undefined if it says anything else. */
export function sheetsPromisedIn(words: string): readonly number[] | undefined {
  const sentence = withSheets(words);
  const isPromise =
    (has(noun, sentence) && has(move, sentence)) || has(promise, sentence.replace(/['’]/gu, " "));
  return isPromise ? noteIn(sentence) : undefined;
}

const done =
  /^(?:and |for |as for )?(?:the )?(?:(?:number|point|question|item|no\.?|nr\.?|#) ?)?(\d{1,3})(?: ?(?:and|&|,) ?(\d{1,3}))?(?: ?[-:.)=–]+)? ?(?:(?:is|are|has been|have been|was) )?(?:now |all )?(?:(?:fixed|done|corrected|mended|sorted|sorted out|taken care of|updated|revised|shortened|noted)|(?:will|to|shall) (?:follow|be sent|be fixed|be corrected|come)(?: (?:separately|later|tomorrow|today|soon|shortly|by e-?mail|in a separate (?:mail|e-?mail)))?)[\s.!]*$/iu;

/** "1 is fixed", "1 will follow": the points that a sentence says are mended, or will be. */
export function pointsDoneIn(sentence: string): number[] | undefined {
  const [, ...numbers] = done.exec(sentence.trim()) ?? [];
  const named = numbers.filter((number) => number !== undefined);
  return named.length > 0 ? named.map(Number) : undefined;
}

/** Whether a sentence beside a no owns a slip, or is about a sheet. It names no number. */
export function isAmends(words: string): boolean {
  const sentence = withSheets(words);
  if (isOwning(sentence, { open: [] })) return true;
  const isAbout =
    has(noun, sentence) || has(move, sentence) || has(owning, sentence) || /\bsorry\b/iu.test(sentence);
  return isAbout && noteIn(sentence)?.length === 0;
}
