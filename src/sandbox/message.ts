import type { FileFacts } from "../reading/facts.ts";
import type { OpenedLetter } from "../reading/letter.ts";

/** What a reader process can be asked, and what it answers. */
export interface Answers {
  readonly letter: OpenedLetter;
  readonly file: FileFacts;
}

export type Op = keyof Answers;

export interface Job {
  readonly id: number;
  readonly op: Op;
  readonly bytes: Uint8Array;
}

/** A process says once that it is ready, then answers jobs: with what it has so far, and with everything. */
export type Message =
  | { readonly ready: true }
  | { readonly id: number; readonly early: unknown }
  | { readonly id: number; readonly answer: unknown };
