import { isMarked, leadAt } from "./leads.ts";
import { tokensOf } from "./word-bag.ts";

/** Fewer words may be the sender's own. */
const fewestWords = 4;

/**
 * Marks the lines of our answer that stand without a mark between the sender's own lines. Only whole lines are known,
 * and only above a quotation. `found` are those lines as they stood, trimmed.
 */
export function withMarks(
  text: string,
  { subject, answer }: { readonly subject: string; readonly answer: string },
): { readonly text: string; readonly found: ReadonlySet<string> } {
  const ours = new Map(
    answer
      .split("\n")
      .map((line) => [line, tokensOf(line)] as const)
      .filter(([, { length }]) => length >= fewestWords)
      .map(([line, tokens]) => [tokens.join(" "), line]),
  );
  const known = new Set(["", ...answer.split("\n").map((line) => line.trim())]);
  const lines = text.split(/\r\n|\r|\n/);
  const end = lines.findIndex((line, at) => !isMarked(line) && leadAt(lines, at, subject) !== undefined);
  const above = end < 0 ? lines : lines.slice(0, end);
  const quoted = above.map((line) => (isMarked(line) ? undefined : ours.get(tokensOf(line).join(" "))));
  const found = new Set<string>();
  const marked = lines.map((line, at) => {
    const isBeside = (step: 1 | -1): boolean => {
      let next = at + step;
      while (
        next >= 0 &&
        next < above.length &&
        quoted[next] === undefined &&
        known.has(above[next]?.trim() ?? "")
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
