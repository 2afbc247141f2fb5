import { readHeader } from "../reading/letter/letter.ts";
import { forwardedIn } from "../reading/letter/machine-report.ts";
import type { SenderProof } from "../trade/sender-proof.ts";
import type { Rules } from "./desk.ts";

/** Whose letter one of our own staff has forwarded. */
export type Forwarded =
  | { readonly kind: "no" }
  /** The sender of the one letter that is attached whole. The answer goes to whoever forwarded it. */
  | { readonly kind: "of"; readonly buyer: string }
  /** Nobody can tell whose it is. It is no order of our own staff's either. */
  | { readonly kind: "unclear"; readonly why: string };

/**
 * Whose letter our own staff has forwarded. The staff member must be proved, unless senders are not asked about at
 * all: otherwise nobody knows who sent it.
 */
export async function forwardedBy(
  { staff, ours }: Pick<Rules, "staff" | "ours">,
  letter: { readonly from: string | undefined; readonly bytes: Uint8Array },
  proof: SenderProof | "not asked",
): Promise<Forwarded> {
  const { from, bytes } = letter;
  if (from === undefined || !staff.includes(from)) return { kind: "no" };
  if (proof !== "pass" && proof !== "not asked") return { kind: "no" };
  const senders = await Promise.all(forwardedIn(bytes).map(async (one) => (await readHeader(one)).from));
  const [buyer, ...others] = new Set(senders);
  if (senders.length === 0)
    return { kind: "unclear", why: "one of our own staff sent it, and no letter is attached to it whole" };
  if (buyer === undefined || others.length > 0)
    return {
      kind: "unclear",
      why: "one of our own staff forwarded it, and it is not clear whose letter it was",
    };
  if (staff.includes(buyer) || ours.includes(buyer))
    return { kind: "unclear", why: "one of our own staff forwarded a letter of our own" };
  return { kind: "of", buyer };
}
