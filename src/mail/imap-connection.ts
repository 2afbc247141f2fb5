import { ImapFlow } from "imapflow";
import { type Server, signIn, tlsOptions } from "./server.ts";

/** A server that owes an answer and stays silent this long is taken for dead, in milliseconds. */
export const silenceMs = 60_000;

/**
 * IDLE begins again this often, in milliseconds, so that neither server nor network takes us for gone (RFC 2177:
 * within 29 minutes).
 */
const idleMs = 240_000;

/**
 * A connection, signed in. No folder is selected yet. Rejects when the server cannot be reached, cannot prove who it
 * is, or refuses us. The connection ends with a `close`, never by throwing.
 */
export async function openImap(server: Server, silence = silenceMs): Promise<ImapFlow> {
  return signIn(
    server.secret,
    async (proof) => {
      const client = new ImapFlow({
        host: server.host,
        port: server.port,
        secure: server.security === "tls",
        ...(server.security === "starttls" ? { doSTARTTLS: true } : {}),
        tls: tlsOptions(server),
        auth: {
          user: server.user,
          ...("token" in proof ? { accessToken: proof.token } : { pass: proof.password }),
        },
        connectionTimeout: 30_000,
        socketTimeout: silence,
        maxIdleTime: idleMs,
        logger: false,
      });
      // Without a listener a time-out would end the process. The `close` that follows says all that is needed.
      client.on("error", () => {});
      try {
        await client.connect();
      } catch (error) {
        client.close();
        throw error;
      }
      return client;
    },
    (error) => (error as { authenticationFailed?: unknown }).authenticationFailed === true,
  );
}
