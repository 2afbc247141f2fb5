import { textWidth } from "../blank/appearance.ts";
import { inOneLine } from "./shapes.ts";

/** Helvetica Bold is at most so much wider than Helvetica. */
const boldIsWider = 1.12;

/** A line of what strangers typed, or as much of its beginning as there is room for. */
export function short(text: string, room: number, size: number, weight: "plain" | "bold" = "plain"): string {
  const width = weight === "bold" ? room / boldIsWider : room;
  const line = inOneLine(text);
  const isRoom = (some: string): boolean => textWidth(some, size) <= width;
  if (isRoom(line)) return line;
  const characters = [...line];
  let end = characters.length;
  while (end > 0 && !isRoom(`${characters.slice(0, end).join("")}…`)) end--;
  return `${characters.slice(0, end).join("")}…`;
}
