const first = String.raw`(?<![\p{L}\p{N}])(?<letters>\p{L}{1,6})(?<joint>[-. ]?)\d{1,4}`;
const between = String.raw`(?: ?(?:[-–—,/&+]|\.{2,3}) ?(?:and )?| (?:to|thru|through|till?|and) )`;
const next = String.raw`(?:\k<letters>[-. ]?)?\d{1,4}(?![\p{L}\p{N}]|[-.]\d)`;
/** "S-101 to 104", "S-101–104", "S-101/102/103", "S-101, 102 and 103". */
const series = new RegExp(`${first}(?:${between}${next})+`, "giu");
const bare = new RegExp(`(?<=\\d)${between}(?=\\d)`, "giu");

/** Letters and digits alone, the same in capitals or not. */
export function bareOf(words: string): string {
  return words.replaceAll(/[^\p{L}\p{N}]/gu, "").toUpperCase();
}

/** Words in which stations that are named by their numbers alone are named whole: "S-101 to 103" is "S-101 to S-103". */
export function withWholeMarks(words: string, marks: readonly string[]): string {
  const known = new Set(marks.map(bareOf));
  return words.replace(series, (typed: string, ...parts) => {
    const { letters = "", joint = "" } = parts.at(-1) as Readonly<Record<string, string>>;
    const numbers = typed.match(/\d+/gu) ?? [];
    const areMarks = numbers.every((number) => known.has(bareOf(`${letters}${number}`)));
    if (known.has(bareOf(typed)) || !areMarks) return typed;
    return typed.replaceAll(bare, (join) => `${join}${letters}${joint}`);
  });
}
