import { plainText } from "./keys.ts";

/** What people write instead of a number, as letters and digits in capitals. */
const placeholders = new Set(
  (
    "TBD TBA TBC TOBEDETERMINED TOFOLLOW WILLFOLLOW PENDING LATER NOTYET HOLD NA NONE NIL NO NOPO UNKNOWN ASAP " +
    "RUSH VERBAL VERBALORDER PERPHONE SEEATTACHED ATTACHED SEEEMAIL SEELETTER SEENOTES SEEPO SAME SAMEASABOVE " +
    "PO PONUMBER PURCHASEORDER ORDERNUMBER NUMBER"
  ).split(" "),
);

/** Whether what stands for an order number is only a placeholder, such as "TBD". */
export function isNoNumber(typed: string): boolean {
  const plain = plainText(typed);
  return [plain, plain.replace(/^PO(NUMBER|NO)?/, "")].some(
    (text) => placeholders.has(text) || /^(X*|0*)$/.test(text),
  );
}
