/** The letters of a keyboard, each row standing half a key further right than the one above. */
const rows = ["QWERTYUIOP", "ASDFGHJKL", "ZXCVBNM"];

/** Keys that touch. */
function touch(one: string, other: string): boolean {
  const place = (letter: string): readonly [number, number] => {
    const y = rows.findIndex((row) => row.includes(letter));
    return [(rows[y] ?? "").indexOf(letter) + y / 2, y];
  };
  const [a, b] = [place(one), place(other)];
  return Math.abs(a[0] - b[0]) <= 1 && Math.abs(a[1] - b[1]) <= 1;
}

/**
 * Whether the one slip between two words is one that hands often make: two letters swapped, one left out or added
 * behind the first, a key beside the right one, a vowel for a vowel. Common practice, no source.
 */
export function isUsualSlip(typed: string, meant: string): boolean {
  if (typed.length !== meant.length) return typed[0] === meant[0];
  const at = [...typed].findIndex((letter, i) => letter !== meant[i]);
  const [wrong, right] = [typed[at] ?? "", meant[at] ?? ""];
  return typed[at + 1] === right || touch(wrong, right) || /[AEIOUY]{2}/.test(wrong + right);
}
