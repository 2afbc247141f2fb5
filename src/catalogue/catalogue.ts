import { z } from "zod";
import { readYaml, type Written } from "../yaml/yaml.ts";
import { blockOf, engravingSchema, faceFaults, faceSchema } from "./engraving.ts";
import type { Words } from "./words.ts";

const millimetres = z.number().positive();
const code = z.string().regex(/^[A-Z0-9]{1,6}$/, "a code is 1 to 6 capital letters or digits");
const colour = z.string().regex(/^#[0-9A-F]{6}$/i, "a colour is written #RRGGBB");

/** Where on its face a legend may sit. */
const legendPlaces = ["top", "middle", "foot"] as const;

const room = {
  /** Rows of a legend, and characters of a row. */
  rows: z.int().min(1),
  characters: z.int().min(1),
};

const layout = z.strictObject({
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
  /** How far the first row of a legend at the top is from the upper edge, the last of one at the foot from the lower. */
  legend_top: millimetres.optional(),
  legend_foot: millimetres.optional(),
});

const finish = z.strictObject({
  code,
  name: z.string().min(1),
  colour,
  devices: z.boolean(),
  plates: z.array(z.int().min(1)),
});

const schema = z
  .strictObject({
    maker: z.strictObject({
      name: z.string().min(1),
      email: z.email(),
      phone: z.string().min(1),
      about: z.string().min(1),
    }),
    device: z.strictObject({ opening: z.strictObject({ width: millimetres, height: millimetres }) }),
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
    engraving: engravingSchema,
    characters: z.string().min(1),
    plate_code: code,
  })
  .check((ctx) => {
    const fault = (path: (string | number)[], message: string): void => {
      ctx.issues.push({ code: "custom", input: ctx.value, path, message });
    };
    const { layouts, finishes, lettering, plate, engraving } = ctx.value;
    for (const [list, items] of Object.entries({ layouts, finishes, lettering })) {
      const seen = new Set<string>();
      items.forEach((item, i) => {
        if (seen.has(item.code)) fault([list, i, "code"], `the code ${item.code} is taken by an entry above`);
        seen.add(item.code);
      });
    }
    finishes.forEach((item, i) => {
      item.plates.forEach((gangs, j) => {
        if (gangs > plate.widths.length)
          fault(
            ["finishes", i, "plates", j],
            `no plate has ${gangs} gangs; the widest has ${plate.widths.length}`,
          );
      });
    });
    plate.widths.forEach((width, i) => {
      const before = plate.widths[i - 1];
      if (before !== undefined && width <= before)
        fault(["plate", "widths", i], "a plate with more gangs must be wider");
    });
    for (const [key, message] of faceFaults(plate.face, plate.rows, engraving))
      fault(["plate", "face", key], message);
    layouts.forEach((item, i) => {
      const { opening } = ctx.value.device;
      for (const [key, message] of faceFaults(item.face, item.rows, engraving))
        fault(["layouts", i, "face", key], message);
      for (const [key, message] of placeFaults(item, engraving)) fault(["layouts", i, ...key], message);
      if (item.face.width * item.columns > opening.width || item.face.height * item.lines > opening.height)
        fault(["layouts", i, "face"], "the faces do not fit into the opening");
    });
  });

type LayoutFile = z.output<typeof layout>;

/** What is wrong with the places that a legend may have on a face of this layout. */
function placeFaults(
  { legend_places = [], legend_top, legend_foot, face, rows }: LayoutFile,
  { margin }: z.output<typeof engravingSchema>,
): [path: string[], message: string][] {
  const free = face.height - margin - blockOf(rows, face.cap, face);
  return (["top", "foot"] as const).flatMap((place) => {
    const edge = place === "top" ? legend_top : legend_foot;
    const key = `legend_${place}`;
    if (edge === undefined)
      return legend_places.includes(place)
        ? [[[], `say in ${key} how far from the edge a legend at the ${place} is`] as [string[], string]]
        : [];
    return edge > free ? [[[key], `${rows} rows do not fit so far from the edge`] as [string[], string]] : [];
  });
}

/** The catalogue as its file says it. */
type CatalogueFile = z.output<typeof schema>;

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
