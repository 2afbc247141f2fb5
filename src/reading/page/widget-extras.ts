import { PDFDict, type PDFDocument, PDFName, PDFRawStream } from "pdf-lib";
import type { Difference } from "../facts.ts";
import { sameText } from "../pdf/hidden-values.ts";
import { entryOf, listOf, textOf } from "../pdf/pdf-value.ts";
import { formOf } from "../pdf/walked-pdf.ts";
import { objectKey } from "./content-key.ts";
import { guessedFonts, guessedIn } from "./fonts.ts";
import { type Held, keyed, runs } from "./in-the-file.ts";

/** A widget, the field that it shows and all fields above it. */
export function lineOf(widget: PDFDict): PDFDict[] {
  const line: PDFDict[] = [];
  let node: unknown = widget;
  for (let step = 0; step < 50 && node instanceof PDFDict; step++) {
    line.push(node);
    node = entryOf(node, "Parent");
  }
  return line;
}

/** The full name of the field that a widget shows. */
export function nameOf(widget: PDFDict): string {
  const parts = lineOf(widget).map((node) => textOf(entryOf(node, "T")));
  return parts
    .filter((part) => part !== "")
    .toReversed()
    .join(".");
}

/**
 * What a field may show or do besides its value: programs, a tip, another look under the pointer, other words for its
 * choices, formatted text, a font at which viewers guess. `values` are what the field holds.
 */
export function extrasOf(
  widget: PDFDict,
  field: string,
  values: readonly string[],
  { catalog }: PDFDocument,
): Held[] {
  const line = lineOf(widget);
  const nearest = (key: string) => line.map((node) => entryOf(node, key)).find((one) => one !== undefined);
  const held = (what: Difference["what"], key: string | undefined, text = ""): Held => ({
    difference: { what, page: 0, field, ...(text === "" ? {} : { text: text.slice(0, 200) }) },
    key: keyed(`${what} ${field}`, key),
  });
  const looks = entryOf(widget, "AP");
  const look = looks instanceof PDFDict ? entryOf(looks, "N") : undefined;
  const tip = textOf(nearest("TU"));
  const says = textOf(entryOf(widget, "Contents"));
  const rich = plainText(textOf(nearest("RV")));
  // A choice shows under its own name, or in other words that stand beside it.
  const choices = listOf(nearest("Opt")).map((one) => {
    const [value = "", words = value] = listOf(one).map(textOf);
    return `${value}\t${words}`;
  });
  const fonts = [
    ...(look instanceof PDFRawStream ? guessedIn(look) : []),
    ...styleFonts(textOf(nearest("DA")), formOf(catalog)),
  ].map((font) => keyed("font", font));
  const isButton = nearest("FT") === PDFName.of("Btn");
  return [
    ...(runs(widget, "A") ? [held("program", objectKey(entryOf(widget, "A")))] : []),
    ...line.flatMap((one) => (runs(one, "AA") ? [held("program", objectKey(entryOf(one, "AA")))] : [])),
    ...(tip === "" ? [] : [held("laid", `tip ${tip}`, tip)]),
    ...(says === "" || says === tip || values.some((value) => sameText(value, says))
      ? []
      : [held("laid", `says ${says}`, says)]),
    ...(rich === "" || sameText(values.join("\n"), rich) ? [] : [held("field", `rich ${rich}`)]),
    ...(choices.join("").trim() === "" ? [] : [held("field", `choices ${choices.join("\n")}`)]),
    ...(isButton ? [] : [...otherLooks(looks), ...fonts].map((key) => held("field", key))),
  ];
}

/** Looks of a button under the pointer and while it is pressed. ISO 32000-1:2008 table 168 */
function otherLooks(looks: unknown): (string | undefined)[] {
  if (!(looks instanceof PDFDict)) return [];
  return ["R", "D"].flatMap((key) => {
    const look = entryOf(looks, key);
    return look === undefined ? [] : [keyed("look", objectKey(look))];
  });
}

/** The words of a formatted text, which is XHTML. ISO 32000-1:2008 §12.7.3.4 */
function plainText(rich: string): string {
  return rich
    .replaceAll(/<[^>]*>/g, " ")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&amp;", "&")
    .trim();
}

/** The font in which a viewer is to draw a field, if the viewer has to guess at it. ISO 32000-1:2008 §12.7.3.3 */
function styleFonts(style: string, form: PDFDict | undefined): string[] {
  const name = /\/(\S+)\s+-?[\d.]+\s+Tf/.exec(style)?.[1];
  const resources = form && entryOf(form, "DR");
  const font =
    resources instanceof PDFDict && name !== undefined ? guessedFonts(resources).get(name) : undefined;
  return font === undefined ? [] : [font];
}
