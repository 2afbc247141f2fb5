import type { Report } from "../judging/report.ts";
import type { FileKind } from "../trade/attachment.ts";
import type { FileId, Sheet } from "../trade/sheet.ts";
import { oneLine } from "./one-line.ts";

/** A file that an answer can speak of. */
export interface NamedFile {
  /** Its name in words fit for a line. */
  readonly name: string;
  /** "Device, S-104 position 2 of 4", "locked PDF". */
  readonly what: string;
  /** Came with a letter before this one. */
  readonly earlier: boolean;
  readonly sheet?: Sheet;
}

export type Files = ReadonlyMap<FileId, NamedFile>;

const kinds = {
  sheet: "order sheet",
  "saved-blank": "blank sheet",
  "several-sheets": "several sheets in one file",
  "unknown-form": "form of another kind",
  "no-form": "PDF without fields",
  printed: "printed PDF",
  scanned: "scanned PDF",
  picture: "picture",
  "small-picture": "picture",
  recording: "recording",
  decoration: "picture in the letter",
  "dynamic-form": "form for one viewer only",
  portfolio: "PDF portfolio",
  list: "station list",
  "office-document": "office document",
  text: "text",
  archive: "archive, unpacked",
  "archive-locked": "locked archive",
  locked: "locked PDF",
  damaged: "damaged PDF",
  "too-large": "file that is too large",
  late: "file that was not opened",
  unsafe: "file that could not be opened safely",
  other: "not a PDF",
} as const satisfies Record<FileKind, string>;

/** Every file that a report can point at, those of this letter first and in their order. */
export function namedFiles(report: Report): Files {
  const named = new Map<FileId, NamedFile>();
  for (const { file } of report.files)
    named.set(file.id, { name: fileName(file.file), what: kinds[file.kind], earlier: false });
  const came = new Set([...named.keys(), ...report.sheets.map(({ sheet }) => sheet.id)]);
  const add = (sheet: Sheet, mark = sheet.mark): void => {
    const [name, what] = [fileName(sheet.file), whatIs(sheet, mark)];
    named.set(sheet.id, { name, what, earlier: !came.has(sheet.id), sheet });
  };
  for (const sheet of [...report.sheets.map(({ sheet }) => sheet), ...report.earlier]) add(sheet);
  // Stations come last, since their sheets have what their notes tell of their place.
  for (const { order } of report.orders)
    for (const { mark, plates, devices } of order.stations)
      for (const sheet of [...plates, ...devices]) add(sheet, mark);
  return named;
}

/** What a sheet orders and for which place: "Device, S-104 position 2 of 4". */
export function whatIs(sheet: Sheet, mark = sheet.mark): string {
  if (sheet.kind === "plate")
    return `${sheet.gangs === undefined ? "Plate" : `Plate of ${sheet.gangs}`}, ${placeWords(mark)}`;
  if (sheet.standing === "alone") return `Device alone, ${placeWords(mark)}`;
  return `Device, ${placeWords(mark, sheet.position, sheet.gangs)}`;
}

/** "S-104 position 2 of 4", with what is known of it. */
export function placeWords(mark = "", position?: number, gangs?: number): string {
  const opening =
    position === undefined ? "" : `position ${position}${gangs === undefined ? "" : ` of ${gangs}`}`;
  return [oneLine(mark, 30), opening].filter((word) => word !== "").join(" ") || "no station mark";
}

function fileName(file: string): string {
  return oneLine(file, 90);
}

/** A file by its id. Throws for one that its report does not hold. */
export function nameOf(files: Files, id: FileId): NamedFile {
  const file = files.get(id);
  if (file === undefined) throw new Error(`a problem points at ${id}, which is not in its report`);
  return file;
}
