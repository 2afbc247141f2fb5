import type { FileFacts } from "../reading/facts.ts";
import type { OpenedLetter } from "../reading/letter.ts";

/** What came of opening bytes that strangers sent. */
export type Opened<T> =
  | { readonly ok: true; readonly value: T }
  /** The process that tried was ended: the bytes are not safe to open. */
  | { readonly ok: false; readonly why: "too slow" | "too much memory" | "died" };

/** Opens letters and files where they can do no harm. Never rejects because of what the bytes hold. */
export interface Reader {
  readonly letter: (bytes: Uint8Array) => Promise<Opened<OpenedLetter>>;
  readonly file: (bytes: Uint8Array) => Promise<Opened<FileFacts>>;
  readonly close: () => Promise<void>;
}
