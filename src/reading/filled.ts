import type { Place, Print } from "../trade/place.ts";
import type { Unmapped } from "../trade/sheet.ts";
import type { Edition, EditionField } from "./edition.ts";
import { isFillable, type ReadField } from "./form.ts";

/** One thing filled in: as it stands in the form, and as the edition's own values translate it. */
export interface Entry {
  readonly typed: string;
  readonly means: string;
}

/** A filled form, by places instead of by field names. */
export interface Filled {
  readonly prints: { readonly [P in Place]?: Print };
  /** What is filled in at a place, unchanged. Nothing if the form was left as it was. */
  readonly at: (place: Place) => readonly Entry[];
}

/** Fields of a form → what is filled in at each place of its edition. */
export function filledIn(fields: readonly ReadField[], edition: Edition): Filled {
  const byName = new Map(fields.map((field) => [field.name, field]));
  const byPlace = Map.groupBy(edition.fields, ({ place }) => place);
  byPlace.delete(undefined);
  return {
    prints: Object.fromEntries([...byPlace].map(([place, printed]) => [place, printOf(printed)])),
    at: (place) =>
      (byPlace.get(place) ?? []).flatMap((printed) => entriesOf(byName.get(printed.name), printed)),
  };
}

/** Every filled field that the edition does not have. Somebody added it, or the edition forgot it. */
export function unmappedIn(fields: readonly ReadField[], edition: Edition): Unmapped[] {
  const known = new Set(edition.fields.map(({ name }) => name));
  return fields
    .filter((field) => isFillable(field) && !known.has(field.name))
    .flatMap((field) => {
      // What only one reader sees may still stand there.
      const { one = "", other = "" } = field.unsure ?? {};
      const values = [...field.values, one, other].filter((value) => !isLeft(field, value));
      return values.length === 0 ? [] : [{ name: field.name, value: [...new Set(values)].join(", ") }];
    });
}

/** The print of a place. Several boxes that make one choice are named together. */
function printOf(printed: readonly EditionField[]): Print {
  const [field = "", ...besides] = printed.map(({ name }) => name);
  const label = printed.map(({ label }) => label).join(" / ");
  return { field, label, ...(besides.length === 0 ? {} : { besides }) };
}

function entriesOf(field: ReadField | undefined, { ticked, label, values }: EditionField): Entry[] {
  if (field === undefined) return [];
  const filled = field.values.filter(
    (value) => value !== "" && !(field.kind === "choice" && isPrompt(value)),
  );
  if (ticked !== undefined) return filled.some(saysYes) ? [{ typed: label, means: ticked }] : [];
  const known = Object.entries(values);
  return filled.map((typed) => ({
    typed,
    means: known.find(([value]) => same(value, typed))?.[1] ?? typed,
  }));
}

/** Whether a value is that of a field that nobody filled in: blanks, a prompt, a box that is off. */
function isLeft({ kind }: ReadField, value: string): boolean {
  if (kind === "tick") return !saysYes(value);
  return kind === "choice" ? isPrompt(value) : value.trim() === "";
}

/** What a drop-down shows until something is chosen: "Choose…", "Select a finish", "-". */
export function isPrompt(value: string): boolean {
  return /^\s*(?:[-–—._…\s]*|(?:please )?(?:choose|select|pick)\b.*)$/i.test(value);
}

/** Whether something typed says that there is none: "n/a", "none", "-". */
export function saysNone(typed: string): boolean {
  return /^\s*(?:n\.?\s?\/?\s?a\.?|not applicable|none|nil|[-–—]+)\s*$/i.test(typed);
}

/** Whether a value marks a box. The value may also be chosen from a list instead. */
export function saysYes(value: string): boolean {
  return !["", "no", "off", "false"].includes(value.trim().toLowerCase());
}

/** Two texts that a person would call the same choice. */
export function same(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
