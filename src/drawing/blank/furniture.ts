import type { Catalogue, Room } from "../../catalogue/catalogue.ts";
import type { Edition } from "../../reading/edition.ts";
import { type Place, rowOf } from "../../trade/place.ts";
import { textWidth } from "./appearance.ts";
import { type Box, block, type Canvas, disc, inset, palette, stroke, whole, write } from "./canvas.ts";
import { type Draft, take } from "./draft.ts";
import { bare, labelHeight, line, lineHeight, sometimes, star } from "./entries.ts";
import { textField } from "./form.ts";
import { tipOf } from "./tips.ts";

/** The page's margin at the left and right. */
export const margin = 36;
/** Height of a panel's title, and the space around what a panel holds. */
export const titleHeight = 22;
export const padding = 10;
/** Space between two panels. */
export const gap = 8;

/** Who it is for, what it is, and how it works. Returns the height at which the sheet proper can begin. */
export function header(canvas: Canvas, edition: Edition, { maker }: Catalogue): number {
  const right = canvas.page.getWidth() - margin;
  emblem(canvas, margin, 20);
  write(canvas, maker.name, margin + 38, 35, { size: 17, bold: true });
  write(canvas, maker.about, margin + 38, 47.5, { size: 8.5, colour: palette.quiet });
  const [title = "", version = ""] = edition.title.split(", ");
  write(canvas, title, right, 35, {
    size: 17,
    bold: true,
    colour: palette.accent,
    align: "right",
    role: "H1",
  });
  const contact = [version, maker.email, maker.phone].filter((part) => part !== "").join("   ·   ");
  write(canvas, contact, right, 47.5, { size: 8.5, colour: palette.quiet, align: "right" });
  stroke(
    canvas,
    [
      [margin, 56],
      [right, 56],
    ],
    { colour: palette.accent, thickness: 1 },
  );

  const size = 8.3;
  const how = [
    "Legends are cut exactly as typed. Each device has a device sheet, each plate of two or more gangs a plate sheet.",
    `Send all sheets of an order to ${maker.email}. Open the saved file first: it must show what you typed.`,
  ];
  how.forEach((line, i) => {
    write(canvas, line, margin, 69 + i * 10.5, { size });
  });
  const keys = [
    ["must be filled in", star, 7],
    ["where it says so", sometimes, 12],
  ] as const;
  const keyed = right - Math.max(...keys.map(([says]) => textWidth(says, size)));
  keys.forEach(([says, sign, room], i) => {
    whole(canvas, "P", {}, () => {
      sign(canvas, keyed - room, 69 + i * 10.5);
      write(canvas, says, keyed, 69 + i * 10.5, { size, colour: palette.quiet });
    });
  });
  return 86;
}

/** A station in outline: a plate, and the devices in it. */
function emblem(canvas: Canvas, x: number, y: number): void {
  block(canvas, { x, y, width: 30, height: 28 }, { fill: palette.accent, radius: 4 });
  for (const [i, height] of [18, 8, 8].entries()) {
    const box = { x: x + 5 + (i === 0 ? 0 : 11), y: y + 5 + (i === 2 ? 10 : 0), width: 9, height };
    block(canvas, box, { fill: palette.paper, radius: 1.5 });
  }
}

/** The safety caution and the edition, under everything else. */
export function foot(draft: Draft): void {
  const { canvas, edition } = draft;
  const bottom = canvas.page.getHeight() - 22;
  const caution =
    "Legends are cut as typed. Burin does not know the wiring. Circuits for emergency lighting and disconnects: " +
    "local code and a licensed electrician decide.";
  write(canvas, caution, margin, bottom, { size: 7, colour: palette.quiet });
  const field = take(draft, "edition");
  if (field === undefined) return;
  const right = canvas.page.getWidth() - margin;
  const width = textWidth(edition.name, 7) + 6;
  write(canvas, field.label, right - width, bottom, { size: 7, colour: palette.quiet, align: "right" });
  textField(
    draft,
    { x: right - width, y: bottom - 8.5, width, height: 12 },
    {
      name: field.name,
      tip: tipOf(field.label, { place: "edition" }),
      required: false,
      size: 7,
      fixed: edition.name,
    },
  );
}

const heading = { size: 10.5, bold: true } as const;

/** A tinted area with a numbered title and, beside the title, a remark. */
export function panel(
  canvas: Canvas,
  box: Box,
  title: { readonly number?: number; readonly says: string; readonly remark?: string },
): void {
  block(canvas, box, { fill: palette.panel, radius: 5 });
  const baseline = box.y + 15.5;
  const left = box.x + padding;
  const end = whole(canvas, "H2", {}, () => {
    if (title.number === undefined) return write(canvas, title.says, left, baseline, heading);
    disc(canvas, left + 6.5, baseline - 3.6, 6.5, { fill: palette.accent });
    write(canvas, String(title.number), left + 6.5, baseline - 0.7, {
      size: 8.5,
      bold: true,
      colour: palette.paper,
      align: "centre",
    });
    return write(canvas, title.says, left + 19, baseline, heading);
  });
  if (title.remark !== undefined)
    write(canvas, title.remark, end + 8, baseline, { size: 7.5, colour: palette.quiet });
}

/** Places of the last section, in which all sheets of an order say the same. */
const ofOrder = /^(?:order|project|contact\..*|bill\..*|ship\..*)$/;

/** Room for two lines of typing. Less is of no use. */
const leastNotes = { width: 130, height: 26 };
/** The least that a place among the notes takes. */
const leastPlace = 72;

/** "3 rows of 10 letters". */
export function roomWords({ rows, characters }: Room): string {
  return `${rows} ${rows === 1 ? "row" : "rows"} of ${characters}`;
}

/** Whatever space is left, for words that no field holds, and for places that no other section has. */
export function notes(draft: Draft, box: Box, number: number): void {
  panel(draft.canvas, box, {
    number,
    says: "Notes",
    remark: "for a person; nothing of it is cut",
  });
  const area = {
    ...inset(box, padding),
    y: box.y + titleHeight,
    height: box.height - titleHeight - padding,
  };
  const others = withoutRoom(draft);
  const step = labelHeight + lineHeight + 4;
  const inLine = Math.min(4, Math.floor(area.width / leastPlace));
  const above = Math.ceil(others.length / inLine) * step;
  const frame = { ...area, y: area.y + above, height: area.height - above };
  if (frame.height < leastNotes.height || frame.width < leastNotes.width)
    throw new Error("the sheet has no room left for notes");
  for (let i = 0; i < others.length; i += inLine)
    line(draft, { ...area, y: area.y + (i / inLine) * step }, others.slice(i, i + inLine));
  bare(draft, "notes", frame);
}

/** Places for typing that no other section has, each with its share of a line. */
function withoutRoom({ waiting }: Draft): (readonly [Place, number])[] {
  return waiting.flatMap(({ place }) =>
    place !== undefined &&
    place !== "notes" &&
    !ofOrder.test(place) &&
    ["text", "number"].includes(rowOf(place).holds)
      ? [[place, 1] as const]
      : [],
  );
}
