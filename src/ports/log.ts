/** Fixed sentences with fields; no addresses and no legends. */
export interface Log {
  readonly info: (fields: Readonly<Record<string, unknown>>, sentence: string) => void;
  readonly warn: (fields: Readonly<Record<string, unknown>>, sentence: string) => void;
}
