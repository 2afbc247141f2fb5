import { buttonsOf } from "../../catalogue/catalogue.ts";
import type { ChoicePlace } from "../../trade/place.ts";
import { choicesAt, type Makes } from "../choices.ts";
import { isPrompt, same } from "../filled.ts";
import type { OutlinedField } from "./outline.ts";
import { numberIn, wordsOf } from "./words.ts";

/** One thing to choose: the value that the file keeps, and what the buyer reads. */
export interface Offer {
  readonly value: string;
  readonly shown: string;
}

/** All that can be chosen in a field; what says only “choose” is left out. */
export function offersOf(field: OutlinedField, labels: readonly string[]): Offer[] {
  const all =
    field.choices ??
    field.frames.flatMap(({ on }, i) => (on === undefined ? [] : [{ value: on, shown: labels[i] ?? "" }]));
  return all.filter(({ value }) => !isPrompt(value));
}

/** The code that words stand for at a place; undefined where they could be none or several. */
export function standsFor(words: string, place: ChoicePlace, makes: Makes): string | undefined {
  const choices = choicesAt[place].of(makes);
  const exact = choices.find(({ code, name }) => same(code, words) || same(name, words));
  if (exact !== undefined) return exact.code;
  const plain = wordsOf(words);
  if (place === "layout") return layoutIn(plain, makes);
  if (place === "standing") return standingIn(plain);
  const named = choices.filter(
    ({ code, name }) => holds(plain, wordsOf(name)) || (code.length > 1 && holds(plain, wordsOf(code))),
  );
  return named.length === 1 ? named[0]?.code : undefined;
}

function layoutIn(words: string, { layouts }: Makes): string | undefined {
  const count = numberIn(words);
  const fit = layouts.filter((layout) => buttonsOf(layout) === count);
  return fit.length === 1 && /^(?:#? ?)?\w+(?: ?(?:buttons?|keys?|gangs?|b))?$/.test(words)
    ? fit[0]?.code
    : undefined;
}

function standingIn(words: string): string | undefined {
  if (/\b(?:alone|single|standalone|by itself)\b/.test(words)) return "alone";
  return /\bin (?:a |the )?plate\b|\b(?:gangs|ganged|multi|several)\b/.test(words) ? "in-plate" : undefined;
}

function holds(words: string, word: string): boolean {
  return word !== "" && ` ${words} `.includes(` ${word} `);
}
