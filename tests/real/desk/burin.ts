import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { oauthClient } from "../rig/oauth.ts";
import { desk, passwordOf, type Rig } from "../rig/rig.ts";

/** A folder with settings in it, its record beside them. */
export interface Setup {
  readonly file: string;
  readonly record: string;
}

/** What is set up otherwise than usual. */
export interface Over {
  readonly address?: string;
  readonly record?: string;
  /** The folder with the catalogue and the editions. */
  readonly trade?: string;
  /** The mailbox's folder. */
  readonly folder?: string;
  readonly imaps?: number;
  readonly smtps?: number;
  /** Without it answers leave no witness. */
  readonly witness?: boolean;
  readonly witnessFolder?: string;
  readonly shelves?: Readonly<Record<string, string>>;
  readonly answers?: object;
  readonly trust?: object;
  readonly notice?: object;
  readonly statusPort?: number;
  /** How all servers are reached. */
  readonly server?: object;
}

export const witness = "witness@quillgate.example";

/** Writes settings for a desk on the rig's servers. */
export function setUp(rig: Rig, over: Over = {}): Setup {
  // goes with the rig
  const folder = mkdtempSync(join(dirname(rig.authority), "desk-"));
  const file = join(folder, "burin.yaml");
  const record = over.record ?? join(folder, "record");
  const address = over.address ?? desk;
  const server = (user: string, port: number) => ({
    host: rig.host,
    port,
    user,
    password_env: variableOf(user),
    authority_file: rig.authority,
    ...over.server,
  });
  const trade = over.trade ?? "fixtures/trade";
  const imap = (user: string) => server(user, over.imaps ?? rig.ports.imaps);
  const settings = {
    catalogue: resolve(trade, "catalogue.yaml"),
    editions: resolve(trade, "editions"),
    glossary: resolve("config/glossary.txt"),
    record,
    mailboxes: [
      {
        name: "orders",
        imap: imap(address),
        folder: over.folder,
        begin: "2020-01-01",
        shelves: over.shelves ?? {},
      },
    ],
    answers: {
      from: { name: "Order desk", address },
      send: {
        smtp: server(address, over.smtps ?? rig.ports.smtps),
        bounces: "bounces@quillgate.example",
        ...(over.witness === false
          ? {}
          : { witness: { address: witness, imap: imap(witness), folder: over.witnessFolder } }),
      },
      most_per_hour: { to_one: 100_000, to_all: 100_000 },
      most_per_day: { to_one: 100_000, in_thread: 100_000 },
      ...over.answers,
    },
    trust: over.trust ?? { name_servers: "none" },
    notice: over.notice,
    status_port: over.statusPort,
    time_zone: "America/Chicago",
  };
  // JSON is YAML
  writeFileSync(file, JSON.stringify(settings));
  return { file, record };
}

function variableOf(user: string): string {
  return user.replaceAll(/\W/g, "_");
}

/** The environment that the settings' passwords come from. */
export const environment = {
  ...process.env,
  // many short lives of one program
  NODE_COMPILE_CACHE: join(tmpdir(), "burin-compile-cache"),
  DESK_SECRET: oauthClient.secret,
  ...Object.fromEntries(
    [desk, witness, "orders@larchgate.example"].map((user) => [variableOf(user), passwordOf(user)]),
  ),
};

/** `burin work` as a process of its own. */
export interface Worker {
  readonly pid: number;
  /** What it has logged so far. */
  readonly log: () => string;
  /** Ends it with a signal and returns its exit code. */
  readonly end: (signal: "SIGTERM" | "SIGKILL") => Promise<number | null>;
}

export function startWorker({ file }: Setup): Worker {
  const child: ChildProcess = spawn(process.execPath, ["src/main.ts", "work", "--settings", file], {
    env: environment,
    stdio: ["ignore", "ignore", "pipe"],
  });
  let log = "";
  child.stderr?.on("data", (chunk) => {
    log += String(chunk);
  });
  const ended = once(child, "exit");
  child.once("exit", (code) => {
    if (code !== 0 && code !== null) console.error(`the worker ended by itself:\n${log}`);
  });
  return {
    pid: child.pid ?? 0,
    log: () => log,
    async end(signal) {
      child.kill(signal);
      const [code] = (await ended) as [number | null];
      return code;
    },
  };
}

/** A letter as the record has it. */
export interface Row {
  readonly id: number;
  readonly key: string;
  readonly subject: string | null;
  readonly message_id: string | null;
  readonly state: string;
  readonly why: string | null;
  readonly verdict: string | null;
  readonly buyer: string | null;
}

/** The letters in the record, read while a worker writes it. */
export function rowsOf({ record }: Pick<Setup, "record">): readonly Row[] {
  return query(record, "select * from letters order by id") as Row[];
}

/** The letter of this subject, once the desk has read it. */
export function rowOf(setup: Setup, subject: string): Row | undefined {
  return rowsOf(setup).find((row) => row.subject === subject);
}

/** Lets everything that waits be due now, as if the time had passed. */
export function hasten({ record }: Setup): void {
  query(record, "update jobs set due_at = '2020-01-01T00:00:00.000Z' where due_at is not null");
}

/** Asks the record while a worker writes it; nothing while the worker has not made it yet. */
export function query(record: string, sql: string): readonly unknown[] {
  let database: DatabaseSync | undefined;
  try {
    database = new DatabaseSync(join(record, "record.sqlite"));
    database.exec("PRAGMA busy_timeout = 5000");
    return database.prepare(sql).all();
  } catch (cause) {
    if (/no such (table|column)|unable to open/.test(String(cause))) return [];
    throw cause;
  } finally {
    database?.close();
  }
}

/** What a letter says in one of its header fields, unfolded; undefined when it is absent. */
export function fieldOf(letter: string, name: string): string | undefined {
  const [header = ""] = letter.split(/\r?\n\r?\n/, 1);
  const value = new RegExp(`^${name}:(.*(?:\\r?\\n[ \\t].*)*)`, "im").exec(header)?.[1];
  return value?.replaceAll(/\s+/g, " ").trim();
}

/** Answers in somebody's inbox to the letter with this Message-ID. */
export async function answersTo(rig: Rig, address: string, messageId: string): Promise<readonly string[]> {
  const letters = await rig.lettersOf(address);
  return letters.filter((letter) => fieldOf(letter, "In-Reply-To") === messageId);
}
