import { describe, expect, test } from "vitest";
import { settleOutcome } from "../../src/intake/settle-outcome.ts";
import { type Claim, type Outcome, StateMoved } from "../../src/ports/store.ts";
import { temporaryDesk } from "../make/desk.ts";

describe("a letter whose buyer's orders move while it is judged", () => {
  const outcome = { state: "ready" } as Outcome;
  const settled = async (
    moves: number,
    cause: Error = new StateMoved(),
  ): Promise<[Outcome["state"], number]> => {
    const desk = await temporaryDesk();
    let judged = 0;
    const settle = (): Promise<void> => (judged > moves ? Promise.resolve() : Promise.reject(cause));
    const store = { ...desk.store, letters: { ...desk.store.letters, settle } };
    const state = await settleOutcome({ ...desk, store }, { letter: 1 } as Claim, () => {
      judged += 1;
      return Promise.resolve(outcome);
    }).catch((error: unknown) => {
      expect(error).toBe(cause);
      return "held" as const;
    });
    return [state, judged];
  };

  test.each([
    [0, "ready", 1],
    [1, "ready", 2],
    [4, "ready", 5],
    [5, "held", 5],
  ] as const)("%i times is %s: it is judged anew, five times at most", async (moves, state, judged) => {
    expect(await settled(moves)).toEqual([state, judged]);
  });

  test("and one that cannot be stored is not judged again", async () => {
    expect(await settled(1, new Error("no room on the disk"))).toEqual(["held", 1]);
  });
});
