declare module "damerau-levenshtein" {
  /** Optimal string alignment distance: insertions, deletions, substitutions, swaps of neighbours. */
  export default function distance(
    one: string,
    other: string,
  ): { steps: number; relative: number; similarity: number };
}

declare module "mailauth/lib/parse-received.js" {
  interface Part {
    readonly value?: string;
    readonly comment?: string;
  }
  /** A Received line by its clauses ("from", "by", …); false when it is none. */
  export function parseReceived(line: string): false | Readonly<Record<string, Part | undefined>>;
  /** The address that the server itself saw, never one that the client claimed. */
  export function getClientAddress(from: Part | undefined): string | false;
}
