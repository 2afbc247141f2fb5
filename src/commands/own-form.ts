import { readFile } from "node:fs/promises";
import type { Reader } from "../ports/reader.ts";
import type { FormOutline, Outline } from "../reading/own-form/outline.ts";
import { CannotRun, reasonOf } from "./command.ts";

/** A form that somebody names, read in a reader process. Throws CannotRun if it has no fields to be read. */
export async function openForm(
  path: string,
  reader: Reader,
): Promise<{ readonly bytes: Uint8Array; readonly outline: FormOutline }> {
  const bytes = await readFile(path).catch((cause: unknown) => {
    throw new CannotRun(`cannot read ${path}: ${reasonOf(cause)}`, { cause });
  });
  const opened = await reader.outline(bytes);
  if (!opened.ok) throw new CannotRun(`${path} cannot be opened: ${opened.why}`);
  if (opened.value.kind !== "form") throw new CannotRun(`${path} ${whyNot[opened.value.kind]}`);
  return { bytes, outline: opened.value };
}

const whyNot: Readonly<Record<Exclude<Outline["kind"], "form">, string>> = {
  other: "is no PDF",
  locked: "opens only with a password: save it without one",
  damaged: "is damaged: open it and save it anew",
  dynamic: "is an XFA form, which only one viewer can show: save it as an ordinary form (AcroForm)",
  portfolio: "is a folder of files: take the form out of it",
  "no-fields": "has no fields to fill in",
};
