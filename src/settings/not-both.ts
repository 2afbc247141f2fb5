import { wherever } from "../yaml/yaml.ts";

/** A rule for `refine`: of two keys at most one is given. The fault stands at the second. */
export function notBoth<K extends string>(
  one: K,
  other: K,
): [(it: Partial<Record<K, unknown>>) => boolean, Fault] {
  return [
    (it) => it[one] === undefined || it[other] === undefined,
    { error: `${one} or ${other}, not both`, path: [other], ...wherever({}) },
  ];
}

interface Fault extends ReturnType<typeof wherever> {
  readonly error: string;
  path: PropertyKey[];
}
