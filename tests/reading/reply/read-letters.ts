import { readFileSync } from "node:fs";
import { read } from "./read-reply.ts";

/** Answers of this desk, by name. tests/bench/reply-sets.ts reads replies to them too. */
const letters = JSON.parse(readFileSync("tests/bench/replies/letters.json", "utf8")) as Readonly<
  Record<string, { questions: number[]; fixes: number[]; answer: string }>
>;

/** What a reply to one of these answers says. It brings the sheets that it tells of. */
export function readTo(
  letter: string,
  text: string,
  onSheets: readonly string[] = [],
): ReturnType<typeof read> {
  const { questions, fixes, answer } = letters[letter] ?? { questions: [], fixes: [], answer: "" };
  return read(text, {
    open: questions,
    others: fixes.length,
    answer,
    bringsSheets: /attached|anbei|Anhang/u.test(text),
    onSheets,
  });
}
