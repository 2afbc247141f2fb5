import { PDFName } from "pdf-lib";
import type { WidgetFacts } from "../facts.ts";
import type { FormField } from "../form.ts";
import { moved, rounded } from "../pdf/boxes.ts";
import { textOf } from "../pdf/pdf-value.ts";
import { type BlankPrint, type BlankWidgetPrint, lookInWords, textLook } from "./blank-print.ts";
import { linesShown } from "./plain-look.ts";
import { presentIn } from "./plain-object.ts";
import type { Print, PrintedWidget } from "./print.ts";

/** What a widget shows, as pdf.js would tell it. */
interface Shown {
  readonly shown?: string;
}

/**
 * The widgets of a sheet whose pages need not be looked at. They say what the blank says, in the same words, and each
 * field is drawn in the plainest way: a text as the one line or the lines that it holds, a box by the blank's own
 * drawing. Undefined if anything is otherwise, however harmless.
 */
export function explainedBy(
  sheet: Print,
  fields: readonly FormField[],
  blank: BlankPrint,
): WidgetFacts[] | undefined {
  if (sheet.words !== blank.words || sheet.pages.length !== blank.pages.length) return undefined;
  const values = new Map(fields.map((field) => [field.name, field.values]));
  const found: WidgetFacts[] = [];
  for (const [i, page] of sheet.pages.entries()) {
    const printed = blank.pages[i];
    if (
      printed === undefined ||
      page.words !== printed.words ||
      page.content !== printed.content ||
      page.widgets.length !== printed.widgets.length
    )
      return undefined;
    const [left, bottom] = page.view;
    for (const [n, widget] of page.widgets.entries()) {
      const own = printed.widgets[n];
      if (own === undefined || widget.words !== own.words) return undefined;
      const shown = safely(() => shownBy(widget, own, values.get(own.name) ?? []));
      if (shown === undefined) return undefined;
      if (own.kind === "other") continue;
      const { name: field, hidden } = widget;
      const box = rounded(moved(widget.box, -left, -bottom));
      found.push({ field, page: i + 1, box, ...shown, hidden });
    }
  }
  return found;
}

function safely<T>(find: () => T): T | undefined {
  try {
    return find();
  } catch {
    return undefined; // an entry leads nowhere
  }
}

/** Undefined if a widget does not show its values, and nothing else, in the plainest way. */
function shownBy(
  { dict }: PrintedWidget,
  blank: BlankWidgetPrint,
  values: readonly string[],
): Shown | undefined {
  const { kind, state } = blank;
  if (kind === "other") return {};
  if (kind === "tick") {
    const drawn = presentIn(dict, "AS");
    const isOn = textOf(drawn) === state;
    const isKnown = drawn instanceof PDFName && (isOn || drawn === PDFName.of("Off"));
    return isKnown && isOn === values.includes(state ?? "") && lookInWords(dict) === blank.look
      ? {}
      : undefined;
  }
  if (values.length > 1) return undefined;
  const [value = ""] = values;
  const choice = blank.choices.find((one) => one.value === value);
  const text = kind === "choice" ? (choice?.shows ?? value) : value;
  if (!dict.has(PDFName.of("AP"))) return text === "" ? {} : undefined;
  const look = textLook(dict);
  const [left, bottom, right, top] = blank.box;
  const isBlank = (): boolean => sameValues(values, blank.values) && lookInWords(dict) === blank.look;
  const lines = (look && linesShown(look, [right - left, top - bottom])) ?? (isBlank() ? [text] : undefined);
  if (lines === undefined || !showsText(lines, text)) return undefined;
  return { shown: kind === "choice" ? value : lines.map((line) => line.trimEnd()).join("\n") };
}

function sameValues(one: readonly string[], other: readonly string[]): boolean {
  return one.join("\n") === other.join("\n");
}

/** Whether lines say a text: letter by letter in one line, word by word in several. */
function showsText(lines: readonly string[], text: string): boolean {
  if (lines.length <= 1) return (lines[0] ?? "").trim() === text.trim();
  return wordsOf(lines.join(" ")) === wordsOf(text);
}

function wordsOf(text: string): string {
  return text.trim().split(/\s+/).join(" ");
}
