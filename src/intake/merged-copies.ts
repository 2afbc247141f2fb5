import { createHash } from "node:crypto";
import type { Reader } from "../ports/reader.ts";
import type { Judged } from "../reading/judge.ts";
import type { OpenedFile } from "./open.ts";

/** How wide a page is drawn, in pixels: small letters can be read. */
const width = 1_200;

/** So many pages are drawn of one file, and so many sheets beside it are looked at. */
const most = { pages: 40, sheets: 40 };

/** A sheet, and how each of its pages looks. */
interface Drawn {
  readonly file: string;
  readonly looks: readonly string[];
}

/**
 * Tells of sheets that were put together in one file which sheets beside it they are. Every page of the file has to look
 * as that of a sheet does, dot by dot, and every sheet has to be in it whole and once. Then it shows nothing of its own.
 */
export async function withMergedCopies(
  files: readonly OpenedFile[],
  judged: readonly Judged[],
  reader: Pick<Reader, "page">,
): Promise<readonly Judged[]> {
  const sheets = files.filter((_, i) => judged[i]?.sheet !== undefined && judged[i]?.file.list === undefined);
  const isMerged = ({ file: { kind, sheets: count = 0 } }: Judged): boolean =>
    kind === "several-sheets" && count <= sheets.length && sheets.length <= most.sheets;
  if (!judged.some(isMerged)) return judged;
  const drawn = await Promise.all(
    sheets.map(async ({ attachment: { file, bytes } }): Promise<Drawn> => {
      return { file, looks: (await looksOf(bytes, reader)) ?? [] };
    }),
  );
  return Promise.all(
    judged.map(async (one, i) => {
      const bytes = files[i]?.attachment.bytes;
      if (!isMerged(one) || bytes === undefined) return one;
      const looks = await looksOf(bytes, reader);
      const copyOf = looks === undefined ? undefined : sheetsIn(looks, drawn);
      return copyOf === undefined ? one : { ...one, file: { ...one.file, copyOf } };
    }),
  );
}

/** How each page of a file looks; undefined if one cannot be drawn, or there are too many. */
async function looksOf(bytes: Uint8Array, reader: Pick<Reader, "page">): Promise<string[] | undefined> {
  const looks: string[] = [];
  for (let page = 1, pages = 1; page <= pages; page++) {
    const drawn = await reader.page(bytes, { page, width });
    if (!drawn.ok || drawn.value.png === undefined || drawn.value.pages > most.pages) return undefined;
    pages = drawn.value.pages;
    looks.push(createHash("sha256").update(drawn.value.png).digest("hex"));
  }
  return looks;
}

/** The sheets that some pages are, one behind the other, each once; undefined if a page is of none. */
function sheetsIn(looks: readonly string[], drawn: readonly Drawn[]): string[] | undefined {
  const left = new Set(drawn);
  const found: string[] = [];
  for (let page = 0; page < looks.length; ) {
    const sheet = [...left].find(
      (one) => one.looks.length > 0 && one.looks.every((look, i) => look === looks[page + i]),
    );
    if (sheet === undefined) return undefined;
    left.delete(sheet);
    found.push(sheet.file);
    page += sheet.looks.length;
  }
  return found;
}
