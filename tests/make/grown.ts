/** Something that a stranger may make large, and what reads it. */
export interface Grown {
  readonly size: number;
  readonly make: (size: number) => unknown;
  readonly use: (subject: never) => unknown;
}

export const grown = <T>(size: number, make: (size: number) => T, use: (subject: T) => unknown): Grown => ({
  size,
  make,
  use,
});
