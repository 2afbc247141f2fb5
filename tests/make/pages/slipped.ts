import {
  decodePDFRawStream,
  PDFArray,
  PDFBool,
  PDFDict,
  type PDFHexString,
  PDFNumber,
  PDFRawStream,
  type PDFRef,
  PDFString,
} from "pdf-lib";
import type { Entries } from "../../../src/drawing/blank/field-tree.ts";
import { noticeMark, numberMark, outlineMark, startMarking } from "../../../src/drawing/marked/annotation.ts";
import { shownPage } from "../../../src/drawing/marked/page.ts";
import type { MarkedProblem } from "../../../src/drawing/marked/problem.ts";
import { notices } from "../../../src/reading/our-marks.ts";
import {
  annotate,
  at,
  drawing,
  type Forgery,
  foot,
  forgery,
  type Hand,
  helvetica,
  name,
  paint,
  type Rectangle,
  rectOf,
  relook,
  says,
  shown,
  text,
  toUnicode,
  valueOf,
  widgetOf,
  write,
} from "./hand.ts";

const strokesAndPrograms: Forgery[] = [
  ...[0.3, 0.5, 0.7].map((width) =>
    forgery(`a legend struck through by a stroke of ${width} points, no longer than itself`, (hand) => {
      relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 0 G ${width} w 3 8.4 m 36 8.4 l S`);
    }),
  ),
  forgery("a red line on the page, no longer than the legend", (hand) => {
    const [l, b] = at(hand, hand.row);
    paint(hand, `0.8 0 0 RG 1 w ${l + 3} ${b + 8.4} m ${l + 36} ${b + 8.4} l S`);
  }),
  forgery("a legend through which a white stroke runs", (hand) =>
    relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 1 G 1.5 w 0 8.4 m 90 8.4 l S`),
  ),
  forgery("a program of the field above a widget", (hand) => {
    const { context } = hand.pdf;
    const widget = widgetOf(hand, hand.row);
    const ref = context.getObjectRef(widget) as PDFRef;
    const field = context.obj({
      T: PDFString.of(hand.row),
      FT: "Tx",
      V: text(valueOf(hand, hand.row)),
      Kids: [ref],
      AA: { F: { S: "JavaScript", JS: PDFString.of("event.value = 'EXIT'") } },
    } as unknown as Entries);
    const fields = hand.pdf.catalog.lookup(name("AcroForm"), PDFDict).lookup(name("Fields"), PDFArray);
    const above = context.register(field);
    for (let i = 0; i < fields.size(); i++) if (fields.get(i) === ref) fields.set(i, above);
    for (const key of ["T", "FT", "V"]) widget.delete(name(key));
    widget.set(name("Parent"), above);
  }),
  forgery("a remark that is a stream", (hand) => {
    const box = at(hand, hand.row);
    const entries = {
      Type: "Annot",
      Subtype: "FreeText",
      Rect: [...box],
      AP: { N: drawing(hand, box, says("EXIT")) },
    };
    hand.page.node.addAnnot(hand.pdf.context.register(hand.pdf.context.stream("", entries)));
  }),
];

/** Marks of a marked copy of ours that somebody has altered or laid elsewhere. */
function marked(
  hand: Hand,
  box: Rectangle,
  alter: (mark: PDFDict, look: PDFRawStream) => void = () => {},
): void {
  const marking = startMarking(hand.pdf);
  const shownAs = shownPage(hand.page.node);
  const problem = { number: 1, kind: "fail", says: "", fix: "", places: [] } as unknown as MarkedProblem;
  const ref = outlineMark(marking, shownAs, { box, problems: [problem] });
  const mark = hand.pdf.context.lookup(ref, PDFDict);
  const look = mark.lookup(name("AP"), PDFDict).lookup(name("N"));
  if (look instanceof PDFRawStream) alter(mark, look);
  hand.page.node.addAnnot(ref);
}

const redraw = (
  hand: Hand,
  mark: PDFDict,
  look: PDFRawStream,
  change: (operators: string) => string,
): void => {
  const plain = change(Buffer.from(decodePDFRawStream(look).decode()).toString("latin1"));
  const dict = look.dict.clone();
  dict.delete(name("Filter"));
  const stream = PDFRawStream.of(dict, Buffer.from(plain));
  mark.lookup(name("AP"), PDFDict).set(name("N"), hand.pdf.context.register(stream));
};

const named = (font: string): Entries => ({
  Font: { F: { Type: "Font", Subtype: "TrueType", BaseFont: font, Encoding: "WinAnsiEncoding" } },
});

const formIn = ({ pdf }: Hand): PDFDict => pdf.catalog.lookup(name("AcroForm"), PDFDict);

/** How a program tells viewers to draw the fields themselves. */
const toBeDrawn = (hand: Hand): void => formIn(hand).set(name("NeedAppearances"), PDFBool.True);

const others: Forgery[] = [
  forgery("a second form within the file", (hand) => {
    widgetOf(hand, hand.row);
    const xml = "<xdp:xdp xmlns:xdp='http://ns.adobe.com/xdp/'><field>EXIT</field></xdp:xdp>";
    formIn(hand).set(name("XFA"), hand.pdf.context.register(hand.pdf.context.stream(xml)));
  }),
  forgery("an old legend in the drawing of a field that viewers are to draw", (hand) => {
    relook(hand, hand.row, shown("EXIT"));
    toBeDrawn(hand);
  }),
  forgery("an old legend in the drawing of an empty field that viewers are to draw", (hand) => {
    relook(hand, hand.empty, shown("EXIT"));
    toBeDrawn(hand);
  }),
  forgery("an old choice in the drawing of a list that viewers are to draw", (hand) => {
    relook(hand, "finish", shown("Soot"));
    toBeDrawn(hand);
  }),
  forgery("an outline of ours with an opaque tint", (hand) =>
    marked(hand, at(hand, hand.row), (_, look) => {
      const states = look.dict.lookup(name("Resources"), PDFDict).lookup(name("ExtGState"), PDFDict);
      states.set(name("Tint"), hand.pdf.context.obj({ ca: 1, BM: "Normal" }));
    }),
  ),
  forgery("an outline of ours drawn with a broad pen", (hand) =>
    marked(hand, at(hand, hand.row), (mark, look) =>
      redraw(hand, mark, look, (operators) => operators.replace(" 2 w ", " 40 w ")),
    ),
  ),
  forgery("an outline of ours larger than its frame", (hand) =>
    marked(hand, at(hand, hand.row), (_, look) =>
      look.dict.set(name("BBox"), hand.pdf.context.obj([0, 0, 3, 3])),
    ),
  ),
  forgery("a notice of ours over a legend", (hand) => {
    const [l, b] = at(hand, hand.row);
    const ref = noticeMark(startMarking(hand.pdf), shownPage(hand.page.node), notices.fail, "#B3261E");
    const mark = hand.pdf.context.lookup(ref, PDFDict);
    const [left, , right] = rectOf(mark);
    mark.set(name("Rect"), hand.pdf.context.obj([l, b, l + right - left, b + 15]));
    hand.page.node.addAnnot(ref);
  }),
  forgery("a number of ours over a legend, without an outline", (hand) => {
    const problem = { number: 1, kind: "fail", says: "", fix: "", places: [] } as unknown as MarkedProblem;
    const frame = { box: at(hand, hand.row), problems: [problem] };
    hand.page.node.addAnnot(numberMark(startMarking(hand.pdf), shownPage(hand.page.node), frame));
  }),
  forgery("the window of a comment that is not on the page", (hand) => {
    const { context } = hand.pdf;
    const comment = { Type: "Annot", Subtype: "Text", Rect: [...foot], Contents: text("must read EXIT") };
    const Parent = context.register(context.obj(comment as unknown as Entries));
    annotate(hand, "Popup", foot, { Open: true, Parent });
  }),
  ...(["R", "D"] as const).map((key) =>
    forgery(`another legend under the pointer (${key})`, (hand) => {
      const widget = widgetOf(hand, hand.row);
      const looks = widget.lookup(name("AP"), PDFDict);
      looks.set(name(key), drawing(hand, rectOf(widget), shown("EXIT")));
    }),
  ),
  forgery("a text with formats that says something else", (hand) => {
    const { dict } = hand.pdf.getForm().getTextField(hand.row).acroField;
    dict.set(name("RV"), text('<body xmlns="http://www.w3.org/1999/xhtml"><p>EXIT</p></body>'));
    dict.set(name("Ff"), PDFNumber.of(1 << 25));
  }),
  forgery("a tip that says something", (hand) =>
    widgetOf(hand, hand.row).set(name("TU"), text("must read EXIT")),
  ),
  forgery("a comment in a field of the form", (hand) =>
    widgetOf(hand, hand.row).set(name("Contents"), text("must read EXIT")),
  ),
  forgery("a list that calls its choices otherwise", (hand) => {
    const { dict } = hand.pdf.getForm().getDropdown("finish").acroField;
    const list = dict.lookup(name("Opt"), PDFArray);
    const held = list.asArray().map((_, i) => list.lookup(i) as PDFHexString);
    dict.set(
      name("Opt"),
      hand.pdf.context.obj(held.map((one, i) => [one, held[(i + 1) % held.length]]) as unknown as Entries),
    );
  }),
  ...["Wingdings", "Webdings", "ABCDEF+MaritimeSigns"].map((font) =>
    forgery(`a legend in ${font}, which is not in the file`, (hand) =>
      relook(hand, hand.row, shown(valueOf(hand, hand.row)), named(font)),
    ),
  ),
  forgery("a field that viewers are to draw in a font of signs", (hand) =>
    widgetOf(hand, hand.row).set(name("DA"), PDFString.of("/ZaDb 10 Tf 0 g")),
  ),
  forgery("the letters of the page exchanged for signs that are not in the file", ({ page }) => {
    const fonts = page.node.normalizedEntries().Resources?.lookup(name("Font"), PDFDict);
    for (const key of fonts?.keys() ?? []) {
      fonts?.lookup(key, PDFDict).set(name("BaseFont"), name("MaritimeSigns"));
      fonts?.lookup(key, PDFDict).delete(name("FontDescriptor"));
    }
  }),
  forgery("a thin stroke across a ticked box", (hand) => {
    const [l, b, r, t] = at(hand, "ship_same");
    paint(hand, `0.8 0 0 RG 0.5 w ${l} ${t} m ${r} ${b} l S`);
  }),
  forgery("a pale yellow block in an empty row", (hand) => {
    const [l, b, r, t] = at(hand, hand.empty);
    paint(hand, `1 1 0 rg ${l + 3} ${b + 3} ${(r - l) / 2} ${t - b - 6} re f`);
  }),
  forgery("a yellow block behind a legend", (hand) => {
    const [l, b, r, t] = at(hand, hand.row);
    paint(hand, `1 1 0 rg ${l + 1} ${b + 1} ${r - l - 2} ${t - b - 2} re f`);
  }),
  ...[7, 8.4, 10].map((height) =>
    forgery(`a legend through which a white stroke of 0.8 points runs, ${height} points high`, (hand) =>
      relook(hand, hand.row, `${shown(valueOf(hand, hand.row))} 1 G 0.8 w 0 ${height} m 90 ${height} l S`),
    ),
  ),
  forgery("small words on a page larger than any paper", (hand) => {
    hand.page.setMediaBox(0, 0, 14_000, 14_000);
    write(hand, "row 2: EXIT", 13_000, 13_000, 3);
  }),
  forgery("small words on a further page larger than any paper", ({ pdf }) => {
    pdf.addPage([14_000, 14_000]).drawText("row 2: EXIT", { x: 13_000, y: 13_000, size: 3 });
  }),
];

/** What a field holds, and the letters that are drawn in it and call themselves what it holds. */
const alike: readonly (readonly [string, string])[] = [
  ["BAY B", "BAY S"],
  ["BAY D", "BAY G"],
  ["BAY D", "BAY O"],
  ["BAY O", "BAY D"],
  ["C", "O"],
  ["O", "."],
];

const letters: Forgery[] = alike.map(([held, seen]) =>
  forgery(`${held} that looks like ${seen}`, (hand) => {
    hand.pdf.getForm().getTextField(hand.row).acroField.dict.set(name("V"), text(held));
    const pairs = [...seen].map((one, i) => [one, held[i] ?? ""] as const);
    const F = { ...helvetica, ToUnicode: toUnicode(hand, pairs) };
    relook(hand, hand.row, shown(seen), { Font: { F } });
  }),
);

/** Ways that slipped through once. */
export const slippedThrough: readonly Forgery[] = [...strokesAndPrograms, ...others, ...letters];
