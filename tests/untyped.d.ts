declare module "culori" {
  /** Contrast ratio of two colours by the WCAG formula. */
  export function wcagContrast(one: string, other: string): number;
}

declare module "nspell" {
  interface Spelling {
    correct: (word: string) => boolean;
    /** Every form of every word, written out. */
    data: Readonly<Record<string, unknown>>;
  }
  export default function nspell(aff: string, dic: string): Spelling;
}
