import { dateIn, timeOf } from "../calendar/dates.ts";
import { besideLists } from "../judging/beside-lists.ts";
import type { Claim } from "../ports/store.ts";
import type { Judged } from "../reading/judge.ts";
import { forwardedInline } from "../reading/letter/forwarded-inline.ts";
import { isForwarding } from "../reading/reply/prefixes.ts";
import type { AttachedText } from "../reading/reply/statements.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Came, Letter } from "../trade/letter.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Desk } from "./desk.ts";
import { withLists } from "./lists.ts";
import { withMergedCopies } from "./merged-copies.ts";
import { judgeAll, type OpenLetter, openLetter, type Pictures, picturesOf, textsOf } from "./open.ts";
import { withoutOurs } from "./our-files.ts";
import { withWritten } from "./written.ts";

/** A letter with its files read as what they are. */
export interface OpenedLetter extends OpenLetter {
  readonly number: string;
  readonly came: Came;
  readonly read: readonly ReadFile[];
  readonly sheets: readonly Sheet[];
  /** What was seen on pages that nobody has explained. */
  readonly pictures: Pictures;
  readonly texts: readonly AttachedText[];
}

/** Opens a letter and everything in it. Its files are judged by the day on which it came. */
export async function openClaimed(
  { letter: number, receivedAt, letInAs: from }: Claim,
  bytes: Uint8Array,
  desk: Desk,
): Promise<OpenedLetter> {
  const { editions, catalogue } = desk;
  const found = await openLetter(withLists(desk.reader, desk), bytes, String(number));
  const named = from === undefined ? found : { ...found, letter: { from, ...found.letter } };
  // A letter that waited is judged by the day on which it came.
  const today = dateIn(receivedAt, desk.timeZone);
  const alone = judgeAll(named.files, { editions, catalogue, today });
  const judged = await withoutOurs(named, await withMergedCopies(named.files, alone, desk.reader), desk);
  const date = dateOf(named, judged, desk);
  const opened = { ...named, letter: { ...named.letter, ...(date === undefined ? {} : { date }) } };
  const { files: read, sheets } = besideLists({
    files: judged.map(({ file }) => file),
    sheets: withWritten(opened.files, judged),
  });
  return {
    ...opened,
    number: String(number),
    came: { receivedAt, ...(date === undefined ? {} : { dated: date }) },
    read,
    sheets,
    pictures: picturesOf(judged),
    texts: textsOf(opened.files, judged),
  };
}

/**
 * The date by which the sheets of a letter are older or newer than others: its own. Where all of them stand in letters
 * that it forwards, the oldest date of these, since whoever forwards a letter makes it no newer.
 */
function dateOf({ letter, files }: OpenLetter, judged: readonly Judged[], desk: Desk): Date | undefined {
  const own = forwardedDate(letter, desk);
  const dates = files.flatMap(({ dated = own }, i) => (judged[i]?.sheet === undefined ? [] : [dated]));
  return dates.length === 0 || dates.includes(undefined) ? letter.date : oldest([letter.date, ...dates]);
}

/** The date of what a letter forwards in its text. The sheets of that lie beside it. */
function forwardedDate(
  { text, subject }: Pick<Letter, "text" | "subject">,
  { rules: { ours }, timeZone }: Pick<Desk, "rules" | "timeZone">,
): Date | undefined {
  // A reply may quote what was forwarded long before. An answer of ours had no sheet that is older than it.
  const others = isForwarding(subject) ? forwardedInline(text, subject) : [];
  const dates = others
    .filter(({ from }) => from === undefined || !ours.includes(from))
    .map(({ written }) => written && timeOf(written.date, written.time, timeZone));
  return dates.length === 0 || dates.includes(undefined) ? undefined : oldest(dates);
}

function oldest(dates: readonly (Date | undefined)[]): Date {
  return new Date(Math.min(...dates.map((one) => one?.getTime() ?? Infinity)));
}
