import { z } from "zod";
import { wherever } from "../yaml/yaml.ts";
import { notBoth } from "./not-both.ts";

const text = z.string().min(1);
const path = text;

/** Name of an environment variable. */
const variable = z.string().regex(/^[A-Za-z_]\w*$/, "not the name of an environment variable");

const security = z.enum(["tls", "starttls"]);

/** Secrets go over it, so it is encrypted. A token server on this machine need not be. */
const tokenUrl = z
  .url()
  .refine(
    (url) => /^https:|^http:\/\/(127\.0\.0\.1|localhost|\[::1\])[:/]/.test(url),
    "has to begin with https:",
  );

/** Sign-in by OAuth2. A refresh token is exchanged for access tokens. Without one the client signs in by itself. */
const oauth = z
  .strictObject({
    token_url: tokenUrl,
    client_id: text,
    client_secret_env: variable.optional(),
    client_secret_file: path.optional(),
    refresh_token_env: variable.optional(),
    /** Written again when the server gives a new refresh token. */
    refresh_token_file: path.optional(),
    scope: text.optional(),
  })
  .refine(...notBoth("client_secret_env", "client_secret_file"))
  .refine(...notBoth("refresh_token_env", "refresh_token_file"));

/** How a server is reached and who we are there. Secrets stay in the environment or in files. */
function server(port: number) {
  return z
    .strictObject({
      host: text,
      port: z.int().min(1).max(65_535).default(port),
      /** `tls`: encrypted from the first byte; `starttls`: upgraded before anything is told. */
      security: security.default("tls"),
      user: text,
      password_env: variable.optional(),
      password_file: path.optional(),
      oauth: oauth.optional(),
      /** PEM file of an authority trusted beside those that Node.js knows. */
      authority_file: path.optional(),
    })
    .refine(
      (it) => [it.password_env, it.password_file, it.oauth].filter((way) => way !== undefined).length === 1,
      { error: "needs exactly one of password_env, password_file and oauth", ...wherever({}) },
    );
}

const imap = server(993);
const smtp = server(465);

/** A mailbox that letters are read from. */
export const imapMailboxSettings = z.strictObject({
  /** For the log and the pages. */
  name: text,
  imap,
  folder: text.default("INBOX"),
  /** Day (YYYY-MM-DD) before which letters are left alone. */
  begin: z.iso.date("not a day such as 2026-03-01").transform((day) => new Date(`${day}T00:00:00Z`)),
  /** Seconds between looks when the server says nothing by itself. */
  poll_seconds: z.int().min(10).max(600).default(90),
  /**
   * Folders that handled letters are moved to. Without a folder they stay where they are. All get a keyword if the
   * server keeps keywords.
   */
  shelves: z
    .strictObject({
      passed: text.optional(),
      "to-correct": text.optional(),
      waiting: text.optional(),
      person: text.optional(),
      silent: text.optional(),
    })
    .default({}),
});

/** How answers are sent. */
export const smtpSenderSettings = z.strictObject({
  smtp,
  /** The address to which undeliverable answers come back. Somebody should read it. */
  bounces: z.email(),
  /** A mailbox of ours that gets every answer too. After a crash it proves what was sent. */
  witness: z.strictObject({ address: z.email(), imap, folder: text.default("INBOX") }).optional(),
  /** The folder of answers sent; `filled_by: burin` puts a copy there, `server` says that the server does it. */
  sent: z
    .strictObject({ imap, folder: text.default("Sent"), filled_by: z.enum(["server", "burin"]) })
    .optional(),
});

export type ServerSettings = z.output<typeof imap>;
export type ImapMailboxSettings = z.output<typeof imapMailboxSettings>;
export type SmtpSenderSettings = z.output<typeof smtpSenderSettings>;
