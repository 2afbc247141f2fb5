import type { Catalogue } from "../catalogue/catalogue.ts";
import type { Edition } from "../reading/edition.ts";
import { letter } from "./blank/canvas.ts";
import { devicePart } from "./blank/device-page.ts";
import { startDraft } from "./blank/draft.ts";
import { foot, header } from "./blank/furniture.ts";
import { platePart } from "./blank/plate-page.ts";

/**
 * The blank sheet of an edition as a PDF with fields to fill in, one US Letter page. Names and labels of its fields
 * come from the edition, choices and limits from the catalogue. A place that the edition lacks is left out. Throws if
 * the drawing has no room for a field of the edition.
 */
export async function blankSheet(edition: Edition, catalogue: Catalogue): Promise<Uint8Array> {
  // A sheet stands or lies as what it orders does.
  const size =
    edition.form === "device"
      ? ([letter.short, letter.long] as const)
      : ([letter.long, letter.short] as const);
  const draft = await startDraft(edition, catalogue, size);
  const { document, page } = draft.canvas;
  document.setAuthor(catalogue.maker.name);
  document.setKeywords([edition.name, `${edition.form} sheet`, "engraved station", "order"]);
  const top = header(draft.canvas, edition, catalogue);
  const bottom = page.getHeight() - 32;
  if (edition.form === "device") devicePart(draft, top, bottom);
  else platePart(draft, top, bottom);
  foot(draft);
  const [left] = draft.waiting;
  if (left !== undefined)
    throw new Error(`the drawing of ${edition.name} has no room for its field ${left.name}`);
  return document.save({ updateFieldAppearances: false });
}
