import { PDFArray, PDFDict, type PDFDocument, PDFName, PDFNumber } from "pdf-lib";
import { type FormField, gatherFields } from "../form.ts";
import { dictsIn, entryOf, listOf, textOf } from "./pdf-value.ts";
import { firstPages } from "./walked-pages.ts";
import { formOf } from "./walked-pdf.ts";
import { isPushButton, type Leaf, stateOf } from "./walked-tick.ts";

/** People fill in no form beyond these bounds. */
const most = { depth: 50, fields: 10_000, nameLength: 2_000, pages: 200 };

/** A field still to be looked at, with what it inherits. */
interface Branch extends Omit<Leaf, "type"> {
  readonly type?: string;
  readonly depth: number;
}

/** Reader two: a walk of our own over the form's dictionaries. Throws on forms beyond all bounds. */
export function readFormByWalking(pdf: PDFDocument): FormField[] {
  // getForm() is not used: it deletes an XFA form, follows circles, and throws on many files of strangers.
  const form = formOf(pdf.catalog);
  const seen = new Set<PDFDict>();
  const listed = form === undefined ? [] : leavesOf(form, seen);
  return gatherFields([...listed, ...unlisted(pdf, seen)].flatMap(fieldOf));
}

/** Fields that stand on a page and not in the form. Programs that move pages forget to list them. */
function unlisted(pdf: PDFDocument, seen: Set<PDFDict>): Leaf[] {
  const leaves: Leaf[] = [];
  for (const page of firstPages(pdf, most.pages))
    for (const widget of dictsIn(page.dict, "Annots")) {
      if (seen.has(widget) || entryOf(widget, "Subtype") !== PDFName.of("Widget")) continue;
      seen.add(widget);
      if (seen.size > most.fields) throw new Error("the form is too large");
      const { type, ...branch } = branchUpFrom(widget);
      if (type !== undefined) leaves.push({ ...branch, type });
    }
  return leaves;
}

/** A widget with all that it inherits. */
function branchUpFrom(widget: PDFDict): Branch {
  const line = [widget];
  for (let at = parentOf(widget); at !== undefined && line.length <= most.depth; at = parentOf(at))
    line.unshift(at);
  let branch: Branch = { name: "", flags: 0, depth: 0, dict: widget, sisters: [widget] };
  for (const [i, dict] of line.entries()) {
    const above = line[i - 1];
    branch = branchOf(dict, above === undefined ? [dict] : dictsIn(above, "Kids"), branch);
  }
  return branch;
}

function parentOf(dict: PDFDict): PDFDict | undefined {
  const parent = entryOf(dict, "Parent");
  return parent instanceof PDFDict ? parent : undefined;
}

function leavesOf(form: PDFDict, seen: Set<PDFDict>): Leaf[] {
  const leaves: Leaf[] = [];
  const stack: Branch[] = [];
  const push = (dicts: readonly PDFDict[], above: Omit<Branch, "dict" | "sisters">): void => {
    stack.push(...dicts.toReversed().map((dict) => branchOf(dict, dicts, above)));
  };
  push(dictsIn(form, "Fields"), { name: "", flags: 0, depth: 0 });
  for (let branch = stack.pop(); branch !== undefined; branch = stack.pop()) {
    if (seen.has(branch.dict)) continue;
    seen.add(branch.dict);
    if (branch.depth > most.depth || seen.size > most.fields || branch.name.length > most.nameLength)
      throw new Error("the form is nested too deep, too large or has endless names");
    const { type } = branch;
    const kids = dictsIn(branch.dict, "Kids");
    if (kids.length > 0) push(kids, branch);
    else if (type !== undefined) leaves.push({ ...branch, type });
  }
  return leaves;
}

function branchOf(dict: PDFDict, kids: readonly PDFDict[], above: Omit<Branch, "dict" | "sisters">): Branch {
  const type = entryOf(dict, "FT");
  const flags = entryOf(dict, "Ff");
  const value = entryOf(dict, "V");
  const options = entryOf(dict, "Opt");
  const ownName = textOf(entryOf(dict, "T"));
  return {
    ...above,
    ...(type instanceof PDFName ? { type: textOf(type) } : {}),
    ...(flags instanceof PDFNumber ? { flags: flags.asNumber() } : {}),
    ...(value === undefined ? {} : { value }),
    ...(options instanceof PDFArray ? { options } : {}),
    name: [above.name, ownName].filter((part) => part !== "").join("."),
    depth: above.depth + 1,
    dict,
    // A kid with a name is a field of its own. A kid without one is a widget of its parent.
    sisters: ownName === "" && above.depth > 0 ? kids : [dict],
  };
}

function fieldOf(leaf: Leaf): FormField[] {
  const { name, type, value } = leaf;
  switch (type) {
    case "Tx":
      return [{ name, kind: "text", values: [textOf(value)] }];
    case "Ch":
      return [{ name, kind: "choice", values: listOf(value).map(textOf) }];
    case "Btn":
      return [
        isPushButton(leaf)
          ? { name, kind: "button", values: [] }
          : { name, kind: "tick", values: stateOf(leaf) },
      ];
    case "Sig":
      return [{ name, kind: "signature", values: [] }];
    default:
      return [];
  }
}
