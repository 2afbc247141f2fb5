import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFPage,
  PDFString,
} from "pdf-lib";
import { markedCopy } from "../../../src/drawing/marked-copy.ts";
import { contentOfPage } from "../../../src/reading/pdf/walked-pages.ts";
import type { Place } from "../../../src/trade/place.ts";
import { mutoolClean, pdfjsFill, pdftkFill, qpdf } from "../odd-sheets/by-programs.ts";
import type { SampleSheet } from "../odd-sheets/sheets.ts";
import { fillForm } from "../pdf.ts";
import { readPdf } from "../read-pdf.ts";

/** What a sender does with a marked copy of ours before it comes back. */
export interface Returned {
  readonly how: string;
  /** A program that must be installed, and how it is asked whether it is. */
  readonly needs?: readonly [program: string, ask: string];
  readonly make: (sheet: SampleSheet) => Promise<Uint8Array>;
}

/** A sheet as the desk sends it back, with every row that is filled in marked, and some fields besides. */
export async function copyOf({ filled }: Pick<SampleSheet, "filled">): Promise<Uint8Array> {
  const { sheet } = await readPdf(filled);
  if (sheet === undefined) throw new Error("no sheet");
  const places = (Object.keys(sheet.prints) as Place[]).filter((place) =>
    /^row|order|position|gangs/.test(place),
  );
  const copy = await markedCopy(
    filled,
    sheet,
    places.map((place, i) => ({
      number: i + 1,
      says: `${sheet.prints[place]?.label} is wrong.`,
      fix: "Correct it.",
      kind: i % 3 === 0 ? "confirm" : "fail",
      places: [place],
    })),
  );
  if (copy === undefined) throw new Error("no copy");
  return copy;
}

/** A copy in the hands of somebody who alters it. */
interface Hand {
  readonly pdf: PDFDocument;
  readonly page: PDFPage;
  /** The page with the list of what is wrong. */
  readonly list: PDFPage;
  /** A row with a legend. */
  readonly row: string;
}

const rows: Readonly<Record<string, string>> = { "device-26c": "button1_row1", "plate-26c": "gang1_row1" };
const name = PDFName.of;

function rowOf({ edition }: SampleSheet): string {
  return rows[edition] ?? "MS.Key1.Line1";
}

function altered(how: string, alter: (hand: Hand) => void | Promise<void>): Returned {
  return {
    how,
    make: async (sheet) => {
      const pdf = await PDFDocument.load(await copyOf(sheet), { updateMetadata: false });
      const list = pdf.getPage(pdf.getPageCount() - 1);
      await alter({ pdf, page: pdf.getPage(0), list, row: rowOf(sheet) });
      return pdf.save({ updateFieldAppearances: false });
    },
  };
}

/** A copy that a program saves anew after it was mended, or not. */
function saved(
  how: string,
  save: (copy: Uint8Array, sheet: SampleSheet) => Uint8Array | Promise<Uint8Array>,
  needs?: Returned["needs"],
): Returned {
  const make = async (sheet: SampleSheet): Promise<Uint8Array> => save(await copyOf(sheet), sheet);
  return { how, make, ...(needs === undefined ? {} : { needs }) };
}

const mended = (sheet: SampleSheet): Record<string, string> => ({ [rowOf(sheet)]: "LOBBY" });

/** Uses that no clerk would ask about. */
export const honestReturns: readonly Returned[] = [
  saved("a copy sent back as it came", (copy) => copy),
  saved("a copy mended by pdf.js", (copy, sheet) => pdfjsFill(copy, mended(sheet))),
  saved("a copy mended by pdf-lib", (copy, sheet) => fillForm(copy, mended(sheet))),
  saved("a copy mended by pdftk", (copy, sheet) => pdftkFill(copy, mended(sheet)), ["pdftk", "--version"]),
  saved(
    "a copy mended by pdftk, drawn by the viewer",
    (copy, sheet) => pdftkFill(copy, mended(sheet), "need_appearances"),
    ["pdftk", "--version"],
  ),
  saved(
    "a copy mended and packed by qpdf",
    async (copy, sheet) =>
      qpdf(await fillForm(copy, mended(sheet)), "--object-streams=generate", "--linearize"),
    ["qpdf", "--version"],
  ),
  saved(
    "a copy mended and cleaned by MuPDF",
    async (copy, sheet) => mutoolClean(await fillForm(copy, mended(sheet))),
    ["mutool", "-v"],
  ),
  saved("a copy mended twice, marked again between", async (copy, sheet) => {
    const again = await copyOf({ filled: await fillForm(copy, mended(sheet)) });
    return fillForm(again, { [rowOf(sheet)]: "HALL" });
  }),
  altered("a copy without its numbers", ({ page }) => unmark(page, /FreeText/)),
  altered("a copy without any mark", ({ page }) => unmark(page, /./)),
  altered("a copy without its list", ({ pdf }) => {
    while (pdf.getPageCount() > 1) pdf.removePage(1);
  }),
  saved("a copy with its list in front", (copy) => qpdf(copy, "--pages", ".", "z,1-r2", "--"), [
    "qpdf",
    "--version",
  ]),
];

function unmark({ node }: PDFPage, kind: RegExp): void {
  const all = node.Annots();
  if (all === undefined) throw new Error("no marks");
  for (let i = all.size() - 1; i >= 0; i--) {
    const one = all.lookup(i, PDFDict);
    if (one.has(name("NM")) && kind.test(String(one.get(name("Subtype"))))) all.remove(i);
  }
}

const widgetOf = ({ pdf, row }: Hand): PDFDict => {
  const [widget] = pdf.getForm().getField(row).acroField.getWidgets();
  if (widget === undefined) throw new Error("no widget");
  return widget.dict;
};

function marksOf({ page }: Hand, kind: string): PDFDict[] {
  const all = page.node.Annots();
  return Array.from({ length: all?.size() ?? 0 }, (_, i) => all?.lookup(i, PDFDict) as PDFDict).filter(
    (one) => one.has(name("NM")) && one.get(name("Subtype")) === name(kind),
  );
}

const comment = (words: string, more: Readonly<Record<string, unknown>> = {}) => ({
  Type: "Annot",
  Subtype: "Text",
  Rect: [600, 40, 620, 60],
  Contents: PDFHexString.fromText(words),
  ...more,
});

function remark({ pdf }: Hand, page: PDFPage, entries: object): void {
  page.node.addAnnot(pdf.context.register(pdf.context.obj(entries as never)));
}

/** Puts a string of the list in place of another. */
function reword({ pdf, list }: Hand, change: (content: string) => string): void {
  const content = contentOfPage({ dict: list.node, resources: undefined }, 1_000_000);
  const after = change(content);
  if (after === content) throw new Error("nothing was changed");
  list.node.set(name("Contents"), pdf.context.register(pdf.context.stream(after)));
}

/** Uses after which the copy shows other than it holds, or more. */
export const forgedReturns: readonly Returned[] = [
  altered("a value changed behind its old look", ({ pdf, row }) =>
    pdf.getForm().getField(row).acroField.dict.set(name("V"), PDFHexString.fromText("LOBBY")),
  ),
  altered("a look changed over its old value", (hand) => {
    const look = hand.pdf.context.stream("/Tx BMC BT 0 g /F 10 Tf 2 4.9 Td (LOBBY) Tj ET EMC", {
      Type: "XObject",
      Subtype: "Form",
      BBox: [0, 0, 120, 18],
      Resources: { Font: { F: { Type: "Font", Subtype: "Type1", BaseFont: "Helvetica" } } },
    });
    widgetOf(hand).set(name("AP"), hand.pdf.context.obj({ N: hand.pdf.context.register(look) }));
  }),
  altered("words written on the list", ({ list }) =>
    list.drawText("Cut EXIT on button 1", { x: 60, y: 30, size: 10 }),
  ),
  altered("words written small and pale on the list", ({ list }) =>
    list.drawText("row 1: EXIT", { x: 60, y: 12, size: 5, opacity: 0.5 }),
  ),
  // "Correct it" -> "Cut EXIT 1", in the hexadecimal strings of the list.
  altered("words of the list changed", (hand) =>
    reword(hand, (content) => content.replaceAll("436F7272656374206974", "43757420455849542031")),
  ),
  altered("a word moved on the list", (hand) =>
    reword(hand, (content) => content.replace(/ (\d+(?:\.\d+)?) Tm/, " 120 Tm")),
  ),
  altered("a line of the list struck out", ({ list }) =>
    list.drawLine({ start: { x: 60, y: 480 }, end: { x: 300, y: 480 }, thickness: 1 }),
  ),
  altered("a remark laid over the list", (hand) =>
    remark(hand, hand.list, comment("Cut EXIT", { Subtype: "FreeText", DA: PDFString.of("/Helv 9 Tf 0 g") })),
  ),
  altered("a comment on the list", (hand) => remark(hand, hand.list, comment("Cut EXIT on button 1"))),
  altered("a stroke of a pen on the list", (hand) =>
    remark(hand, hand.list, {
      Type: "Annot",
      Subtype: "Ink",
      Rect: [60, 40, 90, 60],
      InkList: [[60, 40, 90, 60]],
    }),
  ),
  altered("a field of one's own on the list", (hand) => {
    const field = hand.pdf.getForm().createTextField("remarks");
    field.setText("Cut EXIT on button 1");
    field.addToPage(hand.list, { x: 60, y: 30, width: 200, height: 16 });
  }),
  altered("letters of the list exchanged by their font", (hand) => {
    const fonts = hand.list.node.Resources()?.lookup(name("Font"), PDFDict);
    const plain = fonts?.lookup(name("Plain"), PDFDict);
    plain?.set(
      name("Encoding"),
      hand.pdf.context.obj({ Type: "Encoding", Differences: [65, "E", "X", "I", "T"] }),
    );
  }),
  altered("a list in another font", (hand) =>
    hand.list.node
      .Resources()
      ?.lookup(name("Font"), PDFDict)
      .lookup(name("Plain"), PDFDict)
      .set(name("BaseFont"), name("Symbol")),
  ),
  altered("a list on a larger page with words beside it", (hand) => {
    hand.list.setSize(792, 800);
    hand.list.drawText("Cut EXIT on button 1", { x: 60, y: 700, size: 12 });
  }),
  altered("the link of the list leads to a program", (hand) => {
    const link = hand.list.node.Annots()?.lookup(0, PDFDict);
    link?.set(
      name("A"),
      hand.pdf.context.obj({ S: "JavaScript", JS: PDFString.of("app.alert('EXIT')") } as never),
    );
  }),
  altered("the link of the list has a border", (hand) => {
    const link = hand.list.node.Annots()?.lookup(0, PDFDict);
    link?.set(name("Border"), hand.pdf.context.obj([0, 0, 8]));
    link?.set(name("C"), hand.pdf.context.obj([1, 0, 0]));
  }),
  altered("the link of the list drawn by itself", (hand) => {
    const link = hand.list.node.Annots()?.lookup(0, PDFDict);
    link?.set(name("RC"), PDFHexString.fromText("<body>Cut EXIT</body>"));
  }),
  altered("a program when the list is opened", (hand) =>
    hand.list.node.set(
      name("AA"),
      hand.pdf.context.obj({ O: { S: "JavaScript", JS: PDFString.of("1") } } as never),
    ),
  ),
  altered("an answer to a mark", (hand) =>
    remark(
      hand,
      hand.page,
      comment("It must stay", { IRT: hand.pdf.context.getObjectRef(marksOf(hand, "Square")[0] as PDFDict) }),
    ),
  ),
  altered("a mark that says something else", (hand) =>
    marksOf(hand, "FreeText")[0]?.set(name("Contents"), PDFHexString.fromText("Cut EXIT")),
  ),
  altered("a mark with an author who says something", (hand) =>
    marksOf(hand, "Square")[0]?.set(name("T"), PDFHexString.fromText("Cut EXIT on button 1")),
  ),
  altered("a mark with a subject that says something", (hand) =>
    marksOf(hand, "Square")[0]?.set(name("Subj"), PDFHexString.fromText("Cut EXIT on button 1")),
  ),
  altered("a mark with a window that says something", (hand) => {
    const popup = hand.pdf.context.obj({
      Type: "Annot",
      Subtype: "Popup",
      Rect: [600, 40, 700, 90],
      Open: true,
      Contents: PDFHexString.fromText("Cut EXIT"),
    } as never);
    marksOf(hand, "Square")[0]?.set(name("Popup"), hand.pdf.context.register(popup));
  }),
  altered("a mark that runs a program", (hand) =>
    marksOf(hand, "Square")[0]?.set(
      name("A"),
      hand.pdf.context.obj({ S: "JavaScript", JS: PDFString.of("1") } as never),
    ),
  ),
  altered("a mark whose look when pressed is another", (hand) => {
    const mark = marksOf(hand, "Square")[0];
    const look = hand.pdf.context.stream("1 0 0 rg 0 0 50 20 re f", {
      Type: "XObject",
      Subtype: "Form",
      BBox: [0, 0, 50, 20],
    });
    mark?.lookup(name("AP"), PDFDict).set(name("D"), hand.pdf.context.register(look));
  }),
  altered("a mark on a layer", (hand) => {
    const layer = hand.pdf.context.register(
      hand.pdf.context.obj({ Type: "OCG", Name: PDFString.of("EXIT") } as never),
    );
    marksOf(hand, "Square")[0]?.set(name("OC"), layer);
    hand.pdf.catalog.set(name("OCProperties"), hand.pdf.context.obj({ OCGs: [layer], D: {} } as never));
  }),
  altered("a box ticked behind its old look", ({ pdf }) => {
    const box = pdf
      .getForm()
      .getFields()
      .find((field) => field.constructor.name.includes("CheckBox"));
    box?.acroField.dict.set(
      name("V"),
      name(String(box.acroField.dict.get(name("V"))) === "/Yes" ? "Off" : "Yes"),
    );
    if (box === undefined) throw new Error("no box");
  }),
  altered("the sheet's page twice", async ({ pdf }) => {
    const other = await PDFDocument.load(await pdf.save({ updateFieldAppearances: false }));
    const [page] = await pdf.copyPages(other, [0]);
    if (page !== undefined) pdf.insertPage(1, page);
  }),
  altered("a page of one's own before the list", ({ pdf }) => {
    pdf.insertPage(1, [792, 612]).drawText("Cut EXIT on button 1", { x: 60, y: 300, size: 12 });
  }),
  altered("a page of one's own behind the list", ({ pdf }) => {
    pdf.addPage([792, 612]).drawText("Cut EXIT on button 1", { x: 60, y: 300, size: 12 });
  }),
  altered("words on the sheet beside the marks", ({ page }) =>
    page.drawText("row 1: EXIT", { x: 40, y: 5, size: 8 }),
  ),
  altered("words on the sheet below a mark", (hand) => {
    const { x, y } = widgetOf(hand).lookup(name("Rect"), PDFArray).asRectangle();
    hand.page.drawText("not", { x: x + 50, y: y + 5, size: 9 });
  }),
  altered("a field larger than its frame", (hand) => {
    const rect = widgetOf(hand).lookup(name("Rect"), PDFArray);
    rect.set(3, PDFNumber.of(rect.lookup(3, PDFNumber).asNumber() + 12));
  }),
];
