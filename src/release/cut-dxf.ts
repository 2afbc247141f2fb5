import { DxfWriter, LWPolylineFlags, point2d, Units } from "@tarikjabiri/dxf";
import { type Box, rounded } from "../drawing/proof/shapes.ts";
import type { Point } from "../lettering/stroke.ts";
import { layerOf, outlines } from "./layers.ts";
import type { Part } from "./part.ts";

/** Colours of the AutoCAD colour index: grey for what only shows, the screen's own for what is cut. */
const [grey, own] = [8, 7] as const;

/**
 * A part as DXF in millimetres at true scale, from its lower left corner, y upwards. Strokes are polylines at the middle
 * of the cut, each face on a layer of its own. Outlines have theirs, and are not cut.
 */
export function cutDxf(part: Part): string {
  const dxf = new DxfWriter();
  // AutoCAD DXF Reference, HEADER section: $INSUNITS 4 is millimetres, $MEASUREMENT 1 is metric.
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable("$MEASUREMENT", { 70: 1 });
  dxf.setVariable("$EXTMIN", { 10: 0, 20: 0, 30: 0 });
  dxf.setVariable("$EXTMAX", { 10: part.width, 20: part.height, 30: 0 });
  dxf.setVariable("$LASTSAVEDBY", { 1: "Burin" });

  const draw = (layerName: string, points: readonly Point[], flags = LWPolylineFlags.None): void => {
    const vertices = points.map(([x, y]) => ({ point: point2d(rounded(x), rounded(part.height - y)) }));
    dxf.addLWPolyline(vertices, { layerName, flags });
  };
  for (const { layer, boxes } of outlines(part)) {
    dxf.addLayer(layer, grey);
    for (const box of boxes) draw(layer, corners(box), LWPolylineFlags.Closed);
  }
  for (const face of part.faces) {
    dxf.addLayer(layerOf(face), own);
    for (const stroke of face.path?.strokes ?? []) draw(layerOf(face), stroke);
  }
  return `${dxf.stringify()}\n`;
}

function corners({ x, y, width, height }: Box): Point[] {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
}
