/** So many stations at most are meant by the first and the last of them. */
const longest = 60;

const first = String.raw`(?<![\p{L}\p{N}])(?<letters>\p{L}{1,6})(?<joint>[-. ]?)(?<from>\d{1,4})`;
const next = String.raw`(?:\k<letters>[-. ]?)?`;
const end = String.raw`(?![\p{L}\p{N}]|[-.]\d)`;
/** "S-101 to S-104", "S-101 thru 104", "S-101–104". */
const ranges = new RegExp(
  `${first}(?: ?(?:[-–—]|\\.{2,3}) ?| (?:to|thru|through|till?|until) )${next}(?<to>\\d{1,4})${end}`,
  "giu",
);
/** "S-101/102/103", "S-101, 102 and 103". */
const lists = new RegExp(`${first}(?<others>(?:(?: ?[,/&+] ?(?:and )?| and )${next}\\d{1,4}${end})+)`, "giu");

/** Letters and digits alone, the same in capitals or not. */
export function bareOf(words: string): string {
  return words.replaceAll(/[^\p{L}\p{N}]/gu, "").toUpperCase();
}

/**
 * Words in which stations that are named by their numbers alone are named whole: "S-101 to 103" is "S-101 S-102 S-103".
 * The stations between two are named too, so that one that is missing is seen.
 */
export function withWholeMarks(words: string, marks: readonly string[]): string {
  const known = new Set(marks.map(bareOf));
  const whole = (
    typed: string,
    { letters = "", joint = "" }: Readonly<Record<string, string>>,
    numbers: string[],
  ): string => {
    const names = numbers.map((number) => `${letters}${joint}${number}`);
    return known.has(bareOf(typed)) || !known.has(bareOf(names[0] ?? "")) ? typed : names.join(" ");
  };
  return words
    .replace(ranges, (typed: string, ...parts) => {
      const named = parts.at(-1) as Readonly<Record<string, string>>;
      const { from = "", to = "" } = named;
      const count = Number(to) - Number(from) + 1;
      if (from.length !== to.length || count < 2 || count > longest) return typed;
      const numbers = Array.from({ length: count }, (_, i) =>
        String(Number(from) + i).padStart(from.length, "0"),
      );
      return whole(typed, named, numbers);
    })
    .replace(lists, (typed: string, ...parts) => {
      const named = parts.at(-1) as Readonly<Record<string, string>>;
      const { letters = "", from = "", others = "" } = named;
      const numbers = [from, ...(others.match(/\d+/gu) ?? [])];
      const areMarks = numbers.every((number) => known.has(bareOf(`${letters}${number}`)));
      return areMarks ? whole(typed, named, numbers) : typed;
    });
}
