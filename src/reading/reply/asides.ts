/*
 * What people say beside an answer, put together from its parts. Each part is a closed list, so that no wish hides in
 * it. Patterns are over words that tokens.ts has made plain. Line breaks in them say nothing.
 */

const person = String.raw`(?:him|her|them|(?:the |my |our |your )?(?:end )?(?:owner|client|customer|homeowner|boss|architect|gc|
  contractor|designer|builder|office|colleague|family|tenant|manager|project manager|pm|foreman|principal|engineer|guy)s?)`;
const when = String.raw`(?:today|now|just now|yesterday|this (?:morning|afternoon|week)|last (?:night|week)|on monday|earlier|again|
  at last|at lunch|all (?:day|week|morning)|first|twice|back|myself|in person|by phone|on the phone|over the phone)`;
const desk = String.raw`(?:mail|e-?mail|letter|message|note|questions?|queries|query|points?|answer|request|list|reply)`;
const ofWhen = String.raw`(?: (?:of|from|dated) (?:today|yesterday|this (?:morning|week)|last (?:night|week|friday)|monday|tuesday|
  wednesday|thursday|friday)| below| above)*`;
const side = "(?:on|from|at|for) (?:our|my) (?:side|end|part)";

// "Call me if you need anything else."
const matter = String.raw`(?:any |some |other |further |more |additional |a |still )*(?:questions?|queries|doubts?|comments?|concerns?|
  issues?|problems?|information|info|details?|clarifications?|anything|something|more)
  (?: (?:else|more|further|is unclear|is not clear|comes up|at all|from (?:me|us)|on this|about this|from (?:my|our) side|is needed))*`;
const contact = String.raw`(?:(?:please|pls|kindly|just|always|also|do|simply) )*
  (?:(?:feel free|do not hesitate|do not be shy|you can always|you may|i am happy for you) (?:to )?)?
  (?:(?:call|ring|phone|text|contact|write|write to|e-?mail|mail|reach|reach out to|ask|ping|get in touch with|come back to|
  get back to) (?:me|us)|let (?:me|us) know|call|ask|holler|shout|get in touch)
  (?: (?:back|any ?time|at any time|directly|by phone|here|on (?:my|our|the) (?:cell|mobile|phone|landline|number below)))*`;
const need = String.raw`(?:(?:if|should|when|whenever|in case|in case of|with|for) (?:you |there (?:is|are|be) )?
  (?:still )?(?:have |need |want |require |run into )?${matter})`;

// "I had to check with the owner first."
const errand = String.raw`(?:(?:i|we) )?(?:just |first |only )*(?:had|needed) to (?:ask around|ask|check|find out|look (?:it|that|this) up|run|drive|
  dig|think|track down|wait for|check with|ask|call|phone|find|catch|reach|get hold of|hear from)(?: ${person})?(?: ${when})*`;
const reached = String.raw`(?:(?:it )?took (?:me|us) (?:a while|some time|a bit|so long|a few days|until now|forever|ages) to (?:reach|
  get hold of|find|track down|catch|get through to|get to) ${person}|
  (?:(?:i|we) )?(?:have )?(?:just |only |finally |at last )+(?:got hold of|reached|caught|got|tracked down|spoke (?:to|with)|
  talked (?:to|with)|heard (?:back )?from|met) ${person})(?: ${when})*`;
const wasAway = String.raw`(?:(?:i|we) (?:was|were) (?:just |still )?waiting (?:for|on|to hear (?:back )?from) ${person}|
  ${person} (?:was|were|has been|have been) (?:away|travell?ing|on (?:holiday|vacation|leave|a cruise|the road)|
  out of (?:town|the office|the country)|sick|abroad|hard to reach|busy|at sea))
  (?:,? (?:(?:he|she|they|who) (?:was|were) (?:away|travell?ing|abroad|busy|sick|on (?:holiday|vacation|leave))|
  (?:so|hence) (?:it took|this took) (?:me |us )?(?:a while|some time|so long|until now|a bit)))?(?: ${when})*`;

const machine = String.raw`(?:(?:my|our|the) (?:phone|battery|laptop|computer|printer|internet|wi-?fi|truck|van|car|server|mail|e-?mail|outlook|heating)
  (?: (?:just|has|had))? (?:died|broke|broke down|crashed|was dead|ran out|gave up|is down|was down|has been down|been down|went down|
  is dead)(?: (?:on (?:me|us|the job|the road)|since \p{L}+|${when}))*|power (?:cuts?|outages?|failures?)|blackouts?)`;
const things = String.raw`(?:things|it|business|everything) (?:is|are|has been|have been|was|were) (?:a bit |so |very |really |pretty )?
  (?:slow|busy|crazy|hectic|wild|quiet|mad)(?: (?:here|around here|over here|right now|at the moment|this week|lately))*`;
const stage = String.raw`(?:(?:just |still |now )*(?:hot|cold|snow(?:ing|y)?|rain(?:ing|y)?|freezing|windy|muddy|wet|dusty|loud|noisy)
  (?: (?:as (?:blazes|hell|ice|an oven|a dog)|up|out|down|here|there|over|on|in|at|all|the|this|a|again|to|cats and dogs|roof|ladder|
  site|attic|crawlspace|basement|windows?|knees?|morning|week|today|outside))*|back to (?:work|the grind|bed|school|it|the office|
  the salt mines)|go (?:bears|team|lions|tigers|eagles|hawks|birds|bulls))(?=\s*(?:[.,!;]|$))`;

// "In reply to your mail of today:"
const answers = "(?:answers?|replies|reply|responses?|feedback)";
const refers = String.raw`(?:(?:in|with|by way of|further) (?:reply|answer|response|reference|regards?|respect)? ?(?:to|of)|regarding|
  concerning|as to|about|re) (?:(?:your|the|yesterday's|today's) )?(?:kind |last |latest |trailing |below |two |three )?${desk}${ofWhen}\s*[:,]?|
  (?:please |kindly )?(?:find|see|note)(?: (?:below|here|hereby|herewith|under|attached))* (?:my|our|the) ${answers}(?: (?:below|inline|
  under|here|as follows|as under|to (?:your|the) ${desk}))*\s*[:,]?|(?:here|hereby|below|herewith|under)(?: (?:are|is|come|comes|you find|
  you will find))? (?:my|our|the) ${answers}(?: (?:below|to (?:your|the) ${desk}))*\s*[:,]?|(?:my|our) ${answers}(?: is| are)? (?:as (?:under|follows|below)|below|
  under each (?:point|question)|here)\s*[:,]?|(?:i|we) (?:write|am writing|are writing)(?: to)?(?: you)? (?:because of|about|regarding|to answer|
  to reply to) (?:your|the) ${desk}${ofWhen}|(?:i |we )?(?:have )?(?:duly )?noted (?:with thanks|your ${desk})`;

// "Nice to see somebody reads these."
const reads = String.raw`(?:reads?|checks?|asks?|cares?|looks?|pays? attention|checking|reading|looking|asking|double[- ]?check(?:s|ing)?)`;
const what = String.raw`(?: (?:these|this|that|it|them|things|everything|anything|so (?:carefully|closely)|closely|carefully|first|twice|about (?:it|these|this)|
  at (?:it|these|them)|before (?:you |)(?:cut|cutting|engrave|engraving|start|starting)(?: (?:anything|it|them))?|with (?:me|us)))*`;
const praise = String.raw`(?:nice|good|great|glad|happy|pleased) (?:(?:to (?:see|know)|that) )?(?:(?:somebody|someone|people|you) )(?:still |always |really |actually |is |are )*${reads}${what}|
  (?:i |we )?(?:really |do |very much |truly )*(?:appreciate|like|love|value) (?:it (?:that|when) |that |how )?(?:you|your|y'all)(?: (?:guys|folks|all))?
  (?: (?:always|still|really))? ${reads}${what}|(?:the )?care (?:that )?you take (?:with|over|in) (?:these|this|it|them)|
  you are the (?:first|second|third|fourth|fifth|tenth|umpteenth) (?:person |one |shop )?(?:to|who|that) (?:ask|asks|asked)(?: (?:me|us))?(?: about)?(?: (?:it|that|this))?
  (?: (?:today|this week|this year|so far))?`;
const asked = String.raw`(?:we|i) (?:always |often )?(?:get|am|are) asked (?:(?:that|this)|about (?:it|that|this)(?: (?:one|name|word|spelling))?)(?: (?:all the time|a lot|often|every time|constantly|by everyone))?|
  (?:everybody|everyone|people) (?:always )?asks? (?:me |us )?about (?:it|that|this)(?: (?:one|name|word|spelling))?|
  do not ask(?:(?: (?:me|us))? why)?(?=\s*(?:[.,!;]|$))|no idea why(?=\s*(?:[.,!;]|$))`;
const greet = String.raw`(?:say (?:hi|hello|thanks) to (?:the |your )?\p{L}+|give (?:my|our) (?:best|regards|love|thanks) to (?:the |your )?(?:rest of )?(?:the |your )?\p{L}+|
  tell (?:the|your) (?:crew|team|guys|girls|engravers?|shop|boss|folks|desk)(?: (?:i|we) say(?:s)?)? (?:thanks|hi|hello|thank you))
  (?: (?:in|at|on) (?:the|your) (?:shop|office|desk|team|front desk))?(?: from (?:me|us|all of us))?`;

const wonders = String.raw`(?:(?:and|yes|and yes),? )?(?:i|we) (?:asked|wondered|thought|had to ask) (?:(?:him|her|them) )?(?:twice|the same(?: thing)?|that|so|about it|too)
  (?: (?:too|as well|myself|at first|twice))*|(?:i|we) had the same (?:question|thought|doubt|reaction)(?: too| myself| at first)?|
  (?:i |we )?had to look (?:that|it|this)(?: one)? up(?: (?:myself|too|first))*|(?:i|we) will give you that|if you can believe (?:it|that)|
  hope it is (?:a bit )?(?:nicer|warmer|better|cooler|drier|quieter|sunny|as nice|good|dry|warm)(?: (?:where you are|there|over there|down there|up there|in town))*|
  have a (?:good|great|nice|lovely) (?:weekend|day|week|evening|one|holiday),? (?:when (?:it comes|you get there|you get it)|anyway|too|all)|
  hope (?:this|that|it) is (?:fine|ok|okay|all right|clear|enough)(?: (?:with|for) you)?`;

// "Request you to kindly process the order."
const go = String.raw`(?:(?:(?:we |i )?request(?: you)?(?: to)?|please|kindly|pls|you may|you can)(?: kindly| please| now| also| further|
  then)* (?:process|proceed with|execute|go ahead with|go on with|continue with|proceed on) (?:the |this |our |my )?(?:same|order|it|engraving|production)(?: further| accordingly)?|
  (?:please |kindly |pls )*do the needful|(?:please |kindly |pls )*(?:consider|treat|take) (?:the same|this|it|these) as (?:final|confirmed|approved|our (?:confirmation|approval|answer))|
  (?:we are )?awaiting (?:your )?(?:kind )?(?:order )?(?:acceptance|acknowledge?ment|confirmation)(?: of (?:the|our) order)?|
  assuring you of our best (?:services?|attention|support|cooperation)(?: (?:always|at all times))?|
  hope (?:the )?(?:above|this) (?:clarifies|helps|is clear|is in order|suffices|will help)(?: (?:it|everything|your (?:query|queries|doubts?)))?|
  (?:we|i) (?:hope|trust) (?:this|that) (?:helps|is clear|clarifies)|(?:i |we )?hope (?:i|we|this|that) could (?:be of )?help(?: you)?|
  (?:i|we) (?:am|are|remain) at your (?:disposal|service)(?: for ${matter})?|
  (?:for|in case of) (?:any |further |more )*questions (?:i|we) (?:am|are|remain) at your (?:disposal|service))`;

/** Each is harmless wherever it stands. */
export const asides: readonly string[] = [
  `(?:${need}[ ,]+${contact}|${contact}[ ,]+${need}|(?:if )?anything else,? ${contact}|any (?:further |other |more )?(?:questions|problems|issues)(?: at all)?,? ${contact}(?: (?:on|at) (?:the )?number below)?|feel free to (?:call|ring|text) (?:me|us)(?: on (?:my|our) (?:cell|mobile|phone))?)(?=\\s*(?:[.,;!]|$|and |thank))`,
  errand,
  String.raw`(?:\p{Lu}\p{Ll}+|he|she|${person}) (?:has |have )?(?:just )?asked me to (?:pick (?:this|it) up|reply|answer|respond|get back to you|take (?:this|it) over|look after (?:this|it)|step in)(?: (?:for|from) (?:him|her|them))?(?=\s*(?:[.,!;]|$))`,
  String.raw`(?:thanks|thank you)(?: very much| so much)? for (?:checking|reviewing|looking (?:at|over|through)|going (?:over|through)|your (?:check|review|control) of) (?:our|my|the|these|all the) (?:sheets?|orders?|forms?|drawings?|schedules?)(?: (?:so )?(?:carefully|closely|quickly))?(?=\s*(?:[.,!;]|$))`,
  reached,
  wasAway,
  machine,
  things,
  stage,
  refers,
  praise,
  asked,
  greet,
  wonders,
  "(?:we|i) (?:once again|once more|again) thank you(?: for (?:your|the) (?:kind |prompt |quick )*(?:reply|answer|help|support|mail|message|question|care))?",
  "(?:good|fair|nice|great) (?:question|point|one) though",
  String.raw`(?:(?:i am|i|we are|we) )?(?:just|only)(?: now)? (?:now )?(?:seeing|saw|got to|getting to|catching up on|noticed|reading) (?:this|your (?:mail|e-?mail|message|note|letter))(?: (?:now|today))?(?=\s*(?:[.,!;]|$))`,
  String.raw`(?:(?:i|we) )?(?:was|been) (?:out|off|away|on site|on the road|in meetings|swamped|slammed|tied up|busy)(?: (?:sick|of (?:the )?office|all (?:day|week)|yesterday|today|this (?:morning|week)|last week|on (?:a|another) job))*(?=\s*(?:[.,!;]|$))`,
  String.raw`see (?:you|ya|y'all)(?: (?:guys|all|there|then|folks))*(?: (?:at|on|in|over at) (?:the )?(?:counter|show|meeting|branch|course|training|(?:mon|tues|wednes|thurs|fri|satur|sun)day)| (?:soon|tomorrow|next week|(?:mon|tues|wednes|thurs|fri|satur|sun)day)(?: morning| afternoon)?)*(?=\s*(?:[.,!;]|$))`,
  `${go}(?=\\s*(?:[.,;!]|$|and |thank))`,
  `no (?:hurry|rush|problem|objections?|worries) ${side}`,
];
