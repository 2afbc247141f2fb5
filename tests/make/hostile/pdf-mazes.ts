import { drawing, form, formWith, rawPdf, textField } from "./raw-pdf.ts";

const many = 300_000;
const deep = 30_000;
const million = 1_000_000;

/** Files whose objects lead in circles, too deep, or to the same place too often. */
export const pdfMazes: Readonly<Record<string, () => Uint8Array>> = {
  "pages that are their own kids": () =>
    formWith({ 2: "<</Type/Pages/Kids[2 0 R 3 0 R 2 0 R]/Count 3/Parent 2 0 R>>" }),
  "two thousand million pages, it says": () =>
    formWith({ 2: "<</Type/Pages/Kids[3 0 R]/Count 2147483647>>" }),
  "page that is its own parent": () =>
    formWith({ 3: "<</Type/Page/Parent 3 0 R/Annots[5 0 R 6 0 R]/Contents 7 0 R>>" }),
  "fields that are their own kids": () =>
    formWith({
      4: "<</Fields[5 0 R 5 0 R 6 0 R]>>",
      5: "<</T(order)/Kids[6 0 R 5 0 R 8 0 R]/Parent 6 0 R/FT/Tx>>",
      6: "<</T(mark)/Kids[5 0 R 8 0 R 6 0 R]/Parent 5 0 R>>",
      8: "<</T(more)/Kids[4 0 R 5 0 R 6 0 R 8 0 R]/Parent 5 0 R>>",
    }),
  "field and widget that are each other's parent": () =>
    formWith({
      5: textField("order", "/Parent 6 0 R"),
      6: textField("mark", "/Parent 5 0 R"),
    }),
  "value that refers to itself": () => formWith({ 5: textField("order", "/V 8 0 R"), 8: "8 0 R" }),
  "length of a stream that is the stream": () =>
    Buffer.from(
      formWith({ 7: { dict: "", bytes: "0 0 m" } })
        .toString("latin1")
        .replace("/Length 5", "/Length 7 0 R"),
      "latin1",
    ),
  "look that draws itself": () =>
    formWith({
      5: textField("order", "/V(x)/AP<</N 8 0 R>>"),
      8: drawing("/X 8 0 R", "/X Do /X Do"),
    }),
  "look that draws two that draw two, thirty deep": () =>
    formWith({
      5: textField("order", "/V(x)/AP<</N 8 0 R>>"),
      ...Object.fromEntries(
        Array.from({ length: 30 }, (_, i) => [
          8 + i,
          i === 29 ? drawing("", "BT (x) Tj ET") : drawing(`/X ${9 + i} 0 R`, "/X Do /X Do"),
        ]),
      ),
    }),
  "cross-reference tables that follow each other in a circle": () =>
    Buffer.from(
      formWith({}, "/Prev 99999")
        .toString("latin1")
        .replace(/\/Prev 99999(?=[^]*startxref\n(\d+))/, (_, at: string) => `/Prev ${at}`),
      "latin1",
    ),
  "300,000 fields": () => {
    const numbers = Array.from({ length: many }, (_, i) => 8 + i);
    const list = numbers.map((n) => `${n} 0 R`).join(" ");
    return formWith({
      3: `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[${list}]>>`,
      4: `<</Fields[${list}]>>`,
      ...Object.fromEntries(numbers.map((n) => [n, textField(`f${n}`)])),
    });
  },
  "300,000 fields in the file, two in the form": () =>
    formWith(Object.fromEntries(Array.from({ length: many }, (_, i) => [8 + i, textField(`f${i}`)]))),
  "300,000 pages": () =>
    rawPdf({
      ...form,
      2: `<</Type/Pages/Kids[${Array.from({ length: many }, (_, i) => `${8 + i} 0 R`).join(" ")}]/Count ${many}>>`,
      ...Object.fromEntries(
        Array.from({ length: many }, (_, i) => [8 + i, "<</Type/Page/Parent 2 0 R/MediaBox[0 0 9 9]>>"]),
      ),
    }),
  "fields 30,000 deep": () =>
    chain((n, next, above) =>
      next === undefined ? textField(`${n}`) : `<</T(${n})/FT/Tx/Parent ${above} 0 R/Kids[${next} 0 R]>>`,
    ),
  "fields 30,000 deep, every name a thousand letters": () =>
    chain((_, next, above) => {
      const name = "n".repeat(1000);
      return next === undefined ? textField(name) : `<</T(${name})/Parent ${above} 0 R/Kids[${next} 0 R]>>`;
    }),
  "pages 30,000 deep": () =>
    formWith({
      2: "<</Type/Pages/Kids[8 0 R]/Count 1>>",
      ...links((n, next) =>
        next === undefined
          ? `<</Type/Page/Parent ${n - 1} 0 R/MediaBox[0 0 9 9]>>`
          : `<</Type/Pages/Kids[${next} 0 R]/Count 1/Parent ${n === 8 ? 2 : n - 1} 0 R>>`,
      ),
    }),
  "references 30,000 deep": () =>
    formWith({
      5: textField("order", "/V 8 0 R"),
      ...links((_, next) => (next === undefined ? "(BW-2207)" : `${next} 0 R`)),
    }),
  "arrays 30,000 deep": () =>
    formWith({ 5: textField("order", `/V ${"[".repeat(deep)}${"]".repeat(deep)}`) }),
  "dictionaries a million deep": () =>
    formWith({ 5: textField("order", `/V ${"<</A".repeat(million)} 1${">>".repeat(million)}`) }),
  "a million references to one widget": () =>
    formWith({
      3: `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[${"5 0 R ".repeat(million)}]>>`,
    }),
  "a million references to one field": () => formWith({ 4: `<</Fields[${"5 0 R ".repeat(million)}]>>` }),
  "a million references to one page": () =>
    formWith({ 2: `<</Type/Pages/Kids[${"3 0 R ".repeat(million)}]/Count ${million}>>` }),
  "a million references to one page stream": () =>
    formWith({
      3: `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[5 0 R]/Contents[${"7 0 R ".repeat(million)}]>>`,
    }),
  "a million options to choose from": () =>
    formWith({
      5: `<</Type/Annot/Subtype/Widget/FT/Ch/T(order)/Rect[0 0 9 9]/V(x)/Opt[${"(x)".repeat(million)}]>>`,
    }),
  "a value of 20 MB": () => formWith({ 5: textField("order", `/V(${"A".repeat(20_000_000)})`) }),
  "two million objects without a table": () =>
    Buffer.from(`%PDF-1.7\n${"1 0 obj\n<<>>\n".repeat(2 * million)}trailer\n<</Root 1 0 R>>\n%%EOF\n`),
  "four million brackets and no end": () => Buffer.from(`%PDF-1.7\n1 0 obj\n${"<<[(".repeat(million)}`),
};

/** Objects from 8 on, each written by its number and that of the next; the last has none. */
function links(write: (n: number, next?: number) => string): Record<number, string> {
  return Object.fromEntries(
    Array.from({ length: deep }, (_, i) => [8 + i, i === deep - 1 ? write(8 + i) : write(8 + i, 9 + i)]),
  );
}

/** A form whose one field hangs at the end of a chain of parents. */
function chain(write: (n: number, next: number | undefined, above: number) => string): Buffer {
  const end = 8 + deep - 1;
  return formWith({
    3: `<</Type/Page/Parent 2 0 R/MediaBox[0 0 300 300]/Annots[${end} 0 R]>>`,
    4: "<</Fields[8 0 R]>>",
    ...links((n, next) => write(n, next, n === 8 ? 4 : n - 1)),
  });
}
