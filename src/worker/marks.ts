import type { Mark } from "../ports/mailbox.ts";

/**
 * Moves the mark of a mailbox behind each letter that is done with, once all before it are. Letters are begun in the
 * order of the mailbox and done with in any. Gives, for a letter that is begun, what to call when it is done with.
 */
export function openMarks(
  set: (mark: Mark) => Promise<void>,
): (mark: Mark | undefined) => () => Promise<void> {
  const begun: { readonly mark: Mark | undefined; isDone: boolean }[] = [];
  return (mark) => {
    const one = { mark, isDone: false };
    begun.push(one);
    return async () => {
      one.isDone = true;
      let last: Mark | undefined;
      while (begun[0]?.isDone) last = begun.shift()?.mark ?? last;
      if (last !== undefined) await set(last);
    };
  };
}
