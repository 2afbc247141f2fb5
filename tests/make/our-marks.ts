import { type PDFContext, type PDFDict, type PDFDocument, PDFName, type PDFRef, PDFString } from "pdf-lib";
import { digestOf, listPrefix, markPrefix, outlineWords } from "../../src/reading/our-marks.ts";

/** An outline around a field, as marked copies of ours have it. */
export function ourOutline(
  context: PDFContext,
  left: number,
  bottom: number,
  right: number,
  top: number,
): PDFRef {
  const [width, height] = [right - left, top - bottom];
  const frame = `1 1 ${width - 2} ${height - 2} re`;
  const look = context.stream(`/Tint gs 1 0 0 rg ${frame} f /Full gs 1 0 0 RG 2 w 1 j [] 0 d ${frame} S`, {
    Type: "XObject",
    Subtype: "Form",
    BBox: [0, 0, width, height],
    Resources: {
      Font: { HeBo: { Type: "Font", Subtype: "Type1", BaseFont: "Helvetica-Bold" } },
      ExtGState: { Tint: { ca: 0.1, BM: "Multiply" }, Full: { ca: 1, BM: "Normal" } },
    },
  });
  return context.register(
    context.obj({
      Type: "Annot",
      Subtype: "Square",
      F: 4,
      Rect: [left, bottom, right, top],
      NM: PDFString.of(`${markPrefix} 1`),
      Contents: PDFString.of(outlineWords([1])),
      AP: { N: context.register(look) },
    }),
  );
}

/** Adds a page of our list behind the others, as marked copies of ours have it. */
export function addOurList(pdf: PDFDocument): PDFDict {
  const { context } = pdf;
  const { node } = pdf.addPage([100, 90]);
  const font = { Type: "Font", Subtype: "Type1", BaseFont: "Helvetica" };
  const resources = context.obj({ Font: { Plain: font, Bold: { ...font, BaseFont: "Helvetica-Bold" } } });
  node.set(PDFName.of("Contents"), context.register(context.stream("0 0 9 9 re f")));
  node.set(PDFName.of("Resources"), resources);
  const name = PDFString.of(`${listPrefix}${digestOf({ dict: node, resources })}`);
  const link = context.obj({ Type: "Annot", Subtype: "Link", NM: name, Border: [0, 0, 0] });
  node.set(PDFName.of("Annots"), context.obj([link]));
  return node;
}
