export type Point = readonly [x: number, y: number];

/** A line through points, cut without lifting the cutter. */
export type Stroke = readonly Point[];

export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** "9,21 1,0; 9,21 17,0" → two strokes. */
export function strokesFrom(text: string): Stroke[] {
  const lines = text === "" ? [] : text.split("; ");
  return lines.map((line) =>
    line.split(" ").map((point) => point.split(",").map(Number) as [number, number]),
  );
}

/** The smallest rectangle around all points, y downwards; undefined for none. */
export function extentOf(strokes: readonly Stroke[]): Extent | undefined {
  const points = strokes.flat();
  if (points.length === 0) return undefined;
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** The least distance between the middle lines of two sets of strokes. Infinite if one is empty. */
export function distanceBetween(one: readonly Stroke[], other: readonly Stroke[]): number {
  const others = other.flatMap(piecesOf);
  return Math.min(
    Number.POSITIVE_INFINITY,
    ...one.flatMap(piecesOf).flatMap((piece) => others.map((next) => apart(piece, next))),
  );
}

type Piece = readonly [Point, Point];

function piecesOf(line: Stroke): Piece[] {
  return line.slice(1).map((point, i) => [line[i] ?? point, point]);
}

/** The distance between two straight pieces. If they do not cross it is least at an end of one of them. */
function apart(one: Piece, other: Piece): number {
  if (crossing(one, other)) return 0;
  return Math.min(
    ...one.map((point) => fromPiece(point, other)),
    ...other.map((point) => fromPiece(point, one)),
  );
}

function fromPiece([x, y]: Point, [[fromX, fromY], [toX, toY]]: Piece): number {
  const [dx, dy] = [toX - fromX, toY - fromY];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : ((x - fromX) * dx + (y - fromY) * dy) / length;
  const at = Math.max(0, Math.min(1, share));
  return Math.hypot(x - fromX - at * dx, y - fromY - at * dy);
}

function crossing([a, b]: Piece, [c, d]: Piece): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** On which side of the line from a to b the point lies: the sign of the cross product. */
function side(a: Point, b: Point, [x, y]: Point): number {
  return (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
}
