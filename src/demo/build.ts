import type { Catalogue } from "../catalogue/catalogue.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { fillSheet } from "../drawing/fill-sheet.ts";
import { plainSheet } from "../drawing/plain-sheet.ts";
import type { Edition, EditionField } from "../reading/edition.ts";
import type { AttachmentDescription, LetterDescription, SheetDescription } from "./describe.ts";
import { composeLetter } from "./letter.ts";
import { officeDocument, photograph, purchaseOrder, strangeForm } from "./others.ts";
import { winmailOf } from "./tnef.ts";
import { type Packed, zipOf } from "./zip.ts";

/** What descriptions are built from. */
export interface Workshop {
  readonly catalogue: Catalogue;
  readonly editions: readonly Edition[];
  /** Descriptions that others are like, by name. */
  readonly sheets: ReadonlyMap<string, SheetDescription>;
  readonly raw: (file: string) => Promise<Uint8Array>;
}

export interface BuiltLetter {
  readonly description: LetterDescription;
  readonly bytes: Uint8Array;
}

/** Descriptions → letters as real bytes. `answerId` tells the Message-ID of the answer to a letter. */
export async function* buildLetters(
  descriptions: readonly LetterDescription[],
  workshop: Workshop,
  { to, answerId }: { to: string; answerId: (letter: Uint8Array) => string },
): AsyncGenerator<BuiltLetter> {
  const build = builder(workshop);
  const answered = new Map<string, string>();
  for (const description of descriptions) {
    const attachments = await buildAll(description.attachments, build);
    const { replies_to } = description;
    const inReplyTo = replies_to === undefined ? undefined : answered.get(replies_to);
    if (replies_to !== undefined && inReplyTo === undefined)
      throw new Error(`${description.name} replies to ${replies_to}, which does not come before it`);
    const bytes = await composeLetter(description, {
      to,
      attachments,
      ...(inReplyTo === undefined ? {} : { inReplyTo }),
    });
    answered.set(description.name, answerId(bytes));
    yield { description, bytes };
  }
}

/** Makes the files that descriptions speak of; blank sheets are drawn once each. */
export function builder(workshop: Workshop): (attachment: AttachmentDescription) => Promise<Uint8Array> {
  const blanks = new Map<string, Promise<Uint8Array>>();
  const blank = (edition: Edition): Promise<Uint8Array> => {
    const drawn =
      blanks.get(edition.name) ?? (edition.drawn ? blankSheet : plainSheet)(edition, workshop.catalogue);
    blanks.set(edition.name, drawn);
    return drawn;
  };
  const editionOf = (name: string): Edition => {
    const edition = workshop.editions.find((one) => one.name === name);
    if (edition === undefined) throw new Error(`no edition ${name}`);
    return edition;
  };
  const build = async (attachment: AttachmentDescription): Promise<Uint8Array> => {
    if ("zip" in attachment) return zipOf(await buildAll(attachment.zip, build));
    if ("winmail" in attachment) return winmailOf(await buildAll(attachment.winmail, build));
    if ("letter" in attachment) {
      const attachments = await buildAll(attachment.letter.attachments, build);
      return composeLetter({ name: "forwarded", logo: false, ...attachment.letter }, { attachments });
    }
    if ("words" in attachment) return Buffer.from(attachment.words);
    if ("raw" in attachment) return workshop.raw(attachment.raw);
    if ("blank" in attachment) return blank(editionOf(attachment.blank));
    if ("other" in attachment) return others[attachment.other]();
    const base = workshop.sheets.get(attachment.like);
    if (base === undefined) throw new Error(`no sheet description ${attachment.like}`);
    const edition = editionOf(attachment.edition ?? base.edition);
    return fillSheet(await blank(edition), fieldValues(edition, merge(base, attachment)));
  };
  return build;
}

const others = {
  "purchase order": purchaseOrder,
  photograph,
  "strange form": strangeForm,
  "office document": officeDocument,
};

async function buildAll(
  attachments: readonly AttachmentDescription[],
  build: (attachment: AttachmentDescription) => Promise<Uint8Array>,
): Promise<Packed[]> {
  const built: Packed[] = [];
  for (const attachment of attachments) built.push({ file: attachment.file, bytes: await build(attachment) });
  return built;
}

/** Places → the values of the fields that an edition has for them. Throws for a place that it does not print. */
export function fieldValues(
  edition: Edition,
  sheet: Omit<SheetDescription, "edition">,
): Record<string, string | boolean> {
  const wanted: [string, string | boolean][] = [
    ...Object.entries(sheet.fill),
    ...Object.entries(sheet.legends).flatMap(([face, rows]) =>
      rows.map((row, i): [string, string] => [`row.${face}.${i + 1}`, row]),
    ),
    ...sheet.plain.map((face): [string, boolean] => [`plain.${face}`, true]),
  ];
  return Object.fromEntries(
    wanted.map(([place, value]) => {
      const fields = edition.fields.filter((field) => field.place === place);
      const field = fields.find((one) => one.ticked === undefined || one.ticked === value);
      if (field === undefined)
        throw new Error(`edition ${edition.name} has no field for ${place} ${String(value)}`);
      return [field.name, field.ticked === undefined ? formValue(field, value) : true];
    }),
  );
}

function formValue({ values }: EditionField, value: string | boolean): string | boolean {
  return Object.entries(values).find(([, means]) => means === value)?.[0] ?? value;
}

function merge(
  base: SheetDescription,
  changes: Omit<SheetDescription, "edition">,
): Omit<SheetDescription, "edition"> {
  return {
    fill: { ...base.fill, ...changes.fill },
    legends: { ...base.legends, ...changes.legends },
    plain: [...base.plain, ...changes.plain],
  };
}
