/** Plain texts by what was typed. They are kept, since every mark and number is compared with many others. */
const plain = new Map<string, string>();

/** How many texts are kept, and how long a text is kept at most. */
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

/** Words before an order number that are no part of it: "PO Number: 4512", "No. 4512", "Job 4512", "P.O.#4512". */
const announced =
  /^[^\p{L}\p{N}]*(?:(?:PURCHASE|ORDER|NUMBER|JOB|PO|P\.? ?O)(?!\p{L})|(?:NO|NR|NUM)(?=[\s.:#]))(?=.*\p{N})/isu;

/** No order number is longer. In a longer text no word announces a number. */
const longestNumber = 200;

/**
 * An order number as typed, without words that announce it. A digit has to follow them: in "NO-1042" the NO is a
 * part.
 */
export function numberPart(typed: string): string {
  let number = typed.normalize("NFKC");
  if (number.length > longestNumber) return number;
  for (let before = ""; number !== before; ) {
    before = number;
    number = number.replace(announced, "");
  }
  return number;
}

/** Order numbers as a person compares them: "P.O. # eg 500" is "EG-500". */
export function numberKey(typed: string): string {
  return plainText(numberPart(typed));
}

/** All that a record says, as one text. The order of its keys does not matter. */
export function contentKey(record: object): string {
  return JSON.stringify(record, (_, value: unknown) =>
    typeof value === "object" && value !== null && !Array.isArray(value)
      ? Object.fromEntries(Object.entries(value).toSorted(([one], [other]) => (one < other ? -1 : 1)))
      : value,
  );
}
