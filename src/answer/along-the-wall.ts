import type { Missing, Order } from "../trade/order.ts";
import type { Sheet } from "../trade/sheet.ts";

/** A sheet, or the lack of one, and where it stands along the wall. */
export interface OnTheWall<Subject> {
  /** Counted from 0; devices that belong to no station come after the last. */
  readonly station: number;
  /** 0 for a plate; an unknown position comes last. */
  readonly position: number;
  readonly subject: Subject;
}

/** Every sheet of an order once, station by station, the plate first and then its devices from the left. */
export function alongTheWall({ stations, loose }: Order): OnTheWall<Sheet>[] {
  return inOrder([
    ...stations.flatMap(({ plates, devices }, station) =>
      [...plates, ...devices].map((subject) => ({ station, position: positionOf(subject), subject })),
    ),
    ...loose.map((subject) => ({ station: stations.length, position: positionOf(subject), subject })),
  ]);
}

export function missingAlongTheWall({ stations }: Order, missing: readonly Missing[]): OnTheWall<Missing>[] {
  return missing.map((subject) => ({
    station: stations.findIndex(({ mark }) => mark === subject.station),
    position: subject.position ?? 0,
    subject,
  }));
}

export function inOrder<Subject>(all: readonly OnTheWall<Subject>[]): OnTheWall<Subject>[] {
  return all.toSorted((a, b) => a.station - b.station || a.position - b.position);
}

function positionOf(sheet: Sheet): number {
  return sheet.kind === "plate" ? 0 : (sheet.position ?? Number.MAX_VALUE);
}
