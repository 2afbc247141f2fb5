import { PDFCheckBox, PDFDocument, PDFDropdown, type PDFPage, PDFRadioGroup, PDFTextField } from "pdf-lib";
import type { Edition, EditionField } from "../../src/reading/edition.ts";

/** What to fill in by name of field: text, the option to choose, or `true` for a tick. */
export type Answers = Readonly<Record<string, string | true>>;

/** Options by place of a drop-down (text) or of a row of radio buttons. */
const dropDowns: Readonly<Record<string, readonly string[]>> = {
  finish: ["CHK", "SOT", "OAT", "White", "Black"],
  lettering: ["INK", "MLK", "RST", "White", "Black"],
  "legend-place": ["top", "middle"],
};
const radios: Readonly<Record<string, readonly string[]>> = {
  standing: ["alone", "in-plate", "Single", "Ganged"],
  layout: ["D1", "D2", "D4", "D6"],
};

/** A one-page form with the fields of an edition, every label printed beside its field. */
export async function blankForm({ fields }: Edition): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([595, 842]);
  fields.forEach((field, i) => {
    const y = 815 - i * 16;
    page.drawText(field.label, { x: 20, y: y + 3, size: 9 });
    addField(pdf, page, field, y);
  });
  return pdf.save();
}

function addField(
  pdf: PDFDocument,
  page: PDFPage,
  { name, ticked, ...field }: EditionField,
  y: number,
): void {
  const form = pdf.getForm();
  const place: string = field.place ?? "nothing";
  const box = { x: 280, y, width: 200, height: 14 };
  if (ticked !== undefined || place.startsWith("plain.") || place === "ship.same")
    form.createCheckBox(name).addToPage(page, { ...box, width: 14 });
  else if (radios[place]) {
    const group = form.createRadioGroup(name);
    radios[place].forEach((option, i) => {
      group.addOptionToPage(option, page, { ...box, x: 280 + i * 30, width: 14 });
    });
  } else if (dropDowns[place]) {
    const list = form.createDropdown(name);
    list.addOptions([...dropDowns[place]]);
    list.addToPage(page, box);
  } else {
    const text = form.createTextField(name);
    if (place === "notes") text.enableMultiline();
    text.addToPage(page, box);
  }
}

/** The form filled in by pdf-lib. Throws for a field that it does not have. */
export async function fillForm(bytes: Uint8Array, answers: Answers): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  for (const [name, answer] of Object.entries(answers)) {
    const field = pdf.getForm().getField(name);
    if (field instanceof PDFCheckBox && answer === true) field.check();
    else if (field instanceof PDFTextField) field.setText(String(answer));
    else if (field instanceof PDFRadioGroup || field instanceof PDFDropdown) field.select(String(answer));
    else throw new Error(`cannot fill ${name} with ${answer}`);
  }
  return pdf.save();
}

export async function filledForm(edition: Edition, answers: Answers): Promise<Uint8Array> {
  return fillForm(await blankForm(edition), answers);
}

/** The form as a viewer's "print to PDF" leaves it: what was filled in is drawn, no field remains. */
export async function flattened(bytes: Uint8Array): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes);
  pdf.getForm().flatten();
  return pdf.save();
}

/** A PDF with some text and no form. */
export async function plainPdf(text: string): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage().drawText(text, { x: 20, y: 700, size: 10 });
  return pdf.save();
}
