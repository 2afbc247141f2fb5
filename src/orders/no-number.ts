import { plainText } from "./keys.ts";
import { isPlaceholder } from "./placeholder.ts";

/** What people write instead of a number, beside what they write in any field. */
const placeholders = new Set(
  "NOTYET HOLD NOPO ASAP RUSH VERBAL VERBALORDER PERPHONE BYPHONE PHONE EMAIL PEREMAIL BYEMAIL MAIL PERMAIL".split(
    " ",
  ),
);

/** Whether what stands for an order number is only a placeholder, such as "TBD", or announces a number and gives none. */
export function isNoNumber(typed: string): boolean {
  const plain = plainText(typed);
  const announced = plain.replace(/^(PURCHASE|ORDER|JOB|PO|NUMBER)+/, "");
  // In "PO number: none" the NO announces nothing.
  return (
    [plain, announced, announced.replace(/^NO/, "")].some(
      (text) => placeholders.has(text) || isPlaceholder(text) || /^0*$/.test(text),
    ) || /(?:^|[^\p{L}])(?:X{2,}|#{2,}|_{2,})\W*$/iu.test(typed)
  );
}
