import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { DatabaseSync } from "node:sqlite";
import { expect, test } from "vitest";
import { CannotRun, type Command } from "../../src/commands/command.ts";
import { cut } from "../../src/commands/cut.ts";
import { proof } from "../../src/commands/proof.ts";
import { release } from "../../src/commands/release.ts";
import { settle } from "../../src/commands/settle.ts";
import { temporaryFolder } from "../make/desk.ts";
import { settingsFile } from "../make/settings-file.ts";

/** Settings over a record of long ago, in which two buyers have an order FM-72. */
function configured(): string {
  const { folder, file } = settingsFile();
  mkdirSync(join(folder, "record"));
  const database = new DatabaseSync(join(folder, "record", "record.sqlite"));
  database.exec(readFileSync("fixtures/raw/record-005.sql", "utf8"));
  database.close();
  return file;
}

async function run(command: Command, ...args: readonly string[]): Promise<string> {
  const told: string[] = [];
  const tell = (text: string) => told.push(text);
  const code = await command
    .run(args, { out: tell, err: tell, progress: () => undefined })
    .catch((cause: unknown) => {
      if (!(cause instanceof CannotRun)) throw cause;
      told.push(cause.message);
      return 2;
    });
  return `${code}: ${told.join("\n")}`;
}

test("whoever names an order that two buyers have is asked whose is meant", async () => {
  const file = ["--settings", configured()];
  const [greta, eve] = ["greta@fallowmere.example", "eve@stranger.example"];
  const by = ["--by", "Rosa Imhoff", ...file];
  const asked = `2: several buyers have an order FM-72: choose with --buyer (${greta}, ${eve})`;
  expect(await run(release, "FM-72", ...by)).toBe(asked);
  expect(await run(cut, "FM-72", ...by)).toBe(asked);
  expect(await run(settle, "FM-72", "1", "--yes", "--why", "it is right", ...by)).toBe(asked);

  const whose = (buyer: string) => ["--buyer", buyer, ...by];
  expect(await run(release, "FM-72", ...whose(greta))).toMatch(
    /not released:\n {2}it has not passed: fail\n/,
  );
  expect(await run(release, "FM-72", ...whose(eve))).toMatch(
    /not released:\n {2}it has not passed: person\n/,
  );
  expect(await run(release, "FM-72", ...whose("ada@vale.example"))).toMatch(
    /^1: [^]*no such order is known$/,
  );
  expect(await run(cut, "FM-72", ...whose(eve))).toBe(
    "1: Nothing is recorded: order FM-72 was not released.",
  );

  const out = ["--out", temporaryFolder(), ...file];
  expect(await run(proof, "FM-72", ...out)).toBe(asked);
  expect(await run(proof, "FM-72", "--buyer", greta, ...out)).toMatch(/^0: .*proof FM-72\.pdf$/);
  expect(await run(proof, "FM-72", "--buyer", "ada@vale.example", ...out)).toBe(
    "2: “FM-72” is no order of ada@vale.example",
  );
});
