import type { Catalogue } from "../catalogue/catalogue.ts";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { fillSheet } from "../drawing/fill-sheet.ts";
import { printedTexts } from "../drawing/list/list-words.ts";
import { sheetsOfList } from "../drawing/list/sheets-of-list.ts";
import type { Reader } from "../ports/reader.ts";
import type { Edition } from "../reading/edition.ts";
import type { FileFacts, Part } from "../reading/facts.ts";
import { type ListForm, listForm } from "../reading/list/list-form.ts";
import { readList } from "../reading/list/read-list.ts";

interface Making {
  readonly editions: readonly Edition[];
  readonly catalogue: Catalogue;
}

/** Devices of one list. More would leave no time for the rest of its letter. */
export const mostDevices = 100;

/**
 * The same reader, which fills in the sheets that a station list orders, so that they are read and judged as if they
 * had been attached. A list of which not everything is understood makes no sheet.
 */
export function withLists(reader: Reader, { editions, catalogue }: Making): Reader {
  const form = listForm(editions);
  return {
    ...reader,
    file: async (bytes, time) => {
      const opened = await reader.file(bytes, time);
      return opened.ok && opened.value.kind === "list"
        ? { ok: true, value: await filledIn(opened.value, form, catalogue) }
        : opened;
    },
  };
}

async function filledIn(
  facts: Extract<FileFacts, { kind: "list" }>,
  form: ListForm | undefined,
  catalogue: Catalogue,
): Promise<FileFacts> {
  const { text } = facts;
  const other: FileFacts = text === undefined ? { kind: "office" } : { kind: "text", words: text };
  if (form === undefined) return other;
  const list = readList(facts, form, printedTexts(form, catalogue));
  // A table of somebody else's can have that title too. One that is too long has shown no more than the title.
  if (!list.isOurs && facts.more.every(({ what }) => what !== "too-long")) return other;
  const last = list.devices[mostDevices];
  const faults = [
    ...list.faults,
    ...(last === undefined ? [] : [{ what: "too-long", where: `row ${last.row}` } as const]),
  ];
  if (faults.length > 0) return { ...facts, files: [], faults };
  const blanks = new Map<Edition, Uint8Array>();
  const files: Part[] = [];
  for (const { file, edition, values, list: origin } of sheetsOfList(list, form, catalogue)) {
    const blank = blanks.get(edition) ?? (await blankSheet(edition, catalogue));
    blanks.set(edition, blank);
    files.push({ name: file, bytes: await fillSheet(blank, values), looks: false, list: origin });
  }
  return { ...facts, files };
}
