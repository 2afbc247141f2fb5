import { resolve } from "node:path";
import { isOnServer, recordAddress } from "../settings/record.ts";
import { move as copyRecord, type Moved } from "../store/move.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openPlace, placeToRead, recordName } from "./record.ts";

export const move = defineCommand({
  name: "move",
  words: [1, 1],
  details:
    "RECORD is a folder, sqlite:FOLDER, or postgres://USER@HOST/DATABASE, and has to be empty. All tables and bytes are\ncopied, read back, and compared by counts and hashes. This record stays as it is. Stop the workers first, since what\ncomes later is not in the copy; then let the settings name the new record.",
  options: {
    "password-file": { type: "string", takes: "FILE", tells: "the password for RECORD's server" },
    ...settingsOption,
  },
  async run([record = ""], { settings, "password-file": password }, { out, err, progress }) {
    const read = recordAddress.safeParse(record);
    if (!read.success)
      throw new CannotRun(`${record}: ${read.error.issues.map((it) => it.message).join("; ")}`);
    const here = await configure(settings);
    // Bytes go with their record, unless both keep them on one S3 server.
    const { record_password_env: _env, record_password_file: _file, ...rest } = here.settings;
    const there = {
      ...here,
      settings: {
        ...rest,
        record: isOnServer(record) ? record : resolve(record.replace(/^sqlite:/, "")),
        ...(password === undefined ? {} : { record_password_file: resolve(password) }),
      },
    };
    if (recordName(here) === recordName(there)) throw new CannotRun(`${record} is the record itself`);
    const [from, to] = [
      await placeToRead(here).catch(cannot(here)),
      await openPlace(there).catch(cannot(there)),
    ];
    try {
      const { tables, bytes } = await copyRecord(from, to, progress);
      progress("");
      out([...tableOf(tables), `${bytes} files by their bytes, each read back under its hash.`].join("\n"));
      const differ = tables.filter((one) => one.from.hash !== one.to.hash);
      if (differ.length === 0) return 0;
      err(`The copy is not like the record: ${differ.map(({ table }) => table).join(", ")}. Do not use it.`);
      return 2;
    } catch (cause) {
      progress("");
      throw new CannotRun(`cannot move ${recordName(here)} into ${recordName(there)}: ${reasonOf(cause)}`, {
        cause,
      });
    } finally {
      await Promise.all([from.db.destroy(), to.db.destroy()]);
    }
  },
});

function cannot(where: Parameters<typeof recordName>[0]): (cause: unknown) => never {
  return (cause) => {
    if (cause instanceof CannotRun) throw cause;
    throw new CannotRun(`cannot open the record in ${recordName(where)}: ${reasonOf(cause)}`, { cause });
  };
}

/** A line a table that has rows: how many, and the beginning of the hash over all of them, here and there. */
function tableOf(tables: readonly Moved[]): string[] {
  return tables
    .filter(({ from, to }) => from.rows + to.rows > 0)
    .map(
      ({ table, from, to }) =>
        `${table.padEnd(16)} ${String(from.rows).padStart(8)}  ${from.hash.slice(0, 16)}  ${
          from.hash === to.hash ? "the same" : `${to.rows}  ${to.hash.slice(0, 16)}`
        }`,
    );
}
