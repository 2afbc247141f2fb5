import { extentOf, type Ink, part } from "./ink.ts";
import { linesApart } from "./lines-apart.ts";

/**
 * The most that one line can be high, as a part of the font's size: from the accent of a capital down to the foot of
 * a "g".
 */
const tall = 1.2;

/** The lines of a text: bands with no ink above or below. */
export function bandsOf(ink: Ink, size: number): (Ink & { readonly bottom: number })[] {
  const extent = extentOf(ink);
  if (extent === undefined) return [];
  const isInked = Array.from({ length: ink.height }, (_, y) => {
    for (let x = 0; x < ink.width; x++)
      if ((ink.dark[y * ink.width + x] ?? 0) >= extent.peak / 2) return true;
    return false;
  });
  const bands: { top: number; bottom: number }[] = [];
  isInked.forEach((inked, y) => {
    const last = bands.at(-1);
    if (!inked) return;
    // The dot of an i does not touch its letter.
    if (last !== undefined && y - last.bottom <= 2) last.bottom = y + 1;
    else bands.push({ top: y, bottom: y + 1 });
  });
  return bands.flatMap(({ top, bottom }) => {
    const from = Math.max(0, top - 2);
    const band = part(ink, from, Math.min(ink.height, bottom + 2));
    // Some programs set lines so close that they touch.
    const lines = bottom - top > size * tall ? linesApart(band, size) : [band];
    return lines.map((line) => ({ ...line, bottom }));
  });
}
