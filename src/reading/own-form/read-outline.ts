import { contentOf } from "../content.ts";
import { type FormField, isFillable, plainName } from "../form.ts";
import { moved } from "../pdf/boxes.ts";
import { compareForms } from "../pdf/compare.ts";
import { wantsPassword, withPdf } from "../pdf/pdf.ts";
import { type AnnotatedPage, readAnnotations } from "../pdf/pdfjs-annotations.ts";
import { kindOf, readFormByPdfjs } from "../pdf/pdfjs-form.ts";
import { textOn } from "../pdf/text-marks.ts";
import { readFormByWalking } from "../pdf/walked-form.ts";
import { openForWalking, traitsOf } from "../pdf/walked-pdf.ts";
import type { Frame, Outline, OutlinedField, Printed } from "./outline.ts";
import { joined } from "./printed.ts";

/**
 * Bytes of a form → its fields, where they stand, and the words around them. Fields that one reader alone sees are
 * among them. May take long or throw, whatever the bytes, so it is called where that does no harm.
 */
export async function readOutline(bytes: Uint8Array): Promise<Outline> {
  if (contentOf(bytes) !== "pdf") return { kind: "other" };
  const walked = await openForWalking(bytes)
    .then((pdf) => ({ fields: readFormByWalking(pdf), traits: traitsOf(pdf) }))
    .catch(() => undefined);
  try {
    return await withPdf(bytes, async (pdf): Promise<Outline> => {
      const pages = await readAnnotations(pdf);
      const drawn = await readFormByPdfjs(pdf, pages);
      const read = walked === undefined ? drawn : compareForms(drawn, walked.fields);
      const fields = read.filter((field) => isFillable(field) && field.name !== "");
      const { xfa = false, needsRendering = false, portfolio = false } = walked?.traits ?? {};
      if (xfa && (needsRendering || fields.length === 0)) return { kind: "dynamic" };
      if (fields.length === 0) return { kind: portfolio ? "portfolio" : "no-fields" };
      const printed: Printed[] = [];
      for (const [i, { view }] of pages.entries()) {
        const texts = await textOn(await pdf.getPage(i + 1));
        printed.push(
          ...joined(
            texts.map(({ text, box }) => ({ page: i + 1, text, box: moved(box, -view[0], -view[1]) })),
          ),
        );
      }
      const widgets = pages.flatMap(widgetsOf);
      return {
        kind: "form",
        pages: pdf.numPages,
        fields: inOrder(fields, widgets),
        printed,
        nameless: widgets.filter(({ field, kind }) => field === "" && isFillable({ kind })).length,
      };
    });
  } catch (error) {
    return { kind: wantsPassword(error) ? "locked" : "damaged" };
  }
}

interface Widget {
  readonly field: string;
  readonly kind: FormField["kind"];
  readonly frame: Frame;
  readonly more: Pick<OutlinedField, "choices" | "most" | "manyLines">;
}

function widgetsOf({ annotations, view: [left, bottom] }: AnnotatedPage, i: number): Widget[] {
  return annotations.flatMap((annotation): Widget[] => {
    const kind = kindOf(annotation);
    if (kind === undefined) return [];
    const { fieldName = "", rect, alternativeText, maxLen = 0, multiLine, options = [] } = annotation;
    const tip = alternativeText?.replace(/\s+/g, " ").trim() ?? "";
    const on = annotation.buttonValue ?? annotation.exportValue ?? "";
    return [
      {
        field: plainName(fieldName),
        kind,
        frame: {
          page: i + 1,
          box: moved(rect, -left, -bottom),
          ...(tip === "" ? {} : { tip }),
          ...(kind !== "tick" || on === "" ? {} : { on }),
        },
        more: {
          ...(kind === "choice"
            ? {
                choices: options.map(({ exportValue, displayValue }) => ({
                  value: exportValue,
                  shown: displayValue,
                })),
              }
            : {}),
          ...(maxLen > 0 ? { most: maxLen } : {}),
          ...(multiLine === true ? { manyLines: true } : {}),
        },
      },
    ];
  });
}

/** The fields in the order in which the pages have them; those on no page come last. */
function inOrder(fields: readonly FormField[], widgets: readonly Widget[]): OutlinedField[] {
  const byField = Map.groupBy(widgets, ({ field }) => field);
  const rank = new Map([...byField.keys()].map((name, i) => [name, i]));
  const at = ({ name }: FormField): number => rank.get(name) ?? byField.size;
  return fields
    .toSorted((a, b) => at(a) - at(b))
    .map(({ name, kind, values }) => {
      const own = byField.get(name) ?? [];
      return { name, kind, values, frames: own.map(({ frame }) => frame), ...own[0]?.more };
    });
}
