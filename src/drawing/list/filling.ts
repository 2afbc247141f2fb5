import { type Catalogue, mostGangs } from "../../catalogue/catalogue.ts";
import { type Choices, choiceOf, choicesAt } from "../../reading/choices.ts";
import type { Edition, EditionField } from "../../reading/edition.ts";
import { same } from "../../reading/filled.ts";
import type { Oddity } from "../../reading/list/list-facts.ts";
import type { Said } from "../../reading/list/read-list.ts";
import { type ChoicePlace, type Entry, type Place, places } from "../../trade/place.ts";
import type { ListOrigin, Unread } from "../../trade/sheet.ts";
import { choicesOf } from "../blank/choices.ts";

/** Why a cell cannot be taken as it stands, as an end of “It wants”. */
const wantsBy = {
  formula: "what it comes to, typed: a formula is not read",
  "shown-otherwise":
    "text: its cell has a format of numbers or dates, so that it shows something else than it holds. Give the cell the format Text and type it anew",
  remade:
    "what was typed: a spreadsheet seems to have made a date or a number of it. Give the cell the format Text and type it anew",
  struck: "text that is not struck out",
  unseen: "text that can be seen",
} as const satisfies Record<Oddity, string>;

/** A sheet while it is filled in from a list. */
export interface Filling {
  /** Types what a cell says; what cannot stand there is left out and listed. */
  readonly put: (place: Place, said: Said) => void;
  /** Ticks a box on account of a cell. False if the edition has no such box. */
  readonly tick: (place: Place, said: Said) => boolean;
  /** Lists what a cell says as something that the sheet cannot say. */
  readonly refuse: (place: Place, said: Said, wants: string) => void;
  readonly done: (row: number) => {
    readonly values: Readonly<Record<string, string | boolean>>;
    readonly list: Omit<ListOrigin, "file">;
  };
}

/** Begins to fill in a sheet of an edition. */
export function startFilling(edition: Edition, catalogue: Catalogue): Filling {
  const values: Record<string, string | boolean> = {};
  const cells: { [P in Place]?: string } = {};
  const unread: Unread[] = [];
  const refuse: Filling["refuse"] = (place, said, wants) => {
    if (said.at !== "") cells[place] = said.at;
    unread.push({ place, typed: said.text, wants: said.odd === undefined ? wants : wantsBy[said.odd] });
  };
  const put: Filling["put"] = (place, said) => {
    const fields = edition.fields.filter((field) => field.place === place);
    if (fields.length === 0) {
      if (said.text.trim() !== "") throw new Error(`the edition ${edition.name} has no field for ${place}`);
      return;
    }
    if (said.at !== "") cells[place] = said.at;
    if (said.text.trim() === "" && said.odd === undefined) return;
    const taken = taking(said.text, place, fields, edition, catalogue);
    // In notes a date is a date.
    const isPlain = said.odd === undefined || (said.odd === "remade" && place === "notes");
    if (isPlain && "field" in taken) values[taken.field.name] = taken.value;
    else refuse(place, said, "wants" in taken ? taken.wants : "");
  };
  return {
    put,
    refuse,
    tick: (place, said) => {
      const field = edition.fields.find((one) => one.place === place);
      if (field === undefined) return false;
      values[field.name] = true;
      cells[place] = said.at;
      return true;
    },
    done: (row) => ({ values, list: { row, cells, unread } }),
  };
}

type Taking = { readonly field: EditionField; readonly value: string | boolean } | { readonly wants: string };

/** What is typed into which field of a place, or what the place wants instead. */
function taking(
  text: string,
  place: Place,
  fields: readonly EditionField[],
  edition: Edition,
  catalogue: Catalogue,
): Taking {
  const [field] = fields;
  if (field === undefined) return { wants: "" };
  if (place.startsWith("row."))
    return /[\r\n]/.test(text) ? { wants: "one row of the legend in a cell" } : { field, value: text };
  const typed = text.trim();
  const { holds } = places[place as Entry];
  if (holds === "text")
    return { field, value: place === "notes" ? typed : typed.replaceAll(/\s*[\r\n]+\s*/g, " ") };
  if (holds === "tick") return ticking(field, typed);
  const known: Choices = place in choicesAt ? choicesAt[place as ChoicePlace].of(catalogue) : [];
  const code = choiceOf(typed, known)?.code ?? digitsOf(typed);
  const ticked = fields.find((one) => one.ticked === code);
  if (ticked !== undefined) return { field: ticked, value: true };
  const own = Object.entries(field.values).find(
    ([word, means]) => same(word, typed) || same(means, code),
  )?.[0];
  if (own !== undefined) return { field, value: own };
  const name = known.find((one) => one.code === code)?.name ?? code;
  const words = choicesOf(field, edition, catalogue);
  const chosen =
    words === undefined ? known.find((one) => one.code === code)?.code : words.find((one) => same(one, name));
  if (chosen !== undefined) return { field, value: chosen };
  if (words === undefined && known.length === 0) return { field, value: typed };
  return { wants: wanted(words ?? known.map((one) => one.name), place, catalogue) };
}

function wanted(words: readonly string[], place: Place, catalogue: Catalogue): string {
  if (place === "gangs") return `a number from 2 to ${mostGangs(catalogue)}`;
  if (place === "position") return "a number such as 2";
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
}

/** "4 gangs" is 4. */
function digitsOf(typed: string): string {
  return /^0*(\d{1,3})(?:[\s-]*gangs?)?$/i.exec(typed)?.[1] ?? typed;
}

function ticking(field: EditionField, typed: string): Taking {
  if (/^(?:yes|y|x|true|✓|✔)$/i.test(typed)) return { field, value: true };
  return /^(?:no|n|false|-)$/i.test(typed) ? { field, value: false } : { wants: "yes or no" };
}
