import { z } from "zod";
import { type Place, places, type SheetKind } from "../trade/place.ts";
import { type Fault, readYaml, type Written } from "../yaml/yaml.ts";
import type { Makes } from "./choices.ts";
import { faultsOfFields, type WrittenField } from "./edition-faults.ts";
import { fillHole, holesOf } from "./holes.ts";

/** What `means` may say: a place of the table, with holes left open or filled in, or `nothing`. */
const meanings = new RegExp(
  `^(?:nothing|${Object.keys(places)
    .map((place) =>
      place
        .replaceAll(/[.{}]/g, String.raw`\$&`)
        .replace(String.raw`\{face\}`, String.raw`(?:\{face\}|plate|[1-9]\d*)`)
        .replace(String.raw`\{row\}`, String.raw`(?:\{row\}|[1-9]\d*)`),
    )
    .join("|")})$`,
);

const field = z.strictObject({
  /** The place it fills. `nothing` is for a field of the form that says nothing of the order. */
  means: z.string().regex(meanings, "not a place on a sheet; `burin settings --places` lists them"),
  label: z.string().min(1),
  /** What the form's own values stand for, if the catalogue has them neither as code nor as name. */
  values: z.record(z.string(), z.string()).optional(),
  /** What a tick in this box stands for, if several boxes make one choice. */
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
  /**
   * A PDF of the blank form, as seen from this file. Pages of sheets are compared with it. Not for a form that Burin
   * draws.
   */
  blank: z.string().min(1).optional(),
  /** A hash of how the form looks that Burin draws. Its drawing never changes under its name. */
  looks: z.string().min(1).optional(),
  /** The edition to use instead; this one is no longer accepted … */
  replaced_by: z.string().optional(),
  /** … or until the end of this day. */
  accepted_until: z.iso.date("a day is written as 2026-12-31").optional(),
  fields: z.record(z.string().min(1), field).refine((all) => Object.keys(all).length > 0, "needs a field"),
});

/** The schema, and rules that a schema cannot say. Without a catalogue only the form of an edition is looked at. */
function schemaFor(makes: Makes | undefined) {
  return schema.superRefine(
    (edition, ctx) => {
      const { accepted_until, replaced_by, form, fields } = edition;
      const wrong = (path: readonly string[], message: string): void =>
        ctx.addIssue({ code: "custom", path: [...path], message });
      if (accepted_until !== undefined && replaced_by === undefined)
        wrong(["accepted_until"], "needs replaced_by: the edition to use then");
      if (makes === undefined) return;
      for (const [path, what] of faultsOfFields(soundFields(fields), form, makes)) wrong(path, what);
    },
    // A fault elsewhere in the file hides no fault here, as long as there are fields to look at.
    {
      when: ({ value }) =>
        z.looseObject({ form: schema.shape.form, fields: z.looseObject({}) }).safeParse(value).success,
    },
  );
}

function soundFields(fields: object): [string, WrittenField][] {
  return Object.entries(fields).flatMap(([name, written]): [string, WrittenField][] => {
    const read = field.safeParse(written);
    return read.success ? [[name, read.data]] : [];
  });
}

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
  readonly form: SheetKind;
  /** Burin draws the blank sheet of this edition itself. */
  readonly drawn: boolean;
  /** Where the PDF of the blank form is, as written. Only for a form that Burin does not draw. */
  readonly blank?: string;
  /** The hash of how the form looked when it was given its name. */
  readonly looks?: string;
  /** The edition to use instead, and the last day on which this one is still accepted: "2026-12-31". */
  readonly replacedBy?: string;
  readonly acceptedUntil?: string;
  readonly fields: readonly EditionField[];
}

/**
 * YAML text of one edition → the edition, or every fault in it. A field whose name holds `{face}` or
 * `{row}` stands for one field on each face and row that the catalogue has.
 */
export function readEdition(text: string, file: string, makes: Makes): Written<Edition> {
  const read = readYaml(text, file, schemaFor(makes));
  if (!read.ok) return read;
  const { edition, title, form, drawn, blank, looks, replaced_by, accepted_until, fields } = read.value;
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
      ...(accepted_until === undefined ? {} : { acceptedUntil: accepted_until }),
      fields: Object.entries(fields).flatMap(([name, { means, label, values = {}, ticked, prints }]) =>
        holesOf(name, means, form, makes).map((hole) => ({
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

/** What is wrong with an edition while no catalogue can be read. */
export function formFaults(text: string, file: string): readonly Fault[] {
  const read = readYaml(text, file, schemaFor(undefined));
  return read.ok ? [] : read.faults;
}
