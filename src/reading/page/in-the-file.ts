import { PDFArray, PDFDict, type PDFDocument, PDFName } from "pdf-lib";
import type { Difference } from "../facts.ts";
import { entryOf, listOf, textOf } from "../pdf/pdf-value.ts";

/** Files in the file, layers that can be switched on and off, programs. ISO 32000-1:2008 table 28 */
export function inTheFile({ catalog }: PDFDocument): Difference[] {
  const names = entryOf(catalog, "Names");
  const tree = (key: string): unknown => (names instanceof PDFDict ? entryOf(names, key) : undefined);
  const attached = tree("EmbeddedFiles") !== undefined || entryOf(catalog, "AF") !== undefined;
  const isProgrammed = tree("JavaScript") !== undefined || runs(catalog, "AA") || runs(catalog, "OpenAction");
  return [
    ...(attached
      ? [{ what: "file", page: 0, text: firstName(tree("EmbeddedFiles")).slice(0, 200) } as const]
      : []),
    ...(entryOf(catalog, "OCProperties") === undefined ? [] : [{ what: "layer", page: 0 } as const]),
    ...(isProgrammed ? [{ what: "program", page: 0 } as const] : []),
  ];
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

/** Whether an action, or one of several, does more than show a place in the file. ISO 32000-1:2008 table 198 */
export function runs(dict: PDFDict, key: string): boolean {
  const action = entryOf(dict, key);
  if (!(action instanceof PDFDict)) return false;
  // By event, each with an action of its own.
  const actions = action.has(PDFName.of("S")) ? [action] : action.keys().map((event) => action.lookup(event));
  return actions.some((one) => {
    if (!(one instanceof PDFDict)) return false;
    const kind = entryOf(one, "S");
    // Another action may follow.
    return !["GoTo", "URI", "Named"].includes(textOf(kind)) || one.has(PDFName.of("Next"));
  });
}
