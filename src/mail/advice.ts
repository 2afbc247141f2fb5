import { errorWords, type Server } from "./server.ts";

/** What went wrong with a server, in a sentence that says what to change in the settings. */
export function adviceOn(error: unknown, { host, port, security, user, secret }: Server): string {
  const { code, originalCode, authenticationFailed } = error as Record<string, unknown>;
  const words = errorWords(error);
  const all = [code, originalCode, words].join(" ");
  const other = security === "tls" ? "starttls" : "tls";
  const at = `${host}:${port}`;
  if (words.startsWith("the token server"))
    return `no token for ${user}: ${words}; check token_url, client_id, the client secret and the refresh token, and that the app has been given access to the mailbox`;
  if (authenticationFailed === true || /\bEAUTH\b|sign-in refused/.test(all))
    return "password" in secret
      ? `${at} refuses user ${user} with this password (${words}); check user and password, and that the account may sign in with a password at all`
      : `${at} refuses user ${user} with the token it was given (${words}); check user and scope, and that the app may use this mailbox`;
  if (/ALTNAME|altnames/.test(all))
    return `the certificate that ${at} shows is for another name (${words}); set host to the name in the certificate`;
  if (/CERT_HAS_EXPIRED/.test(all)) return `the certificate of ${at} has expired; its owner has to renew it`;
  if (/SELF_SIGNED|UNABLE_TO_(VERIFY|GET)|self-signed|unable to (verify|get)/.test(all))
    return `nobody whom Node.js knows vouches for the certificate of ${at} (${words}); name your authority's certificate in authority_file`;
  if (/ERR_SSL|wrong version number|packet length too long/i.test(all))
    return `${at} does not speak TLS from the first byte; set security: ${other}, or another port`;
  if (/STARTTLS/i.test(all))
    return `${at} offers no STARTTLS (${words}); set security: ${other}, or another port`;
  if (/ECONNREFUSED/.test(all)) return `nothing listens at ${at}; check host and port`;
  if (/ENOTFOUND|EAI_AGAIN|EDNS/.test(all)) return `no machine is called ${host}; check host`;
  if (/timeout|timed out|ETIMEDOUT|greeting/i.test(all))
    return `${at} does not answer; check port, security (${other} instead?) and firewalls`;
  return `${at} cannot be used: ${words}`;
}
