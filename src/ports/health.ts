/** Whether the parts of a worker do their work. A part is good again as soon as it works again. */
export interface Health {
  /** It worked just now. With `again`, it has to say so once more within so many seconds. */
  readonly good: (part: string, again?: number) => void;
  /** It does not work, and why: no addresses. */
  readonly bad: (part: string, why: string) => void;
  readonly troubles: () => readonly Trouble[];
}

/** A part that does not work. */
export interface Trouble {
  readonly part: string;
  readonly why: string;
}
