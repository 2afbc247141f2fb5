import { createHash } from "node:crypto"; // a pure function of bytes
import type { Edition } from "../edition.ts";
import type { FormField, ReadField } from "../form.ts";
import { openForWalking } from "../pdf/walked-pdf.ts";
import { recognise } from "../recognise.ts";
import { type BlankForm, blankForm } from "./blank-form.ts";
import { type BlankPrint, blankPrint } from "./blank-print.ts";

/** The forms that sheets are filled in on, and the blank form of each edition that has one, by its name. */
export interface KnownForms {
  readonly editions: readonly Edition[];
  readonly blanks: ReadonlyMap<string, Uint8Array>;
}

/** Blank forms rendered in this process, by the hash of their bytes. Rendering takes longer than reading a sheet. */
const rendered = new Map<string, Promise<BlankForm>>();
const mostRendered = 12;

/** The prints of blank forms. */
const prints = new WeakMap<Uint8Array, Promise<BlankPrint | undefined>>();

/** The blank form that fields belong to; undefined if none is known. */
export function blankOf(fields: readonly ReadField[], forms: KnownForms): Promise<BlankForm> | undefined {
  const bytes = bytesOf(fields, forms);
  return bytes && renderedOnce(bytes);
}

/** The print of the blank form that fields belong to. Undefined if there is none to go by. */
export async function printFor(
  fields: readonly FormField[],
  forms: KnownForms,
): Promise<BlankPrint | undefined> {
  const bytes = bytesOf(fields, forms);
  return bytes && printOnce(bytes);
}

function bytesOf(fields: readonly FormField[], { editions, blanks }: KnownForms): Uint8Array | undefined {
  return blanks.get(recognise(fields, editions).edition?.name ?? "");
}

function printOnce(bytes: Uint8Array): Promise<BlankPrint | undefined> {
  const print = prints.get(bytes) ?? openForWalking(bytes).then(blankPrint);
  prints.set(bytes, print);
  return print;
}

/** Reads every blank form. They are rendered when a sheet is first looked at, since most need no looking at. */
export async function prepareForms({ blanks }: KnownForms): Promise<void> {
  for (const bytes of blanks.values()) await printOnce(bytes);
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
