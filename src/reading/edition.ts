import { z } from "zod";
import { type Catalogue, mostButtons, mostGangs } from "../catalogue/catalogue.ts";
import type { FaceName } from "../trade/legend.ts";
import { addressParts, type Place } from "../trade/place.ts";
import { readYaml, type Written } from "../yaml/yaml.ts";

const plainPlaces = [
  "contact.name",
  "contact.email",
  "contact.phone",
  ...addressParts.map((part) => `bill.${part}` as const),
  ...addressParts.map((part) => `ship.${part}` as const),
  "ship.same",
  "project",
  "order",
  "mark",
  "standing",
  "position",
  "gangs",
  "layout",
  "legend-place",
  "finish",
  "lettering",
  "part-key",
  "notes",
  "edition",
] as const;
const facePattern = /^(row\.(\{face\}|plate|\d+)\.(\{row\}|\d+)|plain\.(\{face\}|plate|\d+))$/;

const field = z.strictObject({
  /** The place it fills; `nothing` for a field that belongs to the form but says nothing of the order. */
  means: z
    .string()
    .refine(
      (means) =>
        means === "nothing" || plainPlaces.some((place) => place === means) || facePattern.test(means),
      "not a place on a sheet",
    ),
  label: z.string().min(1),
  /** What the form's own values stand for, where they are neither code nor name in the catalogue. */
  values: z.record(z.string(), z.string()).optional(),
  /** What a tick in this box stands for, where several boxes make one choice. */
  ticked: z.string().optional(),
  /** A hint that the blank form prints within the field's frame, such as "k of N". */
  prints: z.string().min(1).optional(),
});

const schema = z.strictObject({
  edition: z.string().min(1),
  title: z.string().min(1),
  form: z.enum(["device", "plate"]),
  /** Burin draws the blank sheet of this edition itself. */
  drawn: z.boolean().default(false),
  /** A PDF of the blank form, as seen from this file: pages of sheets are compared with it. Not for a form that Burin draws. */
  blank: z.string().min(1).optional(),
  /** What the form that Burin draws looks like, as a hash: its drawing never changes under its name. */
  looks: z.string().min(1).optional(),
  /** The edition to use instead; this one is no longer accepted. */
  replaced_by: z.string().optional(),
  fields: z.record(z.string().min(1), field),
});

/** One field of a form: what it is called, what it means, how it is labelled. */
export interface EditionField {
  readonly name: string;
  /** Absent for a field that says nothing of the order. */
  readonly place?: Place;
  readonly label: string;
  readonly values: Readonly<Record<string, string>>;
  readonly ticked?: string;
  /** A hint that the blank form prints within the field's frame. */
  readonly prints?: string;
}

/** One printed version of one form. */
export interface Edition {
  readonly name: string;
  readonly title: string;
  readonly form: "device" | "plate";
  /** Burin draws the blank sheet of this edition itself. */
  readonly drawn: boolean;
  /** Where a PDF of the blank form is, as written, for a form that Burin does not draw. */
  readonly blank?: string;
  /** The hash of how the form looked when it was given its name. */
  readonly looks?: string;
  readonly replacedBy?: string;
  readonly fields: readonly EditionField[];
}

/**
 * YAML text of one edition → the edition, or every fault in it. A field whose name holds `{face}` or
 * `{row}` stands for one field on each face and row that the catalogue has.
 */
export function readEdition(text: string, file: string, catalogue: Catalogue): Written<Edition> {
  const read = readYaml(text, file, schema);
  if (!read.ok) return read;
  const { edition, title, form, drawn, blank, looks, replaced_by, fields } = read.value;
  return {
    ok: true,
    value: {
      name: edition,
      title,
      form,
      drawn,
      ...(blank === undefined ? {} : { blank }),
      ...(looks === undefined ? {} : { looks }),
      ...(replaced_by === undefined ? {} : { replacedBy: replaced_by }),
      fields: Object.entries(fields).flatMap(([name, { means, label, values = {}, ticked, prints }]) =>
        holesOf(means, form, catalogue).map((hole) => ({
          name: fillHole(name, hole),
          label: fillHole(label, hole),
          values,
          ...(means === "nothing" ? {} : { place: fillHole(means, hole) as Place }),
          ...(ticked === undefined ? {} : { ticked }),
          ...(prints === undefined ? {} : { prints: fillHole(prints, hole) }),
        })),
      ),
    },
  };
}

interface Hole {
  readonly face?: FaceName;
  readonly row?: number;
}

function holesOf(means: string, form: "device" | "plate", catalogue: Catalogue): Hole[] {
  const faces = form === "device" ? mostButtons(catalogue) : mostGangs(catalogue);
  const rows = form === "plate" || means.includes(".plate") ? catalogue.plate.rows : catalogue.device.rows;
  const byFace: Hole[] = means.includes("{face}") ? counted(faces).map((n) => ({ face: `${n}` })) : [{}];
  return byFace.flatMap((hole) =>
    means.includes("{row}") ? counted(rows).map((row) => ({ ...hole, row })) : [hole],
  );
}

function fillHole(text: string, { face, row }: Hole): string {
  return text.replaceAll("{face}", face ?? "").replaceAll("{row}", String(row ?? ""));
}

function counted(n: number): number[] {
  return Array.from({ length: n }, (_, i) => i + 1);
}
