/** Plain texts by what was typed, since every mark and number is compared with many others. */
const plain = new Map<string, string>();

/** How many are kept, and how long a text may be that is worth it. */
const most = { texts: 5_000, length: 250 };

/** Numbers, marks and names as a person compares them: "bw 2207" is "BW-2207". Letters and digits, in capitals. */
export function plainText(typed: string): string {
  const known = plain.get(typed);
  if (known !== undefined) return known;
  const text = typed
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
  if (plain.size >= most.texts) plain.clear();
  if (typed.length <= most.length) plain.set(typed, text);
  return text;
}

/** All that a record says, as one text, whatever order its parts are listed in. */
export function contentKey(record: object): string {
  return JSON.stringify(record, (_, value: unknown) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : value,
  );
}
