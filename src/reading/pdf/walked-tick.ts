import { type PDFArray, PDFDict, PDFName, type PDFObject } from "pdf-lib";
import { entryOf, textOf } from "./pdf-value.ts";

/** A widget of a form with all that it inherits. ISO 32000-1:2008 §12.7.3.1, tables 220, 226 to 231. */
export interface Leaf {
  readonly name: string;
  readonly type: string;
  readonly flags: number;
  readonly value?: PDFObject;
  readonly options?: PDFArray;
  readonly dict: PDFDict;
  /** The widgets of the same field, with this one, in the order of the file. */
  readonly sisters: readonly PDFDict[];
}

// ISO 32000-1:2008 table 226; its bit positions count from 1.
const radio = 1 << 15;
const pushButton = 1 << 16;

export function isPushButton({ flags }: Leaf): boolean {
  return (flags & pushButton) !== 0;
}

/**
 * The state of a tick box or radio button, as its export value; none when it is off. The field's value and the
 * widget's look should agree. If they do not, this takes the one that pdf.js does not take: the value of a box, the
 * look of a radio button. So the two readers differ, and neither is trusted.
 */
export function stateOf(leaf: Leaf): string[] {
  const state = (leaf.flags & radio) === 0 ? boxState(leaf) : radioState(leaf);
  return state === "" || state === "Off" ? [] : [exportValue(state, leaf)];
}

function boxState({ dict, value, sisters }: Leaf): string {
  const own = statesOf(dict);
  const written = textOf(value);
  if (written === "Off" || sisters.flatMap(statesOf).includes(written))
    return own.includes(written) ? written : "Off";
  const shown = shownState(dict);
  if (shown !== undefined && (written === "" || own.includes(shown))) return shown;
  // A value that is no state of the box means that it was to be on, whatever it looks like.
  return written === "" ? "Off" : written;
}

function radioState({ dict, value }: Leaf): string {
  const own = statesOf(dict);
  const written = textOf(value);
  return shownState(dict) ?? (own.length === 0 || own.includes(written) ? written : "Off");
}

function shownState(dict: PDFDict): string | undefined {
  const shown = entryOf(dict, "AS");
  return shown instanceof PDFName ? textOf(shown) : undefined;
}

/** The states other than off that a widget has a look for. */
function statesOf(dict: PDFDict): string[] {
  const looks = entryOf(dict, "AP");
  const normal = looks instanceof PDFDict ? entryOf(looks, "N") : undefined;
  return normal instanceof PDFDict
    ? normal
        .keys()
        .map(textOf)
        .filter((state) => state !== "Off")
    : [];
}

// ISO 32000-1:2008 table 227: Opt holds the export value of each widget in the order of Kids. The names of the states
// are then often mere numbers.
function exportValue(state: string, { dict, sisters, options }: Leaf): string {
  const index = statesOf(dict).includes(state) ? sisters.indexOf(dict) : Number(state);
  if (options === undefined || !Number.isInteger(index) || index < 0 || index >= options.size()) return state;
  return textOf(options.lookup(index)) || state;
}
