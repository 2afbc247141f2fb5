import { anyOf } from "./any-of.ts";

/*
 * Statements of fact after which nothing may be made: what came is a trial, is there already, is for another time or
 * job, or its job is no more. They sound like talk, and bid and forbid nothing. Common practice, no source.
 */

const sheet =
  "(?:(?:the |this |that |these |those |my |our |your )?(?:(?:attached|enclosed) )?(?:sheets?|forms?|pdfs?|files?|orders?|pages?)|(?:the |this |what(?:['’]s| is) )(?:attached|enclosed)(?: ones?)?|(?:attached|enclosed|here)|this(?: one)?|that(?: one)?|it|they|these(?: ones)?|those)";
const is = "(?:is|are|was|were|['’]s|['’]re|being)";
const mere = "(?:just|only|merely|simply|really|more of|kind of|sort of|for now)";
const goods =
  "(?:(?:all |the |our |your |my |those |these |his |her )*(?:plates?|devices?|stations?|keypads?|switches|panels?|pieces?|parcel|box|package|shipment|order)|these|those|ones?|ours|them all|all of (?:it|them|these))";
const place =
  "(?:buildings?|house|home|jobs?|projects?|contracts?|rooms?|shop|sites?|schools?|church|hotel|offices?|clinic|store|wing|restaurant|deal|lease|tender|bid|client|customer|owner|tenant|landlord|company|firm|business|practice|school board|developer|investor)s?";
const elsewhere =
  "(?:another|a different|some other|the other|my other|our other|the (?:old|last|previous|former)|(?:our|my) (?:old|last|previous|former))";

const family =
  "(?:daughter|son|kid|child|children|toddler|baby|boy|girl|wife|husband|mother|father|mom|dad|brother|sister|cousin|nephew|niece|neighbou?r|friend|grand\\p{L}+|cat|dog)s?";
const one =
  "(?:(?:one|some|two|part) of (?:these|those|them|it|(?:the |my |our )?(?:\\p{L}+ )?(?:sheets?|forms?|files?|pdfs?|attachments?|pages?))|(?:the )?(?:first|second|third|last|other)(?: (?:one|sheet|form|file|pdf|attachment|page))|one)";
const paper =
  "(?:homework|drawings?|school ?work|shopping list|grocery list|recipes?|invoices?|receipts?|poems?|letters?|menus?|tickets?|cv|resume)";

const undone = anyOf(
  // Among what came is something that is no sheet of the order.
  `${family}['’]s? (?:\\p{L}+ )?${paper}`,
  `${one} (?:is|are|was|were) (?:actually |really |only |just )*(?:my|our|his|her|the) ${family}(?:['’]s?)(?! (?:\\p{L}+ )?(?:\\p{L}*rooms?|bath|offices?|suites?|stud(?:y|io)|house|wing|home|den|station|side|area|floor)(?!\\p{L}))`,
  `${one} (?:is|are|was|were) (?:actually |really |only |just )*(?:my|our|his|her|a|an) ${paper}`,
  `${one} (?:i|we) (?:only |just )?(?:did|made|typed|filled (?:in|out)) for (?:my|our|a|an|somebody|someone)`,
  `(?:kids?|children|toddlers?|babies|baby|cat|dog) (?:\\p{L}+ )?(?:filled (?:in|out)|typed|drew on|got (?:at|to|hold of)) (?:one|some|part|it|them|this|these)|play(?:ed|s|ing) with (?:one|some|part|it|them|this|these)`,
  "you(?:['’]ll| will| can| should| would)? (?:see|know|tell|guess|spot|notice) which(?: ones?)?(?: (?:it is|they are|i mean))?(?= *(?:[.!,;]|$))",
  // A trial.
  "(?:practi[cs]e|trial|dummy|rehearsal|dry|test)[- ](?:runs?|sheets?|forms?|orders?|go|round|copy|copies|fill|data|entry|submission)",
  `${sheet} ${is} (?:${mere} )*(?:an? |for |my |the |some )?(?:practi[cs]e|trial|tests?|testing|training|exercise|experiment|rehearsal|demo|demonstration|example|illustration|template|specimen|dummy|mock)`,
  `rough (?:version|draft|idea|cut|copy|go|one|stab)|(?:my |our |the |a )first (?:attempt|go|try|stab|shot|pass|cut|version|crack)(?! (?:didn|did|at|with|on|using) (?:the|this|these|your|one|a) )`,
  `${mere} (?:testing|trying|playing|practi[cs]ing|seeing|experimenting|learning)`,
  "(?:try|trying|tried|test|testing|tested) (?:out )?(?:the|your|this|these) (?:new )?(?:forms?|sheets?|system|process|desk|portal|mailbox|address|robot)|(?:try|trying) (?:it|this|them|the (?:form|sheet)s?) out",
  "to see (?:how|if|whether|what) (?:it|this|that|the (?:forms?|system|sheets?|desk)) (?:works?|looks?|comes?|happens?|does|can|would|goes|prints?)",
  "(?:for|part of) (?:our |an? |the |my )?(?:internal |own |school )?(?:training(?! (?:rooms?|centre|center|hall|wing|suite|area|floor))|competition|exhibition|trade fair|archives?|lessons?|course|classroom project|apprentices?|portfolio)|(?:state|status) of (?:the )?(?:discussion|play|things|affairs|planning)",
  "play(?:ed|ing)? (?:around|about)|fool(?:ed|ing) around|messing (?:around|about)|(?:is|are|was|were) (?:all |mostly |still )?(?:made[- ]up|invented|fictional|imaginary|hypothetical)",
  // It is there already.
  `(?:we|i|they|he|she|you|who) (?:now |already |all |do )*(?:have|has|had|got|own|received|bought|ordered|sent|hung|installed|mounted) (?:${goods}|them|it|this|that) (?:\\p{L}+ )?(?:already|yesterday|before|back in|last (?:week|month|year|time|fall|spring|summer|winter)|from (?:you|elsewhere|them))`,
  `(?:we|i|they|he|she) (?:have |has |had |['’]ve )?already (?:have|has|had|got|own|received|bought|ordered|hung|installed|mounted|put in)`,
  `${goods} (?:(?:is|are|was|were|have been|has been) )?(?:all |now |already )*(?:came|arrived|turned up|showed up|here|in place|up on|on the wall|installed|mounted|hung|hanging|delivered|received|ordered)(?! (?:out|in|back|alright|fine|from|for|of|by (?:the|our|my) (?:owner|architect|office)))`,
  "(?:bought|ordered|got|had|found) (?:it|them|these|those|one|ours|some) (?:made |done |engraved )?(?:elsewhere|locally|online|on the internet|at the)|(?:another|a different|a local|some other|the other|an outside) (?:firm|shop|supplier|company|maker|vendor|engraver|manufacturer)",
  // Another time.
  "for (?:the |our |my )?(?:next|later|following|coming|future) (?:year|spring|summer|fall|autumn|winter|season|phase|stage|round|quarter|budget|job|project|house|month)|for (?:the )?(?:spring|summer|fall|autumn|winter)(?! (?:house|terrace|garden|room|kitchen|suite|opening))|(?:in|after|for|until) (?:the )?new year|someday|some day|down the road|(?:weeks|months|years?) (?:off|away|from now)|ahead of time|in the future|for later|(?:is|are) for next",
  // Another job.
  `(?:for|(?:is|are|was|were) from|of|belongs? to|goes (?:with|to)|part of) ${elsewhere} (?:job|project|order|building|house|site|customer|client|store|floor|branch|shop|school|church|office|hotel|contract|phase|buyer|firm)`,
  `(?:(?:is|are|was|were) (?:actually )?(?:for|from)|belongs? to) (?:my|a|an|our|her|his|somebody|someone) (?:\\p{L}+ )?(?:friend|neighbou?r|brother(?:-in-law)?|sister(?:-in-law)?|cousin|colleague|competitor)`,
  // Another one is the true one.
  "(?:from|in) the wrong (?:folder|drawer|pile|job|place)|redo(?:es|ing)|re-?named|go(?:es)? back to (?:the|when)|(?:has|have|had|shows?|uses?|used|says?) (?:still )?(?:the |her |his |its )?(?:old|older|former|previous|last \\p{L}+['’]s)|(?:is|are) the (?:right|true|correct|valid|good|actual) ones?|at the time (?:of|when)|in the meantime",
  "(?:buys?|gets?|orders?|makes?|does) (?:the |them |it |these |those )?(?:\\p{L}+ )?(?:himself|herself|themselves|itself)",
  "(?:real|true|actual|proper|correct|latest|current|better) (?:lists?|names?|ones?|sheets?|legends?|words?|wording) (?:is|are|was|were|comes?|stands?|hangs?)|mine is (?:older|old)|(?:was|were) (?:to be|going to (?:send|mail|e-?mail|forward) (?:this|it|these|them) to)",
  "as (?:an? )?(?:exercise|practi[cs]e|test|trial|experiment|homework)|(?:training|teaching|school) (?:exercise|example|purposes?)|exercise for|(?:just|only|simply) (?:wrote|put|typed|filled in) (?:something|anything|whatever|random|any|some)|so (?:that )?there(?: is|['’]s| was) something (?:in|on)|(?:get|give you|gives you|have|for) an idea|for orientation|copied (?:it|them|this|these) (?:off|from)",
  // Nobody has ordered yet.
  "bidd(?:ing|ers?)|tender(?:ing|ers?)|proposal (?:for|to)|teaser|shopping around|compar(?:e|es|ing) (?:\\p{L}+ )?(?:makers?|offers?|suppliers?|shops|vendors?|firms|engravers?)|(?:hope|hoping|expect|expecting|trying|waiting) to (?:win|get|land) (?:the|this|that) (?:job|project|contract|work)|(?:if|when|once|should) we (?:win|get|land)|lean(?:s|ing) (?:toward|to|towards)|on the fence",
  "(?:client|owner|boss|customer|manager|board|architect|designer|committee|wife|husband|partner|he|she|they) (?:is|are) (?:still |now |just |yet )*(?:thinking|considering|deciding|reading|reviewing|looking|undecided|unsure|unhappy)|(?:client|owner|boss|customer|manager|board|architect|designer|committee|replacement|successor|wife|husband|partner|he|she|they)(?: \\p{L}+){0,8}(?: will|['’]ll) (?:\\p{L}+ )?(?:look|review|decide|check|go over|read|mark|say|choose|pick)|(?:client|owner|boss|customer|manager|board|architect|designer|committee|pastor|principal|director|wife|husband|partner) (?:still |also |only )?(?:reads|reviews|checks|goes over|looks (?:at|over)|proofs|signs) (?:it|this|them|these|those|the|all|everything)|goes to the (?:board|committee|council|owner|client|city)|going to the (?:board|committee|council|city)",
  // Nobody meant what stands there.
  "(?:had|have|has) to invent|(?:i|we) (?:just |simply )?invented|padded|fill(?:ed|ing)? (?:in )?(?:the|those|some) (?:gaps|blanks|rest|holes|last)|(?:enter(?:ed)?|put|typed?|wrote|write|give|gave) (?:something|anything(?! in the wrong)|whatever|some \\p{L}+|an x)(?= *(?:$|[.,;!]|in|there|so|to|for|or))|so (?:that )?(?:the|your) (?:form|sheet|pdf) (?:would|will|lets?|takes?|took|saves?|saved)|smudg\\p{L}+|blurr\\p{L}+|illegible|unreadable|from memory(?! lane)|(?:issues?|assigns?|gives?|sends?) (?:us )?(?:the|our|its) (?:real|final|actual|proper|true)|off a napkin",
  "(?:names?|words?|legends?) (?:are|is|were|was|come|comes|came) (?:from|out of|off) (?:the (?:internet|web|other|old|last|former)|an? (?:movie|film|book|song|game)|another|memory|my head)|(?:us(?:e|ed)|took|take|copied) (?:the|some|its|their) (?:\\p{L}+ )?(?:from|off|of) (?:the (?:other|old|last|former)|another)|left (?:over )?from (?:the|our|my|a) (?:other|old|last|former|earlier)|(?:came|comes|were|was|stood|had some \\p{L}+) (?:with|in|on) (?:the|your) (?:forms?|template|sample)|on the template|april fools?|kidding|for (?:laughs|a laugh|the fun of it)|silly (?:names?|words?|legends?)|practi[cs]ing|(?:last (?:week|month|year|spring|summer|fall|winter)|yesterday|monday)['’]s (?:plans?|lists?|drawings?|names?|sheets?)",
  "wrong (?:attachments?|files?|sheets?|forms?|pdfs?|ones?|letter|mail|e-?mail)(?! (?:earlier|before|yesterday|last time|this morning|just now|the first time))|shut ?down|arbitration|under water|let go|laid off|(?:i|he|she|they|who) (?:quit|resigned|was fired)|stop[- ]work",
  // A copy.
  "(?<!(?:kept|keep|keeping|printed|have|took) (?:an? |the )?)(?:an? (?:exact |second |plain |clean )?|the )?(?:copy|duplicate|repeat|rerun|re-?send|twin|double) of (?:the |my |our |your )?(?:what|that|one|ones|last|earlier|previous|same|other|first|sheets?|orders?|forms?|one)",
  "for (?:your|our|my|the) (?:records?|files?|information|reference|archives?) only|(?:just|only) for (?:your|our|my|the) (?:records?|files?|information|reference|archives?)",
  // The job is no more, or not yet.
  `${place} (?:is|are|was|were|has been|have been|['’]s|got|just|has|have|have just|has just|will be|may be) (?:now |just |being |already |been |all |sadly |unfortunately )*(?:sold|gone|demolished|torn down|condemned|flooded|foreclosed|evicted|insolvent|dissolved|over|lost|off|up (?:in|for)|ending|ended|closing|closed(?! (?:on|for(?! good)|from|between|till|until|over|at|early|today|tomorrow|\\p{L}+days?|\\p{L}+ber|\\d|△)(?!\\p{L}))|vacant|empty|leaving|dead|shut|stalled|stopped|in (?:dispute|limbo|doubt|court|trouble|receivership|probate)|under review|being re-?designed|changing hands|changed hands)`,
  `${place} (?:ends|ended|ran out|runs out|expires?|expired|fell through|falls through|collapsed|folded|died|quit|passed away|walked away|pulled out|backed out|went (?:under|bust|broke|to|away|elsewhere)|changed hands|changes hands|burned|burnt|flooded|left (?:us|the)|stopped|has left|have left)`,
  "(?:lost|losing|lose) (?:the|this|that|our|a) (?:job|bid|contract|client|tender|project|lease|customer|building|tenant)",
  "(?:one|two|three|some|most|half|part|parts|none|both|all) of (?:the|those|these|our) (?:rooms?|buildings?|walls?|floors?|doors?|houses?|units?|suites?|stations?) (?:is|are|was|were|has|have|got|went|fell|will be) (?:been |now )?(?:gone|out|cut|dropped|merged|removed|demolished|closed|sold|combined|away|off|taken)",
  "(?:phase|floor|level|wing|area|scope|alternate)(?: \\p{L}{1,2}| \\d+)? (?:is|are|was|got|went|has gone) (?:now )?(?:out|off|gone|dropped|cut)(?![- ]\\p{L})",
  // What it depends on.
  "(?:attached|enclosed|sheets?|forms?|order|names|legends|wording)(?: [\\p{L}-]+){0,5} for (?:your |our |their |his |her )?(?:comments?|thoughts|opinion|feedback|input|two cents)",
  "(?<!(?:approved|got|have|found) (?:the |our )?)(?:funding|financing)|mortgage|escrow|(?:the|our|a) (?:loan|grant|bank|board|council|committee|vestry|trustees|condo board|inspector) (?:(?:is|are) (?:still|meeting|voting|deciding|looking|against|divided)|(?:has|have) (?:yet|to|still)|still|meets|meet|votes?|decides?|will|must|may)|zoning|(?:the|a|until the) hearing(?: |$)|lawsuit|in dispute",
);

/** Whether words tell of something after which what came may not be made as it is. */
export function undoes(said: string): boolean {
  return undone.test(said);
}
