import type { EditionField } from "../../reading/edition.ts";
import { type Place, rowOf, type SheetKind } from "../../trade/place.ts";
import { type Box, block, type Canvas, disc, inset, palette, stroke, whole, write } from "./canvas.ts";
import { choicesOf, roomOf } from "./choices.ts";
import { type Draft, take, waitingFor } from "./draft.ts";
import type { FieldText } from "./field-tree.ts";
import { dropdown, radioButtons, textField, tickBox } from "./form.ts";
import { tipOf } from "./tips.ts";

/** Points: a field for one line, the label above it, a tick box or round button. */
export const lineHeight = 17;
export const labelHeight = 10;
export const boxSize = 11;

/**
 * Draws the label of a place, with a star if it must be filled in. Returns the x at which it ends. `heading` is what
 * a heading above it says already: under "Bill to", "Bill to: street" is "Street".
 */
export function label(draft: Draft, place: Place, x: number, baseline: number, heading = ""): number {
  const says = saysOf(draft, place, heading);
  if (says === "") return x;
  const { canvas, required, edition } = draft;
  return whole(canvas, "P", {}, () => {
    const end = write(canvas, says, x, baseline, { size: 8, colour: palette.quiet });
    if (required.includes(place)) return star(canvas, end + 2, baseline);
    return isSometimesNeeded(place, edition.form) ? sometimes(canvas, end + 2, baseline) : end;
  });
}

/** Whether a place must be filled in on some sheets and not on others, as said beside it. */
function isSometimesNeeded(place: Place, form: SheetKind): boolean {
  const { [form]: need } = rowOf(place);
  return (
    need === "in a plate" ||
    need === "by layout" ||
    /^(?:ship\.(?!same)|contact\.(?:email|phone))/.test(place)
  );
}

/** The words of a place's label; "" when the edition does not have the place. */
export function saysOf(draft: Draft, place: Place, heading = ""): string {
  const words = waitingFor(draft, place)?.label ?? "";
  const said = `${heading}: `;
  return words.startsWith(said) ? capital(words.slice(said.length)) : words;
}

/** The mark of a field that must be filled. */
export function star(canvas: Canvas, x: number, baseline: number): number {
  return write(canvas, "*", x, baseline + 2, { size: 11, bold: true, colour: palette.star });
}

/** The mark of a field that must be filled in some cases. */
export function sometimes(canvas: Canvas, x: number, baseline: number): number {
  return write(canvas, "(*)", x, baseline, { size: 8, bold: true, colour: palette.star });
}

/** A label and under it the field; `box` holds both. */
export function entry(draft: Draft, place: Place, box: Box, heading = ""): void {
  label(draft, place, box.x, box.y + 7, heading);
  bare(draft, place, { ...box, y: box.y + labelHeight, height: box.height - labelHeight });
}

/** Fields side by side, each with its share of the width. */
export function line(
  draft: Draft,
  area: Pick<Box, "x" | "y" | "width">,
  places: readonly (readonly [Place, number])[],
  heading = "",
): void {
  const between = 8;
  const shares = places.reduce((sum, [, share]) => sum + share, 0);
  let x = area.x;
  for (const [place, share] of places) {
    const width = ((area.width - between * (places.length - 1)) * share) / shares;
    entry(draft, place, { x, y: area.y, width, height: labelHeight + lineHeight }, heading);
    x += width + between;
  }
}

/** The field of a place alone, filling its frame. */
export function bare(draft: Draft, place: Place, frame: Box): void {
  const field = take(draft, place);
  if (field !== undefined) framed(draft, field, frame);
}

/** A field in its frame. It is a list if the catalogue or the edition has choices, and else for typing. */
export function framed(draft: Draft, field: EditionField, frame: Box): void {
  const { canvas, catalogue, edition } = draft;
  block(canvas, frame, { fill: palette.paper, stroke: palette.frame, radius: 2.5 });
  const text = fieldTextOf(draft, field);
  const choices = choicesOf(field, edition, catalogue);
  const characters = roomOf(field.place, edition.form, catalogue);
  if (choices !== undefined) {
    const [x, y] = [frame.x + frame.width - 10, frame.y + frame.height / 2 - 1.3];
    stroke(
      canvas,
      [
        [x - 3, y],
        [x, y + 3],
        [x + 3, y],
      ],
      { colour: palette.accent, thickness: 1.1 },
    );
    dropdown(draft, inset(frame, 2, 0), { ...text, size: 10, choices });
  } else if (characters !== undefined)
    textField(draft, inset(frame, 1, 0), {
      ...text,
      characters,
      size: sizeFor(characters, frame.width),
    });
  else if (field.place === "notes")
    textField(draft, inset(frame, 2, 3), { ...text, size: 9, manyLines: true });
  else textField(draft, inset(frame, 2, 0), { ...text, size: 10 });
}

/** A tick box whose middle is at height `middle`, and words beside it. */
export function tick(draft: Draft, place: Place, x: number, middle: number, says = ""): void {
  const field = take(draft, place);
  if (field !== undefined) ticked(draft, field, x, middle, says);
}

export function ticked(draft: Draft, field: EditionField, x: number, middle: number, says: string): void {
  const frame = { x, y: middle - boxSize / 2, width: boxSize, height: boxSize };
  block(draft.canvas, frame, { fill: palette.paper, stroke: palette.frame, radius: 2 });
  if (says !== "") write(draft.canvas, says, x + boxSize + 4, middle + 2.7, { size: 8 });
  tickBox(draft, frame, fieldTextOf(draft, field));
}

/** One round button: the code it stands for, its words, and where it is. */
export interface Choice {
  readonly code: string;
  readonly says: string;
  readonly x: number;
  readonly middle: number;
}

/** Round buttons of which one can be on, with their words beside them. */
export function radios(draft: Draft, place: Place, choices: readonly Choice[]): void {
  // Without a choice the field stays waiting: the drawing has no room for it.
  const field = choices.length === 0 ? undefined : take(draft, place);
  if (field === undefined) return;
  const buttons = choices.map(({ code, says, x, middle }) => {
    const words = (): void => {
      disc(draft.canvas, x + boxSize / 2, middle, boxSize / 2, {
        fill: palette.paper,
        stroke: palette.frame,
      });
      write(draft.canvas, says, x + boxSize + 4, middle + 2.9, { size: 8.5 });
    };
    const box = { x, y: middle - boxSize / 2, width: boxSize, height: boxSize };
    const own = Object.entries(field.values).find(([, meaning]) => meaning === code);
    return { box, value: own?.[0] ?? code, tip: `${field.label}: ${says}`, words };
  });
  radioButtons(draft, fieldTextOf(draft, field), buttons);
}

function fieldTextOf({ required, edition, catalogue }: Draft, field: EditionField): FieldText {
  const { name, place, label } = field;
  const must = place !== undefined && required.includes(place);
  const characters = roomOf(place, edition.form, catalogue);
  return { name, tip: tipOf(label, { place, characters, required: must }), required: must };
}

/** The largest type up to 11 points at which a row of the widest letters still fits into `width` points. */
function sizeFor(characters: number, width: number): number {
  const widest = 0.944; // Helvetica's W, as a part of its size (Adobe Core 14 font metrics)
  return Math.min(11, Math.floor(((width - 6) / (characters * widest)) * 2) / 2);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
