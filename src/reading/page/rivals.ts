import { drawn, type Glyph, type Glyphs } from "./glyphs.ts";
import { alikeWithin, blurred, type Ink } from "./ink.ts";

/** Small letters that look alike in print. For capitals and digits, which legends are made of, it is measured. */
const small =
  "hn hb hk nr nm nu ce co eo ae oa tf uv vy vu bh bo gq gy pq dq da do sz rl rf rt es en eh on ou og oq op an ne nd nc ah as sa so sc ua ud uo up us tr".split(
    " ",
  );

/** Two characters may be taken for one another if they are at least so alike when drawn over each other. */
const leastAlike = 0.5;

const found = new WeakMap<Glyphs, Map<string, Glyph[]>>();

/**
 * The letters and digits that a character may be taken for. Signs have none, since programs draw quotation marks in
 * their own ways.
 */
export function rivalsOf(character: string, glyphs: Glyphs): Glyph[] {
  const known = found.get(glyphs) ?? new Map<string, Glyph[]>();
  found.set(glyphs, known);
  const before = known.get(character);
  if (before !== undefined) return before;
  const own = glyphs.get(character);
  const rivals = own === undefined ? [] : candidates(character, own, glyphs);
  known.set(character, rivals);
  return rivals;
}

function candidates(character: string, own: Glyph, glyphs: Glyphs): Glyph[] {
  const isLarge = (one: string): boolean => /[A-Z0-9]/.test(one);
  if (!isLarge(character))
    return small.flatMap(([one = "", other = ""]) =>
      one === character ? (glyphs.get(other) ?? []) : other === character ? (glyphs.get(one) ?? []) : [],
    );
  return [...glyphs].flatMap(([other, glyph]) =>
    other !== character && isLarge(other) && likeness(own, glyph) >= leastAlike ? [glyph] : [],
  );
}

/** How alike two characters are, with their left edges over each other or their middles. */
function likeness(one: Glyph, other: Glyph): number {
  const middle = ({ ink }: Glyph): number => (ink.left + ink.right) / 2;
  const own = inkIn(one, 0);
  return Math.max(
    ...[other.ink.left - one.ink.left, middle(other) - middle(one)].map((by) =>
      alikeWithin(own, inkIn(other, Math.round(by * drawn.size)), 0, own.width),
    ),
  );
}

/** So many pixels of a letter's cell are taken as one, which is about as fine as a page shows it. */
const coarse = 2;

/** A letter's ink, moved to the left by so many pixels of its cell. How strong it is does not matter. */
function inkIn({ sums, side }: Glyph, by: number): Ink {
  const cells = Math.floor((side - 1) / coarse);
  const dark = new Float32Array(cells * cells);
  const at = (x: number, y: number): number => sums[y * side + Math.max(0, Math.min(side - 1, x))] ?? 0;
  for (let j = 0; j < cells; j++)
    for (let i = 0; i < cells; i++) {
      const [left, top] = [i * coarse + by, j * coarse];
      const [right, bottom] = [left + coarse, top + coarse];
      dark[j * cells + i] = at(right, bottom) - at(left, bottom) - at(right, top) + at(left, top);
    }
  return blurred({ width: cells, height: cells, dark });
}
