/**
 * What a terminal may be shown. A stranger's text could hold what moves its cursor (ECMA-48, 5.2 to 5.4) or turns the
 * direction of words (Unicode Standard Annex #9, 2.1 to 2.3); each such sign becomes "\uFFFD".
 */
export function forTerminal(text: string): string {
  return text.replaceAll(/[^\P{Cc}\n\t]|[\u202A-\u202E\u2066-\u2069]/gu, "\uFFFD");
}
