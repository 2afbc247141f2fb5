import type { Around } from "./clause-acts.ts";

/*
 * Words of a line in place of others, before it is read clause by clause.
 */

/** "All fine except the last one": the last of all points. Beside points to mend others must be named before. */
export function withNumbers(line: string, { open, others, under }: Around): string {
  const last = Math.max(...open, ...others);
  if (under !== undefined || open.length < 2 || !open.includes(last)) return line;
  return line.replace(lastOne, (whole, at: number) =>
    others.length === 0 || /\d/u.test(line.slice(0, at)) ? `${last}` : whole,
  );
}
const lastOne =
  /\b(?:that |the )?(?:very )?last (?:one|question|point)(?= (?:is|was|should)\b)|(?<=\b(?:except|but|besides|apart from|other than) (?:for )?)the last(?: one)?(?= ?[,.;!]| which\b|$)/giu;

/** "1 yes, family name, 2 yes" for "1 yes family name 2 yes", where numbers go up. */
export function parted(line: string): string {
  if (!/^\W*\d{1,3}\W{0,3}(?:yes|no|ok)(?!\p{L})/iu.test(line)) return line;
  let highest = 0;
  return line.replace(answerAt, (whole, digits: string, at: number) => {
    const isNext = Number(digits) > highest;
    if (isNext) highest = Number(digits);
    return isNext && at > 0 && !labels.test(line.slice(0, at)) ? `,${whole}` : whole;
  });
}
const answerAt = /(?<=^|[\p{L})]) ?(\d{1,3})(?=\W{0,3}(?:yes|no|ok|okay)(?!\p{L}))/giu;
/** What a number belongs to that is no point. */
const labels =
  /(?<!\p{L})(?:buttons?|rows?|gangs?|pos|positions?|rooms?|numbers?|no|items?|points?|questions?|q|to|on|for|of|in|and|or|is|are|the|page|floor|suite|exam|board|unit|zone|circuit)$/iu;

/** "It is the lights" for "it is the cove lights", where COVES is in question. */
export function withoutLights(piece: string, asked: readonly string[]): string {
  return piece.replace(
    /(?<= (?:the|our) )(\p{L}+) (?=(?:lights|lighting|lamps)$)/iu,
    (whole, word: string) => {
      const one = word.toLowerCase();
      return asked.some((other) => other === `${one}s` || `${other}s` === one) ? "" : whole;
    },
  );
}

/** A line without short forms and smiles. */
export function spelledOut(line: string): string {
  return line
    .replace(/:-?\)/gu, "")
    .replace(/(?<=\p{L}) (?:lol|ha(?:ha)+)(?=\s*(?:[.,;!]|$))/giu, "")
    .replace(/(?<=^|[.;!,)] )(\d{1,3})\. (?=\S)/gu, "$1: ")
    .replace(/ 's\b/gu, "'s")
    .replace(/\bthe word \((\d{1,3})\)/gu, "$1")
    .replace(/(?<=^\W*\d{1,3}\W{0,4})confirm(?=\W*$)/iu, "confirmed")
    .replace(/\b(everything|all|rest|sheet)'s\b/giu, "$1 is")
    .replace(/(?<=\d )[yn](?= ?(?:[,.;]|\d|$))/giu, (letter, _at: number, all: string) =>
      /\d n \d/iu.test(all) ? letter : /y/iu.test(letter) ? "yes" : "no",
    )
    .replace(
      /\b(it|that)s(?= (?:fine|ok|okay|right|correct|the|a|an|what|how|where|good|all|just|on|in|supposed|meant|wrong|not|my|our|their|his|her|as|called|said|pronounced|short|german|french|spanish|italian|welsh|irish|gaelic|dutch|latin|greek)\b)/giu,
      "$1 is",
    )
    .replace(
      /(?<=(?:^|[\s,;])\d{1,3} (?:yes|YES|Yes|yep|yeah)) (?=(?!(?:as|to|for|on|and|or|but|that|this|it|if|once|when|please|sir|with|at|not|no|yes|both|all|the(?! word)|is|are)(?!\p{L}))\p{Ll})/gu,
      ", ",
    )
    .replace(/\b(i|we|you|they|he|she|it)'ll\b/giu, "$1 will")
    .replace(/^ill\b|(?<=[.,;] )ill\b/giu, "I will")
    .replace(/\b'?em\b/giu, "them")
    .replace(/\bwhats(?= )/giu, "what is")
    .replace(/\btheres(?= )/giu, "there is")
    .replace(/\b(?:cos|coz|cause|'cause|cuz)\b/giu, "because")
    .replace(/(?<=\b(?:yes|yep|yeah)) (?=(?:it|that|this|they|these|those) (?:is|are) )/giu, ", ")
    .trim();
}
