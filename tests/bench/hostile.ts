import { openPool } from "../../src/sandbox/pool.ts";
import { hostile } from "../make/hostile/all.ts";
import { tableOf, tryOut } from "../make/hostile/try-out.ts";

/** Every hostile file under the usual limits, each in a process of its own: `hostile.ts [part of a name]`. */
const [only = ""] = process.argv.slice(2);
const log = { info: () => undefined, warn: () => undefined };
for (const one of hostile.filter(({ name }) => name.includes(only))) {
  const reader = openPool({ log, processes: 1 });
  await reader.file(new Uint8Array()); // so that the start of the process is not counted
  console.log(tableOf([await tryOut(reader, one)]));
  await reader.close();
}
