/**
 * What strangers typed, made fit to stand in a line of an answer. Line ends and other control characters become
 * blanks. Invisible format characters go, such as those that turn the direction of writing. Code points that are no
 * character, or only one maker's own, become "\uFFFD". Double blanks stay, since they may be what is wrong. A text
 * longer than `most` characters keeps its two ends.
 */
export function oneLine(text: string, most: number): string {
  const line = text
    .replace(/[\p{Cc}\p{Zl}\p{Zp}]/gu, " ")
    .replace(/\p{Cf}/gu, "")
    .replace(/[\p{Cn}\p{Co}\p{Cs}]/gu, "\uFFFD");
  const characters = [...line];
  if (characters.length <= most) return line;
  const tail = Math.floor(most / 3);
  return `${characters.slice(0, most - tail - 1).join("")}…${characters.slice(-tail).join("")}`;
}

/** "A", "A and B", "A, B and C". Of more than `most` the first are named, and the rest counted. */
export function listed(items: readonly string[], most: number): string {
  const named = items.length > most ? items.slice(0, most) : items;
  const last = items.length > most ? `${items.length - most} more` : named.at(-1);
  const first = items.length > most ? named : named.slice(0, -1);
  return first.length === 0 ? (last ?? "") : `${first.join(", ")} and ${last}`;
}

/** "1 sheet", "3 sheets". */
export function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? "" : "s"}`;
}
