import { isMarked, leadAt } from "./leads.ts";
import { tokensOf } from "./word-bag.ts";

/** Fewer words may be the sender's own. */
const fewestWords = 4;

/**
 * Marks the lines of our answer that stand without a mark between the sender's own lines. Only whole lines are known,
 * above a quotation, and below the header of one that is our answer and in which somebody has written. `found` are those
 * lines as they stood, trimmed.
 */
export function withMarks(
  text: string,
  asked: { readonly subject: string; readonly answer: string },
): { readonly text: string; readonly found: ReadonlySet<string> } {
  const { subject } = asked;
  const typed = text.split(/\r\n|\r|\n/);
  const all = linesOf(asked.answer, typed);
  const known = new Set(["", ...all.map((line) => line.trim())]);
  const ours = new Map(
    all
      .map((line) => [line, tokensOf(line)] as const)
      .filter(([, { length }]) => length >= fewestWords)
      .map(([line, tokens]) => [tokens.join(" "), line]),
  );
  const found = new Set<string>();
  const split = apart(typed, known, found);
  const lines = split.map(({ line }) => line);
  const end = lines.findIndex((line, at) => !isMarked(line) && leadAt(lines, at, subject) !== undefined);
  const isOurs = runsIn(asked.answer, known);
  const isWritten = end >= 0 && isWrittenIn(lines, end, isOurs, asked);
  const above = end < 0 || isWritten ? lines : lines.slice(0, end);
  const quoted = above.map((line, at) => {
    if (isMarked(line)) return undefined;
    const isBroken = isWritten && at > end && line.trim() !== "" && isOurs(line);
    return ours.get(tokensOf(line).join(" ")) ?? (isBroken ? line : undefined);
  });
  const marked = lines.map((line, at) => {
    const isBeside = (step: 1 | -1): boolean => {
      let next = at + step;
      while (
        next >= 0 &&
        next < above.length &&
        quoted[next] === undefined &&
        (split[next]?.isBehind === true || known.has(above[next]?.trim() ?? ""))
      )
        next += step;
      return quoted[next] !== undefined;
    };
    // A short line of ours, "PLEASE CONFIRM", is known by those around it.
    const isShort = at < above.length && line.trim() !== "" && known.has(line.trim());
    const own = quoted[at] ?? (isShort && isBeside(-1) && isBeside(1) ? line : undefined);
    if (own === undefined) return line;
    found.add(line.trim());
    return `> ${own}`;
  });
  return { text: marked.join("\n"), found };
}

/** The lines of an answer, and lines of a reply that are the beginning of one: its reference is taken out of replies. */
function linesOf(answer: string, typed: readonly string[]): string[] {
  const all = answer.split("\n");
  const isBegun = (line: string): boolean =>
    tokensOf(line).length > 1 && all.some((one) => one.trim().startsWith(`${line.trim()} `));
  return [...all, ...typed.filter((line) => !isMarked(line) && isBegun(line))];
}

/** Lines, with what somebody wrote behind one of ours on a line of its own. */
function apart(
  lines: readonly string[],
  known: ReadonlySet<string>,
  found: Set<string>,
): { readonly line: string; readonly isBehind?: true }[] {
  const long = [...known].filter((line) => tokensOf(line).length >= fewestWords);
  return lines.flatMap((line) => {
    const ours = isMarked(line) ? undefined : long.find((one) => line.trim().startsWith(`${one} `));
    if (ours === undefined) return [{ line }];
    found.add(line.trim());
    return [{ line: ours }, { line: line.trim().slice(ours.length).trim(), isBehind: true }];
  });
}

/** Whether a line stands in an answer, though a program may have broken it elsewhere. "Yes" alone is the sender's. */
function runsIn(answer: string, known: ReadonlySet<string>): (line: string) => boolean {
  const running = ` ${tokensOf(answer).join(" ")} `;
  return (line) =>
    known.has(line.trim()) ||
    (tokensOf(line).length > 1 && running.includes(` ${tokensOf(line).join(" ")} `));
}

/** Whether our whole answer stands below a header without a mark, with lines of the sender between its own. */
function isWrittenIn(
  lines: readonly string[],
  at: number,
  isOurs: (line: string) => boolean,
  { subject }: { readonly subject: string },
): boolean {
  const lead = leadAt(lines, at, subject);
  if (lead?.sure !== true || lead.lines < 1) return false;
  const below = lines.slice(at + lead.lines).filter((line) => line.trim() !== "");
  const strange = below.filter((line) => !isOurs(line));
  return (
    !below.some(isMarked) && isOurs(below[0] ?? "") && strange.length > 0 && strange.length * 2 < below.length
  );
}
