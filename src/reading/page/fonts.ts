import { PDFDict, PDFName, PDFRawStream } from "pdf-lib";
import { operatorsIn } from "../pdf/content-operators.ts";
import { contentOf, dictsIn, entryOf, textOf } from "../pdf/pdf-value.ts";
import { contentOfPage, type WalkedPage } from "../pdf/walked-pages.ts";

/** How many bytes of a drawing are searched for fonts, and how deep drawings within drawings are. */
const most = { bytes: 400_000, depth: 5 };

/**
 * Families of fonts that show letters as letters, whatever font a viewer puts in their place. Common practice, no
 * source: office programs and their free replacements come with them.
 */
const families =
  /^(helvetica|helv|arial|times|courier|liberation|dejavu|nimbus|free(sans|serif|mono)|noto(sans|serif|mono)|opensans|roboto|lato|ubuntu|inter|sourcesans|sourceserif|calibri|cambria|candara|constantia|corbel|consolas|carlito|caladea|arimo|tinos|cousine|aptos|verdana|tahoma|segoeui|georgia|trebuchet|lucida(sans|grande|console|bright)|geneva|monaco|menlo|sfpro|avenir|futura|gill|optima|garamond|palatino|bookantiqua|bookman|century|franklingothic|myriad|minion|adobe(sans|serif)|univers|frutiger|dinpro|cmr|lmroman|gothic|mincho|simsun|msyh|malgun|batang|kozmin|kozgo)/;
const signs = /symbol|dingbat|ornament|emoji|icon|barcode|math|music|wingd|webd/;

/** Fonts that have been looked at. Every field of a form draws with the same few. */
const seen = new WeakMap<PDFDict, boolean>();

/** Whether a viewer has to guess at a font's letters. The font is not in the file, and viewers do not know it. */
function isGuess(font: PDFDict): boolean {
  const is = seen.get(font) ?? looksGuessed(font);
  seen.set(font, is);
  return is;
}

function looksGuessed(font: PDFDict): boolean {
  if (entryOf(font, "Subtype") === PDFName.of("Type3")) return false;
  const [inner = font] = dictsIn(font, "DescendantFonts");
  const descriptor = entryOf(inner, "FontDescriptor");
  if (
    descriptor instanceof PDFDict &&
    ["FontFile", "FontFile2", "FontFile3"].some((key) => entryOf(descriptor, key) instanceof PDFRawStream)
  )
    return false;
  const name = familyOf(font);
  return signs.test(name) || !families.test(name);
}

/** The family of a font: "ABCDEF+Comic Sans,Bold" is "comicsans,bold". */
function familyOf(font: PDFDict): string {
  return textOf(entryOf(font, "BaseFont"))
    .replace(/^[A-Z]{6}\+/, "")
    .replaceAll(/[\s_-]/g, "")
    .toLowerCase();
}

/** The fonts of some resources at whose letters a viewer has to guess, by the names under which they are used. */
export function guessedFonts(resources: PDFDict | undefined): Map<string, string> {
  const fonts = resources && entryOf(resources, "Font");
  if (!(fonts instanceof PDFDict)) return new Map();
  return new Map(
    fonts.keys().flatMap((key) => {
      const font = fonts.lookup(key);
      return font instanceof PDFDict && isGuess(font) ? [[textOf(key), familyOf(font)] as const] : [];
    }),
  );
}

/** The fonts of that kind that a drawing writes in. */
export function guessedIn(drawing: PDFRawStream, depth = 0): string[] {
  const resources = entryOf(drawing.dict, "Resources");
  if (!(resources instanceof PDFDict)) return [];
  return guessedBy(resources, () => contentOf(drawing, most.bytes), depth);
}

/** The fonts of that kind that a page writes in, without its fields. */
export function guessedOn(page: WalkedPage): string[] {
  if (page.resources === undefined) return [];
  return guessedBy(page.resources, () => contentOfPage(page, most.bytes), 0);
}

function guessedBy(resources: PDFDict, content: () => string, depth: number): string[] {
  const guessed = guessedFonts(resources);
  const inner = entryOf(resources, "XObject");
  const drawings =
    inner instanceof PDFDict && depth < most.depth
      ? inner.keys().flatMap((key) => {
          const one = inner.lookup(key);
          return one instanceof PDFRawStream ? guessedIn(one, depth + 1) : [];
        })
      : [];
  // Most drawings need not be looked into.
  return guessed.size === 0 ? drawings : [...drawings, ...written(content, guessed)];
}

function written(content: () => string, guessed: ReadonlyMap<string, string>): string[] {
  try {
    return [...operatorsIn(content())].flatMap(({ name, operands }) =>
      name === "Tf" ? (guessed.get(String(operands[0]).slice(1)) ?? []) : [],
    );
  } catch {
    return [...guessed.values()];
  }
}
