/** Numbers, marks and names as a person compares them: "bw 2207" is "BW-2207". Letters and digits, in capitals. */
export function plainText(typed: string): string {
  return typed
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
}

/** All that a record says, as one text, whatever order its parts are listed in. */
export function contentKey(record: object): string {
  return JSON.stringify(record, (_, value: unknown) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : value,
  );
}
