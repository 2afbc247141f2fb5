import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { isBoilerplate } from "../../src/reading/reply/furniture.ts";
import { sentencesOf } from "../../src/reading/reply/idle.ts";
import { areTerms } from "../../src/reading/reply/terms.ts";
import { bindingWords } from "./binding-words.ts";
import { type Reply, read, readHalf, sets } from "./reply-sets.ts";

/** A reply whose answer has been bound by words put into one of its lines. */
export interface Splice {
  readonly reply: Reply;
  readonly words: string;
  /** The line with those words in it, and what the line said yes to without them. */
  readonly line: string;
  readonly yes: readonly number[];
  /** The whole text. */
  readonly text: string;
}

/** A number from 0 to 1 that looks random, and is the same for the same words. */
function chanceOf(...words: readonly (string | number)[]): number {
  return createHash("sha256").update(words.join("\n")).digest().readUIntBE(0, 6) / 2 ** 48;
}

/** A signature or a quotation begins. */
const heads =
  /^(?:-- ?$|_{5}|-{5}|\*?(?:From|De|Von|Da|Van|Od|Från|Fra|Lähettäjä|Kimden|Feladó|发件人|发送时间) ?[:：]|(?:On|Am|Le|El|Il|Em|Op) .*\d)/u;
const says = /\d|yes|ja|oui|s[ií]|correct|right|both|all|confirm|meant|good|stand|proceed/iu;

/** A line of a plain reply that says yes, and what to. */
interface Yes {
  readonly reply: Reply;
  readonly at: number;
  readonly yes: readonly number[];
}

function* yesLines(): Generator<Yes> {
  for (const set of sets)
    for (const half of [1, 2] as const)
      for (const { reply, got } of readHalf(set, half)) {
        // An answer below its number is one with the next line.
        const isPlain = !reply.person && !got.person && got.yes.length > 0 && got.no.length === 0;
        if (!isPlain || /^\s*#?\d{1,3}[:.)]\s*$/mu.test(reply.text)) continue;
        const lines = reply.text.split("\n");
        for (const [at, line] of lines.entries()) {
          if (heads.test(line)) break;
          // Nobody answers within a disclaimer.
          if (
            !says.test(line) ||
            line.includes("{{") ||
            line.startsWith(">") ||
            sentencesOf(line).some((one) => isBoilerplate(one) || areTerms(one))
          )
            continue;
          // What stands around a quoted point keeps its place.
          const left = read(reply, lines.with(at, "Thanks.").join("\n")).yes;
          const yes = got.yes.filter((number) => !left.includes(number));
          if (yes.length > 0) yield { reply, at, yes };
        }
      }
}

/** Binding words put at some place of lines that say yes. `each`: how many places a line and a fragment get in the mean. */
export function* splices(seed: number, each: number): Generator<Splice> {
  const lines = [...yesLines()];
  for (const words of bindingWords)
    for (const { reply, at, yes } of lines) {
      // "Twice yes" is a yes to two.
      if (chanceOf(seed, words, reply.text, at) > each || (words === "twice" && yes.length === 2)) continue;
      const all = reply.text.split("\n");
      const line = spliced(
        (all[at] ?? "").trim(),
        words,
        yes,
        chanceOf("place", seed, words, reply.text, at),
      );
      // So do "Yes x2", and "write as typed" of what it asks about.
      if (/^yes x2$/iu.test(line) || /\bwrite as typed\b/iu.test(line)) continue;
      yield { reply, words, line, yes, text: all.with(at, line).join("\n") };
    }
}

/** Words put into a sentence that says yes, at a place between 0 and 1. */
function spliced(line: string, words: string, yes: readonly number[], place: number): string {
  const sentences = line.split(/(?<=\p{L}[.!;]) (?=\S)/u);
  const answering = sentences.findIndex((one) => named(one).some((number) => yes.includes(number)));
  const at = answering < 0 ? sentences.findIndex((one) => says.test(one)) : answering;
  const parts = (sentences[at] ?? "").split(/(?<=\S)\s+/u);
  const bound = parts
    .toSpliced(Math.floor(place * (parts.length + (at < sentences.length - 1 ? 0 : 1))), 0, words)
    .join(" ");
  return sentences.with(at, bound).join(" ");
}

const named = (sentence: string): number[] =>
  [...sentence.matchAll(/\d+/gu)].map(([number]) => Number(number));

/**
 * Wishes, conditions and changes as a buyer might put them. They were written after the words of cues.ts had been
 * seen, and before those of danger.ts were.
 */
const wishes = readFileSync("tests/bench/replies/wishes.txt", "utf8").trim().split("\n");

/** Replies in which such a wish stands below a yes, behind it, before it or in its sentence, and is taken for nothing. */
export function unheardWishes(): string[] {
  const plain = { questions: [2], fixes: [], from: "Dana Whitlock", yes: [], no: [], person: true };
  return wishes
    .flatMap((wish) => [`2 YES\n${wish}`, `2 YES. ${wish}`, `2 YES, ${wish}`, `${wish} 2 YES`])
    .filter((text) => read({ ...plain, text }).yes.length > 0);
}

/** Where a wish may stand beside what tells of a sheet. */
export const framesOfWishes = {
  "behind a sheet for a point to fix": (wish: string) => `1. New sheet attached. ${wish}\n2 YES\n3 YES`,
  "behind a no with a sheet": (wish: string) => `2 YES\n3 NO, new sheet attached. ${wish}`,
  "below both": (wish: string) => `1. New sheet attached.\n2 YES\n3 NO, new sheet attached.\n${wish}`,
  "below answers, where a sheet came": (wish: string) => `2 YES\n3 YES\n${wish}`,
  "behind a yes beside a point to fix": (wish: string) => `1. New sheet attached.\n2 YES. ${wish}\n3 YES`,
} as const;

/** Wishes that nobody is told of where they stand so, on no sheet that came. Some only tell of the sheet, or of the slip that it mends. */
export function untoldWishes(frame: keyof typeof framesOfWishes): string[] {
  const plain = { questions: [2, 3], fixes: [1], from: "Dana Whitlock", yes: [], no: [], person: true };
  const brings = frame.includes("sheet");
  return wishes.filter((wish) => !read({ ...plain, brings, text: "" }, framesOfWishes[frame](wish)).person);
}

/** What of such a reply is still taken as a yes. */
export function stillYes({ reply, yes, text }: Splice): number[] {
  const got = read(reply, text);
  return yes.filter((number) => got.yes.includes(number));
}
