import { dateIn } from "../calendar/dates.ts";
import { besideLists } from "../judging/beside-lists.ts";
import type { Claim } from "../ports/store.ts";
import type { Judged } from "../reading/judge.ts";
import type { AttachedText } from "../reading/reply/statements.ts";
import type { ReadFile } from "../trade/attachment.ts";
import type { Came } from "../trade/letter.ts";
import type { Sheet } from "../trade/sheet.ts";
import type { Desk } from "./desk.ts";
import { withLists } from "./lists.ts";
import { judgeAll, type OpenLetter, openLetter, type Pictures, picturesOf, textsOf } from "./open.ts";

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
  const judged = judgeAll(named.files, { editions, catalogue, today });
  const date = dateOf(named, judged);
  const opened = { ...named, letter: { ...named.letter, ...(date === undefined ? {} : { date }) } };
  const { files: read, sheets } = besideLists({
    files: judged.map(({ file }) => file),
    sheets: judged.flatMap(({ sheet }) => sheet ?? []),
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
function dateOf({ letter: { date }, files }: OpenLetter, judged: readonly Judged[]): Date | undefined {
  const dates = files.flatMap(({ dated }, i) => (judged[i]?.sheet === undefined ? [] : [dated?.getTime()]));
  const known = dates.filter((one) => one !== undefined);
  if (known.length === 0 || known.length < dates.length) return date;
  return new Date(Math.min(date?.getTime() ?? Infinity, ...known));
}
