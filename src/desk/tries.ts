/** How often somebody may try within a while. */
export interface Most {
  readonly times: number;
  readonly withinMs: number;
}

/** Counts tries, and says when there were too many. */
export interface Tries {
  /** Whether one more is allowed under all of these keys; it is counted if it is. */
  readonly allow: (keys: readonly string[], now: Date) => boolean;
  /** Forgets the tries under a key. */
  readonly forget: (key: string) => void;
}

/** Keys that are remembered at most. */
const mostKeys = 10_000;

/** Tries are counted by this process alone: they are for a page that one process serves. */
export function countTries({ times, withinMs }: Most): Tries {
  const tries = new Map<string, number[]>();
  const recent = (key: string, now: Date): number[] =>
    (tries.get(key) ?? []).filter((at) => at > now.getTime() - withinMs);
  return {
    allow(keys, now) {
      const counted = keys.map((key) => [key, recent(key, now)] as const);
      if (counted.some(([, at]) => at.length >= times)) return false;
      if (tries.size > mostKeys) tries.clear();
      for (const [key, at] of counted) tries.set(key, [...at, now.getTime()]);
      return true;
    },
    forget(key) {
      tries.delete(key);
    },
  };
}
