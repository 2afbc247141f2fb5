import { isPlaceholder } from "../orders/placeholder.ts";
import { regionOf, regionsOfPostcode } from "../orders/regions.ts";
import { type AddressPart, addressParts } from "../trade/place.ts";
import type { Address, Sheet } from "../trade/sheet.ts";
import { isMissing } from "./required.ts";

/** The parts of an address that no other check stops: without placeholders, nor a postal code and a state that disagree. */
export function soundParts(address: Address): Address {
  const { state, postcode } = address;
  const isAstray =
    postcode !== undefined && !regionsOfPostcode(postcode).includes(regionOf(state ?? "") ?? "");
  const isSound = (part: AddressPart): boolean =>
    !isPlaceholder(address[part] ?? "") && !(isAstray && (part === "postcode" || part === "state"));
  return Object.fromEntries(
    addressParts.flatMap((part) =>
      address[part] !== undefined && isSound(part) ? [[part, address[part]]] : [],
    ),
  );
}

/** Where a sheet's goods go, as far as that is clear; an address begun and not finished, or said twice, says nothing. */
export function shippedTo(sheet: Sheet): Address {
  const { shipTo, billTo, shipSame } = sheet;
  const isBegun = addressParts.some((part) => shipTo[part] !== undefined);
  if (shipSame) return isBegun ? {} : soundParts(billTo);
  const isHalf = addressParts.some(
    (part) => isMissing(sheet, `ship.${part}`) || isPlaceholder(shipTo[part] ?? "x."),
  );
  return isHalf ? {} : soundParts(shipTo);
}
