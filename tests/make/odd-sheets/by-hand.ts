import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  type PDFPage,
  PDFString,
  type PDFWidgetAnnotation,
  TextRenderingMode,
} from "pdf-lib";
import { greyPng } from "./png.ts";

/** Changes a sheet as an editor would, and saves it whole. */
async function edited(
  bytes: Uint8Array,
  edit: (pdf: PDFDocument, page: PDFPage) => void | Promise<void>,
): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  await edit(pdf, pdf.getPage(0));
  return pdf.save({ updateFieldAppearances: false });
}

type Rectangle = ReturnType<PDFWidgetAnnotation["getRectangle"]>;

/** Where the first widget of a field stands. */
function frameOf(pdf: PDFDocument, field: string): Rectangle {
  const widget = pdf.getForm().getField(field).acroField.getWidgets()[0];
  if (widget === undefined) throw new Error(`${field} stands nowhere`);
  return widget.getRectangle();
}

function annotate(page: PDFPage, subtype: string, { x, y, width, height }: Rectangle, entries = {}): void {
  const { context } = page.doc;
  const annotation = {
    Type: "Annot",
    Subtype: subtype,
    Rect: [x, y, x + width, y + height],
    F: 4,
    ...entries,
  };
  page.node.addAnnot(context.register(context.obj(annotation)));
}

/** A pen stroke over a field, as annotating viewers keep it. ISO 32000-1:2008 §12.5.6.13 */
export function inked(bytes: Uint8Array, field: string): Promise<Uint8Array> {
  return edited(bytes, (pdf, page) => {
    const { x, y, width, height } = frameOf(pdf, field);
    const stroke = [x, y, x + width / 2, y + height, x + width, y];
    annotate(page, "Ink", { x, y, width, height }, { InkList: [stroke] });
  });
}

/** A pen stroke over a field, as Chromium's viewer writes it into the page. */
export function inkedByChromium(bytes: Uint8Array, field: string): Promise<Uint8Array> {
  return edited(bytes, (pdf, page) => {
    const { x, y, width, height } = frameOf(pdf, field);
    addContent(
      page,
      `q /GOOG:INKIsInker BMC 0 0 1 rg ${x} ${y} m ${x + width} ${y + height} l ${x + width} ${y} l f EMC Q`,
    );
  });
}

function addContent(page: PDFPage, operators: string): void {
  const { context } = page.doc;
  page.node.addContentStream(context.register(context.stream(operators)));
}

/** A text box laid over a field, or anywhere on the page. ISO 32000-1:2008 §12.5.6.6 */
export function textBox(bytes: Uint8Array, text: string, field?: string): Promise<Uint8Array> {
  return edited(bytes, (pdf, page) => {
    const frame = field === undefined ? { x: 5, y: 5, width: 90, height: 12 } : frameOf(pdf, field);
    annotate(page, "FreeText", frame, {
      Contents: PDFHexString.fromText(text),
      DA: PDFString.of("/Helv 10 Tf 0 g"),
    });
  });
}

/** Text drawn onto the page within a field's frame. */
export function drawnText(bytes: Uint8Array, text: string, field: string): Promise<Uint8Array> {
  return edited(bytes, (pdf, page) => {
    const { x, y, height } = frameOf(pdf, field);
    page.drawText(text, { x: x + 3, y: y + height / 2 - 3, size: 9 });
  });
}

/** A picture laid over a field, or beside everything. */
export function pasted(bytes: Uint8Array, field?: string): Promise<Uint8Array> {
  return edited(bytes, async (pdf, page) => {
    const image = await pdf.embedPng(greyPng(12, 4));
    page.drawImage(image, field === undefined ? { x: 2, y: 2, width: 12, height: 4 } : frameOf(pdf, field));
  });
}

/** The page cut out of a larger one, so that its corner is not where coordinates begin. */
export function offset(bytes: Uint8Array): Promise<Uint8Array> {
  return edited(bytes, (_, page) => {
    const { width, height } = page.getSize();
    page.setMediaBox(-40, -30, width + 50, height + 50);
  });
}

/** A stamp over a field, without words, as a drawn signature is kept. ISO 32000-1:2008 §12.5.6.12 */
export function stamped(bytes: Uint8Array, field: string): Promise<Uint8Array> {
  return edited(bytes, (pdf, page) => annotate(page, "Stamp", frameOf(pdf, field), { Name: "Signature" }));
}

/** A signature that says what it covers. ISO 32000-1:2008 §12.8.1 */
export function signed(bytes: Uint8Array): Promise<Uint8Array> {
  return edited(bytes, (pdf, page) => {
    const { context } = pdf;
    const signature = context.obj({
      Type: "Sig",
      Filter: "Adobe.PPKLite",
      SubFilter: "adbe.pkcs7.detached",
      ByteRange: [0, 100, 200, 300],
      Contents: PDFHexString.of("00".repeat(64)),
    });
    const widget = context.register(
      context.obj({
        Type: "Annot",
        Subtype: "Widget",
        FT: "Sig",
        T: PDFString.of("Signature1"),
        Rect: [0, 0, 0, 0],
        F: 132,
        P: page.ref,
        V: context.register(signature),
      }),
    );
    page.node.addAnnot(widget);
    formOf(pdf).lookup(PDFName.of("Fields"), PDFArray).push(widget);
    formOf(pdf).set(PDFName.of("SigFlags"), context.obj(3));
  });
}

function formOf(pdf: PDFDocument): PDFDict {
  return pdf.catalog.lookup(PDFName.of("AcroForm"), PDFDict);
}

const xfa = '<xdp:xdp xmlns:xdp="http://ns.adobe.com/xdp/"><template/></xdp:xdp>';

/** The same form with an XFA form beside it, which viewers of other makers pass over. */
export function hybridXfa(bytes: Uint8Array): Promise<Uint8Array> {
  return edited(bytes, (pdf) => {
    formOf(pdf).set(PDFName.of("XFA"), pdf.context.register(pdf.context.stream(xfa)));
  });
}

/** An XFA form and nothing else: one page that asks for another viewer. */
export async function dynamicXfa(): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf.addPage().drawText("Please wait... If this message stays, your viewer cannot show this form.", {
    x: 20,
    y: 700,
    size: 10,
  });
  const form = pdf.context.obj({ Fields: [], XFA: pdf.context.register(pdf.context.stream(xfa)) });
  pdf.catalog.set(PDFName.of("AcroForm"), form);
  pdf.catalog.set(PDFName.of("NeedsRendering"), pdf.context.obj(true));
  return pdf.save();
}

/** A folder of files with a cover page. ISO 32000-1:2008 §12.3.5 */
export async function portfolioOf(sheets: readonly Uint8Array[]): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  pdf
    .addPage()
    .drawText("For the best experience, open this portfolio in a newer viewer.", { x: 20, y: 700 });
  for (const [i, sheet] of sheets.entries()) await pdf.attach(sheet, `sheet ${i + 1}.pdf`);
  pdf.catalog.set(PDFName.of("Collection"), pdf.context.obj({ Type: "Collection", View: "T" }));
  return pdf.save();
}

/** The page without its fields, which the form still lists with what they hold. */
export function withoutWidgets(bytes: Uint8Array): Promise<Uint8Array> {
  return edited(bytes, (pdf) => {
    for (const page of pdf.getPages()) page.node.delete(PDFName.of("Annots"));
  });
}

/** Another value in a field, with the drawing of the old one. */
export function staleLook(bytes: Uint8Array, field: string, value: string): Promise<Uint8Array> {
  return edited(bytes, (pdf) => {
    pdf.getForm().getField(field).acroField.dict.set(PDFName.of("V"), PDFHexString.fromText(value));
  });
}

/** A field that viewers do not show. ISO 32000-1:2008 table 165 */
export function hiddenField(bytes: Uint8Array, field: string): Promise<Uint8Array> {
  return edited(bytes, (pdf) => {
    for (const widget of pdf.getForm().getField(field).acroField.getWidgets()) widget.setFlags(2);
  });
}

/** A page that is a picture; `words` lie unseen under it, as a scanner writes what it recognises. */
export async function wrapped(picture: Uint8Array, words: readonly string[] = []): Promise<Uint8Array> {
  const pdf = await PDFDocument.create();
  const page = pdf.addPage([792, 612]);
  words.forEach((line, i) => {
    page.drawText(line, { x: 20, y: 590 - i * 10, size: 8, renderMode: TextRenderingMode.Invisible });
  });
  const isJpeg = picture[0] === 0xff;
  const image = await (isJpeg ? pdf.embedJpg(picture) : pdf.embedPng(picture));
  page.drawImage(image, { x: 0, y: 0, width: 792, height: 612 });
  return pdf.save();
}
