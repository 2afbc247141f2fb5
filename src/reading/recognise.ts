import type { Edition } from "./edition.ts";
import { isFillable, type ReadField } from "./form.ts";

/** The edition of a form, or the title of the edition that it is most like. */
export type Recognised =
  | { readonly edition: Edition; readonly nearest?: never }
  | { readonly edition?: never; readonly nearest?: string };

// An edition may leave out fields that mean nothing. A viewer may drop a field that nobody filled in.
const least = { ofEdition: 0.9, ofForm: 0.5, worthNaming: 0.3, labels: 0.6 };

/** Which edition a form is, by the names of its fields. The name of the file does not matter. */
export function recognise(fields: readonly ReadField[], editions: readonly Edition[]): Recognised {
  const names = new Set(fields.filter(isFillable).map((field) => field.name));
  const scored = editions
    .map((edition) => ({ edition, ...likeness(names, edition) }))
    .toSorted((a, b) => b.both - a.both);
  const fitting = scored
    .filter(({ ofEdition, ofForm }) => ofEdition >= least.ofEdition && ofForm >= least.ofForm)
    .map(({ edition }) => edition);
  const edition = fitting.find((one) => claimed(fields, one) === plain(one.name)) ?? fitting[0];
  // A form that names an edition we do not have is another form, however alike its fields are.
  if (edition !== undefined && ["", plain(edition.name)].includes(claimed(fields, edition)))
    return { edition };
  const [nearest] = scored;
  return nearest === undefined || nearest.both < least.worthNaming ? {} : { nearest: nearest.edition.title };
}

/** An edition beside a form that it may be: which fields of either the other lacks. */
export interface Compared {
  readonly edition: Edition;
  readonly missing: readonly string[];
  readonly foreign: readonly string[];
  /** The edition that the form says it is, if it is none of this name. */
  readonly claims?: string;
}

/** The edition that a form is most like, whether or not it is one. */
export function nearestTo(fields: readonly ReadField[], editions: readonly Edition[]): Compared | undefined {
  const names = new Set(fields.filter(isFillable).map(({ name }) => name));
  const [edition] = editions.toSorted((a, b) => likeness(names, b).both - likeness(names, a).both);
  return edition && compareWith(edition, fields);
}

/** Which fields a form and an edition do not share. */
export function compareWith(edition: Edition, fields: readonly ReadField[]): Compared {
  const names = new Set(fields.filter(isFillable).map(({ name }) => name));
  const own = new Set(edition.fields.map(({ name }) => name));
  const claims = claimed(fields, edition);
  return {
    edition,
    missing: [...own].filter((name) => !names.has(name)),
    foreign: [...names].filter((name) => !own.has(name)),
    ...(["", plain(edition.name)].includes(claims) ? {} : { claims }),
  };
}

/** Whether the text of a page has most of the labels of an edition. Then it is that form, printed or flattened. */
export function carriesLabels(text: string, editions: readonly Edition[]): boolean {
  const page = plain(text);
  return editions.some(({ fields }) => {
    // Labels such as "Bill to: street" may be printed apart. Faces may be drawn rather than named.
    const parts = new Set(
      fields
        .filter(({ place }) => !place?.startsWith("row.") && !place?.startsWith("plain."))
        .flatMap(({ label }) => label.split(/[:,]/).map(plain))
        .filter((part) => part !== ""),
    );
    const found = [...parts].filter((part) => page.includes(part));
    return found.length >= parts.size * least.labels;
  });
}

function likeness(
  names: ReadonlySet<string>,
  { fields }: Edition,
): Record<"ofEdition" | "ofForm" | "both", number> {
  const shared = fields.filter((field) => names.has(field.name)).length;
  return {
    ofEdition: shared / fields.length,
    ofForm: names.size === 0 ? 0 : shared / names.size,
    both: (2 * shared) / (fields.length + names.size),
  };
}

/** What the form says its edition is; "" where it does not say. */
function claimed(fields: readonly ReadField[], edition: Edition): string {
  const name = edition.fields.find(({ place }) => place === "edition")?.name;
  return plain(fields.find((field) => field.name === name)?.values[0] ?? "");
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
}
