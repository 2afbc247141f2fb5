import type { FileId } from "./sheet.ts";

/** One file of a letter. */
export interface Attachment {
  readonly id: FileId;
  /** The name as the sender sees it, made safe to print and told apart from its sisters; never a path. */
  readonly file: string;
  /** The name it came with, where it had to be told apart from a sister of the same name. */
  readonly named?: string;
  readonly bytes: Uint8Array;
}

/** What an attachment turned out to be. */
export type FileKind =
  | "sheet"
  /** A form whose fields no edition knows. */
  | "unknown-form"
  /** A PDF without any field to fill. */
  | "no-form"
  /** A sheet of ours without its fields: printed, scanned with its text, or flattened by a viewer. */
  | "printed"
  | "locked"
  | "damaged"
  /** Anything but a PDF. */
  | "other";

/** What became of one attachment. */
export interface ReadFile {
  readonly id: FileId;
  readonly file: string;
  readonly named?: string;
  readonly kind: FileKind;
  /** The title of the edition that an unknown form is most like. */
  readonly nearest?: string;
}
