import { isIP } from "node:net";
import { z } from "zod";
import { isCountry, isRegion } from "../calendar/holidays.ts";
import { languages } from "../lettering/languages.ts";
import { weekdays } from "../trade/manager.ts";
import { readInSpiteOfFaults, readYaml, type Written, wherever } from "../yaml/yaml.ts";
import { imapMailboxSettings, smtpSenderSettings } from "./mail.ts";
import { notBoth } from "./not-both.ts";
import { bytesSettings, recordAddress } from "./record.ts";

const path = z.string().min(1);

const nameServer = z.string().refine((text) => {
  const [, address = "", port = ""] = /^(.+):([1-9]\d{0,4})$/.exec(text) ?? [];
  return isIP(text) !== 0 || (isIP(address) === 4 && Number(port) <= 65_535);
}, "not an IP address, or an IPv4 address with a port such as 192.0.2.53:5353");

/** A list whose entries may be faulty. */
const some = z.array(z.unknown());

const waitingShape = z.strictObject({
  /** Business days after the last letter of an order; the last of them brings the last reminder. */
  remind_after: z
    .array(z.int().min(1).max(250))
    .min(1)
    .max(6)
    .refine(
      (days) => days.every((one, i) => one > (days[i - 1] ?? 0)),
      "each must be later than the one before",
    )
    .default([2, 5]),
  /** Whose public holidays you keep, by its code of ISO 3166-1. */
  country: z
    .string()
    .refine(isCountry, "not a country whose holidays are known, by a code such as US")
    .optional(),
  /** A state or province of it. */
  region: z.string().optional(),
  /** Days on which you do not work: 2026-11-27, or 2026-12-24..2027-01-03. */
  closed: z
    .array(
      z.string().refine(areDays, "not a day such as 2026-11-27, nor days such as 2026-12-24..2027-01-03"),
    )
    .default([]),
});

/**
 * When buyers are reminded, and on which days nobody is. Of orders that nothing came for until five business days after
 * the last reminder, no first reminder goes out: they are put on the people's list, once.
 */
const waitingSchema = waitingShape.refine(
  ({ country, region }) => region === undefined || (country !== undefined && isRegion(country, region)),
  {
    error: "not a region of that country whose holidays are known, by a code such as IL",
    path: ["region"],
    ...wherever({ country: z.string().refine(isCountry).optional(), region: z.string().optional() }),
  },
);

/** The first and the last day of "2026-12-24..2027-01-03"; one day is both. */
export function closedDays(typed: string): { readonly from: string; readonly to: string } {
  const [from = "", to = from] = typed.split("..");
  return { from, to };
}

function areDays(typed: string): boolean {
  const { from, to } = closedDays(typed);
  const isInOrder = [from, to].every((one) => z.iso.date().safeParse(one).success) && from <= to;
  return isInOrder && (typed === from || typed === `${from}..${to}`);
}

/** Who manages which orders. */
const managingSchema = z
  .strictObject({
    /** The project, in whatever letters it is typed. */
    project: z.string().trim().min(1).optional(),
    /** The buyer: an address, or a domain. */
    buyer: z
      .string()
      .toLowerCase()
      .regex(
        /^[^\s@]*@?[^\s@.]+(\.[^\s@.]+)+$/,
        "not an address, and not a domain such as brightwire.example",
      )
      .optional(),
    /** Orders of more stations than this. */
    stations_above: z.int().min(0).optional(),
    /** Who manages them. */
    manager: z.strictObject({ name: z.string().trim().min(1), address: z.email().toLowerCase() }),
    /** They wait for the manager's word. Otherwise the manager gets a copy of each answer. */
    waits: z.boolean().default(false),
    /** Once a week the manager is told how they stand: on which day, at which full hour. */
    summary: z
      .strictObject({ weekday: z.enum(weekdays), hour: z.int().min(0).max(23).default(8) })
      .optional(),
  })
  .refine((it) => [it.project, it.buyer, it.stations_above].some((one) => one !== undefined), {
    error: "needs project, buyer or stations_above",
    ...wherever({}),
  });

/** How the page for customer service is served. */
const pageSettings = z.strictObject({
  port: z.int().min(1).max(65_535).default(8025),
  /** Where it is served; beyond the loopback address only behind a server that speaks TLS. */
  host: z.string().min(1).default("127.0.0.1"),
  /** Where browsers find it, if not there: "https://desk.quillgate.example". */
  address: z
    .url()
    .refine(
      (url) => /^https?:\/\/[^/]+$/.test(url),
      "has to begin with https: or http:, and end with the name",
    )
    .optional(),
  /** Hours after which whoever is in has to sign in again. */
  hours: z.number().min(0.25).max(168).default(10),
  /** An OpenID Connect provider that vouches for people by their e-mail addresses. */
  sign_in: z
    .strictObject({
      issuer: z
        .url()
        .refine(
          (url) => /^https:|^http:\/\/(127\.0\.0\.1|localhost|\[::1\])[:/]/.test(url),
          "has to begin with https:",
        ),
      client_id: z.string().min(1),
      client_secret_env: z.string().min(1).optional(),
      client_secret_file: path.optional(),
      /** Nobody comes in with a password. */
      only: z.boolean().default(false),
    })
    .refine((it) => (it.client_secret_env === undefined) !== (it.client_secret_file === undefined), {
      error: "needs client_secret_env or client_secret_file",
      ...wherever({}),
    })
    .optional(),
  /** Days that buyers can answer questions on a page that answers lead to; without it answers lead to none. */
  link_days: z.int().min(1).max(90).optional(),
  /** Whoever comes may try sheets without signing in. */
  try_open: z.boolean().default(false),
});

/** How it is served where the settings say nothing. */
export const usualPage = pageSettings.parse({});

export const settingsSchema = z
  .strictObject({
    catalogue: path,
    editions: path,
    /** Words of legends; `glossary.txt` beside the catalogue if none is named. */
    glossary: path.optional(),
    /** Languages of the legends; a word is right if one of them has it. */
    languages: z
      .array(
        z.enum(
          languages,
          `no dictionary of this language comes with Burin; there are ${languages.join(", ")}`,
        ),
      )
      .min(1, "needs a language")
      .default(["en-US"]),
    /** Where the record lies: a folder, or a database on a PostgreSQL server. */
    record: recordAddress,
    /** The password of its server: a variable that holds it … */
    record_password_env: z.string().min(1).optional(),
    /** … or a file. */
    record_password_file: path.optional(),
    /** Where its bytes lie, if not in the folder or the database. */
    bytes: bytesSettings.optional(),
    /** Folders of .eml files that are read as mailboxes. */
    folders: z.array(path).default([]),
    /** Mailboxes on IMAP servers. */
    mailboxes: z.array(imapMailboxSettings).default([]),
    answers: z
      .strictObject({
        from: z.strictObject({ name: z.string().min(1), address: z.email().toLowerCase() }),
        /** Other addresses at which letters arrive. */
        also: z.array(z.email().toLowerCase()).default([]),
        /** Where answers are put as files … */
        folder: path.optional(),
        /** … or the server that sends them. */
        send: smtpSenderSettings.optional(),
        most_per_hour: z
          .strictObject({
            to_one: z.int().min(1).default(20),
            to_all: z.int().min(1).default(600),
          })
          .prefault({}),
        /** Answers within 24 hours; letters over a limit wait for their turn. */
        most_per_day: z
          .strictObject({
            to_one: z.int().min(1).default(100),
            /** A thread is what letters reply to, by their References. */
            in_thread: z.int().min(1).default(20),
          })
          .prefault({}),
        /** Seconds that the server has after the last byte of an answer (RFC 5321 §4.5.3.2.6). */
        patience_seconds: z.int().min(5).default(600),
        /**
         * Seconds after which an answer whose fate is unknown is looked for. Longer than the mail server's queue
         * lags.
         */
        grace_seconds: z.int().min(1).default(120),
        /** Seconds after which another worker takes up a letter of a dead one. */
        lease_seconds: z.int().min(2).default(60),
      })
      .refine(({ folder, send }) => (folder === undefined) !== (send === undefined), {
        error: "needs either folder or send",
        ...wherever({}),
      }),
    trust: z
      .strictObject({
        /** The name under which your mail server writes Authentication-Results. */
        authority: z.string().min(1).optional(),
        /** If it writes none: name servers to ask whether a sender's domain vouches for a letter. */
        name_servers: z.union([z.enum(["system", "none"]), z.array(nameServer).min(1)]).optional(),
        /** How many Received lines your own servers put on top of a letter. All below them may be forged. */
        received_lines: z.int().min(1).default(1),
        /** Domains that many unrelated people share, besides those of public mail providers. */
        shared_domains: z.array(z.string().min(1).toLowerCase()).default([]),
        /** Domains of that list that are one company's all the same. */
        not_shared: z.array(z.string().min(1).toLowerCase()).default([]),
        /** Addresses, and whole domains, that are believed although nothing proves their letters. */
        known: z
          .array(
            z
              .string()
              .toLowerCase()
              .regex(
                /^[^\s@]*@?[^\s@.]+(\.[^\s@.]+)+$/,
                "not an address, and not a domain such as brightwire.example",
              ),
          )
          .default([]),
        /** Addresses of your own people who forward letters of buyers. */
        staff: z.array(z.email().toLowerCase()).default([]),
      })
      .prefault({}),
    /** Where orders that are released are put, a folder each; who is told at once of what touches them later. */
    release: z
      .strictObject({
        folder: path,
        room: z.email().toLowerCase().optional(),
        /** Buyers, by address or domain, whose orders are released by themselves unless something comes meanwhile. */
        by_itself: z
          .strictObject({
            after_hours: z.number().min(1).max(8760),
            buyers: z.array(z.string().toLowerCase()).min(1),
          })
          .optional(),
      })
      .optional(),
    /** The page for customer service. */
    desk: pageSettings.optional(),
    /** When buyers are reminded of orders that wait for them. Without it nobody is. */
    waiting: waitingSchema.optional(),
    /** Who manages which orders. The first that an order fits is its manager. */
    projects: z.array(managingSchema).default([]),
    /** Who is told each business day, from what time on, how the last one went. */
    day: z
      .strictObject({
        letter_at: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "not a time such as 07:00"),
        to: z
          .array(z.strictObject({ name: z.string().trim().min(1), address: z.email().toLowerCase() }))
          .min(1),
      })
      .optional(),
    /** Days after which what is done with is erased, but for what is counted; without it nothing is by itself. */
    erase_after_days: z.int().min(30).max(36_500).optional(),
    /** Who is told of letters that wait for a person, once an hour at most. */
    notice: z.strictObject({ to: z.email().toLowerCase() }).optional(),
    /** Port on the loopback address for /healthz and /metrics. */
    status_port: z.int().min(1).max(65_535).optional(),
    time_zone: z
      .string()
      .refine((zone) => isTimeZone(zone), "not a time zone of the IANA database, such as America/Chicago"),
  })
  .refine(...notBoth("record_password_env", "record_password_file"))
  .refine(({ folders, mailboxes }) => folders.length + mailboxes.length > 0, {
    error: "needs a mailbox: a path under folders, or a server under mailboxes",
    path: ["folders"],
    ...wherever({ folders: some, mailboxes: some }),
  })
  .refine(
    ({ mailboxes, trust }) =>
      mailboxes.length === 0 || trust.authority !== undefined || trust.name_servers !== undefined,
    {
      error:
        "needs authority or name_servers, to tell forged senders from true ones; “name_servers: none” takes everybody at their word",
      path: ["trust"],
      ...wherever({ mailboxes: some, trust: z.looseObject({}) }),
    },
  )
  .refine(
    ({ answers: { from, also }, projects }) =>
      projects.every(({ manager }) => ![from.address, ...also].includes(manager.address)),
    {
      error: "the manager of one has an address of this desk itself, which would read copies as letters",
      path: ["projects"],
      ...wherever({
        answers: z.looseObject({ from: z.looseObject({}), also: some }),
        projects: z.array(managingSchema),
      }),
    },
  )
  .refine(
    ({ answers: { from, also }, day }) =>
      day === undefined || day.to.every(({ address }) => ![from.address, ...also].includes(address)),
    {
      error: "one of them is an address of this desk itself, which would read it as a letter",
      path: ["day", "to"],
      ...wherever({
        answers: z.looseObject({ from: z.looseObject({}), also: some }),
        day: z.looseObject({ to: some }).optional(),
      }),
    },
  )
  .refine(
    ({ answers: { from, also }, notice }) =>
      notice === undefined || ![from.address, ...also].includes(notice.to),
    {
      error: "is an address of this desk itself, which would read it as a letter",
      path: ["notice", "to"],
      ...wherever({
        answers: z.looseObject({ from: z.looseObject({}), also: some }),
        notice: z.looseObject({}).optional(),
      }),
    },
  );

/** How this desk is set up. Paths are as written: relative to the settings file. */
export type Settings = z.output<typeof settingsSchema>;

/** YAML text of the settings → the settings, or every fault in them. */
export function readSettings(text: string, file: string): Written<Settings> {
  return readYaml(text, file, settingsSchema);
}

const pathsSchema = z.object({
  catalogue: path.optional().catch(undefined),
  editions: path.optional().catch(undefined),
  glossary: path.optional().catch(undefined),
});

/** Where the other files lie, even if the settings are faulty elsewhere. */
export function readPaths(text: string): z.output<typeof pathsSchema> {
  return readInSpiteOfFaults(text, pathsSchema) ?? {};
}

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat("en-US", { timeZone: zone }).resolvedOptions().timeZone !== "";
  } catch {
    return false;
  }
}
