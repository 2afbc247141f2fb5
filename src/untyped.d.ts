declare module "damerau-levenshtein" {
  /** Optimal string alignment distance: insertions, deletions, substitutions, swaps of neighbours. */
  export default function distance(
    one: string,
    other: string,
  ): { steps: number; relative: number; similarity: number };
}

declare module "saxen" {
  export class Parser {
    on(
      event: "openTag",
      hear: (name: string, attributes: () => Readonly<Record<string, string>>) => void,
    ): this;
    on(event: "closeTag", hear: (name: string) => void): this;
    on(event: "text" | "cdata" | "attention", hear: (text: string) => void): this;
    on(event: "error" | "warn", hear: (cause: Error) => void): this;
    parse(xml: string): this;
  }
}
