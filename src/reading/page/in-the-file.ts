import { PDFArray, PDFDict, type PDFDocument, PDFName } from "pdf-lib";
import type { Difference } from "../facts.ts";
import { entryOf, listOf, textOf } from "../pdf/pdf-value.ts";
import type { WalkedPage } from "../pdf/walked-pages.ts";
import { formOf } from "../pdf/walked-pdf.ts";
import { objectKey } from "./content-key.ts";
import { formsBeside } from "./xfa.ts";

/** Something in a file besides the content of its pages and the values of its fields. */
export interface Held {
  readonly difference: Difference;
  /** A key that is the same for the same thing in another file. Undefined if the thing is too large to tell. */
  readonly key: string | undefined;
}

/**
 * Files in the file, layers that can be switched on and off, programs, a second form. `values` are what the fields
 * hold. ISO 32000-1:2008 table 28
 */
export function inTheFile(
  { catalog }: PDFDocument,
  pages: readonly WalkedPage[],
  values: ReadonlySet<string>,
): Held[] {
  const names = entryOf(catalog, "Names");
  const tree = (key: string) => (names instanceof PDFDict ? entryOf(names, key) : undefined);
  const held = (
    what: Difference["what"],
    object: Parameters<typeof objectKey>[0],
    more: Pick<Difference, "text"> = {},
  ): Held[] =>
    object === undefined
      ? []
      : [{ difference: { what, page: 0, ...more }, key: keyed(what, objectKey(object)) }];
  const files = tree("EmbeddedFiles");
  return [
    ...held("file", files, { text: firstName(files).slice(0, 200) }),
    // ISO 32000-2:2020 §14.13: files of the document or of a page.
    ...[catalog, ...pages.map(({ dict }) => dict)].flatMap((dict) => held("file", entryOf(dict, "AF"))),
    ...held("layer", entryOf(catalog, "OCProperties")),
    ...held("program", tree("JavaScript")),
    ...["AA", "OpenAction"].flatMap((key) =>
      runs(catalog, key) ? held("program", entryOf(catalog, key)) : [],
    ),
    ...pages.flatMap(({ dict }) => (runs(dict, "AA") ? held("program", entryOf(dict, "AA")) : [])),
    ...formsBeside(formOf(catalog), values).map(
      (key): Held => ({ difference: { what: "twin", page: 0 }, key: keyed("twin", key) }),
    ),
  ];
}

/** A key that differs from those of other kinds of things. */
export function keyed(what: string, key: string | undefined): string | undefined {
  return key === undefined ? undefined : `${what} ${key}`;
}

/** The first name of a tree of names. ISO 32000-1:2008 §7.9.6 */
function firstName(tree: unknown): string {
  let node = tree;
  for (let step = 0; step < 20 && node instanceof PDFDict; step++) {
    const pairs = entryOf(node, "Names");
    if (pairs instanceof PDFArray && pairs.size() > 0) return textOf(pairs.lookup(0));
    [node] = listOf(entryOf(node, "Kids"));
  }
  return "";
}

/**
 * Whether an action, or one of several, does more than show a place or a page of the web. ISO 32000-1:2008 table 198
 */
export function runs(dict: PDFDict, key: string): boolean {
  const action = entryOf(dict, key);
  if (!(action instanceof PDFDict)) return false;
  // One action for each event.
  const actions = action.has(PDFName.of("S")) ? [action] : action.keys().map((event) => action.lookup(event));
  return actions.some((one) => {
    if (!(one instanceof PDFDict)) return false;
    const kind = entryOf(one, "S");
    // Another action may follow.
    return !["GoTo", "URI", "Named"].includes(textOf(kind)) || one.has(PDFName.of("Next"));
  });
}
