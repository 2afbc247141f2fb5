import type { ChoicePlace, Place, SheetKind } from "../../trade/place.ts";
import { rowOf } from "../../trade/place.ts";
import { choicesAt, type Makes } from "../choices.ts";
import { type Around, aroundFields } from "./around.ts";
import { type Block, blockIn, isPlain, legendIn, meaningOf, rowAt } from "./meanings.ts";
import type { FormOutline, OutlinedField } from "./outline.ts";
import { type Offer, offersOf, standsFor } from "./stands.ts";
import { commonHead, headOf, wordsOf } from "./words.ts";

/** What a field may mean, and what says so. Without a place nothing tells what it means. */
export interface Guess {
  readonly field: OutlinedField;
  readonly label: string;
  readonly place?: Place;
  readonly why?: string;
  /** What a tick stands for, if the field is one box of several. */
  readonly ticked?: string;
  /** What the form's own values stand for; undefined where nothing tells. */
  readonly values?: readonly (readonly [value: string, code: string | undefined])[];
  /** The field that has taken the place already. */
  readonly taken?: { readonly place: Place; readonly by: string };
}

/** What the fields of a form may mean, if it is a sheet of this kind. */
export interface Guesses {
  readonly form: SheetKind;
  readonly guesses: readonly Guess[];
}

/** Guesses what each field means, by its tip, by the words beside it and by its name. */
export function guessForm(outline: FormOutline, makes: Makes): Guesses {
  const around = aroundFields(outline);
  const device = guessAs("device", outline, around, makes);
  const plate = guessAs("plate", outline, around, makes);
  const placed = ({ guesses }: Guesses): number => guesses.filter(({ place }) => place !== undefined).length;
  // Only a device has a layout or a position. A plate sheet may have everything else that a device sheet has.
  const isDevice = device.guesses.some(({ place }) => place === "layout" || place === "position");
  return placed(plate) > placed(device) || (!isDevice && placed(plate) === placed(device)) ? plate : device;
}

function guessAs(
  form: SheetKind,
  outline: FormOutline,
  around: ReadonlyMap<string, Around>,
  makes: Makes,
): Guesses {
  const taken = new Map<string, string>();
  const guesses = new Map<string, Guess>();
  const all = outline.fields.map((field) => ({ field, near: around.get(field.name) ?? nowhere }));
  let block: Block | undefined;
  for (const { field, near } of all) {
    const context = { form, makes, block, guesses };
    const guess = guessField(field, near, context, taken);
    guesses.set(field.name, guess);
    if (guess.place !== undefined) {
      taken.set(key(guess.place, guess.ticked), field.name);
      block = /^(bill|ship)\./.exec(guess.place)?.[1] as Block | undefined;
    }
  }
  // A “leave plain” beside a legend is told by that legend, whichever comes first.
  for (const { field, near } of all) {
    const legend = near.neighbour === undefined ? undefined : guesses.get(near.neighbour);
    const face = /^row\.(\w+)\./.exec(legend?.place ?? "")?.[1];
    const own = guesses.get(field.name);
    const place = `plain.${face}` as Place;
    if (face === undefined || own === undefined || own.place !== undefined || taken.has(place)) continue;
    if (!isPlain(wordsOf(own.label)) && !isPlain(wordsOf(near.label ?? ""))) continue;
    taken.set(place, field.name);
    guesses.set(field.name, { ...own, place, why: `it stands beside ${legend?.field.name}` });
  }
  return { form, guesses: all.map(({ field }) => guesses.get(field.name) as Guess) };
}

const nowhere: Around = { labels: [], heads: "", headings: [] };

interface Context {
  readonly form: SheetKind;
  readonly makes: Makes;
  /** The address to which the field before belongs. */
  readonly block: Block | undefined;
  readonly guesses: ReadonlyMap<string, Guess>;
}

/** Something that a field says of itself. */
interface Hint {
  readonly text: string;
  readonly why: string;
  readonly place: Place | undefined;
}

function guessField(
  field: OutlinedField,
  near: Around,
  context: Context,
  taken: ReadonlyMap<string, string>,
): Guess {
  const label = labelOf(field, near);
  const offers = offersOf(field, near.labels);
  let lost: Guess["taken"];
  for (const { place, why } of hintsOf(field, near, context, offers)) {
    if (place === undefined || rowOf(place)[context.form] === undefined) continue;
    const meaning = takes(field, place, near, offers, context.makes);
    if (meaning === undefined) continue;
    const by =
      taken.get(key(place, meaning.ticked)) ?? (meaning.ticked === undefined ? undefined : taken.get(place));
    if (by === undefined) return { field, label, place, why, ...meaning };
    lost ??= { place, by };
  }
  return { field, label, ...(lost === undefined ? {} : { taken: lost }) };
}

function key(place: Place, ticked: string | undefined): string {
  return ticked === undefined ? place : `${place}=${ticked}`;
}

/** What tells the meaning of a field, the best first. */
function* hintsOf(
  field: OutlinedField,
  near: Around,
  context: Context,
  offers: readonly Offer[],
): Iterable<Hint> {
  const tip = headOf(tipOf(field));
  const name = wordsOf(field.name);
  const headings = near.headings.map((text) => blockIn(wordsOf(text)));
  const own = blockIn(name) ?? headings.find((one) => one !== undefined) ?? context.block;
  const hint = (text: string | undefined, says: string, around = own): Hint => ({
    text: text ?? "",
    why: `${says} “${text ?? ""}”`,
    place: text === undefined ? undefined : meaningOf(wordsOf(text), { around, ...context }),
  });
  yield hint(tip === "" ? undefined : tip, "its tip says");
  const isBox = field.kind === "tick" && field.frames.length === 1;
  if (!isBox)
    yield choiceHint(
      offers.flatMap(({ value, shown }) => [value, shown]),
      field,
      context,
    );
  yield hint(near.label, "its label says");
  if (isBox) yield boxHint(near.label ?? "", context);
  // All columns of a page have something above them, so heads tell of nothing but legends.
  yield {
    text: near.heads,
    why: `row and column say “${near.heads}”`,
    place: legendIn(wordsOf(near.heads), context.form, context.makes),
  };
  yield hint(field.name, "its name is");
  yield nextRow(field, near, context);
}

/** A choice is told by what can be chosen. */
function choiceHint(words: readonly string[], { kind }: OutlinedField, { makes }: Context): Hint {
  const [best, next] = choicePlaces
    .map((place) => ({ place, known: words.filter((word) => knows(word, place, makes)) }))
    .toSorted((a, b) => b.known.length - a.known.length);
  const isTold =
    kind !== "text" &&
    best !== undefined &&
    best.known.length >= 2 &&
    best.known.length * 3 >= words.length &&
    best.known.length > (next?.known.length ?? 0);
  if (!isTold) return noHint;
  const some = [...new Set(best.known)].slice(0, 2).join("”, “");
  return { text: "", why: `one can choose “${some}” in it`, place: best.place };
}

/** A box whose label is one of the choices of one place. */
function boxHint(label: string, { makes }: Context): Hint {
  const [place, other] = choicePlaces.filter((one) => knows(label, one, makes));
  if (place === undefined || other !== undefined) return noHint;
  return { text: "", why: `its label says “${label}”`, place };
}

const choicePlaces = Object.keys(choicesAt) as ChoicePlace[];
const noHint: Hint = { text: "", why: "", place: undefined };

/** Whether a choice of a place is meant, by more than a number that may count anything. */
function knows(words: string, place: ChoicePlace, makes: Makes): boolean {
  return /\p{L}/u.test(words) && standsFor(words, place, makes) !== undefined;
}

/** A row without a label follows the one above it. A face is often told by its number alone. */
function nextRow(field: OutlinedField, near: Around, { form, makes, guesses }: Context): Hint {
  const above = near.continues === undefined ? undefined : guesses.get(near.continues);
  const [, face, row] = /^row\.(\w+)\.(\d+)$/.exec(above?.place ?? "") ?? [];
  if (face !== undefined)
    return {
      text: "",
      why: `it stands below ${above?.field.name}`,
      place: rowAt(face, Number(row) + 1, form, makes),
    };
  const number = field.kind === "text" ? near.number?.replace(".", "") : undefined;
  if (number === undefined) return noHint;
  return { text: "", why: `“${number}” stands beside it`, place: rowAt(number, 1, form, makes) };
}

/** What else an edition has to say of a field at a place; undefined where a field of its kind cannot fill it. */
function takes(
  field: OutlinedField,
  place: Place,
  near: Around,
  offers: readonly Offer[],
  makes: Makes,
): Pick<Guess, "ticked" | "values"> | undefined {
  const { holds } = rowOf(place);
  const isBox = field.kind === "tick" && field.frames.length === 1;
  if (holds === "tick" || holds === "plain") return isBox ? {} : undefined;
  if (holds !== "choice" && holds !== "choices") return isBox ? undefined : {};
  const at = place as ChoicePlace;
  if (isBox) {
    const ticked = [near.label, field.frames[0]?.tip, field.frames[0]?.on, field.name]
      .map((words) => (words === undefined ? undefined : standsFor(words, at, makes)))
      .find((code) => code !== undefined);
    return ticked === undefined ? undefined : { ticked };
  }
  const choices = choicesAt[at].of(makes);
  const isKnown = (value: string): boolean =>
    choices.some(({ code, name }) =>
      [code, name].some((one) => one.toLowerCase() === value.trim().toLowerCase()),
    );
  const values = offers
    .filter(({ value }) => !isKnown(value))
    .map(({ value, shown }): readonly [string, string | undefined] => [
      value,
      standsFor(shown, at, makes) ?? standsFor(value, at, makes),
    ]);
  return values.length === 0 ? {} : { values };
}

function tipOf({ frames }: OutlinedField): string {
  const tips = frames.flatMap(({ tip }) => tip ?? []);
  return commonHead(tips);
}

/** A label may be so long. */
const longest = 60;

/** How answers are to name the field: as the page does, or its tip. */
function labelOf(field: OutlinedField, near: Around): string {
  const tip = headOf(tipOf(field));
  const all = [tip, near.label ?? "", field.name].map((text) => text.replace(/[\s:*]+$/, ""));
  return all.find((text) => /\p{L}/u.test(text) && text.length <= longest) ?? field.name.slice(0, longest);
}
