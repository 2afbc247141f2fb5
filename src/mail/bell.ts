/** Something to wait for that may also have happened already. */
export interface Bell {
  readonly ring: () => void;
  /** Forgets that it was rung. */
  readonly hush: () => void;
  /** Until it is rung, at most so many milliseconds, and no longer than the signal lets. */
  readonly heard: (ms: number, signal?: AbortSignal) => Promise<void>;
}

export function bell(): Bell {
  let rung = false;
  let wake: (() => void) | undefined;
  return {
    ring() {
      rung = true;
      wake?.();
    },
    hush() {
      rung = false;
    },
    async heard(ms, signal) {
      if (rung || signal?.aborted === true) return;
      const { promise, resolve } = Promise.withResolvers<void>();
      const done = (): void => resolve();
      wake = done;
      const timer = setTimeout(done, ms);
      signal?.addEventListener("abort", done);
      await promise;
      clearTimeout(timer);
      signal?.removeEventListener("abort", done);
    },
  };
}
