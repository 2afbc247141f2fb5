import type { Sending } from "../ports/sender.ts";
import { errorWords } from "./server.ts";

/** What a server or the library said was wrong. */
export interface SmtpError extends Error {
  readonly code?: string | undefined;
  /** The command that failed, such as `MAIL FROM`. */
  readonly command?: string | undefined;
  readonly response?: string | undefined;
  readonly responseCode?: number | undefined;
  /** The recipient that was refused. */
  readonly recipient?: unknown;
}

/** How one transaction went, up to where it ended. */
export interface Transaction {
  readonly recipient: string;
  /** Who gets a copy. A copy that is refused keeps nobody from the answer. */
  readonly copies?: readonly string[];
  /** Recipients refused, those of copies and the witness among them. */
  readonly refused: readonly SmtpError[];
  /** The server's last words when it took the letter. */
  readonly taken?: string;
  readonly error?: SmtpError;
  /** The end of the letter may have left us, so the server may have the letter. */
  readonly handedOver: boolean;
}

/**
 * What became of the letter. A reply code decides (RFC 5321 §4.2.1: 5yz is final, 4yz is not). Without one, a letter
 * whose end never left was certainly not sent. Of any other nobody can tell.
 */
export function outcomeOf(transaction: Transaction): Sending {
  const { recipient, copies = [], refused, taken, error, handedOver } = transaction;
  if (error?.command === "MAIL FROM") return byReply(error);
  const refusal = refused.find((each) => each.recipient === recipient);
  if (refusal !== undefined) return byReply(refusal);
  const isCopy = (each: SmtpError): boolean => copies.some((copy) => copy === each.recipient);
  const witness = refused.find((each) => !isCopy(each));
  if (witness !== undefined)
    return { kind: "later", words: `not sent, for the witness was refused: ${errorWords(witness)}` };
  const unreached = refused.map((each) => `${String(each.recipient)}: ${errorWords(each)}`).join("; ");
  if (taken !== undefined) return { kind: "sent", words: taken, ...(unreached === "" ? {} : { unreached }) };
  if (error === undefined) throw new Error("a transaction without an outcome");
  if (error.responseCode !== undefined) return byReply(error);
  return { kind: handedOver ? "unknown" : "later", words: errorWords(error) };
}

function byReply(error: SmtpError): Sending {
  const code = error.responseCode ?? 0;
  // 503 is about the session and not about the letter. EMESSAGE is the library's own word for a letter that is too
  // large.
  const final = (code >= 500 && code !== 503) || (code === 0 && error.code === "EMESSAGE");
  return { kind: final ? "refused" : "later", words: errorWords(error) };
}
