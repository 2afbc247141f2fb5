/*
 * Beside a no, people say what stands on the sheet that they send: "No, should be WAITING", "2. TIMER, new sheet
 * attached". Where a sheet that came has those words, this says nothing more than that it came.
 */

/** Words in capitals. */
const legend = String.raw`["“]?\p{Lu}[\p{Lu}\p{N}&'’./-]*[\p{Lu}\p{N}](?: [\p{Lu}\p{N}&](?:[\p{Lu}\p{N}&'’./-]*[\p{Lu}\p{N}])?(?!\p{Ll}))*["”]?(?![\p{L}\p{N}])`;
const legends = `${legend}(?:(?:, | and | & |, and )${legend})*`;
/** What leads to them. */
const lead = String.raw`(?:(?:(?:[Ii]t|[Tt]his|[Tt]hat|[Tt]hey|which|both) )?(?:[Ss]hould|[Mm]ust|ought to|(?:is|was|were) (?:supposed|meant) to) (?:be|read|say|have been|have read|have said)|(?:(?:[Ii]t|[Tt]hat|[Tt]hey) )?(?:will|is going to) (?:be|read|say)|(?:[Ii]t )?now (?:reads?|says?)|(?:[Ii]t|[Tt]his|[Tt]hat|which) is now|(?:(?:[Ii]t )?(?:is|was|has been) )?(?:[Cc]hanged|[Cc]orrected|[Ff]ixed|[Aa]mended) to|(?:[Ii]|[Ww]e) meant|with|[Nn]ow)`;
const tail =
  "(?: (?:of course|obviously|instead|now|in both places|on both|as you (?:say|said|thought|guessed)))?";
const told = new RegExp(
  String.raw`(?<before>^|\s|\()(?:${lead} (?<led>${legends})${tail}|(?<=\(|(?:[Nn]o|NO|[Nn]ope)[\s,.:–—-]+|^\d{1,3}\s?[.:)–—-]+\s*)(?<bare>${legends}))(?:\)|(?=[\s.,;:!–—-]|$))`,
  "gu",
);

/** A line without the words that stand on a sheet which came. It stays as it is where it says yes to anything. */
export function withoutCameWords(line: string, isThere: (words: string) => boolean): string {
  if (
    /(?<!\p{L})(?:yes|yep|yeah|ok|okay|fine|right|correct|as is|as it is|stays?|leave|keep)(?!\p{L})/iu.test(
      line,
    )
  )
    return line;
  const rest = line.replace(told, (whole, ...found) => {
    const { led, bare = led, before = "" } = found.at(-1) as Record<string, string | undefined>;
    const all = (bare ?? "").split(/, and |, | and | & /u);
    return all.every((one) => isThere(one)) ? before.replace("(", "") : whole;
  });
  const said = rest
    .replace(/\s+(?=[.,;:!]|$)/gu, "")
    .replace(/(?<!^\d{1,3})[.,;:–—-]\s*(?=[.,;:!])/gu, "")
    .replace(/(?<=^\d{1,3}[.:)–—-])\s*,/u, "")
    .replace(/^[\s.,;:–—-]+/u, "");
  return /\p{L}/u.test(said) ? said : line;
}
