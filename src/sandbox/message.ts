import type { MarkedProblem } from "../drawing/marked/problem.ts";
import type { Marked, Mending } from "../drawing/marked-copy.ts";
import type { Inquiry, PagePicture, PageWanted } from "../ports/reader.ts";
import type { FileFacts } from "../reading/facts.ts";
import type { OpenedLetter } from "../reading/letter/letter.ts";
import type { Outline } from "../reading/own-form/outline.ts";
import type { KnownForms } from "../reading/page/known-forms.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Sheet } from "../trade/sheet.ts";

/** What a reader process can be asked to make of bytes, and what it answers. */
export interface Answers {
  readonly letter: OpenedLetter;
  readonly file: FileFacts;
  readonly sender: SenderProof;
  /** There is no copy if the file cannot be marked. */
  readonly mark: Marked;
  /** A PNG of one page, and how many pages there are. There is none if the file has no such page. */
  readonly page: PagePicture;
  readonly outline: Outline;
}

export type Op = keyof Answers;

/** What it is given besides the bytes. */
export interface Inputs {
  readonly letter: undefined;
  readonly file: undefined;
  readonly sender: Inquiry;
  readonly mark: {
    readonly sheet: Sheet;
    readonly problems: readonly MarkedProblem[];
    readonly mending: Mending | undefined;
  };
  readonly page: PageWanted;
  readonly outline: undefined;
}

export interface Job<O extends Op = Op> {
  readonly id: number;
  readonly op: O;
  readonly bytes: Uint8Array;
  readonly input: Inputs[O];
}

/** The argument of a process that will be given forms. */
export const waitsForForms = "waits-for-forms";

/** What a process is given before its first job. */
export interface Beforehand {
  readonly forms: KnownForms;
}

/**
 * A process says once that it is ready. Then it answers jobs: perhaps early with what it has so far, and at the end
 * with everything.
 */
export type Message =
  | { readonly ready: true }
  | { readonly id: number; readonly early: unknown }
  | { readonly id: number; readonly answer: unknown };
