import type { Catalogue } from "../catalogue/catalogue.ts";
import { addressParts } from "../trade/place.ts";
import {
  type Address,
  type DeviceSheet,
  type PlateSheet,
  type Sheet,
  standings,
  type Unsure,
} from "../trade/sheet.ts";
import type { Edition } from "./edition.ts";
import { type Filled, filledIn, saysYes } from "./filled.ts";
import type { ReadField } from "./form.ts";
import { readLegends } from "./legends.ts";
import { type Understanding, understand } from "./understand.ts";

/** What is known of the file that a sheet came in. */
export type SheetFile = Pick<Sheet, "id" | "file" | "named">;

/**
 * Fields of a form that is known → the sheet. Text is trimmed but for legends; what is empty is absent.
 * Where the form wants a choice or a number and has something else, the place is listed as unread. `newer`
 * is the title of the edition to use instead, if it is known.
 */
export function readSheet(
  fields: readonly ReadField[],
  edition: Edition,
  file: SheetFile,
  catalogue: Catalogue,
  newer?: string,
): Sheet {
  const filled = filledIn(fields, edition);
  const form = understand(filled);
  const { legends, prints } = readLegends(filled, edition.form, catalogue);
  const { name, title, replacedBy } = edition;
  const sheet: PlateSheet = {
    kind: "plate",
    ...file,
    edition: { name, title, ...optional("replacedBy", newer ?? replacedBy) },
    prints: { ...filled.prints, ...prints },
    unread: form.unread,
    unsure: unsureOf(fields, edition),
    doubts: [],
    contact: {
      ...optional("name", form.text("contact.name")),
      ...optional("email", form.text("contact.email")),
      ...optional("phone", form.text("contact.phone")),
    },
    billTo: addressOf(form, "bill"),
    shipTo: addressOf(form, "ship"),
    shipSame: form.marked("ship.same"),
    ...optional("project", form.text("project")),
    ...optional("order", form.text("order")),
    ...optional("mark", form.text("mark")),
    ...optional("gangs", form.number("gangs")),
    ...optional("finish", form.choice("finish", catalogue.finishes, "kept")),
    ...optional("lettering", form.choice("lettering", catalogue.lettering, "kept")),
    ...optional("partKey", form.text("part-key")),
    legends,
    ...optional("notes", form.text("notes")),
  };
  return edition.form === "plate" ? sheet : asDevice(sheet, filled, form, catalogue);
}

function asDevice(sheet: PlateSheet, filled: Filled, form: Understanding, catalogue: Catalogue): DeviceSheet {
  const where = form.position("position");
  const gangs = sheet.gangs ?? where.gangs;
  const legendPlaces = new Set(catalogue.layouts.flatMap((layout) => layout.legend_places ?? []));
  return {
    ...sheet,
    kind: "device",
    ...optional("gangs", gangs),
    ...optional("position", where.position),
    ...optional("standing", standingOf(filled, form, where.position, gangs)),
    layouts: form.choices("layout", catalogue.layouts, "unread"),
    ...optional(
      "legendPlace",
      form.choice(
        "legend-place",
        [...legendPlaces].map((name) => ({ code: name, name })),
        "unread",
      ),
    ),
  };
}

function standingOf(
  filled: Filled,
  form: Understanding,
  position: number | undefined,
  gangs: number | undefined,
): DeviceSheet["standing"] {
  // A form that does not ask is answered by what only a device in a plate has.
  if (filled.prints.standing === undefined)
    return position !== undefined || (gangs ?? 1) > 1 ? "in-plate" : "alone";
  const standing = form.choice("standing", standings, "unread");
  return standing === "alone" || standing === "in-plate" ? standing : undefined;
}

function addressOf(form: Understanding, whose: "bill" | "ship"): Address {
  return Object.fromEntries(
    addressParts.flatMap((part) => {
      const text = form.text(`${whose}.${part}`);
      return text === undefined ? [] : [[part, text]];
    }),
  );
}

function unsureOf(fields: readonly ReadField[], edition: Edition): Unsure[] {
  const unsure = new Map(fields.map((field) => [field.name, field.unsure]));
  return edition.fields.flatMap(({ name, place, ticked, label }) => {
    const answers = unsure.get(name);
    if (place === undefined || answers === undefined) return [];
    const [one, other] = [answers.one, answers.other].map(saysYes);
    if (ticked === undefined || one === other) return [{ place, ...answers }];
    // Of boxes that make one choice together, the one in doubt is told by its label.
    return [{ place, one: one === true ? label : "", other: other === true ? label : "" }];
  });
}

function optional<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return (value === undefined ? {} : { [key]: value }) as { [P in K]?: V };
}
