import { openPool } from "../../src/sandbox/pool.ts";

/** A program that tells its parent who its reader is, then closes the pool, or asks one thing and forgets to. */
const [program = "", deed = ""] = process.argv.slice(2);
const log = { info: () => undefined, warn: () => undefined };
const pool = openPool({ log, program, processes: 1, limits: { jobMs: 60_000 } });
const who = await pool.file(Buffer.from("say who"));
process.send?.(who.ok && who.value.kind === "archive" ? who.value.left[0]?.name : 0);
process.disconnect();
await (deed === "close" ? pool.close() : pool.file(Buffer.from(deed)));
