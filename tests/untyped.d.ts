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
declare module "@20minutes/s3rver" {
  /** A server that speaks the S3 protocol over a folder of files. */
  export default class S3rver {
    constructor(options: Readonly<Record<string, unknown>>);
    run(): Promise<{ readonly port: number }>;
    close(): Promise<void>;
  }
}
