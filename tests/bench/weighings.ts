import { slips } from "../../src/lettering/slips.ts";
import type { Weigh } from "../../src/lettering/words.ts";

/** By the number of slips and how common a word is, and nothing else. */
export const bySlipsAlone: Weigh = (typed, other, rank) =>
  3 * slips(typed, other) + { 0: 0, 1: 0.1, 2: 1.7 }[rank];

/** A noisy channel: what hands do more often weighs less, and so does a commoner word. Weights by trial on the tuned half. */
export const noisyChannel: Weigh = (typed, other, rank) =>
  noise(typed, other) + { 0: 0, 1: 0.3, 2: 0.9 }[rank];

/** What a slip costs by how often hands make it: another 1, these less, and the first letter is seldom wrong. */
const likely = { swapped: 0.6, doubled: 0.6, vowel: 0.7, neighbour: 0.7, leftOut: 0.8, first: 0.5 };

const keys = ["QWERTYUIOP", "ASDFGHJKL", "ZXCVBNM"];

/** Keys that touch, each row standing half a key further right than the one above. */
function touch(one: string, other: string): boolean {
  const place = (letter: string): [number, number] => {
    const y = keys.findIndex((row) => row.includes(letter));
    return [(keys[y] ?? "").indexOf(letter) + y / 2, y];
  };
  const [a, b] = [place(one), place(other)];
  return Math.abs(a[0] - b[0]) <= 1 && Math.abs(a[1] - b[1]) <= 1;
}

/** The cheapest way from what was meant to what was typed (weighted optimal string alignment). */
function noise(typed: string, meant: string): number {
  const rows: number[][] = [];
  for (let i = 0; i <= typed.length; i++) {
    const row: number[] = [];
    rows.push(row);
    for (let j = 0; j <= meant.length; j++) {
      const [t, m, before, ago] = [typed[i - 1] ?? "", meant[j - 1] ?? "", typed[i - 2], meant[j - 2]];
      const first = i <= 1 && j <= 1 ? likely.first : 0;
      const ways = [i + j === 0 ? 0 : Number.POSITIVE_INFINITY];
      const from = (up: number, left: number, cost: number): unknown =>
        ways.push((rows[i - up]?.[j - left] ?? Number.POSITIVE_INFINITY) + cost);
      if (i > 0) from(1, 0, t === before || t === m ? likely.doubled : 1 + first);
      if (j > 0) from(0, 1, m === ago || m === t ? likely.doubled : likely.leftOut + first);
      if (i > 0 && j > 0) from(1, 1, t === m ? 0 : mistaken(t, m) + first);
      if (i > 1 && j > 1 && t === ago && before === m) from(2, 2, likely.swapped);
      row.push(Math.min(...ways));
    }
  }
  return rows.at(-1)?.at(-1) ?? 0;
}

function mistaken(one: string, other: string): number {
  if (/[AEIOUY]{2}/.test(one + other)) return likely.vowel;
  return touch(one, other) ? likely.neighbour : 1;
}
