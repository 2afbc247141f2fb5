/** One field of a PDF form as a reader found it. */
export interface FormField {
  /** Full name, parents joined with dots. */
  readonly name: string;
  readonly kind: "text" | "tick" | "choice" | "signature" | "button";
  /**
   * Text: one value, "" when empty. There are more only if a file holds several fields of one name that contradict
   * each other. Tick boxes and radio buttons: the name of the state that is on, none when off. Lists: every selected
   * value. Signatures and push buttons: none. Line ends are "\n".
   */
  readonly values: readonly string[];
}

/** A field on which two readers agree, or the answers of both if they do not. */
export interface ReadField extends FormField {
  readonly unsure?: { readonly one: string; readonly other: string };
}

/** Whether the field is one to be filled in. */
export function isFillable({ kind }: Pick<FormField, "kind">): boolean {
  return kind !== "signature" && kind !== "button";
}

/**
 * Widgets → fields. All that stands under one name is one field with every value found there. No edition can name
 * nameless fields, so they are left out unless they are filled in.
 */
export function gatherFields(widgets: Iterable<FormField>): FormField[] {
  const byName = new Map<string, FormField>();
  for (const { name: written, kind, values } of widgets) {
    const name = plainName(written);
    const before = byName.get(name)?.values ?? [];
    const found = isFillable({ kind }) ? values.map(plainLineEnds) : [];
    const all = [...new Set([...before, ...found])].filter((value) => value !== "");
    byName.set(name, { name, kind, values: kind === "text" && all.length === 0 ? [""] : all });
  }
  if (byName.get("")?.values.every((value) => value === "") === true) byName.delete("");
  return [...byName.values()];
}

/**
 * The name of a field, without a repetition of it. Some programs give every widget a name of its own, which repeats
 * the field's.
 */
export function plainName(written: string): string {
  const parts = written.split(".");
  return parts.length > 1 && parts.at(-1) === parts.at(-2) ? parts.slice(0, -1).join(".") : written;
}

function plainLineEnds(text: string): string {
  return text.replace(/\r\n?/g, "\n");
}
