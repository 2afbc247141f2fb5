/** What a reader process may use. */
export interface Limits {
  /** Processor time from the moment it is given a job until it must have answered, in milliseconds. */
  readonly jobMs: number;
  /** The same for the pages of a PDF, after its fields are known. The order is read from the fields. */
  readonly pagesMs: number;
  /**
   * Time by the clock may be so many times as much. The time in which other programs have the processor does not
   * count.
   */
  readonly patience: number;
  /** Resident memory in bytes. It is looked at now and then, so a quick process exceeds it somewhat. */
  readonly memory: number;
  /** What V8 may use of it, in megabytes. Buffers and unpacked streams lie outside, so this limits little. */
  readonly heapMb: number;
  /** A process that holds more than this part of its memory after a job gets no other. A new one takes over. */
  readonly mostHeld: number;
}

const MB = 1024 * 1024;

export const usualLimits: Limits = {
  jobMs: 10_000,
  pagesMs: 4_000,
  patience: 6,
  memory: 900 * MB,
  heapMb: 512,
  mostHeld: 2 / 3,
};

/** Larger bytes are not given to a process. What a letter may hold is decided long before. */
export const mostBytes = 256 * MB;
