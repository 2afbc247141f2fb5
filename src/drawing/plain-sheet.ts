import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Edition, EditionField } from "../reading/edition.ts";
import { addPage, letter, write } from "./blank/canvas.ts";
import { startDraft } from "./blank/draft.ts";
import { framed, lineHeight, ticked } from "./blank/entries.ts";

const margin = 48;
const step = lineHeight + 3;
const labelWidth = 190;

/**
 * Any edition as a plain form, as old and foreign forms are: a label and a field in each line, in the order of the
 * edition. As many US Letter pages as it takes.
 */
export async function plainSheet(edition: Edition, catalogue: Catalogue): Promise<Uint8Array> {
  let draft = await startDraft(edition, catalogue, [letter.short, letter.long]);
  write(draft.canvas, edition.title, margin, margin + 6, { size: 15, role: "H1" });
  let top = margin + 24;
  for (const field of edition.fields) {
    const height = field.place === "notes" ? 3 * lineHeight : lineHeight;
    if (top + height > letter.long - margin) {
      draft = { ...draft, canvas: addPage(draft.canvas, letter.short, letter.long) };
      top = margin;
    }
    write(draft.canvas, field.label, margin, top + 12, { size: 9 });
    const x = margin + labelWidth;
    if (isTick(field)) ticked(draft, field, x, top + lineHeight / 2, "");
    else framed(draft, field, { x, y: top, width: letter.short - margin - x, height });
    top += height + (step - lineHeight);
  }
  return draft.canvas.document.save({ updateFieldAppearances: false });
}

function isTick({ place, ticked }: EditionField): boolean {
  return ticked !== undefined || place === "ship.same" || place?.startsWith("plain.") === true;
}
