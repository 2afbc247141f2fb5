import { understood } from "./tallies.ts";

/*
 * What stands behind words that hand sheets over. "Order attached" is said in any number of ways, and whoever wants
 * something often hangs it on: "order attached, in triplicate", "sheets attached with frames". So of some words that
 * begin such a tail only known ones may follow. Common practice, no source.
 */

/** Words that hand something over. */
const hands =
  /(?<![\p{L}\p{N}])(?:attach\p{L}*|attch\p{L}*|att['’]?d?|enclos\p{L}*|herewith|pfa|here (?:is|are|you|u|we|they|it)|sending|sheets?|shts|forms?|order)(?![\p{L}\p{N}])/iu;

const mail = "(?:e-?mails?|mail|letter|message|attachments?|att|annex|pdfs?|zip|files?|folder|link)";
const determiners =
  "(?:the|an?|this|that|these|those|each|every|one|two|my|our|your|their|its|his|her|last|separate|it|them|all)";

/** What may follow "with" and its like. So may a name, a number, and a sign of what is known. */
const known = {
  with: `${determiners}|${mail}|you|u|y['’]?all|me|us|him|(?:many |best |kind |warm |kindest )*(?:thanks|regards|greetings|wishes|love|compliments|respect|apologies|joy|pleasure|relief|pride)|(?:great |some |much |due )(?:care|relief|pleasure|respect)`,
  in: `${determiners}|${mail}|three|four|five|six|ten|twelve|attached|advance|by|with|yesterday|today|number|name of|proper|full|total|order|haste|due course|electronic|digital|accordance|place of|reply|response|answer|return|case|and|here|writing|english|person|good|time|touch|charge|line|fact|town|bed|may|spring|summer|autumn|fall|winter|january|february|march|april|june|july|august|september|october|november|december|which|between|trouble|hand`,
  per: "the|your|our|my|his|her|each|above|attached|enclosed|usual|phone|telephone|e-?mail|device|plate|gang|station|page|sheet|switch|suite|keypad",
};
const odd = Object.entries(known).map(
  ([word, list]) =>
    new RegExp(`(?<![\\p{L}-])${word} (?!(?:${list})(?!\\p{L})|[◆◇◈△○\\d]|\\p{Lu})\\p{L}`, "u"),
);

/** One word behind a comma: thanks, a greeting, or how the sheets come. */
const last = /, (\p{Ll}[\p{L}'’-]+)[.!]*$/u;
const lastWords =
  /^(?:attached|att['’]?d|enclosed|completed?|zipped|signed|checked|filled|done|finished|final(?:ly)?|approved|all|again|too|please|pls|plz|thanks|thx|ty|tks|tnx|ta|cheers|merci|gracias|danke|sorry|hi|hello|folks|guys|gents|boss|mate|pal|buddy|team|friends?|sirs?|ladies|everyone|everybody|lol|haha|ha|phew|whew|yay|hooray|enjoy|regards|greetings|below|above|here|inside|today|now|yes|ok|okay|anyway|btw|fyi|etc|ref(?:erence)?|subject)$/u;

/** "Names to follow": something that is no sheet is yet to come. */
const follows =
  /(?<!\p{L})(?!(?:sheets?|forms?|devices?|plates?|pages?|files?|others?|rest|more|two|three|second|third|next|last|half|ones?|copy|po|p\.o\.|paperwork|e-?mail|mail)(?!\p{L}))\p{L}+ (?:to|will|shall) follow(?!\p{L})/iu;

/** For how many, or for what other than to be made. */
const purposes =
  /(?<!\p{L})for (?:both|each|every|(?:all )?(?:two|three|four|five|six|seven|eight|nine|ten|twelve)|all of (?!it|them|these|those)|stock|tender|bids?|the shelf|(?:the )?(?:first|second|third|last|next) (?:phase|stage)|phase)(?= (?!sheets?|forms?|plates?|devices?|stations?|keypads?|gangs?|pages?|days?|weeks?|hours?)\p{L}|[.,!)]|$)/iu;

/** Behind a comma or a dash: how it is to be looked at, whom it hangs on, or who is to know. */
const asides =
  /[,(–-] ?(?:(?:left|right|top|bottom)\p{L}* .*(?:seen|first)|(?:as )?seen from|part (?:one|two|three|1|2|3)|phase|\p{L}+ (?:agreeing|willing|consenting)|to (?:suit|fit|match)|whenever|large print|on (?:our|my|his|her|their|\p{L}+['’]s) account|and tell|and \p{L}+ knows|when you (?:get|have|find|come))(?!\p{L})/iu;

/** Whether words have a tail that nobody knows. Signs stand for what is known in them. */
export function hasOddTail(rest: string): boolean {
  return [...odd, follows, purposes, asides].some((one) => one.test(rest));
}

/** Whether words that hand sheets over go on in a way that nobody knows. `rest`: the same words, with signs. */
export function trailsOff(words: string, rest: string): boolean {
  if (!hands.test(words) && !rest.includes(understood.tally)) return false;
  const end = last.exec(rest)?.[1];
  return (end !== undefined && !lastWords.test(end)) || hasOddTail(rest);
}
