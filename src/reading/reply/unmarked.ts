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
  const found = new Set<string>();
  const lines = text.split(/\r\n|\r|\n/);
  let isAbove = true;
  const marked = lines.map((line, at) => {
    isAbove &&= isMarked(line) || leadAt(lines, at, subject) === undefined;
    const own = isAbove && !isMarked(line) ? ours.get(tokensOf(line).join(" ")) : undefined;
    if (own === undefined) return line;
    found.add(line.trim());
    return `> ${own}`;
  });
  return { text: marked.join("\n"), found };
}
