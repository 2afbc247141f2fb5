import type { FileId } from "../trade/sheet.ts";

const collator = new Intl.Collator("en", { numeric: true });

/** Sorts files in the order in which they came: letters are numbered, files within them too. */
export function byId(one: FileId, other: FileId): number {
  return collator.compare(one, other);
}

/** The number of the letter that brought the file. */
export function letterOf(id: FileId): string {
  return id.split("/")[0] ?? id;
}
