import { speaksAgainst } from "./doubt.ts";
import { moreWords, tokensOf, withoutLinks } from "./word-bag.ts";

/**
 * What a quotation says beyond the text that it quotes: new words, and lines that speak against something and stand
 * nowhere so, although their words do. `quoted` are its lines, which may be broken in other places.
 */
export function remarksIn(quoted: readonly string[], text: string): string[] {
  const words = moreWords(quoted.join("\n"), text);
  const known = new Set(tokensOf(text));
  const running = ` ${tokensOf(text).join(" ")} `;
  const whole = new Set(text.split("\n").map((line) => tokensOf(line).join(" ")));
  const strange = new Set(words.filter((word) => !known.has(word)));
  const turned = quoted.filter((quotation, i) => {
    const line = withoutLinks(quotation);
    if (!speaksAgainst(line)) return false;
    const tokens = tokensOf(line);
    const said = tokens.join(" ");
    if (tokens.some((token) => strange.has(token))) return true;
    // A program that runs the words of a table together also loses their order.
    if (whole.has(said) || tokens.some((token) => !known.has(token))) return false;
    // A word alone has been broken off the line before it, or is somebody's own.
    const runs = tokens.length < 2 ? [...tokensOf(quoted[i - 1] ?? ""), said].join(" ") : said;
    return !runs.includes(" ") || !running.includes(` ${runs} `);
  });
  return [...(words.length > 0 ? [words.join(" ")] : []), ...turned];
}
