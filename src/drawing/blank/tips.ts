import { type Place, rowOf } from "../../trade/place.ts";

/** What a field's tooltip says, which a screen reader reads aloud: its label, and a hint where there is one. */
export function tipOf(label: string, tip: Tip): string {
  return [label, tip.required === true ? "must be filled in" : undefined, hintOf(tip)]
    .filter((part) => part !== undefined)
    .join("; ");
}

interface Tip {
  readonly place: Place | undefined;
  /** The most characters of a legend row. */
  readonly characters?: number | undefined;
  readonly required?: boolean;
}

function hintOf({ place, characters }: Tip): string | undefined {
  return place === undefined ? undefined : rowOf(place).tip?.replace("{characters}", String(characters));
}
