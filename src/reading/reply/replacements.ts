import { type Parts, withoutTrue } from "./borne-out.ts";
import { type Came, facesOf, isAgain, replacesAll, stripOf } from "./came.ts";
import { tokensOf } from "./word-bag.ts";

/*
 * Sheets that come again: "please use this one instead", "disregard the earlier sheet". Such words ask for nothing more
 * if each sheet that came takes the place of an earlier one.
 */

const kind = "(?:sheet|one|version|form|file|copy)";
const sent =
  "(?:,? (?:that )?(?:i|we) sent(?: you)?)?(?: (?:earlier|before|yesterday|today|this morning|this afternoon|last (?:week|night)))?";
const old = `(?:the |my |our )?(?:earlier|previous|prior|old|first|last|original) (?<old>${kind}s?|copies)${sent}`;
const fresh = `(?:(?:this|the (?:attached|enclosed|new|revised|corrected|updated|right|correct))(?: ${kind})?(?: attached)?|it|the attachment|(?:these|the (?:attached|new|revised|corrected))(?: ${kind}s)?)`;
const mark = "(?<mark>\\p{L}{0,4}[-_ ]?\\d{1,4}\\p{L}?)";
const revision = "rev(?:ision)?\\.? ?(?:\\d{1,2}|\\p{L})";
const please = "(?:(?:so|and|then) )?(?:(?:please|pls|kindly) )?(?:just )?";
const ends = "(?=\\s*(?:[.,;!)]|$))";
const words = "[\"“']?(?:\\p{L}[\\p{L}\\p{N}'&/-]*)(?: [\\p{L}\\p{N}][\\p{L}\\p{N}'&/-]*){0,2}?[\"”']?";

const who =
  "(?:(?:(?:the |our |my )?(?:owner|client|customer|architect|designer|boss|he|she|they|we|i))(?: has| have|'ve| just| now)* ?)?";
const mends = "(?:changed|corrected|fixed|shortened|abbreviated|cut|trimmed)";

const replacements: readonly RegExp[] = [
  `${please}(?:use|go (?:by|with)|work (?:from|off)) ${fresh}(?: instead(?: of ${old})?| now| from now on)?${ends}`,
  `${please}(?:disregard|ignore|discard|scrap|toss|throw away) ${old}${ends}`,
  `${please}(?:replace|swap|exchange) (?:(?:the )?${mark}|${old}|(?:the|my|our) ${kind}) (?:with|by|for) ${fresh}${ends}`,
  `(?:the )?(?:new|revised|corrected|updated) ${mark} (?:replaces|supersedes) (?:${old}|the (?:old|first|earlier))${ends}`,
  `(?:this|it|that)(?: one)?(?: is|'s) (?:now )?(?:(?:right|correct)(?: now)?|(?:the )(?:right|correct|new|latest|current|final|good) ${kind})${ends}`,
  `(?:(?:${mark}|this is|sheet|form),? )?${revision}(?: (?:attached|enclosed))?(?:,? (?:it )?(?:replaces|supersedes) ${revision})?${ends}`,
  `(?:the |our |my )?(?:owner|client|customer|architect|designer|boss|he|she|they|we|i)(?: has| have|'ve)? changed (?:his|her|their|our|my) minds?${ends}`,
  `${who}${mends} (?:it |the \\p{L}+ )?(?:from )?(?<from>${words}) (?:in)?to (?<to>${words})${ends}`,
  `${who}(?:${mends}(?: (?:it|them|that|this|the (?:legend|text|wording|row|word)s?))?(?: down)? to|used|(?:will |'ll )?(?:go|went|going) with|(?:agreed|agrees) (?:to|on)|(?:is|are) (?:ok|okay|fine|happy|good) with) (?<to>${words})(?: instead| now| as (?:you )?suggested)*${ends}`,
  `${who}(?:took out|removed|dropped|deleted|left out|got rid of) (?:the word )?(?<from>${words})${ends}`,
  `${who}${mends}(?: (?:it|them|that|this|the (?:legend|text|wording|row|word)s?))?(?: down)?(?: to fit| so it fits)?${ends}`,
  // The answer tells.
  `(?:(?:so,? )?(?:does|will) (?:this|it|that)(?: one)? (?:fit|work|pass|do)|(?:is (?:this|it|that)(?: one)? )?(?:ok|okay|right|better|good|all right|alright)|how about|how is)(?: (?:this(?: one)?|like this|now|then))*\\?`,
  `resubmitt(?:ed|ing)(?: ${mark})?(?: with (?:the |an? )?(?:shorter|new|corrected) (?:legend|text|wording|word)s?)?${ends}`,
].map((source) => new RegExp(`(?<![\\p{L}\\p{N}])(?:${source})(?![\\p{L}\\p{N}])`, "giu"));

const keyOf = (typed = ""): string => tokensOf(typed).join("");

/** Whether just what is told came again. */
function areThese({ old: gone = "", mark: named, from, to }: Parts, came: Came): boolean {
  const { sheets, earlier } = came;
  if (!replacesAll(came)) return false;
  if (named !== undefined && sheets.some((sheet) => keyOf(sheet.mark) !== keyOf(named))) return false;
  // Of several earlier ones all have to come again.
  const before = earlier.filter((sheet) => isAgain(sheet, { ...came, earlier: sheets }));
  if (/(?:s|copies)$/iu.test(gone) && before.length < earlier.length) return false;
  const textsOf = (some: Came["sheets"]): string[] =>
    some.flatMap((sheet) => [stripOf(sheet), ...facesOf(sheet)]);
  const has = (some: Came["sheets"], typed: string): boolean =>
    textsOf(some).some((text) => ` ${text} `.includes(` ${tokensOf(typed).join(" ")} `));
  const isGone = from === undefined || (has(before, from) && !has(sheets, from));
  const isNew =
    to === undefined ||
    (has(sheets, to) && (from !== undefined || !textsOf(before).includes(tokensOf(to).join(" "))));
  return isGone && isNew;
}

/** Words without those that only say that what came takes the place of earlier sheets. */
export function withoutReplacements(said: string, came: Came): string {
  return replacements.reduce(
    (some, pattern) => withoutTrue(some, pattern, (told) => areThese(told, came)),
    said,
  );
}
