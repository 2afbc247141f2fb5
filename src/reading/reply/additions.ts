import type { Sheet } from "../../trade/sheet.ts";
import { type Parts, withoutTrue } from "./borne-out.ts";
import { type Came, figure, isAgain, isDevice, isPlate } from "./came.ts";
import { numberFrom } from "./tallies.ts";
import { tokensOf } from "./word-bag.ts";

/*
 * Orders that grow: "one more station for the same order, please add". Such words ask for nothing more if as many
 * sheets came for new places of an order that is known.
 */

const what = "(?<what>stations?|locations?|sheets?|forms?|devices?|plates?)";
const number = `(?<number>${figure}|an?|another)`;
const more = "(?:more|additional|extra|further|new)";
const order = "(?:the|our|my|this|that) (?:same )?(?:order|job|project)";
const please = "(?:(?:please|pls|kindly|(?:can|could|would) you(?: please)?) )?";
const them = "(?<them>this|it|that|these|them)(?: ones?)?";
const to = `to (?:${order}|(?=order ))`;
const asks = `(?:,? (?:and )?(?:${please}add|to (?:be added|add))(?: (?:it|them|this|these))?(?: (?:it |them )?${to})?)?`;
const here = "(?:(?:here is|here's|this is|attached is) )?";

const additions: readonly RegExp[] = [
  `${please}add (?:${them}|(?:the )?attached)(?: ${what})? ${to}`,
  // What "it" is may stand in the sentence before.
  `${please}add (?:(?<them>this|these)(?: ones?)?|(?:the )?attached)(?: ${what})?(?=\\s*(?:[.,;!?]|$))`,
  `${please}add (?:${number} |the |this |these )?(?:${more} )?${what} ${to}`,
  `${please}add (?<mark>\\p{L}{0,4}[-_ ]?\\d{1,4}\\p{L}?) ${to}`,
  `attached,? (?:and )?(?<them>)${please}add(?=\\s*(?:[.;!]|$))`,
  `${here}${number} (?:${more} )?${what}(?: (?:attached|enclosed))?(?: (?:for|on|in) ${order})${asks}`,
  `${here}(?:${number} )?${more} ${what}(?: (?:attached|enclosed))?(?: (?:for|on|in) ${order})?${asks}`,
  // What a plate still lacks.
  `(?<them>this|it|these|they) (?:belongs?|goes|go) (?:to|with) (?:(?:the )?(?:plate )?(?<mark>\\p{L}{0,4}[-_ ]?\\d{1,4}\\p{L}?)|(?:the|my|our) plate(?: (?:i|we) sent(?: you)?)?(?: (?:earlier|before|yesterday|today))?)(?=\\s*(?:[.,;!]|$))`,
  `(?:the|those) ones? you (?:were|are|said you were) (?:missing|lacking|waiting for|asking for)(?=\\s*(?:[.,;!]|$))`,
  `${please}complete (?:the|our|my) order with ${them}(?=\\s*(?:[.,;!]|$))`,
].map((source) => new RegExp(`(?<![\\p{L}\\p{N}])(?:${source})(?![\\p{L}\\p{N}])(?: ?\\?)?`, "giu"));

const keyOf = (typed = ""): string => tokensOf(typed).join("");

/** Whether just what is told came new, in orders that have sheets already. */
function areThese({ what: noun = "", number: told, mark, them: all = "" }: Parts, came: Came): boolean {
  const { sheets, earlier } = came;
  const orders = new Set(earlier.flatMap((sheet) => sheet.order ?? []).map(keyOf));
  if (sheets.length === 0) return false;
  if (sheets.some((sheet) => isAgain(sheet, came) || !orders.has(keyOf(sheet.order)))) return false;
  const stations = new Set(sheets.map((sheet) => keyOf(sheet.mark) || sheet.id));
  if (mark !== undefined) return stations.size === 1 && stations.has(keyOf(mark));
  if (noun === "") return !/^th(?:es|em)/iu.test(all) || sheets.length > 1;
  const count = /^(?:station|location)/iu.test(noun) ? stations.size : countedAs(noun, sheets);
  if (told !== undefined) return count === (/^(?:an?|another)$/iu.test(told) ? 1 : numberFrom(told));
  return noun.toLowerCase().endsWith("s") ? count > 1 : count === 1;
}

function countedAs(noun: string, sheets: readonly Sheet[]): number {
  if (/^device/iu.test(noun)) return sheets.filter(isDevice).length;
  return /^plate/iu.test(noun) ? sheets.filter(isPlate).length : sheets.length;
}

/** Words without those that only bring what came. */
export function withoutAdditions(said: string, came: Came): string {
  return additions.reduce(
    (some, pattern) => withoutTrue(some, pattern, (told) => areThese(told, came)),
    said,
  );
}
