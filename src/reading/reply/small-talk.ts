import { isOwn, onlyChats } from "./chat.ts";
import { asksFor, speaksOfTrade } from "./cues.ts";
import { speaksAgainst } from "./doubt.ts";

/** In characters. */
const longest = 120;
/** Words by which small talk beside an answer may be about the answer. */
const ofAnswer =
  /[?\d"“”:]|,$|\b(?:if|when|once|unless|until|other|another|different|previous|earlier|mind|think|thought|guess|hope|mix(?:ed)?|meant|confus\w*|boss|said|say|says|saying|tell|told|answer\w*|repl\w+|wrote|write|test\w*|try\w*|jok\w*|kidding|pretend\w*|practi[cs]\w*|yes|will|would|let|later|soon|ask\w*|check with)\b/iu;

function isHarmless(words: string): boolean {
  return words.length <= longest && !ofAnswer.test(words) && !speaksOfTrade(words) && !speaksAgainst(words);
}

/** "Thanks for going through it so carefully." */
export function isThanks(sentence: string): boolean {
  const [, what] =
    /^(?:many thanks|thanks(?: a lot| so much)?|thank you(?: so much| very much)?) for (.+)$/iu.exec(
      sentence,
    ) ?? [];
  return what !== undefined && isHarmless(what.replace(/\bof this morning\b/giu, ""));
}

/** "Sorry for the delay, was on site all day with no signal.": it says nothing of an answer that follows. */
export function isOwnAffair(sentence: string): boolean {
  const [, sorry = "", rest = sentence] =
    /^(sorry(?: for (?:the|my) (?:delay|late (?:reply|answer|response)))?)[, ]?(.*)$/iu.exec(sentence) ?? [];
  const words = rest
    .replace(/\b(?:with )?no (?:signal|reception|service|internet|wi-?fi|coverage)\b/giu, "")
    .trim();
  if (words === "") return sorry !== "";
  return isHarmless(words) && !asksFor(words) && (sorry !== "" || (isOwn(words) && onlyChats(words, words)));
}
