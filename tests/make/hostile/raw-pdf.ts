/** An object as it stands in the file: its words, or a dictionary's entries and the bytes of its stream. */
export type RawObject = string | { readonly dict: string; readonly bytes: Uint8Array | string };

/**
 * Objects by number → a PDF with a plain cross-reference table, in which nothing is checked. Object 1 is
 * the catalog. `trailer` adds entries to the trailer.
 */
export function rawPdf(objects: Readonly<Record<number, RawObject>>, trailer = ""): Buffer {
  const pieces: Buffer[] = [Buffer.from("%PDF-1.7\n")];
  let at = 9;
  const add = (piece: Buffer): void => {
    pieces.push(piece);
    at += piece.length;
  };
  const places: string[] = [];
  let last = 0;
  for (const [number, object] of Object.entries(objects)) {
    const n = Number(number);
    // Numbers left out are free entries.
    for (let free = last + 1; free < n; free++) places.push("0000000000 65535 f \n");
    places.push(`${String(at).padStart(10, "0")} 00000 n \n`);
    last = n;
    add(objectBytes(n, object));
  }
  const table = `xref\n0 ${last + 1}\n0000000000 65535 f \n${places.join("")}`;
  add(Buffer.from(`${table}trailer\n<</Size ${last + 1}/Root 1 0 R${trailer}>>\nstartxref\n${at}\n%%EOF\n`));
  return Buffer.concat(pieces);
}

export function objectBytes(number: number, object: RawObject): Buffer {
  if (typeof object === "string") return Buffer.from(`${number} 0 obj\n${object}\nendobj\n`, "latin1");
  const bytes = Buffer.from(object.bytes);
  return Buffer.concat([
    Buffer.from(`${number} 0 obj\n<<${object.dict}/Length ${bytes.length}>>\nstream\n`),
    bytes,
    Buffer.from("\nendstream\nendobj\n"),
  ]);
}

/** A text field that is its own widget. */
export function textField(name: string, more = "/V(x)"): string {
  return `<</Type/Annot/Subtype/Widget/FT/Tx/T(${name})/Rect[20 20 90 40]/F 4/P 3 0 R${more}>>`;
}

/**
 * A one-page form of two text fields, "order" and "mark", filled in; `changes` replaces its objects or adds
 * some. 1 catalog, 2 pages, 3 page, 4 form, 5 and 6 fields, 7 what is drawn on the page.
 */
export function formWith(changes: Readonly<Record<number, RawObject>>, trailer = ""): Buffer {
  return rawPdf({ ...form, ...changes }, trailer);
}

export const form: Readonly<Record<number, RawObject>> = {
  1: "<</Type/Catalog/Pages 2 0 R/AcroForm 4 0 R>>",
  2: "<</Type/Pages/Kids[3 0 R]/Count 1>>",
  3: "<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[5 0 R 6 0 R]/Contents 7 0 R>>",
  4: "<</Fields[5 0 R 6 0 R]>>",
  5: textField("order", "/V(BW-2207)"),
  6: textField("mark", "/V(S-104)"),
  7: { dict: "", bytes: "0 0 m 100 100 l S" },
};

/** Something to be drawn that can draw other things. */
export function drawing(objects: string, words: string): RawObject {
  return { dict: `/Subtype/Form/BBox[0 0 9 9]/Resources<</XObject<<${objects}>>>>`, bytes: words };
}
