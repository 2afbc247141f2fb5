import { mostButtons, mostGangs } from "../catalogue/catalogue.ts";
import type { FaceName } from "../trade/legend.ts";
import type { SheetKind } from "../trade/place.ts";
import type { Makes } from "./choices.ts";

/** What stands in the place of `{face}` and `{row}` in one field of many. */
export interface Hole {
  readonly face?: FaceName;
  readonly row?: number;
}

export const holes = ["{face}", "{row}"] as const;

/**
 * Every field that a field with holes stands for. What it means decides on the holes; if it means nothing, its name
 * does.
 */
export function holesOf(
  name: string,
  means: string,
  form: SheetKind,
  { layouts, plate, device }: Makes,
): Hole[] {
  const text = means === "nothing" ? name : means;
  const faces = form === "device" ? mostButtons({ layouts }) : mostGangs({ plate });
  const rows = form === "plate" || means.includes(".plate") ? plate.rows : device.rows;
  const byFace: Hole[] = text.includes("{face}") ? numbersUpTo(faces).map((n) => ({ face: `${n}` })) : [{}];
  return byFace.flatMap((hole) =>
    text.includes("{row}") ? numbersUpTo(rows).map((row) => ({ ...hole, row })) : [hole],
  );
}

export function fillHole(text: string, { face, row }: Hole): string {
  return text.replaceAll("{face}", face ?? "").replaceAll("{row}", String(row ?? ""));
}

function numbersUpTo(n: number): number[] {
  return Array.from({ length: n }, (_, i) => i + 1);
}
