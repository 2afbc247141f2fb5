import { PDFDict, type PDFDocument, PDFName, PDFRawStream } from "pdf-lib";
import { listOf, textOf } from "../pdf/pdf-value.ts";
import { readFormByWalking } from "../pdf/walked-form.ts";
import { inWords, presentIn } from "./plain-object.ts";
import { type Print, type PrintedWidget, printOf } from "./print.ts";
import { lineOf } from "./widget-extras.ts";

/** A widget of a blank form. */
export interface BlankWidgetPrint extends PrintedWidget {
  /** How it is drawn, in words; undefined if it is not. */
  readonly look: string | undefined;
  /** What its field holds on the blank. */
  readonly values: readonly string[];
  /** The name under which a box is drawn ticked. */
  readonly state?: string;
  /** What a list shows for each value. */
  readonly choices: readonly { readonly value: string; readonly shows: string }[];
}

/** The print of a blank form: what every sheet on it has, but for what is filled in. */
export interface BlankPrint extends Print {
  readonly pages: readonly (Print["pages"][number] & { readonly widgets: readonly BlankWidgetPrint[] })[];
}

/** Undefined for a form that shows otherwise from one viewer to the next, or has a box that is drawn in many ways. */
export function blankPrint(pdf: PDFDocument): BlankPrint | undefined {
  const print = printOf(pdf);
  if (print === undefined) return undefined;
  try {
    const values = new Map(readFormByWalking(pdf).map((field) => [field.name, field.values]));
    const pages = print.pages.map((page) => ({
      ...page,
      widgets: page.widgets.map((widget) => withLook(widget, values.get(widget.name) ?? [])),
    }));
    return { ...print, pages };
  } catch {
    return undefined;
  }
}

function withLook(widget: PrintedWidget, values: readonly string[]): BlankWidgetPrint {
  const line = lineOf(widget.dict);
  const options = line.map((one) => presentIn(one, "Opt")).find((one) => one !== undefined);
  const choices = listOf(options).map((one) => {
    const [value = "", shows = value] = listOf(one).map(textOf);
    return { value, shows };
  });
  // ISO 32000-1:2008 table 227: the value of a box may stand elsewhere than in its name.
  if (widget.kind === "tick" && options !== undefined) throw new Error("a box with other values");
  return {
    ...widget,
    look: lookInWords(widget.dict),
    values,
    choices,
    ...(widget.kind === "tick" ? { state: stateOf(widget.dict) } : {}),
  };
}

/** How a widget is drawn, in words; undefined if it is not drawn. */
export function lookInWords(widget: PDFDict): string | undefined {
  const looks = presentIn(widget, "AP");
  return looks && inWords(looks);
}

/** The one name other than "Off" under which a box is drawn. */
function stateOf(widget: PDFDict): string {
  const looks = presentIn(widget, "AP");
  const normal = looks instanceof PDFDict ? presentIn(looks, "N") : undefined;
  const states = normal instanceof PDFDict ? normal.keys().filter((key) => key !== PDFName.of("Off")) : [];
  const [state, ...more] = states;
  if (state === undefined || more.length > 0) throw new Error("a box that is drawn in many ways");
  return textOf(state);
}

/** The drawing of a text, if it is the only one that a widget has. */
export function textLook(widget: PDFDict): PDFRawStream | undefined {
  const looks = presentIn(widget, "AP");
  if (!(looks instanceof PDFDict) || looks.keys().some((key) => key !== PDFName.of("N"))) return undefined;
  const look = presentIn(looks, "N");
  return look instanceof PDFRawStream ? look : undefined;
}
