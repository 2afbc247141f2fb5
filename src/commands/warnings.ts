import { listed } from "../answer/one-line.ts";
import type { Catalogue } from "../catalogue/catalogue.ts";
import { neverAsked } from "../checks/required.ts";
import type { Edition } from "../reading/edition.ts";
import type { EditionFile } from "../reading/editions.ts";
import { guessMark } from "../reading/own-form/skeleton.ts";
import { namesOnBlank } from "../reading/page/blank-form.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import { faultIn, faultLine } from "../yaml/yaml.ts";
import { reasonOf } from "./command.ts";
import type { Configuration } from "./configuration.ts";

/** What is hardly meant in the editions of a desk, each with its place. */
export async function warningsIn({
  editionFiles,
  catalogue,
  forms,
}: Pick<Configuration, "editionFiles" | "catalogue" | "forms">): Promise<string[]> {
  const all = await Promise.all(editionFiles.map((written) => warningsOf(written, catalogue, forms)));
  return all.flat();
}

/**
 * What is no fault of an edition and hardly meant: required places that it does not ask for, fields that only it or only
 * its blank form has, and guesses that nobody has looked at.
 */
async function warningsOf(
  { edition, file, text }: EditionFile,
  catalogue: Catalogue,
  { blanks }: KnownForms,
): Promise<string[]> {
  const isUsed = edition.replacedBy === undefined || edition.acceptedUntil !== undefined;
  const never = isUsed ? neverAsked(edition, catalogue) : [];
  const blank = isUsed && !edition.drawn ? blanks.get(edition.name) : undefined;
  const guesses = text.split(`${guessMark}:`).length - 1;
  return [
    ...(never.length === 0 ? [] : [`has no field for ${never.join(", ")}, so nobody is asked for it`]),
    ...(blank === undefined ? [] : await besideBlank(edition, blank)),
    ...(guesses === 0 ? [] : [`has ${guesses} guesses still: look at each, and take “${guessMark}” away`]),
  ].map((what) => faultLine(faultIn(text, file, ["fields"], what)));
}

const mostListed = 12;

/** Fields of a blank form that its edition does not name, and fields with a meaning that the form does not have. */
async function besideBlank({ fields }: Edition, blank: Uint8Array): Promise<string[]> {
  const printed = await namesOnBlank(blank).catch(reasonOf);
  if (typeof printed === "string") return [`cannot be held against its blank form: ${printed}`];
  const named = new Set(fields.map(({ name }) => name));
  const unnamed = [...printed].filter((name) => !named.has(name));
  const lacking = fields.filter(({ name, place }) => place !== undefined && !printed.has(name));
  return [
    ...(unnamed.length === 0
      ? []
      : [
          `does not name ${listed(unnamed, mostListed)} of its blank form: a sheet with something there is for a person`,
        ]),
    ...(lacking.length === 0
      ? []
      : [
          `names ${fieldList(lacking)}, which its blank form does not have, so that each sheet of it seems to be damaged: name the fields that the form has`,
        ]),
  ];
}

function fieldList(fields: Edition["fields"]): string {
  return listed(
    fields.map(({ name }) => name),
    mostListed,
  );
}
