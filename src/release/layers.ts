import type { Box } from "../drawing/proof/shapes.ts";
import type { Face, Part } from "./part.ts";

/** What shows where a part and what is in it lie, and is not cut, by its layer. */
export function outlines({ kind, width, height, within }: Part): { layer: string; boxes: readonly Box[] }[] {
  return [
    { layer: "BODY", boxes: [{ x: 0, y: 0, width, height }] },
    { layer: kind === "plate" ? "OPENINGS" : "BUTTONS", boxes: within },
  ];
}

/** The layer of a face: "GANG-2", "BUTTON-3", "PLATE". */
export function layerOf({ says }: Face): string {
  return says.toUpperCase().replace(" ", "-");
}
