import type { MarkedProblem } from "../drawing/marked/problem.ts";
import type { Marked, Mending } from "../drawing/marked-copy.ts";
import type { FileFacts } from "../reading/facts.ts";
import type { OpenedLetter } from "../reading/letter/letter.ts";
import type { Outline } from "../reading/own-form/outline.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Sheet } from "../trade/sheet.ts";

/** What came of opening bytes that strangers sent. */
export type Opened<T> =
  | { readonly ok: true; readonly value: T }
  /** The process that tried was ended: the bytes are not safe to open. */
  | { readonly ok: false; readonly why: "too slow" | "too much memory" | "died" }
  /** The files before it used up the time for all of them. */
  | { readonly ok: false; readonly why: "no time left" };

/** What is left of the time for all files of one letter: of the processor, and by the clock. Grows less. */
export interface TimeLeft {
  processorMs: number;
  clockMs: number;
}

/** How to find out who sent a letter. */
export interface Inquiry {
  /** The address in From. */
  readonly from: string;
  /** Received lines that our own servers wrote on top. */
  readonly lines: number;
  /** Name servers as `address` or `address:port`; those of the system if there is none. */
  readonly servers: readonly string[];
}

/** Which page is drawn, counted from 1, and how wide at most, in pixels. */
export interface PageWanted {
  readonly page: number;
  readonly width: number;
}

/** A page as a PNG; absent if the file has no such page. */
export interface PagePicture {
  readonly pages: number;
  readonly png?: Uint8Array;
}

/** Opens letters and files where they can do no harm. Never rejects because of what the bytes hold. */
export interface Reader {
  readonly letter: (bytes: Uint8Array, time?: TimeLeft) => Promise<Opened<OpenedLetter>>;
  readonly file: (bytes: Uint8Array, time?: TimeLeft) => Promise<Opened<FileFacts>>;
  /** Asks the name servers whether the domain in From vouches for a letter: DKIM, SPF and DMARC. */
  readonly sender: (bytes: Uint8Array, inquiry: Inquiry) => Promise<Opened<SenderProof>>;
  /** The sender's own sheet with its problems marked, and mended where it can be; no copy where it cannot be marked. */
  readonly mark: (
    bytes: Uint8Array,
    sheet: Sheet,
    problems: readonly MarkedProblem[],
    mending?: Mending,
  ) => Promise<Opened<Marked>>;
  /** A page of a PDF as people see it, with its fields and annotations. */
  readonly page: (bytes: Uint8Array, wanted: PageWanted) => Promise<Opened<PagePicture>>;
  /** The fields of a form with the words around them. */
  readonly outline: (bytes: Uint8Array) => Promise<Opened<Outline>>;
  /** How many processes are at work just now, where there are any. */
  readonly busy?: () => number;
  readonly close: () => Promise<void>;
}
