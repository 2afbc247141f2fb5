import { hasSigns, tokensOf } from "./word-bag.ts";

/** What people are thanked for. */
const thankful = new Set(
  tokensOf(
    `it this these that them going through reading looking seeing asking checking check checks double control controlling question
    questions query queries note letter mail email e message answer answers reply response carefully careful closely
    thoroughly thorough time attention work job eye eyes patience trouble effort care caring kindness help helping
    diligence being keeping coming informing letting know telling us me your the our my so very such in on
    of and for to about with a an all great good kind quick fast prompt nice detailed friendly sharp close everything
    everyone morning today yesterday afternoon again much always understanding concern
    support service cooperation order review reviewing watching looking taking really lovely speedy information
    update heads up looking at turnaround`,
  ),
);

/** "Thanks for going through it so carefully." */
export function isThanks(sentence: string): boolean {
  const [, what] =
    /^(?:and )?(?:many thanks|thanks(?: a lot| so much| again| very much)?|thank you(?: so much| very much| again)?) for (.+)$/iu.exec(
      sentence,
    ) ?? [];
  return (
    what !== undefined &&
    !/[?\d]/u.test(what) &&
    tokensOf(
      what.replace(
        /\b(?:on|with|about) this one\b|\bbefore (?:engraving|cutting|you (?:engrave|cut|start))\b|\bfirst$/giu,
        "",
      ),
    ).every((token) => thankful.has(token))
  );
}

/** Signs that say no more than a smile. A tick beside a number may be an answer. */
export const friendly =
  "(?:🙂|😊|😀|😃|😄|😁|😎|😇|🤗|🥳|👌|🙏|🤝|👋|🎄|🎅|☀|🌞|🌈|🌸|🌷|🌻|🌹|💐|🍀|🍁|🍂|❄|⛄|🌊|🌴|⛵|🪜|🔧|🛠|💡|⚡|🎉|🎊|🎈|🎆|🎁|🥂|🍻|☕|🏖|⛷|⚽|❤|💙|💚|💛|💪|✨|⭐|🐣|🦃|🎃|🕎|🌙|🚗|🚚|👷|🏗)\\uFE0F?";
const smiles = new RegExp(`${friendly}|👍`, "gu");

/** Runs of words that say nothing together, though some of their words might elsewhere. */
const idioms = new RegExp(
  `\\b(?:${[
    "(?:with )?(?:no|bad|poor|hardly any|without) (?:signal|reception|service|internet|wi-?fi|coverage|connection|power|electricity|heating|air ?con|network)",
    "(?:a )?(?:very )?(?:happy|good|blessed|prosperous|merry|healthy|peaceful) (?:and (?:happy|healthy|prosperous|peaceful) )?new year|new year'?s (?:eve|day|break|holidays?)",
    "(?:on|from|off) (?:my |our |annual |sick |parental |maternity |paternity )?leave",
    "in (?:a|such a|quite a|a bit of a|big) (?:hurry|rush)",
    "out of (?:the )?office|away from (?:my|the) (?:desk|office|computer)|not (?:in the office|at my desk|feeling well)",
    "(?:it )?took (?:me|us) (?:so|too|a while|a bit|quite|very|a little|some)? ?(?:long|time|while)?",
    "(?:i |we )?(?:(?:have )?(?:only |just )?|almost |nearly )(?:missed|overlooked|seen|saw|found) (?:this|it|your (?:e-?mail|mail|message|letter|note|question|questions))(?: (?:only )?(?:now|today|just now|this morning|yesterday))?",
    "as (?:always|ever|usual)|(?:long|short) (?:day|days|week|weeks|night|drive|trip|month|weekend|story)|so long|so short",
    "better late than never|better safe than sorry|good things take time|long time no see",
    "(?:sorry|apologies|apologise|excuse|forgive|pardon)[ ,]*(?:me )?(?:for |about )?(?:the |my |our |all |any |this )?(?:bad |poor |broken |terrible )?(?:delay|wait|(?:late|slow|short|quick|brief|belated|tardy) (?:reply|answer|response|note|mail|message)|lateness|silence|brevity|shortness|english|noise|handwriting|trouble|inconvenience|confusion)(?: (?:in|of) (?:replying|answering|my reply|my answer|the reply))?",
    "(?:excuse|forgive|pardon)[ ,]*(?:me )?(?:for )?(?:the |my |any |all )?(?:typos|thumbs|autocorrect|fat fingers)",
    "(?:sent|written|dictated|typed) (?:by voice|with (?:gloves|thumbs|one thumb|one hand|cold fingers)|(?:from|on|in|at) (?:the |my |a )?(?:top of a )?(?:roof|truck|ladder|site|road|car|van|train|phone|mobile|tablet|bus|plane|boat|airport|scaffold|basement|kitchen))",
    "(?:please )?let (?:me|us) know if (?:you (?:need|require|want|have) |there (?:is|are) |i can help (?:with )?|we can help (?:with )?)?(?:anything|any|something)(?: else| more| further)?(?: (?:questions?|information|info|details))?(?: is needed| needed| from (?:me|us|our side))?",
    "(?:call|phone|ring|e-?mail|write|ask|contact) (?:me|us) (?:if|with|should) (?:you have |there are )?(?:any )?(?:other |further |more )?questions",
    "(?:(?:i am|we are|i|we) )?look(?:ing)? forward to (?:hearing from you|your (?:reply|answer|news|confirmation)|(?:seeing|receiving|getting) (?:it|them|these|everything|the (?:finished |new )?(?:plates|result|order|product))|it|the (?:finished |new )?(?:plates|result|product|order))",
    "(?:i |we )?hope (?:this|that|it) (?:helps|clears (?:it|this|that|things) up|answers (?:it|your questions?|everything|all)|is clear(?: now)?|makes sense)",
    "(?:i |we )?hope (?:all is|everything is|you are|you're|you are all|you all are|your week is|your day is|it is) (?:well|good|fine|great|going well|keeping well|doing well|ok)(?: (?:with you|there|over there|in the shop|at the desk))?",
    "(?:the |your )?(?:quick|fast|prompt|speedy) turn(?:around)?",
    "(?:that is|that's|that was|this is|this was) (?:all|it|everything)(?: (?:from|on) (?:me|us|my side|our side|my end|our end))?(?: for (?:now|today))?|nothing (?:else|more|further)(?: (?:from|on) (?:me|us|my side|our side|my end|our end))?(?: to (?:add|report|say))?|no (?:further|other|more) (?:questions?|comments?|remarks?|notes?)(?: (?:from|on) (?:me|us|my side|our side|my end|our end))?|(?:all|both|everything) (?:answered|done|clear)",
    "(?:i |we )?(?:understand|see|get|know) why you (?:ask|asked|check|checked|wondered|wonder)|good (?:that|of|thing) you (?:to )?(?:ask|asked|check|checked)(?: first)?|good of you to (?:ask|check)|glad you (?:asked|checked)|nice (?:that|of) you (?:to )?(?:ask|check|asked|checked)|fair (?:question|enough|point)|good questions?|no harm in asking|always better to ask|you are not the first to ask|not the first time (?:we|i) (?:am|are|get) asked",
    "(?:i |we )?hope (?:this|the|my|our|your)? ?(?:e-?mail|mail|message|letter|note|reply)? ?(?:finds|found|reaches) you (?:all )?(?:well|in good health|in good spirits)|(?:i |we )?hope you are (?:all )?(?:keeping|staying|having|enjoying)",
    "from (?:a )?(?:very )?(?:sunny|rainy|snowy|cold|warm|hot|windy|foggy|stormy|beautiful|lovely|wet|freezing|frosty|grey|cloudy) \\p{Lu}\\p{Ll}+",
    "sorry (?:for|about) (?:taking|being) (?:so |such |a bit |too )?(?:long|late|slow)(?: (?:to|in) (?:reply|answer|get back|replying|answering))?",
    "(?:i |we )?(?:have |just )*(?:received|got|read|saw|seen) your (?:kind |last |latest )?(?:e-?mail|mail|message|letter|questions?|note|answer|reply|list)(?: (?:of|from) (?:today|yesterday|this morning))?(?: with thanks)?",
    "if (?:you have |there are )?(?:any |further |more |other )*questions,? (?:please |just )?(?:call|phone|ring|e-?mail|write|ask|contact)(?: to)? (?:me|us)|(?:i think )?(?:that|this) (?:covers|answers|should cover|should answer|is|should be) (?:everything|all|it)",
    "so (?:just )?(?:a )?(?:short|quick|brief)(?: (?:answer|reply|one|note))?|(?:bye|goodbye|good bye)(?: bye)?",
    "(?:i |we )?(?:have |had |almost |totally |completely |nearly )*(?:forgot|forgotten)(?: (?:to (?:answer|reply|respond|write back)|about (?:it|this|you)|this|it))?",
    "(?:all the )?best (?:wishes )?for (?:the )?(?:coming )?(?:new year|season|holidays|festive season)",
    "the compliments? of the season|season'?s greetings|compliments of the season|all the best(?: to (?:you|all|everyone|the team|all of you))?",
    "sunny side|under the weather|on my way (?:home|out|to (?:the )?(?:site|airport|office|lunch|work))|on the way (?:home|to (?:the )?(?:site|airport|office|work))",
  ].join("|")})(?![\\p{L}\\p{N}])`,
  "giu",
);

/** Words that make a sentence of the others, and say nothing alone. */
const around = new Set(
  tokensOf(
    `i m am we re are ve s you your my our me us was were is be been being have has had the a an and in on at of for from
    by to with all just back here there so very really quite this over out up off after always it its he she some whole
    lot lots last much big two three few several again way under down through get got getting go going gone went did too little
    bit about around most many together`,
  ),
);
/** When something was or is. Alone it may be a date that is wished for. */
const times = new Set(
  tokensOf(
    `day days week weeks month months year years morning mornings afternoon evening evenings night nights weekend weekends
    monday tuesday wednesday thursday friday saturday sunday today tonight yesterday summer winter spring autumn season
    seasons hours minutes january february march april june july august september october november december time`,
  ),
);
/** Where people are, and with whom. An answer beside such words may hold only there, unless they tell who is there. */
const places = new Set(
  tokensOf(
    "site sites jobsite office desk shop workshop school hospital home station town city hotel village",
  ),
);
/** What people tell of themselves and of the weather, and what they wish and praise. */
const talk = new Set(
  tokensOf(
    `roof ladder ladders scaffold scaffolding abroad overseas bus road meeting meetings traffic jam airport plane flight
    train tram ferry phone mobile tablet voice signal reception battery charger vacation vacations holiday holidays lunch
    coffee tea cake breakfast dinner beer pizza sandwich rain raining rained rainy snow snowing snowed snowy cold hot warm
    chilly mild sun sunny sunshine wind windy weather heat heatwave storm stormy pouring freezing frost frosty ice icy fog
    foggy flood flooded thunder hail humid cloudy mud muddy sick ill flu fever
    cough dentist doctor busy crazy hectic slammed swamped closed typing keeping hand buried stacked late belated great nice good lovely
    wonderful fantastic excellent brilliant superb amazing awesome fast quick prompt swift careful thorough helpful useful
    patient attentive friendly polite professional service system team crew folks guys people colleagues appreciate
    appreciated enjoy enjoyed enjoying hope hoping happy merry blessed blessing bless peaceful joyful jolly christmas xmas
    easter thanksgiving diwali eid ramadan hanukkah chanukah passover carnival karneval carnaval fasching halloween midsummer
    epiphany advent pentecost whitsun ascension lent songkran holi tet navratri onam vesak nowruz kwanzaa solstice jubilee
    birthday anniversary independence national labour labor memorial veterans constitution saint patrick valentine nicholas
    santa seaside beach mountains skiing fishing hunting hiking camping sailing golf football match derby marathon festival
    party wedding honeymoon concert parade kind kindly support cooperation collaboration courtesy diligence effort efforts
    inconvenience trouble bother stay safe well dry healthy care love loved thanks thank thankful grateful obliged indebted
    sorry apologies apologise apologize reply response excuse forgive pardon greetings continuous continued god regards
    wishes wish wishing lol wow haha smile smiling laugh everyone everybody rest relax luck lucky cheers phew whew gosh
    goodness tired exhausted sleepy awake jetlag travel traveling travelling trip drive driving drove walking climbing
    rushing rushed juggling stuck stranded turnaround attention detail patience understanding help helped pleasure joy glad
    pleased delighted proud excited exciting fun enjoyable pleasant beautiful gorgeous cosy cozy quiet calm loud noisy
    relaxing restful families family kindest warmest best nicest unwell meetings`,
  ),
);
/** "It's what you get", "I hope so", "be careful": these speak of the order as often as of the weather. */
const ofOrder =
  /^(?:phone|mobile|voice)\b|\bhop(?:e|ing)(?: so)?\W*$|^too\b|^(?:please )?(?:be|get|go|help|drive)\b|\b(?:lots?|it)\b(?!['’]? ?(?:s|is|was) (?:been )?(?:a |an |so |very |really |just |too |still )*(?:long|busy|crazy|hectic|cold|hot|raining|snowing|pouring|freezing|late|lovely|great|nice|sunny|windy|warm|beautiful))/iu;

/** "I have your letter of this morning." */
const received =
  /^(?:i|we) (?:have|received|have received|thank you for|acknowledge|refer to|write about) your (?:letter|e-?mail|message|answer|note|reply|kind letter)(?: of (?:today|yesterday|this (?:morning|afternoon)))?(?: with thanks)?[.!]?$|^(?:i|we) (?:hereby )?(?:inform|reply|answer|respond)(?: to you| you)? as (?:below|follows)[.:]?$/iu;

/** "In the truck", "for the crew", "after the holidays": what stands before it may hold there or then alone. */
const holdsThere =
  /^\W*(?:for(?! (?:your|all your|the (?:delay|late|wait|trouble|inconvenience|confusion))\b)|in(?! (?:a|such a|quite a|a bit of a) (?:meeting|hurry|rush)|\s*haste)|at|to|of|over|under|off|through|after|before|around|down|by|from(?! (?:a |my |the )?(?:very )?(?:sunny|rainy|snowy|cold|warm|hot|ladder|roof|road|train|bus|phone|mobile|tablet)))\b|^\W*on (?!(?:the |a |my )?(?:ladder|ladders|roof|road|phone|train|bus|plane|ferry|tram|scaffold|scaffolding|vacation|holiday|mobile|tablet|way|leave|annual))/iu;

/** In words. */
const mostWords = 24;

/** Whether a sentence beside an answer consists of small talk. None of its words is of the order. */
export function isChatter(sentence: string): boolean {
  if (received.test(sentence)) return true;
  const words = sentence.replace(idioms, " thanks ");
  const tokens = tokensOf(words);
  const isAtHome = /\b(?:i|i'm|we|we're|been|was|am)\b|^(?:just )?back\b/iu.test(words);
  return (
    tokens.length > (words === sentence ? 1 : 0) &&
    tokens.length <= mostWords &&
    tokens.every(
      (token) => around.has(token) || times.has(token) || talk.has(token) || (isAtHome && places.has(token)),
    ) &&
    tokens.some((token) => talk.has(token) || places.has(token)) &&
    !/[?\d"“”:]/u.test(words) &&
    !ofOrder.test(words) &&
    (isAtHome || !holdsThere.test(sentence)) &&
    !hasSigns(words.replace(smiles, ""))
  );
}
