import type { Reader, TimeLeft } from "../ports/reader.ts";
import { type Content, contentOf } from "../reading/content.ts";
import type { FileFacts, Left, Part } from "../reading/facts.ts";
import { foldersOf, safeFileName, tellApart } from "../reading/file-name.ts";
import { type Judged, judge, type Known } from "../reading/judge.ts";
import { readHeader } from "../reading/letter/letter.ts";
import type { AttachedText } from "../reading/reply/statements.ts";
import type { Attachment, FileKind } from "../trade/attachment.ts";
import type { Letter } from "../trade/letter.ts";
import { withPrintedCopies } from "./printed-copies.ts";

/** How much of a letter is opened. The rest is kept in the record, and the answer says so. */
export interface Caps {
  readonly files: number;
  /** Bytes of one file, and of all files together. Files within archives count too. */
  readonly each: number;
  readonly total: number;
  /** Archives within archives. */
  readonly depth: number;
  /** For all files of a letter together: processor time, and time by the clock, in milliseconds. */
  readonly time: Readonly<TimeLeft>;
}

export const usualCaps: Caps = {
  files: 200,
  each: 25_000_000,
  total: 150_000_000,
  depth: 3,
  time: { processorMs: 60_000, clockMs: 600_000 },
};

/** A file of a letter, with what was found in it, or what kind it is when it was not opened. */
export interface OpenedFile {
  readonly attachment: Attachment;
  readonly facts: FileFacts | Extract<FileKind, "decoration" | "unsafe" | "late" | Left["kind"]>;
  /** The date of the forwarded letter that it stands in. */
  readonly dated?: Date;
}

/** A letter with all that it brings. */
export interface OpenLetter {
  readonly letter: Letter;
  readonly files: readonly OpenedFile[];
  /** Links that seem to lead to files. */
  readonly links: readonly string[];
  /** Opening it does harm, so that only its header was read. */
  readonly unsafe: boolean;
}

/**
 * Opens a letter and everything in it, in a reader that may be lost. Files have the ids `<id>/1`, `<id>/2`, …; the
 * files of an archive stand behind it. If a letter cannot be opened its header is read all the same, so that its
 * sender can be told.
 */
export async function openLetter(
  reader: Reader,
  bytes: Uint8Array,
  id: string,
  caps = usualCaps,
): Promise<OpenLetter> {
  const time = { ...caps.time };
  const opened = await reader.letter(bytes, time);
  if (!opened.ok) {
    const letter = { ...(await readHeader(bytes)), text: "", attachments: [] };
    return { letter, files: [], links: [], unsafe: true };
  }
  const { parts, links, ...letter } = opened.value;
  const files = await openParts(reader, parts, id, caps, time);
  return {
    letter: { ...letter, attachments: files.map(({ attachment }) => attachment) },
    files,
    links,
    unsafe: false,
  };
}

/** Opens files, and those that are found within them. */
export async function openParts(
  reader: Reader,
  parts: readonly Part[],
  id: string,
  caps = usualCaps,
  time: TimeLeft = { ...caps.time },
): Promise<OpenedFile[]> {
  const room = { files: caps.files, bytes: caps.total };
  const found = await openAll(parts, 0, { reader, caps, room, time });
  const named = namesOf(found);
  let list = "";
  return found.map((one, i) => {
    const { file, ...rest } = named.get(one) ?? { file: "" };
    // The sheets of a list stand behind it.
    if (typeof one.facts === "object" && one.facts.kind === "list") list = file;
    const origin = one.part.list === undefined ? {} : { list: { file: list, ...one.part.list } };
    return {
      attachment: { id: `${id}/${i + 1}`, file, ...rest, ...origin, bytes: one.part.bytes },
      facts: one.facts,
      ...(one.part.dated === undefined ? {} : { dated: one.part.dated }),
    };
  });
}

type Named = Pick<Attachment, "file" | "named" | "folder">;

/** A name for each file. What came keeps its own; a sheet that was made of a list gives way to it. */
function namesOf(found: readonly OpenedPart[]): ReadonlyMap<OpenedPart, Named> {
  const all = found.toSorted((one, other) => Number("list" in one.part) - Number("list" in other.part));
  const names = tellApart(
    all.map(({ part: { name, bytes } }): Named & { file: string } => {
      const folder = foldersOf(name);
      return { file: nameOf(name, bytes), ...(folder === undefined ? {} : { folder }) };
    }),
  );
  return new Map(all.map((one, i) => [one, names[i] ?? { file: "" }]));
}

/** What the files of a letter are, with their sheets. */
export function judgeAll(files: readonly OpenedFile[], known: Known): Judged[] {
  return withPrintedCopies(
    files,
    files.map((file) => judgeOpened(file, known)),
  );
}

function judgeOpened({ attachment, facts }: OpenedFile, known: Known): Judged {
  const { bytes: _, ...file } = attachment;
  return typeof facts === "string" ? { file: { ...file, kind: facts } } : judge(facts, file, known);
}

/**
 * Texts among the files of a letter, by the names that they have there. `judged`: what the files are. The pages of a PDF
 * that is no sheet are a text too.
 */
export function textsOf(files: readonly OpenedFile[], judged: readonly Judged[] = []): AttachedText[] {
  return files.flatMap(({ attachment: { file }, facts }, i) => {
    if (typeof facts !== "object") return [];
    if ("words" in facts) return facts.words === undefined ? [] : [{ file, ...facts.words }];
    if (facts.kind !== "pdf" || judged[i]?.file.kind !== "no-form") return [];
    // A note may stand behind a purchase order.
    const pages = (facts.pages ?? []).filter(({ text }) => text.trim() !== "");
    return pages.map(({ text }) => ({ file, text, pages: true as const }));
  });
}

/** What a letter says in words: itself, and in the texts that are attached. */
export interface Words {
  readonly letter: Letter;
  readonly texts: readonly AttachedText[];
}

/** All words of a letter, its subject among them. */
export function allWords({ letter: { subject, text, otherTexts = [] }, texts }: Words): string {
  return [subject, text, ...otherTexts, ...texts.map((file) => file.text)].join("\n");
}

/** Pictures of what was seen on pages, by the names that problems have for them. */
export type Pictures = ReadonlyMap<string, Uint8Array>;

export function picturesOf(read: readonly Judged[]): Pictures {
  return new Map(read.flatMap(({ pictures }) => [...(pictures ?? [])]));
}

interface Opening {
  readonly reader: Reader;
  readonly caps: Caps;
  /** What may still be opened; grows less. */
  readonly room: { files: number; bytes: number };
  readonly time: TimeLeft;
}

interface OpenedPart {
  readonly part: Part;
  readonly facts: OpenedFile["facts"];
}

async function openAll(parts: readonly Part[], depth: number, opening: Opening): Promise<OpenedPart[]> {
  const opened = await Promise.all(parts.map(async (part) => ({ part, facts: await open(part, opening) })));
  const found: OpenedPart[] = [];
  // One archive after the other, so that room always runs out at the same files.
  for (const { part, facts } of opened) {
    const within = withinOf(facts, part);
    const isTooDeep = within !== undefined && depth >= opening.caps.depth;
    const isArchive = typeof facts === "object" && facts.kind === "archive";
    found.push({ part, facts: isArchive && isTooDeep ? "unsafe" : facts });
    if (within === undefined || (isArchive && isTooDeep)) continue;
    if (isTooDeep) for (const one of within.files) found.push({ part: one, facts: "unsafe" });
    else for (const one of await openAll(within.files, depth + 1, opening)) found.push(one);
    for (const { name, kind } of within.left)
      found.push({ part: { name, bytes: new Uint8Array(), looks: false }, facts: kind });
  }
  return found;
}

/** The files within a file: those of an archive, those inside a PDF, and the sheets that a list orders. */
function withinOf(
  facts: OpenedPart["facts"],
  { dated }: Part,
): { files: readonly Part[]; left: readonly Left[] } | undefined {
  if (typeof facts === "string") return undefined;
  const { files, left = [] }: { files?: readonly Part[] | undefined; left?: readonly Left[] } =
    facts.kind === "archive" || facts.kind === "list"
      ? facts
      : ((facts.kind === "pdf" ? facts.attached : undefined) ?? {});
  if (files === undefined) return undefined;
  return { files: dated === undefined ? files : files.map((one) => ({ dated, ...one })), left };
}

async function open(
  { bytes, looks }: Part,
  { reader, caps, room, time }: Opening,
): Promise<OpenedPart["facts"]> {
  if (looks) return "decoration";
  room.files -= 1;
  if (room.files < 0 || bytes.length > caps.each || bytes.length > room.bytes) return "too-large";
  room.bytes -= bytes.length;
  const opened = await reader.file(bytes, time);
  if (opened.ok) return opened.value;
  return opened.why === "no time left" ? "late" : "unsafe";
}

function nameOf(name: string, bytes: Uint8Array): string {
  const endings: Partial<Record<Content, string>> = { pdf: ".pdf", zip: ".zip", letter: ".eml" };
  return safeFileName(name) ?? `unnamed${endings[contentOf(bytes) ?? "rtf"] ?? ""}`;
}
