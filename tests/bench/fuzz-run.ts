import type { Reader } from "../../src/ports/reader.ts";
import { openPool } from "../../src/sandbox/pool.ts";
import { chanceOf, mutated } from "./fuzz-mutated.ts";

/** Files asked for at a time: two are read, two wait. */
const atOnce = 4;

/**
 * Reads mutations of good files in a pool and prints how often each outcome came. Arguments of the program:
 * how many (10,000), the seed (by chance), the number of the first. What came in few of them is printed with
 * its numbers, so that it can be had again alone. An outcome that throws ends the program.
 */
export async function fuzz(
  sources: readonly Uint8Array[],
  outcomeOf: (reader: Reader, bytes: Uint8Array, source: number) => Promise<string>,
): Promise<void> {
  const [count = 10_000, seed = Math.floor(Math.random() * 2 ** 31), first = 0] = process.argv
    .slice(2)
    .map(Number);
  console.log(`${count} mutations of ${sources.length} files, seed ${seed}`);
  const lost: unknown[] = [];
  const log = { info: () => undefined, warn: (fields: unknown) => void lost.push(fields) };
  const reader = openPool({ log });
  const outcomes = new Map<string, number[]>();
  const began = performance.now();
  let next = first;
  const work = async (): Promise<void> => {
    for (let i = next++; i < first + count; i = next++) {
      const source = i % sources.length;
      const bytes = mutated(sources[source] ?? new Uint8Array(), chanceOf(seed, i));
      const outcome = await outcomeOf(reader, bytes, source);
      outcomes.set(outcome, [...(outcomes.get(outcome) ?? []), i]);
    }
  };
  await Promise.all(Array.from({ length: atOnce }, work));
  await reader.close();

  const sorted = [...outcomes].toSorted(([, a], [, b]) => b.length - a.length);
  for (const [outcome, numbers] of sorted)
    console.log(
      `${String(numbers.length).padStart(7)}  ${outcome}${numbers.length <= 20 ? `  (${numbers.join(", ")})` : ""}`,
    );
  const seconds = (performance.now() - began) / 1000;
  console.log(`${lost.length} processes lost, ${seconds.toFixed(0)} s`);
  for (const fields of lost.slice(0, 20)) console.log(JSON.stringify(fields));
  const sum = sorted.reduce((all, [, numbers]) => all + numbers.length, 0);
  if (sum !== count) throw new Error(`${count} files came to ${sum} outcomes`);
}
