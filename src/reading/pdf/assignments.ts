import { PDFContext, type PDFDocument } from "pdf-lib";

/** How many objects a document was given while it was opened. One that was replaced counts twice. */
const counts = new WeakMap<PDFContext, number>();

// It is called with its `this` below.
// oxlint-disable-next-line typescript/unbound-method
const { assign } = PDFContext.prototype;

/** From now on the library counts the objects that it finds. */
export function countAssignments(): void {
  PDFContext.prototype.assign = function (this: PDFContext, ...given) {
    counts.set(this, (counts.get(this) ?? 0) + 1);
    return assign.apply(this, given);
  };
}

export function assignmentsIn({ context }: PDFDocument): number {
  return counts.get(context) ?? 0;
}
