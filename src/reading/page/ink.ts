import { advanceOf, drawn, type Glyph, type Glyphs } from "./glyphs.ts";
import { type Area, brightness, type Picture, samePart } from "./picture.ts";
import { rivalsOf } from "./rivals.ts";

/** How dark a part of a page is where its blank is not: 0 to 1 a pixel, row by row from above. */
export interface Ink {
  readonly width: number;
  readonly height: number;
  readonly dark: Float32Array;
  /** There is none at all. */
  readonly none?: boolean;
}

const nothing = new Float32Array(0);

/** The ink that a page has more than its blank, within an area of both. */
export function inkOf(page: Picture, blank: Picture, area: Area): Ink {
  const { left, top, right, bottom } = area;
  const [width, height] = [right - left, bottom - top];
  if (samePart(page, blank, area)) return { width, height, dark: nothing, none: true };
  const dark = new Float32Array(width * height);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = (top + y) * page.width + left + x;
      const one = page.pixels[at] ?? 0;
      const other = blank.pixels[at] ?? 0;
      if (one === other) continue;
      const ground = brightness(other);
      dark[y * width + x] = Math.max(0, Math.min(1, (ground - brightness(one)) / Math.max(ground, 1)));
    }
  return { width, height, dark };
}

/** How many pixels are at least so dark. */
export function countDark({ dark }: Ink, least: number): number {
  let count = 0;
  for (const one of dark) if (one >= least) count++;
  return count;
}

/** Where the ink is, by pixels that are at least half as dark as the darkest; undefined where there is none to see. */
export function extentOf(ink: Ink): (Area & { readonly peak: number }) | undefined {
  let peak = 0;
  for (const one of ink.dark) if (one > peak) peak = one;
  if (peak < leastSeen) return undefined;
  const { width, height, dark } = ink;
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if ((dark[y * width + x] ?? 0) >= peak / 2) {
        if (x < left) left = x;
        if (x >= right) right = x + 1;
        if (y < top) top = y;
        bottom = y + 1;
      }
  return { left, top, right, bottom, peak };
}

/** Ink paler than this is not seen by a person who reads a form. */
export const leastSeen = 0.3;

/** How well ink is that of a text. */
export interface Likeness {
  /** Of the letter or digit that is least like itself, 0 to 1, and of the sign. */
  readonly worst: number;
  readonly worstSign: number;
  /** By how much a letter is more like one that looks alike than like itself; 0 where none is. */
  readonly mistaken: number;
  /** Parts of all ink that no character explains. */
  readonly more: number;
  /** Width against height of the ink, by that of the text in Helvetica: 1 where they are the same. */
  readonly stretch: number;
}

/** A character of a line: where its pen stands, as a part of the font's size. */
interface Placed {
  readonly isSign: boolean;
  /** Letters that look like it. */
  readonly rivals: readonly Glyph[];
  readonly glyph: Glyph;
  readonly pen: number;
}

/** A line of text as it would be set in Helvetica; undefined where it has characters that Helvetica has not. */
export function setLine(text: string, glyphs: Glyphs): Placed[] | undefined {
  const placed: Placed[] = [];
  let pen = 0;
  for (const character of text) {
    const glyph = glyphs.get(character);
    if (glyph !== undefined) {
      placed.push({
        glyph,
        pen,
        isSign: !/[\p{L}\p{N}]/u.test(character),
        rivals: rivalsOf(character, glyphs),
      });
      pen += glyph.advance;
    } else if (/^[ \u00a0\t]$/.test(character)) pen += advanceOf(32);
    else return undefined;
  }
  return placed;
}

/** What a line's ink covers, as parts of the font's size. */
export function measure(line: readonly Placed[]): Glyph["ink"] {
  let [left, right, bottom, top] = [Number.POSITIVE_INFINITY, 0, Number.POSITIVE_INFINITY, -1];
  for (const { glyph, pen } of line) {
    left = Math.min(left, pen + glyph.ink.left);
    right = Math.max(right, pen + glyph.ink.right);
    bottom = Math.min(bottom, glyph.ink.bottom);
    top = Math.max(top, glyph.ink.top);
  }
  return { left, right, bottom, top };
}

/** Where a line was drawn: its pen's begin and its baseline in pixels, and the size of its font across and up. */
interface Setting {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly up: number;
}

/**
 * Compares ink with a line of text, wherever in the area it stands and however large. `size` is the form's own
 * size in pixels, for texts too small to tell theirs. `cut` is the size of a text of which the right end is not seen.
 * Undefined where there is no ink, or nothing to compare with.
 */
export function likeness(
  ink: Ink,
  line: readonly Placed[],
  size: number,
  cut?: number,
): Likeness | undefined {
  const extent = extentOf(ink);
  if (extent === undefined || line.length === 0) return undefined;
  const text = measure(line);
  const [wide, high] = [text.right - text.left, text.top - text.bottom];
  const up = snapped(high < 0.3 ? size : (extent.bottom - extent.top) / high, size, high);
  const across = cut ?? snapped(wide < 0.3 ? up : (extent.right - extent.left) / wide, size, wide);
  const middle = (extent.top + extent.bottom) / 2;
  const begin = wide < 0.3 ? (extent.left + extent.right - across * wide) / 2 : extent.left;
  const setting: Setting = {
    x: begin - text.left * across,
    y: middle + ((text.top + text.bottom) / 2) * up,
    across,
    up,
  };
  // Where there is none, there is nothing to compare.
  const inked =
    cut === undefined ? inkedPart(ink) : { left: 0, top: 0, right: ink.width, bottom: ink.height };
  const seen = blurred(strongPart(ink, inked, extent.peak));
  const here = { ...setting, x: setting.x - inked.left, y: setting.y - inked.top };
  const wanted = blurred(draw(line, here, seen));
  let [worst, worstSign, mistaken] = [1, 1, 0];
  for (const placed of line) {
    const { glyph, pen, isSign } = placed;
    const left = Math.floor(here.x + (pen + glyph.ink.left) * across) - 1;
    const right = Math.ceil(here.x + (pen + glyph.ink.right) * across) + 1;
    if (cut !== undefined && right > ink.width) break;
    const like = alikeWithin(seen, wanted, left, right);
    if (isSign) worstSign = Math.min(worstSign, like);
    else worst = Math.min(worst, like);
    if (like < surely) mistaken = Math.max(mistaken, likeRival(seen, placed, here) - like);
  }
  const stretch = wide < 0.3 || high < 0.3 ? 1 : across / up;
  return { worst, worstSign, mistaken, more: unexplained(seen, wanted, cut !== undefined), stretch };
}

/** The form's own size, where what was measured is that as far as pixels tell. `parts` were measured, of the font's size. */
function snapped(measured: number, size: number, parts: number): number {
  return Math.abs(measured - size) * parts <= 1.2 ? size : measured;
}

/** What has any ink at all, with room for half a pixel's shift. */
function inkedPart({ width, height, dark }: Ink): Area {
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      if ((dark[y * width + x] ?? 0) < 0.04) continue;
      if (x < left) left = x;
      if (x >= right) right = x + 1;
      if (y < top) top = y;
      bottom = y + 1;
    }
  const room = 3;
  return {
    left: Math.max(0, left - room),
    top: Math.max(0, top - room),
    right: Math.min(width, right + room),
    bottom: Math.min(height, bottom + room),
  };
}

/** A part of an ink, its darkest made black. */
function strongPart({ width, dark }: Ink, { left, top, right, bottom }: Area, peak: number): Ink {
  const [across, up] = [right - left, bottom - top];
  const full = new Float32Array(across * up);
  for (let y = 0; y < up; y++)
    for (let x = 0; x < across; x++)
      full[y * across + x] = Math.min(1, (dark[(top + y) * width + left + x] ?? 0) / peak);
  return { width: across, height: up, dark: full };
}

/** From here on no other letter is looked for. */
const surely = 0.985;

/** How like the most similar rival of a letter the ink is, where that letter stands. */
function likeRival(seen: Ink, { glyph, pen, rivals }: Placed, setting: Setting): number {
  const { x, across } = setting;
  let best = 0;
  for (const rival of rivals) {
    const wide = Math.max(glyph.ink.right, glyph.ink.left + rival.ink.right - rival.ink.left);
    const left = Math.floor(x + (pen + glyph.ink.left) * across) - 1;
    const right = Math.ceil(x + (pen + wide) * across) + 1;
    // Side by side at the left edge, and one over the other.
    const begins = [
      glyph.ink.left - rival.ink.left,
      (glyph.ink.left + glyph.ink.right - rival.ink.left - rival.ink.right) / 2,
    ];
    const window = columns(seen, left, right);
    for (const begin of begins) {
      const placed = { glyph: rival, pen: pen + begin, isSign: false, rivals: [] };
      const wanted = blurred(draw([placed], { ...setting, x: x - Math.max(0, left) }, window));
      best = Math.max(best, alikeWithin(window, wanted, 0, window.width));
    }
  }
  return best;
}

/** Some columns of an ink. */
function columns({ width, height, dark }: Ink, from: number, to: number): Ink {
  const [left, right] = [Math.max(0, from), Math.min(width, to)];
  const part = new Float32Array(Math.max(0, right - left) * height);
  for (let y = 0; y < height; y++)
    part.set(dark.subarray(y * width + left, y * width + right), y * (right - left));
  return { width: Math.max(0, right - left), height, dark: part };
}

/** The ink of a line as it would be drawn. */
function draw(line: readonly Placed[], { x, y, across, up }: Setting, { width, height }: Ink): Ink {
  const dark = new Float32Array(width * height);
  for (const { glyph, pen } of line) {
    const begin = x + pen * across;
    const [column, row] = [Math.floor(begin), Math.floor(y)];
    const { ink, left, top } = drawGlyph(glyph, across, up, quarter(begin - column), quarter(y - row));
    for (let j = Math.max(0, -top - row); j < ink.height && row + top + j < height; j++)
      for (let i = Math.max(0, -left - column); i < ink.width && column + left + i < width; i++) {
        const at = (row + top + j) * width + column + left + i;
        dark[at] = Math.min(1, (dark[at] ?? 0) + (ink.dark[j * ink.width + i] ?? 0));
      }
  }
  return { width, height, dark };
}

/** Finer than a quarter of a pixel nothing shows. */
function quarter(part: number): number {
  return Math.round(part * 4) / 4;
}

/** A letter's ink, and where its upper left corner lies from the pixel of the pen. */
interface DrawnGlyph {
  readonly ink: Ink;
  readonly left: number;
  readonly top: number;
}

/** Letters that were drawn before: a form has few sizes. */
const drawnGlyphs = new WeakMap<Glyph, Map<string, DrawnGlyph>>();
const mostDrawn = 64;

function drawGlyph(glyph: Glyph, across: number, up: number, x: number, y: number): DrawnGlyph {
  const key = `${across} ${up} ${x} ${y}`;
  const known = drawnGlyphs.get(glyph) ?? new Map<string, DrawnGlyph>();
  drawnGlyphs.set(glyph, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const left = Math.floor(x + glyph.ink.left * across) - 1;
  const top = Math.floor(y - glyph.ink.top * up) - 1;
  const width = Math.ceil(x + glyph.ink.right * across) + 1 - left;
  const height = Math.ceil(y - glyph.ink.bottom * up) + 1 - top;
  const dark = new Float32Array(width * height);
  const [byX, byY] = [drawn.size / across, drawn.size / up];
  for (let j = 0; j < height; j++)
    for (let i = 0; i < width; i++) {
      const start = drawn.left + (left + i - x) * byX;
      const from = drawn.baseline + (top + j - y) * byY;
      dark[j * width + i] = within(glyph, start, from, start + byX, from + byY) / (byX * byY);
    }
  const made = { ink: { width, height, dark }, left, top };
  if (known.size >= mostDrawn) known.clear();
  known.set(key, made);
  return made;
}

/** The ink of a glyph within a rectangle of its cell. */
function within(glyph: Glyph, left: number, top: number, right: number, bottom: number): number {
  return (
    inkBefore(glyph, right, bottom) -
    inkBefore(glyph, left, bottom) -
    inkBefore(glyph, right, top) +
    inkBefore(glyph, left, top)
  );
}

/** The ink of a glyph above and to the left of a point of its cell. */
function inkBefore({ sums, side }: Glyph, x: number, y: number): number {
  const last = side - 1;
  const cx = Math.max(0, Math.min(last, x));
  const cy = Math.max(0, Math.min(last, y));
  const x0 = Math.floor(cx);
  const y0 = Math.floor(cy);
  const x1 = Math.min(last, x0 + 1);
  const y1 = Math.min(last, y0 + 1);
  const upper = (sums[y0 * side + x0] ?? 0) * (x0 + 1 - cx) + (sums[y0 * side + x1] ?? 0) * (cx - x0);
  const lower = (sums[y1 * side + x0] ?? 0) * (x0 + 1 - cx) + (sums[y1 * side + x1] ?? 0) * (cx - x0);
  return upper * (y0 + 1 - cy) + lower * (cy - y0);
}

/** Every pixel as the mean of itself and its neighbours, so that half a pixel's shift counts for little. */
function blurred({ width, height, dark }: Ink): Ink {
  const across = new Float32Array(dark.length);
  const both = new Float32Array(dark.length);
  for (let y = 0; y < height; y++) {
    const start = y * width;
    let [before, here] = [0, dark[start] ?? 0];
    for (let x = 0; x < width; x++) {
      const after = x + 1 < width ? (dark[start + x + 1] ?? 0) : 0;
      across[start + x] = (before + 2 * here + after) / 4;
      before = here;
      here = after;
    }
  }
  const last = (height - 1) * width;
  for (let at = 0; at < dark.length; at++) {
    const above = at >= width ? (across[at - width] ?? 0) : 0;
    const below = at < last ? (across[at + width] ?? 0) : 0;
    both[at] = (above + 2 * (across[at] ?? 0) + below) / 4;
  }
  return { width, height, dark: both };
}

/** How alike two inks are between two columns: 1 for the same, at whatever strength; 0 for nothing in common. */
function alikeWithin(one: Ink, other: Ink, left: number, right: number): number {
  const { width, height } = one;
  let [product, first, second] = [0, 0, 0];
  for (let y = 0; y < height; y++)
    for (let x = Math.max(0, left); x < Math.min(width, right); x++) {
      const a = one.dark[y * width + x] ?? 0;
      const b = other.dark[y * width + x] ?? 0;
      product += a * b;
      first += a * a;
      second += b * b;
    }
  return second === 0 || first === 0 ? 0 : product / Math.sqrt(first * second);
}

/** How alike two inks of one size are. */
export function alike(one: Ink, other: Ink): number {
  if (one.none || other.none) return 0;
  const [first, second] = [blurred(one), blurred(other)];
  return countDark(other, leastSeen) === 0 ? 0 : alikeWithin(first, second, 0, one.width);
}

/** Some rows of an ink. */
export function part({ width, dark }: Ink, top: number, bottom: number): Ink {
  return { width, height: bottom - top, dark: dark.subarray(top * width, bottom * width) };
}

/** The part of what is seen that lies where nothing is wanted. */
function unexplained(seen: Ink, wanted: Ink, isCut: boolean): number {
  let [more, all] = [0, 0];
  // What is cut off may leave half a character.
  const end = isCut ? seen.width - seen.height : seen.width;
  for (let y = 0; y < seen.height; y++)
    for (let x = 0; x < end; x++) {
      const at = y * seen.width + x;
      const one = seen.dark[at] ?? 0;
      all += one;
      if ((wanted.dark[at] ?? 0) < 0.02) more += one;
    }
  return all === 0 ? 0 : more / all;
}
