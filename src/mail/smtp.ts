import { Readable } from "node:stream";
import type SMTPConnection from "nodemailer/lib/smtp-connection";
import type { SMTPConnectionEnvelope, SMTPEnvelope } from "nodemailer/lib/smtp-connection";
import type { Health } from "../ports/health.ts";
import type { Log } from "../ports/log.ts";
import type { Outgoing, Sender, Sending } from "../ports/sender.ts";
import { appendLetter, type CopyFolder, holdsLetter } from "./kept-letters.ts";
import { errorWords, reasonOf, type Server } from "./server.ts";
import { openSmtp } from "./smtp-connection.ts";
import { outcomeOf, type SmtpError } from "./smtp-outcome.ts";

export interface SmtpSender {
  readonly server: Server;
  /** The address to which undeliverable letters come back: the envelope's sender. */
  readonly bounces: string;
  /** A mailbox of ours that gets every answer in the same transaction, as proof that it was sent. */
  readonly witness?: CopyFolder & { readonly address: string };
  /** The folder of answers sent, filled by the server itself or by us. */
  readonly sent?: CopyFolder & { readonly filledBy: "server" | "us" };
  readonly log: Log;
  readonly health?: Pick<Health, "good" | "bad">;
  /** Milliseconds of silence after which the server is taken for dead; 60 s, if absent. */
  readonly silence?: number;
  /** The same after the last byte of an answer; 10 minutes, if absent (RFC 5321 §4.5.3.2.6). */
  readonly patience?: number;
}

/** Milliseconds that one transaction may take up to the last byte of the answer. */
const transactionMs = 600_000;

const usualPatience = 600_000;

/** Time for the library to say by itself that the server is silent. */
const margin = 5_000;

/** Bytes given to the connection at once. Few, so that most of a letter is still ours when it breaks. */
const pieceSize = 65_536;

/** One address and nothing else. Characters that could end the command or name a second recipient are refused. */
const plainAddress = /^[^\s\p{Cc}<>()[\]\\,;:"@]+@[^\s\p{Cc}<>()[\]\\,;:"@]+$/u;

/**
 * Submits answers (RFC 6409): one recipient and his copies a transaction, one connection an answer, the bytes as they are. `close`
 * waits for copies that are still on their way into the folder of sent answers.
 */
export function smtpSender(options: SmtpSender): Sender & { readonly close: () => Promise<void> } {
  const { server, witness, sent, log, health } = options;
  const { silence = 60_000, patience = usualPatience } = options;
  let filing: Promise<unknown> = Promise.resolve();

  /** Files a copy. It comes after the outcome, which must reach the record first. A missing copy does no harm. */
  function file(answer: Outgoing): void {
    if (sent?.filledBy !== "us") return;
    filing = filing
      .then(() => appendLetter(sent, answer.bytes))
      .catch((error: unknown) => log.warn({ why: reasonOf(error) }, "no copy in the folder of answers sent"));
  }

  return {
    async send(answer) {
      if (!plainAddress.test(answer.recipient))
        return { kind: "refused", words: "the recipient is not an address that can be sent to" };
      let connection: SMTPConnection;
      try {
        connection = await openSmtp(server, silence, patience + margin);
        health?.good("sender");
      } catch (error) {
        health?.bad("sender", reasonOf(error));
        return { kind: "later", words: errorWords(error) };
      }
      const outcome = await transact(connection, answer, { ...options, silence, patience });
      if (outcome.kind === "sent") file(answer);
      return outcome;
    },

    async tryOut() {
      try {
        (await openSmtp(server, silence)).quit();
        health?.good("sender");
      } catch (error) {
        health?.bad("sender", reasonOf(error));
        throw error;
      }
    },

    async find(messageId) {
      const place = witness ?? sent;
      if (place === undefined) return undefined;
      if (await holdsLetter(place, messageId)) return true;
      // A folder that we fill ourselves lacks just the answers in doubt: those sent right before we died.
      return witness === undefined && sent?.filledBy === "us" ? undefined : false;
    },

    async close() {
      await filing;
    },
  };
}

async function transact(
  connection: SMTPConnection,
  { recipient, copies: wanted = [], bytes }: Outgoing,
  {
    bounces,
    witness,
    silence,
    patience,
  }: SmtpSender & { readonly silence: number; readonly patience: number },
): Promise<Sending> {
  const copies = wanted.filter(
    (copy) => copy !== recipient && copy !== witness?.address && plainAddress.test(copy),
  );
  const to = [...new Set([recipient, ...copies, ...(witness === undefined ? [] : [witness.address])])];
  const envelope: SMTPEnvelope & Partial<Pick<SMTPConnectionEnvelope, "rejectedErrors">> = {
    from: bounces,
    to,
    size: bytes.length,
    use8BitMime: bytes.some((byte) => byte > 127),
  };
  let given = 0;
  let handedOver = false;
  let listen: ((ms: number) => void) | undefined;

  // The letter is read only after the server has answered for every recipient. If it refused the recipient or the
  // witness, the end of the letter never leaves and nobody gets it. Otherwise a witness copy would prove an answer that
  // its recipient did not get. A copy that is refused stops nothing: the answer is its recipient's.
  const letter = new Readable({
    read() {
      if ((envelope.rejectedErrors ?? []).some((each) => !copies.some((copy) => copy === each.recipient))) {
        this.destroy(new Error("a recipient was refused"));
        return;
      }
      const piece = bytes.subarray(given, (given += pieceSize));
      // The final dot follows the end of this stream.
      handedOver = piece.length === 0;
      listen?.(handedOver ? patience : silence);
      this.push(handedOver ? null : piece);
    },
  });

  const ended = await new Promise<{ taken: string } | { error: SmtpError }>((resolve) => {
    let quiet: NodeJS.Timeout | undefined;
    const stop = (): void => {
      clearTimeout(watchdog);
      clearTimeout(quiet);
    };
    const lost = (): void => {
      stop();
      resolve({ error: new Error("the connection was lost") });
    };
    const watchdog = setTimeout(lost, transactionMs + patience);
    listen = (ms) => {
      clearTimeout(quiet);
      quiet = setTimeout(lost, ms);
    };
    // The server owes an answer for the sender, for each recipient and for DATA.
    listen(silence * (to.length + 2));
    // The library tells the reason, if it knows one, right after it tells that the connection has ended.
    connection.once("end", () => setImmediate(lost));
    connection.send(envelope, letter, (error, info) => {
      stop();
      resolve(error ? { error } : { taken: info.response });
    });
  });
  if ("taken" in ended) connection.quit();
  else connection.close();
  return outcomeOf({ recipient, copies, refused: envelope.rejectedErrors ?? [], handedOver, ...ended });
}
