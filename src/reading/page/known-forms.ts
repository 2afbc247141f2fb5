import { createHash } from "node:crypto"; // a pure function of bytes
import type { Edition } from "../edition.ts";
import type { ReadField } from "../form.ts";
import { recognise } from "../recognise.ts";
import { type BlankForm, blankForm } from "./blank-form.ts";
import { helveticaGlyphs } from "./glyphs.ts";

/** The forms that sheets are filled in on, and the blank form of each edition that has one, by its name. */
export interface KnownForms {
  readonly editions: readonly Edition[];
  readonly blanks: ReadonlyMap<string, Uint8Array>;
}

/** Blank forms rendered in this process, by the hash of their bytes. Rendering takes longer than reading a sheet. */
const rendered = new Map<string, Promise<BlankForm>>();
const mostRendered = 12;

/** The blank form that fields belong to; undefined if none is known. */
export function blankOf(
  fields: readonly ReadField[],
  { editions, blanks }: KnownForms,
): Promise<BlankForm> | undefined {
  const bytes = blanks.get(recognise(fields, editions).edition?.name ?? "");
  return bytes && renderedOnce(bytes);
}

/** Renders every blank form, and the letters that they are filled in with, so that no sheet has to wait for it. */
export async function prepareForms({ blanks }: KnownForms): Promise<void> {
  await helveticaGlyphs();
  for (const bytes of blanks.values()) await renderedOnce(bytes);
}

function renderedOnce(bytes: Uint8Array): Promise<BlankForm> {
  const key = createHash("sha256").update(bytes).digest("hex");
  const form = rendered.get(key) ?? blankForm(bytes);
  if (rendered.size < mostRendered) rendered.set(key, form);
  return form;
}

/** A hash of how a blank form looks and where its fields are. The same pixels give the same hash. */
export async function looksOf(bytes: Uint8Array): Promise<string> {
  const hash = createHash("sha256");
  for (const { looks, widgets } of (await blankForm(bytes)).pages) {
    hash.update(looks.empty.pixels).update(looks.ticked.pixels);
    hash.update(JSON.stringify(widgets.map(({ field, box, state = "" }) => [field, ...box, state])));
  }
  return hash.digest("hex").slice(0, 32);
}
