import { basename } from "node:path";
import { oneLine } from "../answer/one-line.ts";
import { wrap } from "../answer/text.ts";
import { choicesAt } from "../reading/choices.ts";
import type { Edition, EditionField } from "../reading/edition.ts";
import { filledIn, same, saysYes, unmappedIn } from "../reading/filled.ts";
import type { ReadField } from "../reading/form.ts";
import type { FormOutline } from "../reading/own-form/outline.ts";
import { type Compared, compareWith, nearestTo, recognise } from "../reading/recognise.ts";
import { readSheet } from "../reading/sheet.ts";
import { type ChoicePlace, type Place, rowOf } from "../trade/place.ts";
import { CannotRun } from "./command.ts";
import type { Configuration } from "./configuration.ts";
import { openForm } from "./own-form.ts";
import { withReader } from "./submission.ts";

/** A filled form as it is read: lines for a terminal, and whether it is of an edition that the desk knows. */
export async function showForm(
  path: string,
  configuration: Pick<Configuration, "catalogue" | "editions">,
): Promise<{ readonly lines: readonly string[]; readonly isKnown: boolean }> {
  // Without forms to compare its pages with: only what the fields hold is shown.
  const { outline, fields } = await withReader({}, async (reader) => {
    const form = await openForm(path, reader);
    const opened = await reader.file(form.bytes);
    if (!opened.ok) throw new CannotRun(`${path} cannot be opened: ${opened.why}`);
    return { ...form, fields: opened.value.kind === "pdf" ? opened.value.fields : [] };
  });
  const name = basename(path);
  const { edition } = recognise(fields, configuration.editions);
  if (edition === undefined)
    return { lines: unknownForm(name, nearestTo(fields, configuration.editions)), isKnown: false };
  return { lines: asRead({ name, fields, edition, outline, configuration }), isKnown: true };
}

/** Why a form is of no edition. */
function unknownForm(name: string, nearest: Compared | undefined): string[] {
  const head = `${name} is a sheet of no edition.`;
  const advice = `burin edition writes the skeleton of a new one.`;
  if (nearest === undefined) return [head, advice];
  const { edition, missing, foreign, claims } = nearest;
  const all = edition.fields.length;
  const why =
    claims === undefined
      ? [`It has ${all - missing.length} of its ${all} fields, and ${foreign.length} others.`]
      : [`It says that it is “${oneLine(claims, 40)}”, which is not among the editions.`];
  return [
    head,
    folded(`Nearest is ${edition.name}: ${edition.title}. ${why.join(" ")}`),
    ...block("Fields that it lacks", missing),
    ...block("Fields that the edition does not have", foreign),
    "",
    advice,
  ];
}

interface Shown {
  readonly name: string;
  readonly fields: readonly ReadField[];
  readonly edition: Edition;
  readonly outline: FormOutline;
  readonly configuration: Pick<Configuration, "catalogue" | "editions">;
}

function asRead(shown: Shown): string[] {
  const { name, fields, edition, configuration } = shown;
  const { missing } = compareWith(edition, fields);
  const byName = new Map(fields.map((field) => [field.name, field]));
  const used = edition.fields.filter(({ place }) => place !== undefined);
  const said = used.flatMap((printed) => filledLine(printed, shown) ?? []);
  const empty = new Set(used.map(({ place }) => place));
  const filled = filledIn(fields, edition);
  for (const place of empty) if (place !== undefined && filled.at(place).length > 0) empty.delete(place);
  const sheet = readSheet(fields, edition, { id: "0/1", file: name }, configuration.catalogue);
  const ignored = edition.fields
    .filter(({ place }) => place === undefined)
    .flatMap(({ name: field }) => {
      const { kind, values: all = [] } = byName.get(field) ?? {};
      const values = all.filter((value) => (kind === "tick" ? saysYes(value) : value.trim() !== ""));
      return values.length === 0 ? [] : [`${field} (means: nothing): ${quoted(values)}`];
    });
  return [
    folded(`${name} is a sheet of ${edition.name}: ${edition.title}.`),
    ...(missing.length === 0 ? [] : block(`Fields of the edition that it lacks`, missing)),
    ...list("Filled in", said),
    ...block("Empty", [...empty].map(String)),
    ...list(
      "Not understood",
      sheet.unread.map(({ place, typed, wants }) => `${place}: ${quoted([typed])}; wants ${wants}`),
    ),
    ...list("Filled in, and mapped to nothing", [
      ...unmappedIn(fields, edition).map((one) => `${one.name}: ${quoted([one.value])}`),
      ...ignored,
    ]),
    ...list(
      "The two readers disagree",
      fields.flatMap(({ name: field, unsure }) =>
        unsure === undefined ? [] : [`${field}: ${quoted([unsure.one])} or ${quoted([unsure.other])}`],
      ),
    ),
    "",
    "burin check says what is wrong with it.",
  ];
}

/** A place with its value, the field that says it, and where that stands. */
function filledLine(
  printed: EditionField,
  { fields, edition, outline, configuration }: Shown,
): string | undefined {
  const { name, label, place } = printed;
  if (place === undefined) return undefined;
  const own = filledIn(fields, { ...edition, fields: [printed] }).at(place);
  if (own.length === 0) return undefined;
  const means = own.map((entry) => codeAt(place, entry.means, configuration) ?? entry.means);
  const typed = own.map((entry) => entry.typed);
  const isTick = rowOf(place).holds === "tick" || rowOf(place).holds === "plain";
  const value = isTick ? "ticked" : quoted(typed);
  const read = isTick || means.every((one, i) => one === typed[i]) ? "" : `, read as ${means.join(", ")}`;
  const field = outline.fields.find((one) => one.name === name);
  const values = fields.find((one) => one.name === name)?.values ?? [];
  const frame = field?.frames.find(({ on }) => on !== undefined && values.includes(on)) ?? field?.frames[0];
  const where =
    frame === undefined
      ? "on no page"
      : `page ${frame.page} at ${Math.round(frame.box[0])} ${Math.round(frame.box[1])}`;
  return `${place}: ${value}${read}\n    ${label}; ${name}; ${where}`;
}

/** The code of what was chosen; undefined where nothing is chosen at a place, or nothing such. */
function codeAt(
  place: Place,
  means: string,
  { catalogue }: Pick<Configuration, "catalogue">,
): string | undefined {
  const { holds } = rowOf(place);
  if (holds !== "choice" && holds !== "choices") return undefined;
  const choices = choicesAt[place as ChoicePlace].of(catalogue);
  return choices.find(({ code, name }) => same(code, means) || same(name, means))?.code;
}

function quoted(values: readonly string[]): string {
  return values.map((value) => `“${oneLine(value.replaceAll("\n", " ⏎ "), 400)}”`).join(", ");
}

/** A heading with names below it, as many in a line as fit. */
function block(title: string, names: readonly string[]): string[] {
  return names.length === 0 ? [] : ["", title, folded(`  ${names.join(", ")}`, "  ")];
}

/** A heading with a line below it for each of some things. */
function list(title: string, lines: readonly string[]): string[] {
  const indented = lines.flatMap((line) => line.split("\n").map((part) => folded(`  ${part}`, "      ")));
  return lines.length === 0 ? [] : ["", title, ...indented];
}

/** Lines that fit into a terminal, words that have no end among them. */
function folded(line: string, indent = ""): string {
  return wrap(line.replace(/\S{60}(?=\S)/g, "$& "), indent);
}
