import type { Catalogue } from "../catalogue/catalogue.ts";
import type { ChoicePlace } from "../trade/place.ts";
import { standings } from "../trade/sheet.ts";
import { same } from "./filled.ts";

/** The part of the catalogue that editions and forms are read by. */
export type Makes = Pick<Catalogue, "device" | "layouts" | "plate" | "finishes" | "lettering">;

/** What can be chosen at a place: how the trade codes it, and what people call it. */
export type Choices = readonly Choice[];
interface Choice {
  readonly code: string;
  readonly name: string;
  /** Other words for it. */
  readonly also?: readonly string[];
}

/**
 * What becomes of a value that is none of the choices: it counts as unread, or it is kept as typed and judged later.
 */
export type Stranger = "unread" | "kept";

/** What may be chosen at each place. */
export const choicesAt = {
  standing: { of: () => standings, stranger: "unread" },
  layout: { of: ({ layouts }) => layouts, stranger: "unread" },
  "legend-place": {
    of: ({ layouts }) =>
      [...new Set(layouts.flatMap((layout) => layout.legend_places ?? []))].map((name) => ({
        code: name,
        name,
      })),
    stranger: "unread",
  },
  finish: { of: ({ finishes }) => finishes, stranger: "kept" },
  lettering: { of: ({ lettering }) => lettering, stranger: "kept" },
} as const satisfies Readonly<
  Record<ChoicePlace, { readonly of: (makes: Makes) => Choices; readonly stranger: Stranger }>
>;

/**
 * The choice that was typed: its code or its name, both of them, or either with a word for what is chosen, such as
 * "Oat (OAT)" and "4-button". Undefined if anything else is typed, or if it may be another choice as well.
 */
export function choiceOf(typed: string, known: Choices): Choice | undefined {
  const exact = known.find((one) => namesOf(one).some((name) => same(name, typed)));
  if (exact !== undefined) return exact;
  const said = wordsOf(typed);
  const [found, ...others] = known.filter((one) => {
    const names = namesOf(one).map(wordsOf);
    const own = new Set([...names.flat(), ...fillers]);
    return (
      said.every((word) => own.has(word)) && names.some((name) => name.every((word) => said.includes(word)))
    );
  });
  return others.length === 0 ? found : undefined;
}

function namesOf({ code, name, also = [] }: Choice): readonly string[] {
  return [code, name, ...also];
}

/** What stands beside a choice and says no more than what is chosen. */
const fillers = ["finish", "color", "colour", "lettering", "layout"];
const numbers = ["", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/** Words in small letters. A number is a figure, and buttons are told by one word. */
function wordsOf(text: string): string[] {
  const words = text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
  return words.map((word) => {
    if (/^(?:buttons|btns?)$/.test(word)) return "button";
    const number = numbers.indexOf(word);
    return number > 0 ? String(number) : word;
  });
}
