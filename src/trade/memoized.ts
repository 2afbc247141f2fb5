/** In characters. Longer texts are not kept. */
const longestKept = 500;
/** At least so many results are kept, and at most twice as many. */
const mostKept = 1000;

/** The same function, which keeps the results for the texts that it was asked about last. It has to be pure. */
export function memoized<T>(of: (text: string) => T): (text: string) => T {
  let [young, old] = [new Map<string, { readonly value: T }>(), new Map<string, { readonly value: T }>()];
  return (text) => {
    if (text.length > longestKept) return of(text);
    const kept = young.get(text) ?? old.get(text) ?? { value: of(text) };
    if (young.size >= mostKept) [young, old] = [new Map(), young];
    young.set(text, kept);
    return kept.value;
  };
}
