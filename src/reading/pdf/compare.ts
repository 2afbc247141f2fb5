import type { FormField, ReadField } from "../form.ts";

/**
 * Two readings of one form → its fields. A field is unsure if the readings differ in more than line ends, trailing
 * blanks or the order of a selection. It is also unsure if only one reader sees it and finds it filled in. The value
 * is the first reader's, unless that found nothing.
 */
export function compareForms(one: readonly FormField[], other: readonly FormField[]): ReadField[] {
  const byNameInOne = new Map(one.map((field) => [field.name, field]));
  const byNameInOther = new Map(other.map((field) => [field.name, field]));
  const names = new Set([...byNameInOne.keys(), ...byNameInOther.keys()]);
  return [...names].flatMap((name) => compareField(byNameInOne.get(name), byNameInOther.get(name)) ?? []);
}

function compareField(one: FormField | undefined, other: FormField | undefined): ReadField | undefined {
  const field = shown(one) !== "" ? one : (other ?? one);
  if (field === undefined) return undefined;
  const { name, kind } = field;
  const values = kind === "text" ? field.values.slice(0, 1) : field.values;
  // Several fields of one name contradict each other. Both readers see it, and neither can know.
  const [first = "", second] = field.values;
  if (kind === "text" && second !== undefined)
    return { name, kind, values, unsure: { one: first, other: second } };
  const [inOne, inOther] = [shown(one), shown(other)];
  return { name, kind, values, ...(inOne === inOther ? {} : { unsure: { one: inOne, other: inOther } }) };
}

/** What a field says, without harmless differences. */
function shown(field: FormField | undefined): string {
  if (field === undefined) return "";
  return field.values.map(withoutTrailingBlanks).toSorted().join(", ");
}

function withoutTrailingBlanks(text: string): string {
  const lines = text.split("\n").map((line) => line.trimEnd());
  return lines.join("\n").trimEnd();
}
