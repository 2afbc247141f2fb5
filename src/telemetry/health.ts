import type { Clock } from "../ports/clock.ts";
import type { Health } from "../ports/health.ts";

/** Keeps what the parts of a worker report, and notices a part that reports nothing for too long. */
export function openHealth(clock: Clock): Health & { readonly parts: () => readonly string[] } {
  const said = new Map<string, { readonly why?: string; readonly until?: number; readonly at: Date }>();
  return {
    good: (part, again) => {
      const at = clock.now();
      said.set(part, { at, ...(again === undefined ? {} : { until: at.getTime() + again * 1000 }) });
    },
    bad: (part, why) => void said.set(part, { at: clock.now(), why }),
    troubles: () =>
      [...said].flatMap(([part, { why, until, at }]) => {
        if (why !== undefined) return [{ part, why }];
        if (until === undefined || clock.now().getTime() <= until) return [];
        return [{ part, why: `no progress since ${at.toISOString()}` }];
      }),
    parts: () => [...said.keys()],
  };
}
