import { PDFContext, type PDFDocument } from "pdf-lib";

/** How many objects a document was given while it was opened. One that was replaced counts twice. */
const counts = new WeakMap<PDFContext, number>();

/** From now on the library counts the objects that it finds. */
export function countAssignments(): void {
  const { prototype } = PDFContext;
  const assign = Object.getOwnPropertyDescriptor(prototype, "assign")?.value as Assign;
  prototype.assign = function (this: PDFContext, ...given) {
    counts.set(this, (counts.get(this) ?? 0) + 1);
    assign.apply(this, given);
  };
}

type Assign = (this: PDFContext, ...given: Parameters<PDFContext["assign"]>) => void;

export function assignmentsIn({ context }: PDFDocument): number {
  return counts.get(context) ?? 0;
}
