import { PDFDict, PDFDocument, PDFHexString, PDFName } from "pdf-lib";
import type { Makes } from "../../src/reading/choices.ts";
import type { Edition } from "../../src/reading/edition.ts";
import { type Guesses, guessForm } from "../../src/reading/own-form/guess.ts";
import { readOutline } from "../../src/reading/own-form/read-outline.ts";

/** A form with less to tell its fields by: without their tips, and with names that say nothing ("f1", "f2"). */
export async function bared(
  bytes: Uint8Array,
  keep: { readonly tips: boolean; readonly names: boolean },
): Promise<{ readonly bytes: Uint8Array; readonly names: ReadonlyMap<string, string> }> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  const names = new Map<string, string>();
  const fields = pdf.getForm().getFields();
  for (const field of fields) names.set(field.getName(), keep.names ? field.getName() : `f${names.size + 1}`);
  for (const field of fields) {
    const own = names.get(field.getName()) ?? "";
    const { dict } = field.acroField;
    if (!keep.names) {
      dict.set(PDFName.of("T"), PDFHexString.fromText(own));
      dict.delete(PDFName.of("Parent"));
    }
    if (!keep.tips)
      for (const one of [dict, ...widgetsOf(field.acroField.Kids()?.asArray() ?? [], pdf)])
        one.delete(PDFName.of("TU"));
  }
  if (!keep.names)
    pdf.getForm().acroForm.dict.set(PDFName.of("Fields"), pdf.context.obj(fields.map(({ ref }) => ref)));
  return { bytes: await pdf.save({ updateFieldAppearances: false }), names };
}

function widgetsOf(refs: readonly unknown[], pdf: PDFDocument): PDFDict[] {
  return refs.map((ref) => pdf.context.lookup(ref as never)).filter((one) => one instanceof PDFDict);
}

/** How many fields of a form are guessed to mean what the edition says, and which not. */
export interface Share {
  readonly right: number;
  readonly all: number;
  readonly form: Guesses["form"];
  /** Guessed to mean something else. */
  readonly wrong: readonly string[];
  /** Left to a person. */
  readonly open: readonly string[];
}

export async function shareOf(
  bytes: Uint8Array,
  {
    edition,
    names,
    makes,
  }: { readonly edition: Edition; readonly names?: ReadonlyMap<string, string>; readonly makes: Makes },
): Promise<Share> {
  const outline = await readOutline(bytes);
  if (outline.kind !== "form") throw new Error(`no form: ${outline.kind}`);
  const { form, guesses } = guessForm(outline, makes);
  const byName = new Map(guesses.map((guess) => [guess.field.name, guess]));
  const wrong: string[] = [];
  const open: string[] = [];
  for (const { name, place, ticked } of edition.fields) {
    const guess = byName.get(names?.get(name) ?? name);
    const [is, be] = [guess?.place, place].map((one) => one ?? "nothing");
    if (is === "nothing" && be !== "nothing") open.push(`${name}: ${be}`);
    else if (is !== be || guess?.ticked !== ticked)
      wrong.push(`${name}: ${is} ${guess?.ticked ?? ""}, not ${be} ${ticked ?? ""}`);
  }
  const all = edition.fields.length;
  return { right: all - wrong.length - open.length, all, form, wrong, open };
}
