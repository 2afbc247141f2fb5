import { decodeBody } from "./mime-body.ts";
import { addLine, type Fields, headerOfPart, noFields, type PartHeader, typeOfPart } from "./mime-header.ts";

/** A part of a letter that does not consist of parts. */
export interface Leaf extends PartHeader {
  /** Transfer encoding undone. */
  readonly bytes: Uint8Array;
}

/** A multipart that has begun. A boundary of it ends those that began in it. */
interface Multipart {
  readonly boundary: string;
  readonly kind: string;
}

/** A part whose header is being read, or whose body has begun at an offset. */
interface OpenPart {
  readonly within: string | undefined;
  readonly fields: Fields;
  body?: number;
}

/** Multiparts are opened to this depth. A deeper one is a leaf that nobody can open. */
const deepest = 30;
/** Parts of a letter, all together. It is more than a hundred times what a letter has. */
const most = 10_000;
/** Characters of a boundary, of which RFC 2046 §5.1.1 allows 70. */
const longest = 1000;

/**
 * Bytes of an e-mail → its leaves, in order. It reads on where others give up, since a leaf that is not seen is a
 * sheet that is lost. So it accepts text after a boundary, parts after the last boundary, and multiparts that never
 * end. Forwarded letters are leaves. Throws when there are more than 10,000 parts.
 */
export function leavesOf(raw: Uint8Array): Leaf[] {
  const bytes = Buffer.from(raw.buffer, raw.byteOffset, raw.byteLength);
  const leaves: Leaf[] = [];
  const open: Multipart[] = [];
  let part: OpenPart | undefined = { within: undefined, fields: noFields() };
  let ended = 0;
  let parts = 0;
  for (const { from, to, next } of linesOf(bytes)) {
    if (open.length === 0 && part?.body !== undefined) break; // it has one part, up to its end
    const hit = boundaryAt(bytes, from, to, open);
    if (hit !== undefined) {
      if (part !== undefined) leaves.push(leafOf(part, bytes.subarray(part.body ?? ended, ended)));
      if (++parts > most) throw new Error("the letter has too many parts");
      open.length = hit.level + 1;
      part = { within: hit.last ? undefined : open[hit.level]?.kind, fields: noFields() };
    } else if (
      part !== undefined &&
      part.body === undefined &&
      !addLine(part.fields, bytes.subarray(from, to))
    ) {
      // If no blank line ends the header, the body begins with the first line that cannot be in a header.
      part.body = from === to ? next : from;
      const inside = multipartOf(part, bytes, part.body);
      if (inside !== undefined && open.length < deepest) {
        open.push(inside);
        part = undefined; // text before the first boundary is for programs that know no MIME
      }
    }
    ended = to;
  }
  if (part !== undefined) leaves.push(leafOf(part, bytes.subarray(part.body ?? bytes.length)));
  return leaves;
}

function leafOf({ fields, within }: OpenPart, body: Buffer): Leaf {
  const encoding = fields.byName.get("content-transfer-encoding") ?? "";
  return { ...headerOfPart(fields, within), bytes: decodeBody(body, encoding) };
}

function* linesOf(bytes: Buffer): Generator<{ from: number; to: number; next: number }> {
  for (let from = 0; from < bytes.length; ) {
    const end = bytes.indexOf(0x0a, from);
    const next = end < 0 ? bytes.length : end + 1;
    const to = end < 0 ? bytes.length : end > from && bytes[end - 1] === 0x0d ? end - 1 : end;
    yield { from, to, next };
    from = next;
  }
}

/** Which open multipart a line is a boundary of, and whether it is the boundary after the last part. */
function boundaryAt(
  bytes: Buffer,
  from: number,
  to: number,
  open: readonly Multipart[],
): { level: number; last: boolean } | undefined {
  if (open.length === 0 || bytes[from] !== 0x2d || bytes[from + 1] !== 0x2d) return undefined;
  const line = bytes.toString("latin1", from + 2, Math.min(to, from + 2 * longest)).trimEnd();
  const exact = open.findLastIndex(({ boundary }) => line === boundary || line === `${boundary}--`);
  // RFC 2046 §5.1.1: it is enough that a line begins with the boundary. But programs number their boundaries, and
  // "--part1" must not be found in "--part10".
  const begun = open.findLastIndex(
    ({ boundary }) => line.startsWith(boundary) && /^(?:--|-$|\s)/.test(line.slice(boundary.length)),
  );
  const level = exact >= 0 ? exact : begun;
  return level < 0 ? undefined : { level, last: line.startsWith(`${open[level]?.boundary}--`) };
}

/** The multipart that begins with a header, if a boundary follows. */
function multipartOf({ fields, within }: OpenPart, bytes: Buffer, from: number): Multipart | undefined {
  const { type, boundary: named = "" } = typeOfPart(fields.byName, within);
  if (!type.startsWith("multipart/")) return undefined;
  const isThere =
    named !== "" && named.length <= longest && bytes.includes(`\n--${named}`, from - 1, "latin1");
  const boundary = isThere ? named : boundaryIn(bytes, from);
  return boundary === undefined ? undefined : { boundary, kind: type.slice("multipart/".length) };
}

/**
 * The first line that looks like a boundary. It is used if the boundary that the header names is nowhere to be found.
 */
function boundaryIn(bytes: Buffer, from: number): string | undefined {
  const text = bytes.toString("latin1", from, from + 100_000);
  return /^--([^\r\n]{1,200}?)[ \t]*\r?\ncontent-[a-z-]+[ \t]*:/im.exec(text)?.[1];
}
