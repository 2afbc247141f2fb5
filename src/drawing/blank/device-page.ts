import { textWidth } from "./appearance.ts";
import type { Box } from "./canvas.ts";
import { deviceLegends } from "./device-legends.ts";
import { devicePicture } from "./device-picture.ts";
import type { Draft } from "./draft.ts";
import { bare, boxSize, label, labelHeight, line, lineHeight, radios } from "./entries.ts";
import { finishTable, finishTableHeight, letteringColours } from "./finishes.ts";
import { gap, margin, notes, padding, panel, titleHeight } from "./furniture.ts";

const pictureHeight = 72;

/** Sections 3 to 5 of a device sheet: the device at the left, its legends and the notes at the right. */
export function devicePart(draft: Draft, top: number, bottom: number): void {
  const all = draft.canvas.page.getWidth() - 2 * margin - gap;
  const width = Math.round(all * 0.52);
  device(draft, { x: margin, y: top, width, height: bottom - top });
  const right = { x: margin + width + gap, width: all - width };
  const end = deviceLegends(draft, { ...right, y: top });
  notes(draft, { ...right, y: end + gap, height: bottom - end - gap });
}

function device(draft: Draft, box: Box): void {
  const { canvas, catalogue } = draft;
  panel(canvas, box, { number: 3, says: "The device" });
  const area = { ...box, x: box.x + padding, width: box.width - 2 * padding };
  whereItGoes(draft, { ...area, y: box.y + titleHeight });
  const end = layouts(draft, { ...area, y: box.y + titleHeight + 53 });
  line(draft, { ...area, y: end }, [
    ["finish", 1],
    ["lettering", 1],
    ["part-key", 1],
  ]);
  const table = end + labelHeight + lineHeight + 8;
  finishTable(canvas, "device", catalogue, { ...area, y: table });
  const last = table + finishTableHeight("device", catalogue) + 9;
  if (last + 5 > box.y + box.height) throw new Error("the sheet has no room left for every finish");
  letteringColours(canvas, catalogue, area.x, last);
}

/** Alone or in a plate; the second button's line goes on with which plate and where in it. */
function whereItGoes(draft: Draft, area: Box): void {
  label(draft, "standing", area.x, area.y + 7);
  radios(draft, "standing", [
    { code: "alone", says: "Alone, with its own one-gang plate", x: area.x, middle: area.y + 18 },
    { code: "in-plate", says: "In a plate of several gangs", x: area.x, middle: area.y + 37 },
  ]);
  let x = area.x + 140;
  for (const place of ["position", "gangs"] as const) {
    const end = label(draft, place, x, area.y + 39.7) + 5;
    bare(draft, place, { x: end, y: area.y + 28.5, width: 42, height: lineHeight });
    x = end + 42 + 12;
  }
}

/** Each layout as a picture with its button under it. Returns the height of their lower edge. */
function layouts(draft: Draft, area: Box): number {
  const { canvas, catalogue } = draft;
  label(draft, "layout", area.x, area.y + 7);
  const column = area.width / catalogue.layouts.length;
  const top = area.y + 16;
  const middle = top + pictureHeight + 15;
  const choices = catalogue.layouts.map((layout, i) => {
    const centre = area.x + (i + 0.5) * column;
    devicePicture(canvas, layout, catalogue.device, { centre, top, height: pictureHeight });
    const width = boxSize + 4 + textWidth(layout.name, 8.5);
    return { code: layout.code, says: layout.name, x: centre - width / 2, middle };
  });
  radios(draft, "layout", choices);
  const places = catalogue.layouts.flatMap((layout) => layout.legend_places ?? []);
  let x = label(draft, "legend-place", area.x, middle + 20.5) + 10;
  const placeChoices = [...new Set(places)].map((place) => {
    const choice = { code: place, says: place, x, middle: middle + 18 };
    x += boxSize + 4 + textWidth(place, 8.5) + 12;
    return choice;
  });
  radios(draft, "legend-place", placeChoices);
  return middle + 30;
}
