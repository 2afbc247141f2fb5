/** Numbers, marks and names as a person compares them: "bw 2207" is "BW-2207". Letters and digits, in capitals. */
export function plainText(typed: string): string {
  return typed
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, "");
}
