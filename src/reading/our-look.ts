import { PDFDict, PDFName, PDFNumber, PDFRawStream } from "pdf-lib";
import { objectKey } from "./page/content-key.ts";
import { type Operand, type Operator, operatorsIn } from "./pdf/content-operators.ts";
import { contentOf, entryOf, rectangleOf, textOf } from "./pdf/pdf-value.ts";

/** Bytes that a drawing of ours has at most. */
const mostBytes = 4_000;

/** An outline: how wide its line is in points, and how strong its tint. The tint darkens and covers nothing. */
export const outlineLook = {
  thickness: 2,
  states: { Tint: { ca: 0.1, BM: "Multiply" }, Full: { ca: 1, BM: "Normal" } },
} as const;

/** What an annotation looks like. */
export interface Look {
  readonly operators: readonly Operator[];
  readonly resources: PDFDict;
  readonly size: readonly [number, number];
}

/** The look of an annotation. It must have a single look, at its own size, in Helvetica Bold, without pictures. */
export function lookOf(annotation: PDFDict): Look | undefined {
  const looks = entryOf(annotation, "AP");
  const look = looks instanceof PDFDict && looks.keys().length === 1 ? entryOf(looks, "N") : undefined;
  if (!(look instanceof PDFRawStream)) return undefined;
  const resources = entryOf(look.dict, "Resources");
  if (!(resources instanceof PDFDict) || !hasOurFont(resources, ["HeBo"])) return undefined;
  return safely(() => {
    const [left, bottom, width, height] = rectangleOf(entryOf(look.dict, "BBox")) ?? [];
    const [x = 0, y = 0, right = 0, top = 0] = rectangleOf(entryOf(annotation, "Rect")) ?? [];
    if (left !== 0 || bottom !== 0 || width === undefined || height === undefined) return undefined;
    // The page may be turned, so the look is upright or on its side.
    const [across, up] = [right - x, top - y];
    const isWhole = [
      [width, height],
      [height, width],
    ].some(([w = 0, h = 0]) => Math.abs(w - across) < 1 && Math.abs(h - up) < 1);
    if (!isWhole) return undefined;
    const operators = [...operatorsIn(contentOf(look, mostBytes))];
    return { operators, resources, size: [width, height] as const };
  });
}

/** Whether a look is an outline's: a tint that covers nothing, and a line around it. */
export function isOutline({ operators, resources, size: [width, height] }: Look): boolean {
  const { thickness, states } = outlineLook;
  const frame = [thickness / 2, thickness / 2, width - thickness, height - thickness]
    .map(hundredth)
    .join(" ");
  const drawing = operators.map(({ name, operands }) => {
    // Colours and dashes depend on the problem.
    const isFree = name === "rg" || name === "RG" || name === "d";
    return [...(isFree ? [] : operands.map(hundredth)), name].join(" ");
  });
  const own = `/Tint gs,rg,${frame} re,f,/Full gs,RG,${thickness} w,1 j,d,${frame} re,S`;
  if (drawing.join(",") !== own) return false;
  const found = entryOf(resources, "ExtGState");
  return Object.entries(states).every(([name, wanted]) => {
    const state = found instanceof PDFDict ? entryOf(found, name) : undefined;
    if (!(state instanceof PDFDict)) return false;
    const keys = state.keys().filter((key) => key !== PDFName.of("Type"));
    const strength = entryOf(state, "ca");
    return (
      keys.length === 2 &&
      strength instanceof PDFNumber &&
      hundredth(strength.asNumber()) === wanted.ca &&
      textOf(entryOf(state, "BM")) === wanted.BM
    );
  });
}

/** Rounded as programs round numbers when they save. */
export function hundredth(operand: Operand): Operand {
  return typeof operand === "number" ? Math.round(operand * 100) / 100 : operand;
}

/** Hashes of the typefaces that marked copies carry. */
export const ourTypefaces: ReadonlySet<string> = new Set([
  "b074053a886b280ac8ebde57b1b6f4eba54a7fb57b4cd94bdd2c90d0cd956ea3",
  "f18ca0158d62ba9222c2694fb539cee70e00266fca738851acdaa3b8b4927f80",
]);

/**
 * Whether all fonts show their own letters: typefaces that we put there, or, in copies of older programs, the Helvetica
 * that every viewer has. ISO 32000-1:2008 table 111
 */
export function hasOurFont(resources: PDFDict, names: readonly string[]): boolean {
  const fonts = entryOf(resources, "Font");
  const drawings = entryOf(resources, "XObject");
  if (!(fonts instanceof PDFDict) || (drawings instanceof PDFDict && drawings.keys().length > 0))
    return false;
  return names.every((name) => {
    const font = entryOf(fonts, name);
    if (!(font instanceof PDFDict)) return false;
    if (ourTypefaces.has(objectKey(font) ?? "")) return true;
    const encoding = entryOf(font, "Encoding");
    return (
      /^Helvetica(-Bold)?$/.test(textOf(entryOf(font, "BaseFont"))) &&
      entryOf(font, "Subtype") === PDFName.of("Type1") &&
      entryOf(font, "FontDescriptor") === undefined &&
      entryOf(font, "ToUnicode") === undefined &&
      (encoding === undefined || encoding instanceof PDFName)
    );
  });
}

export function safely<T>(make: () => T): T | undefined {
  try {
    return make();
  } catch {
    return undefined; // what cannot be unpacked is none of ours
  }
}
