import { PDFDocument, StandardFonts } from "pdf-lib";
import { zipOf } from "./zip.ts";

/** A PDF that is no form at all, as it comes beside order sheets. */
export async function purchaseOrder(): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const font = await document.embedFont(StandardFonts.Helvetica);
  const page = document.addPage([612, 792]);
  const lines = [
    "PURCHASE ORDER",
    "Please supply engraved wall stations as on the sheets attached.",
    "Terms: 30 days.",
  ];
  for (const [i, line] of lines.entries()) page.drawText(line, { x: 72, y: 700 - 24 * i, size: 12, font });
  return document.save();
}

/** A form that has nothing to do with order sheets. */
export async function strangeForm(): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const page = document.addPage([612, 792]);
  const form = document.getForm();
  for (const [i, name] of ["visitor", "host", "badge", "arrival", "vehicle"].entries()) {
    page.drawText(name, { x: 72, y: 700 - 40 * i, size: 12 });
    form.createTextField(name).addToPage(page, { x: 160, y: 692 - 40 * i, width: 200, height: 22 });
  }
  return document.save();
}

/** What an office program saves, as far as it is looked at. */
export function officeDocument(): Promise<Uint8Array> {
  return Promise.resolve(zipOf([{ file: "[Content_Types].xml", bytes: Buffer.from("<Types/>") }]));
}

/** The smallest PNG there is, one grey point: a sheet photographed instead of sent, or a logo. */
export function photograph(): Promise<Uint8Array> {
  const png = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==";
  return Promise.resolve(new Uint8Array(Buffer.from(png, "base64")));
}
