import {
  PDFArray,
  type PDFContext,
  PDFDict,
  type PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFRef,
} from "pdf-lib";
import { dictsIn, entryOf, textOf } from "../../reading/pdf/pdf-value.ts";

/** What a part of a page is to somebody who has it read aloud. ISO 32000-1:2008 §14.8.4 */
export type Role =
  | "Document"
  | "Sect"
  | "H1"
  | "H2"
  | "P"
  | "Table"
  | "TR"
  | "TH"
  | "TD"
  | "Figure"
  | "Form"
  | "Link"
  | "Annot";

/** What is said of a part besides what it is. */
export interface Said {
  /** What a figure shows. */
  readonly alt?: string;
  /** What signs mean, if they are not read as they stand. */
  readonly actual?: string;
  /** Whether a heading of a table is that of its row or of its column. */
  readonly scope?: "Row" | "Column";
  /** A name by which the part is found again. */
  readonly name?: string;
}

/** One part in the tree of all parts. */
export interface Tag {
  readonly ref: PDFRef;
  readonly dict: PDFDict;
}

/** The tree of all parts of a document, in the order in which they are read. ISO 32000-1:2008 §14.7 */
export interface Structure {
  readonly context: PDFContext;
  readonly top: Tag;
  /** Its root, which has the next number for a page or an annotation. */
  readonly root: PDFDict;
  /** From those numbers to what they lead to. */
  readonly numbers: PDFArray;
  /** What changes in the document when a part is added. */
  readonly changes: readonly PDFDict[];
}

const nextKey = PDFName.of("ParentTreeNextKey");
const kidsKey = PDFName.of("K");

/** Begins the tree of a new document, which from then on says that it has one. */
export function startStructure({ context, catalog }: PDFDocument): Structure {
  const numbers = context.obj([]);
  const tree = context.obj({ Nums: numbers });
  const root = context.obj({
    Type: "StructTreeRoot",
    ParentTree: context.register(tree),
    ParentTreeNextKey: 0,
  });
  const ref = context.register(root);
  catalog.set(PDFName.of("StructTreeRoot"), ref);
  catalog.set(PDFName.of("MarkInfo"), context.obj({ Marked: true }));
  const top = tagBelow(context, { ref, dict: root }, "Document");
  return { context, top, numbers, root, changes: [root, tree, top.dict] };
}

/**
 * The tree of a document that was opened, if it is as we make trees; undefined for any other, which is left as it is.
 * `sect` is the name of a part that an earlier opening added, and is taken out.
 */
export function openStructure({ context, catalog }: PDFDocument, sect: string): Structure | undefined {
  const root = entryOf(catalog, "StructTreeRoot");
  const tree = root instanceof PDFDict ? entryOf(root, "ParentTree") : undefined;
  const numbers = tree instanceof PDFDict ? entryOf(tree, "Nums") : undefined;
  if (!(root instanceof PDFDict && tree instanceof PDFDict && numbers instanceof PDFArray)) return undefined;
  const [dict, ...others] = dictsIn(root, "K");
  const ref = dict && context.getObjectRef(dict);
  const next = entryOf(root, "ParentTreeNextKey");
  if (dict === undefined || ref === undefined || others.length > 0 || !(next instanceof PDFNumber))
    return undefined;
  if (entryOf(dict, "K") instanceof PDFArray)
    dict.set(
      kidsKey,
      context.obj(
        kidsOf(dict)
          .asArray()
          .filter((kid) => !isNamed(context.lookup(kid), sect)),
      ),
    );
  return { context, top: { ref, dict }, numbers, root, changes: [root, tree, dict] };
}

function isNamed(tag: unknown, name: string): boolean {
  return tag instanceof PDFDict && textOf(entryOf(tag, "T")) === name;
}

/** A new part, behind all others of the part that it belongs to. */
export function addTag({ context }: Structure, above: Tag, role: Role, said: Said = {}): Tag {
  return tagBelow(context, above, role, said);
}

function tagBelow(context: PDFContext, above: Tag, role: Role, said: Said = {}): Tag {
  const { alt, actual, scope, name } = said;
  const dict = context.obj({
    Type: "StructElem",
    S: role,
    P: above.ref,
    ...(name === undefined ? {} : { T: PDFHexString.fromText(name) }),
    ...(alt === undefined ? {} : { Alt: PDFHexString.fromText(alt) }),
    ...(actual === undefined ? {} : { ActualText: PDFHexString.fromText(actual) }),
    // ISO 32000-1:2008 table 349
    ...(scope === undefined ? {} : { A: { O: "Table", Scope: scope } }),
  });
  const ref = context.register(dict);
  kidsOf(above.dict).push(ref);
  return { ref, dict };
}

function kidsOf(dict: PDFDict): PDFArray {
  const kids = dict.lookupMaybe(kidsKey, PDFArray) ?? dict.context.obj([]);
  dict.set(kidsKey, kids);
  return kids;
}

/** What of a page's content belongs to which tag. */
export interface Pieces {
  readonly piece: (tag: Tag) => number;
}

/** Makes ready to mark the content of a page. Each piece gets the number by which the content names its part. */
export function startPage(
  structure: Structure,
  page: { readonly node: PDFDict; readonly ref: PDFRef },
): Pieces {
  const parts = structure.context.obj([]);
  page.node.set(PDFName.of("StructParents"), structure.context.obj(numberFor(structure, parts)));
  return {
    piece: (tag) => {
      const number = parts.size();
      parts.push(tag.ref);
      kidsOf(tag.dict).push(structure.context.obj({ Type: "MCR", Pg: page.ref, MCID: number }));
      return number;
    },
  };
}

/** Puts an annotation of a page into its part. ISO 32000-1:2008 §14.7.4.3 */
export function addAnnotation(structure: Structure, tag: Tag, page: PDFRef, annotation: PDFRef): void {
  const { context } = structure;
  kidsOf(tag.dict).push(context.obj({ Type: "OBJR", Pg: page, Obj: annotation }));
  const dict = context.lookup(annotation, PDFDict);
  dict.set(PDFName.of("StructParent"), context.obj(numberFor(structure, tag.ref)));
}

function numberFor({ context, root, numbers }: Structure, leadsTo: PDFArray | PDFRef): number {
  const number = Number(root.get(nextKey)?.toString());
  root.set(nextKey, context.obj(number + 1));
  numbers.push(context.obj(number));
  numbers.push(leadsTo);
  return number;
}
