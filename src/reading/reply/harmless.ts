import { memoized } from "../../trade/memoized.ts";
import { asides } from "./asides.ts";
import { understood } from "./tallies.ts";

/** Signs that say no more than a smile. A tick beside a number may be an answer. */
export const friendly =
  "(?:🙂|😊|😀|😃|😄|😁|😎|😇|🤗|🥳|👌|🙏|🤝|👋|🎄|🎅|☀|🌞|🌈|🌸|🌷|🌻|🌹|💐|🍀|🍁|🍂|❄|⛄|🌊|🌴|⛵|🪜|🔧|🛠|💡|⚡|🎉|🎊|🎈|🎆|🎁|🥂|🍻|☕|🏖|⛷|⚽|❤|💙|💚|💛|💪|✨|⭐|🐣|🦃|🎃|🕎|🌙|🚗|🚚|👷|🏗)\\uFE0F?";
const smiles = new RegExp(`${friendly}|👍`, "gu");

const runs = [
  String.raw`
    (?:i |we )?(?:did not|didn'?t|could not|couldn'?t|had not|hadn'?t|have not|haven'?t) (?:get|got|see|
    seen|answer|answered|reply|replied|respond|responded|write|written|had a chance|
    (?:check|checked|look|looked)(?= (?:at |in )?(?:my|your)))(?: back| around)?(?: to| at)?(?: (?:this|it|you|my (?:e-?mail|mail|messages|inbox)|
    your (?:e-?mail|mail|message|letter|note|questions?)))?(?: (?:sooner|earlier|till now|until now|
    before now|right away|yesterday|until today|in a while|all (?:day|week)))?`,
  String.raw`
    off (?:to|home|for) (?:the |my |a |our )?(?:\p{L}+ )?(?:lake|beach|cabin|coast|mountains|airport|lunch|
    bed|golf|weekend|church|holidays?|vacation|dentist|doctor|hospital|school|races|cottage|city|country|
    day|week|next job|game|match|wedding)|(?:i'?ll|i will|let me) keep (?:this|it) (?:short|brief|quick)|
    my (?:better|other) half|what can (?:you|i|one|we) (?:do|say)|over and out|(?:says? |
    said )?(?:everybody|everyone|people|they all|folks) (?:always )?asks?(?: (?:about (?:it|that)|that))?|
    (?:the |a )?(?:second|extra|fresh|other) (?:set|pair) of eyes|(?:eid|ramadan) (?:mubarak|kareem)|
    to you and (?:your (?:team|family|colleagues|people)|yours|all (?:your|the) \p{L}+)|to all of you|
    thanking you(?: in advance)?|onwards? and upwards?`,
  String.raw`
    (?:i|we) (?:have|received|have received|thank you for|acknowledge|refer to|write about) your (?:letter|
    e-?mail|message|answer|note|reply|kind letter)(?: of (?:today|yesterday|this (?:morning|
    afternoon)))?(?: with thanks)?|(?:i|we) (?:hereby )?(?:inform|reply|answer|
    respond)(?: to you| you)? as (?:below|follows)`,
  String.raw`
    (?:many thanks|thanks|thank you)(?: (?:so|very) much| again)? for (?:your|the|all your) (?:patience|
    help|care|letter|e-?mail|mail|note|message|check|work) (?:on|with) this(?: one)?|(?:thanks|
    thank you) for (?:going|looking|reading|checking) (?:through|over|at|into) (?:it|this|them|everything|
    (?:our|my|the|all (?:of )?(?:our|the|my)) (?:letter|e-?mail|list|order|sheets?|forms?|
    spellings?))(?: (?:so )?(?:carefully|closely|thoroughly|attentively))?(?: for (?:us|me))?|(?:thanks|
    thank you) for (?:looking|checking|reading|asking) (?:so )?(?:carefully|closely|thoroughly|
    attentively)(?: (?:at|into|through|about) (?:all of )?(?:it|this|them|everything))?`,
  // What is new.
  String.raw`
    (?:all|most of) (?:the )?(?:day|week|morning|afternoon|evening|night|month|weekend|year|summer|
    winter)(?: long)?|(?:every|each|any|this|last|next|the other) (?:single )?(?:day|week|morning|afternoon|
    evening|night|month|weekend|year|summer|winter|season|time of year)|(?:the )?end of the (?:day|week|
    month)|(?:a |one |two |three |four |five |some |a couple of |a few |several |many |so many |
    \d{1,2} )(?:days|weeks|months|years|hours|minutes|meetings|calls|e-?mails|kids|dogs|cats|coffees|
    cups of (?:tea|coffee))(?: ago| now| straight| in a row| late)?|a few (?:days|hours) late`,
  String.raw`
    one of those (?:days|weeks|mornings|mondays|years)|(?:many thanks|thanks|thank you) (?:a million|
    a bunch|a lot|a ton|so much|very much|ever so much|once again|again|both|as always|as ever|heaps|loads|
    kindly)(?: for (?:your|the|this|all the|all your) (?:kind |careful |quick |thorough |prompt |
    good )*(?:letter|mail|e-?mail|note|message|question|questions|list|answer|reply|check|checks|checking|
    help|patience|work|care|eye|eyes|attention|time|trouble|diligence|thoroughness|follow-?up|reminder|
    heads-?up|processing|service|support|cooperation))?|(?:many )?thank(?:s| you) (?:all )?(?:so much |
    very much |again )?for (?:your|the|this|such an?|all the|all your|being|such) (?:(?:so|very|kind|
    careful|quick|thorough|prompt|good|clear|friendly|detailed|patient|attentive|great|sharp|
    close) ?(?:and )?)*(?:letter|mail|e-?mail|note|message|questions?|list|answer|reply|checks?|checking|
    help|patience|work|care|eyes?|attention|time|trouble|diligence|thoroughness|follow-?up|reminder|
    heads-?up|processing|service|support|
    cooperation)?(?: in advance| today| this morning| yesterday| on this| with this)?|(?:thanks|
    thank you) in advance for (?:the|your) processing|(?:thanks|thank you) for (?:asking|checking|
    double[- ]checking|looking|looking out|writing|bearing with (?:me|us)|your note|the (?:quick|
    fast) (?:reply|answer|response|turnaround)|keeping (?:an eye|us on our toes)|taking (?:such )?(?:care|
    the time|the trouble)|waiting|being (?:so )?(?:thorough|careful|patient|kind|
    attentive))(?: (?:so (?:carefully|closely)|first|us|me|in with (?:me|us)|up|this|it|on this))?`,
  String.raw`
    (?:i am |we are |i'm |only |just |am |are )*only (?:just )?(?:getting|got|seeing|saw|seen|reading|read|
    now|back|answering|looking)(?: (?:to|at|around to|back to))?(?: (?:this|it|your (?:letter|mail|e-?mail|
    note|message|questions?)|you|my (?:mail|e-?mail|inbox|messages)))?(?: (?:now|today|just now|
    this morning|tonight))?`,
  String.raw`
    (?:this |it |my |the )(?:answer|reply|mail|note|response) (?:is |was |comes )?(?:so |a bit |a little |
    very |rather )?late|sorry (?:this|it) (?:is|was|took|has taken) (?:me |us )?(?:so |a bit |a little |
    this |too )?(?:late|long|slow)|(?:for )?(?:my |the )?(?:slow|late) (?:reply|answer|response)|(?:it|
    this) (?:has )?took (?:me|us) (?:this|so|too|a bit) (?:long|while)(?: to (?:reply|answer|respond|
    write back|get back))?|sorry (?:to|for) (?:keep(?:ing)?|kept) you waiting|
    we were (?:just )?waiting (?:for|on) (?:the |our |my )?\p{L}+(?: 's)?(?: (?!wall|room|sheet|plate|new|
    go|ok|yes)\p{L}+){0,2}(?=[.,;!]|$)`,
  String.raw`
    (?:i|we) (?:do not|don'?t) (?:judge|ask|make the (?:rules|names)|name them|mind|get out much|
    know how you do it)|never (?:looks?|checks?|answers?|reads?|picks? up|replies|stops?|sleeps?|
    ends?)(?: (?:at )?(?:his|her|their|my|our|the) (?:messages|mail|e-?mails|phone|texts|inbox))?|
    never (?:a dull moment|ends|boring)|can'?t (?:complain|thank you enough|believe it)|cannot (?:complain|
    thank you enough)|no (?:rush|worries|problem|kidding|joke|doubt|fun|hurry|pressure|harm done|stress|
    biggie|sweat|trouble at all|rest for the wicked)|(?:is |was |am |are )?not (?:much|a lot of) (?:sleep|
    fun)|you (?:would|wouldn't|would not) believe (?:it|the (?:weather|week|day|traffic|heat|rain|snow|
    mud))|(?:don'?t|do not) work too hard|hang in there|keep up the (?:good|great) work|mustn'?t grumble`,
  String.raw`
    (?:you|y'?all|you guys|you folks|you people) (?:all )?(?:do |did |are |were |run |have |keep )*(?:the |
    a |such |so |very |really |truly )*(?:an? )?(?:great|good|careful|thorough|best|kind|sharp|quick|fast|
    star|stars|gems?|lifesavers?|angels?|treasure|wonderful|fantastic|patient|attentive|
    on the ball)(?: (?:job|work|service|people|bunch|team|crew|lot|shop))?|(?:how|that is|that's|so|very|
    really|most|quite)? ?(?:very |so |most |really )?(?:attentive|kind|thoughtful|thorough|careful|good|
    nice|sweet|considerate) of (?:you|y'?all)(?: (?:all|to (?:ask|check|write|double-?check)))?|
    (?:what )?a (?:very )?(?:thorough|careful|good|great|nice|sharp|friendly|lovely) (?:desk|team|service|
    system|letter|note|list|crew|shop|bunch)|such (?:a )?(?:careful|thorough|kind|attentive|good|nice|clear|
    friendly|patient|helpful) (?:letter|reading|check|questions?|note|mail|message|work|service|desk|people|
    folks|eyes?)|(?:appreciate|appreciated) (?:y'?all|you|your|the|you all|you guys)(?: (?:checking|asking|
    double-?checking|looking out|help|patience|care|looking|diligence|check|question|questions|thoroughness|
    work|attention to detail|follow-?up))?`,
  String.raw`
    (?:love|loved) (?:the (?:weather|summer|snow|system|service|job|work)|your (?:work|service|system|
    thoroughness)|you (?:guys|all|folks)|working with (?:you|y'?all)(?: (?:all|guys|folks))?|
    doing business with you)|i tell you|let me tell you|what can i say|you know (?:how (?:it|that) (?:is|
    goes)|the drill)|(?:like|as) (?:i|we) say|as they say|that'?s life|such is life|c'est la vie|go figure|
    long story|my goodness|good lord|heaven knows|god knows|bear with (?:me|us)|(?:it )?made (?:my|our) day|
    makes? (?:me|us) (?:smile|laugh|happy)|(?:that is|that's|it is|it's|all)? ?(?:grand|swell|dandy|cool|
    great|lovely)(?= *(?:[.,;!]|$))`,
  String.raw`
    (?:i |we )?(?:have |had )?(?:answered|replied|written|put|placed|typed|marked|given)? ?(?:(?:my|our|the|
    all) )?(?:answers?|replies|answered|responses?)(?: are| stand| is)? (?:below|inline|in line|in caps|
    in red|in blue|in bold|in capitals|between (?:your|the) lines|beneath|underneath|
    under each(?: question| point)?|in your text|after each(?: question)?|above)(?: (?:in (?:caps|red|blue|
    bold|capitals)|each (?:one|question)))*|(?:please )?see (?:my |our )?(?:answers?|replies|comments?|
    responses?)? ?(?:below|inline|above|in line|between (?:your|the) lines|under each question)`,
  String.raw`
    look(?:ing)? forward to (?:seeing|having|getting) (?:it|them|these|those|everything) (?:up|
    on the walls?|on site|installed|in place|soon)(?: on the walls?)?|can'?t wait(?: to see (?:it|them|
    these)(?: (?:up|on the walls?|installed))?)?|(?:i am |i'm |we are |we're )?(?:so |really |
    very )?excited to see (?:it|them)(?: (?:up|on the walls?|installed))?`,
  String.raw`
    (?:these|those) (?:homeowners|people|folks|kids|guys|days|parts|contractors|architects|clients|
    customers)|says? (?:hello|hi)(?: to (?:you|everyone|all))?|how (?:careful|thorough|kind|quick|attentive|
    nice|patient)(?: (?:you|y'?all|this|that) (?:(?:all|folks|guys|people) )?(?:are|is|was))?|big (?:storm|
    day|week|snow|freeze|game|match)|(?:keep|stay) (?:warm|cool|dry|safe|well)(?: (?:over|out|down|
    up))?(?: there)?|have (?:yourselves |yourself )?(?:a|an) (?:(?:very|really|most|lovely|good|great|nice|
    wonderful|blessed|pleasant|fine|super|beautiful|happy|safe|quiet|restful|merry|fantastic|peaceful|grand|
    cracking) )*(?:day|one|weekend|week|evening|afternoon|morning|night|summer|winter|holiday|easter|
    christmas|new year)(?: ahead)?(?:,? (?:all of you|all|everyone|folks|y'?all))?|(?:so |very |really |
    terribly |awfully )*sorry(?: (?:about|for) (?:that|this|the (?:delay|wait|trouble|bother|confusion|
    hassle|silence)))?|apologi[sz]e[sd]?|apologies|(?:forgive|excuse|pardon) (?:me|us|
    my (?:\p{L}+ )?(?:slowness|delay|tardiness|silence|typing|english|spelling|thumbs|brevity))`,
  String.raw`
    minus (?:ten|fifteen|twenty|thirty|forty|\d{1,2})|(?:\d{1,3}|ninety|eighty|hundred|forty|
    thirty) (?:degrees|below|above|in the shade)|half (?:asleep|frozen|awake|the (?:town|parish|county|crew|
    office|village|country|island|team))|(?:out of|without|lost|no) (?:the )?power|(?:power|signal|internet|
    heating) (?:is|was|went|has been) (?:out|off|down|gone)|(?:happy|merry|good|lovely|great) (?:monday|
    tuesday|wednesday|thursday|friday|saturday|sunday)|under (?:the )?water|last (?:night|week|month|
    weekend|year|monday|tuesday|wednesday|thursday|friday|winter|summer)|(?:the )?rest of (?:the|your|
    my) (?:day|week|year|weekend|evening|afternoon)|(?:in|into) the (?:middle|thick) of (?:a |an |
    the )?(?:move|harvest|storm|season|exams?|calving|lambing)`,
  String.raw`
    hope (?:you|your|y'?all|everyone|all of you)[^.!?,;:\d]{0,60}?(?:well|weekend|day|week|good|great|warm|
    dry|cool|safe|healthy|summer|holidays?|year|evening|afternoon|morning|easter|christmas|
    thanksgiving)(?: (?:there|over there|too|as well|out there|down there|up there))?`,
  String.raw`
    (?:with )?(?:best|kind|warm|warmest|kindest|many|friendly|sunny|cordial) (?:regards|wishes|greetings|
    thanks)(?: from (?:a |the )?(?:\p{L}+ ){0,2}\p{L}+)?|(?:greetings|hello|hi|good (?:morning|afternoon|
    evening|day)) (?:to you(?: all)? |everyone |all |team )?from (?:a |the )?(?:\p{L}+ ){0,3}\p{L}+`,
  String.raw`
    (?:with )?(?:no|bad|poor|hardly any|without) (?:signal|reception|service|internet|wi-?fi|coverage|
    connection|power|electricity|heating|air ?con|network)`,
  String.raw`
    (?:a )?(?:very )?(?:happy|good|blessed|prosperous|merry|healthy|peaceful) (?:and (?:happy|healthy|
    prosperous|peaceful) )?new year|new year'?s (?:eve|day|break|holidays?)`,
  String.raw`
    (?:on|from|off) (?:my |our |annual |sick |parental |maternity |paternity )?leave`,
  String.raw`
    in (?:a|such a|quite a|a bit of a|big) (?:hurry|rush)`,
  String.raw`
    out of (?:the )?office|away from (?:my|the) (?:desk|office|computer)|not (?:in the office|at my desk|
    feeling well)`,
  String.raw`
    (?:it )?took (?:me|us) (?:so|too|a while|a bit|quite|very|a little|some)? ?(?:long|time|while)?`,
  String.raw`
    (?:i |we )?(?:(?:have )?(?:only |just )?|almost |nearly )(?:missed|overlooked|seen|saw|found) (?:this|
    it|your (?:e-?mail|mail|message|letter|note|question|questions))(?: (?:only )?(?:now|today|just now|
    this morning|yesterday))?`,
  String.raw`
    as (?:always|ever|usual)|(?:long|short) (?:day|days|week|weeks|night|drive|trip|month|weekend|story)|
    so long|so short`,
  String.raw`
    better late than never|better safe than sorry|good things take time|long time no see`,
  String.raw`
    (?:sorry|apologies|apologise|excuse|forgive|pardon)[ ,]*(?:me )?(?:for |about )?(?:the |my |our |all |
    any |this )?(?:bad |poor |broken |terrible )?(?:delay|wait|(?:late|slow|short|quick|brief|belated|
    tardy) (?:reply|answer|response|note|mail|message)|lateness|silence|brevity|shortness|english|noise|
    handwriting|trouble|inconvenience|confusion)(?: (?:in|of) (?:replying|answering|my reply|my answer|
    the reply))?`,
  String.raw`
    (?:excuse|forgive|pardon)[ ,]*(?:me )?(?:for )?(?:the |my |any |all )?(?:typos|thumbs|autocorrect|
    fat fingers)`,
  String.raw`
    (?:sent|written|dictated|typed) (?:by voice|with (?:gloves|thumbs|one thumb|one hand|cold fingers)|
    (?:from|on|in|at) (?:the |my |a )?(?:top of a )?(?:roof|truck|ladder|site|road|car|van|train|phone|
    mobile|tablet|bus|plane|boat|airport|scaffold|basement|kitchen))`,
  String.raw`
    (?:please )?let (?:me|us) know if (?:you (?:need|require|want|have) |there (?:is|are) |
    i can help (?:with )?|we can help (?:with )?)?(?:anything|any|
    something)(?: else| more| further)?(?: (?:questions?|information|info|
    details))?(?: is needed| needed| from (?:me|us|our side))?`,
  String.raw`
    (?:call|phone|ring|e-?mail|write|ask|contact) (?:me|us) (?:if|with|should) (?:you have |
    there are )?(?:any )?(?:other |further |more )?questions`,
  String.raw`
    (?:(?:i am|we are|i|we) )?look(?:ing)? forward to (?:hearing from you|your (?:reply|answer|news|
    confirmation)|(?:seeing|receiving|getting) (?:it|them|these|everything|the (?:finished |new )?(?:plates|
    result|order|product))|it|the (?:finished |new )?(?:plates|result|product|order))`,
  String.raw`
    (?:i |we )?hope (?:this|that|it) (?:helps|clears (?:it|this|that|things) up|answers (?:it|
    your questions?|everything|all)|is clear(?: now)?|makes sense)`,
  String.raw`
    (?:i |we )?hope (?:all is|everything is|you are|you're|you are all|you all are|your week is|your day is|
    it is) (?:well|good|fine|great|going well|keeping well|doing well|ok)(?: (?:with you|there|over there|
    in the shop|at the desk))?`,
  String.raw`
    (?:the |your )?(?:quick|fast|prompt|speedy) turn(?:around)?`,
  String.raw`
    (?:that is|that's|that was|this is|this was) (?:all|it|everything)(?: (?:from|on) (?:me|us|my side|
    our side|my end|our end))?(?: for (?:now|today))?|nothing (?:else|more|further)(?: (?:from|on) (?:me|us|
    my side|our side|my end|our end))?(?: to (?:add|report|say))?|no (?:further|other|more) (?:questions?|
    comments?|remarks?|notes?)(?: (?:from|on) (?:me|us|my side|our side|my end|our end))?|(?:all|both|
    everything) (?:answered|done|clear)`,
  String.raw`
    (?:i |we )?(?:understand|see|get|know) why you (?:ask|asked|check|checked|wondered|wonder)|good (?:that|
    of|thing) you (?:to )?(?:ask|asked|check|checked)(?: first)?|good of you to (?:ask|check)|
    glad you (?:asked|checked)|nice (?:that|of) you (?:to )?(?:ask|check|asked|checked)|fair (?:question|
    enough|point)|good questions?|no harm in asking|always better to ask|you are not the first to ask|
    not the first time (?:we|i) (?:am|are|get) asked`,
  String.raw`
    (?:i |we )?hope (?:this|the|my|our|your)? ?(?:e-?mail|mail|message|letter|note|reply)? ?(?:finds|found|
    reaches) you (?:all )?(?:well|in good health|in good spirits)|(?:i |
    we )?hope you are (?:all )?(?:keeping|staying|having|enjoying)`,
  String.raw`
    from (?:a )?(?:very )?(?:sunny|rainy|snowy|cold|warm|hot|windy|foggy|stormy|beautiful|lovely|wet|
    freezing|frosty|grey|cloudy) \p{Lu}\p{Ll}+`,
  String.raw`
    sorry (?:for|about) (?:taking|being) (?:so |such |a bit |too )?(?:long|late|slow)(?: (?:to|in) (?:reply|
    answer|get back|replying|answering))?`,
  String.raw`
    (?:i |we )?(?:have |just )*(?:received|got|read|saw|seen) your (?:kind |last |latest )?(?:e-?mail|mail|
    message|letter|questions?|note|answer|reply|list)(?: (?:of|from) (?:today|yesterday|
    this morning))?(?: with thanks)?`,
  String.raw`
    if (?:you have |there are )?(?:any |further |more |other )*questions,? (?:please |just )?(?:call|phone|
    ring|e-?mail|write|ask|contact)(?: to)? (?:me|us)|(?:i think )?(?:that|this) (?:covers|answers|
    should cover|should answer|is|should be) (?:everything|all|it)`,
  String.raw`
    so (?:just )?(?:a )?(?:short|quick|brief)(?: (?:answer|reply|one|note))?|(?:bye|goodbye|
    good bye)(?: bye)?`,
  String.raw`
    (?:i |we )?(?:have |had |almost |totally |completely |nearly )*(?:forgot|forgotten)(?: (?:to (?:answer|
    reply|respond|write back)|about (?:it|this|you)|this|it))?`,
  String.raw`
    (?:all the )?best (?:wishes )?for (?:the )?(?:coming )?(?:new year|season|holidays|festive season)`,
  String.raw`
    the compliments? of the season|season'?s greetings|compliments of the season|all the best(?: to (?:you|
    all|everyone|the team|all of you))?`,
  String.raw`
    sunny side|under the weather|on my way (?:home|out|to (?:the )?(?:site|airport|office|lunch|work))|
    on the way (?:home|to (?:the )?(?:site|airport|office|work))`,
];

/** Runs of words that say nothing together, though some of their words might elsewhere. */
const idioms = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:${[...asides, ...runs].map((run) => run.replace(/\n\s*/gu, "")).join("|")})(?![\\p{L}\\p{N}])`,
  "giu",
);

/** When and where somebody is or was. Alone it may be what is wished for. */
const times = new RegExp(
  `(?<![\\p{L}\\p{N}])(?:(?:on|at) (?:the |a |my )?(?:job ?)?site|(?:just )?(?:got |coming |came )?off (?:the|a) (?:phone|plane|boat|water|roof|ladder|ferry|road|call)|(?:got |took |have |having )?(?:a |the |my )?(?:day|week|afternoon|morning)s? off|(?:til|till|until|from|around|after|at) (?:about |around )?(?:(?:half past )?\\d{1,2}(?::\\d\\d)?(?: ?[ap]\\.?m\\b\\.?)?|noon|midnight|dark|dawn|lunch|lunchtime|sunset|sunrise|monday|tuesday|wednesday|thursday|friday|saturday|sunday)(?= *(?:[.,;!]|$|today|tonight|here|and))|first thing (?:this morning|today)|(?:my |the )?(?:first|second|third) (?:coffee|cup)(?: of (?:coffee|tea|the day))?|(?:over|at|after|for|during) (?:my |our |a |the )?(?:first |second )?(?:coffee|lunch|breakfast|dinner|tea|holidays?|weekend|break))(?![\\p{L}\\p{N}])`,
  "giu",
);

/** Names of people that are words as well. */
const namesToo =
  /(?<![\p{L}])(?:Bill|Mark|Will|Rod|Chip|Grant|Frank|Art|Gene|Rich|Drew|Pat|Sandy|Penny|Jack|Matt|Grace|Hope|Rusty|Buck|Guy|Miles|Wade)(?= (?:has|is|was|had|and|at|in|from|here)(?!\p{L}))/gu;

/** Words without such runs. A sign of courtesy stands in place of each. */
export const harmless = memoized((words: string): string => {
  return words
    .replace(/[’ʼ`´]/gu, "'")
    .replace(smiles, "")
    .replace(namesToo, "Bob")
    .replace(idioms, ` ${understood.courtesy} `)
    .replace(times, ` ${understood.date} `);
});
