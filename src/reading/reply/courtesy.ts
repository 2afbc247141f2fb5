import { memoized } from "../../trade/memoized.ts";
import { asksFor, namesGoods, speaksOfMaking, speaksOfTrade, turnsIn } from "./cues.ts";
import { understood } from "./tallies.ts";

/** A fact or a name that is known. */
const known = `[${understood.fact}${understood.name}]`;

const please = "(?:please|pls|plz|kindly|just)";
const me = "(?:me|us|him|her|the undersigned)";
const sheets =
  "(?:(?:order|engraving|device|plate|station|pdf|purchase) )?(?:ones?|sheets?|forms?|files?|copy|copies|version|devices?|plates?|orders?|attachments?|pdfs?|pos?|documents?|set|emails?|letter|mail)";
const fixed =
  "(?:corrected|correct|revised|updated|fixed|amended|completed|complete|edited|changed|modified|missing|forgotten|remaining|final)";
const contact =
  "(?:call|contact|phone|ring|text|e-?mail|write(?: to)?|reach(?: out(?: to)?)?|get in touch(?: with)?|get back to|tell|inform|notify|advise|shout|ask|reply(?: to)?|revert|drop (?:me|us) a line|give (?:me|us) a (?:call|ring|shout|buzz))";
const amiss =
  "(?:wrong|missing|unclear|off|amiss|incorrect|incomplete|not (?:right|clear|ok(?:ay)?|correct)|needed|else(?: is)? needed|required)";

/** What people say around their matter and that has a word which might be a wish. Each is taken out as a whole. */
const courtesies = [
  `(?:${please} )?(?:treat|handle|process|enter) (?:them |these |those |each |both )?(?:separately|as (?:two|three|separate) orders?|one by one)`,
  `(?:for|of|at|from) (?:two |three |four |several )?different (?:sites?|projects?|jobs?|orders?|rooms?|floors?|areas?|buildings?|customers?|clients?|locations?)`,
  `sorry,? ${known} is (?:right|correct)`,
  `(?:first|second|third|next|last|one)(?: (?:station|one|order|plate|device|sheet|keypad))? (?:of (?:several|many|two|three|four|a few|them)|for (?:now|today))|(?:first|second|next) (?:station|order|plate|device|sheet|keypad|floor|phase|project)`,
  `(?:on|under|with|for) (?:it |them )?(?:a|an|its|their|the|this) (?:own |new |same |separate |different |second )?(?:order |po |purchase order |job )?numbers?|(?:a|the) new (?:order |po |job )?number(?: for (?:it|this|them|these))?`,
  `(?:the )?(?:client|customer|owner|contractor|architect|boss|office|librarian|tenant|school|team|we|i|he|she|they)(?: has| have|'ve| just| now)* (?:wants?|needs?|added|ordered|asked for|would like|requested|wanted|need(?:ed)?) ${understood.tally}`,
  `(?:because|due|since|as)(?: of| to)? (?:the |their |its )?(?:file )?(?:size|limit|(?:e-?mail )?size limits?|they (?:are|were) (?:too )?(?:large|big))(?: of (?:the|our) (?:files?|mail(?:box)?))?`,
  `(?:filled (?:in|out)|done|completed) (?:like|as|(?:just )?the way) you (?:say|said|asked|wrote|showed|told|explained|taught)(?: (?:me|us))?`,
  // What somebody above the sender wrote to have it ordered.
  `^(?:all )?approved(?: as (?:drawn|shown|submitted|sent))?(?=, \\p{L})|(?<=\\p{L} [-–—] )approved(?=[.!]*$)|no exceptions taken|(?:is|are) released for (?:fabrication|production|manufactur(?:e|ing)|engraving)(?=[.!]*$)|(?:the )?budget(?:'s| is) (?:fine|ok(?:ay)?|good|approved)(?: (?:with|by) (?:me|us))?|(?:^|(?<=, ))(?:so |please )?go ahead(?: and)? (?:order(?: (?:it|them|these))?|place the order|submit (?:it|them|these)|send (?:it|them|these)(?: (?:in|over|off))?)(?=[.!]|$)`,
  `(?:just )?(?:re-?)?sending (?:it |them |this |these |everything |all )?again(?: just)?(?: in case| to be (?:safe|sure))?(?=[.!]|$)`,
  `(?<!have )(?:(?:i )?forgot|forgetting|left out|missed) (?:the |to (?:add|attach|include) the |my )?(?:attachments?|files?|plates?|sheets?|last one|this one|one)`,
  `you were (?:quite )?right`,
  `(?:there|you) (?:should|will) (?:be|have|find|see) ${understood.tally} (?:sheets?|files?|forms?|pdfs?)(?: (?:inside|attached|in all|in total|altogether))?`,
  `that should (?:make|complete) (?:the|your) (?:set|order|lot)(?: complete)?(?: (?:on|at) your (?:side|end))?(?=[.!]|$)`,
  `(?:i |we )?forgot (?:to fill in )?(?:the|a|our) (?:finish|lettering|position|mark|order number|po number|project|contact|address|gangs|layout|legends?|zip(?: code)?|phone number)(?=[,.!]|$)`,
  // What our answer to a blank sheet is about: how it was saved.
  "(?:(?:the |my |our )?(?:browser|computer|viewer|reader|phone|program|forms?|files?|pdfs?)(?: had| has)? )?(?:saved|sent|came(?: out| through)?)(?: it| them)? (?:empty|blank)",
  `(?:for |direct |send |refer )?(?:all |any |further )?(?:questions|inquiries|enquiries|queries|technical questions)(?: (?:or|and) (?:concerns|comments|problems))?,? (?:please )?(?:to|contact|call|ask|e-?mail|can be directed to|should be directed to|go to|are for)`,
  `let (?:me|us) know(?: please)?`,
  `(?:green|white|black|red|blue|gold(?:en)?|silver|yellow|grey|gray|brown|orange) (?:rooms?|house|hall|suite|lounge|street|road|lane|avenue|lion|oak|building|tower|school|park|hill|wing|zone|line)`,
  `(?:in case|if) (?:you|it|they|the (?:first|last|earlier|other)(?: one| (?:e-?)?mail| message| letter)?) (?:did(?: not|n'?t)|never) (?:get|receive|come|arrive|go|got)(?: (?:it|them|through|out))*`,
  `(?:should|if) (?:any|further|more)(?: \\p{L}+){1,2} (?:be|is|are) (?:needed|required|necessary)`,
  `(?:${please} )?(?:advise|confirm|reply|acknowledge) (?:when|once|upon|on|of) (?:received|receipt|receiving|(?:you (?:have|'ve) )?(?:received|got|entered|processed)(?: (?:it|them|this|these|everything))?)`,
  `(?:you |that |this |it |they )should (?:do (?:it|the trick)|have (?:everything|it all|them all|all of (?:it|them)|all you need))(?: now)?`,
  `(?:${please} )?feel free to ${contact}(?: ${me})?`,
  `(?:${please} )?(?:do not|don'?t|never) hesitate to ${contact}(?: ${me})?(?: (?:if|with|should) (?:you have )?(?:any |further )?(?:questions?|concerns?|problems?))?`,
  // "Let me know if you have any questions", "do not hesitate to call", "call if anything is missing".
  `(?:if|should|in case) (?:you (?:should )?(?:have|need|see|find|got|require) |there (?:are|is|'s|should be) |you )?(?:any(?:thing)?|something|a|further|more|(?=questions))(?: ?(?:other|further|more|additional))?(?: ?(?:questions?|queries|problems?|issues?|concerns?|comments?|trouble|clarifications?|information|info|details?|else|question))?(?:(?:'s| is| be| was| are| looks| seems) ${amiss})?(?: (?:with|about|on|regarding|concerning) (?:the |these |those |this |any of the |our |my )?(?:sheets?|forms?|order|files?|attached|attachments?|above|this|it|them))?(?:,? ${please})?(?:,? ${contact}(?: ${me})?(?: know)?| let (?:me|us) know)?(?: and (?:i|we)(?: will|'ll) (?:correct|fix|change|resend|send|mend|update)(?: (?:it|them|that))?)?`,
  `(?:do |have )?(?:you have )?(?:any )?questions\\??$`,
  `(?:(?:i|we) )?(?:am |are )?(?:await(?:ing|s)?|waiting for|wait for|look(?:ing)? out for) your (?:kind |order |early )?(?:confirmation|acknowledge?ment|reply|answer|response|feedback|comments|news)`,
  // Asks for what this desk does anyway.
  `(?:${please} )?(?:also )?(?:send|provide|give|e-?mail|reply with|return)(?: (?:me|us))?(?: an?| your| the| me an)?(?: written| order| receipt| signed)? ?(?:acknowledge?ment|confirmation)(?: of receipt| of this order| of order)?(?: (?:by (?:reply|return|e-?mail)|to this (?:e-?mail|address)))?`,
  `(?:${please} )?(?:confirm|acknowledge|advise|verify)(?: (?:the|safe|your))? (?:receipt|reception)(?: of (?:the same|this|these|the|all|my|our)(?: (?:order|sheets|email|files|attached|attachments?))?)?(?: by (?:e-?mail|return|reply))?`,
  `(?:${please} )?(?:confirm|reply|let (?:me|us) know|acknowledge)(?: back)?(?: (?:that|when|once|if))? you(?: have|'ve)? (?:received?|got|get|have)(?: (?:it|them|this|these|everything|all|the (?:sheets|order|files|email)|this (?:order|email)))?(?: ok(?:ay)?)?`,
  `(?:i|we)(?:'ve| have)? never (?:done|used|tried|seen|filled|ordered from|worked with|dealt with) [^.,;!?]{1,30}`,
  `(?:i'?m |i am |we'?re )?not (?:quite |really )?sure (?:how|why|what happened)`,
  `first off|first of all|no rush (?:on |in )?(?:replying|answering|(?:your|a) (?:reply|answer))`,
  `please be (?:informed|advised|aware) that|says? (?:hi|hello)|in the wrong (?:box|field|place|spot|line)`,
  `can'?t wait(?: to (?:see|get|have|put) [^.,;!?]{1,30})?`,
  `finally (?:approved|signed(?: off)?|agreed|decided|released|made up \\p{L}+ minds?|got (?:approval|approved|sign-?off))(?: (?:on|the funding|the budget))?`,
  `${please} confirm(?=[.!]*$)`,
  `(?:${please} )?(?:treat|consider|take|accept) this(?: (?:e-?mail|letter|message))? as (?:our|my|the|an) (?:official |formal |firm )?(?:purchase )?order`,
  `(?:do|doing) the needful`,
  `for (?:your )?(?:kind |further |quick |prompt )?(?:review|processing|records?|information|info|reference|attention|files?|consideration|perusal|action|handling|convenience|entry|use)(?: and (?:processing|review|action|records|files))?`,
  // Mended sheets.
  `${fixed} (?:and (?:attached|resent|complete) )?${sheets}`,
  `(?:spellings?|typos?|slips?|error|errors|mistakes?|it|that|this|they|both|those|these|everything|all|all of (?:it|them)|sheets?|number|row|rows|legend|legends|name|mark|address|phone|position|word|words)(?: (?:is|are|was|were|has been|have been|should be))?(?: now)?(?: all)? (?:corrected|fixed|updated|mended|shortened|retyped|redone|sorted(?: out)?|filled(?: in)?|completed?|there|right now)`,
  `(?:i|we)(?:'ve| have)?(?: now)? (?:corrected|fixed|revised|updated|mended|shortened|filled(?: (?:in|out))?|completed|redone|retyped|re-?saved|made the corrections? (?:to|on|in)|made the changes)(?: (?:it|them|all|both|everything|the (?:sheets?|forms?|errors?|typos?|mistakes?|fields?|rows?|missing (?:fields?|parts?))|what you (?:asked|listed|marked|said)))?`,
  `(?:corrected|fixed|revised|updated|done|redone|mended|shortened)(?: (?:now|as (?:you )?(?:asked|requested|noted|marked|suggested|instructed)|and (?:attached|resent|back)))*`,
  `(?:as )?per (?:your|our|the|my|\\p{L}+'s|${known}) (?:[\\p{L}'’]+ ){0,3}?(?:comments?|notes?|corrections?|requests?|e-?mails?|feedback|answers?|reply|replies|calls?|conversation|discussion|instructions?|list|message|telecon|chat|talk|meeting|text|voicemail|approved schedule|schedule|drawings?|telephone conversation)`,
  `as (?:you )?(?:requested|asked(?: for)?|discussed|promised|agreed|mentioned|noted|instructed|specified (?:in|on) (?:the )?(?:attached )?(?:sheets|forms)|always|usual)`,
  `(?:i |we )?(?:must have |have )?(?:typed|put|wrote|had|left) (?:in )?(?:one|a|two) (?:letters?|characters?|digits?|words?) too (?:many|much|few)|too (?:many|much|few) (?:letters?|characters?|digits?|words?|rows?)(?: (?:on|in|for) [^.,;]{1,30})?`,
  `instead of (?:the |a )?(?:calling|writing|e-?mailing|phoning|faxing|mailing|typing|scans?|photos?|pictures?|paper|(?:the |a |our )?spreadsheets?|lists?|handwrit\\p{L}+|fax(?:es)?|jpe?gs?|word (?:files?|documents?)|excel)`,
  `(?:this one )?(?:now )?(?:has|with) the (?:writing|text|typing|entries) in it`,
  `(?:all |the |every ?thing )+(?:others?|else|rest|remaining (?:ones|sheets)|other sheets)? ?(?:stays?|remains?|is|are) (?:the same|unchanged|as (?:it|they) (?:is|are|was|were)|as (?:before|sent))`,
  `(?:they|it|these|this|those|files?|pdfs?)(?: all)? (?:should|will|ought to)(?: (?:now|all))* (?:open|work|come through|be readable|load|display)(?: (?:properly|correctly|fine|ok(?:ay)?|now|this time|well))*|(?:hope|hoping) (?:they|it|these|this)(?: all| now)* (?:opens?|works?|comes? through|loads?)(?: (?:properly|correctly|fine|ok(?:ay)?|now|this time|well))*`,
  `(?:^|${please} )try (?:this|these|it|the attached)(?: (?:one|ones|again))?`,
  `(?:wrong|empty|old|incorrect) (?:attachments?|files?|version|sheets?|pdfs?|e-?mail|address)(?: (?:earlier|before|yesterday|last time|this morning|just now|attached))*`,
  // Sorry, thanks.
  `(?:please )?(?:excuse|forgive|pardon) (?:any |the |my )?(?:typos?|brevity|errors?|spelling|short(?:ness)?|tardiness)(?: and (?:typos?|brevity))?`,
  `(?:much|very much|really|we|i|would be)? ?(?:greatly |really |truly |highly )?appreciat(?:e|ed)(?: (?:it|that|this|your (?:business|help|time|patience|support|assistance|work|quick response)|all (?:you|your) (?:do|help)))?`,
  `(?:perfect|great|excellent|awesome|super|lovely|brilliant|wonderful|got it|received|noted|understood|will do|no problem|no worries|you'?re welcome|sounds good|good|cool|fantastic|i see|fine)[,.! ]*(?:thanks?(?: you)?)?$`,
  `long time no (?:see|hear|talk)|(?:please )?(?:say (?:hi|hello)|give my (?:best|regards)|my regards|regards) to \\p{L}+|(?:see|talk to|speak to) you (?:soon|later|then|next week)|talk soon|take care|stay (?:safe|well|warm|healthy)|god bless|bless you|cheers,? mate|by the way|btw|no rush at all|(?:there's |there is )?no (?:rush|hurry)(?: (?:on|for|with|about) (?:these|this|them|it|those)(?: (?:ones?|two|three|sheets?))?)?(?: at all)?(?=[.!]*$)`,
  "(?:there'?s |there is )?no need to (?:write|reply|respond|answer|call|get back)(?: back)?(?: to (?:me|us|this))?(?=[.!,]|$)",
  "look(?:ing?|in['’])? forward to seeing (?:them|it|these)(?: (?:all|up|in place|installed|finished|lit up|in person|on the walls?))*(?=[.!,]|$)",
  "(?:the|your) last (?:ones|batch|set|order|plates|job)(?: (?:that )?you (?:made|did|sent|cut)(?: for (?:us|me))?)? (?:look(?:ed)?|came out|turned out|were|was|are) (?:really |so |just )?(?:great|perfect(?:ly)?|beautiful(?:ly)?|good|fantastic|lovely|nice|super)(?: on the walls?)?(?=[.!]|$)",
  // Somebody above the sender has said yes, and all is as the sheets have it.
  `(?:the |our |my )?(?:boards?|owners?|clients?|customers?|architects?|arch|gc|boss|committee|director|principal|pm|office|everybody|everyone|we all)(?: has| have| had|'s)?(?: now| all| already| since)? (?:approved|okayed|ok'd|signed off(?: on)?|blessed|cleared|initialled|initialed)(?: (?:it|them|this|these|everything|all|all (?:of|four of) (?:it|them|these)|(?:all )?the (?:sheets|names|legends|words|wording|order)))?(?: as (?:it|they|everything) stands?(?: there| here)?)?(?: (?:today|yesterday|this morning|last (?:week|night)))?(?=[.,!]|$)`,
  `(?:all |every )?box(?:es)? ticked|(?:sheets? (?:is|are) )?as approved(?=[.!,]|$)|(?:all )?good to go(?=[.!]|$)|over and out|counted (?:twice|them twice|them)`,
  `(?:${please} )?(?:make|do|engrave|cut|build)(?: (?:them|it|these|this|all|everything))? (?:(?:exactly |just )?(?:as|like|what) (?:it|they|the sheets?) (?:says?|stands?|reads?)|as per (?:the |our |attached )*sheets?|as (?:shown|drawn|typed|filled in|attached|per attached))(?=[.!,]|$)|(?:as|like|just as|just like) (?:it|they|the sheets?) says?(?: (?:there|on (?:it|them|the sheets?)))?(?=[.!,]|$)`,
  `(?:please )?(?:excuse|forgive|pardon) (?:the|my|this) (?:informal|short|late|hasty|quick|brief|long) (?:note|e-?mail|mail|message|letter)|(?:the|our|my) (?:po|p\\.o\\.|order|project|job) (?:number|no\\.?|name) (?:is|stands) on (?:the|each|every) sheets?(?:,? (?:at the )?(?:top|bottom)(?: (?:right|left))?)?(?=[.,!]|$)`,
  `no (?:reply|answer|response) (?:needed|necessary|required|expected)|(?:have a |a )?(?:good|great|nice|lovely) w(?:ee)?k-?(?:e?nd)`,
  `(?:excuse|forgive|pardon|sorry for|sorry about) ${please}? ?(?:the|my|our) (?:delay|lateness|late (?:reply|answer|e-?mail|mail))`,
  // Small talk.
  `(?:is |am |are |was |'s |'m |out )?on (?:maternity |paternity |parental |family |sick |medical )?leave(?: (?:until|till|from|since|this|next|for) [^.,;!?]{1,20})?|(?:still )?can'?t (?:quite )?believe (?:that|the|how)(?= [^.;!?]*(?:game|weather|heat|snow|summer|week|year|time|day))`,
  `(?:we |i )?(?:am |are )?(?:look(?:ing)?|looks) forward to (?:hear(?:ing)?|work(?:ing)?|your|receiv(?:e|ing)|do(?:ing)?|see(?:ing)?|it)(?: (?:from|with|more|business|reply|answer|response|confirmation|you|your|soon|again|(?:order )?acknowledge?ment))*`,
  `(?:for |of |from |at |in |with )?(?:the )?same (?:client|company|person|customer|project|job|site|building|number|house|contact|address(?:es)?|e-?mail)`,
  `double[- ]check(?:ed|ing)?|(?:i |we )(?:'ve |have |had to )?split (?:them|it|this|these|the (?:files|sheets))(?: up)?(?: (?:in|into|over) (?:two|three|four|several)(?: e-?mails?| parts?| letters?)?)?`,
  `each (?:file|pdf|sheet|form|attachment)(?: (?:is|has|shows)(?: (?:its|the|named|own|name|called|labell?ed|after|by))*)?`,
  `(?:i |we )?(?:do not|don't) have (?:anything|any (?:questions|comments|remarks|changes)) ?(?:to add|else|further|more)?|nothing (?:to add|special|fancy|unusual|complicated|crazy|exotic|else|new|unusual|further|out of the ordinary)(?: (?:from (?:my|our) (?:side|end)|this time|here))?|no (?:questions|comments|remarks|changes|special requests|notes|surprises)(?: (?:from (?:my|our|me|us)(?: (?:side|end))?|this time|here|at the moment|for now))*`,
  `(?:as|since|because|if|in case) you (?:could(?:n't| not)|can(?:'t|not| not)|were(?:n't| not) able to|are unable to|have trouble|had trouble) (?:open(?:ing)?|read(?:ing)?|see|view|print|download)(?:ing)? (?:them|it|these|this|the (?:files?|attachments?|pdfs?|sheets?))`,
  `(?:and )?(?:i|we)(?:'ll| will| can) (?:re-?send|try)(?: (?:it|them|again|another way|in another (?:format|way)|a new one|once more))*|(?:and )?(?:i|we)(?:'ll| will| can) send (?:it|them)(?: (?:again|another way|in another (?:format|way)|once more|over))+`,
  `(?:good|nice|great) (?:catch|spot|one|job|work)|wow(?:,? that was (?:fast|quick))?|d'oh|argh|ugh|yikes|(?:am i |did i |are we )?(?:missing|forget(?:ting)?|miss) any ?thing\\??|(?:sorry,? )?(?:i|we) thought (?:i|we)(?: had|'d| have)? (?:included|attached|sent|added) (?:it|them|those|that|these)|any (?:trouble|bother|snags?),? (?:just )?(?:${contact}|give (?:me|us) a bell)(?: ${me})?`,
  `(?:with|for) (?:(?:any |further |all )?(?:questions|concerns|queries)|(?:any|further|all) comments)(?: (?:or|and) (?:questions|concerns|comments|problems|issues))?|according to (?:your|our|the) (?:remarks|comments|notes|answer|e-?mail|message|list|instructions|corrections|feedback)|enjoy(?=[!.]*$)|replacements? (?:sheets? )?for the (?:one|sheet|file)(?: with the (?:error|mistake|slip|typo))?`,
  // Files that come in several letters.
  `(?:i'?m |we'?re |i am )?not (?:quite |really )?sure (?:if |whether |that )?(?:the |my |our |this |these |those |it |they |you )(?:first |last |previous |other |earlier )?(?:one |ones |e-?mail |mail |files? |sheets? |got |message )?(?:went|go|came|got|come|gone|get|made it|through|out|received)(?: (?:went|through|out|across|over|it|them|this morning|yesterday|today))*`,
  `(?:the |these |those |my |our |all )?(?:rest|others?|remaining|balance|remainder|devices?|plates?|sheets?|next|second|third|fourth|last|fifth|first|other|final|missing)(?: (?:of (?:them|it|the (?:sheets|order|set))|ones?|half|part|batch|e-?mail|letter|sheets?|devices?|plates?|set|files?|two|three|four|five|in))*,? ?(?:will |'ll |to |are |is |comes?|coming|follows?|following|should )+(?:be )?(?:follow(?:s|ing)?|come|comes|coming|sent|send|emailed|in|with you|up|done|ready|on (?:its|their|the) way)?(?: (?:in|by|with|as|to|a|an|the|my|our|this|that|another|next|second|separate|third|e-?mail|mail|message|letter|right|straight|just|soon|later|shortly|after|afterwards|today|tomorrow|week|month|afternoon|morning|evening|on|${understood.date}))*`,
  `(?:i |we )?(?:think |believe |guess )?(?:that|this|it|these|those)(?:'s| is| are| should be| completes| makes)(?: now)? (?:all|(?:the |a )?${understood.courtesy}|(?:the |a )?(?:complete|full|whole|entire) (?:set|lot|package|order|batch)|everything|it|complete|the lot|the order|the set|them all|the last(?: of (?:it|them|the sheets))?)(?: (?:of (?:it|them)|for (?:now|today|this order)))*`,
  `(?:now )?(?:they|it|this|these|that|everything)(?: all)?(?: now)? should (?:now )?(?:all )?be (?:right|ok(?:ay)?|fine|good|correct|complete|everything|all right|alright|in order|readable|there)(?: now)?`,
  `(?:the )?(?:first|second|third|fourth|last|final|next|other)(?: (?:and|or) (?:second|third|last))? (?:batch|half|part|e-?mail|floor|level|set|round|group of sheets)`,
  `(?:see |find )?attached,? ${please}(?=[.!]*$)`,
  `one (?:sheet|form|pdf|file|page) (?:for|per) (?:each |every |a )?(?:device|keypad|plate|station)(?:,? (?:and|plus) one (?:for|per) (?:each |every |a )?(?:device|keypad|plate|station))?`,
  `(?:as usual,? )?one (?:sheet |form |pdf )?(?:for|per|to) (?:each|every) (?:device|gang|keypad|single)(?:,? (?:and|plus) one (?:sheet |form |pdf )?(?:for|per|to) (?:each|every) (?:multi-gang )?plate)?`,
  // When somebody can be reached.
  `(?:i'?m|i am|we'?re|we are|i'll be|we'll be|(?:you can |feel free to )?(?:reach|call|find|get|catch) (?:me|us))(?: (?:in|at|on|out|off|away|around|here|back|available|reachable|free|of|from|until|till|til|to|through|thru|by|the|my|our|this|next|all|most|every|any|a|office|desk|shop|site|field|road|week|weeks|day|days|morning|mornings|afternoon|afternoons|evening|weekend|vacation|holiday|lunch|noon|half past|one|two|three|four|five|six|seven|eight|nine|ten|except|but|and|or|then|after|before|that|either|way|number|phone|cell|mobile|e-?mail|[ap]\\.?m\\.?|\\d{1,2}(?::\\d\\d)?|${understood.date}|${understood.name}))+(?=[,.!;]|$)`,
  `i was (?:supposed|meant|going) to (?:get|send|have) (?:them|these|it|this|the sheets) (?:to|over to|ready for) you (?:last week|yesterday|on ${understood.date}|earlier|before)`,
  `(?:excuse|forgive|pardon|sorry for|sorry about) (?:my english|the delay|the (?:late|long) \\p{L}+|the caps|caps|the (?:capitals|shouting))|trust (?:you are|this finds you) well|no(?:t much| more)(?: else)? to say(?: really)?`,
  // What stands on the sheets.
  `(?:(?:the|our|all|billing|bill-to|invoice|invoicing|shipping|ship-to|delivery|and|address(?:es)?|details|info|information|instructions?|contacts?|everything|every ?thing|everything else|required|necessary|you need) ){1,6}(?:is|are|can be found|should be|stands?|as) (?:all )?(?:given |listed |shown |noted |found |filled in )?(?:on|in) (?:the |each |every |all )?(?:sheets?|forms?|po|pdfs?|attached)`,
  `(?:order|purchase order|po|p\\.o\\.|project|job|ref(?:erence)?|our|your) ?(?:no|nr|num|number|#|name|ref)\\.? ?(?:is )?[:#]?`,
  // Who sends it.
] as const;

/** They are courtesies only if no wish hides in their open places. */
const open = [
  `(?:(?:[\\p{L}'-]+ ){0,3}(?:sheets?|forms?|pdfs?|files?|ones?|rest|others?|two|three|half|part|plates?|devices?|order|set)(?: (?:for|of|from|in|at)(?: [\\p{L}'-]+){1,3})?|${known}) (?:is|are|'s) still (?:with|at|being|open|missing|in the works|under discussion|to come|outstanding)(?: (?:the|our|my|a) [\\p{L}'-]+)?`,
  `(?:if|should|in case|when) [^.!?◇○△]{1,60}?,? (?:${please} )?(?:let (?:me|us) know|${contact}(?: ${me})?)(?=[.!]*$)`,
  `(?:let (?:me|us) know|${contact}(?: ${me})?) (?:if|when|once|whether|should|in case) [^.!?◇○△]{1,60}`,
  `(?:greetings|regards|wishes|hello) from(?: [\\p{L}.]+){1,3}`,
  "(?:(?:i|we) )?(?:would|should|wanted to|meant to)(?: have|'ve) (?:sent|gotten|got|had) (?:it|this|them|these|the sheets)(?: (?:over )?to you)?(?: (?:yesterday|sooner|earlier|before|last week|this morning))?,? but (?:my|our|the) (?:\\p{L}+ ){0,2}(?:internet|wi-?fi|computer|laptop|printer|scanner|power|phone|e-?mail|server|truck|car|kids?|day)\\b[^.;!?]{0,50}",
  `(?:there'?s |there is )?no (?:rush|hurry)(?: (?:on|for|with|about) (?:these|this|them|it|those|this one))?(?: at all)?(?: (?:on|from) (?:our|my) (?:end|side|part))?[,;]? (?:(?:since|as|because) )?(?:we|they|i)(?![^.;!?]*(?<!\\p{L})(?:you|u)(?!\\p{L}))(?: [^.;!?]{3,60})?`,
].map((one) => new RegExp(`(?<![\\p{L}\\p{N}'-])(?:${one})(?![\\p{L}\\p{N}'])`, "giu"));

const patterns = courtesies.map(
  (one) => new RegExp(`(?<![\\p{L}\\p{N}'-])(?:${one})(?![\\p{L}\\p{N}'])`, "giu"),
);

/** "Could you please confirm receipt?" asks no more than "Please confirm receipt." */
const politeQuestion =
  /^(?:could|would|can|will) (?:you|u|someone|somebody)(?: please| kindly| just)* ((?:process|confirm|acknowledge|let (?:me|us) know|check|review|enter|get|put (?:this|it|these) (?:in|through)|take a look|look|accept|advise|send (?:me|us) (?:an?|the|your) (?:\p{L}+ )?(?:confirmation|acknowledge?ment))[^?]*?)(?: please)?[?.!]*$/iu;

const greeting =
  /^(?:hi|hiya|hello|hey|heya|dear|greetings|good (?:morning|afternoon|evening|day)|g'day|morning|afternoon|evening|howdy|to whom it may concern|bonjour|bonsoir|salut|hola|buen[oa]s (?:d[ií]as|tardes|noches)|estimad[oa]s?|goede(?:morgen|middag|navond|ndag)|geachte|buon(?:giorno|asera)|bom dia|boa tarde|guten (?:morgen|tag|abend)|moin|hej|god (?:dag|morgen)|sirs?|gents|all|team)(?: there| again| all| both)?(?![\p{L}\p{N}])[,!]?((?: [^\s,!:.]+\.?,?){0,6}?)\s*(?:[,!:.–-]+(?= |$)|$)/iu;
const addressed =
  /^(?:team|all|everyone|everybody|guys|folks|there|sir|madam|sirs|or|and|&|desk|ladies|gentlemen|friends?|colleagues?|dept|department|quillgate|[◇◈])$/i;

/** Whether words behind a greeting are names, or otherwise say who is greeted. */
function areNames(words: string): boolean {
  const each = words.split(/[\s,.]+/).filter(Boolean);
  return (
    each.every((word) => addressed.test(word) || /^\p{Lu}[\p{Ll}'-]+\p{L}*$/u.test(word)) && !asksFor(words)
  );
}

const noRush = /no (?:rush|hurry)(?: (?:on|for|with|about) this one)?/giu;

/** Whether something is asked for in an open place of a courtesy. */
function hidesWish(courtesy: string): boolean {
  const whole = courtesy.replace(noRush, "");
  return speaksOfTrade(whole) || speaksOfMaking(whole) || (namesGoods(whole) && turnsIn(whole) !== "nothing");
}

const joint = /(?:^|[\s,;])(?:but|and|so|though|if)(?=[\s,]*◆)/giu;

/** Words without their courtesies. A sign stands in place of each. A courtesy that asks for something stays. */
export const withoutCourtesies = memoized((words: string): string => {
  const plainly = words
    .replace(/[’ʼ`´]/g, "'")
    .replace(/\s+/g, " ")
    .trim()
    .replace(/\b4 (?=(?:the|my|our|your|all)\b|◇)/g, "for ")
    .replace(politeQuestion, "please $1.");
  let rest = plainly.replace(greeting, (whole, names: string) => (areNames(names) ? "" : whole));
  const take = (pattern: RegExp, isTaken: (whole: string) => boolean): void => {
    rest = rest
      .replace(pattern, (whole) => (isTaken(whole) ? ` ${understood.courtesy} ` : whole))
      .replace(/ {2,}/g, " ");
  };
  for (const pattern of open) take(pattern, (whole) => !hidesWish(whole));
  for (const pattern of patterns) take(pattern, () => true);
  // "…, but let me know": a word that joins two courtesies is dropped.
  return rest.replace(joint, " ").trim();
});
