import type { ListFault } from "./list-fault.ts";
import type { SheetKind } from "./place.ts";
import type { FileId, ListOrigin } from "./sheet.ts";

/** One file of a letter. */
export interface Attachment {
  readonly id: FileId;
  /** The name as the sender sees it, safe to print and different from its sisters' names. Never a path. */
  readonly file: string;
  /** The name it came with, if a sister has the same name. */
  readonly named?: string;
  /** The folders in which it lay in an archive, "old/lobby". */
  readonly folder?: string;
  /** If it is a sheet that was filled in from a list of the letter. */
  readonly list?: ListOrigin;
  readonly bytes: Uint8Array;
}

/** What an attachment turned out to be. */
export type FileKind =
  | "sheet"
  /** A sheet of ours with nothing filled in: most often the untouched original. */
  | "saved-blank"
  /** Several sheets put together in one PDF. */
  | "several-sheets"
  /** A form whose fields no edition knows. */
  | "unknown-form"
  /** A PDF without any field to fill, and not one of our sheets. */
  | "no-form"
  /** A sheet of ours without its fields: printed to PDF, or flattened by a viewer. */
  | "printed"
  /** A PDF whose pages are pictures of paper. */
  | "scanned"
  /** A picture: JPEG, PNG, HEIC, TIFF and their kin. */
  | "picture"
  /** A picture that is too small to show a page. Many a logo comes as a file. */
  | "small-picture"
  /** Sound, or moving pictures. */
  | "recording"
  /**
   * No file of the sender's: a logo, a signature, what a computer keeps beside files, or a proof of ours that comes
   * back unchanged. The answer does not name it.
   */
  | "decoration"
  /** An XFA form that only one maker's viewer can show. */
  | "dynamic-form"
  /** A PDF that is a folder of other files. */
  | "portfolio"
  /** A station list. The sheets that were filled in from it stand beside it. */
  | "list"
  | "office-document"
  /** A text. Its words are read like the letter's own. */
  | "text"
  /** An archive that was unpacked. Its files stand beside it. */
  | "archive"
  | "archive-locked"
  /** A PDF that opens only with a password. */
  | "locked"
  | "damaged"
  /** Too large by itself, or more than is opened of one letter. */
  | "too-large"
  /** Not opened, since the files before it used up the time for all of them. */
  | "late"
  /**
   * Opening it took too long or too much memory, or ended the program that tried. Or it lies too deep in archives.
   */
  | "unsafe"
  | "other";

/** What became of one attachment. */
export interface ReadFile {
  readonly id: FileId;
  readonly file: string;
  readonly named?: string;
  readonly folder?: string;
  readonly kind: FileKind;
  readonly list?: ListOrigin;
  /** What keeps a list from being taken; absent if nothing does. */
  readonly faults?: readonly ListFault[];
  /** How many sheets came beside a list for places that it orders too. */
  readonly beside?: number;
  /** How many sheets were put together in it. */
  readonly sheets?: number;
  /**
   * Of a print of sheets: the files beside it that hold the same typing, if all of its pages have one. Of sheets put
   * together: the files beside it that look the same.
   */
  readonly copyOf?: readonly string[];
  /** Of a sheet saved blank: which sheet it is, if it has the name that such a blank has. */
  readonly blank?: SheetKind;
  /** It is a blank that its letter does without. */
  readonly spare?: true;
  /** The title of the edition that an unknown form is most like. */
  readonly nearest?: string;
}
