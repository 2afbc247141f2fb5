import { z } from "zod";
import { readInSpiteOfFaults, readYaml, type Written, wherever } from "../yaml/yaml.ts";
import { blockOf, engravingSchema, faceFaults, faceSchema } from "./engraving.ts";
import type { Words } from "./words.ts";

const millimetres = z.number().positive();
const code = z.string().regex(/^[A-Z0-9]{1,6}$/, "a code is 1 to 6 capital letters or digits");
const colour = z.string().regex(/^#[0-9A-F]{6}$/i, "a colour is written #RRGGBB");

/** What is wrong at a place of the catalogue. */
type Wrong = readonly [path: readonly (string | number)[], what: string];

/** A rule that looks at several parts, as far as these are sound. A fault elsewhere hides nothing of it. */
function rule<T>(needs: z.ZodRawShape, faults: (value: T) => Iterable<Wrong>) {
  return z.superRefine<T>((value, ctx) => {
    for (const [path, message] of faults(value)) ctx.addIssue({ code: "custom", path: [...path], message });
  }, wherever(needs));
}

const some = z.array(z.unknown());

/** Where on its face a legend may sit. */
const legendPlaces = ["top", "middle", "foot"] as const;

const room = {
  /** Rows of a legend, and characters of a row. */
  rows: z.int().min(1),
  characters: z.int().min(1),
};

const edges = {
  /**
   * At the top, the first row begins so far below the upper edge. At the foot, the last row ends so far above the
   * lower edge.
   */
  legend_top: millimetres.optional(),
  legend_foot: millimetres.optional(),
};

const layoutShape = z.strictObject({
  code,
  name: z.string().min(1),
  /** Buttons are numbered row by row from the top left: `columns` in a line, `lines` below each other. */
  columns: z.int().min(1),
  lines: z.int().min(1),
  /** Of the legend on each button. */
  ...room,
  face: faceSchema,
  /** Where a legend may sit, if the buyer chooses. */
  legend_places: z.array(z.enum(legendPlaces)).min(2).optional(),
  ...edges,
});

const layout = layoutShape.check(
  rule<z.output<typeof layoutShape>>({ legend_places: some.optional() }, function* (value) {
    for (const place of ["top", "foot"] as const)
      if (value.legend_places?.includes(place) && value[`legend_${place}`] === undefined)
        yield [[], `say in legend_${place} how far from the edge a legend at the ${place} is`];
  }),
);

const finish = z.strictObject({
  code,
  name: z.string().min(1),
  colour,
  devices: z.boolean(),
  plates: z.array(z.int().min(1)),
});

/** The sound items of a list, with their places in it. */
function soundIn<S extends z.ZodType>(items: readonly unknown[], schema: S): [number, z.output<S>][] {
  return items.flatMap((item, i): [number, z.output<S>][] => {
    const read = schema.safeParse(item);
    return read.success ? [[i, read.data]] : [];
  });
}

const sized = z.looseObject({ columns: z.int(), lines: z.int(), face: faceSchema });
const filled = z.looseObject({ rows: z.int(), face: faceSchema, ...edges });
const opening = z.strictObject({ width: millimetres, height: millimetres });

/** The part that editions and forms are read by. */
const makesSchema = z.object({
  device: z.strictObject({ opening }),
  layouts: z.array(layout).min(1),
  plate: z.strictObject({
    /** Of the legend above each gang. */
    ...room,
    height: millimetres,
    face: faceSchema,
    /** From the plate's upper edge to the middle of the legends. */
    legend_middle: millimetres,
    /** From the middle of one gang to the middle of the next. */
    pitch: millimetres,
    widths: z.array(millimetres).min(1),
  }),
  finishes: z.array(finish).min(1),
  lettering: z.array(z.strictObject({ code, name: z.string().min(1), colour })).min(1),
});

const shape = z.strictObject({
  maker: z.strictObject({
    name: z.string().min(1),
    email: z.email(),
    phone: z.string().min(1),
    about: z.string().min(1),
  }),
  ...makesSchema.shape,
  engraving: engravingSchema,
  characters: z.string().min(1),
  plate_code: code,
});

const schema = shape.check(
  ...(["layouts", "finishes", "lettering"] as const).map((list) =>
    rule<CatalogueFile>({ [list]: some }, (value) => doubledCodes(list, value[list])),
  ),
  rule<CatalogueFile>(
    { finishes: some, plate: z.looseObject({ widths: some.min(1) }) },
    function* ({ finishes, plate: { widths } }) {
      for (const [i, { plates }] of soundIn(finishes, z.looseObject({ plates: z.array(z.number()) })))
        for (const [j, gangs] of plates.entries())
          if (gangs > widths.length)
            yield [
              ["finishes", i, "plates", j],
              `no plate has ${gangs} gangs; the widest has ${widths.length}`,
            ];
    },
  ),
  rule<CatalogueFile>({ plate: z.looseObject({ widths: some }) }, function* ({ plate: { widths } }) {
    for (const [i, width] of widths.entries())
      if (width <= (widths[i - 1] ?? 0))
        yield [["plate", "widths", i], "a plate with more gangs must be wider"];
  }),
  rule<CatalogueFile>(
    { plate: z.looseObject({ face: faceSchema, rows: z.int() }), engraving: engravingSchema },
    function* ({ plate: { face, rows }, engraving }) {
      for (const [key, what] of faceFaults(face, rows, engraving)) yield [["plate", "face", key], what];
    },
  ),
  rule<CatalogueFile>({ layouts: some, engraving: engravingSchema }, function* ({ layouts, engraving }) {
    for (const [i, { face, rows, ...edge }] of soundIn(layouts, filled)) {
      for (const [key, what] of faceFaults(face, rows, engraving)) yield [["layouts", i, "face", key], what];
      const free = face.height - engraving.margin - blockOf(rows, face.cap, face);
      for (const key of ["legend_top", "legend_foot"] as const)
        if ((edge[key] ?? 0) > free)
          yield [["layouts", i, key], `${rows} rows do not fit so far from the edge`];
    }
  }),
  rule<CatalogueFile>(
    { layouts: some, device: z.looseObject({ opening }) },
    function* ({ layouts, device: { opening } }) {
      for (const [i, { face, columns, lines }] of soundIn(layouts, sized))
        if (face.width * columns > opening.width || face.height * lines > opening.height)
          yield [["layouts", i, "face"], "the faces do not fit into the opening"];
    },
  ),
);

function* doubledCodes(list: string, items: readonly unknown[]): Iterable<Wrong> {
  const seen = new Set<string>();
  for (const [i, item] of soundIn(items, z.looseObject({ code }))) {
    if (seen.has(item.code)) yield [[list, i, "code"], `the code ${item.code} is taken by an entry above`];
    seen.add(item.code);
  }
}

/** The catalogue as its file says it. */
type CatalogueFile = z.output<typeof shape>;

/** What the maker can make, and the words that it knows. Distances are millimetres, colours sRGB `#RRGGBB`. */
export interface Catalogue extends CatalogueFile {
  readonly words: Words;
}
export type Layout = Catalogue["layouts"][number];
export type Finish = Catalogue["finishes"][number];
export type Lettering = Catalogue["lettering"][number];

/** YAML text of the catalogue → the catalogue without its words, or every fault in it. */
export function readCatalogue(text: string, file: string): Written<CatalogueFile> {
  return readYaml(text, file, schema);
}

/** The part of the catalogue that editions are read by. It is read even if the catalogue is faulty elsewhere. */
export function readMakes(text: string): z.output<typeof makesSchema> | undefined {
  return readInSpiteOfFaults(text, makesSchema);
}

export function layoutOf(catalogue: Catalogue, code: string): Layout | undefined {
  return catalogue.layouts.find((layout) => layout.code === code);
}

export function finishOf(catalogue: Catalogue, code: string): Finish | undefined {
  return catalogue.finishes.find((finish) => finish.code === code);
}

export function letteringOf(catalogue: Catalogue, code: string): Lettering | undefined {
  return catalogue.lettering.find((lettering) => lettering.code === code);
}

/** What fits on one face. */
export interface Room {
  readonly rows: number;
  readonly characters: number;
}

/** The most that any layout has room for on its n-th button. A row takes as much as the first does. */
export function roomOfButton(n: number, { layouts }: Pick<Catalogue, "layouts">, row = 1): Room {
  const having = layouts.filter((layout) => buttonsOf(layout) >= n && layout.rows >= row);
  const some = having.length > 0 ? having : layouts;
  return {
    rows: Math.max(...some.map(({ rows }) => rows)),
    characters: Math.max(...some.map(({ characters }) => characters)),
  };
}

/** Buttons of a layout. */
export function buttonsOf(layout: Layout): number {
  return layout.columns * layout.lines;
}

/** Gangs of the widest plate. */
export function mostGangs(catalogue: Pick<Catalogue, "plate">): number {
  return catalogue.plate.widths.length;
}

/** Buttons of the layout with the most. */
export function mostButtons(catalogue: Pick<Catalogue, "layouts">): number {
  return Math.max(...catalogue.layouts.map(buttonsOf));
}
