import { createHash } from "node:crypto";
import { memoized } from "../../trade/memoized.ts";
import { asksFor, bids, speaksOfTrade } from "./cues.ts";
import { isDangerous } from "./danger.ts";
import { speaksAgainst } from "./doubt.ts";
import { isFarewellElsewhere, turnsElsewhere } from "./other-tongues.ts";
import { understood } from "./tallies.ts";
import { undoes } from "./undoes.ts";
import { tokensOf } from "./word-bag.ts";

/** The key by which a line is remembered. Lines that differ only in blanks, marks and capitals have the same key. */
export type LineKey = string;

function keyOf(line: string): LineKey {
  return createHash("sha256").update(tokensOf(line).join(" ")).digest("base64url").slice(0, 22);
}

/** Longer texts are not remembered. */
const mostLines = 2000;

/**
 * Keys of those lines of a letter that may stand in every letter of its sender. Later letters are read with them. A
 * wish is no furniture, however often it is repeated. So lines that speak of the trade have no key, and short lines
 * that could be an answer have none.
 */
export function lineKeysOf(text: string): LineKey[] {
  const lines = text.split(/\r\n|\r|\n/).slice(0, mostLines);
  return [...new Set(lines.filter(mayBeFurniture).map(keyOf))];
}

/**
 * Whether a line stood in an earlier letter, and is of the kind that may. Who wishes the same in every letter wishes it
 * each time, unless the line stands below his name or good-bye (`signed`).
 */
export function isRemembered(line: string, remembered: ReadonlySet<LineKey>, signed: boolean): boolean {
  return (
    remembered.size > 0 &&
    remembered.has(keyOf(line)) &&
    mayBeFurniture(line) &&
    (signed || isBoilerplate(line) || !asksFor(line))
  );
}

function mayBeFurniture(line: string): boolean {
  const tokens = tokensOf(line);
  if (tokens.length === 0 || line.length > 2000 || speaksOfTrade(line)) return false;
  return tokens.length > 8 || !(asksFor(line) || mayCount(line));
}

/** "Devices: 12" says something new in every letter. */
function mayCount(line: string): boolean {
  return (
    /\d/.test(line) &&
    /\b(?:plates?|devices?|keypads?|sheets?|forms?|files?|pdfs?|gangs?|buttons?)\b/i.test(line)
  );
}

/** What stands around people's own words. */
const legal = new RegExp(
  [
    "^\\W*confidential:|^\\W*sent with (?!the |my |our |a |an )|confidentiality (?:notice|statement)|confidentialité|confidencialidad|limited liability|disclaimers?\\b|malware|dissemination|sent securely|secure message|notify the sender|(?:received|receive) (?:this|it) (?:e-?mail|message|communication|transmission|letter) (?:in error|by mistake)|not the intended (?:recipient|addressee)|intended recipients?",
    "vertrauliche informationen|(?:ist |sind )?nur für den (?:empfänger|adressaten) bestimmt|irrtümlich erhalten|destinatarios?\\b|confidencial(?:es)?\\b|confidentiels?\\b|destinataires?\\b|imprimer ce (?:courriel|message|mail)|vertrouwelijk\\b|alleen bestemd voor|(?:richtige|beabsichtigte|vorgesehene) (?:adressat|empfänger)|destinataires? (?:prévus?|indiqués?)|informations? confidentielles?|informaci[oó]n confidencial",
    "before printing|before you print|print this (?:e-?mail|message|mail)|consider the environment|save a tree|^\\W*(?:please )?save paper\\W*$|terms (?:and|&) conditions|terms of (?:sale|purchase|trade|business)|general conditions|views (?:or|and) opinions|(?:take|complete|fill in) our (?:\\p{L}+ )?survey|how (?:did|are) we do(?:ing)?\\b|rate our service|opinions? expressed|does not (?:necessarily )?represent",
    "registered (?:office|in|address|number)|commercial register|company (?:no|number|registration|reg)|managing directors?:|geschäftsführer|handelsregister|vat (?:no|number|reg|id)|siret|place of registration",
    "originated (?:from )?outside|(?:from )?(?:an )?external (?:sender|e-?mail|source|mail)|outside (?:of )?(?:the|your|our) (?:organi[sz]ation|company|network)|(?:do not|don['’]?t) click (?:on |any |or |unless|links?|attachments?)|clicking (?:on )?links|links (?:or|and) (?:open )?attachments|opening attachments|recogni[sz]e the sender|content is safe|(?:exercise|use|with) caution(?=\\W*$| (?:when|before|and|if|as|opening|clicking))|get e-?mail from|learn why this is important|phishing",
    "(?:been |was |is )?scanned (?:by|for|with)|automated message|automatically generated|do not reply to this|report this (?:e-?mail|as)|came from outside|think before you click|unsubscribe|privacy (?:policy|notice|statement)|follow us|find us on|like us on|connect with us|visit (?:us|our (?:web|site|page|show))|download our app|sign up (?:for|to|now|here|today)",
    "[\\[(*]{1,3} ?(?:external|extern|ext|caution|warning)[^\\])*]{0,40}[\\])*]|^\\W*(?:external|extern)\\W*$|^caution\\W*$|^[^\\p{L}]*(?:begin )?(?:original|forwarded) message",
    "public records?(?: act| law| requests?)?|acknowledge that we (?:live|work|are|operate)|traditional (?:lands?|territor(?:y|ies)|owners)|my working (?:days|hours)|(?:counter|shop) hours|outside (?:of )?(?:your |my |normal |usual )(?:own )?(?:working |office |business )?hours",
  ].join("|"),
  "iu",
);

/** Words of disclaimers that stand in wishes too: "the tenant is confidential, so his name must go". */
const alsoLegal =
  /confidential(?:ity)?|privileged|proprietary|intended (?:solely|only|for)|addressee|sole use of|unauthori[sz]ed|prohibited|strictly forbidden|liabilit(?:y|ies)|\bliable\b|virus(?:es|-free)?|legally|disclos(?:e|ed|ure)|monitored|encrypted|destroy (?:all|this|it|the)|delete (?:it|this|the|all)\b|suspicious|views expressed|checked by|protected by|sent with|our website|linkedin|facebook|instagram|youtube|newsletter|subscribe/iu;
/** What a disclaimer is about. */
const ofMail =
  /(?<!\p{L})(?:e-?mails?|mails?|messages?|communications?|transmissions?|attachments?|recipients?|sender|addressee|information|contents?|copies|copying|distribution|disclosure|computers?|systems?|networks?|viruses|virus-free|(?:un)?authori[sz]ed (?:use|access|review|disclosure|copying)|privileged and|confidential and|legally (?:privileged|binding|protected))(?!\p{L})/iu;
/** How a firm invites to its pages. */
const invites =
  /^\W*(?:please )?(?:also )?(?:follow|find|like|visit|see|check out|connect|join|read|subscribe)|^\W*(?:(?:linkedin|facebook|instagram|youtube|twitter)\W*)+$/iu;
/** Nobody's own words tell of these. */
const ofSomebody =
  /(?<!\p{L})(?:he|she|they|(?:the|our|my|his|her|their) (?:owner|client|customer|architect|tenant)s?|yet|must go|as (?:on|in|at)|like (?:on|in)|spell\p{L}*|spelt|rooms?|wing|doors?|words?|wording|colou?rs?|drawings?|logos?)(?!\p{L})/iu;

/** Where programs and people write of themselves. More may stand beside it: "We are closed till May, so keep it." */
const ofWriter = new RegExp(
  [
    "sent on the go|sent (?:from|via|using) (?:my|an?|the \\p{L}+$|the (?:road|train|field|truck|van|(?:job ?)?site|boat|ipad|(?:mobile )?app|mobile|all new|new)|(?:the )?(?:yahoo|gmail|outlook|mail|proton|samsung|windows|blackberry|t-mobile|verizon))|get outlook|gesendet (?:von|mit|über)|von meinem \\p{L}+ gesendet|envoyé de|enviado desde|sent from mail|von meinem iphone",
    "hours: ?(?=(?:(?:mon|tue|wed|thu|fri|sat|sun)(?:\\p{L}*day|\\p{L}{0,2})|daily|\\d{1,2}|am|pm|to|and|[-–:,.;&\\s])+$)|(?:office|business|our|opening|working|store|warehouse|showroom) hours(?=\\W*(?:$|are|is|\\d|mon|m[-–]f|daily))|book (?:a )?(?:time|meeting|call) with|schedule a (?:meeting|call) with|(?:she|he|they)/(?:her|him|them)|(?:since|est(?:ablished|d)?\\.?) (?:18|19|20)\\d\\d(?=\\s*(?:$|[.|·•–-]|and (?:never|nobody|no one)(?!\\p{L})))",
    "(?:we|office|offices|controls|electric|supply|company)(?: will| is| are)(?: be)? closed",
  ].join("|"),
  "iu",
);

/** What is to be done for it. */
const follows =
  /(?<!\p{L})(?:so|hence|therefore|then|keep|wait|hold|stop|cancel|do not|don['’]t|(?:please|pls) (?!note|excuse|forgive|pardon|consider))(?!\p{L})/iu;

/** Whether a sentence belongs to a disclaimer, a banner or the like, and says nothing of the trade. */
export const isBoilerplate = memoized((words: string): boolean => {
  const begun = words.slice(0, 2000);
  if (speaksOfTrade(words)) return false;
  if (alsoLegal.test(begun) && !ofSomebody.test(begun) && (ofMail.test(begun) || invites.test(begun)))
    return true;
  return legal.test(begun) || (ofWriter.test(begun) && !follows.test(begun) && !undoes(begun));
});

/** Phone numbers, addresses of mail and pages, and the labels in front of them. */
const contacts =
  /<?(?:mailto:)?[\w.+'-]{1,64}@[\w-]{1,63}(?:\.[\w-]{1,63}){1,6}>?|<?\b(?:https?:\/\/|www\.)[^\s<>]{1,500}>?|\b[a-z0-9-]{2,60}\.(?:com|net|org|example|co|ca|us|uk|de|fr)(?:\/[^\s<>]{0,200})?\b|(?:(?<![\p{L}\p{N}])(?:t|f|o|c|m|p|d|w|e|ph|tel|telephone|phone|fax|cell|mobile|mob|office|direct|main|work|home|toll[ -]free|e-?mail|web|ext|x|or|and|at|on|is)\.?[\s:|]{0,4}){0,4}\(?\+?\d{0,3}[\s.-]{0,2}\(?\d{3}\)?[\s./–-]{1,3}\d{3}[\s.–-]{1,2}\d{4}\b(?:\s*(?:x|ext\.?|extension)\s*\d{1,5})?|\b\d{3}[-.]\d{4}\b/giu;

export function withoutContacts(words: string): string {
  return words.replace(contacts, ` ${understood.name} `);
}

const role =
  /\b(?:manager|director|engineer|engineering|president|vp|ceo|cfo|owner|foreman|electricians?|estimator|coordinator|specialist|sales|purchas(?:ing|er)|buyer|department|dept|division|services?|solutions?|electric(?:al)?|controls?|lighting|supply|supplies|distribut(?:ion|ors?)|contract(?:ing|ors?)|construction|builders?|technolog(?:y|ies)|systems?|associates?|group|partners?|design(?:er|s)?|architects?|consultants?|administrator|admin|accounts?|office|team|desk|executive|assistant|apprentice|superintendent|supervisor|pe|inc|llc|ltd|gmbh|co|corp|company|pvt|plc|s\.?a|license|lic)\b/i;
const street =
  /^\W*\d{1,6}[a-z]? (?:[\p{L}\d.'-]+ ){1,5}(?:st|street|rd|road|ave|avenue|blvd|boulevard|ln|lane|dr|drive|way|ct|court|pl|place|row|hwy|highway|pkwy|sq|square|park|circle)\b|\b\p{Lu}{2}\.? \d{5}\b|\bp\.? ?o\.? box \d|\b(?:suite|ste|floor)\.? #?\d/iu;

/** "Dock Road, Harlow Quay". */
const address =
  /^(?:\p{Lu}[\p{L}'’-]+ ){1,3}(?:Street|Road|Avenue|Lane|Drive|Way|Court|Place|Row|Square|Park|Wharf|Quay)(?:, \p{Lu}[\p{L}'’-]+(?: \p{Lu}[\p{L}'’-]+)?)*$/u;
/** "m: 555-0155", "+1 555 0163". */
const telephone =
  /^(?:[tfocmpdw]|ph|tel|tél|phone|fax|cell|mobile|mob|office|direct|main|telefon|teléfono|telefono|telefone|telefoon|puh|gsm|handy|mobil|móvil|kom)?[.:]*\s?\+?\(?\d[\d\s()./-]{5,20}\d(?:\s?(?:x|ext\.?)\s?\d{1,5})?$/iu;

export function isTelephone(line: string): boolean {
  return telephone.test(line);
}

/** "555-0161 direct | 555-0160 main". */
const labels = new Set(
  tokensOf(
    "t f o c m p d w e ph tel telephone phone fax cell mobile mob office direct main work home mail email web",
  ),
);
/** "KVK 55501999", "12 quai des Brumes, 29999 Port-Exemple". */
const registered =
  /^\p{Lu}{2,6}[.:]? ?(?:no\.?|nr\.?)?:? ?\d{5,12}$|^\d{1,4}[a-z]?,? (?:\p{L}[\p{L}'’.-]* ){1,5}?\p{L}[\p{L}'’.-]*, \d{4,5} \p{Lu}[\p{L}'’ -]+$/u;

/** Whether a line below somebody's name or greeting tells who they are. */
export function isOfSignature(line: string): boolean {
  if (line.length > 300) return false;
  const tokens = tokensOf(withoutContacts(line));
  if (isTelephone(line) || (tokens.every((token) => labels.has(token)) && !/[?!]$/.test(line))) return true;
  if (address.test(line) || /^@[\w.]{2,40}$/u.test(line)) return true;
  // "CANCEL 70415" looks like a register's number, and "Scrap floor 2" like an address. Hours may end with "until five".
  const isAgainst = speaksAgainst(line.replace(/(?<!\p{L})(?:until|till)(?= \S+$)/iu, ""));
  if (registered.test(line) && !isAgainst && !asks.test(line)) return true;
  if (speaksOfTrade(line) && /\s\p{Ll}{3}/u.test(line)) return false;
  if (street.test(line) && !isAgainst && !/\b(?:ship|deliver|send|new|to)\b/i.test(line)) return true;
  if (tokens.length < 16 && mottoIn(line) !== undefined) return true;
  if (tokens.length > 9 || /\?|!$/.test(line)) return false;
  // A sentence is no trade and no address: "Reach me at the office before cutting."
  const small = line.match(/(?<![\p{L}\p{N}])\p{Ll}{2,}(?!\p{L})/gu) ?? [];
  if (small.length > tokens.length / 2 && /[.!]$/u.test(line) && isDangerous(line)) return false;
  if (role.test(line) && !isAgainst && !/\b(?:please|pls|need|make)\b/i.test(line)) return true;
  return tokens.length <= 8 && !asksFor(line) && !turnsElsewhere(line) && /^\W*\p{Lu}/u.test(line);
}

/** "NEED 70415" */
const asks = /^\W*(?:we )?(?:needs?|wants?|send|prefer|make|please|pls|use|add|rush)(?!\p{L})/iu;

/** What stands in quotation marks alone: somebody else's words. Undefined if they bid somebody to do something. */
export function mottoIn(line: string): string | undefined {
  const [, said = ""] = /^(?:\p{Lu}[\p{L}'’.& ]{1,40} [-–|] )?["“”](.{8,})["“”]\W*$/u.exec(line) ?? [];
  return said === "" || bids(said) ? undefined : said;
}

/** A line that says good-bye, whatever follows. */
export function isGoodBye(line: string): boolean {
  return line.length < 60 && (isFarewellElsewhere(line) || farewell.test(line));
}

const farewell =
  /^\W*(?:(?:many |with |and |& |very |kind(?:est)? |best |warm(?:est)? |all the |yours? |sincere(?:ly)? )*(?:god bless(?: you)?|thanks?(?: you)?(?: so much| very much| again| in advance| a lot)?(?: for (?:all )?your (?:care|help|time|patience|trouble|attention))?|thx|tnx|ty|tks|regards|rgds|wishes|best|cheers|sincerely(?: yours)?|truly|faithfully|respectfully(?: submitted)?|cordially|appreciated|br|kr|talk soon|good night|warmly|bye|bye now|(?:a )?cordial greetings?|take care|stay (?:safe|well)|(?:(?:y'all|you(?: all)?) )?have a (?:(?:very|most|really|great|good|nice|lovely|wonderful|blessed|pleasant|fine|super|beautiful|happy|safe|quiet|sunny|relaxing|restful|long|merry|fantastic|productive|peaceful|easy|holiday|rest|of|your|the) ){0,4}(?:day|one|weekend|week|evening|afternoon|thanksgiving|christmas|easter|holidays?)(?: eh)?|ta|cheers mate|cordialement|salutations|saludos(?: cordiales)?|atentamente|mit freundlichen grüßen|mfg)(?: from \p{L}+)?[\s,.!&-]*(?:and )?)+$/iu;
