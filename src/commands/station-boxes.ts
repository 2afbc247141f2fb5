import type { Station } from "../trade/order.ts";
import type { DeviceSheet } from "../trade/sheet.ts";

/** Inner width of a box in characters, boxes side by side, and lines of legends in one. */
const width = 11;
const perRow = 6;
const mostLines = 4;

/** A station as small boxes side by side: what each gang holds, or that it is missing. */
export function stationBoxes({ plates, devices }: Station): string[] {
  const gangs = plates[0]?.gangs ?? Math.max(1, ...devices.map(({ position = 0 }) => position));
  const boxes = Array.from({ length: Math.min(gangs, 60) }, (_, i) => boxOf(i + 1, devices, gangs));
  const loose = devices.filter(
    (device) => (device.position ?? (gangs === 1 ? 1 : 0)) > gangs || isNowhere(device, gangs),
  );
  return [
    ...rowsOf(boxes).flatMap(drawn),
    ...loose.map(({ file, position }) => `besides: ${file}, position ${position ?? "not said"}`),
  ];
}

function isNowhere({ position, standing }: DeviceSheet, gangs: number): boolean {
  return position === undefined && standing !== "alone" && gangs > 1;
}

function boxOf(place: number, devices: readonly DeviceSheet[], gangs: number): string[] {
  const here = devices.filter(
    ({ position, standing }) =>
      position === place || (gangs === 1 && (standing === "alone" || position === undefined)),
  );
  const [device, ...more] = here;
  const head = `${place}`;
  if (device === undefined) return [head, "missing"];
  if (more.length > 0) return [head, `${here.length} sheets`];
  const legends = device.legends
    .filter(({ face }) => face !== "plate")
    .map(({ rows }) => rows.filter((row) => row.trim() !== "").join("/"))
    .filter((text) => text !== "");
  const shown = legends.length > mostLines ? [...legends.slice(0, mostLines - 1), "…"] : legends;
  return [`${head} ${device.layouts.join("+")}`, ...shown];
}

function rowsOf(boxes: readonly string[][]): string[][][] {
  return Array.from({ length: Math.ceil(boxes.length / perRow) }, (_, i) =>
    boxes.slice(i * perRow, (i + 1) * perRow),
  );
}

function drawn(boxes: readonly (readonly string[])[]): string[] {
  const height = Math.max(...boxes.map((box) => box.length));
  const edge = (left: string, between: string, right: string): string =>
    `${left}${boxes.map(() => "─".repeat(width)).join(between)}${right}`;
  const lines = Array.from(
    { length: height },
    (_, line) => `│${boxes.map((box) => cell(box[line] ?? "")).join("│")}│`,
  );
  return [edge("┌", "┬", "┐"), ...lines, edge("└", "┴", "┘")];
}

function cell(text: string): string {
  const letters = [...text.replaceAll(/\p{C}/gu, " ")];
  return (letters.length > width ? `${letters.slice(0, width - 1).join("")}…` : letters.join("")).padEnd(
    width,
  );
}
