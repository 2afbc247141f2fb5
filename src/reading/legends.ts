import { type Catalogue, roomOfButton } from "../catalogue/catalogue.ts";
import { facesOf, roomOn } from "../catalogue/faces.ts";
import type { FaceName, Legend } from "../trade/legend.ts";
import type { Place, Print } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";
import { type Filled, saysNone, saysYes } from "./filled.ts";

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

/**
 * The sheet without "n/a" and the like in rows where nothing is cut: on faces and in rows that what it orders does not
 * have, and beside "leave plain". A dash stays where a plus stands too. Everywhere else it is cut as typed.
 */
export function withoutNothings(sheet: Sheet, catalogue: Catalogue): Sheet {
  const faces = facesOf(sheet, catalogue);
  const hasPlus = sheet.legends.some(({ rows }) => rows.some((row) => row.includes("+")));
  const isNothing = (text: string): boolean =>
    (saysNone(text) && !(hasPlus && text.trim() === "-")) || nothing.test(text);
  const legends = sheet.legends.map((legend): Legend => {
    const { face, rows, plain } = legend;
    const room = plain || faces?.includes(face) === false ? 0 : roomOn(sheet, face, catalogue).rows;
    const beyond = rows.slice(room).filter((row) => row.trim() !== "");
    const isEmpty = isNothing(beyond.join(" ")) || (beyond.length > 0 && beyond.every(isNothing));
    return isEmpty ? { ...legend, rows: rows.map((row, i) => (i < room ? row : "")) } : legend;
  });
  return { ...sheet, legends };
}

/** What is written on a face that is not to be cut. */
const nothing = /^\s*(?:not used|unused|blank|plain|leave (?:blank|plain))\s*$/i;

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
