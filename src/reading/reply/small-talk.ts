import { speaksOfMaking, speaksOfTrade, turnsIn } from "./cues.ts";
import { speaksAgainst } from "./doubt.ts";
import { hasSigns, tokensOf } from "./word-bag.ts";

/** In characters. */
const longest = 120;
/** Words by which small talk beside an answer may be about the answer. */
const ofAnswer =
  /[?\d"“”:]|,$|\b(?:if|when|once|unless|until|other|another|different|previous|earlier|mind|think\w*|thought|guess\w*|hope|suppos\w*|wonder\w*|mix(?:ed)?|meant|confus\w*|boss|said|say|says|saying|tell|told|better|worse|answer\w*|repl\w+|wrote|write|test\w*|try\w*|jok\w*|kidding|pretend\w*|practi[cs]\w*|yes|will|would|let|know|far|believ\w*|understand|recall|remember|assum\w*|later|soon|ask\w*|check with|catch\w*|caught|spott\w+|notic\w+|flagg\w+|point\w+ (?:it |this |that )?out)\b/iu;

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
  /\b(?:(?:on|at|up) (?:the |my |a )?(?:leave|site|road|ladder|roof|phone|job ?site)|all (?:day|week|morning|afternoon)|long (?:day|week|night)|missed (?:this|it|your \p{L}+)|vacation|(?:public |bank )?holidays?|out of (?:the )?office|back (?:from|in|at|on)|got back|travell?ing|driving|busy|swamped|slammed|in (?:a )?meetings?|traffic|late|delay|signal)\b/iu;
const mostWords = 12;

/** Signs that say no more than a smile. A tick beside a number may be an answer. */
export const friendly = "(?:🙂|😊|😀|😃|😄|😅|😁|😎|👌|🙏|🎄|☀|🌞|🌊|🌴|⛵|🪜|🔧|💡|⚡|🎉|❤)\\uFE0F?";
const smiles = new RegExp(`${friendly}|👍`, "gu");

/** "Sorry for the delay, was on site all day with no signal.": it says nothing of an answer that follows. */
export function isOwnAffair(sentence: string): boolean {
  const words = sentence
    .replace(/^(?:(?:my |our |many )?apologies|sorry|excuse|pardon|forgive (?:me|us))\b/iu, "")
    .replace(
      /\b(?:(?:for|about) )?(?:the|my|our) (?:delay|(?:late|slow) (?:reply|answer|response))(?: please)?\b|\b(?:with )?no (?:signal|reception|service|internet|wi-?fi|coverage)\b/giu,
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

/** Words that make a sentence of the others, and say nothing alone. */
const around = new Set(
  tokensOf(
    `i m am we re are ve you your my our me us was were is be been being have has had the a an and in on at of for from
    to with all just back here there so very really quite this over out up off after as always s it they some
    more whole lot lots much big one another other again way under down through get got getting go going went`,
  ),
);
/** When something was or is. Alone it may be a date that is wished for. */
const times = new Set(
  tokensOf(
    `day days week weeks month year years morning afternoon evening night weekend monday tuesday wednesday thursday
    friday saturday sunday today tonight summer winter spring autumn season`,
  ),
);
/** What people tell of themselves and of the weather, and what they wish and praise. */
const talk = new Set(
  tokensOf(
    `roof ladder scaffold scaffolding site jobsite truck van car road office desk meeting meetings traffic airport plane
    flight train phone mobile tablet voice signal reception battery vacation holiday holidays lunch coffee breakfast
    dinner rain raining rainy snow snowing cold hot warm sun sunny wind windy weather heat storm pouring freezing kids
    kid wife husband dog cat baby school sick flu home busy crazy hectic slammed swamped buried late long short great
    nice good lovely wonderful fantastic amazing awesome fast quick careful thorough helpful useful patient friendly
    service system team crew folks guys people appreciate appreciated enjoy hope hoping happy merry christmas xmas easter
    thanksgiving seaside beach mountains always kind kindly support cooperation inconvenience trouble stay safe well care love thanks thank thankful sorry apologies reply response excuse forgive greetings continuous continued obliged blessed bless god
    regards lol wow haha smile sunshine everyone everybody rest`,
  ),
);
/** "It's what you get", "I hope so": these speak of the order as often as of the weather. */
const ofOrder =
  /^(?:phone|mobile|voice)\b|\bhop(?:e|ing)(?: so)?\W*$|\b(?:it|one|another|other|they|more|lots?)\b(?!['’]s (?:been )?(?:a |an |so |very |really )?(?:long|busy|crazy|hectic|cold|hot|raining|snowing|pouring|freezing|late|lovely|great|nice|sunny|windy|warm))/iu;
const excused =
  /\b(?:excuse|forgive|pardon|sorry for) (?:the |my |any |all )?(?:typos?|spelling|brevity|shortness|thumbs|autocorrect)\b|\b(?:sent|written|dictated|typed) (?:by voice|with (?:gloves|thumbs|one thumb)|from (?:the |my )?(?:roof|truck|ladder|site|road|car|van))\b/giu;

/** "I have your letter of this morning." */
const received =
  /^(?:i|we) (?:have|received|have received|thank you for|acknowledge|refer to|write about) your (?:letter|e-?mail|message|answer|note|reply|kind letter)(?: of (?:today|yesterday|this (?:morning|afternoon)))?(?: with thanks)?[.!]?$|^(?:i|we) (?:hereby )?(?:inform|reply|answer|respond)(?: to you| you)? as (?:below|follows)[.:]?$/iu;

/** Whether a sentence beside an answer consists of small talk. None of its words is of the order. */
export function isChatter(sentence: string): boolean {
  if (received.test(sentence)) return true;
  const words = sentence.replace(excused, "excuse me");
  const tokens = tokensOf(words);
  return (
    isOwnAffair(sentence) ||
    (tokens.length > 1 &&
      tokens.length <= 2 * mostWords &&
      tokens.every((token) => around.has(token) || times.has(token) || talk.has(token)) &&
      tokens.some((token) => talk.has(token)) &&
      !/[?\d"“”]/u.test(words) &&
      !ofOrder.test(words) &&
      !hasSigns(words.replace(smiles, "")))
  );
}
