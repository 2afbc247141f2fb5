import { plainText } from "./keys.ts";
import { isPlaceholder } from "./placeholder.ts";

/** What people write instead of a number, besides the placeholders of any field. */
const placeholders = new Set(
  "NOTYET HOLD NO NOPO ASAP RUSH VERBAL VERBALORDER PERPHONE PO PONUMBER PURCHASEORDER ORDERNUMBER NUMBER".split(
    " ",
  ),
);

/** Whether what stands for an order number is only a placeholder, such as "TBD". */
export function isNoNumber(typed: string): boolean {
  const plain = plainText(typed);
  return [plain, plain.replace(/^(PURCHASE|ORDER|JOB|PO|NUMBER)+(NO)?/, "")].some(
    (text) => placeholders.has(text) || isPlaceholder(text) || /^0*$/.test(text),
  );
}
