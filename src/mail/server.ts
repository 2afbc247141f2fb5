import { type ConnectionOptions, getCACertificates } from "node:tls";
import type { Tokens } from "./oauth.ts";

/** How a mail server is reached, and who we are there. */
export interface Server {
  readonly host: string;
  readonly port: number;
  /**
   * `tls`: encrypted from the first byte. `starttls`: encrypted before anything is told. There is no third way: a
   * connection that cannot be encrypted is not used (RFC 8314 §3).
   */
  readonly security: "tls" | "starttls";
  readonly user: string;
  readonly secret: Secret;
  /** Certificate (PEM) of an authority to trust besides those that Node.js knows. */
  readonly authority?: string;
}

export type Secret = { readonly password: string } | { readonly tokens: Tokens };

/** What one sign-in is tried with. */
export type Proof = { readonly password: string } | { readonly token: string };

/** Options for TLS. The server's certificate is always checked, also against its name. RFC 8997: TLS 1.2 or later. */
export function tlsOptions({ authority }: Server): ConnectionOptions {
  return {
    minVersion: "TLSv1.2",
    rejectUnauthorized: true,
    ...(authority === undefined ? {} : { ca: [...getCACertificates(), authority] }),
  };
}

/** Signs in. A token that the server refuses is renewed once, since it may have been withdrawn. */
export async function signIn<T>(
  secret: Secret,
  attempt: (proof: Proof) => Promise<T>,
  isRefusal: (error: unknown) => boolean,
): Promise<T> {
  if ("password" in secret) return attempt(secret);
  const token = await secret.tokens.token();
  try {
    return await attempt({ token });
  } catch (error) {
    if (!isRefusal(error)) throw error;
    secret.tokens.refuse(token);
    return attempt({ token: await secret.tokens.token() });
  }
}

/** What went wrong, in one line: the server's own words where it gave any. */
export function errorWords(error: unknown): string {
  const { responseText, response, message, code } = error as Record<string, unknown>;
  const words = [responseText, response, message, code].find((it) => typeof it === "string" && it !== "");
  return (typeof words === "string" ? words : "no reason given").replaceAll(/\s+/g, " ").slice(0, 300);
}

/** The same for the log, which holds no addresses. */
export function reasonOf(error: unknown): string {
  return errorWords(error).replaceAll(/[^\s<>]+@[^\s<>]+/g, "(address)");
}
