import { memoized } from "../../trade/memoized.ts";
import { speaksOfMaking } from "./cues.ts";
import { speaksAgainst } from "./doubt.ts";
import { turnsElsewhere } from "./other-tongues.ts";

/** "Bill", "C. Vireton", "HB", "/LZ". */
const nameShape =
  /^[-–—/~]?\s?(?:(?:\p{Lu}\p{Ll}+|\p{Lu}\.-?){1,2}(?: \p{Lu}[\p{L}'’.-]*){0,2}|\p{Lu}{1,3})[.,]?$/u;

/** Words that are no initials. */
const noName =
  /^\W*(?:nobody|noone|somebody|someone|anybody|anyone|whoever|n|no|tbc|tbd|tba|nvm|jk|idk|ish|lol)\W*$|\b(?:mon|tues|wednes|thurs|fri|satur|sun)day\b|\b(?:today|tomorrow|tonight|asap)\b|^\W*(?:by|next|before|after|until|till|short|shorter|longer|half|twice|express|overnight|ground|standard|priority)\b/iu;

/** "Reluctantly", "Unsorted": how something is done or is, below an answer. */
const manner =
  /^\W*(?:\p{Lu}\p{Ll}*(?:al|ant|ent|ive|ous|ful|able|ari|ed|ing|ic|ate)ly|(?:Un|Over|Under|Mis|Pre|Dis)\p{Ll}{3,}(?:ed|id|ize)|Afresh|Anew|(?:Du|Tri)plicate|Clockwise|Fitted|Hyphenated|Abbreviated|Wh(?:at|en|er)ever)\W*$/u;

/** Names that are words of the trade as well. */
const nameAllTheSame = /^\W*(?:Bill|Mark|Chip|Rod)\W*$/u;

export const isSomebody = memoized((line: string): boolean => {
  if (nameAllTheSame.test(line)) return true;
  const isName = nameShape.test(line) && !noName.test(line) && !manner.test(line) && !turnsElsewhere(line);
  return isName && !speaksAgainst(line) && !speaksOfMaking(line);
});
