import type { FileKind } from "../../../src/trade/attachment.ts";
import type { Doubt } from "../../../src/trade/sheet.ts";
import { editions } from "../config.ts";
import { flattened, plainPdf } from "../pdf.ts";
import {
  drawnText,
  dynamicXfa,
  hiddenField,
  hybridXfa,
  inked,
  inkedByChromium,
  offset,
  pasted,
  portfolioOf,
  signed,
  staleLook,
  stamped,
  textBox,
  withoutWidgets,
  wrapped,
} from "./by-hand.ts";
import {
  cairoPrint,
  chromiumPrint,
  gsPrint,
  mutoolClean,
  mutoolConvert,
  pdfjsFill,
  pdftkFill,
  pdftkFlatten,
  picture,
  qpdf,
} from "./by-programs.ts";
import type { SampleSheet } from "./sheets.ts";

/** One way in which a sheet can arrive, and what must be made of it. */
export interface Arrival {
  readonly how: string;
  /** The program without which it cannot be made. */
  readonly needs?: string;
  readonly make: (sheet: SampleSheet) => Uint8Array | Promise<Uint8Array>;
  readonly kind: FileKind;
  readonly doubts?: readonly Doubt["what"][];
  /** What is found besides on a form whose page is compared with its blank. */
  readonly compared?: readonly Doubt["what"][];
}

/** A field that everybody types into. */
const rowOf = ({ edition }: SampleSheet): string =>
  ({ "device-26c": "button1_row1", "plate-26c": "gang1_row1" })[edition] ?? "MS.Key1.Line1";

/** A list to choose from, and a box to tick. */
const listOf = ({ edition }: SampleSheet): string =>
  edition.startsWith("marrowby") ? "MS.Colour" : "finish";
const boxOf = ({ edition }: SampleSheet): string =>
  edition.startsWith("marrowby") ? "MS.DropShip" : "ship_same";

const labelsOf = ({ edition }: SampleSheet): string[] =>
  editions.find(({ name }) => name === edition)?.fields.map(({ label }) => label) ?? [];

const good: readonly Omit<Arrival, "kind">[] = [
  { how: "filled by us", make: ({ filled }) => filled },
  { how: "filled by pdftk", needs: "pdftk", make: ({ blank, values }) => pdftkFill(blank, values) },
  {
    how: "filled by pdftk, to be drawn by the viewer",
    needs: "pdftk",
    make: ({ blank, values }) => pdftkFill(blank, values, "need_appearances"),
  },
  { how: "filled by pdf.js", make: ({ blank, values }) => pdfjsFill(blank, values) },
  { how: "rewritten by mutool", needs: "mutool", make: ({ filled }) => mutoolClean(filled) },
  {
    how: "rewritten by qpdf, linearized",
    needs: "qpdf",
    make: ({ filled }) => qpdf(filled, "--object-streams=generate", "--linearize"),
  },
  { how: "rewritten by qpdf, plain", needs: "qpdf", make: ({ filled }) => qpdf(filled, "--qdf") },
  {
    how: "locked to all but reading",
    needs: "qpdf",
    make: ({ filled }) => qpdf(filled, "--encrypt", "", "owner", "256", "--modify=none", "--"),
  },
  { how: "signed", make: ({ filled }) => signed(filled) },
  {
    how: "with an XFA form beside it",
    doubts: [],
    compared: ["something-more"],
    make: ({ filled }) => hybridXfa(filled),
  },
  { how: "on a page that does not begin at the corner", make: ({ filled }) => offset(filled) },
];

const gone: readonly Arrival[] = [
  { how: "untouched", kind: "saved-blank", make: ({ blank }) => blank },
  {
    how: "untouched, rewritten by qpdf",
    kind: "saved-blank",
    needs: "qpdf",
    make: ({ blank }) => qpdf(blank, "--object-streams=generate"),
  },
  {
    how: "untouched, saved by pdf.js",
    kind: "saved-blank",
    make: ({ blank }) => pdfjsFill(blank, {}),
  },
  { how: "flattened by pdftk", kind: "printed", needs: "pdftk", make: ({ filled }) => pdftkFlatten(filled) },
  { how: "flattened by pdf-lib", kind: "printed", make: ({ filled }) => flattened(filled) },
  {
    how: "printed by Ghostscript",
    kind: "printed",
    needs: "gs",
    make: ({ filled }) => gsPrint(filled, "pdfwrite"),
  },
  { how: "printed by cairo", kind: "printed", needs: "pdftocairo", make: ({ filled }) => cairoPrint(filled) },
  { how: "printed by MuPDF", kind: "printed", needs: "mutool", make: ({ filled }) => mutoolConvert(filled) },
  {
    how: "printed by Ghostscript as a picture",
    kind: "scanned",
    needs: "gs",
    make: ({ filled }) => gsPrint(filled, "pdfimage24"),
  },
  {
    how: "scanned as JPEG",
    kind: "scanned",
    needs: "pdftocairo",
    make: ({ filled }) => wrapped(picture(filled, "jpeg")),
  },
  {
    how: "scanned as PNG",
    kind: "scanned",
    needs: "pdftocairo",
    make: ({ filled }) => wrapped(picture(filled, "png")),
  },
  {
    how: "scanned, with the words recognised",
    kind: "scanned",
    needs: "pdftocairo",
    make: (sheet) => wrapped(picture(sheet.filled, "jpeg"), labelsOf(sheet)),
  },
  {
    how: "a picture printed by Chromium",
    kind: "scanned",
    needs: "chromium",
    make: ({ filled }) => chromiumPrint(picture(filled, "png")),
  },
  {
    how: "locked with a password",
    kind: "locked",
    needs: "qpdf",
    make: ({ filled }) => qpdf(filled, "--encrypt", "sycamore", "owner", "256", "--"),
  },
  {
    how: "locked with a password, the old way",
    kind: "locked",
    needs: "qpdf",
    make: ({ filled }) =>
      qpdf(filled, "--allow-weak-crypto", "--encrypt", "sycamore", "owner", "128", "--use-aes=n", "--"),
  },
  { how: "XFA alone", kind: "dynamic-form", make: () => dynamicXfa() },
  { how: "in a portfolio", kind: "archive", make: ({ filled, blank }) => portfolioOf([filled, blank]) },
  {
    how: "something else, printed",
    kind: "no-form",
    make: () => plainPdf("Drawing 7 of 12, Larkspur Library, ground floor, lighting stations"),
  },
];

const doubtful: readonly Omit<Arrival, "kind">[] = [
  {
    how: "with a letterhead's logo",
    doubts: [],
    compared: ["something-more"],
    make: ({ filled }) => pasted(filled),
  },
  { how: "inked", doubts: ["handwriting"], make: (sheet) => inked(sheet.filled, rowOf(sheet)) },
  { how: "inked while empty", doubts: ["handwriting"], make: (sheet) => inked(sheet.blank, rowOf(sheet)) },
  {
    how: "inked in Chromium",
    doubts: ["handwriting"],
    make: (sheet) => inkedByChromium(sheet.filled, rowOf(sheet)),
  },
  {
    how: "signed by a drawing",
    doubts: ["handwriting"],
    make: (sheet) => stamped(sheet.filled, rowOf(sheet)),
  },
  {
    how: "with a text box over a field",
    doubts: ["typed-over"],
    make: (sheet) => textBox(sheet.filled, "KITCHEN", rowOf(sheet)),
  },
  {
    how: "with a text box in the margin",
    doubts: ["typed-over"],
    make: ({ filled }) => textBox(filled, "please in capitals"),
  },
  {
    how: "typed onto the page",
    doubts: ["typed-over"],
    make: (sheet) => drawnText(sheet.blank, "KITCHEN", rowOf(sheet)),
  },
  {
    how: "with a cross drawn onto a box",
    doubts: ["typed-over"],
    make: (sheet) => drawnText(sheet.blank, "X", boxOf(sheet)),
  },
  {
    how: "typed onto a page that does not begin at the corner",
    doubts: ["typed-over"],
    make: async (sheet) => drawnText(await offset(sheet.filled), "KITCHEN", rowOf(sheet)),
  },
  {
    how: "with a picture over a field",
    doubts: ["image-over"],
    make: (sheet) => pasted(sheet.filled, rowOf(sheet)),
  },
  {
    how: "with its fields taken off the page",
    doubts: ["flattened"],
    make: ({ filled }) => withoutWidgets(filled),
  },
  {
    how: "with an old drawing in a field",
    doubts: ["value-hidden"],
    make: (sheet) => staleLook(sheet.filled, rowOf(sheet), "KITCHEN"),
  },
  {
    how: "with an old drawing of a choice",
    doubts: ["value-hidden"],
    make: (sheet) => staleLook(sheet.filled, listOf(sheet), "Chalk"),
  },
  {
    how: "with a hidden field",
    doubts: ["value-hidden"],
    make: (sheet) => hiddenField(sheet.filled, rowOf(sheet)),
  },
];

/** Every way in which a sheet of the set arrives. */
export const arrivals: readonly Arrival[] = [
  ...[...good, ...doubtful].map((arrival): Arrival => ({ ...arrival, kind: "sheet" })),
  ...gone,
];
