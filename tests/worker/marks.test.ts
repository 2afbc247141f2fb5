import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Mark } from "../../src/ports/mailbox.ts";
import { openMarks } from "../../src/worker/marks.ts";

const mailAt = (uid: number): { mark: Mark; receivedAt: Date } => ({
  mark: { validity: "1", uid },
  receivedAt: new Date(uid),
});

test("whatever order letters are done with in, the mark is behind the last before which none is open", async () => {
  const orders = fc.integer({ min: 1, max: 12 }).chain((count) =>
    fc.shuffledSubarray(
      Array.from({ length: count }, (_, i) => i + 1),
      { minLength: count },
    ),
  );
  await fc.assert(
    fc.asyncProperty(orders, async (order) => {
      let at = 0;
      const { begin, oldest } = openMarks(async ({ uid }) => void (at = uid));
      const done = order.toSorted((a, b) => a - b).map((uid) => begin(mailAt(uid)));
      const closed = new Set<number>();
      for (const uid of order) {
        await done[uid - 1]?.();
        closed.add(uid);
        let behind = 0;
        while (closed.has(behind + 1)) behind++;
        expect(at).toBe(behind);
        expect(oldest()?.getTime()).toBe(behind === order.length ? undefined : behind + 1);
      }
    }),
  );
});
