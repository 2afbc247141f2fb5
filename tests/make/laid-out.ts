import { PDFDocument, PDFHexString, PDFName } from "pdf-lib";

/** Something on a page, measured in points from its upper left corner. */
export type Piece =
  | { readonly say: string; readonly x: number; readonly y: number; readonly size?: number }
  | {
      readonly field: string;
      readonly x: number;
      readonly y: number;
      readonly wide?: number;
      readonly high?: number;
      readonly tip?: string;
      /** A box to tick, or a list to choose from. */
      readonly box?: true;
      readonly list?: readonly string[];
      readonly buttons?: readonly (readonly [value: string, x: number])[];
    };

const [width, height] = [612, 792];

/** A one-page form with its pieces where they are said to be. */
export async function laidOut(pieces: readonly Piece[]): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([width, height]);
  const form = pdf.getForm();
  for (const piece of pieces) {
    if ("say" in piece) {
      page.drawText(piece.say, { x: piece.x, y: height - piece.y, size: piece.size ?? 9 });
      continue;
    }
    const { field, x, y, wide = 140, high = 15, tip, box, list, buttons } = piece;
    const at = {
      x,
      y: height - y - 3,
      width: box === undefined ? wide : 11,
      height: box === undefined ? high : 11,
    };
    if (buttons !== undefined) {
      const group = form.createRadioGroup(field);
      for (const [value, left] of buttons)
        group.addOptionToPage(value, page, { ...at, x: left, width: 11, height: 11 });
      continue;
    }
    const made =
      box === true
        ? form.createCheckBox(field)
        : list
          ? form.createDropdown(field)
          : form.createTextField(field);
    if (list !== undefined && "setOptions" in made) made.setOptions([...list]);
    made.addToPage(page, at);
    if (tip !== undefined) made.acroField.dict.set(PDFName.of("TU"), PDFHexString.fromText(tip));
  }
  return pdf.save();
}
