import type { Place } from "../trade/place.ts";
import type { Doubt } from "../trade/sheet.ts";
import type { Edition } from "./edition.ts";
import type { PdfFacts, WidgetFacts } from "./facts.ts";
import type { ReadField } from "./form.ts";

/** Fields in which the page does not show what the field holds, and fields that no longer show at all. */
export function hiddenValues({ fields, widgets, pages }: PdfFacts, edition: Edition): Doubt[] {
  const byName = Map.groupBy(widgets, ({ field }) => field);
  const places = new Map(edition.fields.flatMap(({ name, place }) => (place ? [[name, place]] : [])));
  // Pages that were not looked at may show them all.
  if (widgets.length === 0) return pages && fields.some(isFilled) ? [{ what: "flattened" }] : [];
  return fields.flatMap((field): Doubt[] => {
    const place = places.get(field.name);
    // Where two readers differ there is no one value to look for.
    if (place === undefined || field.unsure !== undefined) return [];
    const hidden = hiddenIn(field, place, byName.get(field.name) ?? []);
    const text = field.values.join(", ");
    return hidden ? [{ what: "value-hidden", place, ...(text === "" ? {} : { text }), ...hidden }] : [];
  });
}

/** What is shown instead of the value; undefined where the value shows. */
function hiddenIn(
  field: ReadField,
  place: Place,
  widgets: readonly WidgetFacts[],
): { readonly shown?: string } | undefined {
  const visible = widgets.filter(({ hidden }) => !hidden);
  if (visible.length === 0) return isFilled(field) ? {} : undefined;
  const value = field.values.join("\n");
  const other = visible.find(({ shown }) => {
    if (shown === undefined || sameText(value, shown)) return false;
    // Some programs draw only the lines that fit.
    return !(place === "notes" && plain(shown) !== "" && plain(value).startsWith(plain(shown)));
  });
  if (other === undefined) return undefined;
  return plain(other.shown ?? "") === "" ? {} : { shown: other.shown ?? "" };
}

function isFilled({ values }: ReadField): boolean {
  return values.some((value) => value !== "");
}

/**
 * Whether two texts read the same once punctuation, blanks and case are left out: programs draw numbers,
 * dates and lines in their own ways, and "?" for letters that their font does not have.
 */
export function sameText(one: string, other: string): boolean {
  return plain(one) === plain(other);
}

function plain(text: string): string {
  // Beyond Latin-1, fonts of forms have few letters and none that everybody draws.
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]|[^\0-\xff]/gu, "");
}
