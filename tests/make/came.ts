import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { aloneDevice } from "./sample.ts";

/** A device that stands alone, with what its buttons and its plate say. */
export const alone = (
  mark: string,
  faces: readonly string[],
  strip = "LOBBY",
  more: Partial<DeviceSheet> = {},
): Sheet =>
  aloneDevice({
    mark,
    ...more,
    legends: [
      ...faces.map((text, i) => ({ face: `${i + 1}` as const, rows: [text, ""], plain: false })),
      { face: "plate", rows: [strip], plain: false },
    ],
  });
/** What came with a letter, and with earlier ones. */
export const came = (sheets: readonly Sheet[], earlier: readonly Sheet[] = []) => ({
  sheets,
  earlier,
  finishes: ["Oat", "Ink"],
  names: ["Marisol Quint", "Dora Penhale"],
});
