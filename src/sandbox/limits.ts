/** What a reader process may use. */
export interface Limits {
  /** Processor time from the moment it is given a job until it must have answered, in milliseconds. */
  readonly jobMs: number;
  /** The same for the pages of a PDF, once its fields are known: the fields are what an order is read from. */
  readonly pagesMs: number;
  /** How many times as much by the clock, besides the time that other programs have the processor. */
  readonly patience: number;
  /** Resident memory in bytes. It is looked at now and then, so a quick process comes out somewhat above. */
  readonly memory: number;
  /** What V8 may use of it, in megabytes. Buffers and unpacked streams lie outside, so this bounds little. */
  readonly heapMb: number;
  /** After so many jobs a new process takes over, whatever the old one may have gathered. */
  readonly jobs: number;
}

const MB = 1024 * 1024;

export const usualLimits: Limits = {
  jobMs: 10_000,
  pagesMs: 4_000,
  patience: 6,
  memory: 900 * MB,
  heapMb: 512,
  jobs: 200,
};

/** Bytes that nobody should ask a process to open; what a letter may hold is decided long before. */
export const mostBytes = 256 * MB;
