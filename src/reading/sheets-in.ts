import type { Edition } from "./edition.ts";
import type { PdfFacts } from "./facts.ts";
import { isFillable } from "./form.ts";
import { annotatedPages } from "./pdf/pdfjs-annotations.ts";

/** A sheet of an edition has at least this part of its fields. */
const leastFields = 0.75;

/**
 * How many sheets the fields of a file make up. Programs that put files together rename the fields of the second
 * sheet. Others leave two sheets with one set of names, or with none in the form's own list. So each field of an
 * edition is counted, by whatever name and on whatever page. An edition is there as often as most of its fields are.
 * A field counts for one edition only.
 */
export function sheetsIn(facts: PdfFacts, editions: readonly Edition[]): number {
  const byEdition = editions.map(({ fields }) => fields.map(({ name }) => name));
  const left = timesByName(facts, new Set(byEdition.flat()));
  const known = byEdition.toSorted((a, b) => found(b, left) - found(a, left));
  let sheets = 0;
  for (const names of known) {
    const times = names.map((name) => left.get(name) ?? 0).toSorted((a, b) => b - a);
    const often = times[Math.ceil(names.length * leastFields) - 1] ?? 0;
    for (const name of names) left.set(name, (left.get(name) ?? 0) - often);
    sheets += often;
  }
  return sheets;
}

function found(names: readonly string[], times: ReadonlyMap<string, number>): number {
  return names.filter((name) => times.has(name)).length;
}

/** How often a field of this original name is there: once for each name of its own, and for each page. */
function timesByName(
  { fields, widgets, pageCount }: PdfFacts,
  known: ReadonlySet<string>,
): Map<string, number> {
  const shown = new Map<string, Set<number>>();
  for (const { field, page } of widgets) shown.set(field, (shown.get(field) ?? new Set()).add(page));
  const times = new Map<string, number>();
  for (const field of fields) {
    if (!isFillable(field)) continue;
    const pages = shown.get(field.name)?.size ?? 0;
    // A program that takes pages out of a form leaves the fields of those pages in its list.
    const often = pages === 0 && shown.size > 0 && pageCount <= annotatedPages ? 0 : Math.max(1, pages);
    for (const name of known.has(field.name) ? [field.name] : namesBefore(field.name))
      times.set(name, (times.get(name) ?? 0) + often);
  }
  return times;
}

/**
 * The names that a field may have had before files were put together. They are its own name, the name without parts
 * in front ("2.order", "form1.order"), and the name without a number after its first or last part ("MS+1.PO",
 * "order_2", "order#1").
 */
function namesBefore(name: string): Set<string> {
  const [first = "", ...rest] = name.split(".").slice(0, mostParts);
  const plain = [name, [withoutNumber(first), ...rest].join("."), withoutNumber(name)];
  const inner = rest.map((_, i) => rest.slice(i).join("."));
  return new Set([...plain, ...inner, ...inner.map(withoutNumber)]);
}

/** So many parts of a name are looked at. A stranger may make many. */
const mostParts = 12;

function withoutNumber(part: string): string {
  return part.replace(/(?:[-+_#~ .]|\[|\(| \()?\d{1,5}[\])]?$/, "");
}
