import { dateIn } from "../calendar/dates.ts";
import { besideLists } from "../judging/beside-lists.ts";
import { makeReport, type Report } from "../judging/report.ts";
import { announcedIn } from "../reading/reply/announces.ts";
import { statementsBeside } from "../reading/reply/beside.ts";
import { claimsIn } from "../reading/reply/claims.ts";
import type { Attachment } from "../trade/attachment.ts";
import type { Letter } from "../trade/letter.ts";
import type { Desk } from "./desk.ts";
import { withLists } from "./lists.ts";
import { withMergedCopies } from "./merged-copies.ts";
import {
  type Caps,
  judgeAll,
  type OpenLetter,
  openLetter,
  openParts,
  type Pictures,
  picturesOf,
  textsOf,
  usualCaps,
} from "./open.ts";
import { withWritten } from "./written.ts";

/** What files came to that nobody has sent, with their bytes. */
export interface Tried {
  readonly report: Report;
  readonly attachments: readonly Attachment[];
  /** What was seen on their pages, for the answer. */
  readonly pictures: Pictures;
}

/** A file by the name that it has where it comes from. */
export interface TriedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Checks files, letters (.eml) among them, as one submission. Nothing is recorded or sent. */
export async function tryFiles(
  {
    reader,
    catalogue,
    editions,
    timeZone,
    clock,
  }: Pick<Desk, "reader" | "catalogue" | "editions" | "timeZone" | "clock">,
  given: readonly TriedFile[],
  caps: Caps = usualCaps,
): Promise<Tried> {
  const { files, letters, ...letter } = await openAll(
    withLists(reader, { editions, catalogue }),
    given,
    caps,
  );
  const today = dateIn(clock.now(), timeZone);
  const read = await withMergedCopies(files, judgeAll(files, { editions, catalogue, today }), reader);
  const brought = besideLists({
    files: read.map(({ file }) => file),
    sheets: withWritten(files, read),
  });
  const known = {
    ...brought,
    texts: textsOf(files, read),
    earlier: [],
    catalogue,
    furniture: new Set<string>(),
    quoted: [],
    understood: new Set<string>(),
  };
  const statements = letters.flatMap((one) => statementsBeside(one, known));
  const brings = brought.files.some(({ kind }) => kind !== "decoration");
  const [announced] = letters.flatMap((one) => announcedIn(one, brings) ?? []);
  const report = makeReport(
    {
      ...letter,
      ...brought,
      statements,
      ...(announced === undefined ? {} : { announced }),
      claims: letters.flatMap(claimsIn),
    },
    catalogue,
  );
  return { report, attachments: files.map(({ attachment }) => attachment), pictures: picturesOf(read) };
}

/** Loose files count as one letter, numbered 0; letters are numbered after them. */
async function openAll(
  reader: Desk["reader"],
  given: readonly TriedFile[],
  caps: Caps,
): Promise<Pick<OpenLetter, "files" | "links" | "unsafe"> & { readonly letters: readonly Letter[] }> {
  const isLetter = ({ name }: TriedFile): boolean => /\.eml$/i.test(name);
  const loose = given.filter((file) => !isLetter(file)).map((file) => ({ ...file, looks: false }));
  const files = [...(await openParts(reader, loose, "0", caps))];
  const links: string[] = [];
  const letters: Letter[] = [];
  let unsafe = false;
  for (const [i, { bytes }] of given.filter(isLetter).entries()) {
    const opened = await openLetter(reader, bytes, `${i + 1}`);
    files.push(...opened.files);
    links.push(...opened.links);
    letters.push(opened.letter);
    unsafe ||= opened.unsafe;
  }
  return { files, links, letters, unsafe };
}
