import { type Ink, inkedPart, room } from "./ink.ts";

/**
 * A stroke along a row. It covers so many pixels beside the letters, and such a part of them. They are so much darker
 * than they should be, and should be no darker than `pale`.
 */
const stroke = { pixels: 8, part: 0.7, dark: 0.15, pale: 0.15 };
/**
 * A white line across the upright strokes of letters: how many pixels the strokes go on up and down, how dark they
 * are, and what is left of them and of their row.
 */
const stem = { on: 3, dark: 0.45, ink: 1.2, part: 0.55, ofRow: 0.65 };
/**
 * A row of letters that is rubbed out: the part that is left, its least ink, and how far it lies from the letters'
 * edges, in pixels.
 */
const rubbed = { part: 0.35, ink: 1, edge: 3 };

/** Whether a thin line, dark or white, runs through a whole text. */
export function isStruck(seen: Ink, wanted: Ink): boolean {
  const { width, height } = wanted;
  const { left, top, right, bottom } = inkedPart(wanted);
  for (let y = 0; y < height; y++) {
    let [beside, inked, all, both, upright, kept, inside, stays] = [0, 0, 0, 0, 0, 0, 0, 0];
    for (let x = left + room; x < right - room; x++) {
      const [is, should] = [seen.dark[y * width + x] ?? 0, wanted.dark[y * width + x] ?? 0];
      if (should < stroke.pale) beside++;
      if (should < stroke.pale && is >= should + stroke.dark) inked++;
      all += should;
      both += Math.min(is, should);
      const inner = innerAt(wanted, x, y);
      inside += inner;
      stays += Math.min(is, inner);
      if (!isUpright(wanted, x, y)) continue;
      upright += should;
      kept += Math.min(is, should);
    }
    if (upright >= stem.ink && kept < stem.part * upright && both < stem.ofRow * all) return true;
    if (beside >= stroke.pixels && inked >= stroke.part * beside) return true;
    const isInside = y >= top + room + rubbed.edge && y < bottom - room - rubbed.edge;
    if (isInside && inside >= rubbed.ink && stays < rubbed.part * inside) return true;
  }
  return false;
}

/**
 * How dark a pixel is that has ink above and below it. At the feet of letters, half a pixel of height decides: the edge
 * of the ink lies there, above the foot of a "y".
 */
function innerAt({ width, dark }: Ink, x: number, y: number): number {
  const at = y * width + x;
  return Math.min(dark[at] ?? 0, dark[at - width] ?? 0, dark[at + width] ?? 0);
}

/** Whether a letter is equally dark above and below a pixel, so that the exact row does not matter. */
function isUpright({ width, height, dark }: Ink, x: number, y: number): boolean {
  if (y < stem.on || y + stem.on >= height) return false;
  for (let j = y - stem.on; j <= y + stem.on; j++) if ((dark[j * width + x] ?? 0) < stem.dark) return false;
  return true;
}
