import type { ReadField } from "../form.ts";
import { areaOn, type BlankPage, type BlankWidget, type Looks } from "./blank-form.ts";
import type { Glyphs } from "./glyphs.ts";
import { inkOf } from "./ink.ts";
import type { Area, Picture } from "./picture.ts";
import { keepShown, shownBefore } from "./seen-before.ts";
import { shows } from "./shows.ts";

/** Widgets of a blank page at which the sheet's page shows something else than the fields hold. */
export function differingFields(
  picture: Picture,
  blank: BlankPage,
  { fields, redrawn }: { readonly fields: readonly ReadField[]; readonly redrawn: boolean },
  glyphs: Glyphs,
): BlankWidget[] {
  const values = new Map(fields.map((field) => [field.name, field]));
  const usual = redrawn ? blank.redrawn : blank.looks;
  return blank.widgets.filter((widget, i) => {
    const field = values.get(widget.field);
    // If two readers differ there is no single value to look for.
    if (field?.unsure !== undefined) return false;
    const held = field?.values ?? [];
    const area = areaOn(blank, widget.box);
    const key = JSON.stringify(held);
    if (shownBefore(picture, usual.empty, i, area, key)) return false;
    const isShown = (looks: Looks): boolean => showsOn(looks, picture, widget, area, held, glyphs);
    // A viewer may have drawn one field anew and left the others as they were.
    const isAny = isShown(usual) || isShown(redrawn ? blank.looks : blank.redrawn) || isShown(blank.framed);
    if (!isAny) return true;
    keepShown(picture, usual.empty, i, area, key);
    return false;
  });
}

function showsOn(
  { empty, ticked }: Looks,
  picture: Picture,
  widget: BlankWidget,
  area: Area,
  held: readonly string[],
  glyphs: Glyphs,
): boolean {
  return shows(inkOf(picture, empty, area), widget, held, () => inkOf(ticked, empty, area), glyphs);
}
