import type { Catalogue } from "../catalogue/catalogue.ts";
import { rounded } from "../drawing/proof/shapes.ts";
import type { CutRow } from "../trade/cut.ts";
import type { Order } from "../trade/order.ts";
import type { Face, Part } from "./part.ts";
import { type ColumnOf, type Table, tableOf } from "./table.ts";

/** A part, with the name of its cut files before their endings. */
export interface NamedPart extends Part {
  readonly file: string;
}

interface Line {
  readonly part: NamedPart;
  readonly face: Face;
}

/** What is cut, a row for each face. Places are millimetres from the upper left corner of the part. */
export function scheduleTable(order: Order, parts: readonly NamedPart[], catalogue: Catalogue): Table {
  const most = Math.max(catalogue.plate.rows, ...catalogue.layouts.map(({ rows }) => rows));
  const rows = Array.from({ length: most }, (_, i) => i + 1);
  const columns: ColumnOf<Line>[] = [
    { title: "Order", width: 14, of: () => order.number },
    { title: "Proof page", width: 10, of: ({ part }) => part.page },
    { title: "Station", width: 12, of: ({ part }) => part.station },
    { title: "Position", width: 8, of: ({ part }) => part.position ?? "" },
    { title: "Part", width: 16, of: ({ part }) => part.name },
    { title: "Part key", width: 17, of: ({ part }) => part.key ?? "" },
    { title: "Finish", width: 12, of: ({ part }) => part.finish?.name ?? "" },
    { title: "Lettering", width: 12, of: ({ part }) => part.lettering?.name ?? "" },
    { title: "Face", width: 10, of: ({ face }) => face.says },
    // No word of ours stands in the columns of what is cut.
    { title: "Leave plain", width: 11, of: ({ face }) => (face.cut === undefined ? "plain" : "") },
    ...rows.map((row) => ({
      title: `Row ${row}`,
      width: 16,
      of: ({ face }: Line) => (face.cut === undefined ? "" : (face.rows[row - 1] ?? "")),
    })),
    { title: "Font", width: 14, of: ({ face }) => fontName(face, catalogue) },
    { title: "Cap mm", width: 8, of: ({ face }) => face.cut?.cap ?? "" },
    { title: "Width mm", width: 9, of: ({ face }) => widest(face) ?? "" },
    { title: "Cutter mm", width: 9, of: ({ face }) => face.cut?.cutter ?? "" },
    ...rows.flatMap((row) => [
      { title: `Row ${row} left mm`, width: 13, of: ({ face }: Line) => placeOf(face, row)?.left ?? "" },
      {
        title: `Row ${row} baseline mm`,
        width: 16,
        of: ({ face }: Line) => placeOf(face, row)?.baseline ?? "",
      },
    ]),
    { title: "Cut file", width: 22, of: ({ part }) => part.file },
    { title: "Sheet", width: 24, of: ({ part }) => part.sheet.file },
  ];
  return tableOf("Schedule", columns, linesOf(parts));
}

/** What is to be taken from stock: devices by finish and layout, plates by finish and size, and how many. */
export function cuttingList(parts: readonly Part[]): Table {
  const kinds = Map.groupBy(parts, ({ kind, finish, code }) => JSON.stringify([kind, finish?.code, code]));
  const counted = [...kinds.values()].flatMap((alike) => {
    const [part] = alike;
    return part === undefined ? [] : [{ part, count: alike.length }];
  });
  const columns: ColumnOf<(typeof counted)[number]>[] = [
    { title: "Kind", width: 8, of: ({ part }) => part.kind },
    { title: "Finish", width: 14, of: ({ part }) => part.finish?.name ?? "" },
    { title: "Finish code", width: 11, of: ({ part }) => part.finish?.code ?? "" },
    { title: "Part", width: 18, of: ({ part }) => part.name },
    { title: "Part code", width: 10, of: ({ part }) => part.code },
    { title: "Count", width: 7, of: ({ count }) => count },
  ];
  return tableOf(
    "Cutting list",
    columns,
    counted.toSorted((one, other) => inStock(one.part).localeCompare(inStock(other.part), "en", numeric)),
  );
}

/** The same as an object for programs. */
export function scheduleJson(
  order: Order,
  revision: number,
  parts: readonly NamedPart[],
  list: Table,
): object {
  return {
    order: order.number,
    project: order.project,
    revision,
    units: "mm",
    origin: "upper left corner of the part, x to the right, y downwards",
    parts: parts.map(
      ({ kind, station, position, page, sheet, code, name, key, finish, lettering, ...part }) => ({
        kind,
        station,
        position,
        code,
        name,
        key,
        finish: { code: finish?.code, name: finish?.name },
        lettering: { code: lettering?.code, name: lettering?.name },
        width: part.width,
        height: part.height,
        proofPage: page,
        file: part.file,
        sheet: sheet.file,
        faces: part.faces.map((face) => ({
          face: face.name,
          says: face.says,
          plain: face.cut === undefined,
          typed: face.rows,
          place: boxOf(face),
          ...(face.cut === undefined
            ? {}
            : {
                font: face.cut.font,
                cap: face.cut.cap,
                cutter: face.cut.cutter,
                rows: face.cut.rows.map((row) => ({
                  ...row,
                  width: rounded(row.width),
                  ...onPart(face, row),
                })),
              }),
        })),
      }),
    ),
    cuttingList: list.rows.map((row) =>
      Object.fromEntries(list.columns.map(({ title }, i) => [title, row[i]])),
    ),
  };
}

const numeric = { numeric: true } as const;

function inStock({ kind, finish, code }: Part): string {
  return [kind, finish?.name, finish?.code, code].join(" ");
}

function linesOf(parts: readonly NamedPart[]): Line[] {
  return parts.flatMap((part) => part.faces.map((face) => ({ part, face })));
}

function fontName({ cut }: Face, { engraving }: Catalogue): string {
  return engraving.fonts.find(({ code }) => code === cut?.font)?.name ?? cut?.font ?? "";
}

function widest({ cut }: Face): number | undefined {
  return cut === undefined ? undefined : rounded(Math.max(...cut.rows.map(({ width }) => width)));
}

function placeOf(face: Face, row: number): Pick<CutRow, "left" | "baseline"> | undefined {
  const cut = face.cut?.rows.find((one) => one.row === row);
  return cut === undefined ? undefined : onPart(face, cut);
}

function onPart({ box }: Face, { left, baseline }: CutRow): Pick<CutRow, "left" | "baseline"> {
  return { left: rounded(box.x + left), baseline: rounded(box.y + baseline) };
}

function boxOf({ box: { x, y, width, height } }: Face): object {
  return { left: rounded(x), top: rounded(y), width: rounded(width), height: rounded(height) };
}
