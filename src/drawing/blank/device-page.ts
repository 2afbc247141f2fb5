import { textWidth } from "./appearance.ts";
import { type Box, palette, write } from "./canvas.ts";
import { deviceLegends } from "./device-legends.ts";
import { devicePicture } from "./device-picture.ts";
import type { Draft } from "./draft.ts";
import { boxSize, label, radios, saysOf } from "./entries.ts";
import { colours, coloursHeight, coloursWidth } from "./finishes.ts";
import { gap, margin, notes, padding, panel, roomWords, titleHeight } from "./furniture.ts";
import { order, orderHeight } from "./order.ts";
import { stationOfDevice, stationWidth } from "./station.ts";

const pictureHeight = 64;
/** Of the first two sections, side by side. */
const layoutsHeight = titleHeight + 17 + pictureHeight + 15 + 38 + 6;

/** A device sheet, from what is this device's alone to what every sheet of the order says. */
export function devicePart(draft: Draft, top: number, bottom: number): void {
  const width = draft.canvas.page.getWidth() - 2 * margin;
  const box = { x: margin, width };
  const station = { ...box, y: top, width: stationWidth, height: layoutsHeight };
  stationOfDevice(draft, station);
  layouts(draft, { ...station, x: margin + stationWidth + gap, width: width - stationWidth - gap });
  const legends = top + layoutsHeight + gap;
  const colour = deviceLegends(draft, { ...box, y: legends }) + gap;
  const last = bottom - orderHeight(draft);
  const height = last - gap - colour;
  if (height < coloursHeight("device", draft.catalogue))
    throw new Error("the sheet has no room left for every finish and button");
  const left = { ...box, y: colour, width: coloursWidth(draft.catalogue), height };
  colours(draft, left, 4);
  notes(draft, { ...left, x: margin + left.width + gap, width: width - left.width - gap }, 5);
  order(draft, last, 6);
}

/** Each layout as a picture, its button under it, and where a legend may sit. */
function layouts(draft: Draft, box: Box): void {
  const { canvas, catalogue } = draft;
  panel(canvas, box, { number: 2, says: "The device" });
  const area = { x: box.x + padding, y: box.y + titleHeight, width: box.width - 2 * padding };
  label(draft, "layout", area.x, area.y + 7);
  const top = area.y + 17;
  const middle = top + pictureHeight + 15;
  const column = area.width / catalogue.layouts.length;
  const choices = catalogue.layouts.map((layout, i) => {
    const centre = area.x + (i + 0.5) * column;
    devicePicture(canvas, layout, catalogue.device, { centre, top, height: pictureHeight });
    const quiet = { size: 7.5, colour: palette.quiet, align: "centre" } as const;
    write(canvas, roomWords(layout), centre, middle + 15, quiet);
    const width = boxSize + 4 + textWidth(layout.name, 8.5);
    return { code: layout.code, says: layout.name, x: centre - width / 2, middle };
  });
  radios(draft, "layout", choices);

  const isAsked = saysOf(draft, "legend-place") !== "";
  let x = label(draft, "legend-place", area.x, middle + 33.7) + 10;
  const places = [...new Set(catalogue.layouts.flatMap((layout) => layout.legend_places ?? []))];
  const placeChoices = places.map((place) => {
    const choice = { code: place, says: place, x, middle: middle + 31 };
    x += boxSize + 4 + textWidth(place, 8.5) + 12;
    return choice;
  });
  radios(draft, "legend-place", placeChoices);
  const having = catalogue.layouts.filter((layout) => layout.legend_places !== undefined);
  if (isAsked && having.length > 0)
    write(canvas, `(*) for “${having.map(({ name }) => name).join("”, “")}”`, x, middle + 33.7, {
      size: 7.5,
      colour: palette.quiet,
    });
}
