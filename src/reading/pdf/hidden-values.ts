import type { Doubt } from "../../trade/sheet.ts";
import type { Edition, EditionField } from "../edition.ts";
import type { PdfFacts, WidgetFacts } from "../facts.ts";
import type { ReadField } from "../form.ts";

/** Fields in which the page does not show what the field holds, and fields that no longer show at all. */
export function hiddenValues({ fields, widgets, pages }: PdfFacts, edition: Edition): Doubt[] {
  const byName = Map.groupBy(widgets, ({ field }) => field);
  const printed = new Map(edition.fields.map((field) => [field.name, field]));
  // Pages that were not looked at may show all fields.
  if (widgets.length === 0) return pages && fields.some(isFilled) ? [{ what: "flattened" }] : [];
  return fields.flatMap((field): Doubt[] => {
    const place = printed.get(field.name)?.place;
    // If two readers differ there is no single value to look for.
    if (place === undefined || field.unsure !== undefined) return [];
    const hidden = hiddenIn(field, printed.get(field.name), byName.get(field.name) ?? []);
    const text = field.values.join(", ");
    return hidden ? [{ what: "value-hidden", place, ...(text === "" ? {} : { text }), ...hidden }] : [];
  });
}

/** What is shown instead of the value; undefined if the value shows. */
function hiddenIn(
  field: ReadField,
  printed: EditionField | undefined,
  widgets: readonly WidgetFacts[],
): { readonly shown?: string } | undefined {
  const visible = widgets.filter(({ hidden }) => !hidden);
  if (visible.length === 0) return isFilled(field) ? {} : undefined;
  const value = field.values.join("\n");
  const shows = (shown: string): boolean => {
    if (sameText(value, shown)) return true;
    if (value === "") return printed?.prints !== undefined && sameText(printed.prints, shown);
    // Some programs draw only the lines that fit.
    return (
      printed?.place === "notes" && glyphsOf(shown) !== "" && glyphsOf(value).startsWith(glyphsOf(shown))
    );
  };
  const other = visible.find(({ shown }) => shown !== undefined && !shows(shown));
  if (other === undefined) return undefined;
  return glyphsOf(other.shown ?? "") === "" ? {} : { shown: other.shown ?? "" };
}

function isFilled({ values }: ReadField): boolean {
  return values.some((value) => value !== "");
}

/**
 * Whether two texts show the same. Blanks do not count, nor does what the fonts of forms cannot tell apart. If there
 * is no letter, punctuation does not count either, since forms draw numbers and dates in their own ways.
 */
export function sameText(one: string, other: string): boolean {
  if (/\p{L}/u.test(one + other)) return glyphsOf(one) === glyphsOf(other);
  return digits(one) === digits(other);
}

/** What can be seen of a text in any font of a form. */
function glyphsOf(text: string): string {
  return (
    text
      .normalize("NFKC")
      .replace(/[\u00ad‐‑‒–—―−]/g, "-")
      .replace(/[‘’]/g, "'")
      .replace(/[“”]/g, '"')
      // Some programs draw letters beyond Latin-1 as "?". Others leave them out.
      .replace(/[\s?]|[^\0-\xff]/gu, "")
  );
}

function digits(text: string): string {
  // Forms draw 2 as 2.00, and 302.8 as 302,80.
  return text.replace(/(?<=\d[.,]\d?)0+$/, "").replace(/\D/g, "");
}
