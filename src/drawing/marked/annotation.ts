import { AnnotationFlags, type PDFDocument, PDFHexString, type PDFRef, PDFString } from "pdf-lib";
import type { Box } from "../../reading/facts.ts";
import { outlineLook } from "../../reading/our-look.ts";
import { markPrefix, outlineWords } from "../../reading/our-marks.ts";
import { partsOf } from "../blank/canvas.ts";
import type { Entries } from "../blank/field-tree.ts";
import { gravestKind } from "../kinds.ts";
import { rounded } from "../proof/shapes.ts";
import type { Structure, Tag } from "../tagged/structure.ts";
import { embedTypefaces, type Typefaces } from "../typeface/typeface.ts";
import type { Frame } from "./frames.ts";
import type { ShownPage } from "./page.ts";
import { pill, pillText, pillWidth, rgb } from "./pill.ts";
import { looks } from "./problem.ts";

/** What the marks of a document share. */
export interface Marking {
  readonly document: PDFDocument;
  readonly typefaces: Typefaces;
  /** Where what is added stands in the document's tree of tags, if it has one. */
  readonly tags: { readonly structure: Structure; readonly above: Tag } | undefined;
  /** The name of the next mark. */
  readonly nextName: () => string;
}

export function startMarking(document: PDFDocument, tags?: Marking["tags"]): Marking {
  let count = 0;
  return {
    document,
    typefaces: embedTypefaces(document),
    tags,
    nextName: () => `${markPrefix} ${++count}`,
  };
}

/** Points. */
const outline = { gap: 0.5, thickness: outlineLook.thickness };
const barHeight = 13;
/** A field of at least this width has its number on its own corner. A smaller field would vanish under it. */
const wide = 30;

/**
 * The outline of a frame. It lies under the fields. So a viewer hands every click to the field, and a field with a
 * background hides only the tint.
 */
export function outlineMark(marking: Marking, page: ShownPage, { box, problems }: Frame): PDFRef {
  const { colour, dash } = looks[gravestKind(problems)];
  const { gap, thickness } = outline;
  const around = grown(page.toShown(box), gap + thickness);
  const [width, height] = sizeOf(around);
  const path = `${thickness / 2} ${thickness / 2} ${width - thickness} ${height - thickness} re`;
  const tinted = `/Tint gs ${rgb(colour)} rg ${path} f /Full gs`;
  const pen = `${rgb(colour)} RG ${thickness} w 1 j [${dash.join(" ")}] 0 d`;
  return mark(marking, page, around, `${tinted} ${pen} ${path} S`, {
    Subtype: "Square",
    C: partsOf(colour),
    BS: { W: thickness },
    // Only the numbers, so that a mark of ours can be told by its form alone.
    Contents: PDFHexString.fromText(outlineWords(problems.map(({ number }) => number))),
  });
}

/** The numbers of a frame's problems, on its upper right corner. They lie above the fields. */
export function numberMark(marking: Marking, page: ShownPage, { box, problems }: Frame): PDFRef {
  const text = problems.map(({ number }) => number).join(", ");
  const height = barHeight;
  const width = Math.max(height, pillWidth(text) + height / 2 + 1);
  const [left, , right, top] = page.toShown(box);
  const x = right - left < wide ? right + 1 : right + outline.gap + outline.thickness + 2 - width;
  const placed = within(page, [x, top - 4, x + width, top - 4 + height]);
  return mark(marking, page, placed, pill(text, sizeOf(placed), looks[gravestKind(problems)].colour), {
    Subtype: "FreeText",
    DA: PDFString.of(`/HeBo ${pillText} Tf 1 g`),
    Contents: PDFHexString.fromText(text),
  });
}

/** A notice of what to do, at the upper edge of a page, where one looks first. */
export function noticeMark(marking: Marking, page: ShownPage, text: string, colour: string): PDFRef {
  const height = barHeight + 2;
  // Viewers without Helvetica use a wider font instead.
  const width = 1.4 * pillWidth(text) + height;
  const [left, top] = [(page.width - width) / 2, page.height - 4];
  const box: Box = [left, top - height, left + width, top];
  return mark(marking, page, within(page, box), pill(text, sizeOf(box), colour), {
    Subtype: "Square",
    Contents: PDFHexString.fromText(text),
  });
}

/** An annotation that prints, cannot be moved or written into, and shows the drawing. ISO 32000-1:2008 table 165 */
function mark(
  { document: { context }, typefaces, nextName }: Marking,
  page: ShownPage,
  box: Box,
  drawing: string,
  entries: Entries,
): PDFRef {
  const { Print, ReadOnly, Locked, LockedContents } = AnnotationFlags;
  const look = context.flateStream(drawing, {
    Type: "XObject",
    Subtype: "Form",
    BBox: [0, 0, ...sizeOf(box)],
    Matrix: [...page.upright],
    Resources: {
      Font: { HeBo: typefaces.bold.ref },
      ExtGState: outlineLook.states,
    },
  });
  return context.register(
    context.obj({
      Type: "Annot",
      NM: PDFString.of(nextName()),
      Rect: [...page.toPage(box)],
      F: Print | ReadOnly | Locked | LockedContents,
      AP: { N: context.register(look) },
      ...entries,
    }),
  );
}

function grown([left, bottom, right, top]: Box, by: number): Box {
  return [left - by, bottom - by, right + by, top + by];
}

/** A box, as near to its place as the page has room for. */
function within({ width, height }: ShownPage, box: Box): Box {
  const [across, up] = sizeOf(box);
  const left = Math.max(0, Math.min(box[0], width - across));
  const bottom = Math.max(0, Math.min(box[1], height - up));
  return [left, bottom, left + across, bottom + up];
}

function sizeOf([left, bottom, right, top]: Box): [number, number] {
  return [rounded(right - left), rounded(top - bottom)];
}
