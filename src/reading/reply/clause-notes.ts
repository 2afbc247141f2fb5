import {
  capital,
  capitals,
  type Form,
  form,
  type Groups,
  isWritten,
  mark,
  numbersIn,
  ofIt,
  saying,
  sheetFor,
  wordIn,
} from "./clause.ts";
import {
  all,
  at,
  comes,
  counts,
  field,
  forNumbers,
  inCapitals,
  inFinish,
  it,
  noWord,
  numbers,
  person,
  rest,
  sheet,
  sheetName,
  when,
  words,
  wrong,
} from "./clause-words.ts";
import { atCapitals, atExchanged, atNear, atSame, atSeveral, type Fits, isOnNone, ofFinish } from "./fits.ts";

/*
 * Clauses that stand around a no: what comes with the sheet, what stands on it, and how the slip came about. What stands
 * on it is held against the sheet that comes, or is asked again.
 */

const subject = `(?:${at}:? )?(?<of>${numbers})`;
const also = "(?: (?:this time|too|as well|also|now|again|here|there))*";
const been = "(?:(?:is|are|was|were|has been|have been|got) )?(?:now )?(?:all |both )?";
const mended =
  "(?:corrected|fixed|revised|shortened|amended|updated|redone|put right|sorted|cleaned up|abbreviated)";
const legends =
  "(?:(?:the|both|all|two|three|long|longer|button|plate|device) )*(?:legend|text|name|label|wording|word)s?";
const overRows = "(?:up )?(?:over|across|on|onto|into|between) (?:the |both )*(?:two |2 )?(?:rows|lines)";
const filled = "(?:filled(?: in| out)?|added|completed?|entered|ticked|corrected|fixed|there|in|on it|in it)";
const fields = `(?:(?:the|our|my|its|it is|a|right|correct|full|complete|missing|proper|real|new) )*${field}(?: ${been}${filled})?`;
/** What was mended, in a list of such: "the city", "shorter names", "the legend split over two rows". */
const mendedThing = `(?:${fields}|(?:the )?(?:shorter|shortened|abbreviated) ${legends}|${legends} ${been}(?:(?:split|spread|put|broken|wrapped) ${overRows}|${mended})|(?:the |all |my |our )*(?:corrections?|fix(?:es)?|changes?)(?: (?:made|done|in))?)`;
const written = String.raw`(?!(?:and|with|on|in|for|to|from)(?!\p{L}))[\p{L}\p{N}&'/-]+`;
const legend = `${written}(?: ${written}){0,3}`;
const carry = `(?:${mendedThing}|${legend})`;
const isMended = new RegExp(`^${mendedThing}$`, "iu");
const behind = new RegExp(` ${mended}$`, "iu");

/** Words of legends in a list of what stands on a sheet: "the city, HUDDLE and BOARDROOM corrected". */
const carried = (list = ""): readonly string[] =>
  list
    .split(/, (?:and )?| and /u)
    .filter((one) => !isMended.test(one))
    .map((one) =>
      one
        .replace(behind, "")
        .replace(/ (?:today|tomorrow|tonight|shortly|later)$/u, "")
        .replace(/(?<=^\p{Lu}+ )the word$|^the word(?= \p{Lu}+$)/u, "W"),
    );

/** How many sheets a question about a mark wants, and what tells that one for each comes. */
const count = `(?<count>${counts.slice(1).join("|")}|\\d{1,2})`;
export const severalSheets = `(?:(?:(?:i|we) )?(?:(?:will|have|am|are|going to) )*(?:send|sending|sent|attach|attached|attaching|enclose|enclosed|make out|make|do|fill in|fill out|prepare|submit) (?:you )?(?:the |all )?${count} (?:(?:new|separate|single|individual|own) )*(?:sheets|forms|pdfs)|${count.replace("count", "some")} (?:(?:new|separate|single|individual|own) )*(?:sheets|forms|pdfs) (?:${comes}|${when}))(?: (?:${comes}|${when}))*`;
const asMany: Fits = (question, { groups }) => {
  const [, asked] = /“[^”]*?(\d{1,2})[^”\d]*” *, which seems to ask for several\./u.exec(question) ?? [];
  const said = groups?.["count"] ?? groups?.["some"] ?? "";
  return asked !== undefined && (counts.indexOf(said.toLowerCase()) + 1 || Number(said)) === Number(asked);
};
const forEach =
  "(?:(?:each|all) )?(?:with (?:their|its|it is) own (?:station )?(?:marks?|names?|numbers?)|one (?:(?:sheet )?(?:for|per) )?(?:each|every|station)(?: (?:one|station|mark|of them|device))?)";

/** Sheets that are promised without a word for sending: "you will have the sheets on Monday". */
export const promised = `(?:(?:(?:i|we) )?(?:will|going to) get (?:you )?${sheet}(?: (?:to|over to|back to|out to) you| over| back| out)?(?: ${when})*|you will (?:have|get|receive) ${sheet}(?: ${when})*|(?:(?:still|am|are|i am|we are|now) )*working on (?:(?:the |a )?(?:corrected |new |revised )*(?:sheet|one)|it|that(?: one)?|the other(?: one)?)(?: ${when})*|(?:(?:(?:i|we) )?(?:will|am|are|going to) )?(?:redoing|redo|retyping|retype|correcting|revising) the (?:\\p{L}+ )?(?:one|sheet|form)(?: with (?:the )?(?:shorter|right|correct) (?:names?|words?|legends?|spellings?))?(?: ${when})*|(?:(?:i|we) )?(?:will|shall|going to) (?:have|get) (?:my|our|the) \\p{L}+ (?:to )?(?:make(?: up| out)?|do|redo|send|fill (?:in|out)|type(?: up| out)?) ${sheet}(?: ${when})*)`;
const away =
  "(?:(?:i am |we are )(?:out |away |stuck )*(?:on (?:a job|(?:the )?site|the road|holiday|leave)|out of (?:the )?office)(?: (?:til|till|until) (?:then|tomorrow|\\p{L}+day))?|(?:out |away |stuck )*(?:on (?:a job|(?:the )?site|the road|holiday|leave)|out of (?:the )?office) (?:til|till|until) (?:then|tomorrow|\\p{L}+day))";

const letter = String.raw`(?:(?:an?|the|one|its|it is|that|two|(?:first|second|third|last|other)) )+(?:\p{L}|letters?|vowels?)(?!\p{L})`;
const missed = `(?:missed|missing|forgot|forgotten|dropped|left out|left off|lost|swapped|skipped|short of) (?:out )?${letter}(?: (?:somewhere|again|there|on the way|in it|in there))?`;
const self =
  "(?:(?:just|only|all) )?(?:me|us) (?:not (?:looking|reading|checking|paying attention|thinking)|typing(?: too)?(?: fast| quickly)?|being (?:careless|sloppy|daft|hasty|silly|lazy)|rushing)";
/** The question, where it is the only one. */
const oneAsked = wordIn("all 1");
/** How a slip came about, of which nothing follows. */
const slips = `(?:${[
  `(?:(?:i|we|he|she|it|that|somebody|someone) )?(?:(?:just|have|had|has|must have|is|was|clearly) )*${missed}`,
  `(?:(?:it|that|this)(?: one)? (?:is|was) )?${self}`,
  "(?:that|this|it)(?: one)? (?:is|was) (?:on|down to) (?:me|us)",
  "(?:the )?caps ?lock (?:was|came|got|went|is) (?:on|off|stuck)(?: half ?way)?|(?:(?:i|we) )?(?:had|left) (?:the )?caps ?lock (?:on|off)(?: for (?:half|part|some)(?: of (?:it|them|the sheet))?)?",
  "(?:(?:i|we|he|she|(?:my|our|the) \\p{L}+) )?typed (?:it|that|this|them)(?: up| out)? (?:in (?:the|a|my) (?:van|truck|car|rush|hurry)|on (?:my|the|a) (?:phone|train|roof|tablet)|too (?:fast|quickly)|late at night|half asleep)",
  "typing(?: too)? (?:fast|quickly)|spelling (?:(?:was|is) (?:never|not)|never (?:was|has been)|(?:is not|isn'?t|was not|wasn'?t)(?: really)?) my (?:thing|strong (?:point|suit))|(?:(?:that|this|it) )?(?:was|is) (?:not|hardly|clearly not) my (?:best|finest|brightest|proudest) (?:day|hour|moment|work|typing|effort)|d'?uh|doh|oh dear|(?:i|we) (?:cannot|can'?t|never could) (?:spell|type)|auto-?correct(?: (?:again|got me|strikes again))?",
  "(?:(?:i|we) )?(?:did not|didn'?t) (?:see|notice|spot|catch) (?:it|that|this|them)",
  "(?:very |so )?(?:sorry|apologies) (?:for|about) (?:that|it|this|those|the (?:mistakes?|errors?|typos?|slips?|mix-?up))",
  "(?:(?:ok|okay),? )?(?:understood|noted|point taken|fair enough|will do)",
].join("|")})`;
const ownEach =
  "(?:(?:i|we) )?(?:did not|didn'?t|had not|hadn'?t) (?:realise|realize|know|see|understand)(?: that)? (?:it (?:was|is) one sheet (?:per|for each) (?:station|mark|device|one)|you (?:need|needed|want|wanted)|(?:each|every one)(?: of them)? (?:needs|needed)) (?:(?:a|its own|one|separate) )*(?:sheets? )?(?:each|for each(?: one)?|sheet)";

const alike = `(?:(?:${it}|all|everything) )?(?:(?:should|must|ought to) (?:all |both )?(?:match|be (?:consistent|alike|the same|uniform))|(?:now )?match(?:es)?)(?: (?:the )?(?:others?|other (?:two|three|four)|rest|plate|device))?`;
const atUnlike: Fits = (question, found) =>
  atCapitals(question, found) || /^The (?:finish|device|plate) is /u.test(question);
const noneRight =
  "(?:(?:is|are|was|were) )?(?:right|correct|ok|okay|meant(?: so)?|intended|fine|as (?:i|we) (?:meant|wanted))";
const wantsOther = `(?:${person}) (?:(?:now|has|have) )*(?:wants?|wanted|chose|chosen|prefers?|went with|gone with|gone for|settled on|decided on|opted for|calls? it|(?:changed|renamed) (?:it|that|the name)(?: to)?) ${words}`;
const gone = `(?!we |i )(?:${person}) (?:(?:has|have|had) )?(?:gone off (?:it|that(?: one)?|the (?:word|name)|that (?:word|name))|changed (?:it|that|the (?:name|word|wording))|changed (?:his|her|their) minds? (?:on|about) the (?:name|word|wording|legend)|renamed (?:it|that|the room)|decided against (?:it|that))`;
const renamed = `(?:the|that|this) (?:room|button|space|area|hall|place|one) (?:is|has been|was|will be|is going to be) (?:now )?(?:to be )?(?:called|named|renamed|known as)(?: to| now)? ${words}`;

/** What shall stand there, in capitals. */
const ofCapitals = ({ words: said = "" }: Groups): boolean =>
  isWritten({ words: said.replace(tail, "") }, capitals);
const tail = /(?: (?:instead|now|there|in the end|after all|of course|obviously))+$/u;

export const notes: readonly Form[] = [
  // "With the city, HUDDLE and BOARDROOM corrected", behind a sheet.
  form(
    `(?:with|incl\\.?|including|showing|(?:which|that|it|they) (?:now )?(?:has|have|shows?|says?|reads?)|(?:now )?(?:has|shows|says|reads)) (?<list>${carry}(?:(?:,| and|, and) ${carry})*)${also}`,
    ({ list }, whole) => ({
      kind: "carries",
      words: carried(list),
      isBehind: /^(?:with|incl)/iu.test(whole),
    }),
    { ends: true },
  ),
  form(
    `(?<list>${legend}) (?:is |are |now )*${mended}${also}`,
    ({ list }) => ({ kind: "carries", words: carried(list) }),
    {
      ends: true,
    },
  ),
  // "Corrected sheet with the billing city to follow this afternoon".
  form(
    `${sheet}${forNumbers} (?:with|incl\\.?|including) ${mendedThing}(?:(?:,| and|, and) ${mendedThing})* ${comes}(?: (?:${when}|from (?:(?:my|our|the) (?:office|colleague)|\\p{L}{2,12} in (?:accounts|purchasing|sales|the office))))*`,
    (_, whole) => sheetFor(numbersIn(whole)),
    { ends: true },
  ),
  form(
    `${sheet}${forNumbers} ${been}${mended}(?: (?:and|&) (?:re)?(?:attached|enclosed|sent))?${also}`,
    (_, whole) => sheetFor(numbersIn(whole)),
    { ends: true },
  ),
  form(
    `(?:is |are )?(?:now )?${mended} (?:and|&) (?:re)?(?:attached|enclosed|sent)${also}`,
    () => sheetFor([], true),
    { ends: true },
  ),
  form(`(?:(?:all|both|now|also|it is|they are) )*(?:attached|enclosed)${also}`, () => sheetFor([], true), {
    ends: true,
  }),
  form(
    `(?:(?:on|in) (?:the|my) (?:attached|enclosed|new|corrected|revised)(?: (?:sheets?|one|file|pdf|form))?|for (?:both|all|the) (?:positions|stations|devices|sheets|plates))${also}`,
    () => sheetFor([], true),
    { ends: true },
  ),
  // What stands on it, beside what was asked.
  form(
    `${legends}(?: (?:on|of) (?:the )?${sheet})? ${been}(?:(?:(?:split|spread|put|broken|wrapped) )?${overRows}|shortened|abbreviated)${also}|(?:i|we)(?: have)? (?:split|spread|shortened|abbreviated|broke)(?: (?:the|both|two|three|long|longer|it|them|those|ones|legends|names|texts?))+(?: ${overRows})?${also}`,
    () => sheetFor([], true),
    { ends: true },
  ),
  form(
    `(?:(?:i|we)(?: have)? )?(?:put in|filled in|filled out|added|completed|entered|wrote in|included) (?:the |our )?${field}(?: (?:on|in|to) (?:the )?${sheet})?${also}`,
    () => sheetFor([], true),
    { ends: true },
  ),
  form(
    "(?:the )?ship(?:ping)?[- ]to is (?:the )?same as (?:the )?bill(?:ing)?[- ]to|(?:(?:i|we)(?: have)? )?ticked (?:it|that|the box)",
    () => sheetFor([], true),
    { ends: true },
  ),
  // "We will send four sheets, one for each", of a mark for four.
  form(
    `(?:please |kindly |pls )?(?:see|find|refer to) (?:the |my |our )?(?:(?:attached|enclosed|second|first|other|new|corrected|revised) )+(?:sheets?|forms?|pdfs?|files?)${forNumbers}`,
    (_, whole) => sheetFor(numbersIn(whole)),
  ),
  form(promised, () => sheetFor([])),
  form(`(?:(?:still|i am|we are|am|are|now) )*working on (?<of>${numbers})(?: ${when})*`, ({ of }) => ({
    kind: "about",
    of: numbersIn(of),
  })),
  form(away, () => ({ kind: "idle" }), { ends: true }),
  form(severalSheets, () => saying(ofIt, false), { fits: asMany }),
  form(
    `(?:(?:we|i|they) (?:need|want|require)(?: all)? ${count}|${count.replace("count", "some")} (?:(?:are|is) )?(?:needed|required|wanted))(?: of (?:them|these|those))?(?: (?:in total|total|altogether))?`,
    () => saying(ofIt, false, true),
    { fits: asMany, ends: true },
  ),
  form(
    `(?:separate )?sheets for (?:all |the |each of the )*${count}(?: of them| stations)? ${comes}`,
    () => sheetFor([]),
    { fits: asMany, ends: true },
  ),
  form(
    `(?:there are|(?:it is|they are) for)(?: all)? ${count}(?: of (?:them|these|those))?`,
    () => ({ kind: "words" }),
    { fits: asMany, ends: true },
  ),
  form(
    `(?:(?:i|we)(?: have)? )?(?:(?:made|attached|sent|filled (?:in|out)) )?(?:(?:an?|one|the|separate|single|new|own) )*sheets? for each(?: (?:one|station|of them|of the ${count.replace("count", "some")}))?(?: (?:${comes}|${when}))*`,
    () => sheetFor([]),
    { fits: atSeveral, ends: true },
  ),
  form(
    `(?:(?:i|we)(?: have)? )made (?:an?|one) (?:separate )?sheet for each(?: of the ${count})?`,
    () => saying(ofIt, false, true),
    { fits: atSeveral, ends: true },
  ),
  form(forEach, () => ({ kind: "words" }), { fits: atSeveral, ends: true }),
  form(ownEach, () => ({ kind: "owns" }), { fits: atSeveral, ends: true }),
  // How the slip came about.
  form(`only ${subject} (?:${wrong})`, ({ of }) => saying(numbersIn(of), false, true), { ends: true }),
  form(
    `(?:(?:wow|oops|ouch|oh|sorry),? )?(?<of>two|three|four|five|six) (?:typos|mistakes|errors|slips)`,
    ({ of }) => ({ kind: "says", of: wordIn(`all ${of}`), is: false, needsSheet: true, alone: true }),
    { ends: true },
  ),
  form(
    `(?:thanks|thank you)(?: so much)? for (?:catching|spotting|noticing|finding|pointing out) (?<of>${numbers})`,
    ({ of }) => ({ kind: "owns", of: numbersIn(of) }),
    { ends: true },
  ),
  // "We renamed one of the 2 buttons so they can be told apart".
  form(
    `(?:(?:i|we)(?: have)? )?(?:renamed|changed|relabell?ed|reworded|retyped|corrected) one of (?:the |those |these )?(?:two )?${subject}(?: buttons| legends| ones)?(?: (?:so (?:that )?(?:they|you|people|we) can (?:be told|tell them) apart|to tell them apart|so (?:that )?they differ))?`,
    ({ of }) => saying(numbersIn(of), false, true),
    { fits: atSame, ends: true },
  ),
  // "They were swapped", where legends suit another position.
  form(
    `(?:(?:correct|right|true|indeed),? )?(?:(?:${it}|both|the two|(?:the |both |our )*(?:positions|devices|sheets|legends|names)(?: (?:of|for|on) the two)?) (?:is|are|was|were|got|has been|have been|had been|did get) (?:(?:indeed|in fact|accidentally|somehow|clearly|just) )*|(?:the )?positions (?:(?:are|were|got) )?|(?:i|we|he|she) (?:(?:had|have|got|put|typed|did|just|must have) )*(?:them |these |those |the (?:two |positions |devices |legends )*)?)(?:exchanged|swapped|transposed|reversed|switched|backwards?|mixed up|(?:the )?wrong way (?:round|around))(?: (?:the )?(?:two|positions|them))?(?: (?:over|round|around|by mistake|by accident|(?:in|on) (?:cad|excel|the (?:drawings?|plans?|list|schedule|model))))*`,
    () => saying(oneAsked, false, true),
    { fits: atExchanged, ends: true },
  ),
  form(
    `(?:(?:${it}|both|the two|(?:the |both |our )*(?:positions|devices|sheets|legends|names)) )(?:is|are) not (?:exchanged|swapped|transposed|reversed|switched|mixed up)(?: (?:over|round|around))?`,
    () => saying(oneAsked, true),
    { fits: atExchanged, ends: true },
  ),
  // "X-3 should say EXAM 3", where it stands on none.
  form(
    `(?:(?:correct|right|true|indeed),? )?(?:(?:the )?(?:(?:legend|text|plate|one|name) (?:on|of|for) )?${sheetName}|it|that|that one|the (?:second|other) one|one(?: of them)?)(?: (?:really|of course|obviously))? (?:should|must|ought to|was (?:meant|supposed) to|is (?:meant|supposed) to|needs to|has to|is) (?:(?:say|read|be|have|show|have said|have been|have read) )?(?<none>["“]?[\\p{L}\\p{N}]+(?: [\\p{L}\\p{N}]+){0,2}["”]?)(?: (?:on|for) ${sheetName})?(?: (?:of course|obviously))?`,
    () => saying(oneAsked, false, true),
    { fits: isOnNone, ends: true },
  ),
  form(slips, () => ({ kind: "owns" }), { ends: true }),
  // "Needs the dots on it", of a point that is sent again.
  form(
    `(?:(?:it|that|this|they|there) )?(?:(?:is|was|should have|just|only|needs?|wants?|missing|lacks?|missed|forgot|left out) )+(?:(?:an?|the|one|two|single|just|no) )*(?:dots?|accents?|umlauts?|hyphens?|dash(?:es)?|spaces?|apostrophes?|commas?|full stops?|letters?|\\p{L})(?: (?:on|in|over|at|after|before|between) (?:it|them|there|the (?:\\p{L}|words?)))*`,
    () => ({ kind: "words" }),
    { ends: true },
  ),
  form(
    `${subject}(?: (?:is|was|has|just|actually))*(?: ${missed}| ${self}| (?:should have|should have had|needs) ${letter}(?: in (?:it|there))?)`,
    ({ of }) => saying(numbersIn(of), false, true),
    { ends: true },
  ),
  form(
    `(?<near>\\p{L}{3,20}) (?:(?:(?:is|was|has) )?${missed}|(?:should have|needs) (?:had )?${letter})`,
    ({ near = "" }) => ({ kind: "carries", words: [near] }),
    { ends: true },
  ),
  form(
    `(?:none|neither)(?: of (?:them|these|those|it|the (?:words|names|legends)))? ${noneRight}`,
    (_, whole) => saying(wordIn(/^neither/iu.test(whole) ? "both" : "all"), false, true),
    { ends: true },
  ),
  form(`(?<of>${rest}) ${been}${mended}${also}`, ({ of }) => saying(wordIn(of), false, true), { ends: true }),
  form(`${subject} (?:is|are|=) (?:a )?${noWord}`, ({ of }) => saying(numbersIn(of), false)),
  // What is wanted there now.
  form(`${wantsOther}|${renamed}`, (groups) => (ofCapitals(groups) ? { kind: "words" } : undefined)),
  // "They should all match", where some are and some are not.
  form(alike, () => ({ kind: "should" }), { fits: atUnlike, ends: true }),
  form(
    `(?:(?:${sheet}|(?:i|we)(?: have)? (?:now )?(?:put|made|set|changed) (?:it|them|everything)(?: all| both)?) )?${inCapitals}(?: (?:${comes}|(?:on|in) (?:the|my) (?:(?:attached|new|corrected|enclosed)(?: (?:sheet|one|pdf))?|sheet(?: attached)?)))?`,
    () => ({ kind: "should" }),
    { fits: atCapitals, ends: true },
  ),
  form(
    "(?:(?:they|the two|the buttons|the legends|both|it) )?(?:do |did |should |must )?(?:need|needs|needed|have|had) (?:telling apart|to be (?:told apart|different))|(?:they|the two|both) (?:should|must) be (?:told apart|different)",
    () => ({ kind: "words" }),
    { fits: atSame, ends: true },
  ),
  form(
    `(?:the |our )?(?:device|plate|finish|colou?r|one)s? (?:(?:should|must) (?:also |all |both )?(?:be|have been)|(?:is|are|was|were) (?:meant|supposed) to be|(?:is|are) now) (?<finish>\\p{L}+(?: \\p{L}+)??)${also}`,
    ({ finish = "" }) => ({ kind: "carries", words: [finish] }),
    { ends: true },
  ),
  form(`(?:both |all )?(?:spelled|spelt|written) out(?: in full)?${also}`, () => ({ kind: "words" })),
  form(
    `${subject} (?:is|are) now (?:spelled|spelt|written) out(?: in full)?|${subject.replace("<of>", "<them>")} (?:is|are) (?:spelled|spelt|written) out(?: in full)? now`,
    ({ of, them }) => saying(numbersIn(of ?? them), false, true),
    { ends: true },
  ),
  form(`(?<of>${all}|${rest}) (?:is|are|=) (?:a )?${noWord}`, ({ of }) => saying(wordIn(of), false)),
  // "No, foyer", "RECEPTION of course".
  form("(?<near>\\p{L}{3,20})", () => ({ kind: "words" }), { fits: atNear, ends: true }),
  form(
    `(?:(?:${it} )?(?:should|must|ought to) (?:be|read|say|have been|have read) )?${words}(?: (?:of course|obviously))?`,
    ({ words: said = "" }, whole) =>
      ofCapitals({ words: said }) && /^(?:\p{L}+ )?(?:should|must|ought)|(?:course|obviously)$/iu.test(whole)
        ? { kind: "carries", words: [said.replace(tail, "")] }
        : undefined,
    { ends: true },
  ),
  form(`(?:in|to|now) ${inFinish}(?: ${when})*`, () => ({ kind: "should" }), { fits: ofFinish, ends: true }),
  form(
    `(?:the |that )?last (?:one|question|point|word|name|legend)(?: (?:${wrong}|${noWord})| (?:has |just )?${missed})`,
    () => saying({ word: "last", count: undefined }, false, true),
    { ends: true },
  ),
  form(`(?:the |our )?${field} ${been}${filled}${also}(?= and )`, () => sheetFor([], true)),
  form(gone, () => ({ kind: "words" }), { ends: true }),
  form(
    `(?:(?:it|they|these|both|that)(?: is| are)? now|(?:they|these|both) (?:are|read|say)) ${words}`,
    (groups) => (isWritten(groups, capital) ? { kind: "should" } : undefined),
  ),
  // "2 and 3 typos corrected".
  form(
    `${subject} (?:typos?|mistakes?|errors?|spellings?) (?:now )?${mended}`,
    ({ of }) => saying(numbersIn(of), false, true),
    { ends: true },
  ),
  form(
    `${subject}${mark}ticked(?: (?:it|as|the|box|plain|leave plain|blank))+`,
    ({ of }) => sheetFor(numbersIn(of), true),
    { ends: true },
  ),
  form(
    `${subject} (?:should(?: of course)?|must|ought to|(?:is|are) (?:meant|supposed) to) (?:be|say|read) ${words}`,
    ({ of, ...groups }) => (isWritten(groups, capitals) ? saying(numbersIn(of), false, true) : undefined),
    { ends: true },
  ),
  form(`${subject} (?:is|are|reads?|says?) now ${words}`, ({ of, ...groups }) =>
    isWritten(groups, capitals) ? saying(numbersIn(of), false, true) : undefined,
  ),
  form(
    `(?:the )?(?:first|second|third|other|last|top|bottom|left|right|upper|lower) (?:one|(?<of>\\d{1,2})|the word) (?:is|should (?:be|have been|read|say)|must be|was (?:meant|supposed) to be) ${words}`,
    ({ of, ...groups }) =>
      !isWritten(groups, capitals)
        ? undefined
        : of === undefined
          ? { kind: "should" }
          : saying([Number(of)], false, true),
  ),
];
