import { drawn, type Glyph } from "../../../src/reading/page/glyphs.ts";

/** A letter that is a block, drawn as PDFium draws letters. Its edges are parts of the font's size. */
export function blockGlyph(ink: Glyph["ink"], advance = 1): Glyph {
  const side = drawn.cell + 1;
  const sums = new Float32Array(side * side);
  const [left, right] = [ink.left, ink.right].map((edge) => drawn.left + edge * drawn.size) as [
    number,
    number,
  ];
  const [top, bottom] = [ink.top, ink.bottom].map((edge) => drawn.baseline - edge * drawn.size) as [
    number,
    number,
  ];
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++)
      sums[y * side + x] = Math.max(0, Math.min(x, right) - left) * Math.max(0, Math.min(y, bottom) - top);
  return { side, sums, ink, advance };
}
