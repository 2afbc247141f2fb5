import { tokensOf } from "./word-bag.ts";

/*
 * Reasons in the words of people who write English as they learnt it: "is the name of the building", "in Portuguese
 * we write like this". All of their words are known, and none can bind the yes that they stand beside.
 */

export const nation =
  "(?:american|arabic|basque|bulgarian|catalan|chinese|croatian|czech|danish|dutch|estonian|finnish|french|gaelic|german|greek|hawaiian|hebrew|hungarian|icelandic|indian|irish|italian|japanese|korean|latin|latvian|lithuanian|maori|norwegian|persian|polish|portuguese|romanian|russian|scottish|serbian|slovak|slovenian|spanish|swahili|swedish|swiss|thai|turkish|ukrainian|vietnamese|welsh)";

/** "Name of the owner's boat" says no more than "name". */
const nameOf =
  /\b(?:(?:family|last|first|place|brand|good|proper) )?(?:name|surname|word|spelling|orthography|term|brand)(?: (?:of|for) (?:(?:the|our|my|their|his|her|a|an) )?(?:(?:polish|italian|french|arabic|owner's|client's|customer's) )?(?:owner|client|customer|family|building|house|hotel|restaurant|school|principal|founder|town|village|city|sea|river|lake|island|street|road|place|saint|boat|ship|company|firm|brand|bar|café|cafe|room|hall|library|church|hospital|farm|region|person|man|woman|lady|god|goddess|daughter|son|wife|husband|mother|father|grandmother|grandfather))?\b/giu;
const around = new Set(
  tokensOf(
    `it is its s that thats this they the a an our we in name language spelled spelt written write writes calls called
    like so how what which correct right good true ok okay fine well also my your his her their just exactly really indeed always here proper correctly`,
  ),
);
const begins =
  /^(?:it'?s?|this|that'?s?|they|is(?! (?:it|this|that|the|they|so)\b(?! name\b))|the name|name|the language|in|we|how)\b/iu;
const says =
  /\b(?:name|spelled|spelt|written|writes?|calls?|called|correct|correctly|right|good|true|ok|okay|fine)\b/iu;
const isNation = new RegExp(`\\b${nation}\\b`, "giu");

export function isPlainReason(sentence: string): boolean {
  const words = sentence
    .replace(/\bnot (?:an? )?(?:mistake|typo|error)\b/giu, "correct")
    .replace(/ (?:on|in) (?:the|our|their) (?:approved )?(?:drawings?|plans?|schedule|specs?)\b/giu, "")
    .replace(/\bwe call\b/giu, "it is called")
    .replace(nameOf, "name")
    .replace(isNation, "language");
  const tokens = tokensOf(words);
  return (
    tokens.length > 1 &&
    begins.test(words) &&
    says.test(words) &&
    /\b(?:is|it'?s|that'?s|spelled|spelt|written|writes?|calls?|called)\b/iu.test(words) &&
    !/[^\p{L}\s,.!'’-]/u.test(words) &&
    !/\bin (?!language\b)|\blike (?:the|a|our|name)\b|\bis (?:it|they|we)\b/iu.test(words) &&
    tokens.every((token) => around.has(token))
  );
}
