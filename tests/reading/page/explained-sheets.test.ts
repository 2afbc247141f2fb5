import {
  PDFArray,
  PDFBool,
  PDFDict,
  PDFDocument,
  PDFName,
  PDFNumber,
  PDFRawStream,
  PDFString,
} from "pdf-lib";
import { describe, expect, test } from "vitest";
import { openPdf } from "../../../src/reading/pdf/open-pdf.ts";
import { contentOf } from "../../../src/reading/pdf/pdf-value.ts";
import { forms } from "../../make/config.ts";
import { pdfjsFill } from "../../make/odd-sheets/by-programs.ts";
import { sampleSheets } from "../../make/odd-sheets/sheets.ts";

const known = await forms();
const samples = (await sampleSheets()).filter(({ edition }) => /^(device|plate)-26c$/.test(edition));

/** Whether a sheet is read without looking at its pages. */
async function isExplained(bytes: Uint8Array, forms = known): Promise<boolean> {
  let isLookedAt = false;
  const stop = (): Promise<void> => {
    isLookedAt = true;
    throw new Error("looked at");
  };
  const { kind } = await openPdf(bytes, stop, forms);
  return kind === "pdf" && !isLookedAt;
}

/** The same file, but with a comment behind its end, so that its pages are looked at. */
function lookedAt(bytes: Uint8Array): Uint8Array {
  return Buffer.concat([bytes, Buffer.from("% looked at\n")]);
}

/** A file that is being changed, with one of its filled-in fields. */
interface Hand {
  readonly pdf: PDFDocument;
  readonly widget: PDFDict;
  readonly look: PDFRawStream;
  /** Changes the drawing of the field. */
  readonly draw: (change: (content: string) => string) => void;
  /** The next of some amounts. */
  readonly n: number;
}

const at = (dict: PDFDict, ...path: readonly string[]): PDFDict =>
  path.reduce((one, key) => one.lookup(PDFName.of(key), PDFDict), dict);

const fontOf = ({ look }: Hand): PDFDict => at(look.dict, "Resources", "Font", "Helv");

/** Gives the drawing a font of its own, like its own but for some entries. */
function withFont(hand: Hand, entries: Readonly<Record<string, unknown>>): void {
  const { context } = hand.pdf;
  const own = context.obj({
    Type: "Font",
    Subtype: "Type1",
    BaseFont: "Helvetica",
    Encoding: "WinAnsiEncoding",
    ...entries,
  } as never) as unknown as PDFDict;
  hand.look.dict.set(PDFName.of("Resources"), context.obj({ Font: { Helv: own } }));
}

const page = ({ pdf }: Hand): PDFDict => pdf.getPage(0).node;
const put = (dict: PDFDict, key: string, value: unknown): void =>
  dict.set(PDFName.of(key), dict.context.obj(value as never));
const before =
  (operator: string, more: string) =>
  ({ draw }: Hand): void =>
    draw((content) => content.replace(operator, `${more} ${operator}`));

/** What may be done to a sheet. The amounts begin with 1. */
const changes: Readonly<Record<string, (hand: Hand) => void>> = {
  "a paler colour": ({ draw, n }) => draw((all) => all.replace(/[\d.]+ [\d.]+ [\d.]+ rg/, `${n / 9} g`)),
  red: ({ draw, n }) => draw((all) => all.replace(/[\d.]+ [\d.]+ [\d.]+ rg/, `${n / 9} 0 0 rg`)),
  "moved across": ({ draw, n }) => draw((all) => all.replace(/ 2 (\S+) Td/, ` ${2 + n * 15} $1 Td`)),
  "moved to the left": ({ draw, n }) => draw((all) => all.replace(/ 2 (\S+) Td/, ` ${2 - n} $1 Td`)),
  "moved up": ({ draw, n }) => draw((all) => all.replace(/ 2 (\S+) Td/, ` 2 ${4 + n} Td`)),
  "another size": ({ draw, n }) => draw((all) => all.replace(/Helv \S+ Tf/, `Helv ${n * 2} Tf`)),
  "a size of nothing": ({ draw, n }) => draw((all) => all.replace(/Helv \S+ Tf/, `Helv ${n / 10} Tf`)),
  "a smaller clip": ({ draw, n }) => draw((all) => all.replace(/1 1 \S+ \S+ re/, `1 1 ${n * 9} 15 re`)),
  "a lower clip": ({ draw, n }) => draw((all) => all.replace(/1 1 (\S+) \S+ re/, `1 1 $1 ${n * 2} re`)),
  "another text": ({ draw, n }) =>
    draw((all) => all.replace(/<(\w{2})/, `<${(64 + n).toString(16).padStart(2, "0")}`)),
  "more text": before("ET", "20 0 Td (X) Tj"),
  "text over text": before("ET", "0 0 Td (X) Tj"),
  "text in another line": before("ET", "0 -9 Td (X) Tj"),
  narrow: ({ n, ...hand }) => before("BT", `${n * 10} Tz`)({ n, ...hand }),
  "as wide as it is": before("BT", "100 Tz 0 Tc 0 Tw 0 Tr 0 Ts"),
  "not painted": ({ n, ...hand }) => before("BT", `${n} Tr`)({ n, ...hand }),
  spaced: ({ n, ...hand }) => before("BT", `${n / 2} Tc`)({ n, ...hand }),
  raised: ({ n, ...hand }) => before("BT", `${n * 3} Ts`)({ n, ...hand }),
  turned: ({ draw, n }) => draw((all) => all.replace("BT", `BT 1 ${n / 9} 0 1 0 0 Tm`)),
  scaled: before("/Tx", "0.5 0 0 0.5 0 0 cm"),
  "ruled through": before("BT", "0 5 m 90 5 l S"),
  covered: ({ draw }) => draw((all) => `${all} 1 g 0 0 200 40 re f`),
  "a picture": before("/Tx", "/X Do"),
  "an array of texts": ({ draw }) => draw((all) => all.replace(/(<\w+>) Tj/, "[$1] TJ")),
  "a text in brackets": ({ draw }) => draw((all) => all.replace(/(<\w+>) Tj/, "[$1] Tj")),
  "a text in a comment": ({ draw }) => draw((all) => all.replace(/(<\w+>) Tj/, "% $1 Tj\n")),
  "written otherwise": ({ draw }) => draw((all) => all.replaceAll(" ", " \n ")),
  "other brackets": ({ draw }) =>
    draw((all) =>
      all.replace(/<(\w+)> Tj/, (_, hex: string) => `(${Buffer.from(hex, "hex").toString("latin1")}) Tj`),
    ),
  "optional content": ({ draw }) => draw((all) => all.replace("/Tx BMC", "/OC /Off BDC")),
  "other codes": (hand) =>
    withFont(hand, { Encoding: { Type: "Encoding", Differences: [65 + hand.n, "X"] } }),
  "another reading": (hand) =>
    withFont(hand, { ToUnicode: hand.pdf.context.register(hand.pdf.context.stream("endcmap")) }),
  "another font": (hand) =>
    withFont(hand, { BaseFont: ["Symbol", "ZapfDingbats", "Times-Roman", "Comic"][hand.n % 4] }),
  "a font of the same kind": (hand) => withFont(hand, {}),
  "other widths": (hand) =>
    withFont(hand, { FirstChar: 32, LastChar: 126, Widths: Array(95).fill(100 * hand.n) }),
  "the form's font in other codes": (hand) => put(fontOf(hand), "Encoding", "MacExpertEncoding"),
  "a matrix": ({ look, n }) => put(look.dict, "Matrix", [1, 0, 0, 1, n * 20, 0]),
  "a matrix that does nothing": ({ look }) => put(look.dict, "Matrix", [1, 0, 0, 1, 0, 0]),
  "a smaller box": ({ look, n }) => put(look.dict, "BBox", [0, 0, n * 9, 17]),
  "a larger box": ({ look, n }) => put(look.dict, "BBox", [0, 0, 200 + n * 50, 17]),
  "a drawing that can be switched off": ({ look }) => put(look.dict, "OC", { Type: "OCG" }),
  "a group": ({ look }) => put(look.dict, "Group", { S: "Transparency" }),
  "a field that can be switched off": ({ widget }) => put(widget, "OC", { Type: "OCG" }),
  hidden: ({ widget, n }) => put(widget, "F", 1 << n),
  "another place": ({ widget, n }) =>
    put(
      widget,
      "Rect",
      widget
        .lookup(PDFName.of("Rect"), PDFArray)
        .asArray()
        .map((side) => (side as PDFNumber).asNumber() + n / 2),
    ),
  "another value": ({ widget, n }) => widget.set(PDFName.of("V"), PDFString.of(`VALUE ${n}`)),
  "no drawing": ({ widget }) => void widget.delete(PDFName.of("AP")),
  "no value": ({ widget }) => void widget.delete(PDFName.of("V")),
  "another look under the pointer": ({ widget, look }) => put(at(widget, "AP"), "R", look),
  "another tip": ({ widget, n }) => widget.set(PDFName.of("TU"), PDFString.of(`tip ${n}`)),
  "another style": ({ widget }) => widget.set(PDFName.of("DA"), PDFString.of("/Helv 9 Tf 1 g")),
  "a coloured ground": ({ widget, n }) => put(widget, "MK", { BG: [n / 9, 0, 0] }),
  "rich text": ({ widget }) => widget.set(PDFName.of("RV"), PDFString.of("<p>other</p>")),
  "a program": ({ widget }) => put(widget, "AA", { K: { S: "JavaScript", JS: "1" } }),
  "a box otherwise": ({ pdf }) => {
    for (const box of widgetsIn(pdf)
      .filter((one) => one.has(PDFName.of("AS")))
      .slice(0, 3))
      put(box, "AS", String(box.get(PDFName.of("AS"))) === "/Off" ? "Yes" : "Off");
  },
  "boxes drawn otherwise": ({ pdf }) => {
    const box = widgetsIn(pdf).find((one) => one.has(PDFName.of("AS")));
    if (box !== undefined)
      put(
        at(box, "AP", "N"),
        "Off",
        pdf.context.register(
          pdf.context.stream("1 1 5 5 re f", { Type: "XObject", Subtype: "Form", BBox: [0, 0, 9, 9] }),
        ),
      );
  },
  "two fields in each other's place": ({ pdf, widget }) => {
    const other = widgetsIn(pdf).find((one) => one !== widget && one.has(PDFName.of("V")));
    const [one, two] = [widget, other].map((dict) => dict?.get(PDFName.of("Rect")));
    if (other === undefined || one === undefined || two === undefined) return;
    widget.set(PDFName.of("Rect"), two);
    other.set(PDFName.of("Rect"), one);
  },
  "fields in another order": (hand) => {
    const all = page(hand).lookup(PDFName.of("Annots"), PDFArray);
    const last = all.get(all.size() - 1);
    all.remove(all.size() - 1);
    all.insert(0, last);
  },
  "an annotation": (hand) =>
    page(hand)
      .lookup(PDFName.of("Annots"), PDFArray)
      .push(
        hand.pdf.context.register(
          hand.pdf.context.obj({ Type: "Annot", Subtype: "Text", Rect: [1, 1, 9, 9] }),
        ),
      ),
  "a field too many": (hand) =>
    page(hand)
      .lookup(PDFName.of("Annots"), PDFArray)
      .push(hand.pdf.context.register(hand.widget.clone(hand.pdf.context))),
  "drawn viewers' way": ({ pdf }) =>
    at(pdf.catalog, "AcroForm").set(PDFName.of("NeedAppearances"), PDFBool.True),
  "a second form": ({ pdf }) =>
    put(at(pdf.catalog, "AcroForm"), "XFA", pdf.context.register(pdf.context.stream("<a/>"))),
  "the form's own fonts": ({ pdf }) =>
    put(at(pdf.catalog, "AcroForm", "DR", "Font", "Helv"), "BaseFont", "Symbol"),
  "a turned page": (hand) => put(page(hand), "Rotate", 90 * hand.n),
  "a page turned from above": ({ pdf }) => put(at(pdf.catalog, "Pages"), "Rotate", 180),
  "another unit": (hand) => put(page(hand), "UserUnit", 1 + hand.n / 10),
  "a cropped page": (hand) => put(page(hand), "CropBox", [0, 0, 612 - hand.n * 20, 792]),
  "a larger page": (hand) => put(page(hand), "MediaBox", [0, 0, 612 + hand.n * 20, 792]),
  "more on the page": (hand) =>
    page(hand)
      .lookup(PDFName.of("Contents"), PDFArray)
      .push(hand.pdf.context.register(hand.pdf.context.stream("0 0 9 9 re f"))),
  "another font of the page": (hand) => {
    const fonts = at(page(hand), "Resources", "Font");
    for (const key of fonts.keys()) put(at(fonts, key.decodeText()), "BaseFont", "Symbol");
  },
  layers: ({ pdf }) => put(pdf.catalog, "OCProperties", { OCGs: [], D: {} }),
  "a program at opening": ({ pdf }) => put(pdf.catalog, "OpenAction", { S: "JavaScript", JS: "1" }),
  "another page": ({ pdf }) => void pdf.addPage(),
  "a language": ({ pdf }) => pdf.catalog.set(PDFName.of("Lang"), PDFString.of("fr")),
  nothing: () => undefined,
};

function widgetsIn(pdf: PDFDocument): PDFDict[] {
  const all = pdf.getPage(0).node.lookup(PDFName.of("Annots"), PDFArray);
  return all.asArray().map((_, i) => all.lookup(i, PDFDict));
}

/** What changes nothing that anybody sees. It has to be explained, or there would be nothing to hold to. */
const harmless = new Set([
  "nothing",
  "a language",
  "as wide as it is",
  "written otherwise",
  "other brackets",
  "a font of the same kind",
  "a matrix that does nothing",
]);

async function changed(bytes: Uint8Array, how: string, n: number): Promise<Uint8Array> {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
  const filled = widgetsIn(pdf).filter(
    (one) => String(one.get(PDFName.of("FT"))) === "/Tx" && one.has(PDFName.of("V")),
  );
  const widget = filled[n % filled.length] as PDFDict;
  const look = at(widget, "AP").lookup(PDFName.of("N")) as PDFRawStream;
  const hand: Hand = {
    pdf,
    widget,
    look,
    n,
    draw: (change) => {
      const drawn = pdf.context.stream(change(contentOf(look, 9_000)));
      for (const key of ["Type", "Subtype", "BBox", "Resources"])
        drawn.dict.set(PDFName.of(key), look.dict.get(PDFName.of(key)) as never);
      put(at(widget, "AP"), "N", pdf.context.register(drawn));
    },
  };
  changes[how]?.(hand);
  return pdf.save({ useObjectStreams: n % 2 === 0, updateFieldAppearances: false });
}

const amounts = Number(process.env["BURIN_RUNS"] ?? 1);

describe.each(samples)("a $edition is explained only where its picture says the same", ({ filled }) => {
  test.each(Object.keys(changes))("%s", async (how) => {
    for (let n = 1; n <= amounts; n++) {
      const bytes = await changed(filled, how, n);
      const explained = await isExplained(bytes);
      if (harmless.has(how)) expect(explained).toBe(true);
      if (!explained) continue;
      const [quick, slow] = [
        await openPdf(bytes, undefined, known),
        await openPdf(lookedAt(bytes), undefined, known),
      ];
      expect(quick).toEqual(slow);
      expect(slow).toMatchObject({ differences: [] });
    }
  });
});

describe("a file in which readers may find other objects is looked at", () => {
  const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString("latin1");
  const file = (words: string): Uint8Array => Buffer.from(words, "latin1");
  const [sample] = samples;
  const plain = async (): Promise<string> =>
    text(
      await (await PDFDocument.load(sample?.filled ?? new Uint8Array(), { updateMetadata: false })).save({
        useObjectStreams: false,
        updateFieldAppearances: false,
      }),
    );
  const end = /startxref\s+\d+\s+%%EOF\s*$/;

  test("as it is, it is explained", async () => {
    expect(await isExplained(file(await plain()))).toBe(true);
  });
  test.each([
    [
      "an object that no table names",
      (all: string) => all.replace(/\nxref/, "\n9999 0 obj\n<</A 1>>\nendobj\nxref"),
    ],
    [
      "an object in a comment's place",
      (all: string) => all.replace(end, (tail) => `1 %x\n0 obj\n<<>>\nendobj\n${tail}`),
    ],
    [
      "an object that its table calls free",
      (all: string) => all.replace(/(\d{10}) 00000 n(?=[ \r]\r?\n?(?![\s\S]* n ))/, "$1 00000 f"),
    ],
    [
      "an object that its table has elsewhere",
      (all: string) => all.replace(/\n0000000(\d{3}) 00000 n/, "\n0000001$1 00000 n"),
    ],
    ["a table before it", (all: string) => all.replace(/\/Root/, "/Prev 20 /Root")],
    ["two catalogs", (all: string) => all.replace(/\/Root/, "/Root 1 0 R /Root")],
    ["a table beside its table", (all: string) => all.replace(/\/Root/, "/XRefStm 20 /Root")],
    ["something before its header", (all: string) => `x${all}`],
    ["something behind its end", (all: string) => `${all}% more\n`],
  ] as const)("%s", async (_, change) => {
    const before = await plain();
    const after = change(before);
    expect(after).not.toBe(before);
    expect(await isExplained(file(after))).toBe(false);
  });
});

test("a sheet that pdf.js has filled in is explained, and read as its picture is", async () => {
  for (const { blank, values } of samples) {
    const bytes = await pdfjsFill(blank, values);
    expect(await isExplained(bytes)).toBe(true);
    expect(await openPdf(bytes, undefined, known)).toEqual(await openPdf(lookedAt(bytes), undefined, known));
  }
});

test.each<[string, boolean, (pdf: PDFDocument) => unknown]>([
  ["nothing", true, () => undefined],
  ["a file", false, (pdf) => pdf.attach(Buffer.from("x"), "guide.txt")],
  [
    "a second form",
    false,
    ({ catalog, context }) => put(at(catalog, "AcroForm"), "XFA", context.register(context.stream("<a/>"))),
  ],
  ["a portfolio", false, ({ catalog }) => put(catalog, "Collection", {})],
  [
    "content of a page in another file",
    false,
    (pdf) => {
      const contents = pdf.getPage(0).node.lookup(PDFName.of("Contents"), PDFArray);
      put(contents.lookup(0, PDFRawStream).dict, "F", PDFString.of("page.bin"));
    },
  ],
])("a sheet that has %s inside, as its blank has, is explained: %s", async (_, expected, add) => {
  for (const { edition, blank, filled } of samples) {
    const [before, after] = await Promise.all(
      [blank, filled].map(async (bytes) => {
        const pdf = await PDFDocument.load(bytes, { updateMetadata: false });
        await add(pdf);
        return pdf.save({ updateFieldAppearances: false });
      }),
    );
    const forms = { ...known, blanks: new Map([[edition, before ?? blank]]) };
    expect(await isExplained(after ?? filled, forms)).toBe(expected);
  }
});
