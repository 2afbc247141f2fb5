import { buttonsOf, type Catalogue, type Layout } from "../../catalogue/catalogue.ts";
import { type Box, block, type Canvas, palette, whole, write } from "./canvas.ts";

/** The device of one layout with numbered buttons, in the proportions that the catalogue gives in millimetres. */
export function devicePicture(
  canvas: Canvas,
  layout: Layout,
  { opening }: Catalogue["device"],
  { centre, top, height }: { readonly centre: number; readonly top: number; readonly height: number },
): void {
  const scale = height / opening.height;
  const width = opening.width * scale;
  const left = centre - width / 2;
  const surround = { x: left - 4, y: top - 4, width: width + 8, height: height + 8 };
  const alt = `${layout.name}, numbered from the upper left, ${layout.columns} beside each other`;
  whole(canvas, "Figure", { alt }, () => {
    block(canvas, surround, { fill: palette.plate, stroke: palette.line, radius: 4 });
    const cell = { width: width / layout.columns, height: height / layout.lines };
    // A point less than the face, so that the outlines of neighbours stay apart.
    const face = { width: layout.face.width * scale - 1, height: layout.face.height * scale - 1 };
    for (let i = 0; i < buttonsOf(layout); i++) {
      const x = left + (i % layout.columns) * cell.width + (cell.width - face.width) / 2;
      const y = top + Math.floor(i / layout.columns) * cell.height + (cell.height - face.height) / 2;
      numberedFace(canvas, i + 1, { x, y, ...face });
    }
  });
}

/** A face with its number: in the pictures, and again beside the rows that belong to it. */
export function numberedFace(canvas: Canvas, number: number, box: Box): void {
  block(canvas, box, { fill: palette.face, stroke: palette.accent, radius: 2.5 });
  const size = box.height > 30 ? 11 : 8.5;
  write(canvas, String(number), box.x + box.width / 2, box.y + box.height / 2 + 0.36 * size, {
    size,
    bold: true,
    colour: palette.accent,
    align: "centre",
  });
}
