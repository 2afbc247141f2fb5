import { helveticaGlyphs } from "../../../src/reading/page/glyphs.ts";
import type { Ink } from "../../../src/reading/page/ink.ts";
import { draw, setLine } from "../../../src/reading/page/set-line.ts";

export const glyphs = await helveticaGlyphs();

export interface Drawing {
  readonly width?: number;
  readonly height?: number;
  readonly x?: number;
  readonly across?: number;
  readonly up?: number;
  /** How dark its ink is. */
  readonly strong?: number;
  /** What else is done to the ink. */
  readonly change?: (ink: Ink) => void;
}

/** The ink of some lines, 24 pixels apart. */
export function drawn(
  text: string,
  { width = 300, height = 30, x = 4, across = 20, up = across, strong = 1, change }: Drawing = {},
): Ink {
  const ink: Ink = { width, height, dark: new Float32Array(width * height) };
  text.split("\n").forEach((line, i) => {
    const set = setLine(line, glyphs);
    if (set === undefined) throw new Error("Helvetica has no such letter");
    draw(set, { x, y: 22 + 24 * i, across, up }, ink).dark.forEach((dark, at) => {
      ink.dark[at] = Math.max(ink.dark[at] ?? 0, dark * strong);
    });
  });
  change?.(ink);
  return ink;
}

/** Makes a part of the ink so dark, or what is there so many times as dark. */
export const put =
  (left: number, top: number, right: number, bottom: number, dark: number, times = 0) =>
  (ink: Ink): void => {
    for (let y = top; y < bottom; y++)
      for (let x = left; x < right; x++)
        ink.dark[y * ink.width + x] = dark + times * (ink.dark[y * ink.width + x] ?? 0);
  };
