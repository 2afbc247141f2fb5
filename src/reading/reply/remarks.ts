import { speaksAgainst } from "./doubt.ts";
import { moreWords, tokensOf, withoutLinks } from "./word-bag.ts";

/**
 * What a quotation says that the text has not which it quotes: words, and lines that speak against something
 * and stand nowhere so, though their words do. `quoted` are its lines, which may be broken in other places.
 */
export function remarksIn(quoted: readonly string[], text: string): string[] {
  const words = moreWords(quoted.join("\n"), text);
  const known = new Set(tokensOf(text));
  const running = ` ${tokensOf(text).join(" ")} `;
  const whole = new Set(text.split("\n").map((line) => tokensOf(line).join(" ")));
  const strange = new Set(words.filter((word) => !known.has(word)));
  const turned = quoted.filter((quotation) => {
    const line = withoutLinks(quotation);
    if (!speaksAgainst(line)) return false;
    const tokens = tokensOf(line);
    const said = tokens.join(" ");
    if (tokens.some((token) => strange.has(token))) return true;
    // Where a program runs words of a table together, their order is lost as well.
    if (whole.has(said) || tokens.some((token) => !known.has(token))) return false;
    return tokens.length < 2 || !running.includes(` ${said} `);
  });
  return [...(words.length > 0 ? [words.join(" ")] : []), ...turned];
}
