import type { Printed } from "./outline.ts";

/**
 * Pieces of text → words that stand together on a line. Programs print a label in pieces, and stars that say that
 * something must be filled in.
 */
export function joined(pieces: readonly Printed[]): Printed[] {
  const rows: Printed[] = [];
  for (const piece of pieces.toSorted((a, b) => b.box[1] - a.box[1] || a.box[0] - b.box[0])) {
    const at = rows.findIndex((row) => continues(row, piece));
    const row = rows[at];
    if (row === undefined) rows.push(piece);
    else rows[at] = together(row, piece);
  }
  return rows
    .map((row) => ({ ...row, text: row.text.replace(/[*_.…\s]+$|^[*\s]+/g, "").replace(/\s+/g, " ") }))
    .filter(({ text }) => text !== "");
}

function continues(row: Printed, { page, box }: Printed): boolean {
  const height = row.box[3] - row.box[1];
  const gap = box[0] - row.box[2];
  return (
    row.page === page &&
    Math.abs(row.box[1] - box[1]) < 0.2 * height &&
    gap > -0.5 * height &&
    gap < 0.45 * height
  );
}

function together(row: Printed, { box, text }: Printed): Printed {
  const [left, bottom, right, top] = row.box;
  const blank = box[0] - right > 0.12 * (top - bottom) ? " " : "";
  return {
    ...row,
    text: `${row.text}${blank}${text}`,
    box: [left, Math.min(bottom, box[1]), Math.max(right, box[2]), Math.max(top, box[3])],
  };
}
