import type { Doubt } from "../../trade/sheet.ts";
import type { Edition, EditionField } from "../edition.ts";
import type { PdfFacts, WidgetFacts } from "../facts.ts";
import type { ReadField } from "../form.ts";

/** Fields in which the page does not show what the field holds, and fields that no longer show at all. */
export function hiddenValues({ fields, widgets, pages }: PdfFacts, edition: Edition): Doubt[] {
  const byName = Map.groupBy(widgets, ({ field }) => field);
  const printed = new Map(edition.fields.map((field) => [field.name, field]));
  // Pages that were not looked at may show them all.
  if (widgets.length === 0) return pages && fields.some(isFilled) ? [{ what: "flattened" }] : [];
  return fields.flatMap((field): Doubt[] => {
    const place = printed.get(field.name)?.place;
    // Where two readers differ there is no one value to look for.
    if (place === undefined || field.unsure !== undefined) return [];
    const hidden = hiddenIn(field, printed.get(field.name), byName.get(field.name) ?? []);
    const text = field.values.join(", ");
    return hidden ? [{ what: "value-hidden", place, ...(text === "" ? {} : { text }), ...hidden }] : [];
  });
}

/** What is shown instead of the value; undefined where the value shows. */
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
 * Whether two texts show the same: blanks apart, and what fonts of forms cannot tell. Where there is no
 * letter, punctuation counts for nothing either, since forms draw numbers and dates in ways of their own.
 */
export function sameText(one: string, other: string): boolean {
  if (/\p{L}/u.test(one + other)) return glyphsOf(one) === glyphsOf(other);
  return digits(one) === digits(other);
}

/** What there is to see of a text in any font of a form. */
function glyphsOf(text: string): string {
  return (
    text
      .normalize("NFKC")
      .replace(/[\u00ad‐‑‒–—―−]/g, "-")
      .replace(/[‘’]/g, "'")
      .replace(/[“”]/g, '"')
      // Letters beyond Latin-1 are drawn as "?" by some programs, and left out by others.
      .replace(/[\s?]|[^\0-\xff]/gu, "")
  );
}

function digits(text: string): string {
  // 2 is drawn as 2.00, and 302.8 as 302,80.
  return text.replace(/(?<=\d[.,]\d?)0+$/, "").replace(/\D/g, "");
}
