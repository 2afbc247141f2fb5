/** Words that a sentence may have at most. A tired reader loses the thread of a longer one. */
export const mostWords = 25;

/**
 * The sentences of some lines, one paragraph or point a line. What somebody typed, and the name of a file, counts as
 * one word, since we do not choose it.
 */
export function sentencesOf(lines: readonly string[], names: readonly string[] = []): string[] {
  const byLength = [...new Set(names)].toSorted((a, b) => b.length - a.length);
  return lines.flatMap((line) => {
    const told = byLength
      .reduce((rest, name) => rest.replaceAll(name, "FILE"), line)
      .replace(/“[^”]*”/g, "“QUOTED”");
    return told.split(/(?<=[.?!][”)]?)\s+/).filter((sentence) => sentence !== "");
  });
}

/** How many words a sentence has. */
export function wordsIn(sentence: string): number {
  return sentence.split(/\s+/).filter((word) => /[\p{L}\p{N}]/u.test(word)).length;
}

/** The sentences that have too many words, longest first. */
export function tooLong(sentences: readonly string[]): string[] {
  return [...new Set(sentences)]
    .filter((sentence) => wordsIn(sentence) > mostWords)
    .toSorted((a, b) => wordsIn(b) - wordsIn(a));
}

/** The lines of an answer as a page: paragraphs, points and cells, but not the legends to be cut. */
export function linesOf(page: string): string[] {
  const body = page.slice(page.indexOf("<body")).replace(/<pre[^]*?<\/pre>/g, "");
  return body
    .split(/<br>|<\/(?:p|li|td|h\d)>/)
    .map((part) =>
      part
        .replace(/<[^>]*>/g, "")
        .replace(/&lt;/g, "<")
        .replace(/&gt;/g, ">")
        .replace(/&quot;/g, '"')
        .replace(/&#39;/g, "'")
        .replace(/&amp;/g, "&")
        .replace(/\s+/g, " ")
        .trim(),
    )
    .filter((line) => line !== "");
}
