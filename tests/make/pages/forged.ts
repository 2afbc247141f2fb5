import { PDFArray, PDFDict, PDFDocument, PDFNumber, PDFRawStream, PDFRef, PDFString } from "pdf-lib";
import type { Entries } from "../../../src/drawing/blank/field-tree.ts";
import { greyPng } from "../odd-sheets/png.ts";
import {
  annotate,
  at,
  drawing,
  type Forgery,
  foot,
  forgery,
  type Hand,
  helvetica,
  margin,
  name,
  paint,
  quads,
  type Rectangle,
  rectOf,
  relook,
  says,
  shown,
  strokes,
  text,
  toUnicode,
  valueOf,
  widgetOf,
  widgetsOf,
  write,
} from "./hand.ts";
import { slippedThrough } from "./slipped.ts";

/** The standard's kinds of annotations with what each needs to be one. ISO 32000-1:2008 table 169 */
const kinds: readonly (readonly [string, (hand: Hand, box: Rectangle) => Entries])[] = [
  ["Text", () => ({ Name: "Comment" })],
  ["FreeText", () => ({ DA: PDFString.of("/Helv 9 Tf 0 g") })],
  ["Line", (_, [l, b, r, t]) => ({ L: [l, b, r, t], C: [1, 0, 0], BS: { W: 2 } })],
  ["Square", () => ({ C: [1, 0, 0], BS: { W: 2 } })],
  ["Circle", () => ({ C: [1, 0, 0], BS: { W: 2 } })],
  ["Polygon", (_, [l, b, r, t]) => ({ Vertices: [l, b, r, b, r, t], C: [1, 0, 0] })],
  ["PolyLine", (_, [l, b, r, t]) => ({ Vertices: [l, b, r, b, r, t], C: [1, 0, 0] })],
  ["Highlight", (_, box) => ({ QuadPoints: quads(box), C: [1, 1, 0] })],
  ["Underline", (_, box) => ({ QuadPoints: quads(box), C: [1, 0, 0] })],
  ["Squiggly", (_, box) => ({ QuadPoints: quads(box), C: [1, 0, 0] })],
  ["StrikeOut", (_, box) => ({ QuadPoints: quads(box), C: [1, 0, 0] })],
  ["Stamp", () => ({ Name: "Void" })],
  ["Caret", () => ({ C: [0, 0, 1] })],
  ["Ink", (_, [l, b, r, t]) => ({ InkList: [[l, b, r, t]], C: [1, 0, 0] })],
  ["Popup", () => ({ Open: true })],
  ["FileAttachment", ({ pdf }) => ({ FS: fileOf(pdf, "site notes.txt") })],
  ["Sound", ({ pdf }) => ({ Sound: pdf.context.register(pdf.context.stream("\0\0", { R: 8000 })) })],
  ["Movie", () => ({ Movie: { F: PDFString.of("a.mov") } })],
  ["Screen", () => ({})],
  ["PrinterMark", () => ({})],
  ["TrapNet", () => ({})],
  ["Watermark", () => ({})],
  ["3D", () => ({})],
  ["Redact", (_, box) => ({ QuadPoints: quads(box), IC: [0, 0, 0] })],
  ["RichMedia", () => ({})],
  ["Projection", () => ({})],
];

function fileOf(pdf: PDFDocument, file: string): PDFRef {
  const { context } = pdf;
  const held = context.register(context.stream("Row 2 of button 1: EXIT", { Type: "EmbeddedFile" }));
  return context.register(
    context.obj({ Type: "Filespec", F: PDFString.of(file), EF: { F: held } } as Entries),
  );
}

const annotations: Forgery[] = kinds.flatMap(([kind, entries]) => [
  forgery(`${kind} with a drawing over a legend`, (hand) => {
    const box = at(hand, hand.row);
    annotate(hand, kind, box, entries(hand, box), says("EXIT"));
  }),
  forgery(`${kind} with a comment, in the margin`, (hand) => {
    annotate(hand, kind, foot, { ...entries(hand, foot), Contents: text("must read EXIT") });
  }),
  forgery(`${kind}, hidden, with a comment`, (hand) => {
    const box = at(hand, hand.second);
    annotate(hand, kind, box, { ...entries(hand, box), Contents: text("change to EXIT"), F: 2 });
  }),
]);

/** Helvetica with some letters drawn as others: text that is read as one thing and seen as another. */
const differing = (...differences: (number | string)[]): Entries => ({
  Font: { F: { ...helvetica, Encoding: { BaseEncoding: "WinAnsiEncoding", Differences: differences } } },
});

/** A font whose letters are drawn by hand: all of them bars, whatever they are called. ISO 32000-1:2008 §9.6.5 */
function typeThree({ pdf }: Hand, words: string): Entries {
  const { context } = pdf;
  const codes = [...new Set([...words].map((one) => one.charCodeAt(0)))].toSorted((a, b) => a - b);
  const proc = context.register(context.stream("600 0 d0 100 0 120 700 re 100 580 400 120 re f"));
  const [first = 0, last = 0] = [codes[0], codes.at(-1)];
  return {
    Font: {
      F: context.register(
        context.obj({
          Type: "Font",
          Subtype: "Type3",
          FontBBox: [0, 0, 600, 700],
          FontMatrix: [0.001, 0, 0, 0.001, 0, 0],
          CharProcs: Object.fromEntries(codes.map((code) => [String.fromCharCode(code), proc])),
          Encoding: {
            Type: "Encoding",
            Differences: codes.flatMap((code) => [PDFNumber.of(code), name(String.fromCharCode(code))]),
          },
          FirstChar: first,
          LastChar: last,
          Widths: Array.from({ length: last - first + 1 }, () => 600),
          Resources: {},
        } as unknown as Entries),
      ),
    },
  };
}

const looks: Forgery[] = [
  forgery("an old legend in a field's drawing", (hand) => relook(hand, hand.row, shown("EXIT"))),
  forgery("one letter of a legend drawn as another", (hand) =>
    relook(hand, hand.row, shown(swapped(valueOf(hand, hand.row)))),
  ),
  forgery("an old project in a field's drawing", (hand) => relook(hand, "project", shown("Kestrel Hotel"))),
  forgery("an old number in a field's drawing", (hand) => relook(hand, "order_number", shown("BW-2270"))),
  forgery("an old choice in a list's drawing", (hand) => relook(hand, "finish", shown("Soot"))),
  forgery("another number of gangs in a list's drawing", (hand) => relook(hand, "gangs", shown("3"))),
  forgery("notes that show other words", (hand) => {
    hand.pdf.getForm().getTextField("notes").acroField.dict.set(name("V"), text("Ring twice."));
    relook(hand, "notes", shown("Cut nothing yet."));
  }),
  forgery("a second word behind a legend", (hand) =>
    relook(hand, hand.row, shown(`${valueOf(hand, hand.row)} X`)),
  ),
  forgery("a legend in an empty row's drawing", (hand) => relook(hand, hand.empty, shown("EXIT"))),
  forgery("a dot in an empty row's drawing", (hand) => relook(hand, hand.empty, shown("."))),
  forgery("curves in an empty row's drawing", (hand) => relook(hand, hand.empty, strokes)),
  forgery("curves instead of a legend, with the right words unseen", (hand) =>
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row), "3 Tr")} ${strokes}`),
  ),
  forgery("curves over a legend in white", (hand) =>
    relook(hand, hand.row, `BT 1 g /F 10 Tf 2 4.9 Td (${valueOf(hand, hand.row)}) Tj ET ${strokes}`),
  ),
  forgery("a legend in white", (hand) =>
    relook(hand, hand.row, `BT 1 g /F 10 Tf 2 4.9 Td (${valueOf(hand, hand.row)}) Tj ET`),
  ),
  forgery("a legend almost white", (hand) =>
    relook(hand, hand.row, `BT 0.93 g /F 10 Tf 2 4.9 Td (${valueOf(hand, hand.row)}) Tj ET`),
  ),
  forgery("a legend as a clip only", (hand) =>
    relook(hand, hand.row, shown(valueOf(hand, hand.row), "7 Tr")),
  ),
  forgery("a legend of no size", (hand) =>
    relook(hand, hand.row, `BT 0 g /F 0.2 Tf 2 4.9 Td (${valueOf(hand, hand.row)}) Tj ET`),
  ),
  forgery("a legend beyond its frame", (hand) =>
    relook(hand, hand.row, `BT 0 g /F 10 Tf 2 400 Td (${valueOf(hand, hand.row)}) Tj ET`),
  ),
  forgery("a legend of which a clip shows half", (hand) =>
    relook(hand, hand.row, `0 0 16 20 re W n ${shown(valueOf(hand, hand.row))}`),
  ),
  forgery("a legend struck out in its drawing", (hand) =>
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 0.8 0 0 RG 1 w 0 8 m 40 8 l S`),
  ),
  forgery("a legend covered by a block in its drawing", (hand) =>
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 0.2 g 0 0 60 17 re f`),
  ),
  forgery("a legend covered by white in its drawing", (hand) =>
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 1 g 0 0 90 17 re f`),
  ),
  forgery("a legend covered by white and written anew", (hand) =>
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 1 g 0 0 90 17 re f ${shown("EXIT")}`),
  ),
  forgery("an image of a word in an empty row", async (hand) => {
    const image = await hand.pdf.embedPng(greyPng(30, 10));
    relook(hand, hand.empty, "q 30 0 0 10 3 3 cm /I Do Q", { XObject: { I: image.ref } });
  }),
  forgery("an image over a legend in its drawing", async (hand) => {
    const image = await hand.pdf.embedPng(greyPng(30, 10));
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} q 40 0 0 14 1 1 cm /I Do Q`, {
      XObject: { I: image.ref },
    });
  }),
  forgery("an inline image in an empty row", (hand) =>
    relook(hand, hand.empty, "q 30 0 0 10 3 3 cm BI /W 1 /H 1 /CS /G /BPC 8 ID \x20 EI Q"),
  ),
  forgery("letters that a font's encoding swaps", (hand) => {
    const words = valueOf(hand, hand.row);
    const code = words.charCodeAt(0);
    relook(hand, hand.row, shown(words), differing(code, "H"));
  }),
  forgery("letters that lie about what they are", (hand) => {
    const words = valueOf(hand, hand.row);
    const other = "EXIT".padEnd(words.length, "S").slice(0, words.length);
    const pairs = [...other].map((one, i) => [one, words[i] ?? ""] as const);
    relook(hand, hand.row, shown(other), {
      Font: { F: { ...helvetica, ToUnicode: toUnicode(hand, pairs) } },
    });
  }),
  forgery("letters that are drawn by hand", (hand) =>
    relook(hand, hand.row, shown(valueOf(hand, hand.row)), typeThree(hand, valueOf(hand, hand.row))),
  ),
  forgery("a legend in a font of signs", (hand) =>
    relook(hand, hand.row, shown(valueOf(hand, hand.row)), {
      Font: { F: { Type: "Font", Subtype: "Type1", BaseFont: "ZapfDingbats" } },
    }),
  ),
  forgery("a legend in Greek letters", (hand) =>
    relook(hand, hand.row, shown(valueOf(hand, hand.row)), {
      Font: { F: { Type: "Font", Subtype: "Type1", BaseFont: "Symbol" } },
    }),
  ),
  forgery("a legend upside down", (hand) => {
    const [l, b, r, t] = at(hand, hand.row);
    relook(hand, hand.row, `q -1 0 0 -1 ${r - l} ${t - b} cm ${shown(valueOf(hand, hand.row))} Q`);
  }),
  forgery("a legend mirrored", (hand) => {
    const [l, , r] = at(hand, hand.row);
    relook(hand, hand.row, `q -1 0 0 1 ${r - l} 0 cm ${shown(valueOf(hand, hand.row))} Q`);
  }),
  forgery("a legend turned by its drawing's matrix", (hand) => {
    const widget = widgetOf(hand, hand.row);
    const look = widget.lookup(name("AP"), PDFDict).lookup(name("N"));
    if (look instanceof PDFRawStream)
      look.dict.set(name("Matrix"), hand.pdf.context.obj([-1, 0, 0, -1, 0, 0]));
  }),
  forgery("a legend that a layer hides", (hand) => {
    const { context } = hand.pdf;
    const layer = context.register(context.obj({ Type: "OCG", Name: PDFString.of("x") } as Entries));
    hand.pdf.catalog.set(
      name("OCProperties"),
      context.obj({ OCGs: [layer], D: { OFF: [layer], Order: [layer] } } as unknown as Entries),
    );
    widgetOf(hand, hand.row).set(name("OC"), layer);
  }),
  forgery("a legend that the screen does not show", (hand) =>
    widgetOf(hand, hand.row).set(name("F"), PDFNumber.of(4 | 32)),
  ),
  forgery("a legend that is hidden", (hand) => widgetOf(hand, hand.row).set(name("F"), PDFNumber.of(2))),
  forgery("a legend without a drawing of it", (hand) => relook(hand, hand.row, "/Tx BMC EMC")),
  forgery("letters through a font of the form that lies", (hand) => {
    const words = valueOf(hand, hand.row);
    relook(hand, hand.row, shown(words.toLowerCase()), {
      Font: {
        F: {
          ...helvetica,
          ToUnicode: toUnicode(
            hand,
            [...words].map((one) => [one.toLowerCase(), one] as const),
          ),
        },
      },
    });
  }),
];

function swapped(words: string): string {
  return `${words.slice(0, -1)}${words.endsWith("S") ? "T" : "S"}`;
}

/** The look of a box: `words` instead of its mark. */
function relookTick(hand: Hand, field: string, state: string, operators: string, index = 0): void {
  const widget = widgetsOf(hand, field)[index] as PDFDict;
  const normal = widget.lookup(name("AP"), PDFDict).lookup(name("N"), PDFDict);
  const entries = Object.fromEntries(normal.keys().map((key) => [key.decodeText(), normal.get(key)]));
  widget.set(
    name("AP"),
    hand.pdf.context.obj({
      N: { ...entries, [state]: drawing(hand, rectOf(widget), operators) },
    } as unknown as Entries),
  );
}

const crossed = "0.7 0 0 RG 1.5 w 1 1 m 10 10 l 1 10 m 10 1 l S";

const ticks: Forgery[] = [
  forgery("a ticked box that looks empty", (hand) => relookTick(hand, "ship_same", "Yes", "")),
  forgery("an empty box that looks ticked", (hand) => {
    const [field] = [hand.row.replace("row1", "plain")];
    relookTick(hand, field, "Off", crossed);
  }),
  forgery("a ticked box that says NO", (hand) => relookTick(hand, "ship_same", "Yes", says("N", 8))),
  forgery("a ticked box filled with black", (hand) =>
    relookTick(hand, "ship_same", "Yes", "0 g 0 0 11 11 re f"),
  ),
  forgery("the looks of a box exchanged", (hand) => {
    relookTick(hand, "ship_same", "Yes", "");
    relookTick(hand, hand.row.replace("row1", "plain"), "Off", crossed);
  }),
  forgery("a cross written into an empty box", (hand) => {
    const [l, b] = at(hand, hand.row.replace("row1", "plain"));
    write(hand, "x", l + 3, b + 3);
  }),
  forgery("a stroke through a ticked box", (hand) => {
    const [l, b, r, t] = at(hand, "ship_same");
    paint(hand, `0.8 0 0 RG 1 w ${l - 4} ${b - 4} m ${r + 4} ${t + 4} l S`);
  }),
];

const onThePage: Forgery[] = [
  forgery("a remark at the foot", (hand) => write(hand, "please cut row 2 in italics", 40, 5)),
  forgery("a remark in the margin, upright", (hand) => {
    paint(hand, `BT 0 g /Helv 8 Tf 0 1 -1 0 ${hand.page.getWidth() - 12} 200 Tm (not this one) Tj ET`);
    hand.page.node.setFontDictionary(
      name("Helv"),
      hand.pdf.context.register(hand.pdf.context.obj(helvetica as Entries)),
    );
  }),
  forgery("the letters of the page exchanged for signs", ({ page }) => {
    const fonts = page.node.normalizedEntries().Resources?.lookup(name("Font"), PDFDict);
    for (const key of fonts?.keys() ?? []) {
      fonts?.lookup(key, PDFDict).set(name("BaseFont"), name("Symbol"));
      fonts?.lookup(key, PDFDict).delete(name("FontDescriptor"));
    }
  }),
  forgery("a remark in small print", (hand) => write(hand, "row 2: EXIT", 40, 5, 4)),
  forgery("a remark in pale grey", (hand) => {
    hand.page.drawText("row 2: EXIT", {
      x: 40,
      y: 5,
      size: 9,
      color: { type: "Grayscale", gray: 0.75 } as never,
    });
  }),
  forgery("a remark in yellow", (hand) => paint(hand, "1 0.9 0 rg 40 3 60 9 re f")),
  forgery("a word in an empty row", (hand) => {
    const [l, b] = at(hand, hand.empty);
    write(hand, "EXIT", l + 3, b + 5);
  }),
  forgery("a word behind a legend", (hand) => {
    const [l, b] = at(hand, hand.row);
    write(hand, "ONLY", l + 52, b + 5, 8);
  }),
  forgery("curves in an empty row", (hand) => {
    const [l, b] = at(hand, hand.empty);
    paint(hand, `q 1 0 0 1 ${l} ${b} cm ${strokes} Q`);
  }),
  forgery("a line through a legend", (hand) => {
    const [l, b, r, t] = at(hand, hand.row);
    paint(hand, `0.8 0 0 RG 1 w ${l} ${(b + t) / 2} m ${(l + r) / 2} ${(b + t) / 2} l S`);
  }),
  forgery("a cross over the sheet", (hand) =>
    paint(hand, "0.9 0 0 RG 3 w 20 20 m 770 590 l 20 590 m 770 20 l S"),
  ),
  forgery("VOID across the sheet", (hand) => {
    hand.page.drawText("VOID", { x: 200, y: 200, size: 150, opacity: 0.15 });
  }),
  forgery("a circle around a label", (hand) => {
    const [l, , , t] = at(hand, "order_number");
    paint(hand, `0 0 0.9 RG 1 w ${l - 5} ${t} m ${l + 80} ${t + 14} l S`);
  }),
  forgery("a label painted over", (hand) => {
    const [l, , , t] = at(hand, "project");
    paint(hand, `1 0.95 0.9 rg ${l} ${t + 1} 70 9 re f`);
  }),
  forgery("a label painted over and written anew", (hand) => {
    const [l, , , t] = at(hand, "order_number");
    paint(hand, `0.961 0.953 0.961 rg ${l - 3} ${t + 1} 70 9 re f`);
    write(hand, "Old number", l, t + 3, 8);
  }),
  forgery("a printed number changed", (hand) => {
    const [l, b, , t] = at(hand, hand.row);
    paint(hand, `0.85 0.9 0.88 rg ${l - 30} ${b} 24 ${t - b} re f`);
    write(hand, "6", l - 20, b + 4);
  }),
  forgery("a picture in the margin", async (hand) => {
    hand.page.drawImage(await hand.pdf.embedPng(greyPng(40, 20)), {
      x: hand.page.getWidth() - 47,
      y: 300,
      width: 40,
      height: 20,
    });
  }),
  forgery("a picture over the page", async (hand) => {
    hand.page.drawImage(await hand.pdf.embedPng(greyPng(40, 20)), {
      x: 300,
      y: 300,
      width: 200,
      height: 100,
    });
  }),
  forgery("an inline image at the foot", (hand) =>
    paint(hand, "q 60 0 0 8 40 4 cm BI /W 1 /H 1 /CS /G /BPC 8 ID \x20 EI Q"),
  ),
  forgery("a shading at the foot", (hand) => {
    const { context } = hand.pdf;
    const resources = hand.page.node.normalizedEntries().Resources;
    resources?.set(
      name("Shading"),
      context.obj({
        S1: {
          ShadingType: 2,
          ColorSpace: "DeviceGray",
          Coords: [40, 4, 100, 4],
          Function: { FunctionType: 2, Domain: [0, 1], C0: [0], C1: [0.8], N: 1 },
        },
      } as unknown as Entries),
    );
    paint(hand, "q 40 4 60 8 re W n /S1 sh Q");
  }),
  forgery("a stroke of a pen in Chromium", (hand) =>
    paint(hand, "q /GOOG:INKIsInker BMC 0 0 1 rg 40 4 m 90 12 l 90 4 l f EMC Q"),
  ),
  forgery("a drawing used by the page", (hand) => {
    const look = drawing(hand, foot, says("row 2: EXIT"));
    const key = hand.page.node.newXObject("X", look);
    paint(hand, `q 1 0 0 1 40 2 cm ${key.asString()} Do Q`);
  }),
  forgery("a word on a layer that shows", (hand) => {
    const { context } = hand.pdf;
    const layer = context.register(context.obj({ Type: "OCG", Name: PDFString.of("x") } as Entries));
    hand.pdf.catalog.set(
      name("OCProperties"),
      context.obj({ OCGs: [layer], D: { ON: [layer], Order: [layer] } } as unknown as Entries),
    );
    hand.page.node
      .normalizedEntries()
      .Resources?.set(name("Properties"), context.obj({ L: layer } as unknown as Entries));
    paint(hand, "/OC /L BDC EMC");
    write(hand, "EXIT", 40, 5);
  }),
  forgery("a word on a layer that does not show", (hand) => {
    const { context } = hand.pdf;
    const layer = context.register(context.obj({ Type: "OCG", Name: PDFString.of("x") } as Entries));
    hand.pdf.catalog.set(
      name("OCProperties"),
      context.obj({ OCGs: [layer], D: { OFF: [layer], Order: [layer] } } as unknown as Entries),
    );
    const resources = hand.page.node.normalizedEntries().Resources;
    resources?.set(name("Properties"), context.obj({ L: layer } as unknown as Entries));
    hand.page.node.setFontDictionary(name("Fx"), context.register(context.obj(helvetica as Entries)));
    paint(hand, "/OC /L BDC BT 0 g /Fx 9 Tf 40 5 Td (EXIT) Tj ET EMC");
  }),
];

/** What a field holds, and what its drawing shows: a letter's difference, or a blank's. */
const nearly: readonly (readonly [string, string])[] = [
  ["ROOM 10", "ROOM 1O"],
  ["LOBBY B", "LOBBY 8"],
  ["SHOP", "SH0P"],
  ["EXIT", "EX1T"],
  ["HALL E", "HALL F"],
  ["STAIR P", "STAIR R"],
  ["ZONE C", "ZONE G"],
  ["BAY M", "BAY N"],
  ["ALL  OFF", "ALL OFF"],
  ["ALLOFF", "ALL OFF"],
  ["LAMP 5", "LAMP S"],
  ["LAMP 2", "LAMP Z"],
  ["DIM", "DIM."],
  ["OFF", "OF"],
  ["ON", "OFF"],
  ["Q4 ON", "O4 ON"],
  ["VALVE", "VAIVE"],
  ["HALL H", "HALL N"],
];

const letters: Forgery[] = nearly.map(([held, seen]) =>
  forgery(`${held} that looks like ${seen}`, (hand) => {
    hand.pdf.getForm().getTextField(hand.row).acroField.dict.set(name("V"), text(held));
    relook(hand, hand.row, shown(seen));
  }),
);

/** Another form field of somebody's own. */
function addField(hand: Hand, box: Rectangle, entries: Entries, look: string): void {
  const ref = annotate(hand, "Widget", box, { T: PDFString.of("extra"), ...entries }, look);
  const form = hand.pdf.catalog.lookup(name("AcroForm"), PDFDict);
  form.lookup(name("Fields"), PDFArray).push(ref);
}

const opaque = (words: string): string => `1 g 0 0 400 30 re f ${shown(words)}`;

const fields: Forgery[] = [
  forgery("a field of one's own over a legend", (hand) =>
    addField(
      hand,
      at(hand, hand.row),
      { FT: "Tx", V: text("EXIT"), DA: PDFString.of("/Helv 10 Tf 0 g") },
      opaque("EXIT"),
    ),
  ),
  forgery("a field of one's own in the margin", (hand) =>
    addField(
      hand,
      foot,
      { FT: "Tx", V: text("row 2: EXIT"), DA: PDFString.of("/Helv 9 Tf 0 g") },
      says("row 2: EXIT"),
    ),
  ),
  forgery("a field of one's own that is hidden", (hand) =>
    addField(hand, foot, { FT: "Tx", V: text("row 2: EXIT"), F: 2 }, says("row 2: EXIT")),
  ),
  forgery("a push button with words over a legend", (hand) =>
    addField(hand, at(hand, hand.row), { FT: "Btn", Ff: 65_536, MK: { CA: text("EXIT") } }, opaque("EXIT")),
  ),
  forgery("a push button with words in the margin", (hand) =>
    addField(hand, foot, { FT: "Btn", Ff: 65_536, MK: { CA: text("EXIT") } }, opaque("EXIT")),
  ),
  forgery("a signature's drawing over a legend", (hand) =>
    addField(hand, at(hand, hand.row), { FT: "Sig" }, opaque("EXIT")),
  ),
  forgery("a widget that belongs to no form, over a legend", (hand) => {
    annotate(
      hand,
      "Widget",
      at(hand, hand.row),
      { FT: "Tx", T: PDFString.of("y"), V: text("EXIT") },
      opaque("EXIT"),
    );
  }),
  forgery("two fields that changed places", (hand) => {
    const [one, other] = [widgetOf(hand, hand.row), widgetOf(hand, hand.second)];
    const [first, second] = [one.get(name("Rect")), other.get(name("Rect"))];
    if (first !== undefined && second !== undefined) {
      one.set(name("Rect"), second);
      other.set(name("Rect"), first);
    }
  }),
  forgery("two boxes that changed places", (hand) => {
    const plain = hand.row.replace("row1", "plain");
    const [one, other] = [widgetOf(hand, "ship_same"), widgetOf(hand, plain)];
    const [first, second] = [one.get(name("Rect")), other.get(name("Rect"))];
    if (first !== undefined && second !== undefined) {
      one.set(name("Rect"), second);
      other.set(name("Rect"), first);
    }
  }),
  forgery("a legend moved to another row", (hand) => {
    widgetOf(hand, hand.row).set(name("Rect"), hand.pdf.context.obj([...at(hand, hand.empty)]));
  }),
  forgery("an empty field moved into the margin", (hand) => {
    widgetOf(hand, hand.empty).set(name("Rect"), hand.pdf.context.obj([...margin]));
  }),
  forgery("a legend's field made tiny", (hand) => {
    const [l, b] = at(hand, hand.row);
    widgetOf(hand, hand.row).set(name("Rect"), hand.pdf.context.obj([l, b, l + 3, b + 2]));
  }),
  forgery("a second widget of a field that shows something else", (hand) => {
    const { context } = hand.pdf;
    const field = hand.pdf.getForm().getField(hand.empty).acroField.dict;
    const box = at(hand, hand.empty);
    const kid = context.register(
      context.obj({
        Type: "Annot",
        Subtype: "Widget",
        Rect: [...box],
        F: 4,
        Parent: context.getObjectRef(field),
        AP: { N: drawing(hand, box, opaque("EXIT")) },
      } as unknown as Entries),
    );
    hand.page.node.addAnnot(kid);
  }),
];

const pages: Forgery[] = [
  forgery("a further page with words", ({ pdf }) => {
    pdf.addPage([612, 792]).drawText("All legends in capitals please", { x: 50, y: 700, size: 12 });
  }),
  forgery("a further page with a picture", async ({ pdf }) => {
    pdf
      .addPage([612, 792])
      .drawImage(await pdf.embedPng(greyPng(40, 20)), { x: 50, y: 500, width: 200, height: 100 });
  }),
  forgery("a further page with a comment", (hand) => {
    const page = hand.pdf.addPage([612, 792]);
    annotate({ ...hand, page }, "Text", [50, 700, 70, 720], { Contents: text("change button 1 to EXIT") });
  }),
  forgery("a page in front", ({ pdf }) => {
    pdf.insertPage(0, [612, 792]).drawText("Rush! Call before cutting", { x: 50, y: 700, size: 12 });
  }),
  forgery("a file attached", async ({ pdf }) => {
    await pdf.attach(new TextEncoder().encode("Row 2 of button 1: EXIT"), "changes.txt");
  }),
  forgery("a page cut off at the right", ({ page }) => page.setCropBox(0, 0, 500, 612)),
  forgery("a page cut off at the foot", ({ page }) => page.setCropBox(0, 200, 792, 412)),
  forgery("a wider page with words beside the sheet", (hand) => {
    hand.page.setMediaBox(0, 0, 1000, 612);
    write(hand, "row 2: EXIT", 850, 300, 14);
  }),
  forgery("a higher page with words above the sheet", (hand) => {
    hand.page.setMediaBox(0, 0, 792, 800);
    write(hand, "row 2: EXIT", 50, 700, 14);
  }),
  forgery("a turned page with a remark", (hand) => {
    hand.page.setRotation({ type: "degrees", angle: 180 } as never);
    write(hand, "row 2: EXIT", 40, 5);
  }),
  forgery("a page twice as large", (hand) => {
    hand.page.node.set(name("UserUnit"), PDFNumber.of(2));
    write(hand, "row 2: EXIT", 40, 5);
  }),
  forgery("a program that runs when the sheet is opened", ({ pdf }) => {
    pdf.addJavaScript("x", 'this.getField("project").value = "Other";');
  }),
];

const mark = (words: string): Entries => ({ NM: PDFString.of(`burin-mark ${words}`) });

const asOurs: Forgery[] = [
  forgery("an outline that calls itself ours and says something", (hand) => {
    annotate(
      hand,
      "Square",
      at(hand, hand.row),
      { ...mark("1"), Contents: text("1. must read EXIT") },
      says("EXIT"),
    );
  }),
  forgery("a number that calls itself ours and shows words", (hand) => {
    annotate(hand, "FreeText", at(hand, hand.row), { ...mark("2"), Contents: text("2") }, says("EXIT"));
  }),
  forgery("a comment in the name of a mark of ours", (hand) => {
    annotate(hand, "Square", foot, { ...mark("3"), C: [1, 0, 0], Contents: text("cut EXIT instead") });
  }),
  forgery("a page that calls itself our list", (hand) => {
    const page = hand.pdf.addPage([792, 612]);
    page.drawText("Cut EXIT on button 1", { x: 50, y: 500, size: 14 });
    annotate({ ...hand, page }, "Link", [0, 0, 792, 612], { ...mark("list"), Border: [0, 0, 0] });
  }),
  forgery("a link with a border", (hand) => {
    annotate(hand, "Link", at(hand, hand.row), { Border: [0, 0, 3], C: [1, 0, 0] });
  }),
];

/** All ways, in no order that matters: a sheet in any of them must not pass in silence. */
export const forgeries: readonly Forgery[] = [
  ...annotations,
  ...looks,
  ...letters,
  ...ticks,
  ...onThePage,
  ...fields,
  ...pages,
  ...asOurs,
  ...slippedThrough,
];
