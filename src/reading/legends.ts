import { type Catalogue, roomOfButton } from "../catalogue/catalogue.ts";
import type { FaceName, Legend } from "../trade/legend.ts";
import type { Place, Print } from "../trade/place.ts";
import { type Filled, saysYes } from "./filled.ts";

/** The legends of a form, with a print for every row that they have. */
export interface Engraving {
  readonly legends: readonly Legend[];
  readonly prints: { readonly [P in Place]?: Print };
}

/**
 * Every face that the form prints, "plate" last. Rows are kept exactly as typed, with their blanks, since they are
 * cut as typed. A face with a single field may hold all its rows, one a line.
 */
export function readLegends(filled: Filled, form: "device" | "plate", catalogue: Catalogue): Engraving {
  const rowsOf = Map.groupBy(facePlaces(filled), ({ face }) => face);
  const faces = [...rowsOf.keys()].toSorted((a, b) => faceOrder(a) - faceOrder(b));
  const prints: { [P in Place]?: Print } = {};
  const legends = faces.map((face): Legend => {
    const printed = (rowsOf.get(face) ?? []).flatMap(({ row }) => row ?? []);
    const { rows: room } =
      form === "plate" || face === "plate" ? catalogue.plate : roomOfButton(Number(face), catalogue);
    const typed = Array.from({ length: Math.max(0, ...printed) }, (_, i) =>
      textAt(filled, `row.${face}.${i + 1}`),
    );
    const rows = printed.length === 1 && typed.length === 1 ? spread(typed[0] ?? "", room) : typed;
    const print = filled.prints[`row.${face}.1`];
    if (print !== undefined)
      for (let row = typed.length + 1; row <= rows.length; row++) prints[`row.${face}.${row}`] = print;
    const plain = filled.at(`plain.${face}`).some(({ means }) => saysYes(means));
    return { face, rows, plain };
  });
  return { legends, prints };
}

function spread(text: string, room: number): string[] {
  const lines = text.split("\n");
  while (lines.length > room && lines.at(-1) === "") lines.pop();
  while (lines.length < room) lines.push("");
  return lines;
}

function textAt(filled: Filled, place: Place): string {
  return filled
    .at(place)
    .map(({ typed }) => typed)
    .join("\n");
}

function facePlaces(filled: Filled): { readonly face: FaceName; readonly row?: number }[] {
  return Object.keys(filled.prints).flatMap((place) => {
    const [what, face, row] = place.split(".");
    if (what !== "row" && what !== "plain") return [];
    return [{ face: face as FaceName, ...(row === undefined ? {} : { row: Number(row) }) }];
  });
}

function faceOrder(face: FaceName): number {
  return face === "plate" ? Number.POSITIVE_INFINITY : Number(face);
}
