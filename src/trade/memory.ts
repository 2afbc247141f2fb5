/** A function that is called once for each thing, and remembers the answer. */
export function memory<Thing extends object, Answer>(
  ask: (thing: Thing) => Answer,
): (thing: Thing) => Answer {
  const answers = new WeakMap<Thing, { readonly answer: Answer }>();
  return (thing) => {
    const known = answers.get(thing) ?? { answer: ask(thing) };
    answers.set(thing, known);
    return known.answer;
  };
}
