import { writeFile } from "node:fs/promises";
import { basename, dirname, extname, relative } from "node:path";
import { neverAsked } from "../checks/required.ts";
import { type Guesses, guessForm } from "../reading/own-form/guess.ts";
import type { FormOutline } from "../reading/own-form/outline.ts";
import { skeletonOf } from "../reading/own-form/skeleton.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openForm } from "./own-form.ts";
import { withReader } from "./submission.ts";

export const edition = defineCommand({
  name: "edition",
  words: [1, 1],
  details:
    "FORM.pdf is the form with nothing filled in. The skeleton has every field with its kind, place and choices, and says\nwhat it may mean, each guess marked as one; it says which places are still without a field, and which fields mean\nnothing yet. FILE is never written over.",
  options: {
    out: { type: "string", takes: "FILE", tells: "where to write it (default: print it)" },
    ...settingsOption,
  },
  async run([form = ""], { out: file, settings }, { out, err }) {
    const { catalogue } = await configure(settings);
    const { outline } = await withReader({}, (reader) => openForm(form, reader));
    if (outline.fields.length > mostFields)
      throw new CannotRun(
        `${form} has ${outline.fields.length} fields; an order sheet has ${mostFields} at most`,
      );
    const guessed = guessForm(outline, catalogue);
    const never = neverAsked(asEdition(guessed), catalogue);
    const name = basename(form, extname(form));
    const text = skeletonOf(
      {
        ...guessed,
        name,
        title: name,
        blank: file === undefined ? basename(form) : fromFile(file, form),
        never,
      },
      catalogue,
    );
    if (file === undefined) out(text.trimEnd());
    else await writeNew(file, text);
    if (file !== undefined) err(`wrote ${file}`);
    for (const line of summaryOf(outline, guessed, never)) err(line);
    return 0;
  },
});

/** What there is to look at, in a line each. */
function summaryOf(
  { fields, nameless }: FormOutline,
  { guesses }: Guesses,
  never: readonly string[],
): string[] {
  const open = guesses.filter(({ place }) => place === undefined).map(({ field }) => field.name);
  const filled = guesses
    .filter(({ place, field }) => place !== "edition" && field.kind === "text" && field.values.some(Boolean))
    .map(({ field }) => field.name);
  const count = fields.length;
  return [
    `${count} fields: ${count - open.length} guessed, ${open.length} mapped to nothing${open.length === 0 ? "" : `: ${open.join(", ")}`}`,
    ...(never.length === 0 ? [] : [`no field was found for ${never.join(", ")}`]),
    ...(nameless === 0 ? [] : [`${nameless} fields have no name, so nobody can read them: give them names`]),
    ...(filled.length === 0
      ? []
      : [`the blank form should be empty, and holds something in ${filled.join(", ")}`]),
  ];
}

/** Guessing looks at every field and all that stands around it. No sheet comes near this. */
const mostFields = 500;

/** The edition that the guesses come to, to be asked what it lacks. */
function asEdition({ form, guesses }: Guesses): Parameters<typeof neverAsked>[0] {
  return {
    form,
    fields: guesses.map(({ field: { name }, label, place }) => ({
      name,
      label,
      values: {},
      ...(place === undefined ? {} : { place }),
    })),
  };
}

/** The path of a form as seen from the file of its edition. */
function fromFile(file: string, form: string): string {
  return relative(dirname(file), form).replaceAll("\\", "/");
}

async function writeNew(file: string, text: string): Promise<void> {
  await writeFile(file, text, { flag: "wx" }).catch((cause: unknown) => {
    const { code } = cause as Partial<NodeJS.ErrnoException>;
    throw new CannotRun(
      code === "EEXIST"
        ? `${file} is there already; nothing was written`
        : `cannot write ${file}: ${reasonOf(cause)}`,
      { cause },
    );
  });
}
