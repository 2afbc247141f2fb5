import { bids } from "./cues.ts";
import { isDangerous } from "./danger.ts";
import { explains, spellsOut } from "./explains.ts";
import type { OwnLine } from "./own-lines.ts";
import { isNearQuestion, type Topic } from "./talk.ts";
import { plain } from "./tokens.ts";
import type { Said } from "./ways.ts";
import { tokensOf } from "./word-bag.ts";

/** What a line may be about. */
export interface AtPoint extends Topic {
  /** How many points there are that are no open questions. */
  readonly others: number;
  /** Whether a number is a point that is no open question. */
  readonly isOther: (number: number) => boolean;
  /** What our answer says at a number. */
  readonly says?: (number: number) => string;
  /** Whether the letter says elsewhere that new sheets come. */
  readonly promises: boolean;
}

const number = String.raw`\d{1,3}`;
const numbers = String.raw`${number}(?:\s?(?:,|&|\+|/|and)\s?#?${number})*`;
const label = String.raw`(?:(?:(?:ad|re|regarding|concerning|as for|for|on|about)[:\s]\s?)?(?:questions?|points?|items?|query|queries|comments?|number|no\.|nr\.?|q|#)\s?(?:number|no\.?|nr\.?)?\s?#?|(?:ad|re|regarding|concerning|as for|for|on)[:\s]\s?#?)`;
/** What follows a number that no sign sets off: "3 is attached". "3 sheets" are three. */
const verb = String.raw`(?=(?:it|its|it's|that's|getting|i've|we've|i'll|we'll|is|are|was|were|has|have|had|to|will|we|i|he|she|they|you|now|yes|no|y|n|nope|yep|done|see|new|corrected|revised|amended|fixed|redone|changed|updated|shortened|attached|noted)\b(?! (?:more )?(?:sheets|forms|ones|files|pdfs|copies)\b))`;
/** "Item 3 -", "#3:", "5 & 6 –", "Q3. ", "3 is" at the beginning of a line. */
const head = new RegExp(
  String.raw`^(?:and |so )?[[(]?(?:${label}?(${numbers})(?:[\])]?\s?[.:)=–—-]+(?!\d)\s*|\s+${verb})|${label}(${numbers})(?:\s?,)?\s+)(?=\S)(.+)$`,
  "isu",
);
/** "Good catch on 1, …", "You are right about 3, …" */
const caught = new RegExp(
  String.raw`^((?:good|great|nice) (?:catch|spot)|well (?:spotted|caught)|(?:yes,? )?you(?: are|['’]re) (?:(?:quite|absolutely) )?right) (?:on|with|about|for) ${label}?(${number})(?:\s?[,.!:;–—-]+\s*|$)(.*)$`,
  "isu",
);
/** Where another point begins in a line: "1 yes. 2 no, …". */
const nextPoint = new RegExp(
  String.raw`(?<=[.!;)])\s+(?=(?:so |and )?(?:${label}?${number}(?:\s?[.:)=–—-]|,?\s+${verb})|${label}${number}\b))`,
  "iu",
);

/** The pieces of a line, each about a point of its own. */
export function pointsApart(line: string): readonly string[] {
  return line.split(nextPoint);
}

const yes = /^(?:yes|yep|yeah|yup)(?![\p{L}\p{N}'’]|-\p{L}|[^?]*\?)[\s,.;:!–—-]*/iu;
/** "No problem" is a yes. */
const no =
  /^(?:(?:(?:good|great|nice) (?:catch|spot)|well (?:spotted|caught)|(?:yes,? )?you(?: are|['’]re) (?:(?:quite|absolutely|so) )?(?:right|correct)|oops|my bad)|(?:no|nope|n)(?![\p{L}\p{N}'’])(?! (?:problems?|worries|issues?|changes?|need|doubt|errors?|mistakes?|typos?|corrections?|objections?|idea))|not (?:intended|intentional|meant|correct|right|ok|okay)|wrong|typo|(?:this is |that is |it is |that's |it's )?(?:is |was )?(?:my|our|a) (?:mistake|error|typo|slip)|mistake|error|(?:(?:it|this|that) )?(?:is|was) (?:a |an )?(?:not (?:correct|right|intended|meant|ok|okay)|wrong|incorrect|typo|mistake|error)|(?:i am |i'm |we are )?(?:very |so )?sorry,? (?:this|that|it) (?:is|was) (?:my|our|a) (?:mistake|error|typo)|incorrect|superseded|amended|corrected|revised|fixed|changed|redone)(?![\p{L}\p{N}])/iu;

/** Words by which somebody says that a point is mended, or that its sheet comes again. */
const mended =
  /(?<![\p{L}\p{N}])(?:attach\p{L}*|enclos\p{L}*|revis\p{L}+|re-?submit\p{L}*|redo(?:ing)?|re-?done|re-?issu\p{L}+|re-?sen[dt]\p{L}*|re-?typed|superseded|amended|shortened|fixed|corrected|updated|abbreviated|replaced|mended|rectif\p{L}+|put right|sorted|done|split|changed to|ticked|(?<!got )filled in|completed|(?<=\p{L} )added|(?:new|fresh) (?:sheet|one|form|file|pdf|version|copy|drawing)|(?:to|will|shall|['’]ll) (?:follow|come|send|redo|fix|correct|shorten)|coming|on (?:its|the) way|send (?:it|one)|see new)(?![\p{L}\p{N}])/iu;
/** The same where the sheet itself is meant. */
const brings =
  /(?<![\p{L}\p{N}])(?:attach\p{L}*|enclos\p{L}*|re-?submit\p{L}*|re-?issu\p{L}+|re-?sen[dt]\p{L}*|(?:same )?(?:new|fresh|corrected|revised|amended|fixed|updated|same) (?:sheet|one|form|file|pdf|version|copy|drawing)s?|(?:to|will|shall|['’]ll) (?:follow|come|send)|comes|coming|will be (?:sent|mailed)|on (?:its|the) way|(?:corrected|fixed|revised|changed|updated|amended) (?:in|on|as|by) (?:the )?(?:rev\p{L}*|new|attached|sheet|updated))(?![\p{L}\p{N}])/iu;

/** What one may say first of a point that was found. */
const grants =
  /^(?:(?:aye|ok|okay|yes|yep|right|sure|fair enough|oops|sorry|noted|agreed|understood|will do)[\s,.!–—-]*)+/iu;

/** "As above", "noted". */
const notes =
  /^(?:(?:as|see) above|ditto|noted|ok(?:ay)?|will do|same|understood)(?:,? thanks?| thank you)?[.!]*$/iu;

/**
 * Words that reach beyond a point that has to be sent again: they may wish, ask or bind something that the new sheet
 * will not say.
 */
const beyond =
  /\?|(?<![\p{L}\p{N}])(?:never|no (?:need|change|longer|space|room|way)|not (?!intended|intentional|meant|correct|right|ok|okay|some)|\p{L}+n['’]t|cannot|cant|dont|refus\p{L}+|leave|keep|stays?|remain\p{L}*|as (?:it )?(?:is|stands|typed)|like it is|fine|okay|ok (?:as|like)|fits|(?<!to )fit|all (?!set|done|good|sorted)|every\p{L}*|each|any\p{L}*|rest|others?(?<!(?:like|as) the others)|another|also (?!attach|enclos|redone|fixed|corrected|has been|is |was |done|sorted)|both|same (?!sheet|file|form|mistake|reason|drawing)|whole|entire|orders?|wording|company|cancel\p{L}*|delet\p{L}+|remov\p{L}+|drop(?:ped)?|scrap\p{L}*|hold|wait\p{L}*|(?<!full )stop\p{L}*|call|ring|phone|pric\p{L}+|costs?|invoic\p{L}+|charg\p{L}+|pay\p{L}*|ship(?!-to)\p{L}*|deliver\p{L}*|if|unless|until|till|once|when|whether|but|except\p{L}*|instead|only|however|or|asap|urgent\p{L}*|rush|first|before|after|confirm\p{L}*|let (?:me|us) know|(?:please|pls|kindly) (?!see|find|refer|use|get|accept)|can you|could you|would|want\p{L}*|prefer\p{L}*|rather|love|like to|add|adding|(?<!\p{L} )added|be added|make|makes|put(?! right)|move[sd]?|swap\p{L}*|turn|wish\p{L}*|need\p{L}*|must|can|could|may|might|maybe|perhaps|probably|think|guess|hope|try|trying|unsure|question|why|finish\p{L}*|colou?rs?|white|black|brass|bronze|steel|stainless|chrome|gold|silver|wood\p{L}*|capitals?|bold|font|letters?|lettering|deep\p{L}*|big\p{L}*|small\p{L}*|larg\p{L}*|narrow\p{L}*|wider?|thick\p{L}*|thin\p{L}*|higher|lower|logos?|symbols?|extra|more|second|two|three|four|five|twice|double|further)(?![\p{L}\p{N}])/iu;

/** Names of sheets and their states, in which numbers are no numbers of points: "S-201 Rev 1", "rev. C", "button 4". */
const names =
  /(?<![\p{L}\p{N}])(?:sheet )?\p{L}{1,4}[-_]?\d{1,4}(?:\.pdf)?(?![\p{L}\p{N}])|\b(?:rev(?:ision)?\.?|version|v|issue|sheet|dwg|button|row|page|position|gang)[\s.]?(?:\d{1,3}|\p{Lu})\b|\b(?:over|on|in|to|into) (?:two|both|2|three|3|the) rows\b/giu;

/** In characters. */
const longest = 220;

/**
 * What a line says at the point that it begins with, or under which it stands. At a point that has to be sent again it
 * matters little what is said of it, since its new sheet is judged anew: nothing but what reaches beyond. Undefined if a
 * person has to read it.
 */
export function saidAtPoint(
  { line, under, afterSeveral }: OwnLine,
  points: AtPoint,
): readonly Said[] | undefined {
  const said = plain(line.replace(/\n/gu, " "));
  // It may be a joke.
  if (said.length > longest || /;-?\)/u.test(said)) return undefined;
  const [, praise, praised, remark = ""] = caught.exec(said) ?? [];
  const [, marked, labelled, behind = `${praise ?? ""}, ${remark}`] = head.exec(said) ?? [];
  const named = [...(marked ?? labelled ?? praised ?? "").matchAll(/\d+/gu)].map(([one]) => Number(one));
  if (under !== undefined && named.some((one) => one !== under)) return undefined;
  const [at, rest] = named.length > 0 ? [named, behind] : unnamed(said, { under, afterSeveral }, points);
  if (at.length === 0) return undefined;
  if (at.every(points.isOther)) {
    const own = withoutOurs(rest, at.map((one) => points.says?.(one) ?? "").join(" "));
    return (staysHere(withoutDetail(own)) && mended.test(own)) || notes.test(own) ? [] : undefined;
  }
  if (!at.every((one) => points.open.includes(one))) return undefined;
  const against = no.exec(rest);
  if (against !== null) {
    const why = rest.slice(against[0].length);
    const comes = brings.test(rest) || points.promises;
    return comes && staysHere(why) ? at.map((one) => ({ number: one, is: false })) : undefined;
  }
  if (
    brings.test(rest) &&
    staysHere(rest) &&
    !/^(?:yes|yep|yeah|yup|no|ok|okay|fine|good)(?!\p{L})/iu.test(rest)
  )
    return at.map((one) => ({ number: one, is: false }));
  const agrees = yes.exec(rest);
  if (agrees === null) return undefined;
  const [why, inQuestion = []] = [rest.slice(agrees[0].length), points.inQuestion];
  if (!spellsOut(why, inQuestion) && (isNearQuestion(rest, inQuestion) || !explains(why))) return undefined;
  return at.map((one) => ({ number: one, is: true }));
}

/** "Yes for both", "yes to all" before a reason. */
const ofAll =
  /^(?:(yes|yep|yeah|yup)(?: to| for| on)? (both|all)(?: of (?:them|these|those))?|(both|all)(?: are)? (yes))(?![\p{L}\p{N}])/iu;

/** The points of a line that names no number, and what it says of them. */
function unnamed(
  said: string,
  { under, afterSeveral }: { readonly under: number | undefined; readonly afterSeveral: boolean },
  { open, others }: AtPoint,
): readonly [readonly number[], string] {
  if (under !== undefined) return [[under], said];
  if (afterSeveral || others > 0) return [[], ""];
  const [all, , ahead, behind] = ofAll.exec(said) ?? [];
  if (all !== undefined)
    return (ahead ?? behind)?.toLowerCase() === "all" || open.length === 2
      ? [open, `yes, ${said.slice(all.length)}`]
      : [[], ""];
  return open.length === 1 && /^yes[,.;:!–—-]/iu.test(said) ? [open, said] : [[], ""];
}

/** "Should be Terrace", "typo on our side", "I used the old form": what a no may say of itself. */
const legendWord = String.raw`(?:legend|word|name|text|spelling|one|wording|version|abbreviation|term|label)`;
const amends = new RegExp(
  `^(?:${[
    String.raw`(?:(?:it|this|that|which) )?(?:should|must|ought to) (?:be|read|say|have been|have read|have said)(?! written| cut| engraved| like)(?: \p{L}[\p{L}'’-]*){1,3}`,
    String.raw`(?:(?:this|that|it)(?: is|['’]s| was) (?:(?:indeed|really|just|clearly|definitely|simply) )*)?(?:my|our|a|the|an?) (?:\p{L}+ )?(?:mistake|error|typo|slip)(?: (?:on|at|from) (?:my|our) (?:side|end|part))?`,
    String.raw`(?:i|we) (?:have )?(?:used|sent|copied|took|had|put|attached) the (?:wrong|old) \p{L}+(?: \p{L}+)?`,
    String.raw`(?:(?:it|this|that|they)(?: is|['’]s| was|['’]re| are) )?(?:the |an? )?(?:old|wrong|former|previous|outdated) (?:\p{L}+ ){0,2}${legendWord}s?`,
    String.raw`(?:it|this|that)(?: is|['’]s)(?: called)?(?: \p{L}[\p{L}'’-]*){1,3} now`,
    String.raw`(?:the )?(?:correct|right|proper) (?:\p{L}+ )?${legendWord} (?:is|should be|reads)(?: \p{L}[\p{L}'’-]*){1,3}`,
    String.raw`(?:(?:the|our|my) )?(?:party|client|customer|owner|architect|office|apprentice|designer|we|i|he|she|they) (?:has |have |had )?(?:given|gave|sent|wrote|written|typed|put|supplied|made|spelled|spelt|copied) (?:(?:us|me|it|this|that|the|an?) )*(?:wrong(?:ly)?|incorrect(?:ly)?|mistake|error|typo)(?: \p{L}+)?`,
    String.raw`(?:the|that|this) (?:full stop|period|dot|comma|dash|hyphen|space|blank|gap|digit|zero|one|letter|${legendWord}|spelling|finish|colou?r)(?: (?:there|too))? (?:is|was) (?:(?:just|only|indeed|clearly) )?(?:(?:a|an|my|our|the) )?(?:mistake|error|typo|slip|wrong|accident)`,
    "(?:they|(?:the|both) (?:positions|devices|sheets)) (?:are|were|got|have been) (?:exchanged|swapped(?: (?:over|round|around))?|mixed up|switched|the wrong way (?:round|around)|reversed)",
    "(?:that|this|it) (?:got|was|is) (?:mixed up|mistyped|misspelt|misspelled|typed wrong|entered wrong|a leftover|left over)",
    "(?:on|at|from) (?:my|our) (?:side|end|part)",
    "(?:(?:i|we|he|she|they) )?(?:stuffed|messed|mucked|screwed|cocked|mixed) (?:that|it|this|them)(?: one)? up",
    "(?:old|wrong|superseded|outdated) (?:sheet|form|drawing|version|revision|template)",
    "thanks?(?: you)?(?: for (?:catching|spotting|noticing|flagging)(?: (?:it|that|this))?)?|(?:good|great|nice) (?:catch|spot)|well (?:spotted|caught)",
    "(?:very |so )?(?:sorry|apologies)(?: (?:about|for) (?:that|this|it))?",
  ].join("|")})$`,
  "iu",
);

/**
 * Whether what is said of a point that has to be sent again is about nothing else: each clause of it tells of the new
 * sheet, or of the slip.
 */
function staysHere(rest: string): boolean {
  const own = rest.replace(names, " ").replace(grants, "");
  if (beyond.test(own) || /\d/u.test(own) || bids(own.replace(new RegExp(mended, "giu"), " "))) return false;
  return own
    .split(/[.,;:!()–—]+\s*|\s-\s|\s+(?:and|so|which|as|since|because)\s+/u)
    .map((one) => one.replace(/["“”]/gu, "").trim())
    .every(
      (one) =>
        !/\p{L}/u.test(one) || amends.test(one) || (mended.test(one) && tokensOf(one).length <= mostOfClause),
    );
}

/** "Cream please", where our answer says to choose Cream: what stands on the sheet then. */
function withoutOurs(rest: string, ours: string): string {
  const chosen = /\bChoose (\p{L}+) lettering\b/u.exec(ours)?.[1];
  return chosen === undefined
    ? rest
    : rest.replace(
        new RegExp(
          `^(?:(?:lettering|it|text) )?(?:(?:is )?(?:now|in|changed to) )?${chosen}(?: lettering)?(?: (?:it is|please|now|then|chosen|instead|is fine|for the lettering))*(?=\\s*(?:[.,;!]|$))`,
          "iu",
        ),
        " ",
      );
}

/** "Billing city added (Harrow)": what now stands on the sheet, which is judged anew. */
function withoutDetail(rest: string): string {
  return rest
    .replace(/(?<=ticked )(?:the )?(?:box|leave plain)/iu, "")
    .replace(/\(([\p{L}\p{N} ,.'-]{1,40})\)/gu, (whole, detail: string) =>
      isDangerous(detail.replace(/\d/gu, " ")) ? whole : " ",
    );
}

/** In words. */
const mostOfClause = 12;
