import type { AddressPart, Place } from "../../trade/place.ts";
import { textWidth } from "./appearance.ts";
import { type Box, type Canvas, palette, write } from "./canvas.ts";
import type { Draft } from "./draft.ts";
import { boxSize, labelHeight, line, lineHeight, saysOf, tick } from "./entries.ts";
import { gap, margin, padding, panel, titleHeight } from "./furniture.ts";

/** From one line of fields to the next. */
const step = labelHeight + lineHeight + 3;

/** Places of a line, each with its share. */
type Line = readonly (readonly [Place, number])[];

/** Lines of a section on a sheet that stands, and on one that lies. */
const arranged = {
  stands: {
    order: [
      [["project", 1]],
      [["order", 1]],
      [["contact.name", 1]],
      [["contact.email", 1]],
      [["contact.phone", 1]],
    ],
    address: [
      [["name", 1]],
      [["street", 1]],
      [["city", 1]],
      [
        ["state", 2],
        ["postcode", 3],
      ],
    ],
  },
  lies: {
    order: [
      [["project", 1]],
      [
        ["order", 4],
        ["contact.name", 5],
      ],
      [
        ["contact.email", 5],
        ["contact.phone", 3],
      ],
    ],
    address: [
      [["name", 1]],
      [["street", 1]],
      [
        ["city", 5],
        ["state", 3],
        ["postcode", 6.5],
      ],
    ],
  },
} as const satisfies Readonly<
  Record<
    string,
    { order: readonly Line[]; address: readonly (readonly (readonly [AddressPart, number])[])[] }
  >
>;

function arrangedOn({ page }: Canvas): (typeof arranged)[keyof typeof arranged] {
  return page.getWidth() < page.getHeight() ? arranged.stands : arranged.lies;
}

export function orderHeight({ canvas }: Draft): number {
  return titleHeight + arrangedOn(canvas).order.length * step - 3 + padding;
}

/** Sheets of one letter have from each other what their order says alike. */
const onceIsEnough = "once in a letter is enough";
const either = { size: 7.5, colour: palette.quiet, align: "right" } as const;

/** The last section: what all sheets of an order say alike. The order and the buyer; bill-to; ship-to. */
export function order(draft: Draft, top: number, number: number): void {
  const { canvas } = draft;
  const all = canvas.page.getWidth() - 2 * margin - 2 * gap;
  const share = canvas.page.getWidth() < canvas.page.getHeight() ? 0.33 : 0.31;
  const address = Math.round(all * share);
  const job = { x: margin, y: top, width: all - 2 * address, height: orderHeight(draft) };
  const bill = { ...job, x: job.x + job.width + gap, width: address };
  const ship = { ...bill, x: bill.x + address + gap };

  panel(canvas, job, { number, says: "The order", remark: onceIsEnough });
  for (const [i, places] of arrangedOn(canvas).order.entries()) {
    const area = lineOf(job, i);
    if (places.some(([place]) => place === "contact.phone"))
      write(canvas, "or e-mail", area.x + area.width, area.y + 7, either);
    line(draft, area, places);
  }
  panel(canvas, bill, { says: "Bill to", remark: onceIsEnough });
  addressLines(draft, bill, "bill", "Bill to");
  panel(canvas, ship, { says: "Ship to" });
  same(draft, ship);
  addressLines(draft, ship, "ship", "Ship to");
}

/** The tick that saves typing the ship-to address stands in the panel's title, at the right. */
function same(draft: Draft, panel: Box): void {
  const label = saysOf(draft, "ship.same", "Ship to");
  const says = label === "" ? "" : `${label}, or fill in:`;
  const x = panel.x + panel.width - padding - boxSize - 4 - textWidth(says, 8);
  tick(draft, "ship.same", x, panel.y + 13, says);
}

function addressLines(draft: Draft, panel: Box, whose: "bill" | "ship", heading: string): void {
  for (const [i, parts] of arrangedOn(draft.canvas).address.entries())
    line(
      draft,
      lineOf(panel, i),
      parts.map(([part, share]) => [`${whose}.${part}`, share] as const),
      heading,
    );
}

function lineOf(panel: Box, n: number): Pick<Box, "x" | "y" | "width"> {
  return { x: panel.x + padding, y: panel.y + titleHeight + n * step, width: panel.width - 2 * padding };
}
