import { mostButtons, mostGangs, roomOfButton } from "../catalogue/catalogue.ts";
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
export function holesOf(name: string, means: string, form: SheetKind, makes: Makes): Hole[] {
  const text = means === "nothing" ? name : means;
  const faces = form === "device" ? mostButtons(makes) : mostGangs(makes);
  const byFace: Hole[] = text.includes("{face}") ? numbersUpTo(faces).map((n) => ({ face: `${n}` })) : [{}];
  return byFace.flatMap((hole) =>
    text.includes("{row}")
      ? numbersUpTo(rowsOn(fillHole(means, hole), form, makes)).map((row) => ({ ...hole, row }))
      : [hole],
  );
}

/** The most rows of the face that a field means, or of any face if it means none. */
function rowsOn(means: string, form: SheetKind, makes: Makes): number {
  if (form === "plate" || means.includes(".plate")) return makes.plate.rows;
  return roomOfButton(Number(/\d+/.exec(means)?.[0] ?? 0), makes).rows;
}

export function fillHole(text: string, { face, row }: Hole): string {
  return text.replaceAll("{face}", face ?? "").replaceAll("{row}", String(row ?? ""));
}

function numbersUpTo(n: number): number[] {
  return Array.from({ length: n }, (_, i) => i + 1);
}
