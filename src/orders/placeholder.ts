import { plainText } from "./keys.ts";

/** What people write where they have nothing to say, as letters and digits in capitals. */
const placeholders = new Set(
  (
    "TBD TBA TBC TOBEDETERMINED TOBEADVISED TOBECONFIRMED TOFOLLOW WILLFOLLOW PENDING LATER NA NONE NIL NULL " +
    "UNKNOWN NOTKNOWN ONFILE SEEFILE SAME SAMEASABOVE ASABOVE SEEABOVE ABOVE DITTO SEEATTACHED ATTACHED SEEEMAIL " +
    "SEELETTER SEENOTES SEEPO SEEDWG SEEDWGS SEEDRAWING SEEDRAWINGS SEEPLAN SEEPLANS SEESCHEDULE SEELIST PERDWG PERDWGS " +
    "PERDRAWING PERDRAWINGS PERPLAN PERPLANS PERSCHEDULE PERSPEC PERSPECS PERLIST"
  ).split(" "),
);

/** Whether what stands in a field says nothing: "TBD", "n/a", "x", "on file", ".". */
export function isPlaceholder(typed: string): boolean {
  const plain = plainText(typed);
  return (
    placeholders.has(plain) ||
    /^(X*|ONFILE(W|AT|ALREADY).{0,16}|(SAMEAS|PERLAST).{0,20}|ASUSUAL|ASBEFORE)$/.test(plain)
  );
}

/** Whether it says that it is the same as another field. */
export function saysSame(typed: string): boolean {
  return /^SAME(AS(ABOVE|BILL(ING|TO)?(ADDRESS)?))?$/.test(plainText(typed));
}
