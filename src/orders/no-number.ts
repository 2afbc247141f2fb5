import { plainText } from "./keys.ts";
import { isPlaceholder } from "./placeholder.ts";

/** What people write instead of a number, beside what they write in any field. */
const placeholders = new Set(
  (
    "NOTYET NONEYET HOLD NOPO ASAP RUSH RUSHORDER URGENT NEW NEWORDER NEWJOB VERBAL VERBALORDER PERPHONE BYPHONE PHONE " +
    "EMAIL PEREMAIL BYEMAIL MAIL PERMAIL CALLME CALLOFFICE ASKOFFICE GETFROMOFFICE FROMOFFICE " +
    "RFQ COD CREDITCARD CASH"
  ).split(" "),
);
/** "No PO yet", "need PO", "your PO", and a number that is to be issued. */
const awaited =
  /^(?:(?:NO|NEED|NEEDS|STILLNEED|AWAIT|WAITINGON|WAITINGFOR|YOUR|GET)(?:A|THE)?(?:PURCHASE|ORDER|JOB|PO|NUMBER|NUM)+|(?:TOBE|NOT(?:YET)?)(?:ISSUED|ASSIGNED|PROVIDED|SUPPLIED|GIVEN|AVAILABLE))(?:YET|LATER|TOCOME)?$/;
/** XX-XX, BW-, BW-0000 and N/K: signs where a number belongs. */
const unfilled = [
  /(?:^|[^\p{L}])(?:X{2,}|#{2,}|_{2,})\W*$/iu,
  /^\W*\p{L}{1,5}\s*[-#:]\s*(?:0{3,}\W*)?$/iu,
  /^\W*n\s*\/\s*k\W*$/iu,
];

/** Whether what stands for an order number is only a placeholder, such as "TBD", or announces a number and gives none. */
export function isNoNumber(typed: string): boolean {
  const plain = plainText(typed);
  const announced = plain.replace(/^(PURCHASE|ORDER|JOB|PO|NUMBER)+/, "");
  // In "PO number: none" the NO announces nothing.
  return (
    [plain, announced, announced.replace(/^NO/, "")].some(
      (text) => placeholders.has(text) || awaited.test(text) || isPlaceholder(text) || /^0*$/.test(text),
    ) || unfilled.some((sign) => sign.test(typed))
  );
}
