/*
 * How people tell that more sheets are to come than came: in English as they write it, and in the usual words of
 * French, Spanish and German. Who tells of more is asked, so a tale that only sounds so costs one question.
 */

/** Numbers of things, above one. */
export const several = String.raw`(?:two|three|four|five|six|seven|eight|nine|ten|\d{1,2})`;
const rest = String.raw`(?:rest|others?|remaining|remainder|balance|(?:second|next|other|last|final|third) (?:half|parts?|batch|set|sheets?|devices?|plates?|stations?|e-?mail|mail|letter|message|ones?)|more(?: sheets| devices| plates| stations)?)`;
const later = String.raw`(?:tonight|tomorrow|later|next week|after (?:lunch|work|dinner)|this (?:afternoon|evening|week)|in the (?:morning|afternoon|evening)|on \p{L}+day)`;
/** A clause ends. */
const end = String.raw`(?= *(?:[.,!;]|$))`;
const send = "(?:send|e-?mail|mail|bring|forward)";
/** "The fourth sheet", of which nobody has told how many there are. */
const ordinal = String.raw`(?:third|fourth|fifth|sixth)(?: (?:one|sheet|device|plate))?`;

const tellings: readonly (readonly string[])[] = [
  // "The rest will follow", "more tomorrow", "rest later".
  [
    String.raw`\b${rest}\b[^.!?]{0,40}?\b(?:will (?:follow|come|be (?:sent|along|there))|to (?:follow|come)|follows?|following|coming|comes|on (?:its|their|the) way)\b`,
    String.raw`\b(?:i|we)(?:'ll| will|'m going to|'re going to| am going to| are going to)? (?:send|e-?mail|forward)(?: you)?(?: the| some)? ${rest}\b`,
    String.raw`\b(?:the rest|(?:the )?others?|the remaining \p{L}+|more(?: of (?:them|these))?)\b(?: (?:come|coming|are coming))? (?:tomorrow|later|soon|shortly|next week|in (?:a bit|an hour)|this (?:afternoon|evening|week)|on (?:mon|tues|wednes|thurs|fri)day)\b`,
    String.raw`^rest (?:tomorrow|later|soon|shortly|tonight|to come)`,
    String.raw`\bif you (?:want|need|would like|like) (?:the )?(?:others?|rest)\b`,
    String.raw`\byou(?:['’]ll| will) (?:also|still|soon|then) (?:get|have|receive)\b`,
    String.raw`\b(?:too|also), (?:soon|later|tomorrow)${end}`,
  ],
  // "The first half", "part one", "first of two letters", "see my second mail".
  [
    String.raw`\b(?:first|1st) (?:half|part|batch|round|lot|bunch|stack|wave|bundle|instal?lment)\b`,
    String.raw`\bpart (?:one|1)\b(?! of)|\b(?:batch|lot|wave) (?:one|a|1)\b`,
    String.raw`\b(?:first|second|third) of (?:two|three|four|five|six|several) (?:e-?mails?|mails?|letters|messages|batches|sheets|parts|files)\b`,
    String.raw`\b(?:see|expect|watch for|look (?:out )?for) (?:a |an |my |the |our )?(?:second|another|next|other) (?:e-?mail|mail|letter|message)\b`,
  ],
  // "Two to go", "that leaves one", "three out of five", "three done", "the first three".
  [
    String.raw`\b(?:one|another|${several}) (?:more )?(?:(?:left|still) )?(?:to go\b|left(?: to (?:do|send))?${end}|(?:outstanding|remaining|missing)${end})`,
    String.raw`\bthat leaves (?:one|another|the|${several})\b`,
    // "Here is the missing sheet", "the missing sheet is attached": it came.
    String.raw`(?<!\b(?:here|attached|enclosed|this|that|these)(?:['’]s| is| are)? )(?<!\b(?:find|attached|enclosed|(?:send|sending|attach|attaching) you|forgot|attaching) )\bthe missing (?:ones?|${several}|sheets?|plates?|devices?|stations?)\b(?! (?:(?:is|are) )?(?:now )?(?:attached|enclosed|here)(?!\p{L}))`,
    String.raw`\b${several} out of ${several}(?:${end}| (?:are|is|attached|done|sheets))`,
    String.raw`^(?:got )?(?!\d)${several}(?: of them)? (?:are |is )?(?:so far|done|ready|finished|saved|today|now)\b`,
    String.raw`^(?:here (?:is|are) |just |only )*(?:the )?first ${several}(?:${end}| of )`,
    String.raw`\b(?:the|that) ${ordinal} (?:is|comes?|follows?|will|has to|needs?|takes?|got|was|at)\b`,
    String.raw`\b(?:forgot|left|lost) the (?:${ordinal}|(?:second|last)(?: (?:one|sheet|device|plate))?)\b`,
  ],
  // "What I have up to now", "as many as I could", "some of the sheets", "my half".
  [
    String.raw`\b(?:have|had|got|did|done|made|finished|filled|ready|typed|know)\b[^.!?]{0,20}\b(?:so far|up to now|(?:till?|until) now|to date|as of now)\b`,
    String.raw`\bas (?:many|much|far) as (?:i|we) (?:could|can|got|came|made it)\b`,
    String.raw`\b(?:here(?:['’]s| is)|this is|that(?:['’]s| is)) (?:just )?a start\b`,
    String.raw`\b(?:for starters|for a start|to start (?:you )?(?:with|off)|to get (?:you|things|it) started)${end}`,
    String.raw`^(?:(?:only|just|sending|attached (?:is|are)|here (?:is|are)) )*(?:some|most|many|a few|a couple|part|half|the bulk|nearly all|almost all|\d+ percent) of (?:the |my |our |your )?(?:sheets?|forms?|files?|them|it|these|order|house|job|devices?|plates?|stations?|rooms?)(?:${end}| (?:is|are) (?:attached|here|done|ready|enclosed))`,
    String.raw`\b(?:sending|send|here is|here are|attached is|attached are|this is) (?:you )?(?:what|whatever)(?:['’]s| is| (?:i|we)(?:['’]ve| have)?) (?:ready|got|done|finished)\b(?! for)`,
    String.raw`\b(?:these|this|it|them|those) ahead\b|\bahead of the (?:others?|rest)\b`,
    String.raw`\b(?:(?:this|it|these|that) (?:is|are) |^)(?:only |just )?(?:my|our|his|her) (?:half|part|share|bit)\b(?! hour)`,
    String.raw`\bout of time\b|\bwork in progress\b|\bwip\b|\bunfinished\b`,
    String.raw`\b(?:carry on|go on|continue|finish) (?:it |them )?${later}`,
  ],
  // "I held two back", "the last one is on my other computer", "stuck on the gate".
  [
    String.raw`\b(?:kept|keep|keeping|held|hold|holding|left) (?:the rest|the others?|one|some|${several})(?: of them)? (?:back|here|behind|out)\b`,
    String.raw`\b(?:one|some|${several}|the rest|the others?) (?:i|we|he|she|they) (?:kept|held|left|still have)\b`,
    String.raw`\b(?:one|${several}|the (?:plates?|devices?|last) (?:sheets?|ones?)|the (?:last|other)(?: ones?| ${several})?) (?:is|are|was|were|got|stayed|sits?) (?:still )?(?:eaten|lost|stuck|(?:on|at|in|with) (?:my|the|our|his|her) (?:\p{L}+ )?(?:computer|laptop|pc|desk|phone|tablet|office|machine|bag|truck|van|boss|owner|client|architect|designer|wife|husband|partner))\b`,
    String.raw`\bstuck (?:on|with) the\b|\bgives? (?:me|us) trouble\b`,
  ],
  // "Jim has the other half", "the plates come from our other office", "half went from my other account".
  [
    String.raw`\b(?:has|have|sends?|sending|mails?|brings?|will ${send}|['’]ll ${send}) (?:you )?(?:(?:the|his|her|their) (?:other|second|remaining) (?:half|part|lot|batch|sheets?|ones?)|the (?:plates?|devices?)|(?:his|hers|theirs|its|them) (?:separately|later|tomorrow|apart))\b`,
    String.raw`\b(?:plates?|devices?|others?|sheets?) (?:come|comes|are coming|will come|will be sent|are sent) (?:to you )?(?:from|through|via|separately|by|in a)\b`,
    String.raw`\b(?:half|some|one|${several}|the (?:rest|others?|other half))(?: of (?:it|them))? (?:went|was sent|were sent|i sent|we sent) (?:out )?(?:from|by|with|through)\b`,
    String.raw`\bowes? you the (?!honou?r|courtesy)`,
    String.raw`\b(?:is|are) (?:being )?(?:done|made|typed|filled (?:in|out)|prepared) by\b`,
    String.raw`\b(?:fills|is filling|does|is doing|types|is typing) (?:in |out )?the (?!(?:work|job|books|dishes|ordering|paperwork|typing)\b)\p{L}+(?: \p{L}+)?${end}`,
  ],
  // "Barn after lunch", "I will do the barn tonight", "downstairs now, upstairs next".
  [
    String.raw`^(?!(?:see|talk|speak|call|back|out|off|until|till|more|busy|away|home|thanks?|raining|snow|new|corrected|revised|updated|fixed) )(?:the )?\p{L}+(?: (?:sheets?|plates?|ones?|floor|house|wing|rooms?))? (?:${later}|to be done|to (?:do|come)|not (?:started|done|ready)(?: yet)?|(?:when|as soon as|once) .+)[.!]*$`,
    String.raw`\b(?:i|we)(?:['’]ll| will| am going to| are going to)? (?:do|finish|make|start|type|fill in|fill out) (?:the|our|my) (?:\p{L}+ ){1,2}?${later}\b`,
    String.raw`\bnow,? (?:and )?(?:\p{L}+ ){1,3}(?:next|later|then|after|tomorrow)${end}`,
  ],
  // "Le reste suit", "el resto sigue", "der Rest folgt".
  [
    String.raw`\ble reste (?:suit|suivra|viendra|arrive)|\bla suite (?:suit|suivra|viendra)`,
    String.raw`\bel resto (?:sigue|seguirá|irá|va|viene)`,
    String.raw`\bder rest (?:folgt|kommt)|\bweitere (?:folgen|kommen)`,
  ],
];

const follows = new RegExp(tellings.flat().join("|"), "iu");
/** Nothing is to come. */
export const saysNone =
  /\b(?:no|nothing|none|not|isn't|aren't|won't|without|keine?|pas|ningun\p{L}*|nada)\b/iu;
/** "Not ready" and "not started" are to come; "nothing follows" is all. */
const notYet = /\bnot (?:started|done|ready)\b/iu;

/** Whether a sentence tells that more sheets are to come. */
export function tellsOfMore(sentence: string): boolean {
  return follows.test(sentence) && !saysNone.test(sentence.replace(notYet, ""));
}
