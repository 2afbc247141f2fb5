import { expect, test } from "vitest";
import { type LetGo, openHands } from "../../src/worker/hands.ts";

/** Asks for a hand; what was got stands in `got`, in order. */
function asking(all: number, each: number) {
  const hands = openHands(all, each);
  const got: string[] = [];
  const letGo = new Map<string, LetGo>();
  const ask = (from: string, name: string): void => {
    const asked = async (): Promise<void> => {
      letGo.set(name, await hands.take(from));
      got.push(name);
    };
    void asked();
  };
  const settled = () => new Promise((resolve) => setImmediate(resolve));
  return { got, ask, settled, letGo: (name: string) => letGo.get(name)?.() };
}

test("a place has its share at most, and less while there is another", async () => {
  const { got, ask, settled, letGo } = asking(3, 2);
  for (const name of ["a1", "a2", "a3", "a4"]) ask("a", name);
  await settled();
  expect(got).toEqual(["a1", "a2"]);
  ask("b", "b1");
  await settled();
  expect(got).toEqual(["a1", "a2", "b1"]);
  letGo("a1");
  await settled();
  expect(got).toEqual(["a1", "a2", "b1"]);
  letGo("b1");
  await settled();
  expect(got).toEqual(["a1", "a2", "b1", "a3"]);
});

test("a hand goes to the place that has the fewest, then to the one that was served longest ago", async () => {
  const { got, ask, settled, letGo } = asking(2, 2);
  for (const name of ["a1", "a2", "a3", "a4"]) ask("a", name);
  for (const name of ["b1", "b2"]) ask("b", name);
  ask("c", "c1");
  await settled();
  expect(got).toEqual(["a1", "a2"]);
  letGo("a1");
  await settled();
  letGo("a2");
  await settled();
  expect(got).toEqual(["a1", "a2", "b1", "c1"]);
  letGo("b1");
  await settled();
  letGo("c1");
  await settled();
  expect(got).toEqual(["a1", "a2", "b1", "c1", "a3", "b2"]);
});
