import { namesGoods, speaksOfMaking, speaksOfTrade, turnsIn } from "./cues.ts";
import { speaksAgainst } from "./doubt.ts";
import { isForeign } from "./foreign.ts";
import { hasSigns } from "./word-bag.ts";

/** In characters. */
const longest = 120;
/** Words by which small talk beside an answer may be about the answer. */
const ofAnswer =
  /[?\d"“”:]|,$|\b(?:if|when|once|unless|until|other|another|different|previous|earlier|mind|think\w*|thought|guess\w*|hope|suppos\w*|wonder\w*|reckon\w*|figur\w*|bet|gambl\w*|hesitat\w*|seem\w*|appear\w*|likely|possibl\w*|apparently|presumabl\w*|supposedly|sort of|kind of|intern|temp|covering|new (?:here|to)|back to you|mix(?:ed)?|meant|confus\w*|boss|said|say|says|saying|tell|told|answer\w*|repl\w+|wrote|write|test\w*|try\w*|jok\w*|kidding|pretend\w*|practi[cs]\w*|yes|will|would|let|know|far|believ\w*|understand|recall|remember|assum\w*|later|soon|ask\w*|check with|catch\w*|caught|spott\w+|notic\w+|flagg\w+|point\w+ (?:it |this |that )?out)\b/iu;

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

/** A sentence that tells something: it has somebody or something first, and a verb of state behind it. */
const tells =
  /^(?:yes, |well, |indeed,? |because |since |as )?(?:it|that|this|they|he|she|there|the|our|my|their|his|her|an?|\p{Lu}\p{Ll}+)\b.{0,40}?(?:['’](?:s|re|ve)|\b(?:is|are|was|were|has|have|had|comes?|came|speaks?|likes?|loves?|owns?|runs?|lives?|does))\b/u;
const tellsOfWriter =
  /^(?:well, |yes, |honestly,? |wow,? |oh,? )?(?:i|i['’](?:m|ve)|we|we['’](?:re|ve)|my|our|long|great|nice|good|lovely|happy|merry|hope|hoping|glad|sorry|apologies|thanks|thank you|greetings|enjoy|cheers|busy|crazy|sent|answers?|replies|stay|take care|love|you (?:guys|people|folks|are))\b/iu;
/** Irony, a second thought, and what goes on with the sentence before. */
const goesOn = /^(?:and|or|so|then|right|sure|whatever|as if|like|yeah)\b|\.{2,}|…/iu;

/** Whether a whole sentence beside an answer only chats. None of its words can change what is made. */
export function isChatter(sentence: string): boolean {
  return (
    isOwnAffair(sentence) ||
    (sentence.split(" ").length > 2 &&
      (tells.test(sentence) || tellsOfWriter.test(sentence)) &&
      !goesOn.test(sentence) &&
      isHarmless(sentence) &&
      turnsIn(sentence) === "nothing" &&
      !namesGoods(sentence) &&
      !isForeign(sentence) &&
      !hasSigns(sentence))
  );
}
