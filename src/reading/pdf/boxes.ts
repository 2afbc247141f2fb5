import type { Box } from "../facts.ts";

export type Point = readonly [x: number, y: number];

/** The smallest box around some points; undefined if there are none. */
export function around(points: readonly [Point, ...Point[]]): Box;
export function around(points: readonly Point[]): Box | undefined;
export function around(points: readonly Point[]): Box | undefined {
  if (points.length === 0) return undefined;
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** The box between two opposite corners. */
export function inOrder(a: number, b: number, c: number, d: number): Box {
  return [Math.min(a, c), Math.min(b, d), Math.max(a, c), Math.max(b, d)];
}

/** The same place, measured from another corner of the page. */
export function moved([left, bottom, right, top]: Box, x: number, y: number): Box {
  return [left + x, bottom + y, right + x, top + y];
}

export function areaOf([left, bottom, right, top]: Box): number {
  return Math.max(0, right - left) * Math.max(0, top - bottom);
}

/** What two boxes have in common; its area is 0 where they do not meet. */
export function common(one: Box, other: Box): Box {
  return [
    Math.max(one[0], other[0]),
    Math.max(one[1], other[1]),
    Math.min(one[2], other[2]),
    Math.min(one[3], other[3]),
  ];
}

/** Whether the boxes meet in more than an edge. */
export function overlap(one: Box, other: Box): boolean {
  return areaOf(common(one, other)) > 0;
}

/**
 * Whether a line of text stands in a frame. The middle of its height lies within. Half of it, or of the frame's
 * width, is in the frame. So a label that touches its field does not, nor does one that begins beside a small box and
 * runs into it.
 */
export function standsIn(text: Box, frame: Box): boolean {
  const middle = (text[1] + text[3]) / 2;
  const [left, , right] = common(text, frame);
  const narrower = Math.min(text[2] - text[0], frame[2] - frame[0]);
  const center = (text[0] + text[2]) / 2;
  const isSmall = frame[2] - frame[0] < 2 * (frame[3] - frame[1]);
  if (isSmall && (center < frame[0] || center > frame[2])) return false;
  return middle > frame[1] && middle < frame[3] && right - left > 0 && right - left >= narrower / 2;
}

/** A box without the digits in which readers differ. */
export function rounded([left, bottom, right, top]: Box): Box {
  const round = (side: number): number => Math.round(side * 100_000) / 100_000;
  return [round(left), round(bottom), round(right), round(top)];
}
