import { tokensOf } from "./word-bag.ts";

/** "Will fix", "Corrected sheets on the way", "New sheet for 5 to follow, along with 1 and 2". */
const does = new Set(
  tokensOf(
    "fix fixing correct correcting redo mend shorten resend resending resubmit send sending sort follow follows reissue issue address deal revise update come coming comes way",
  ),
);
const around = new Set(
  tokensOf(
    `i we ll will am m re are is going to can and the a an you it them that those these my our your new corrected revised
    updated fixed other others rest two three remaining one ones both sheet sheets pdf pdfs file files form forms point
    points number numbers item items question questions again over out on in for with along its their back soon
    shortly later tonight tonite today tomorrow this morning afternoon evening asap right away shall week separately form`,
  ),
);

/** The numbers for which a sentence promises a sheet, and nothing else. Undefined if it says anything else. */
export function sheetsPromisedIn(sentence: string): number[] | undefined {
  const tokens = tokensOf(
    sentence
      .replace(/\bno\.? ?(?=\d)/giu, "")
      .replace(/(?<=\d )was (?:my|our) (?:mistake|typo|slip|error)\b/giu, ""),
  );
  const isPromise =
    !sentence.includes("?") &&
    /\b(?:i|we|will|sheets?|ones?|files?|pdfs?)\b/iu.test(sentence) &&
    /\b(?:i|we|will|shall|to follow|follows|com(?:es|ing)|way)\b/iu.test(sentence) &&
    tokens.some((token) => does.has(token)) &&
    tokens.every((token) => does.has(token) || around.has(token) || /^\d{1,4}$/.test(token));
  return isPromise ? tokens.filter((token) => /^\d/.test(token)).map(Number) : undefined;
}

/** "The corrected sheet", "a good one". */
const newSheet =
  /\b(?:(?:another|other|fresh|new|right|good|correct(?:ed)?|revised|fixed|updated|proper|amended) )(?:sheets?|ones?|files?|forms?|pdfs?|versions?|documents?|lists?)\b|\b(?:sheets?|files?|forms?|pdfs?)(?: again)?\b|\b(?:korrigiertes|neues|richtiges) blatt\b|\bla feuille (?:corrigée|juste)\b|\bla hoja corregida\b/giu;
/** What people say who own a slip and promise a sheet. None of these words can turn a no. */
const owning = new Set(
  tokensOf(
    `i we he she they will ll am are is was it that this the a an my our his her their from by on in at to of for you me us and so side end part
    office mistake mistakes mistaken error errors typo typos slip fault wrong wrongly sorry apologies apologise apologize
    excuse regret please bad again send sends sending sent resend resends resending reissue reissued issue issued make prepare follow
    follows following coming come comes reach arrive get soon shortly later today tonight tomorrow tomorow tommorow
    morning afternoon evening day days week monday tuesday wednesday thursday friday saturday sunday asap out over with
    inshallah inchallah fix fixes correct correcting fixing it's i'll thanks thank oops quite totally made did do be have has drafting
    typing finding seeing noticing inconvenience trouble confusion comin now mine your way en route one hour hours my friend
    fixin resendin it wrong will up fat fingers finger keyboard autocorrect oops ouch embarrassing blush silly clumsy hurry
    upload uploading attached attach attaching enclosed replace replacing redo redoing rewrite rewriting back next few minutes
    boss client customer owner architect colleague office noon lunch next new right away immediately directly shall going can
    thanks cheers forgive pardon mea culpa misspelling mistyped slipped spelling correction corrections corrected letter missing
    filling fill filled out doing done copied copy copying wrote write typed type resubmit resubmitting submit submitting tonite u ur doing redraw issuing mailing emailing mail email made he's she's
    separately separate kommt folgt anbei wir schicken senden je nous vous envoie envoyons renvoie renvoyons renverrons enviaremos enviamos envío entschuldigung pardon désolé perdón`,
  ),
);

const owned =
  /\b(?:mistakes?|mistaken|errors?|typos?|slip|slipped|fault|wrong|sorry|apolog\w+|excuse|bad|typing|catch|spotted|fingers?|mistyped|misspelling|mea culpa|autocorrect|embarrassing|entschuldigung|pardon|désolé|perdón|send(?:s|ing)? (?:\p{L}+ ){0,3}again|(?:re-?send|resubmit(?:ting)?|re-?submit|resendin|resending|fix|fixing|fixin|correct|correcting|redo|reissue)(?: (?:it|this|that|them))?)\b/iu;

/** Whether a sentence beside a no owns a slip, or promises a sheet. It names no number and no other sheet. */
export function isAmends(sentence: string): boolean {
  const tokens = tokensOf(
    sentence
      .replace(newSheet, " i ")
      .replace(
        /\b(?:(?:that|it|this) )?should ?(?:not|n'?t) be (?:there|so|like (?:this|that))\b|\b(?:good|nice|great) (?:catch|spot|eye|eyes)\b|\bwell (?:spotted|seen|caught)\b|\byou are (?:quite |so )?right\b|\bthank(?:s| you) for (?:seeing|finding|noticing|catching|spotting|pointing (?:it|that|this) out) ?(?:it|this|that)?\b/giu,
        " sorry ",
      ),
  );
  return (
    tokens.length > 0 &&
    !/[?\d"“”:]|\b(?:make|do|get|have|send) (?:it|them|that)\b(?! again)/iu.test(sentence) &&
    tokens.every((token) => owning.has(token)) &&
    (sentence.search(newSheet) >= 0 || owned.test(sentence) || tokens.includes("sorry"))
  );
}
