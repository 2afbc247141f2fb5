import { readFileSync } from "node:fs";

/** A rectangle in millimetres. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Edges {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const attribute = (element: string, name: string): string =>
  new RegExp(` ${name}="([^"]*)"`).exec(element)?.[1] ?? "";
const number = (element: string, name: string): number => Number(attribute(element, name));

/** The rectangles of an SVG that are so wide and so high, in the order in which they are drawn. */
export function rectangles(svg: string, width: number, height: number): Rectangle[] {
  return [...svg.matchAll(/<rect [^>]*>/g)]
    .map(([element]) => element)
    .filter((element) => number(element, "width") === width && number(element, "height") === height)
    .map((element) => ({ x: number(element, "x"), y: number(element, "y"), width, height }));
}

/** The edges of what is drawn by all strokes of one colour within a rectangle, their thickness included. */
export function strokesWithin(svg: string, colour: string, box: Rectangle): Edges {
  const points = [...svg.matchAll(/<path [^>]*>/g)]
    .map(([element]) => element)
    .filter((element) => attribute(element, "stroke") === colour)
    .flatMap((element) => {
      const half = number(element, "stroke-width") / 2;
      return [...attribute(element, "d").matchAll(/[ML](\S+) ([^ML]+)/g)].map(([, x, y]) => ({
        x: Number(x),
        y: Number(y),
        half,
      }));
    })
    .filter(({ x, y }) => x > box.x && x < box.x + box.width && y > box.y && y < box.y + box.height);
  return {
    left: Math.min(...points.map(({ x, half }) => x - half)),
    top: Math.min(...points.map(({ y, half }) => y - half)),
    right: Math.max(...points.map(({ x, half }) => x + half)),
    bottom: Math.max(...points.map(({ y, half }) => y + half)),
  };
}

/** The edges of what is dark in a grey picture (PGM) whose upper left corner lies at `at`, in millimetres. */
export function inkIn(
  file: string,
  dotsPerInch: number,
  at: { readonly x: number; readonly y: number },
): Edges {
  const bytes = readFileSync(file);
  const [head = "", width = "", height = ""] =
    /^P5\s(\d+) (\d+)\s255\s/.exec(bytes.toString("latin1", 0, 40)) ?? [];
  const [across, down] = [Number(width), Number(height)];
  const edges = { left: across, top: down, right: 0, bottom: 0 };
  for (let y = 0; y < down; y++)
    for (let x = 0; x < across; x++) {
      if ((bytes[head.length + y * across + x] ?? 255) > 127) continue;
      edges.left = Math.min(edges.left, x);
      edges.top = Math.min(edges.top, y);
      edges.right = Math.max(edges.right, x + 1);
      edges.bottom = Math.max(edges.bottom, y + 1);
    }
  const millimetres = (dots: number): number => (dots / dotsPerInch) * 25.4;
  return {
    left: at.x + millimetres(edges.left),
    top: at.y + millimetres(edges.top),
    right: at.x + millimetres(edges.right),
    bottom: at.y + millimetres(edges.bottom),
  };
}
