import { friendly, isHarmless } from "./small-talk.ts";

const spelt = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

const courtesy =
  "(?:please|pls|(?:many )?(?:thanks|thank you|thx|ty)(?: (?:guys|folks|mate|man|all|dears?|my friends?|kindly|so so much|again|so much|very much|a lot|a bunch))?|sir|ma'am|madam|xx+|my friends?|bro|man|mate|guys|folks|dears|bud|buddy|hi|hello|hola|olá|ola|salut|ciao|hej|hei|cześć|witam|cheers(?: mate)?|regards|gracias|merci|danke|ta|grazie|takk|dank je)";

/** A sentence that stands beside an answer in one line and says nothing. */
const idleSentence =
  /^(?:(?:good )?(?:morning|afternoon|evening|day)|hi|hello|thanks?|thank you|thx|ta|cheers|sorry|have a (?:good|nice|great) [\p{L} ]{1,20}|(?:thanks|thank you)(?: (?:so much|very much|again|guys|folks|all|everyone|team|a lot|in advance|burin|for [\p{L}' ]{1,40}))+)?(?:,? (?-i:\p{Lu}\p{Ll}+))?$/iu;
/** What people put behind an answer. */
const farewell =
  /[.,;]\s+(?:(?:cheers|thanks|thx|ta|regards|best),? \p{L}\.?|(?:thanks|thank you)(?: (?:again|so much|very much|a lot|in advance|for [\p{L} ']{1,40}))?|have a (?:\p{L}+ ){0,3}(?:day|one|weekend|week|evening|afternoon)|sorry(?: about that| for (?:the|my|our|any) [\p{L} ']{1,40})?)(?:,? (?-i:\p{Lu}\p{Ll}+))?[.]?$/iu;

/** Whether a sentence beside an answer is a mere courtesy. */
export function isCourtesy(sentence: string): boolean {
  return idleSentence.test(sentence) && !saysMore(sentence);
}

/** "Thanks but hold it": whether a courtesy takes back what it stands beside. */
function saysMore(courteous: string): boolean {
  return !isHarmless(courteous.replace(/^[.,;]\s+|\bsorry\b|\bdelay\b/giu, ""));
}

/** "Hi there, 3 yes", "Hiya, it's a yes to number 3". */
const salutation =
  /^(?:(?:hi|hello|hey|hiya|dear|good morning|morning|good afternoon|afternoon|good evening|evening|hallo|guten tag|servus|bonjour|hola|buenas|gents|folks)(?: there| all| team| both|\s\p{Lu}\p{Ll}+)?[,!:.]\s*)?(?:(?:it is|it's|that's|that is|so it's) (?:a )?(?=yes|no)|(?:the|my|our) answer (?=to (?:question |point |number )?\d))?/iu;

/** "No 1: yes" is the number of a point. */
const numero = /^no (?=\d{1,3} ?[.:=)] ?(?:yes|no)\b)/iu;

/** A line without its bullet, marks and courtesies. */
export function bared(line: string): string {
  const inner = line
    .replace(/\bn[º°] ?(?=\d)/giu, "number ")
    .normalize("NFKC")
    .replace(/[\uFE0F\u20E3]/g, "")
    .replace(/[’`´]/g, "'")
    .replace(new RegExp(`\\s(?::-?\\)|${friendly})(?=\\s|[.!]*$)`, "gu"), "")
    .replace(/!+(?!\s+\S)|["“”*_|]+/g, " ")
    // A reason in brackets, or behind a dash.
    .replace(/\s\(([^()\d?]{2,80})\)/gu, ", $1")
    .replace(/\s[–—]\s/gu, " - ")
    .replace(
      new RegExp(`(?<=(?:point|question|number|item) )(${spelt.join("|")})(?![\\p{L}])`, "giu"),
      (word) => String(spelt.indexOf(word.toLowerCase()) + 1),
    )
    .replace(/\s+/g, " ")
    .replace(/(?<=\p{L}) x$/u, "")
    .trim()
    .replace(/^(?:[-*•·–]|[=-]+>|→|⇒)\s+/u, "")
    .replace(/(?<=\d) (?:of|in|from) (?:your|the) (?:answer|e-?mail|letter|message|list|note)(?= )/giu, "")
    .replace(/^(?:likewise|also|again|same)[,:]? (?=(?:yes|no)$)/iu, "")
    .replace(/^(?:✅|✔|☑)\s*(?=(?:[\p{L}#.]{1,8} ?)?\d)/u, "")
    .replace(/[【<〈]\s?(\d{1,3})\s?[】>〉]/gu, "$1 ")
    .replace(/(?<=^\d{1,3})\s?\/\s/u, " ")
    .replace(/\s\/\s(?=(?:[\p{L}#]{1,8}\.? ?)?\d)/gu, ", ")
    .replace(/^(?:ad\.?|pkt\.?|q\.|a|punto|ponto|№) ?(?=\d{1,3}\b)/iu, "")
    .replace(/(?<=^\d{1,3})'?s (?=(?:an? )?(?:yes|good|fine|right|ok|correct)\b)/iu, " is ")
    // "OK YES", "oui yes".
    .replace(/\b(?:okay|ok|oui|si|sí|tak|ja|sim),? (?=yes\b)/giu, "")
    // Initials before an answer between the lines: "[HQ] yes".
    .replace(/^\[\p{Lu}{2,4}\]:?\s+/u, "");
  const single = /^(?:\d{1,3} ?[yn](?:[\s,;.]+|$))+$/iu.test(inner);
  const around = `(?:[\\s,.;:]*\\b${courtesy}\\b)+[\\s,.;:]*`;
  return (
    single
      ? inner.replace(
          /(\d) ?([yn])\b/giu,
          (_, number: string, is: string) => `${number} ${/y/i.test(is) ? "yes" : "no"}`,
        )
      : inner
  )
    .replace(/(?<=^(?:yes|yep|yeah|yup|ya)(?: to| on| for)? \d{1,3}) n (?=\d)/iu, " and ")
    .replace(salutation, "")
    .replace(new RegExp(`^${around}(?=\\S)`, "iu"), "")
    .replace(salutation, "")
    .replace(farewell, (tail) => (saysMore(tail) ? tail : ""))
    .replace(new RegExp(`${around}$`, "iu"), "")
    .replace(/[\s.,;!]+$/u, "")
    .replace(numero, "")
    .trim();
}
