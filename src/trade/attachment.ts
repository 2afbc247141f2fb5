import type { FileId } from "./sheet.ts";

/** One file of a letter. */
export interface Attachment {
  readonly id: FileId;
  /** The name as the sender sees it, made safe to print and told apart from its sisters; never a path. */
  readonly file: string;
  readonly bytes: Uint8Array;
}

/** What an attachment turned out to be. */
export type FileKind =
  | "sheet"
  /** A form whose fields no edition knows. */
  | "unknown-form"
  /** A PDF without any field to fill. */
  | "no-form"
  | "locked"
  | "damaged"
  /** Anything but a PDF. */
  | "other";

/** What became of one attachment. */
export interface ReadFile {
  readonly id: FileId;
  readonly file: string;
  readonly kind: FileKind;
  /** The title of the edition that an unknown form is most like. */
  readonly nearest?: string;
}
