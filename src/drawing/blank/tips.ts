import type { Place } from "../../trade/place.ts";

const everySheet = "the same on every sheet of the order";
const hints: Partial<Record<Place, string>> = {
  "contact.email": "we need an e-mail address or a phone number",
  "contact.phone": "we need an e-mail address or a phone number",
  project: everySheet,
  order: everySheet,
  mark: "the place on the wall, such as S-104; it ties a plate sheet and its device sheets together",
  "bill.state": "two letters, such as IL",
  "ship.state": "two letters, such as IL",
  "ship.same": "tick it instead of filling in the ship-to address",
  position: "which opening of the plate, counted from the left",
  gangs: "how many openings the plate has",
  "part-key": "only if you know it; it must match what is chosen here",
  notes: "read by a person; words written here are not engraved",
  edition: "which printed version of this sheet it is",
};

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
  if (place === undefined) return undefined;
  if (characters !== undefined) return `${characters} characters at most, cut exactly as typed`;
  if (place.startsWith("plain.")) return "tick it if nothing is to be engraved on this face";
  return hints[place];
}
