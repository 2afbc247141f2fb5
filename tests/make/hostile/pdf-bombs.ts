import { deflateSync } from "node:zlib";
import { withCrossReferenceStream } from "./cross-references.ts";
import { between, bomb, layered } from "./deflate.ts";
import { form, formWith, type RawObject, textField } from "./raw-pdf.ts";

const GB = 1 << 30;
const flateTwice = "/Filter[/FlateDecode/FlateDecode]";

/** Files of a few kilobytes that unpack to gigabytes wherever else a PDF can hold packed bytes. */
export const pdfBombs: Readonly<Record<string, () => Uint8Array>> = {
  "field value that is a stream, 1 GB": () =>
    formWith({
      5: textField("order", "/V 8 0 R"),
      8: { dict: flateTwice, bytes: layered(GB, "A", 2) },
    }),
  "look of a field, 1 GB": () =>
    formWith({
      5: textField("order", "/V(BW-2207)/AP<</N 8 0 R>>"),
      8: { dict: `/Subtype/Form/BBox[0 0 70 20]${flateTwice}`, bytes: layered(GB, " ", 2) },
    }),
  "XFA, 1 GB": () =>
    formWith({
      4: "<</Fields[5 0 R 6 0 R]/XFA 8 0 R>>",
      8: { dict: flateTwice, bytes: layered(GB, "<", 2) },
    }),
  "object stream with the form inside, 1 GB": () => inObjectStream(true, GB),
  "object stream without the form, 1 GB": () => inObjectStream(false, GB),
  "object stream that says it has a thousand million objects": () =>
    withCrossReferenceStream(
      { ...form, 8: { dict: "/Type/ObjStm/N 1000000000/First 9", bytes: "9 0 10 5 <<>> <<>>" } },
      { [9]: [8, 0] },
    ),
  "cross-reference stream of 1 GB": () =>
    withCrossReferenceStream(form, {}, { dict: `/W[1 4 2]${flateTwice}`, bytes: layered(GB, "\0", 2) }),
  "cross-reference stream with two thousand million entries of no width": () =>
    withCrossReferenceStream(form, {}, { dict: "/Size 2000000000/W[0 0 0]", bytes: "" }),
  "cross-reference table that says it has four thousand million lines": () =>
    Buffer.from(
      Buffer.from(formWith({}))
        .toString("latin1")
        .replace(/xref\n0 \d+/, "xref\n0 4000000000"),
      "latin1",
    ),
};

/** Three objects, the form and its fields if `formInside`, behind `size` blanks in an object stream. */
export function inObjectStream(formInside: boolean, size: number): Buffer {
  const words = [form[4], form[5], form[6]].map((object) => (typeof object === "string" ? object : ""));
  const inside = formInside ? [4, 5, 6] : [20, 21, 22];
  const offsets = words.map((_, i) => size + words.slice(0, i).join(" ").length + (i === 0 ? 0 : 1));
  const head = inside.map((number, i) => `${number} ${offsets[i]} `).join("");
  const bytes = deflateSync(between(head, bomb(size, " "), words.join(" ")), { level: 9 });
  const objects: Record<number, RawObject> = { ...form };
  if (formInside) for (const number of inside) delete objects[number];
  objects[8] = { dict: `/Type/ObjStm/N 3/First ${head.length}${flateTwice}`, bytes };
  return withCrossReferenceStream(
    objects,
    Object.fromEntries(inside.map((number, i) => [number, [8, i] as const])),
  );
}
