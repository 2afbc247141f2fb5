/** Something to wait for, which may have happened already. */
export interface Bell {
  readonly ring: () => void;
  /** Forgets that it was rung. */
  readonly hush: () => void;
  /** Waits until it is rung, for so many milliseconds at most. The signal ends the wait too. */
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
