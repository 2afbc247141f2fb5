import type { Catalogue } from "../catalogue/catalogue.ts";
import { rounded } from "../drawing/proof/shapes.ts";
import type { CutRow } from "../trade/cut.ts";
import type { Order } from "../trade/order.ts";
import type { Face, Part } from "./part.ts";
import { type Column, type Table, tableOf } from "./table.ts";

/** A part, with the name of its cut files before their endings. */
export interface NamedPart extends Part {
  readonly file: string;
}

/**
 * What is cut, a row for each face, with as many rows of legends as the order has. Places are millimetres from the upper
 * left corner of the part.
 */
export function scheduleTable(order: Order, parts: readonly NamedPart[], catalogue: Catalogue): Table {
  const faces = parts.flatMap((part) => part.faces.map((face) => ({ part, face })));
  const most = Math.max(1, ...faces.flatMap(({ face }) => face.cut?.rows.map(({ row }) => row) ?? []));
  const rows = Array.from({ length: most }, (_, i) => i + 1);
  const columns: Column<(typeof faces)[number]>[] = [
    ["Order", () => order.number],
    ["Station", ({ part }) => part.station],
    ["Position", ({ part }) => part.position],
    ["Face", ({ face }) => face.says],
    ...rows.map((row): (typeof columns)[number] => [
      `Row ${row}`,
      ({ face }) => (face.cut === undefined ? undefined : face.rows[row - 1]),
    ]),
    // No word of ours stands in the columns of what is cut.
    ["Leave plain", ({ face }) => (face.cut === undefined ? "plain" : undefined)],
    ["Finish", ({ part }) => part.finish?.name],
    ["Lettering", ({ part }) => part.lettering?.name],
    ["Part", ({ part }) => part.name],
    ["Part key", ({ part }) => part.key],
    ["Font", ({ face }) => fontName(face, catalogue)],
    ["Cap mm", ({ face }) => face.cut?.cap],
    ["Width mm", ({ face }) => widest(face)],
    ["Cutter mm", ({ face }) => face.cut?.cutter],
    ...rows.flatMap((row): (typeof columns)[number][] => [
      [`Row ${row} left mm`, ({ face }) => placeOf(face, row)?.left],
      [`Row ${row} baseline mm`, ({ face }) => placeOf(face, row)?.baseline],
    ]),
    ["Cut file", ({ part }) => part.file],
    ["Sheet", ({ part }) => part.sheet.file],
    ["Proof page", ({ part }) => part.page],
  ];
  return tableOf("Schedule", columns, faces);
}

/** What is to be taken from stock: devices by finish and layout, plates by finish and size, and how many. */
export function cuttingList(parts: readonly Part[]): Table {
  const kinds = Map.groupBy(parts, ({ kind, finish, code }) => JSON.stringify([kind, finish?.code, code]));
  const counted = [...kinds.values()].flatMap((alike) => {
    const [part] = alike;
    return part === undefined ? [] : [{ part, count: alike.length }];
  });
  const columns: Column<(typeof counted)[number]>[] = [
    ["Kind", ({ part }) => part.kind],
    ["Finish", ({ part }) => part.finish?.name],
    ["Finish code", ({ part }) => part.finish?.code],
    ["Part", ({ part }) => part.name],
    ["Part code", ({ part }) => part.code],
    ["Count", ({ count }) => count],
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
    cuttingList: list.rows.map((row) => Object.fromEntries(list.titles.map((title, i) => [title, row[i]]))),
  };
}

const numeric = { numeric: true } as const;

function inStock({ kind, finish, code }: Part): string {
  return [kind, finish?.name, finish?.code, code].join(" ");
}

function fontName({ cut }: Face, { engraving }: Catalogue): string | undefined {
  return engraving.fonts.find(({ code }) => code === cut?.font)?.name ?? cut?.font;
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
