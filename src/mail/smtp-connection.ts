import SMTPConnection, {
  type SMTPConnectionAuth,
  type SMTPConnectionCustomAuthHandler,
} from "nodemailer/lib/smtp-connection";
import { type Proof, type Server, signIn, tlsOptions } from "./server.ts";

/**
 * A connection, signed in and encrypted. If it rejects, nothing has been sent. `silence` is how long the server may
 * be silent at sign-in, and `later` how long afterwards, in milliseconds.
 */
export async function openSmtp(server: Server, silence: number, later = silence): Promise<SMTPConnection> {
  return signIn(server.secret, (proof) => connect(server, proof, silence, later), isRefusedSignIn);
}

function connect(server: Server, proof: Proof, silence: number, later: number): Promise<SMTPConnection> {
  return new Promise((resolve, reject) => {
    const connection = new SMTPConnection({
      host: server.host,
      port: server.port,
      secure: server.security === "tls",
      requireTLS: server.security === "starttls",
      tls: tlsOptions(server),
      connectionTimeout: 30_000,
      greetingTimeout: 30_000,
      socketTimeout: later,
      customAuth: { [byToken]: presentToken },
    });
    // Greeting, encryption and sign-in.
    const quiet = setTimeout(() => fail(new Error("timeout: the server is silent")), silence + 60_000);
    const fail = (error: Error): void => {
      clearTimeout(quiet);
      connection.close();
      reject(error);
    };
    // The listener stays: an error that nobody listens to would end the process.
    connection.on("error", fail);
    connection.connect((error) => {
      if (error) return fail(error);
      connection.login(authOf(server.user, proof), (refusal) => {
        if (refusal) fail(refusal);
        else {
          clearTimeout(quiet);
          resolve(connection);
        }
      });
    });
  });
}

/**
 * A name of our own for the mechanism. Otherwise the library would choose one for passwords although we have a token.
 */
const byToken = "TOKEN";

function authOf(user: string, proof: Proof): SMTPConnectionAuth {
  if ("password" in proof) return { user, credentials: { user, pass: proof.password } };
  return { user, pass: proof.token, method: byToken };
}

/** XOAUTH2 where the server has it, otherwise OAUTHBEARER (RFC 7628 §3.1). */
const presentToken: SMTPConnectionCustomAuthHandler = async (session) => {
  const { user, pass: token } = session.auth.credentials;
  const old = session.authMethods.includes("XOAUTH2");
  const proof = old
    ? `user=${user}\u0001auth=Bearer ${token}\u0001\u0001`
    : `n,a=${user.replaceAll("=", "=3D").replaceAll(",", "=2C")},\u0001auth=Bearer ${token}\u0001\u0001`;
  const first = await session.sendCommand(
    `AUTH ${old ? "XOAUTH2" : "OAUTHBEARER"} ${Buffer.from(proof).toString("base64")}`,
  );
  // A server that says why it refuses waits for a word from us before it says no (RFC 7628 §3.2.3).
  const last = first.status === 334 ? await session.sendCommand(old ? "" : "AQ==") : first;
  if (last.status !== 235) throw new Error("sign-in refused");
};

function isRefusedSignIn(error: unknown): boolean {
  return (error as { code?: unknown }).code === "EAUTH";
}
