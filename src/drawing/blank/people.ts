import type { AddressPart } from "../../trade/place.ts";
import { textWidth } from "./appearance.ts";
import type { Box } from "./canvas.ts";
import type { Draft } from "./draft.ts";
import { boxSize, labelHeight, line, lineHeight, saysOf, tick } from "./entries.ts";
import { gap, margin, padding, panel, titleHeight } from "./furniture.ts";

/** From one line of fields to the next. */
const step = labelHeight + lineHeight + 3;

/** The first two sections: the buyer and the job; bill-to and ship-to. Returns the height of their lower edge. */
export function people(draft: Draft, top: number): number {
  const { canvas } = draft;
  const height = titleHeight + 4 * step - 3 + padding;
  const all = canvas.page.getWidth() - 2 * margin - 2 * gap;
  const address = Math.round(all * 0.31);
  const job = { x: margin, y: top, width: all - 2 * address, height };
  const bill = { ...job, x: job.x + job.width + gap, width: address };
  const ship = { ...bill, x: bill.x + address + gap };

  panel(canvas, job, {
    number: 1,
    says: "You and the job",
    remark: "e-mail or phone, or both",
  });
  line(draft, lineOf(job, 0), [
    ["contact.name", 3],
    ["contact.phone", 2],
  ]);
  line(draft, lineOf(job, 1), [["contact.email", 1]]);
  line(draft, lineOf(job, 2), [["project", 1]]);
  line(draft, lineOf(job, 3), [
    ["order", 3],
    ["mark", 2],
  ]);

  panel(canvas, bill, { number: 2, says: "Bill to" });
  addressLines(draft, bill, "bill", "Bill to");
  panel(canvas, ship, { says: "Ship to" });
  same(draft, ship);
  addressLines(draft, ship, "ship", "Ship to");
  return top + height;
}

/** The tick that saves typing the ship-to address. It stands at the right of the panel's title. */
function same(draft: Draft, panel: Box): void {
  const says = saysOf(draft, "ship.same", "Ship to");
  const x = panel.x + panel.width - padding - boxSize - 4 - textWidth(says, 8);
  tick(draft, "ship.same", x, panel.y + 13, says);
}

function addressLines(draft: Draft, panel: Box, whose: "bill" | "ship", heading: string): void {
  const part = (name: AddressPart) => `${whose}.${name}` as const;
  line(draft, lineOf(panel, 0), [[part("name"), 1]], heading);
  line(draft, lineOf(panel, 1), [[part("street"), 1]], heading);
  line(draft, lineOf(panel, 2), [[part("city"), 1]], heading);
  line(
    draft,
    lineOf(panel, 3),
    [
      [part("state"), 2],
      [part("postcode"), 3],
    ],
    heading,
  );
}

function lineOf(panel: Box, n: number): Pick<Box, "x" | "y" | "width"> {
  return { x: panel.x + padding, y: panel.y + titleHeight + n * step, width: panel.width - 2 * padding };
}
