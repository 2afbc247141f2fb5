import { createHmac, timingSafeEqual } from "node:crypto";
import type { Ways } from "../answer/outline.ts";
import type { OrderRecord } from "../trade/record.ts";
import type { Desk } from "./desk.ts";
import { referenceOf } from "./reference.ts";

const dayMs = 86_400_000;

/**
 * The page on which the questions of an answer can be answered, by the number of the letter that it answers; undefined
 * where the desk has no page. Nobody can guess it, and after some days it leads nowhere.
 */
function linkOf(letter: number, { rules, secret, clock }: Desk): string | undefined {
  if (rules.links === undefined) return undefined;
  const { address, days } = rules.links;
  const until = Math.floor(clock.now().getTime() / dayMs) + days;
  return `${address}/answer/${letter.toString(36)}-${until.toString(36)}-${codeOf(letter, until, secret)}`;
}

/** How questions of the answer to a letter can be answered other than by a reply. */
export function waysTo(letter: number, desk: Desk, copied: readonly unknown[] = []): Ways {
  // Whoever has a copy must not answer in the sender's name.
  const link = copied.length > 0 ? undefined : linkOf(letter, desk);
  return { reference: referenceOf(letter, desk.secret), ...(link === undefined ? {} : { link }) };
}

/** What somebody sees who comes by a link. */
export interface Behind {
  /** The letter that was answered. */
  readonly letter: number;
  /** Whom the answer went to. */
  readonly recipient: string;
  /** The orders of that answer, as they stand now. */
  readonly orders: readonly OrderRecord[];
}

/** What a link leads to; undefined if it is not one of ours or its days are over. */
export async function behindLink(token: string, { store, secret, clock }: Desk): Promise<Behind | undefined> {
  const [, number = "", day = "", code = ""] =
    /^([0-9a-z]{1,11})-([0-9a-z]{1,8})-([\w-]{22})$/.exec(token) ?? [];
  const [letter, until] = [Number.parseInt(number, 36), Number.parseInt(day, 36)];
  if (!Number.isSafeInteger(letter) || until < Math.floor(clock.now().getTime() / dayMs)) return undefined;
  const wanted = Buffer.from(codeOf(letter, until, secret));
  if (!timingSafeEqual(wanted, Buffer.from(code))) return undefined;
  const answer = await store.answers.of(letter);
  if (answer === undefined) return undefined;
  const [answered] = await store.answers.answered([answer.messageId]);
  if (answered === undefined) return undefined;
  const named = await Promise.all(answered.orders.map((one) => store.orders.named(one)));
  return {
    letter,
    recipient: answer.recipient,
    orders: named.flat().filter(({ buyer }) => buyer === answered.buyer),
  };
}

function codeOf(letter: number, until: number, secret: string): string {
  const mac = createHmac("sha256", secret).update(`link ${letter} ${until}`).digest();
  return mac.subarray(0, 16).toString("base64url");
}
