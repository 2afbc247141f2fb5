import { legend } from "../../src/checks/sample.ts";
import { viewsOf } from "../../src/drawing/proof/view.ts";
import { proofSvgs } from "../../src/drawing/proof.ts";
import { gatherOrders } from "../../src/orders/gather.ts";
import type { Order } from "../../src/trade/order.ts";
import type { DeviceSheet, Sheet } from "../../src/trade/sheet.ts";
import { catalogue } from "../make/config.ts";
import { aloneDevice, deviceAt, plate } from "../make/sample.ts";

/** The order that sheets make; there must be no more than one. */
export function orderOf(...sheets: readonly Sheet[]): Order {
  const [order, ...more] = gatherOrders(sheets);
  if (order === undefined || more.length > 0) throw new Error("these sheets are not one order");
  return order;
}

/** The only drawing of these sheets, and the pages of its list behind it. */
export function drawingOf(...sheets: readonly Sheet[]): string {
  const order = orderOf(...sheets);
  if (viewsOf(order, catalogue).length !== 1) throw new Error("these sheets do not make one drawing");
  return proofSvgs(order, catalogue).join("");
}

export const words = {
  D1: { "1": ["LOBBY", "EAST"] },
  D2: { "1": ["WINDOWS", ""], "2": ["ALL", "OFF"] },
  D4: { "1": ["ENTRY", ""], "2": ["STACKS", "EAST"], "3": ["CAFÉ", ""], "4": ["ALL OFF", ""] },
  D6: {
    "1": ["ASSEMBLY", ""],
    "2": ["BATHROOM", ""],
    "3": ["SPEECH", "LOW"],
    "4": ["A", ""],
    "5": ["(&/#)", ""],
    "6": ["ALL", "OFF"],
  },
} as const;
export const layouts = Object.keys(words) as (keyof typeof words)[];

/** A device standing alone, in a light finish with dark lettering, with legends that suit its layout. */
export function alone(layout: keyof typeof words, legendPlace = "middle"): DeviceSheet {
  return aloneDevice({
    finish: "CHK",
    lettering: "INK",
    layouts: [layout],
    legends: [
      ...Object.entries(words[layout]).map(([face, rows]) => legend(face as "1", ...rows)),
      legend("plate", "STAFF ROOM", "LEVEL 2"),
    ],
    legendPlace,
  });
}

/** A plate of so many gangs with all its devices. */
export function station(gangs: number): Sheet[] {
  const faces = Array.from({ length: gangs }, (_, i) =>
    legend(`${i + 1}`, "FOYER", i % 2 === 0 ? "" : "NORTH"),
  );
  return [
    plate({ gangs, legends: faces }),
    ...faces.map((_, i) => deviceAt(i + 1, { gangs, layouts: [layouts[i % layouts.length] ?? "D4"] })),
  ];
}
