import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFNumber, PDFPageLeaf, PDFRef } from "pdf-lib";
import { entryOf } from "../../reading/pdf/pdf-value.ts";
import { upwards } from "./page.ts";

/** Puts an empty page after all others. Also returns what has changed. Throws if there is no tree of pages. */
export function appendPage({ catalog, context }: PDFDocument): {
  readonly page: { readonly node: PDFPageLeaf; readonly ref: PDFRef };
  readonly changed: PDFDict[];
} {
  const root = catalog.get(PDFName.of("Pages"));
  const above = context.lookup(root, PDFDict);
  if (!(root instanceof PDFRef)) throw new Error("the document has no pages");
  const node = PDFPageLeaf.withContextAndParent(context, root);
  const ref = context.register(node);
  setKids(above, [...kidsOf(above), ref]);
  return { page: { node, ref }, changed: recount(above, 1) };
}

/** Takes a page out, with the nodes above that hold no other. Returns what has changed. */
export function removePage(page: PDFDict): PDFDict[] {
  const parent = entryOf(page, "Parent");
  if (!(parent instanceof PDFDict)) return [];
  const kids = kidsOf(parent).filter((kid) => parent.context.lookup(kid) !== page);
  if (kids.length === 0) return removePage(parent);
  setKids(parent, kids);
  return recount(parent, -1);
}

function kidsOf(node: PDFDict): ReturnType<PDFArray["asArray"]> {
  const kids = entryOf(node, "Kids");
  return kids instanceof PDFArray ? kids.asArray() : [];
}

/** Sets the kids in an array of the node's own, so that only the node changes. */
function setKids(node: PDFDict, kids: readonly (PDFRef | ReturnType<typeof kidsOf>[number])[]): void {
  node.set(PDFName.of("Kids"), node.context.obj([...kids]));
}

/** Sets the number of pages under a node and those above it. ISO 32000-1:2008 table 29 */
function recount(node: PDFDict, by: number): PDFDict[] {
  const nodes = [...upwards(node)];
  for (const one of nodes) {
    const count = entryOf(one, "Count");
    if (count instanceof PDFNumber) one.set(PDFName.of("Count"), PDFNumber.of(count.asNumber() + by));
  }
  return nodes;
}
