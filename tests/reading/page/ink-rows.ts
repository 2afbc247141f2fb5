import type { Ink } from "../../../src/reading/page/ink.ts";

/** Ink by its rows, as tenths: a dot is none, an X is all. */
export function ink(...rows: readonly string[]): Ink {
  const dark = Float32Array.from([...rows.join("")].map((one) => (one === "X" ? 1 : Number(one) / 10 || 0)));
  return { width: rows[0]?.length ?? 0, height: rows.length, dark };
}

/** The rows of an ink, the other way round. */
export function rowsOf({ width, height, dark }: Ink): string[] {
  const signs = Array.from(dark, (one) =>
    one === 0 ? "." : one === 1 ? "X" : `${Math.round(one * 10)}`,
  ).join("");
  return Array.from({ length: height }, (_, y) => signs.slice(y * width, (y + 1) * width));
}
