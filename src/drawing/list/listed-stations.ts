import { type Catalogue, mostGangs } from "../../catalogue/catalogue.ts";
import { plainText } from "../../orders/keys.ts";
import type { ListField } from "../../reading/list/list-form.ts";
import type { ListedDevice, Said, StationList } from "../../reading/list/read-list.ts";
import type { Place } from "../../trade/place.ts";

/** A device of a list with what its station says of it. */
export interface Placed {
  readonly device: ListedDevice;
  readonly mark: string;
  readonly inPlate: boolean;
  /** The gangs that its row gives, or else those that the first row of its station with any gives. */
  readonly gangs: Said;
  /** The opening of the plate whose legend it brings. */
  readonly opening?: number;
}

/** What a column says that is not there. */
export const nothing: Said = { text: "", at: "" };

/** A formula may have nothing kept that it comes to, and shows something all the same. */
export function isEmpty({ text, odd }: Said): boolean {
  return text.trim() === "" && odd === undefined;
}

/** What a row says for a place. */
export function saidIn(
  said: ReadonlyMap<ListField, Said>,
  place: Place,
  on: ListField["on"] = "device",
): Said {
  return [...said].find(([field]) => field.on === on && field.place === place)?.[1] ?? nothing;
}

/** What a row says for a place, or else what the head says for every device. */
export function saidOrUsual({ said }: ListedDevice, place: Place, { head }: StationList): Said {
  const [own, usual] = [saidIn(said, place), saidIn(head, place)];
  return isEmpty(own) && !isEmpty(usual) ? usual : own;
}

/**
 * The devices of a list by station. Several devices of one mark go into a plate, as does one with a position or with
 * more gangs than one. A device without a mark is a station of its own.
 */
export function stationsIn({ devices }: StationList, catalogue: Catalogue): Placed[][] {
  const markOf = ({ said }: ListedDevice): string => saidIn(said, "mark").text.trim();
  const byMark = Map.groupBy(devices, (device) => plainText(markOf(device)) || `row ${device.row}`);
  return [...byMark.values()].map((members) => {
    const usual = members.map(({ said }) => saidIn(said, "gangs")).find((said) => !isEmpty(said)) ?? nothing;
    const inPlate =
      members.length > 1 ||
      (!isEmpty(usual) && (usual.odd !== undefined || usual.text.trim() !== "1")) ||
      members.some(({ said }) => !isEmpty(saidIn(said, "position")));
    const taken = new Set<number>();
    return members.map((device): Placed => {
      const [own, position] = [saidIn(device.said, "gangs"), saidIn(device.said, "position").text.trim()];
      const opening = /^\d{1,3}$/.test(position) ? Number(position) : 0;
      const isFree = inPlate && opening > 0 && opening <= mostGangs(catalogue) && !taken.has(opening);
      if (isFree) taken.add(opening);
      return {
        device,
        mark: markOf(device),
        inPlate,
        gangs: isEmpty(own) && !isEmpty(usual) ? usual : own,
        ...(isFree && markOf(device) !== "" ? { opening } : {}),
      };
    });
  });
}
