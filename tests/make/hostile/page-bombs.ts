import { bomb, layered } from "./deflate.ts";
import { drawing, formWith, type RawObject } from "./raw-pdf.ts";

const GB = 1 << 30;
const flate = "/Filter/FlateDecode";
const flateTwice = "/Filter[/FlateDecode/FlateDecode]";
const flateThrice = "/Filter[/FlateDecode/FlateDecode/FlateDecode]";

/** Forms whose fields are as they should be, on a page that nobody can look at to its end. */
export const pageBombs: Readonly<Record<string, () => Uint8Array>> = {
  "page stream, flate over flate, 1 GB": () =>
    formWith({ 7: { dict: flateTwice, bytes: layered(GB, " ", 2) } }),
  "page stream, flate thrice, 10 GB": () =>
    formWith({ 7: { dict: flateThrice, bytes: layered(10 * GB, " ", 3) } }),
  "page stream of nothing but drawing, 1 GB": () =>
    formWith({ 7: { dict: flateTwice, bytes: layered(GB, "q", 2) } }),
  "predictor with two thousand million columns": () =>
    formWith({
      7: {
        dict: `${flate}/DecodeParms<</Predictor 15/Columns 2000000000/Colors 4>>`,
        bytes: bomb(1 << 26, " "),
      },
    }),
  "image of 60,000 by 60,000, packed": () =>
    withImage({
      dict: `/Width 60000/Height 60000/BitsPerComponent 8/ColorSpace/DeviceRGB${flateTwice}`,
      bytes: layered(10 * GB, "\0", 2),
    }),
  "image of 30,000 by 30,000 in one bit, packed": () =>
    withImage({
      dict: `/Width 30000/Height 30000/BitsPerComponent 1/ColorSpace/DeviceGray${flate}`,
      bytes: bomb(1 << 27, "\0"),
    }),
  "JPEG that says it is 65,500 by 65,500": () =>
    withImage({
      dict: "/Width 65500/Height 65500/BitsPerComponent 8/ColorSpace/DeviceRGB/Filter/DCTDecode",
      bytes: hugeJpeg(),
    }),
  "fax image of 60,000 by 60,000": () =>
    withImage({
      dict: "/Width 60000/Height 60000/BitsPerComponent 1/ColorSpace/DeviceGray/Filter/CCITTFaxDecode/DecodeParms<</K -1/Columns 60000/Rows 60000>>",
      bytes: Buffer.alloc(60_000, 0xff),
    }),
  "a thousand images of 10,000 by 10,000": () =>
    withImage(
      {
        dict: `/Width 10000/Height 10000/BitsPerComponent 8/ColorSpace/DeviceGray${flateTwice}`,
        bytes: layered(7 << 24, "\0", 2),
      },
      1000,
    ),
  "font whose characters stand for four thousand million others": () =>
    formWith({
      3: page("/Resources<</Font<</F 8 0 R>>>>"),
      7: { dict: "", bytes: "BT /F 12 Tf (AAAA) Tj ET" },
      8: "<</Type/Font/Subtype/Type0/BaseFont/X/Encoding/Identity-H/DescendantFonts[9 0 R]/ToUnicode 10 0 R>>",
      9: "<</Type/Font/Subtype/CIDFontType2/BaseFont/X/CIDSystemInfo<</Registry(A)/Ordering(B)/Supplement 0>>/W[0 2000000000 500]>>",
      10: {
        dict: "",
        bytes:
          "begincmap 1 begincodespacerange <00000000> <FFFFFFFF> endcodespacerange 1 beginbfrange <00000000> <FFFFFFFE> <0041> endbfrange endcmap",
      },
    }),

  "page that draws two that draw two, thirty deep": () =>
    formWith({
      3: "<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[5 0 R 6 0 R]/Contents 7 0 R/Resources<</XObject<</X 8 0 R>>>>>>",
      7: { dict: "", bytes: "/X Do" },
      ...Object.fromEntries(
        Array.from({ length: 30 }, (_, i) => [
          8 + i,
          i === 29 ? drawing("", "BT (x) Tj ET") : drawing(`/X ${9 + i} 0 R`, "/X Do /X Do"),
        ]),
      ),
    }),
};

function page(more: string): string {
  return `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[5 0 R 6 0 R]/Contents 7 0 R${more}>>`;
}

function withImage({ dict, bytes }: Exclude<RawObject, string>, times = 1): Buffer {
  const names = Array.from({ length: times }, (_, i) => `/I${i}`);
  return formWith({
    3: page(`/Resources<</XObject<<${names.map((name, i) => `${name} ${8 + i} 0 R`).join("")}>>>>`),
    7: { dict: "", bytes: names.map((name) => `q 300 0 0 300 0 0 cm ${name} Do Q`).join("\n") },
    ...Object.fromEntries(names.map((_, i) => [8 + i, { dict: `/Subtype/Image${dict}`, bytes }])),
  });
}

/** Start, frame header with the largest size there is, scan header, no scan. ISO/IEC 10918-1 §B.2 */
function hugeJpeg(): Buffer {
  const size = "ffdc";
  return Buffer.from(
    `ffd8ffc00011 08 ${size} ${size} 03 011100 021100 031100 ffda000c 03 0100 0200 0300 003f00 ffd9`.replaceAll(
      " ",
      "",
    ),
    "hex",
  );
}
