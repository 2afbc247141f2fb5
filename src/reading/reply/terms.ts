/** How a business says what holds for all its orders, or what it offers to everybody. */
const general =
  /^(?:(?:all|any|no|every|each)(?: \p{L}+)? (?:order|quote|quotation|delivery|contract)|special[- ]orders?(?: and \p{L}+)? items?|(?:all |any |no )?(?:\p{L}+ )?(?:orders|quotes|quotations|prices|pricing|goods|returns|deliveries|sales|invoices|contracts|payments))\b/iu;
const clause =
  /\b(?:terms|conditions|in writing|by e-?mail|written|bind(?:s|ing)|binding|purchase order|authori[sz]ed|without notice|minimum|restocking|surcharge|over [$€£]\s?\d|non[- ]?(?:returnable|refundable|cancell?able)|valid (?:for )?\d{1,3} days|subject to (?:our|credit|availability|standard|prior sale))\b/iu;
const offer =
  /^(?:ask (?:me|us) about|we appreciate your|visit|shop|call us|for (?:new |all |any |the status of your )?(?:orders?|quotes?|returns|service|emergenc(?:y|ies)|support|inquiries|enquiries)\b.*\b(?:call|e-?mail|contact|visit|dial|phone|◈)|\p{L}[\p{L} &.'’-]{1,60}: (?:same|next)-day\b|24 ?(?:h|hours?|\/ ?7)\b)/iu;
const day = "(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?s?";
const hour = String.raw`\d{1,2}(?:[:.]\d\d)? ?(?:[ap]\.?m\.?)?`;
const owned =
  "(?:family|locally|veteran|wom[ae]n|employee|independently)[- ](?:owned|run)(?: (?:and|&) operated)?";
const slogans = [
  "a\\+ rated|(?:bbb |fully )?(?:accredited|licen[sc]ed|insured|bonded|certified)",
  "free (?:estimates|quotes|quotations|site visits|consultations?)",
  `${owned}(?: (?:business|company|firm))?(?: since \\d{4})?`,
  "celebrating (?:over )?\\d{1,3} years(?: (?:of service|in business|in the trade))?",
  "(?:over |more than )?\\d{1,3}\\+? years (?:of (?:service|experience|excellence|trust)|in (?:business|the trade))",
  "(?:proudly )?(?:serving|powering|lighting) (?:\\p{L}+ ){1,5}since \\d{4}",
  "safety (?:is no accident|first|starts with you)|quality (?:first|you can trust)|your local (?:\\p{L}+ )?(?:electricians?|electrical contractors?|wholesalers?|suppliers?)",
  "no job (?:is )?too (?:small|big)(?: or too (?:small|big))?|(?:an )?equal opportunity employer",
  `(?:open )?${day}(?: ?(?:-|–|to|and|&|,) ?${day})? ${hour} ?(?:-|–|to) ?${hour}`,
].join("|");
/** "A+ rated, free estimates": what stands in a footer and on a van. */
const slogan = new RegExp(
  `^(?:${slogans})(?:(?:, (?:and )?| and | & | [|•·–-] )(?:${slogans}))*[.!]*$`,
  "iu",
);
/** What speaks of the letter itself, or asks something of its reader now. */
const ofNow =
  /\b(?:this|these|those|that|above|below|please|pls|i|i['’]?(?:m|ll|d|ve)|me(?!\s+about)|my|mine|hold\w*|held|wait\w*|stop\w*|cancel\w*|void|until (?:we|i|you) (?:call|pay|say|hear)|yet|now|first|today|tomorrow|\d{1,4}(?: and \d{1,4})? (?:yes|no))\b/iu;

/** Whether a sentence in somebody's footer tells the terms of a business, or praises it. It binds no answer. */
export function areTerms(sentence: string): boolean {
  if (slogan.test(sentence)) return true;
  if (sentence.length > 300 || sentence.includes("?") || ofNow.test(sentence)) return false;
  return (general.test(sentence) && clause.test(sentence)) || offer.test(sentence);
}
