/*
 * How a reply names the places of our questions beside their numbers, or in place of them.
 */

/** A sheet of an answer, as it is named there, and its points. */
interface Place {
  readonly names: readonly string[];
  readonly points: readonly number[];
}

/** The text of the answer that a reply goes to, and the numbers of its open questions. */
interface Answer {
  readonly open: readonly number[];
  readonly answer: string;
}

/**
 * How a line reads without the places of its numbers: "1 YES" for "1 YES (B-1)" and for "FM-72: 1 YES", and for "B-1:
 * yes" where one point alone is about B-1. A number with another place stays as it is.
 */
export function withoutPlaces({ answer, open }: Answer): (line: string) => string {
  const ways = [...placesIn(answer).flatMap((place) => waysOf(place, open)), ...orderIn(answer)];
  return (line) => ways.reduce((said, [pattern, plain]) => said.replace(pattern, plain), line);
}

type Way = readonly [RegExp, string];

const begins = String.raw`(?<=^|[.,;:]\s|\n|\band )`;
const ends = String.raw`(?=\s*(?:$|[.,;\n]| and (?=\S)))`;

function waysOf({ names, points }: Place, open: readonly number[]): Way[] {
  if (names.length === 0) return [];
  const place = `(?:${names.map((name) => RegExp.escape(name)).join("|")})(?:\\.pdf)?(?![\\p{L}\\p{N}-])`;
  const asked = points.filter((point) => open.includes(point));
  const withNumber = asked.flatMap((point): Way[] => [
    [
      new RegExp(
        `${begins}(#?${point} ?[:.)=–-]{0,2} ?(?:yes|no))(?: ?\\(${place}\\)|,? (?:[–—-] )?(?:for |on |at )?${place})${ends}`,
        "giu",
      ),
      "$1",
    ],
    [new RegExp(`${begins}(#?${point}) ?\\(${place}\\)`, "giu"), "$1"],
    [
      new RegExp(
        `${begins}${place}(?: ?[:,–—-])? (?=#?${point}(?!\\d) ?[:.)=–-]{0,2} ?(?:yes|no)\\b)`,
        "giu",
      ),
      "",
    ],
  ]);
  const [only] = asked;
  if (only === undefined || points.length > 1) return withNumber;
  return [
    ...withNumber,
    [new RegExp(`${begins}${place} ?[:=–—-]? ?(yes|no)(?!\\p{L})`, "giu"), `${only} $1`],
    [new RegExp(`${begins}(yes|no) (?:to|for|on) ${place}${ends}`, "giu"), `${only} $1`],
  ];
}

/** The one order that an answer is about, as it stands in front of a number. */
function orderIn(answer: string): Way[] {
  const numbers = new Set(
    [...answer.matchAll(/^Order (\S+?)(?:,.*)?\n=+$/gmu)].map(([, number = ""]) => number),
  );
  const [number] = numbers;
  if (number === undefined || numbers.size > 1) return [];
  const name = `(?:order )?${RegExp.escape(number)}`;
  return [
    [new RegExp(`^${name}(?: ?[:,–—-])? (?=#?\\d{1,4} ?[:.)=–-]{0,2} ?(?:yes|no)\\b)`, "iu"), ""],
    [new RegExp(`(?<=^#?\\d{1,4} ?[:.)=–-]{0,2} ?(?:yes|no)) (?:for |of )${name}(?=[.!]?$)`, "iu"), ""],
  ];
}

/** The sheets of an answer. Several that bear one mark are told apart by their files alone. */
function placesIn(answer: string): Place[] {
  const found = new Map<string, { mark?: string; readonly points: number[] }>();
  const sheetOf = (file: string) => found.get(file) ?? found.set(file, { points: [] }).get(file);
  let here: { mark?: string; readonly points: number[] } | undefined;
  let last = 0;
  for (const line of answer.split("\n")) {
    const file = /^(\S.{0,80})\.pdf$/iu.exec(line.trim())?.[1];
    const [, point] = /^ *(\d{1,4})\. /u.exec(line) ?? [];
    const [, told] = /^ {5}On: ([^,]+?)\.pdf(?: \(earlier letter\))?(?=$|\. )/iu.exec(line) ?? [];
    if (file !== undefined) here = sheetOf(file);
    else if (point !== undefined) {
      last = Number(point);
      here?.points.push(last);
    } else if (told !== undefined) sheetOf(told)?.points.push(last);
    else if (/^\S/u.test(line) && here?.points.length === 0)
      here.mark = /^(?:Device alone|Device|Plate), (\S+?)(?=[,; ]|$)/u.exec(line)?.[1] ?? "";
    else if (/^\S/u.test(line)) here = undefined;
  }
  const sheets = [...found].map(([name, sheet]) => ({ name, mark: "", ...sheet }));
  const marks = Map.groupBy(sheets, ({ mark }) => mark);
  return sheets.map(({ name, mark, points }) => ({
    names: [name, ...(marks.get(mark)?.length === 1 ? [mark] : [])].filter((one) => /\d/u.test(one)),
    points,
  }));
}
