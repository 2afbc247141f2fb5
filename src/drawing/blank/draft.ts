import type { Catalogue } from "../../catalogue/catalogue.ts";
import { requiredPlaces } from "../../checks/required.ts";
import type { Edition, EditionField } from "../../reading/edition.ts";
import type { Place } from "../../trade/place.ts";
import { addPage, type Canvas, startDocument } from "./canvas.ts";
import { type Form, startForm } from "./field-tree.ts";

/** A sheet being drawn: where it is drawn, from what, and which fields are still to come. */
export interface Draft {
  readonly canvas: Canvas;
  readonly form: Form;
  readonly catalogue: Catalogue;
  readonly edition: Edition;
  readonly required: readonly Place[];
  readonly waiting: EditionField[];
}

/** Begins a sheet on an empty page, `width` by `height` points. */
export async function startDraft(
  edition: Edition,
  catalogue: Catalogue,
  [width, height]: readonly [number, number],
): Promise<Draft> {
  const started = await startDocument(edition.title);
  started.document.setSubject(edition.name);
  return {
    canvas: addPage(started, width, height),
    form: startForm(started),
    catalogue,
    edition,
    required: requiredPlaces(edition.form),
    waiting: [...edition.fields],
  };
}

/** The first field for a place that has not been drawn yet; undefined when the edition has none. */
export function waitingFor(draft: Draft, place: Place): EditionField | undefined {
  return draft.waiting.find((field) => field.place === place);
}

/** Like `waitingFor`, and the field is drawn from now on. */
export function take(draft: Draft, place: Place): EditionField | undefined {
  const at = draft.waiting.findIndex((field) => field.place === place);
  return at < 0 ? undefined : draft.waiting.splice(at, 1)[0];
}
