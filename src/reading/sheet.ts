import type { Catalogue } from "../catalogue/catalogue.ts";
import {
  type ChoicePlace,
  type Entry,
  entries,
  type Held,
  type Parts,
  type PlaceRow,
  places,
  type SheetKind,
} from "../trade/place.ts";
import type { DeviceSheet, PlateSheet, Sheet, Unsure } from "../trade/sheet.ts";
import { type Choices, choicesAt, type Makes, type Stranger } from "./choices.ts";
import type { Edition } from "./edition.ts";
import { type Filled, filledIn, saysNone, saysYes, unmappedIn } from "./filled.ts";
import type { ReadField } from "./form.ts";
import { readLegends, withoutNothings } from "./legends.ts";
import { type Understanding, understand } from "./understand.ts";

/** What is known of the file that a sheet came in. */
export type SheetFile = Pick<Sheet, "id" | "file" | "named" | "list">;

/** The title of the edition that replaces a sheet's own, and the day on which the sheet came: "2026-11-27". */
export interface Outlook {
  readonly newer?: string;
  readonly today?: string;
}

/**
 * Fields of a known form → the sheet. Text is trimmed, except in legends. What is empty is absent, and so is "n/a"
 * where a sheet may leave a place empty. If the form wants a choice or a number and has something else, the place is
 * listed as unread.
 */
export function readSheet(
  fields: readonly ReadField[],
  edition: Edition,
  file: SheetFile,
  catalogue: Catalogue,
  outlook: Outlook = {},
): Sheet {
  const filled = filledIn(fields, edition);
  const form = understand(filled);
  const { legends, prints } = readLegends(filled, edition.form, catalogue);
  const unmapped = unmappedIn(fields, edition);
  const common = {
    ...file,
    edition: editionOf(edition, outlook),
    prints: { ...filled.prints, ...prints },
    // The list grows while the parts are read.
    unread: form.unread,
    unsure: unsureOf(fields, edition),
    doubts: [],
    ...(unmapped.length === 0 ? {} : { unmapped }),
    legends,
  };
  if (edition.form === "plate")
    return withoutNothings({ kind: "plate", ...common, ...readParts("plate", form, catalogue) }, catalogue);
  const parts = readParts("device", form, catalogue);
  const gangs = parts.gangs ?? form.gangsBeside("position");
  const { standing = concluded(filled, parts.position, gangs) } = parts;
  const device: DeviceSheet = {
    kind: "device",
    ...common,
    ...parts,
    ...(gangs === undefined ? {} : { gangs }),
    ...(standing === undefined ? {} : { standing }),
  };
  return withoutNothings(device, catalogue);
}

/** The edition as the sheet has it: in use, leaving, or no longer accepted. */
function editionOf(
  { name, title, replacedBy, acceptedUntil }: Edition,
  { newer, today }: Outlook,
): Sheet["edition"] {
  if (replacedBy === undefined) return { name, title };
  const use = newer ?? replacedBy;
  // Days are written so that their texts compare as days do.
  return acceptedUntil !== undefined && today !== undefined && today <= acceptedUntil
    ? { name, title, accepted: { until: acceptedUntil, use } }
    : { name, title, replacedBy: use };
}

/** Where a device goes if its form does not ask. What only a device in a plate has tells it. */
function concluded(filled: Filled, position?: number, gangs = 1): DeviceSheet["standing"] {
  if (filled.prints.standing !== undefined) return undefined;
  return position !== undefined || gangs > 1 ? "in-plate" : "alone";
}

/** The parts of a sheet that its places fill. */
type Read<S extends Sheet> = Pick<S, keyof S & (keyof Parts<S["kind"]> | "contact" | "billTo" | "shipTo")>;

/** Reads every place that the table has for this kind of sheet, each into its part. */
function readParts(kind: "device", form: Understanding, makes: Makes): Read<DeviceSheet>;
function readParts(kind: "plate", form: Understanding, makes: Makes): Read<PlateSheet>;
function readParts(kind: SheetKind, form: Understanding, makes: Makes): object {
  const parts: Record<string, unknown> = {};
  for (const place of entries) {
    const row: PlaceRow = places[place];
    if (row[kind] === undefined) continue;
    const [part = "", within] = row.part.split(".");
    const into = within === undefined ? parts : ((parts[part] ??= {}) as Record<string, unknown>);
    // "n/a" leaves empty what may be empty.
    const isNone = row[kind] !== "always" && row.holds !== "tick" && saysNone(form.text(place) ?? "");
    const value = isNone ? undefined : readers[places[place].holds](form, place, makes);
    if (value !== undefined) into[within ?? part] = value;
  }
  return parts;
}

/** How each kind of entry is read. A kind without a reader does not compile, nor does a choice without choices. */
const readers: {
  readonly [K in keyof Held]: (form: Understanding, place: Entry, makes: Makes) => Held[K] | undefined;
} = {
  text: (form, place) => form.text(place),
  number: (form, place) => form.number(place),
  position: (form, place) => form.position(place),
  tick: (form, place) => form.marked(place),
  choice: (form, place, makes) => form.choice(place, ...choicesFor(place as ChoicePlace, makes)),
  choices: (form, place, makes) => form.choices(place, ...choicesFor(place as ChoicePlace, makes)),
};

function choicesFor(place: ChoicePlace, makes: Makes): [Choices, Stranger] {
  const { of, stranger } = choicesAt[place];
  return [of(makes), stranger];
}

function unsureOf(fields: readonly ReadField[], edition: Edition): Unsure[] {
  const unsure = new Map(fields.map((field) => [field.name, field.unsure]));
  return edition.fields.flatMap(({ name, place, ticked, label }) => {
    const answers = unsure.get(name);
    if (place === undefined || answers === undefined) return [];
    const [one, other] = [answers.one, answers.other].map(saysYes);
    if (ticked === undefined || one === other) return [{ place, ...answers }];
    // If several boxes make one choice, the one in doubt is told by its label.
    return [{ place, one: one === true ? label : "", other: other === true ? label : "" }];
  });
}
