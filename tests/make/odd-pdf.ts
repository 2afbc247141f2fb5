import { type PDFContext, PDFDict, PDFDocument, PDFName, type PDFObject, type PDFRef } from "pdf-lib";

/** Entries of a dictionary as they stand in the file; a plain string is a name. */
export interface Entries {
  [key: string]: PDFObject | string | number | (PDFObject | string | number)[] | Entries;
}

/** What an odd form is built with. */
export interface OddForm {
  readonly context: PDFContext;
  /** A widget on the page. */
  readonly widget: (entries: Entries) => PDFRef;
  /** A field that has no look of its own; its kids learn who their parent is. */
  readonly field: (entries: Entries, kids?: readonly PDFRef[]) => PDFRef;
  /** The looks of a tick box or radio button that has the given states. */
  readonly looks: (...states: readonly string[]) => Entries;
}

/** A one-page PDF whose form has exactly the fields that `make` returns, written as they are. */
export async function oddForm(make: (form: OddForm) => readonly PDFRef[]): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([300, 300]);
  const { context } = pdf;
  const widgets: PDFRef[] = [];
  const fields = make({
    context,
    field: (entries, kids = []) => {
      const ref = context.register(
        context.obj({ ...entries, ...(kids.length > 0 ? { Kids: [...kids] } : {}) }),
      );
      for (const kid of kids) context.lookup(kid, PDFDict).set(PDFName.of("Parent"), ref);
      return ref;
    },
    widget: (entries) => {
      const rect = [10, 10 + 30 * widgets.length, 100, 30 + 30 * widgets.length];
      const ref = context.register(
        context.obj({ Type: "Annot", Subtype: "Widget", Rect: rect, F: 4, P: page.ref, ...entries }),
      );
      widgets.push(ref);
      return ref;
    },
    looks: (...states) => {
      const look = context.register(
        context.stream("", { Type: "XObject", Subtype: "Form", BBox: [0, 0, 9, 9] }),
      );
      return { AP: { N: Object.fromEntries(states.map((state) => [state, look])) } };
    },
  });
  page.node.set(PDFName.of("Annots"), context.obj(widgets));
  pdf.catalog.set(PDFName.of("AcroForm"), context.obj({ Fields: [...fields] }));
  return pdf.save();
}
