import { memoized } from "../../trade/memoized.ts";
import { anyOf } from "./any-of.ts";
import { speaksAgainst } from "./doubt.ts";

/*
 * What makes a sentence a statement. Words of the trade do, wherever they stand (`trade`), and orders, unless they
 * order what this desk does anyway (`errands`). Words that forbid, bind or compare (`binds`) do, unless the sentence
 * is of its writer's own affairs (chat.ts) and names nothing that the order is made of (`goods`). Words that may
 * bind and as often tell a tale (`hints`) do where such a thing is named.
 */

const number = "two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen";

/** What only a sheet should say, or a clerk must know. A person reads it wherever it stands. */
const trade = anyOf(
  // Stopping and undoing.
  String.raw`
    cancel\p{L}*|holds?|hold off|on hold|halt(?:ed)?|paus(?:e[ds]?|ing)|suspend\p{L}*|abort\p{L}*|
    kill(?:ed)?|scrap(?:ped)?|void(?:ed)?|withdr[ae]w\p{L}*|retract\p{L}*|disregard\p{L}*|
    ignor(?:e[ds]?|ing)|discard\p{L}*|throw (?:out|away)|obsolete|outdated|out of date|supers[ce]d\p{L}*|
    overrid\p{L}*|substitut\p{L}*|swap(?:ped)?|omit\p{L}*|delet(?:e[ds]?|ing)|remov(?:e[ds]?|ing|al)|
    postpon\p{L}*|replac(?:e[ds]?|ing)|instead(?! of)|insolvent|bankrupt(?:cy)?|lawyers?|attorney|
    complaint|sue|never ?mind|scratch that|back(?:ed|ing)? out|pull(?:ed|ing)? (?:the|this|it|them)|
    value[- ]engineer\p{L}*|trim(?:med)?|chop(?:ped)?|slash(?:ed)?|interchang\p{L}*|nix(?:ed)?|axed|
    shelved|on ice|sit(?:ting)? (?:on|tight)|hang (?:on|tight|fire|fast)|stand (?:by|down)|freeze|frozen|
    slow down|tear up|shred|trash|bin (?:it|them|the)|start(?:ed|ing)? over|done over|over again|
    forget (?:about|it|the|that)|(?:any|no) more|how it is|the way (?:it|they) (?:is|are)|
    before (?:you|it|they|the machine|any(?:thing)?|(?:this|that|these|those)(?: ones?)? (?:runs?|goes|go|gets?|is|are)|\p{L}+ing\b)|
    cross(?:ed|ing)? (?:it |them |that )?out|struck|deduct\p{L}*|subtract\p{L}*|minus|excluding|excluded|
    other than|apart from|aside from|in addition to|on top of|in place of(?! the one)|in lieu|
    instead of(?! (?:\p{L}+ing|scans?|paper))|by others|re-?use[ds]?|for real|hold up|storno|
    stornier\p{L}*|annul\p{L}*|cancela\p{L}*|unsubscribe`,
  // Wishes.
  String.raw`
    (?<!\byou (?:ever |may |might |should |would |all )?)(?:needs?(?! to (?:fill|do|send|sign|provide|know|complete|resend|correct|add anything))|needed|needing|wants?|wanted(?! (?:this|it|that|these) off| (?:me |us )?to (?:say|send|let|tell|pass))|requir(?:e[ds]?|ing|ements?))|
    wanna|would (?:\p{L}+ )?(?:like|love|prefer|want|appreciate if)|
    \p{L}+['’]d (?:\p{L}+ )?(?:rather|like(?! to (?:thank|say))|love|prefer|take|go|want|hate|feel|be interested|appreciate (?!it|that|your|you|all|the (?:help|effort|quick)))|
    (?:feel|sleep|rest) (?:\p{L}+ )?(?:better|easier|safer)|
    if (?:we|somebody|someone|anybody|anyone)(?: \p{L}+){0,2} (?:talk|speak|look|call|check|met|spoke)(?:ed)?|
    heads[- ]up|let['’]?s (?!hope|see\b|face|say|just say|try|get (?:this|it|these|going)|keep)\p{L}+|
    (?:uneasy|worried|concerned|hesitant|iffy|s[ck]eptical|torn|on the fence|leery|wary|second thoughts) (?:about|on|over|whether|if)|
    what (?:i|we) (?:told|said to|discussed|talked|agreed)|
    (?:will|\p{L}+['’]ll) (?:get|give|send|bring|text|fax|e-?mail|have) (?:you )?(?:the|a|an|our|those|his|her|their) (?:\p{L}+ ){0,2}(?:legends?|names?|words?|ones?|two|three|rest|details|list|info)|
    prefer\p{L}*|request(?:s|ed|ing)?|insists?|same as|rather(?! than (?:to|me|the office))|
    expect(?:s|ed|ing)?|supposed|meant|intended|must be|special instructions?`,
  // Whether it is an order, and who says so.
  String.raw`
    approv(?:e[ds]?(?! by)|als?|ing)|reject\p{L}*|go ahead|go-ahead|proceed\p{L}*|green[- ]light|
    releas(?:e[ds]?|ing)|as is|as noted|prelim(?:inary)?|drafts?(?! folder)|tentative|provisional|tb[dac]|
    pending|(?:will|may|might|['’]ll|to|still|could) (?:\p{L}+ )?(?:change|revise|redo)|
    (?:wait|waiting) (?:for|with|until|till|on) (?!you)|estimates?|estimated|submittals?|
    samples?(?! (?:order|form|sheet))|mock-?ups?|placeholders?|decid(?:e[ds]?|ing)|undecided|options?|
    alternat(?:e|es|ives?)|finali[sz]e[ds]?|on spec|production|agree[ds]?|accept(?:s|ed)|guarantee[ds]?|
    certif\p{L}*|comments? in|red-?lines?|mark-?ups?|marked up|addend(?:um|a)|rfis?|change orders?|
    floor ?plans?|sketch(?:es)?|photos?|pictures?|vs\.?|versus|affirmative|negative|roger|
    see my comments?|new version|second version|
    (?:the|a) (?:good|real|valid|current|latest|correct|true) (?:ones?|version|set|sheets?|forms?)|
    only a (?:guess|test)|just (?:to get|for (?:pricing|a price|a quote|reference|information|now))|
    (?:you|u) (?:can|may|could|might) (?:start|begin|go|run|cut|make|use|skip|forget|leave)|
    best judge?ment|your call|up to you|you (?:decide|pick|choose)|as you see fit|your choice`,
  // How many.
  String.raw`
    qtys?|quantit(?:y|ies)|pcs|pieces?(?! of)|ea|dozens?(?! at a time)|doubl(?:e[ds]?|ing)|triple|thrice|
    extras?|spares?|fewer|pairs?|repeat(?:s|ed)?|reorder\p{L}*|surplus|seventh|one short|short by|x ?\d+|
    \d+ ?x|per (?:room|door|floor|house|unit|station)`,
  String.raw`
    (?:${number}|\d+|another|a couple of|a few) (?:more |extra |of )?(?:\p{L}+ )?(?:sets|lots|plates?|devices?|singles|keypads?|buttons?|stations|gangs?|sheets|rows|lines|houses|lefts?|rights?|(?:of )?(?:them|these|those|each))`,
  String.raw`
    (?<!(?:at|till|until|by|to|before|around|past|after|for|the|floors?|levels?|phases?|all|part|of|first|last|these|those|other|next|the other|yes,) )(?:${number}|ten)(?=$|[.,;!]| (?:and|but|please|instead|now))`,
  // What is cut, and how.
  String.raw`
    etch(?:ed|ing)?|inscri\p{L}+|strokes?|heavier|lighter|darker|brighter|legib\p{L}+|readable|
    sandblast\p{L}*|laser|router|plastic|acrylic|metal|wood(?:en)?|alumin\p{L}+|(?:re)?paint(?:ed|ing)?|
    polish(?:ed)?|powder|anodi[sz]ed|laminate\p{L}*|adhesive|magnet\p{L}*|holes?|drilled|brackets?|flush|
    recess(?:ed)?|depth|height|width|thickness|borders?|underlin\p{L}+|slash|percent|numerals|initials|
    monogram|crest|emblem|hearts?|stars?|(?<!\b(?:down|raining|snowing|rain|snow) )sideways|rotated|
    tilted|revers(?:ed|al)|with (?:an?|one|two|no) (?:\p{L}(?![\p{L}\p{N}])|dots?|dash|letter)|
    (?:little|the|a) dots?|dots|a hair|diagonal\p{L}*|backwards?|(?:left|right)-handed|switched around|
    mixed up|mix(?:ed)? (?:up )?the|bilingual|spanish|french|german|italian|chinese|(?<!my )english|
    translat\p{L}+|tweak\p{L}*|remake|re-?engrave|receptacle|outlet|filler|cut ?outs?|bottom to top|
    top to bottom|(?:left to right|right to left)|(?:laser|deep|hand)[- ]?(?:cut|engraved)|infill(?:ed)?|
    fonts?|typefaces?|serifs?|bold|italics?|thick(?:er)?|thin(?:ner)?|sizes?|bigger|larger|smaller|taller|
    wider|narrower|deeper|mm|inch(?:es)?|cm|upper ?case|lower ?case|(?:all|small|in) caps|caps|capitals?|
    capitali[sz]ed?|logos?|symbols?|icons?|artwork|arrows?|centre[ds]?|
    centere?d?(?= everything| all| the (?:text|legends?|words?|letters?)|$)|align(?:ed|ment)?|justified|
    blanks|left blank|braille|tactile|backlit|illuminated|glow\p{L}*|leds?|screws?|screwless|bezels?|
    gaskets?|back ?box(?:es)?|mounting|mirror(?:ed)?|upside|portrait|landscape|vertical(?:ly)?|
    horizontal(?:ly)?|orientation|both sides|on the back|back side|other way (?:round|around)|accents?|
    umlauts?|commas?|apostrophes?|hyphens?|dash(?:es)?|ampersands?|punctuation|abbreviat\p{L}*|wording|
    spacing|trademark|serial numbers?|barcodes?|glass|rounded|beveled`,
  String.raw`
    colou?r(?:s|ed)?|red|white|black|blue|green|yellow|orange|purple|pink|amber|brass|chrome|stainless|
    steel|nickel|copper|gold(?:en)?|silver|bronze|ivory|almond|gr[ae]y|brown|beige|cream|matte?|
    gloss(?:y)?|brushed|satin|tan|navy|teal|maroon|charcoal|two-tone|contrast|shade of|matching|
    (?<!\b(?:to|could|can|i|we|finally) )finish(?:es)?(?! (?:my|our|this|it|up|off|work|the (?:job|day|week)))|
    finish (?:them|the (?:plates?|devices?))`,
  // When, and how it travels.
  String.raw`
    asap|a\.s\.a\.p|urgent(?:ly)?|rush(?:ed)?|expedit\p{L}*|hurry|sooner|deadlines?|due(?! course| to)|
    lead ?times?|eta|overnight|how (?:long|soon|much|many|fast|quick(?:ly)?)|
    (?:two|three|four|five|six|eight|ten|a|\d+) (?:days?|weeks?|months?) (?:would|is|are|max|tops|or|at)|
    priority|emergency|critical|time-sensitive|crunch|on time|behind schedule|at the latest|right away|
    immediately|quicker|bump(?:ed)? up|timeline|squeeze|schedule for`,
  String.raw`
    ship(?:s|ped|ping|ment|ments|-?to)?|deliver(?:s|ed|y|ies|ing)?|couriers?|freight|carriers?|ups|fedex|
    dhl|will[ -]call|pick(?:ed|ing)? (?:it |them |these )?up|pick-?up|pallets?|docks?|packaging|packed in|
    label(?:s|l?ed|l?ing)?|wrap(?:ped)?|bag(?:s|ged)|consolidate|partials?|backorder\p{L}*|in stock|
    out of stock|availability|capacity|goods|tracking|
    (?:come|stop by|swing by|drive over|go) (?:to |and )?(?:get|fetch|collect|grab)|collect|fetch|
    receive (?:anything|them|it|the (?:goods|plates|devices|order|materials?|items|parts))|
    within (?:the|a|\d+)|same truck|sent back|send back|returns?|returned|liftgate|crates?|crated|
    swing by|come by|drop[- ]ship|drop (?:them|it|these) off|job tags?|tags?|tagged`,
  // Money.
  String.raw`
    pric(?:e|es|ed|ing)|quot(?:e|es|ed|ation|ing)|costs?|discounts?|rebate|invoic(?:e|es|ed|ing)|
    bill(?:s|ed|ing)?|tax(?:es)?|exempt|budget(?:ary)?|pay(?:s|ing|ments?)?|paid|deposit|credit|
    charge[ds]?|terms|net \d+|cheap(?:er)?|warranty|refund(?:s|ed)?|bids?|rfq|rfp|the total|bank details|
    on account|ballpark|dollars?|bucks|usd|euros?|give (?:me|us) a (?:minute|day|second|moment|week|bit)|
    last year['’]s (?:sheets|forms|order|ones)|a number|fees?|expensive|steep|a deal|sharpen|tariffs?|rma|
    w-?9|insurance|lien|nda|credit app\p{L}*|data ?sheets?|cut ?sheets?|catalogu?e?s?|brochures?|manuals?|
    ul(?:[- ]listed)?|ada|permits?|other vendor|someone else|competitor`,
  // Wiring and fit.
  String.raw`
    wir(?:e|es|ed|ing)|relays?|dimmers?|circuits?|loads?|low[- ]voltage|volt(?:s|age)?|\d+ ?v|breakers?|
    fuses?|programmed|programming|compatible|scenes?|motors?|momentary|toggles?|thermostats?|sensors?|
    card reader|contacts(?= |$)(?! (?:is|are|on))`,
  // Who knows better, and where it is said: "you know which one", "our fax has the details".
  String.raw`
    trust you to|you (?:guys |folks |all )?know (?:best|better|which|where|what|how|who)|
    (?:fax|voice ?mail|e-?mail|mail|call|text|letter|note|message|drawing|office|colleague|brother|partner) [^.,;!?]{0,30}?(?:has|have|tells?|told|says?|said|shows?|explains?) (?:you )?(?:it|the (?:details?|rest|others?|names?|words?|changes?)|them|better|which|what|how)|
    (?:said|explained|put|wrote) (?:it|that|them) (?:better|on the phone|in my)|
    as (?:i|we) (?:said|told|mentioned|explained|wrote)(?! (?:before|earlier|last time)?[,.])|
    as i (?:heard|remember)|
    (?:computer|program|software|phone|scanner) (?:fill|filled|fills|guess\p{L}*|correct\p{L}*) (?:it|them|in)|
    (?:neighbou?r|friend|competitor|somebody|someone)['’]s (?:sheets?|forms?|order|list|legends?|names?)|
    last (?:year|month|summer|winter|fall|spring)['’]s(?! (?:weather|snow|storm|holidays|order was|job was))|
    (?:is|are|was|were) (?:hers|his|theirs|not (?:mine|ours))`,
  // What ends a job or moves its place.
  String.raw`
    (?:the|that|this|a) \p{L}+ (?:may|might|could) (?:yet |still |all |well |also )*go(?= *(?:$|[.,;!]))|
    (?:sends?|sending|brings?|bringing|does|doing|finish(?:es|ing)) (?:his|her|their) (?:own )?(?:half|share|part|bit|portion|lot|end)|
    (?:style|rules?|standards?|conventions?|practice|guide(?:lines?)?) (?:applies|apply|rules?|prevails?|governs?|stands?)|
    (?:\p{L}+['’]ll|will|shall|to) (?:supply|provide|furnish) (?:the|our|their|its|all|them|these|those)|
    per (?:the|our|my|his|her|their) (?:[\p{L}'’]+ ){0,3}(?:list|schedule|drawings?|specs?|legend|plans?|matrix|table)|
    for (?:you|your people|the shop) to (?:look at|compare|have|see|keep|look over)|
    would be (?:lovely|nice|great|grand|ideal|best|helpful|useful|handy|good|super|fine) (?:if|to|with|as|in|for)(?! (?:hear|know|get (?:this|these|it|them) (?:going|moving|started|in|off)))|
    (?:letters?|words?|lines?|rows?|names?|text|edges?) (?:could|should|ought|might|may)|
    old (?:plates?|ones?|devices?|set) (?:is|are) (?:still|all right|fine|good|ok(?:ay)?)|
    (?:on|to) the (?:outside|carton|box|crate|lid)|would (?:save|spare|help) (?:me|us)|ve['’]?d|
    v\.e\.?['’]?d?|(?:look(?:s|ed)?|seem(?:s|ed)?) (?:\p{L}+ )?(?:short|incomplete)|
    (?:has|have|got|takes?|took|gets?|inherits?) all (?:of )?my|
    newer (?:sheets?|forms?|lists?|versions?|drawings?|printouts?|ones?|copy|copies)|
    cross(?:ed|ing)? (?:paths|in the (?:mail|post))|keyboard (?:sticks|skips|drops|lacks|has no)|
    (?:shows?|see|saw|sees) (?:little |only |just )?(?:squares|boxes|question marks|gibberish|hieroglyphs)|
    mis(?:read|heard|count\p{L}*|took|understood|judged)|re-?(?:arrang|shuffl|group|organi[sz])\p{L}+|
    borrowed (?:it|them|these|those|the|some|their|his|her|your)|
    (?:flip|toss)(?:s|es|ped|ed|ping|ing)? a coin|(?:two|three|four|five|a few|some) short|
    between (?:offices|addresses|homes)|copied (?:an?|the|our|my|some) old|
    for (?:a|my|our|the) (?:neighbou?r|friend|cousin|buddy)|hop(?:e|ing) to hear from the|
    thanks? (?:you )?for (?:holding(?! (?:my|our) hand)|waiting with|keeping (?:them|it|these|those)|delaying|stopping)|
    is history|two cents|here(?:['’]s| is) (?:what (?:i|we) would|hoping|how)|called off|sleep on it|
    muddl\p{L}*|waiting to hear|still on (?:my|his|her|our) desk|from before|where (?:i|we) typed|
    (?:my|our) own (?:taste|idea|guess)|the good (?:list|copy|page)|already with you|lying by|
    fixed the spelling|(?:is|are|was|were) now (?:a|an|the)|bought (?:us|it|the \p{L}+)|
    took (?:[^.!?]{1,30} )?away from us|money|penny|revisions? behind|partly|new ones?(?! for)|
    made up (?:his|her|their) minds?|when the \p{L}+ (?:has|have|is|are|comes?|gets?)(?! (?:back|home))|
    sent you what|(?:been|was|were) asked to (?!send|forward|pass|type|fill|e-?mail|submit|hit)|
    get(?:ting)? (?:the|his|her|their|a) signatures?|
    (?:in time )?for (?:her|his|their|the|our) (?:birthday|anniversary|wedding|opening|party|gala|dedication|inauguration|visit)|
    on the (?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|\p{L}+teenth|\p{L}*twentieth|thirtieth)(?! floor)|
    had a fire|caught fire|burn(?:ed|t|s) (?:down|out)|came down(?! (?:with|to|hard))|
    (?:bank|city|state|court|owner) took|clos(?:e|es|ed|ing) (?:the|our|its|their) doors|for good|
    split up|broke up|divorc\p{L}*|merged|moved (?:upstairs|downstairs|out|away|across|next door)|
    new tenants?|old tenants?`,
  // Where and how much, of what nobody has named.
  String.raw`
    (?:a|another) (?:second|third|fourth|fifth|sixth) (?!time|try|floor|grade|job|child|kid|cup|coffee|e-?mail|mail|letter|round|attempt|look|set of eyes|pair of eyes)\p{L}+|
    (?:${number}) of the (?:${number})|
    a (?:little|bit|touch|hair|tad) (?:lower|higher|bigger|smaller|wider|narrower|deeper|longer|shorter|lighter|darker|rounder)|
    with a (?:bit|touch|hint|dash|splash) of|comes? out in|corners?(?! office)|oil-?rubbed|
    its own(?! (?:order|sheet|form|page|file|name|number|email|e-?mail))|
    (?:at|on|in) the (?:bottom|top|middle|corner|left|right)(?! (?:of (?:this|the|my|your) (?:e-?mail|page|letter|message|pile|stack|list)|desk|office|door|hand))`,
  // Complaints and errors.
  String.raw`
    (?:forms?|sheets?|pdfs?|box|field|reader|viewer|program|computer) (?:has |had |just |also )?(?:cuts?|chops?|clips?|clipped|truncate[sd]|lost|loses|scrambled)(?! (?:off )?(?:at|to|by)(?!\p{L}))|
    hunch(?:es)?|moot|afterthoughts?|mock|who knows|any(?:body|one)['’]s guess|
    hop(?:e|ing) (?:it|that|this|they|nothing|everything|all|the \p{L}+) (?:\p{L}+ )?(?:kept|saved|stuck|stayed|survived)|
    (?:circled|highlighted|starred|ringed|boxed|ticked|pencill?ed) (?:in )?(?:the|it|them|what|all|that|those|which)|
    by accident|accidentally|as a joke|for fun|
    turned (?:the|it|them|my)(?! (?:corner|page|lights? on|heat|computer|key))|
    (?:ate|swallowed|dropped) (?:a|the|one|some|half|my|our)(?! (?:coffee|lunch|breakfast|ball|phone))|
    mixed (?:mine|it|them|up|with)|old names?|in my head|fixed the|fired|laid off|
    no longer (?:with|at|in|here|work\p{L}*)|out of business|sold (?:the|it|our)|
    left (?:hers|his|theirs|out)|cuts off|
    (?:customer|client|owner|their|his|her|our)(?:['’]s)? own (?:\p{L}+s|◆)|in the mail to you|
    crack(?:ed|s)?|damag(?:e[ds]?|ing)|crooked|(?<!from )scratch(?:es|ed)?|wrong(?:ly)?|faulty|
    defect(?:s|ive)?|discolou?red|faded|peel(?:ed|ing)|ridiculous|unhappy|unacceptable|
    disappoint(?:ed|ing)|complain(?:ed|ts?|ing)?|rubbed off|wore off|came off|picky|
    (?<!can(?:['’]?t|not) )(?<!the )spell(?:s|ed|ing)?|spelt|misspell?\p{L}*|mis-?spelt|misprint\p{L}*|
    never (?:received|got|came|arrived|ordered(?! from))|ordered (?:six|\p{L}+) (?:and|but)|hard to read`,
  // Places that are not the sheets'.
  String.raw`
    (?:we|office|shop|company) (?:have |has |just )?moved|
    moved (?:(?:over|across|up|down|out|in) )?(?:to|into)|re-?address\p{L}*|re-?number\p{L}*|
    new (?:address|ship-to|delivery address|shipping address|name|logo)|wrong address|now called|
    renamed to|goes away|go away`,
  // Other papers that count, which nobody has attached, and what others have promised.
  String.raw`
    (?:is|are|was|were) (?:the|what|those) (?:(?:ones?|drawings?|revisions?) )?to (?:follow|use|go by|go with|make|cut|believe|work (?:from|to|off))|
    (?:off|from|per|to|on) (?:the )?rev(?:ision)?\.? [A-Z0-9]{1,2}|
    (?:see|refer to|consult|follow|go by|look (?:at|up)) (?!(?:the |our |my |all )?(?:attached|enclosed))(?:the |our |my |your )?(?:\p{L}+ ){0,2}(?:drawings?|plans?|contract|specs?|specifications?|schedules?|sketch(?:es)?|web ?site|catalogu?e|photos?|pictures?|details?)|
    portal|spec book|
    the (?:rest|others|remaining \p{L}+|missing \p{L}+) (?:is|are|was|were) (?:in|on|at|with|by|from)|
    you should (?:already )?(?:have|get|be getting) (?:the|an?|my|our) [^.!?]{0,30}?\b(?:lists?|changes?|updates?|versions?|revisions?|mark-?ups?|drawings?|e-?mails?)`,
  String.raw`
    (?:said|say|says|told (?:me|us)|promised|mentioned|swore|reckons)(?: that)? (?:you|y['’]all|you guys|they)(?:['’]d|['’]ll| would| could| can| will)(?! (?:help|answer|like|appreciate|be (?:glad|happy|quick|nice|great)))`,
  // Who has it in hand now.
  String.raw`
    (?<!(?:i|we) (?:just |have )?)took over|tak(?:es?|en|ing) over|from now on|
    (?:your|the|new|main) contact (?:is|now|for)|took the \p{L}+ from us`,
  String.raw`
    (?:company|firm|office|branch|shop|name|super\p{L}*|foreman|pm|manager|contact|buyer|owner|gc|contractor) is (?:now )?[^.!?]{0,40}\bnow(?=[,.;!]|$)|
    (?<!here (?:they|it|we|you) )(?:is|are|goes|runs|ships|works|handles) (?:\p{L}+ ){0,4}now(?=[,.;!]|$)(?<!(?:here|here it is|right|just|done|set|ready|in|out|back|better|good|up|fine|busy) now)|
    (?:super\p{L}*|foreman|pm|manager|contact|buyer|owner|gc|contractor|architect|designer) is now|
    old letter-?head|letter-?head (?:is|on)|
    closed (?:the|our|that) (?:[\p{L}.]+ ){0,3}(?:branch|office|shop|yard|store|warehouse|location)`,
  String.raw`
    (?:already|also|think i|have|had|['’]ve) (?:\p{L}+ )?(?:faxed|dropped off|phoned in|called in|posted) (?:these|them|this|it|one|some|the)`,
  String.raw`
    stolen|thie(?:f|ves)|
    (?:number|phone|cell|e-?mail|address|contact|name) (?:that )?(?:u|you)(?: folks| guys)?(?: still)? have(?: on file)?|
    (?:furnished|supplied|provided|bought|installed) by(?! ◇)|flood(?:ed|ing)?|soaked|water damage\p{L}*|
    (?:last|first|other|old) (?:batch|set|lot|ones?) (?:from you|you (?:made|sent))[^.!?]{0,20} (?:was|were|is|are) (?:sitting|stored|kept|in the)|
    c\.?o\.?d|bond(?:ing)? company|surety|stepped in|bankrupt\p{L}*|receivership|liens?`,
  // Who has not decided.
  String.raw`
    back and forth|undecided|torn between|on the fence|
    still (?:going|debating|arguing|discussing|talking|torn|figuring|sitting|with (?!you|us|me|it))`,
  // Names that nobody has given yet.
  String.raw`
    (?:wait|waiting|await|awaiting) (?:for |on )?(?:the |some |all |a |more |new |his |her |their |${number} )*(?:names?|words?|legends?|wording|texts?)|
    (?:lack(?:s|ing)?|missing|short of|without) (?:the |some |a |any |${number} )*(?:names?|legends?|wording)|
    (?:names?|legends?|wording|words) (?:(?:is|are|still|was|were) )*(?:outstanding|missing|lacking|open|to come|to be (?:found|chosen|given)|not (?:known|there|in|here))|
    (?:all|everything) bar (?:the|one|two|three)`,
  // What is not to be made, or stays.
  String.raw`
    existing|(?:is|are|stays?|due) to remain|not in (?:the )?contract`,
  // The wall that it goes on, and the contract.
  String.raw`
    (?<!am )walls?(?! (?:street|clock|calendar|stations?|switch(?:es)?|plates?|controls?|devices?|mount\p{L}*|keypads?))|
    partitions?|tiles?(?! (?:store|shop))|tiled|dry-?wall|sheet-?rock|backsplash\p{L}*|wainscot\p{L}*|
    panell?ing|mill-?work|case-?work|cabinets?|studs?|mud rings?|rough(?:ed)?-?ins?|back ?box(?:es)?|
    new layout|builds out|built out|furr(?:ed|ing)|contract|nte|not to exceed|tapped out|
    (?:over|out of) budget`,
  // What holds only if, only nearly, or of a part, and who only heard so.
  String.raw`
    provided (?:that|it|they|he|she|we|you|the|this|these|all|nothing|nobody)|subject to(?! copyright)|
    assuming(?! you)|depend(?:s|ing|ent) (?:on|upon)|contingent|permitting|
    on (?:the )?(?:understanding|condition|premise)|conditional(?:ly)?|
    (?:if|where|wherever|when|whenever|as far as) possible|
    if (?:it|that|this|they) (?:fits?|suits?|works?|will do)|
    once (?:\p{L}+ )?(?:signed|approved|agreed|checked|paid|confirmed|cleared|released|settled)`,
  String.raw`
    supposedly|allegedly|apparently|purportedly|in (?:theory|principle|essence|part|the main)|
    as far as (?:i|we) (?:know|can tell|remember)|to the best of (?:my|our) (?:knowledge|memory|ability)|
    as best (?:i|we) (?:could|can)|they tell (?:me|us)|
    (?:he|she|they) (?:thinks?|reckons?|believes?|hopes?)|roughly|near enough|mostly(?! hear)|hardly|
    barely|almost(?! (?:done|there|time|lunch|forgot|gave|weekend|finished|over|through|all of my))|
    by and large|on the whole|so to speak|as it were|ideally|more or less`,
  String.raw`
    half of (?:it|them|these|those)|some of (?:it|them)|(?:a few|some|several|many|with) gaps|save for|
    (?:and )?then some|
    un(?:checked|tested|read|signed|seen|approved|verified|finished|reviewed|confirmed|settled|official)|
    warts and all|or (?:equal|equivalent|similar|nearest|the nearest|closest|as close as|the like)|
    (?:and|or) the like|your pick|e ?& ?oe`,
  String.raw`
    (?:for|open (?:to|for)) (?:discussion|debate|comments?|criticism|a first look)|
    on (?:trial|appro|approval|sale or return)|for the (?:moment|time being)|to (?:start|begin) with|
    as a (?:start|beginning|first (?:step|go|try))|for starters|to be going on with|in the first instance|
    from △ on|as marked`,
  // What comes or counts with the sheets, behind words that only hand them over.
  String.raw`
    (?:and|with|plus) (?:(?:the|an?|our|my|some|one|two|three|a few|several|all|his|her|their) )*(?:drawings?|plans?|lists?|schedules?|comments?|remarks?|questions?|notes|wish(?:es)?|(?<!with (?:the|all|your|our) )corrections?|requests?|changes?|amendments?|exceptions?|old ones?)(?= *(?:$|[.,;!)]|on|in|for|of|from|at|to|below|about))(?! below$)|
    at (?:your|our|his|her|their|no) (?:expense|cost|risk|charge)|
    in (?:one|two|three|separate) (?:box(?:es)?|lots?|batch(?:es)?|parcels?)|in pencil|by hand(?=[.,!]|$)`,
  String.raw`
    (?<!wishes )(?:in time )?(?:for|before|by) (?:easter|christmas|thanksgiving|the (?:\p{L}+ )?(?:opening|inspection|handover|walk-?through|move-?in|event|wedding|holidays|inauguration))|
    (?:from|off|on) (?:the|an|our|my) (?:old|earlier|previous|former|outdated) (?:\p{L}+ )?(?:lists?|drawings?|plans?|sheets?|forms?|schedules?)`,
  String.raw`
    as an (?:example|illustration)|(?:weak|bad|poor|old) eyes|left-?hand(?:ers?|ed)|
    (?:two|both|three|several) languages|
    as (?:an? )?(?:replacements?|additions?|alternatives?|supplements?|amendments?|extras?|substitutes?)|
    in addition|additionally|alternatively|already (?:sent|faxed|posted|mailed) by|
    originals? (?:to follow|by post|in the post|follows?)|
    (?:one|two|three|some|a few) (?:is |are |still )*missing|
    (?:\p{L}+s|names?|lobby|foyer|bar|finish(?:es)?|lettering) (?:excepted|to come|open|later)(?=[.,!)]|$)`,
  // Sheets that are somebody's copy, or that their own writer does not trust.
  String.raw`
    (?:copied|cloned|carried|lifted) (?:over |across )?from(?! (?:the|our|my|his|her|their|an?) )|from (?:another|an old|the old|our old) (?:job|project|order|house|set)|typed over|started (?:out|life) as|
    (?:were|was) (?:once|originally|first)|
    (?:were|was) (?:the )?[^.!?]{1,30}(?: once| originally)(?=[.,;!]|$)|(?:old|earlier|last) sheets and|
    something (?:is|looks?|seems?|feels?|smells?) (?:\p{L}+ )?(?:off|odd|wrong|funny|strange|amiss|fishy)|
    (?:one|some|two)(?: of (?:them|these))? (?:looks?|looked|seems?|seemed|felt|feels?|reads?|sounds?) (?:\p{L}+ )?(?:odd|off|funny|strange|weird|fishy|wrong)|
    (?:may|might|could|must) (?:well )?have (?:missed|forgotten|mixed|dropped|skipped|swapped|lost|left)|
    (?:feels? like|think|thinking|afraid|fear|worr\p{L}+|bet) (?:that )?(?:i|we) (?:\p{L}+ )?(?:forgot|missed|left|skipped|mixed|lost)|
    (?:excuse|forgive|pardon|blame) (?:any |the |my |all )?slips?|dictat\p{L}+ (?:the|these|them|it|all|most|some)|
    (?:wrote|took|put|typed) (?:it |them )?(?:down )?(?:what|as) (?:i|we|he|she) (?:heard|understood|remember\p{L}*|could (?:read|hear))|
    (?:cat|kids?|baby|toddler|bird)\b[^.!?]{0,40}(?:keyboard|keys|tablet|mouse|laptop)|half asleep|
    (?:tell|let) (?:me|us) (?:know )?(?:if|whether) (?:it|this|that|they|these|all|everything|any of (?:it|this)) (?:makes?|adds?|fits?|works?)`,
  // Who gives the word, and when.
  String.raw`
    await the|hope to (?:win|get|land)|one of (?:two|three|four|five|several)(?= *(?:$|[.,;!]))|
    (?:call|give|send|tell|text) you (?:with )?the (?:go|word|nod|okay|ok|signal|green light)|
    fingers crossed (?:we|they|he|she|it)|(?:come|get) back to you (?:on|about|with)(?! (?:that|this) one)|
    if (?:\p{L}+ ){1,3}goes (?:well|through|ahead)`,
  // Money and accounts.
  String.raw`
    (?:is|was) (?:my|our|the) (?:limit|ceiling|maximum|top)(?= *(?:$|[.,;!]))|card on file|
    new (?:account|bank|card)|owe you from`,
  // From where places are counted, and who has them.
  String.raw`
    numbers? (?:start|begin|run|go|count)s? (?:at|from|with|on)|
    number (?:it|them|these|those|rooms?) (?:the|from|differently|another)|
    (?:gave|handed|passed|lent|sold|moved) (?:\p{L}+ )?[^.!?]{1,20} to (?:the|another|our|an) (?:other|second|next)|
    (?:counter-?)?clockwise|(?:seen|viewed|counted|read|counting|reading) from|
    from (?:the )?(?:door|window|left|right|entrance|stairs) to|
    (?:door|window|hinge|left|right|top|bottom) (?:side |one )?first|
    (?:ones?|rows?|buttons?|plates?|sides?) faces? |(?:in )?any order(?= (?:will|is|you)| *(?:$|[.,;!]))`,
  // What the place does to them, and how they look.
  String.raw`
    top quality|(?:kid|child|vandal|tamper|dust|rust|pet|bullet)[- ]?proof|salt (?:air|water|spray)|
    (?:get|gets|getting) (?:wet|splashed|damp|hot|rained)|splash(?:es|ed|ing)?|humid(?:ity)?|
    (?:for|with) (?:our|the|an|my) app(?= *(?:$|[.,;!?]))|
    (?:small|big|large|bold|capital|thin|thick|fancy|plain|block|curly) (?:letters?|lettering|print)|
    (?:our|the|my) usual(?= *(?:$|[.,;!]))`,
  // Slips of whoever typed, or of what he typed with.
  String.raw`
    auto-?correct\p{L}*|spell-?check\p{L}*|(?:got|gets|get|was|were|is|are|been) cut off(?! when)|
    r[au]n out of (?:room|space|boxes|lines|characters)`,
  String.raw`
    out-?doors?(?! (?:weather|type|person))|open air|
    blind (?:people|users?|residents?|pupils|students?|persons?)|the blind|
    (?:poor|low|bad|weak) (?:eye ?sight|sight|vision)|partially sighted|visually impaired|wheel-?chair|
    exit signs?|egress|generators?|fire (?:alarm|panel|pump|marshal)|life[- ]safety|panic|disconnects?|
    kill switch|shut-?offs?|nice and (?:big|small|bold|clear|plain)|
    moved (?:one|two|a room|a door|a bay) (?:over|up|down|along|left|right)|
    (?:wet|damp) (?:location|area|room|spot|place)s?|water-?proof|weather-?proof|wash-?down|
    when (?:(?:it|they|these|those)(?:['’]s|['’]re| is| are) )?(?:all )?(?:ready|done|finished|shipped|complete)(?! (?:reading|checking|with your))`,
);

/** Words that forbid, make exceptions, bind, compare or answer. */
const binds = anyOf(
  String.raw`
    no|not|cannot|unable|never|none|nothing|nobody|neither|nor|nope|nein|yes|yep|yeah|yup|without|but|
    except|unless|until|til|till|only|whether|either|otherwise|however|although|whichever|whatever|in case`,
  String.raw`
    (?:do|does|did|ca|wo|is|are|was|were|should|would|could|must|have|has|had|need|ai)n['’]?t|should be|
    ought to|must|shall|has to|have to|got to|gotta|
    (?:can|could|would|will) (?:you|u|somebody|someone|anybody|anyone)|mean|means|mind|careful(?:ly)?|
    attention|warning|note|nb|p\.?s|watch|beware|(?:make|be) sure|ensure|remember`,
  String.raw`
    (?:client|customer|owner|architect|nobody|no one|he|she|they|it|inspector|contractor|designer|boss|gc|city|tenant|truck|plate|device)(?: \p{L}+)? (?:will|['’]ll|is going to|might|may)|
    still (?:ha[sv]e?|being|waiting|open|to)|to be \p{L}+(?:ed|en|t)|to be in|bec[ao]m(?:e|es|ing)|
    turn(?:s|ed)? (?:out|into)|might|maybe|perhaps|probably|unsure|guess|mistake|typo|slip|errors?|
    incorrect|chang(?:e[ds]?|ing)|revis(?:e|ion)|edit(?:s|ed)?|modif(?:y|ied)|adjust\p{L}*|amend\p{L}*|
    alter(?:ed|ations?)?|refus\p{L}+|declin\p{L}+|revok\p{L}+|exchang\p{L}+|false|untrue|undo|redo|
    mistak\p{L}+|mistyp\p{L}+|errat\p{L}+|doubts?|differ(?:s|ent|ently)?|drop(?:ped)?|dead|lost|
    burn(?:ed|t)|fell|broken?|bad|poor|worn|too (?:many|much|few|big|small|long|high|low)`,
  String.raw`
    same|similar|identical|like (?:the|what|you did|we|before|last|those|that|these|on|in)|match(?:es)?|
    exactly|plus|more|less|each|every|both (?:sides|ways|of|should|to|with|are|is|in)|additional|another|
    twice|stop(?:s|ped)?|delay(?:s|ed)?`,
  String.raw`
    says?|reads?|call(?:s|ed)? (?:it|them|this|that)|confirm(?:s|ed|ing)?|verif\p{L}*|correct|
    right(?= ?[.,;!]|$| as (?:is|it))|ok(?:ay)?|fine|looks? good|sign(?:ed|s)? off|make|made|makes|keep|
    keeps|leave|left (?:out|off|it|them|empty|blank)|put(?! together)|add(?:s|ed)?(?! me\b| us\b)|
    includ\p{L}*|go(?:es)? (?:to|in|on|by|under|next|above|below|where|into)|empty|blank`,
);

/** Words that may do so, but as often only tell a tale. */
const hints = anyOf(
  String.raw`
    if|also|too|first|second|before|after|already|once|yet|wait|later?|early|earlier|soon|today|tonight|
    quickly|fast|when(?! (?:i|we)\b)|by (?:then|the)|copies|times|separate(?:ly)?|said|named|use|gets|
    takes?|going to|how|where|why|what|who|cut(?! off)|plain|may|let['’]?s|wish(?:es)?|should|suppose|
    redo|problems?|confus(?:ed|ing)|odd|strange|short`,
);

/** What the order is made of. */
const goods =
  /[◇○]|(?<![\p{L}\p{N}])(?:plates?|devices?|buttons?|keys?|faces?|gangs?|legends?|engrav(?:ed?|es|ings?|er)|lettering|letters?(?! of\b)|words?|text(?! me| us)|rows?|lines?|spellings?|stations?|keypads?|singles?|covers?|orders?|items?|materials?|units?|parts?|ones|(?:this|that|the|first|second|third|last|other|top|bottom|big|small|little|lobby|foyer|kitchen) one|them|these|those|switch(?:es)?|panels?|names?|titles?|proofs?|lobby|foyer|kitchen|den|porch|frames?|box(?:es)?|cutting|cut)(?![\p{L}\p{N}])/iu;
/** What people send and write with. Pronouns beside such a word mean it. */
const paper =
  /(?<![\p{L}\p{N}])(?:sheets?|forms?|pdfs?|files?|e-?mails?|mail|message|attachments?|attached|attaching|docs?|documents?|scan(?:s|ned|ner)?|zip|paper(?:s|work)?|folder|computer|laptop|phone|browser|printer|outbox|inbox|spam|internet|wifi|server|link|reader|acrobat|excel|spreadsheet|software|keyboard|screen|version|adobe|typed?|typing|fill(?:ed|ing)?|to you|to send|sending|sent|submit\p{L}*)(?![\p{L}\p{N}])/iu;
const pronoun =
  /^(?:ones|them|these|those|(?:this|that|the|first|second|third|last|other) one|letters?|names?|lines?|orders?|words?|text|parts?)$/iu;

/** Whether words name something of the order, rather than the papers on which it is written. */
export function namesGoods(said: string, onPaper = paper.test(said)): boolean {
  for (const [word] of said.matchAll(new RegExp(goods, "giu")))
    if (!onPaper || !pronoun.test(word)) return true;
  return false;
}

/** Words that make anything no order yet. */
const unsettled =
  /(?:\b(?:not|never|nothing|none|(?:is|are|was|were|has|have|had)nt)|n['’]t)\b[^.!?]{0,40}\b(?:final|complete|ready|right|correct|checked|reviewed|seen|sure (?:about|if|whether|of|which|what)|settled|confirmed|authori[sz]ed|signed|initiall?ed|stamped|an? (?:order|release)|yet|ours?)\b|\b(?:we|i)(?:['’]ll| will) see(?=[.!]|$| about\b| what\b| how\b| if\b)/iu;

/** "NIC", "OFCI": not in contract, or bought by the owner. In capitals, since Nic is a name. */
const outOfScope = /(?<![\p{L}\p{N}])(?:N\.?I\.?C|OFCI|OFOI|CFCI|ETR)(?![\p{L}\p{N}])/u;

/** Quotation marks around a word, an arrow, "A = B": somebody says what is to stand where. */
const shown = /["“”«»][^"“”«»]{1,40}["“”«»]|(?<!\p{L})['‘][^'‘’]{2,40}['’](?!\p{L})|[→⇒]|[-=]>|\S\s?=\s?\S/u;

/** Dates that bind: "by Friday", "before the 20th". Days and dates have become △ (tallies.ts). */
const limit =
  /\b(?:by|before|until|till|for|latest|than|on|needed|required|is|here|there|comes?|arrives?|receiv\w+|in) (?:the |this |next |end of )?△|\b(?:by|before|until|till|in|after|from) (?:early |late |mid-?)?(?:january|february|march|april|may|june|july|august|september|october|november|december|spring|summer|fall|autumn|winter|the holidays|the new year|year[- ]end)\b/iu;

/** What this desk does anyway. Asking for it changes nothing. */
const errands =
  "(?:find|see|open|process|enter|review|check|refer|advise|call|contact|acknowledge|accept|book|handle|submit|forward|look|place|reply|receive|thanks?|thank|let|get|have|drop|use (?:this|my|the) (?:new )?(?:e-?mail|number)|take a look|add me|add us|direct|log|bear|excuse|forgive|pardon|say|feel|ring|text|phone|e-?mail|shout|input|log|disregard my|consider|treat|work|go over|run (?:this|these|it|them) (?:by|past|through))";
const bidden = new RegExp(
  `\\b(?:please|pls|plz|kindly)(?: also| just| kindly| do| to)* (?!to\\b|${errands}\\b)\\p{L}+`,
  "iu",
);
/** Verbs that begin a command, at the beginning of a sentence or of a part of it. */
const orders =
  /(?:^|[,;:(–-]\s*|[.!]\s+|\b(?:please|pls|plz|kindly|just|also|and|so|then|or|but|oh|ps|btw|way),?\s)(?:do|don['’]?t|go with|go for|run|start|begin|write|make|put|use(?! (?:this|my|the) (?:new )?(?:e-?mail|number))|add(?! (?:me|us|him|her)\b)|leave|skip|match|spell|give (?:it|them|the|each|these)|move|set (?:up|it|them|the)|turn|take|keep|change|fix|correct|cut|engrave|print|paint|drop|include|exclude|combine|merge|split|group|figure|pick|choose|send (?:it|them|the|these|those|me|us|two|to|by|via|only)|bring|tell (?:me|us) (?:the|how|what|when|which|your|about)|show|mind|watch|note|follow|stick|copy (?:it|them|the|what)|reverse|rotate|flip|mark|mount|fill (?:it|them|the|in)|finish|double|center|centre|align|shorten|lengthen|abbreviate|let (?:it|them|the|this|everything)|sit tight|wait|stop|stay|raise|lower|line up|ask|mail|pack|route|treat .{1,20} as|test (?:it|them|the)|give us|give me(?! a (?:call|ring|shout|bell|buzz)))(?![\p{L}\p{N}'’])/iu;

/** "Deduct the two", "Sandblast them": an unknown verb begins a sentence, and its object follows. */
const verb =
  /(?:^|[,;:] |\b(?:so|and|then) )(?!(?:see|find|enjoy|forgive|excuse|pardon|per|with|about|here|there|like|have|hope|got|took|made|sent|did|had|was|were|went|put|came|saw|found|left|is|are|am|do|can|will|may|if|in|on|at|to|of|for|from|by|as|so|and|but|or|not|all|both|just|only|even|when|while|since|because|after|before|until|under|over|into|onto|off|near|behind|beside|between|through|during|against|without|than|that|this|these|those|what|who|which|how|why|where|yes|no|thank|thanks|now|then|also|again|maybe|bless|love|loved|once|re|via|regarding|concerning|sorry|beat|knew|thought|told|gave|kept|got|wish|meet|take|give|call|text|email|phone|ring|bear|say|process|enter|review|check|accept|acknowledge|confirm|attach|enclose|note)\b)(?!\p{L}+(?:ed|ing|ly|s)\b)\p{L}{3,} (?:the|them|it|this|these|those|my|our|your|his|her|every|each|off|out|up|down|away)\b/iu;

/** "Check against the drawing": nobody here has it before them. */
const compares =
  /(?:^|[,;:(–-]\s*|[.!?]\s+|\b(?:please|pls|plz|kindly|just|also|and|so|then|you)\s)(?:double[- ]?|cross[- ]?)?(?:(?:check|look at|consult) (?:the|our|my) (?:\p{L}+ )?(?:drawings?|plans|schedules?|elevations?|specs?|specification)(?= for | to |[.,;!]|$)|(?:check|compare|verify|match)(?: (?:it|this|them|these|that|everything|all|both|(?:the|our|my) (?:new )?(?:sheets?|words?|legends?|names?|forms?)))?(?: carefully| closely| please| again)? (?:against (?:the|our|my|your|his|her|their|this|that|what|attached|rev)|(?:with|to) (?:the|our|my|his|her|their|attached) (?:attached )?(?:\p{L}+ )?(?:drawings?|plans?|schedules?|specs?|specification|elevations?|list|contract|quote|sketch|dwg)))(?!\p{L})/iu;

/** "The left one in front please": a request that is not known to be for what this desk does anyway. */
const begged = new RegExp(`^(?!.*\\b${errands}\\b)[^◆◇○]*\\b(?:please|pls|plz)[.!]*$`, "iu");

/** "Please call before you start": an errand with a condition. */
const bound =
  /\b(?:please|pls|plz|kindly)\b[^.!?]{0,60}\b(?:before|first|only|until|unless|after|not|no|but|once|without|by △)\b/iu;

/** Words in capitals among others, which may be legends. */
export function hasLegend(said: string): boolean {
  if (/^\p{L}[\p{L} ]{0,20}: ?\p{Lu}{2}/u.test(said)) return true;
  const tokens = said.match(/\p{L}[\p{L}\p{N}'’-]*/gu) ?? [];
  const capitals = tokens.filter((token) => /^\p{Lu}[\p{Lu}\p{N}'’-]+$/u.test(token));
  return capitals.length < tokens.length && capitals.some((token) => token.length > 3);
}

/** Whether words say something that a person must read, wherever they stand. */
export const speaksOfMaking = memoized((said: string): boolean => {
  return (
    trade.test(said) ||
    bidden.test(said) ||
    bound.test(said) ||
    begged.test(said) ||
    orders.test(said) ||
    verb.test(said) ||
    compares.test(said) ||
    shown.test(said) ||
    unsettled.test(said) ||
    outOfScope.test(said)
  );
});

/** Whether words bid somebody to do something. */
export function bids(said: string): boolean {
  return [bidden, bound, begged, orders, verb, compares, unsettled].some((one) => one.test(said));
}

/** How much words turn, bind or ask something, or set a time for it, even if only of their writer's own affairs. */
export function turnsIn(said: string): "asks" | "limits" | "binds" | "hints" | "nothing" {
  if (/\?/.test(said)) return "asks";
  if (limit.test(said)) return "limits";
  if (binds.test(said)) return "binds";
  return hints.test(said) ? "hints" : "nothing";
}

/** Whether words may ask for something, or say something that a person must read. */
export const asksFor = memoized((said: string): boolean => {
  return speaksOfMaking(said) || turnsIn(said) !== "nothing" || speaksAgainst(said);
});

/** Words that stand in wishes, and in no disclaimer or signature. */
const ofTrade =
  /\b(?:engrav(?:e|ed)|etch|cut|buttons?|legends?|plates?|sheets?|(?<!mobile |handheld |wireless )devices?|stations?|gangs?|lettering|qty|quantity|pcs|spares?|finish|cancel|hold|ship (?:to|by|via)|urgent|asap|rush|red|white|black|blue|green|brass|wire)\b/i;

export function speaksOfTrade(said: string): boolean {
  return ofTrade.test(said);
}
