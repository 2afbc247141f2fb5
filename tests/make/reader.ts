import { markSheet } from "../../src/drawing/marked-copy.ts";
import type { Opened, Reader } from "../../src/ports/reader.ts";
import { readLetter } from "../../src/reading/letter/letter.ts";
import { openFile } from "../../src/reading/open-file.ts";
import { readOutline } from "../../src/reading/own-form/read-outline.ts";
import { pagePicture } from "../../src/reading/page/page-picture.ts";
import { type Shop, trade } from "./config.ts";

/** Opens everything at once in this process: for tests whose bytes are our own. */
export function readerOf({ forms }: Shop): Reader {
  return {
    letter: async (bytes) => opened(await readLetter(bytes)),
    file: async (bytes) => opened(await openFile(bytes, undefined, await forms())),
    sender: () => Promise.resolve(opened("none")),
    mark: async (bytes, sheet, problems, mending) =>
      opened(await markSheet(bytes, sheet, problems, mending, await forms())),
    page: async (bytes, wanted) => opened(await pagePicture(bytes, wanted)),
    outline: async (bytes) => opened(await readOutline(bytes)),
    close: () => Promise.resolve(),
  };
}

export const directReader: Reader = readerOf(trade);

function opened<T>(value: T): Opened<T> {
  return { ok: true, value };
}
