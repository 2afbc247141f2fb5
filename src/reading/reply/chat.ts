import { namesGoods, turnsIn } from "./cues.ts";
import { understood } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

/** Words with which people tell of themselves. What their customers and architects do is not their own affair. */
const own =
  /^(?:had|got|been|took|did|forgot|was|spent|went|tried|thought)\b|(?<![\p{L}\p{N}])(?:i|i['’](?:m|ve|ll|d)|im|ive|we|we['’](?:re|ve|ll|d)|(?:my|our)(?! (?:mutual |end )?(?:customers?|clients?|owners?|architects?|designers?|engineers?|inspectors?|drawings?|plans?|trucks?|drivers?|standards?|users?)\b)|mine|ours|took|myself|ourselves|yours truly|the undersigned)(?![\p{L}\p{N}'’])/iu;
/** Wishes for the reader, thanks, weather, feasts, moods. */
const social =
  /(?<![\p{L}\p{N}])(?:hop(?:e|es|ing|efully)|merci|gracias|danke|people|excited|eye|kudos|dad|mom|best|love|helpful|useful|easy|terrific|fantastic|wonderful|awesome|amazing|fun|thank\w*|thx|tnx|ty|tks|sorry|apolog\w+|happy|merry|cheers|congrat\w*|luck|lucky|weather|snow\w*|rain\w*|heat|cold|warm|weekend|holidays?|vacation|thanksgiving|christmas|easter|pleasure|pleased|glad|nice|lovely|great|greetings|regards|wishes|lol|haha\w*|whew|phew|oops|whoops|ugh|argh|folks|guys|busy|slammed|crazy|hectic|swamped|buried|enjoy|appreciate\w*|welcome|kids?|wife|husband|dog|lunch|coffee|weeks?|monday|morning|game|you (?:did|know|guys|folks|helped))(?![\p{L}\p{N}])/iu;
/** Of these the ones that thank, excuse or cheer. "People", "Monday" and "my wife" do nothing of the kind. */
const warm =
  /(?<![\p{L}\p{N}])(?:merci|gracias|danke|excited|kudos|terrific|fantastic|wonderful|awesome|amazing|thank\w*|thx|tnx|ty|tks|sorry|apolog\w+|happy|merry|cheers|congrat\w*|luck|lucky|weather|weekend|holidays?|thanksgiving|christmas|easter|pleased|glad|lovely|great|greetings|regards|wishes|lol|haha\w*|whew|phew|oops|whoops|enjoy|(?<!['’]d |would )appreciate\w*|welcome|(?:wife|husband|son|daughter|kid|dad|mom)['’]s (?:computer|laptop|phone|printer|account|e-?mail)|busy|slammed|crazy|hectic|swamped|buried|hop(?:e|ing) (?:it['’]?s|this is|these are|they['’]?re|everything['’]?s) (?:all )?(?:right|ok|okay|fine|good|correct|clear))(?![\p{L}\p{N}])/iu;
/** What is sent, described or labelled, and what is asked of this desk anyway. */
const frame =
  /^(?:the |our |a |an |one |all |just |single |two-gang |[\p{L}-]+-gang )*(?:plates?|devices?|singles?|stations?|names?|legends?|keypads?)\b[^.!?]*\b(?:for|from)\b|^the (?:gc|contractor|architect|owner|client|customer|designer) is ◈?|^(?:please |pls |kindly |just |hi,? )*(?:find|see|open|process|enter|log|review|check|refer|call|text|contact|advise|acknowledge|accept|book|handle|submit|forward|reply|receive|revert|confirm|excuse|forgive|let)\b|^(?:(?:all|just|finally|barely|only|he|she|they|you|who) )*(?:got|took|done|finished|did|had|made it|worked|filled|typed|zipped|everything|copying|adding|looping|re|attn|to|from|order|job|project|po|number)\b|(?<![\p{L}\p{N}])(?:attach\w*|attch\w*|enclos\w*|herewith|pfa|docs?|documents?|here (?:is|are|you|u|we|they|it|goes)|here(?=[.!]*$)|fyi|reply|answer|confirmation|response|here['’]?s|forward(?:ed|ing)|sending|sent|resend(?:ing)?|submit\w*|submission|transmittal|package|pass(?:ing|ed)? (?:along|on|them|it|these|this)|you came|recommended|(?:it|this|these|they|those|that|all|everything|everybody)(?: all)?(?: (?:is|are|was|were|(?:has|have) been)|['’]?s|['’]re) (?:all |now |just |only |really |quite |very |so |such |finally |indeed )*(?:(?:for|from|at|on|in|with|by|off|going in(?:to)?) (?:the|our|your|my|this|that|these|here|it|a good mood|[◇◈])|through the|me|inside|here|there|[◈◇]|the (?:stations|sheets|forms|ones?|order|switches|light|push|last|first|second|wall)|good(?! enough)|great|nice|from scratch|lovely|fun|easy|done|sent|written|filled|reviewed|checked|typed|zipped|(?:an? )?(?:(?:long|good|big|busy|nice|lovely|great|real|bit of a|small|old|new|quick|first) )*(?:journey|relief|pleasure|joy|day|week|morning|mess|treat|library|house|job|project|building|place|order|one|zoo|pain|lot))|(?:it|that) (?:worked|took|went (?:well|fine|smoothly|through|quick|fast|twice))|it stands alone|looks? like it worked|all of (?:it|them)(?=[.!]*$)|you did (?:the|our|my) \p{L}+ (?:\p{L}+ )?(?:too|last|back|before|for us)|copied|cc['’]?d?)(?![\p{L}\p{N}])/iu;
/** "Hi, it's Dana from Whitlock Controls." */
const presents =
  /(?:^|, |[.!] )(?:[Ii]t['’]?s|[Tt]his is) (?:◈|\p{Lu}[\p{L}-]+(?: \p{Lu}[\p{L}-]+)*(?= (?:from|at|on|in|again|here|with|over)(?!\p{L})|, \p{L}))/u;
/** "Music room at Sorrel Hill", "the last two": a few words that name a place, or say which of several come. */
const place =
  /(?<![\p{L}\p{N}])(?:rooms?|halls?|offices?|suites?|areas?|desks?|booths?|floors?|wings?|building|house|lobby|foyer|kitchen|entrance|doors?|stairs?|corridors?|stations?|lounge|bar|closet|labs?|shop|terrace|gym|site|button)(?![\p{L}\p{N}])/iu;
/** Rooms of the order, rather than where people sit and what they drive to. */
export const rooms =
  /(?<![\p{L}\p{N}])(?:closet|attic|kitchen|lobby|foyer|den|corridors?|hall(?:way)?s?|stair(?:s|way|well)?|lounge|lab|terrace|entrance|pantry|garage|basement|(?:bed|bath|class|ball|board|mud|sun|dining |living |meeting |conference |exam |break )rooms?|porch|patio|nursery|studio|chapel|corner office)(?![\p{L}\p{N}])/iu;
const ordinal =
  /^(?:and |hi,? |here )?(?:the |our |plates? and )?(?:first|last|second|third|fourth|next|other|left|right|remaining|one|two|rest)(?![\p{L}\p{N}])/iu;
/** What is made, whatever its maker does with it: "the bar ones we do by hand", "that word is too long, so I squeezed it". */
const made =
  /(?<![\p{L}\p{N}])(?:plates?|devices?|buttons?|keys|gangs?|words?|lettering|rows?|ones|the one)(?![\p{L}\p{N}])/iu;
const kind = "(?:sheets?|forms?|pdfs?|files?|attachments?|printouts?|cop(?:y|ies))";
const which = "(?:the|these|those|this|that|my|our|your|both|each|all|one|half|some|an?|any)";
/** What is said of sheets as a matter of course: how they come, and that they are filled in. */
const ofCourse = String.raw`(?:attached|enclosed|below|here|for|from|of|with|to|as|by|in|on|per|again|please|that|which|who|follows? (?:it|them|the \p{L}+) word (?:for|by) word|you (?:asked|wanted|wait(?:ed)? for|sent|need\p{L}*|mailed|gave)|cover|come|(?:is|are|was|were|r|have been|has been|got) (?:all |now |so |very |much |quite |really |each |duly )*(?:attached|enclosed|with|in|on|here|below|from|easy|easier|simple|simpler|nice|great|clear|organi[sz]ed|sorted|numbered|named|complete|completed|done|signed|filled(?! in by (?!◈|me|us|our|my))|prepared|typed|checked|zipped)|(?:fully |duly |all )?(?:completed|filled|signed|zipped|sorted|named|numbered))`;
/** Whoever tells something else of them may undo them: "the sheets predate the sale". */
const aboutSheets = new RegExp(
  String.raw`^(?:(?:and|but|so|well|also|hi|hello|yes|no),? )*(?:${which} (?:of )?(?:${which} )?(?:(?:\p{L}+) )?${kind}|(?:the|this|these) (?:attached|enclosed)(?! \p{L}* ?(?:order|${kind}))|${kind}) (?:(?:two|three|\d+|on site|on my desk) )?(?!${ofCourse}(?!\p{L}))\p{L}`,
  "iu",
);
/** A room of the order, or a station: "sorry, the gym became a spa", "lovely weather, and S-102 is off". */
const ofPlace =
  /(?:(?<!\p{L})(?:the|our|their) (?:\p{L}+ )?(?:bar|gym|spa|lobby|foyer|hall|kitchen|den|study|pantry|stage|lounge|library|nursery|chapel|sauna|pool|porch|patio|attic|cellar|basement|garage|studio|(?:bed|bath|class|ball|board|meeting )rooms?)|◇) (?:is|are|was|were|becomes?|became|gets?|got|has|have|had|went|goes|turned)(?! (?:attached|enclosed|here|complete|done|ready|lovely|beautiful|gorgeous|great|nice|warm|cold|wet|finally|coming|going to be|its own|their own|almost|still (?:dusty|a mess)|in (?:the|this)|on (?:the|its|page)|for|with)(?!\p{L}))(?!\p{L})/iu;
/** A verb, or how many: whoever names a place needs neither. */
const telling =
  /(?<![\p{L}\p{N}])(?:is|are|was|were|be|been|gets?|got|has|have|had|goes|went|will|does|did|do|stood|came|wore|all|each|every|both|such|only|none|\p{L}{3,}ed)(?![\p{L}\p{N}])/iu;
function isNaming(rest: string): boolean {
  return (place.test(rest) || ordinal.test(rest)) && rest.split(/\s+/).length < 10 && !telling.test(rest);
}

/** Words that tell nothing of what they stand beside. */
const idle = new Set(
  `a an the this that these those it its here there and with for of on in at to from by per as is are was were be
  been has have had we our us i my me your you he she they their all both again x plates plate plt devices device dev
  sheets sheet forms form stations station job order project ready complete attached enclosed discussed promised
  other big small ones can could reach call or them then one please`.split(/\s+/),
);

/** Whether words are polite, count rightly, or name something that is known and say nothing else of it. */
function onlyNames(rest: string): boolean {
  if (rest.includes(understood.courtesy) || rest.includes(understood.tally)) return true;
  const said = rest.replaceAll(/(?<!\p{L})(?:(?:for|from|at) \p{Lu}\p{Ll}+|\p{Lu}\p{Ll}+,?(?= ◈))/gu, "");
  return /[◈◇]/u.test(said) && tokensOf(said).every((token) => idle.has(token));
}

/** What people send, and what they write it with. */
const papers =
  /(?<![\p{L}\p{N}])(?:sheets?|forms?|pdfs?|files?|attachments?|attached|zip|e-?mails?|mail|outbox|inbox|computer|laptop|phone|landline|mobile|cell|browser|printer|scann?\w*|reader|server|link|internet|wifi|paper(?:s|work)?|keyboard|mailed|faxed|hard ?cop(?:y|ies))(?![\p{L}\p{N}])/iu;

/**
 * Whether a sentence only chats. It tells of its writer, of papers and machines or of the season, or it wishes
 * somebody well. If it turns or binds something, that is nothing that the order is made of. `rest` is the sentence
 * without facts and courtesies. Neither speaks of making anything (cues.ts). `isContact`: it has a telephone number or
 * an address of its writer's.
 */
export function onlyChats(sentence: string, rest: string, isContact = false): boolean {
  const turns = turnsIn(rest);
  const isSocial = social.test(sentence);
  const tells = aboutSheets.test(rest) || aboutSheets.test(sentence);
  if (ofPlace.test(rest)) return false;
  // "I forgot the two for the attic" tells of more than who writes it.
  const chats =
    warm.test(sentence) ||
    (!tells &&
      (isSocial || papers.test(sentence) || (own.test(sentence) && !made.test(rest))) &&
      !rooms.test(rest));
  if (turns === "nothing")
    return (
      chats ||
      (!tells && frame.test(sentence)) ||
      presents.test(rest) ||
      isNaming(rest) ||
      isContact ||
      onlyNames(rest) ||
      !/\p{L}{2}/u.test(rest)
    );
  if (namesGoods(rest, turns === "hints" && chats ? true : undefined)) return false;
  if (turns === "asks") return isSocial;
  // A person reads what turns or binds something, whoever's affair it seems to be. A mere good wish needs no reading.
  return (turns === "hints" && !tells) || (turns === "binds" && warm.test(sentence));
}

const ends =
  /(?:so|but|and|anyway|finally),? here ?(?:(?:it|they|we|you|i) (?:all )?(?:is|are|go|am)\b|(?:['’]s|is|are|come|comes) (?:the|our|my) )[^.!?,;]{0,20}[.!)]*$/iu;
const settled = /\b(?:agree[ds]?|approved|decided|released|signed off|green light|finally)\b/giu;

/**
 * "We finally agreed on the names, so here they are": `rest` of such a story, without the part that its end settles.
 */
export function withoutStory(sentence: string, rest: string): string {
  return ends.test(sentence) && (own.test(sentence) || /\b(?:finally|at last|got)\b/iu.test(sentence))
    ? rest
        .replace(ends, " ")
        .replace(settled, " ")
        .replace(/\bwhat (?:goes|to put) on\b/giu, " ")
    : rest;
}

const hour =
  "\\d{1,2}(?::\\d\\d)?(?: ?[ap]\\.?m\\b\\.?)?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|noon|lunch";
/** Hours, years and counts of people in what somebody tells of themselves. */
const times = new RegExp(
  `\\b(?:at|till|until|til|from|to|after|before|around|by|since|back in|in) (?:${hour}|(?:19|20)\\d\\d)(?![\\p{L}\\p{N}/.:-]*\\d)(?![\\p{L}-])|\\b\\d{1,3} (?=(?:\\p{L}+ )?(?:years?|yrs?|hours?|hrs?|minutes?|mins?|kids?|guys?|men|people|beers?|coffees?|tries|degrees|miles|meetings|calls|e-?mails)\\b)`,
  "giu",
);

/** Words without those. */
export function withoutTimes(said: string): string {
  return (own.test(said) || social.test(said) || /\btook\b/i.test(said)) && !namesGoods(said)
    ? said.replace(times, " ")
    : said;
}
