import { speaksOfMaking, speaksOfTrade, turnsIn } from "./cues.ts";
import { speaksAgainst } from "./doubt.ts";

/** In characters. */
const longest = 120;
/** Words by which small talk beside an answer may be about the answer. */
const ofAnswer =
  /[?\d"“”:]|,$|\b(?:if|when|once|unless|until|other|another|different|previous|earlier|mind|think|thought|guess|hope|mix(?:ed)?|meant|confus\w*|boss|said|say|says|saying|tell|told|answer\w*|repl\w+|wrote|write|test\w*|try\w*|jok\w*|kidding|pretend\w*|practi[cs]\w*|yes|will|would|let|know|far|suppose|believe|understand|recall|remember|assum\w*|later|soon|ask\w*|check with|catch\w*|caught|spott\w+|notic\w+|flagg\w+|point\w+ (?:it |this |that )?out)\b/iu;

/** What people are thanked for. */
const thanked =
  /\bfor (?:asking|checking|letting (?:me|us) know|telling (?:me|us)|(?:your|the) (?:\p{L}+ )?(?:answer|reply|question|message|e-?mail|letter|patience|help))(?: of this morning)?\b/giu;

/** Whether small talk says nothing of the answer beside it. */
export function isHarmless(sentence: string): boolean {
  const words = sentence.replace(thanked, "");
  return (
    words.length <= longest &&
    !ofAnswer.test(words) &&
    !/\p{Lu}{3}/u.test(words) &&
    !speaksOfTrade(words) &&
    !speaksOfMaking(words) &&
    !speaksAgainst(words)
  );
}

/** "Thanks for going through it so carefully." */
export function isThanks(sentence: string): boolean {
  const [, what] =
    /^(?:many thanks|thanks(?: a lot| so much)?|thank you(?: so much| very much)?) for (.+)$/iu.exec(
      sentence,
    ) ?? [];
  return what !== undefined && isHarmless(`for ${what}`);
}

/** Where somebody was, how busy, and that the answer is late. */
const whereabouts =
  /\b(?:(?:on|at) (?:the )?(?:site|road|ladder|roof|phone|job ?site)|all (?:day|week|morning|afternoon)|long (?:day|week|night)|missed (?:this|it|your \p{L}+)|vacation|holidays?|out of (?:the )?office|back (?:from|in|at|on)|got back|travell?ing|driving|busy|swamped|slammed|in (?:a )?meetings?|traffic|late|delay|signal)\b/iu;
const mostWords = 12;

/** "Sorry for the delay, was on site all day with no signal.": it says nothing of an answer that follows. */
export function isOwnAffair(sentence: string): boolean {
  const words = sentence
    .replace(/^sorry\b/iu, "")
    .replace(
      /\b(?:for|about) (?:the|my) (?:delay|late (?:reply|answer|response))\b|\b(?:with )?no (?:signal|reception|service|internet|wi-?fi|coverage)\b/giu,
      "late",
    )
    .replace(/^[\s,]+/u, "");
  return (
    whereabouts.test(words) &&
    isHarmless(words) &&
    !/asks|binds/.test(turnsIn(words)) &&
    words.split(" ").length <= mostWords
  );
}
