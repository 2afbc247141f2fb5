import { execFile } from "node:child_process";
import { type FSWatcher, watch } from "node:fs";
import { chmod, chown, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisify } from "node:util";
import { createTransport } from "nodemailer";
import { type OAuth, startOAuth } from "./oauth.ts";
import { type Fault, type Proxy, startProxy } from "./proxy.ts";

const script = join(import.meta.dirname, "rig.sh");
const run = promisify(execFile);

/** The desk's own mailbox; tokens of `oauth` are this mailbox's too. */
export const desk = "orders@quillgate.example";

/** A customer. */
export const alice = "alice@brightwire.example";

/** Debian's user for those who own nothing. */
const nobody = 65534;

/** Every mailbox of the rig has a password made the same way. */
export function passwordOf(address: string): string {
  return `${address.split("@")[0]}-plainly`;
}

/** A running mail house. All of it is gone after `stop`. */
export interface Rig {
  readonly host: "localhost";
  readonly ports: Readonly<Record<"smtp" | "submission" | "smtps" | "imap" | "imaps", number>>;
  /** File with the certificate of the authority that vouches for the servers. */
  readonly authority: string;
  readonly oauth: OAuth;
  /** Hands a letter to the SMTP port as a stranger's server would. */
  readonly deliver: (from: string, to: string, letter: string | Uint8Array) => Promise<void>;
  /** The letters in somebody's folder, read from the disk behind the servers' backs. */
  readonly lettersOf: (address: string, folder?: string) => Promise<readonly string[]>;
  /** Tells of each letter that comes into somebody's inbox from now on, when it is there. */
  readonly watch: (address: string, tell: (letter: string) => void) => Promise<void>;
  /** Lays letters into an inbox behind the servers' backs, for when there are thousands. */
  readonly lay: (address: string, letters: Iterable<string>) => Promise<void>;
  /** Gives a mailbox a sieve script, such as one that answers for somebody who is away. */
  readonly sieve: (address: string, text: string) => Promise<void>;
  /** A proxy before one of the ports; with `strange` it shows the certificate of some other host. */
  readonly proxy: (
    to: "imaps" | "smtps",
    options?: { faults?: readonly Fault[]; strange?: boolean },
  ) => Promise<Proxy>;
  readonly kill9Imap: () => Promise<void>;
  readonly startImap: () => Promise<void>;
  readonly stopSmtp: () => Promise<void>;
  readonly startSmtp: () => Promise<void>;
  readonly changeUidValidity: (address: string, folder: string, value: number) => Promise<void>;
  readonly stop: () => Promise<void>;
}

export async function startRig(): Promise<Rig | { why: string }> {
  if (process.getuid?.() !== 0) return { why: "mail servers can be started by root only" };
  try {
    await run(script, ["install"]);
  } catch (error) {
    return { why: `the mail servers' packages cannot be installed: ${String(error)}` };
  }
  const folder = await mkdtemp(join(tmpdir(), "burin-rig-"));
  const base = await freeBase();
  const oauth = await startOAuth(base + 80, desk);
  const ports = {
    smtp: base + 25,
    submission: base + 87,
    smtps: base + 65,
    imap: base + 43,
    imaps: base + 93,
  };
  const order = async (command: string, ...rest: string[]): Promise<void> => {
    await run(script, [command, folder, ...rest]);
  };
  const stop = async (): Promise<void> => {
    await order("stop");
    await oauth.stop();
    await rm(folder, { recursive: true, force: true, maxRetries: 3 });
  };
  try {
    await order("start", String(base));
  } catch (error) {
    await stop();
    throw error;
  }
  const home = (address: string): string => join(folder, "mail", ...address.split("@").toReversed());
  const proxies: Proxy[] = [];
  const watchers: FSWatcher[] = [];
  const stranger = createTransport({ host: "127.0.0.1", port: ports.smtp, ignoreTLS: true, pool: true });

  return {
    host: "localhost",
    ports,
    authority: join(folder, "tls/ca.pem"),
    oauth,
    deliver: async (from, to, letter) => {
      await stranger.sendMail({ envelope: { from, to }, raw: Buffer.from(letter) });
    },
    lettersOf: async (address, name) => {
      const mail = join(home(address), "Maildir", name === undefined ? "" : `.${name}`);
      return [...(await textsIn(join(mail, "new"))), ...(await textsIn(join(mail, "cur")))];
    },
    watch: async (address, tell) => {
      await makeHome(home(address));
      const inbox = join(home(address), "Maildir/new");
      const seen = new Set<string>();
      const look = async (name: string): Promise<void> => {
        const text = await readFile(join(inbox, name), "utf8").catch(() => undefined);
        if (text === undefined || seen.has(name)) return;
        seen.add(name);
        tell(text);
      };
      watchers.push(watch(inbox, (_, name) => void (name === null ? undefined : look(name))));
    },
    lay: async (address, letters) => {
      await makeHome(home(address));
      let count = 0;
      for (const letter of letters) {
        // read by Dovecot as "seen by nobody yet"
        const path = join(home(address), "Maildir/new", `1700000000.${count++}.rig`);
        await writeFile(path, letter);
        await chown(path, nobody, nobody);
      }
    },
    sieve: async (address, text) => {
      await makeHome(home(address));
      await writeFile(join(home(address), "answer.sieve"), text);
    },
    proxy: async (to, { faults = [], strange = false } = {}) => {
      const name = join(folder, "tls", strange ? "elsewhere" : "localhost");
      const proxy = await startProxy({ to: ports[to], certificate: `${name}.pem`, key: `${name}-key.pem` });
      proxy.faults.push(...faults);
      proxies.push(proxy);
      return proxy;
    },
    kill9Imap: () => order("kill9-imap"),
    startImap: () => order("start-imap"),
    stopSmtp: () => order("stop-smtp"),
    startSmtp: () => order("start-smtp"),
    changeUidValidity: (address, name, value) => order("uidvalidity", address, name, String(value)),
    stop: async () => {
      stranger.close();
      for (const watcher of watchers) watcher.close();
      for (const proxy of proxies) await proxy.stop();
      await stop();
    },
  };
}

async function makeHome(home: string): Promise<void> {
  for (const part of ["..", ".", "Maildir", "Maildir/new", "Maildir/cur", "Maildir/tmp"]) {
    await mkdir(join(home, part), { recursive: true });
    await chown(join(home, part), nobody, nobody);
    await chmod(join(home, part), 0o755);
  }
}

async function textsIn(folder: string): Promise<string[]> {
  const names: string[] = await readdir(folder).catch(() => []);
  const texts: string[] = [];
  for (const name of names) {
    const text = await readFile(join(folder, name), "utf8").catch(() => undefined);
    // Dovecot moves and renames letters while somebody looks
    if (text !== undefined) texts.push(text);
  }
  return texts;
}

/** A hundred ports in a row of which those used are free; below the range that the system hands out itself. */
async function freeBase(): Promise<number> {
  for (let tries = 0; tries < 50; tries++) {
    const base = 20_000 + 100 * Math.floor(Math.random() * 120);
    const free = await Promise.all([25, 43, 65, 80, 87, 93].map((offset) => isFree(base + offset)));
    if (free.every(Boolean)) return base;
  }
  throw new Error("no free ports for the mail servers");
}

async function isFree(port: number): Promise<boolean> {
  const server = createServer();
  const listening = await new Promise<boolean>((resolve) => {
    server.once("error", () => resolve(false));
    server.listen(port, "127.0.0.1", () => resolve(true));
  });
  if (listening) await new Promise((resolve) => server.close(resolve));
  return listening;
}
