import { type Catalogue, mostGangs } from "../../catalogue/catalogue.ts";
import { goesIntoPlate } from "../../orders/standing.ts";
import type { Order, Station } from "../../trade/order.ts";
import type { DeviceSheet, PlateSheet, Sheet } from "../../trade/sheet.ts";

/** What one drawing shows: a plate with what is in it, or a device with its own one-gang plate. */
export interface View {
  readonly mark: string;
  readonly gangs: number;
  /** The sheet that orders the plate: a plate sheet, or that of a device standing alone. */
  readonly plate?: Sheet;
  /** By position, counted from 1; what is still to come is absent. */
  readonly devices: ReadonlyMap<number, DeviceSheet>;
  /** Sheets of the station that have no place in the drawing, and why. */
  readonly undrawn: readonly { readonly sheet: Sheet; readonly why: string }[];
}

/** Every drawing of an order, station by station; devices that nothing ties to a station come last. */
export function viewsOf({ stations, loose }: Order, catalogue: Catalogue): View[] {
  const untied = loose.map((device) => ({ mark: "", plates: [], devices: [device], byNotes: [] }));
  return [...stations, ...untied].flatMap((station) => viewsAt(station, catalogue));
}

function viewsAt({ mark, plates, devices }: Station, catalogue: Catalogue): View[] {
  const alone = devices.filter((device) => !goesIntoPlate(device));
  const fitted = devices.filter(goesIntoPlate);
  return [
    ...(plates.length + fitted.length === 0 ? [] : [plateView(mark, plates, fitted, catalogue)]),
    ...alone.map((device) => ({
      mark,
      gangs: 1,
      plate: device,
      devices: new Map([[1, device]]),
      undrawn: [],
    })),
  ];
}

function plateView(
  mark: string,
  plates: readonly PlateSheet[],
  fitted: readonly DeviceSheet[],
  catalogue: Catalogue,
): View {
  const [plate, ...otherPlates] = plates;
  const made = (gangs = 0): boolean => gangs >= 1 && gangs <= mostGangs(catalogue);
  const said = [plate, ...fitted].flatMap((sheet) => sheet?.gangs ?? []);
  const farthest = Math.max(1, ...fitted.map(({ position = 1 }) => position).filter(made));
  const gangs = said.find(made) ?? farthest;
  const devices = new Map<number, DeviceSheet>();
  for (const device of fitted) {
    const { position = 0 } = device;
    if (position >= 1 && position <= gangs && !devices.has(position)) devices.set(position, device);
  }
  // A device whose position nobody knows is shown in the first place that is free.
  for (const device of fitted.filter(({ position }) => position === undefined)) {
    const free = Array.from({ length: gangs }, (_, i) => i + 1).find((position) => !devices.has(position));
    if (free !== undefined) devices.set(free, device);
  }
  const shown = new Set<Sheet>(devices.values());
  const whyNot = ({ position }: DeviceSheet): string => {
    const there = devices.get(position ?? 0);
    if (there !== undefined) return `position ${position} is taken by ${there.file}`;
    return position === undefined
      ? "no position is left for it"
      : `a plate of ${gangs} has no position ${position}`;
  };
  return {
    mark,
    gangs,
    ...(plate === undefined ? {} : { plate }),
    devices,
    undrawn: [
      ...otherPlates.map((sheet) => ({ sheet, why: `the plate is drawn from ${plate?.file}` })),
      ...fitted.filter((sheet) => !shown.has(sheet)).map((sheet) => ({ sheet, why: whyNot(sheet) })),
    ],
  };
}
