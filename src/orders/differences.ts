import type { FaceName } from "../trade/legend.ts";
import type { Place } from "../trade/place.ts";
import { addressParts } from "../trade/place.ts";
import type { Sheet } from "../trade/sheet.ts";

/** A place that two sheets fill in differently. */
export interface Difference {
  readonly place: Place;
  /** As typed; "" where nothing stands. */
  readonly was: string;
  readonly now: string;
}

/** Where two sheets of one kind say different things, in the order in which forms print it. */
export function differencesOf(old: Sheet, now: Sheet): Difference[] {
  const [was, is] = [saidBy(old), saidBy(now)];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((place) => {
    const [before, after] = [was.get(place) ?? "", is.get(place) ?? ""];
    return before === after ? [] : [{ place, was: before, now: after }];
  });
}

/** What stands in each place of a sheet; places with nothing in them are absent. */
function saidBy(sheet: Sheet): Map<Place, string> {
  const { contact, billTo, shipTo } = sheet;
  const all: [Place, string | number | undefined][] = [
    ["order", sheet.order],
    ["project", sheet.project],
    ["mark", sheet.mark],
    ["contact.name", contact.name],
    ["contact.email", contact.email],
    ["contact.phone", contact.phone],
    ...addressParts.map((part): [Place, string | undefined] => [`bill.${part}`, billTo[part]]),
    ["ship.same", sheet.shipSame ? "yes" : undefined],
    ...addressParts.map((part): [Place, string | undefined] => [`ship.${part}`, shipTo[part]]),
    ...(sheet.kind === "device"
      ? ([
          ["standing", sheet.standing],
          ["position", sheet.position],
          ["layout", sheet.layouts.join(" + ")],
          ["legend-place", sheet.legendPlace],
        ] as [Place, string | number | undefined][])
      : []),
    ["gangs", sheet.gangs],
    ["finish", sheet.finish],
    ["lettering", sheet.lettering],
    ["part-key", sheet.partKey],
    ...sheet.legends.flatMap(({ face, rows, plain }) => [
      ...rows.map((text, i): [Place, string] => [rowPlace(face, i + 1), text]),
      [`plain.${face}`, plain ? "yes" : undefined] as [Place, string | undefined],
    ]),
    ["notes", sheet.notes],
  ];
  return new Map(
    all.flatMap(([place, typed]): [Place, string][] =>
      typed === undefined || String(typed).trim() === "" ? [] : [[place, String(typed)]],
    ),
  );
}

function rowPlace(face: FaceName, row: number): Place {
  return `row.${face}.${row}`;
}
