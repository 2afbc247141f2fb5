import { AnnotationMode, getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** Left, lower, right and upper edge in points. */
type Box = readonly [number, number, number, number];

/** A colour on the page, the colour that lies under it, and where. */
export interface OnGround {
  readonly colour: string;
  readonly ground: string;
  readonly at: string;
}

interface State {
  readonly matrix: readonly number[];
  readonly fill: string;
  readonly stroke: string;
}

interface Area {
  readonly box: Box;
  readonly fill?: string;
  readonly stroke?: string;
}

const paper = "#ffffff";

/** What the print of a first page is made of, as pdf.js reads it: every text and every field's frame on its ground. */
export async function paintedOn(bytes: Uint8Array): Promise<{ texts: OnGround[]; frames: OnGround[] }> {
  const task = getDocument({
    data: bytes.slice(),
    verbosity: 0,
    useSystemFonts: false,
    disableFontFace: true,
  });
  const page = await (await task.promise).getPage(1);
  const { fnArray, argsArray } = await page.getOperatorList({ annotationMode: AnnotationMode.DISABLE });
  const fields = (await page.getAnnotations()) as { readonly rect: Box; readonly fieldName: string }[];
  await task.destroy();

  let state: State = { matrix: [1, 0, 0, 1, 0, 0], fill: "#000000", stroke: "#000000" };
  let pen: readonly [number, number] = [0, 0];
  const kept: State[] = [];
  const areas: Area[] = [];
  const texts: OnGround[] = [];
  const groundAt = (x: number, y: number): string =>
    areas.findLast(({ box, fill }) => fill !== undefined && inside([x, y, x, y], box))?.fill ?? paper;
  fnArray.forEach((operator, i) => {
    const values = (argsArray[i] ?? []) as never[];
    if (operator === OPS.save) kept.push(state);
    else if (operator === OPS.restore) state = kept.pop() ?? state;
    else if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, values) };
    else if (operator === OPS.setFillRGBColor) state = { ...state, fill: String(values[0]) };
    else if (operator === OPS.setStrokeRGBColor) state = { ...state, stroke: String(values[0]) };
    else if (operator === OPS.setTextMatrix) {
      const [matrix] = values as unknown as [ArrayLike<number>];
      pen = point(state.matrix, matrix[4] ?? 0, matrix[5] ?? 0);
    } else if (operator === OPS.showText) {
      const [glyphs] = values as unknown as [readonly { readonly unicode?: string }[]];
      const at = glyphs.map(({ unicode = " " }) => unicode).join("");
      texts.push({ colour: state.fill, ground: groundAt(pen[0] + 1, pen[1] + 1), at });
    } else if (operator === OPS.constructPath) {
      const [paint, , edges] = values as unknown as [number, unknown, ArrayLike<number>];
      const [a, b] = [
        point(state.matrix, edges[0] ?? 0, edges[1] ?? 0),
        point(state.matrix, edges[2] ?? 0, edges[3] ?? 0),
      ];
      const box: Box = [
        Math.min(a[0], b[0]),
        Math.min(a[1], b[1]),
        Math.max(a[0], b[0]),
        Math.max(a[1], b[1]),
      ];
      areas.push({
        box,
        ...(filling.has(paint) ? { fill: state.fill } : {}),
        ...(stroking.has(paint) ? { stroke: state.stroke } : {}),
      });
    }
  });
  const frames = fields.flatMap(({ rect, fieldName }) => {
    const frame = areas.findLast(
      ({ box, stroke }) =>
        stroke !== undefined && inside(rect, box) && box[2] - box[0] < rect[2] - rect[0] + 6,
    );
    if (frame?.stroke === undefined) return [];
    const { box, fill = "", stroke } = frame;
    return [fill, groundAt(box[0] - 1.5, box[3] - 4)].map((ground) => ({
      colour: stroke,
      ground,
      at: fieldName,
    }));
  });
  return { texts, frames };
}

const filling = new Set<number>([
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
]);
const stroking = new Set<number>([
  OPS.stroke,
  OPS.closeStroke,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
]);

function inside(inner: Box, outer: Box): boolean {
  const slack = 0.01;
  return (
    inner[0] >= outer[0] - slack &&
    inner[1] >= outer[1] - slack &&
    inner[2] <= outer[2] + slack &&
    inner[3] <= outer[3] + slack
  );
}

function times(m: readonly number[], n: ArrayLike<number>): number[] {
  const [a = 1, b = 0, c = 0, d = 1] = m;
  const [e = 1, f = 0, g = 0, h = 1, x = 0, y = 0] = Array.from(n);
  const [moveX, moveY] = point(m, x, y);
  return [a * e + c * f, b * e + d * f, a * g + c * h, b * g + d * h, moveX, moveY];
}

function point(m: readonly number[], x: number, y: number): [number, number] {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = m;
  return [a * x + c * y + e, b * x + d * y + f];
}
