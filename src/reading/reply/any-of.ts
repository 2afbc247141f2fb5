/** A pattern of words and phrases as they stand in a sentence. Line breaks in the lists say nothing. */
export function anyOf(...lists: readonly string[]): RegExp {
  const all = lists.map((list) => list.replace(/\n\s*/gu, "")).join("|");
  return new RegExp(`(?<![\\p{L}\\p{N}'’-])(?:${all})(?![\\p{L}\\p{N}])`, "iu");
}
