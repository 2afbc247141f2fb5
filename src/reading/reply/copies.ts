import { leadAt } from "./leads.ts";

/** So many letters and digits in a row are no chance. */
const shortestCopy = 60;
/** In characters. Nobody writes so much around a copy of an answer. */
const longestText = 100_000;

/** An answer of ours in words. */
interface Quoted {
  readonly text: string;
  readonly subject: string;
}

/**
 * Marks what stands copied from our answer without a mark, above any quotation. A program may have broken its lines
 * elsewhere, so lines are known by their letters and digits, which follow one another as in the answer. A line of the
 * sender between them stays as it is, and so do words of his that the answer repeats within a line.
 */
export function withCopiesMarked(text: string, { text: answer, subject }: Quoted): string {
  if (text.length > longestText) return text;
  const ours = streamOf(answer);
  const lines = text.split(/\r\n|\r|\n/);
  const end = lines.findIndex((_, at) => leadAt(lines, at, subject) !== undefined);
  const above = (end < 0 ? lines : lines.slice(0, end)).map(bare);
  const copied = new Set<number>();
  for (let at = 0; at < above.length; ) {
    const next = runAt(above, at, ours);
    for (let i = at; i < next; i++) copied.add(i);
    at = Math.max(next, at + 1);
  }
  return copied.size === 0 ? text : lines.map((line, i) => (copied.has(i) ? `> ${line}` : line)).join("\n");
}

/** The letters and digits of an answer in a row, and where its lines begin and end in it. */
interface Stream {
  readonly all: string;
  readonly begins: ReadonlySet<number>;
  readonly ends: ReadonlySet<number>;
}

function streamOf(answer: string): Stream {
  const [begins, ends] = [new Set<number>(), new Set<number>()];
  let all = "";
  for (const line of answer.split("\n").map(bare)) {
    begins.add(all.length);
    all += line;
    ends.add(all.length);
  }
  return { all, begins, ends };
}

/** The line behind the longest copy that begins with a line; the line itself where none does. */
function runAt(lines: readonly string[], at: number, { all, begins, ends }: Stream): number {
  const first = lines[at] ?? "";
  if (first === "") return at;
  let [longest, next] = [shortestCopy - 1, at];
  for (let from = all.indexOf(first); from >= 0; from = all.indexOf(first, from + 1)) {
    if (!begins.has(from)) continue;
    let end = from;
    for (let i = at; i < lines.length; i++) {
      const line = lines[i] ?? "";
      if (!all.startsWith(line, end)) break;
      end += line.length;
      if (line !== "" && ends.has(end) && end - from > longest) [longest, next] = [end - from, i + 1];
    }
  }
  return next;
}

/** Letters and digits alone. */
function bare(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");
}
