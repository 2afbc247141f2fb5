/** Lets go of a hand. */
export type LetGo = () => void;

/** Hands that letters are taken up with. */
export interface Hands {
  /** Waits until a hand is free for a letter from there. */
  readonly take: (from: string) => Promise<LetGo>;
}

interface Place {
  inHand: number;
  /** The turn in which it was served last. */
  served: number;
  readonly waiting: PromiseWithResolvers<LetGo>[];
}

/**
 * So many hands as `all`. Letters from one place have `each` at most, and one while letters from others are in hand or
 * wait too. A hand that is free goes to the place that has the fewest, among those to the one that was served longest
 * ago. So a flood in one mailbox leaves a hand, and the readers, to the next.
 */
export function openHands(all: number, each: number): Hands {
  const places = new Map<string, Place>();
  let [free, turns] = [all, 0];

  function serve(): void {
    const active = [...places.values()].filter(({ inHand, waiting }) => inHand + waiting.length > 0);
    const share = active.length > 1 ? 1 : each;
    const [place] = active
      .filter(({ inHand, waiting }) => waiting.length > 0 && inHand < share)
      .toSorted((one, other) => one.inHand - other.inHand || one.served - other.served);
    if (free === 0 || place === undefined) return;
    free--;
    place.inHand++;
    place.served = ++turns;
    place.waiting.shift()?.resolve(() => {
      free++;
      place.inHand--;
      serve();
    });
    serve();
  }

  return {
    take(from) {
      const place = places.get(from) ?? { inHand: 0, served: 0, waiting: [] };
      places.set(from, place);
      const turn = Promise.withResolvers<LetGo>();
      place.waiting.push(turn);
      serve();
      return turn.promise;
    },
  };
}
