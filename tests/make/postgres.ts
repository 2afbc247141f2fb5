import { spawnSync } from "node:child_process";
import { appendFileSync, chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { freePort } from "./free-port.ts";

/** Where Debian puts the server's programs: a folder a version. */
const versions = "/usr/lib/postgresql";
const [latest] = existsSync(versions) ? readdirSync(versions).toSorted((a, b) => Number(b) - Number(a)) : [];
const bin = join(versions, latest ?? "", "bin");

/** Why the suites that need the server are left out; undefined where it is there. */
export const noPostgres: string | undefined = existsSync(join(bin, "initdb"))
  ? undefined
  : "PostgreSQL is not installed";

export interface PostgresServer {
  /** A new, empty database, reached by the first of its addresses; `how` it is made, in SQL. */
  readonly database: (how?: string) => Promise<string>;
  readonly stop: () => void;
  /** Stops it, as a power cut does or in order, and starts it again. */
  readonly restart: (how: "immediate" | "fast") => void;
}

/** Where a server runs: words before its programs, and the addresses at which it listens. */
interface Where {
  readonly through?: readonly string[];
  readonly addresses?: readonly string[];
}

/** A PostgreSQL server of its own, with its usual care for what is committed. It is never run as root. */
export async function startPostgres({
  through = [],
  addresses = ["127.0.0.1"],
}: Where = {}): Promise<PostgresServer> {
  const folder = mkdtempSync(join(tmpdir(), "burin-pg-"));
  const isRoot = process.getuid?.() === 0;
  if (isRoot) {
    const id = (flag: string): number =>
      Number(spawnSync("id", [flag, "postgres"], { encoding: "utf8" }).stdout.trim());
    chownSync(folder, id("-u"), id("-g"));
  }
  const run = (program: string, ...words: string[]): void => {
    const asWhom = isRoot ? ["runuser", "-u", "postgres", "--"] : [];
    const [first = "", ...rest] = [...through, ...asWhom, join(bin, program), ...words];
    // The server keeps the streams that it is started with, so it gets none.
    const { status } = spawnSync(first, rest, { cwd: folder, stdio: "ignore" });
    if (status !== 0) throw new Error(`${program} ended with ${status}`);
  };
  const data = join(folder, "data");
  run("initdb", "-D", data, "-U", "burin", "--auth=trust", "--encoding=UTF8", "--locale=C.UTF-8");
  const trusted = "host all burin samenet trust\n";
  appendFileSync(join(data, "pg_hba.conf"), trusted);
  const port = await freePort();
  const options = `-p ${port} -c listen_addresses=${addresses.join(",")} -c unix_socket_directories='${folder}'`;
  const start = (): void =>
    run("pg_ctl", "-D", data, "-w", "-t", "300", "-o", options, "-l", join(folder, "log"), "start");
  const stop = (how: string): void => run("pg_ctl", "-D", data, "-w", "-m", how, "stop");
  start();
  const address = (name: string): string => `postgres://burin@${addresses[0]}:${port}/${name}`;
  let made = 0;
  return {
    async database(how = "") {
      const client = new Client(address("postgres"));
      await client.connect();
      const name = `record_${++made}`;
      await client.query(`CREATE DATABASE ${name} ${how}`);
      await client.end();
      return address(name);
    },
    stop() {
      stop("immediate");
      rmSync(folder, { recursive: true, force: true });
    },
    restart(how) {
      stop(how);
      start();
    },
  };
}
