import { type ChoicePlace, type Place, rowOf, type SheetKind } from "../trade/place.ts";
import { choicesAt, type Makes } from "./choices.ts";
import { same } from "./filled.ts";
import { fillHole, holes, holesOf } from "./holes.ts";
import { positionWords } from "./understand.ts";

/** One field as an edition writes it. */
export interface WrittenField {
  readonly means: string;
  readonly label: string;
  readonly values?: Readonly<Record<string, string>> | undefined;
  readonly ticked?: string | undefined;
  readonly prints?: string | undefined;
}

/** Something wrong in an edition: keys down to it, and what it is. */
export type Wrong = readonly [path: readonly string[], what: string];

type Fields = readonly (readonly [name: string, field: WrittenField])[];

/** What is wrong with the fields of an edition. They are held against the places of a sheet and the catalogue. */
export function* faultsOfFields(fields: Fields, form: SheetKind, makes: Makes): Iterable<Wrong> {
  for (const [name, field] of fields) {
    yield* wrongHoles(name, field);
    if (field.means === "nothing") continue;
    const row = rowOf(field.means as Place);
    if (row[form] === undefined || (form === "plate" && /\.plate\b/.test(field.means)))
      yield [["fields", name, "means"], `a ${form} sheet has no such place`];
    else yield* wrongValues(name, field, makes);
  }
  yield* doubled(fields, form, makes);
}

/** What is wrong with a field with holes. It stands for many fields, and what one of them lacks they all lack. */
function* wrongHoles(name: string, { means, label, prints = "" }: WrittenField): Iterable<Wrong> {
  const path = ["fields", name];
  const within = means === "nothing" ? name : means;
  for (const [key, text] of Object.entries({ name, label, prints })) {
    const at = key === "name" ? path : [...path, key];
    for (const [mistyped] of text.matchAll(/\{(?:faces?|rows?)\}/gi))
      if (!holes.some((hole) => hole === mistyped))
        yield [at, `${mistyped} is no hole; there are {face} and {row}`];
    for (const hole of holes)
      if (text.includes(hole) && !within.includes(hole))
        yield [at, `${hole} stands here, but not in what the field means`];
  }
  for (const hole of holes)
    if (within.includes(hole) && !name.includes(hole))
      yield [[...path, "means"], `${hole} stands here, but not in the field's name`];
}

/** Values and ticks that stand for something that is not read at the place. */
function* wrongValues(name: string, field: WrittenField, makes: Makes): Iterable<Wrong> {
  const { means, values = {}, ticked } = field;
  const wrong = wrongAt(means as Place, makes);
  const said: Wrong[] = [
    ...Object.entries(values).map(([value, stands]): Wrong => [["values", value], stands]),
    ...(ticked === undefined ? [] : [[["ticked"], ticked] as const]),
  ];
  for (const [path, stands] of said) {
    const what = wrong(stands);
    if (what !== undefined) yield [["fields", name, ...path], what];
  }
}

/** Tells what is wrong with what a value stands for, if it cannot be read at a place. */
function wrongAt(place: Place, makes: Makes): (means: string) => string | undefined {
  const { holds, label } = rowOf(place);
  if (holds === "tick" || holds === "plain") return () => undefined;
  if (holds === "number") return (means) => (/^\d{1,3}$/.test(means) ? undefined : `“${means}” is no number`);
  if (holds === "position")
    return (means) => (positionWords.test(means) ? undefined : `“${means}” is no position`);
  if (holds !== "choice" && holds !== "choices")
    return () => "nothing reads this: at this place one types freely";
  const choices = choicesAt[place as ChoicePlace].of(makes);
  const codes = choices.map(({ code }) => code).join(", ");
  return (means) =>
    choices.some(({ code, name }) => same(code, means) || same(name, means))
      ? undefined
      : `“${label}” cannot be “${means}”; there are ${codes}`;
}

/** Two fields of one name, and two for one place, unless they are boxes that make one choice. */
function* doubled(fields: Fields, form: SheetKind, makes: Makes): Iterable<Wrong> {
  const whole = new Map(fields.map(([name, { means, ticked }]) => [ticked === undefined ? means : "", name]));
  const claims = new Map<string, string>();
  for (const [name, { means, ticked }] of fields) {
    const claimed = holesOf(name, means, form, makes).flatMap((hole) => [
      `makes the field ${fillHole(name, hole)} too`,
      ...(means === "nothing" ? [] : [`fills ${fillHole(means, hole)}${stands(ticked)} too`]),
    ]);
    const twice = claimed.find((claim) => claims.has(claim));
    const other = ticked === undefined || means === "nothing" ? undefined : whole.get(means);
    if (twice !== undefined) yield [["fields", name], `${claims.get(twice)} ${twice}`];
    else if (other !== undefined) yield [["fields", name], `${other} fills ${means} too, and is no box`];
    for (const claim of claimed) claims.set(claim, claims.get(claim) ?? name);
  }
}

function stands(ticked: string | undefined): string {
  return ticked === undefined ? "" : ` with ${ticked.trim().toUpperCase()}`;
}
