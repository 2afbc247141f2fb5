import { oneLine } from "../answer/one-line.ts";
import { type Point, placesIn, type Waiting } from "./people.ts";

/** Of each thing so many points are told. */
const mostPoints = 12;

/** So many sheets that may belong elsewhere are named. */
const mostSheets = 6;

/** What waits for somebody, each in a few lines: what it is, whom to call, its points, what to do. */
export function peopleLines(waiting: readonly Waiting[], now: Date): string[] {
  return waiting.map((one, i) => `${`${i + 1}.`.padStart(3)} ${waitingText(one, now).join("\n    ")}`);
}

function waitingText(one: Waiting, now: Date): string[] {
  const { order, contacts, points, since } = one;
  const told = points.slice(0, mostPoints).map((point) => oneLine(`${nameOf(point)}${point.says}`, 200));
  const more = points.length > mostPoints ? [`… and ${points.length - mostPoints} more`] : [];
  return [
    `${titleOf(one)} (waits ${spanOf(since, now)})`,
    ...contacts.map((contact) => `call ${oneLine(contact, 120)}`),
    ...told,
    ...more,
    ...todo(one, order),
  ];
}

function nameOf(point: Point): string {
  const { number, letter } = point;
  if (number !== undefined) return `${number}. ${placesIn(point)}`;
  return letter === undefined ? "" : `letter ${letter}: `;
}

function titleOf({ what, order, project, letters: [letter] }: Waiting): string {
  const name =
    order === undefined
      ? `Letter ${letter}`
      : order === ""
        ? "An order without a number"
        : `Order ${oneLine(order, 40)}`;
  const site = project === undefined ? "" : `, ${oneLine(project, 60)}`;
  return {
    undelivered: `${name}: its answer did not arrive`,
    copy: `${name}: its manager had no copy`,
    held: `${name}: not taken, and nothing of it is checked`,
    note: `${name}: what one of us did could not be taken`,
    order: `${name}${site}`,
    letter: `${name}, about no order`,
  }[what];
}

/** What settles it. */
function todo({ what, letters, points }: Waiting, order = ""): string[] {
  const [letter] = letters;
  if (what === "undelivered") return [`→ call or write, then: burin settle --letter ${letter} --aside`];
  if (what === "copy") return [`→ tell the manager, then: burin settle --letter ${letter} --aside`];
  if (what === "held")
    return [`→ if it is genuine: burin settle --letter ${letter} --let-in; if not: --aside`];
  if (what === "note")
    return [`→ do it again if it still holds, then: burin settle --letter ${letter} --aside`];
  if (what === "letter") return [`→ answer it, then: burin settle --letter ${letter} --aside`];
  const numbers = points.flatMap(({ number }) => number ?? []);
  const said = [
    ...new Set(points.flatMap((point) => (point.number === undefined ? (point.letter ?? []) : []))),
  ];
  const [sheet, ...others] = new Set(points.flatMap(({ sheets = [] }) => sheets));
  const more = others.slice(0, mostSheets - 1).join(" or ");
  const dealtWith = said.map(
    (one) => `→ once what letter ${one} says is dealt with: burin settle --letter ${one} --aside`,
  );
  if (order === "")
    return [
      ...(numbers.length === 0 ? [] : ["→ ask for its number: its points cannot be settled without one"]),
      ...dealtWith,
    ];
  const isToRelease = points.some((point) => point.isToRelease === true);
  return [
    ...(numbers.length === 0
      ? []
      : [`→ burin settle ${shellWord(order)} ${numbers[0]} --yes, or --no, or --say "…"`]),
    ...(sheet === undefined
      ? []
      : [
          `→ if a sheet belongs elsewhere: burin settle --sheet ${sheet} --station MARK, or --position N, or --order NUMBER${more === "" ? "" : ` (or sheet ${more})`}`,
        ]),
    ...(isToRelease ? [`→ burin release ${shellWord(order)} --by NAME`] : []),
    ...dealtWith,
  ];
}

/**
 * A stranger's text as one word of a command that somebody copies: nothing in it is run. What is invisible in it goes,
 * since numbers are compared without it. POSIX.1-2024, Shell Command Language, 2.2.2
 */
function shellWord(text: string): string {
  return `'${oneLine(text, 200).replaceAll("'", "'\\''")}'`;
}

/** "5 min", "3 h", "2 days". */
function spanOf(since: Date, now: Date): string {
  const minutes = Math.max(0, Math.floor((now.getTime() - since.getTime()) / 60_000));
  if (minutes < 120) return `${minutes} min`;
  if (minutes < 48 * 60) return `${Math.floor(minutes / 60)} h`;
  return `${Math.floor(minutes / (24 * 60))} days`;
}
