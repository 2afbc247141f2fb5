import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { CannotRun, type Io } from "../../src/commands/command.ts";
import { erase } from "../../src/commands/erase.ts";
import { order } from "../../src/commands/order.ts";
import { openBlobs } from "../../src/store/blobs.ts";
import { openSqlite } from "../../src/store/sqlite.ts";
import { openStore } from "../../src/store/store.ts";
import { temporaryDesk, temporaryFolder } from "../make/desk.ts";
import { mara } from "../make/erasing.ts";
import { aloneAt, quickReader, takeQuick } from "../make/quick.ts";

/** Settings over a record with an order of each of two buyers, both of one day. */
async function configured(changes = "", day = "2026-11-09"): Promise<string> {
  const folder = temporaryFolder();
  cpSync("fixtures/trade", folder, { recursive: true });
  cpSync("config/glossary.txt", join(folder, "glossary.txt"));
  const text = readFileSync("config/burin.yaml", "utf8").replaceAll("../out/", "");
  writeFileSync(join(folder, "burin.yaml"), `${text}\n${changes}`);
  const [record, at] = [join(folder, "record"), new Date(`${day}T15:00:00Z`)];
  mkdirSync(record);
  const store = await openStore(openSqlite(join(record, "record.sqlite")), openBlobs(join(record, "blobs")));
  const desk = await temporaryDesk({ store, reader: quickReader, clock: { now: () => at } });
  await takeQuick(desk, { id: "a", dated: at, receivedAt: at, sheets: [aloneAt("T-9", "SALONA")] });
  await takeQuick(desk, mara.letter(1, at));
  await store.close();
  return join(folder, "burin.yaml");
}

interface Ended {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

async function run(command: typeof erase, ...args: readonly string[]): Promise<Ended> {
  const said = { out: [] as string[], err: [] as string[] };
  const io: Io = {
    out: (text) => said.out.push(text),
    err: (text) => said.err.push(text),
    progress: () => undefined,
  };
  const code = await command.run(args, io).catch((cause: unknown) => {
    if (!(cause instanceof CannotRun)) throw cause;
    said.err.push(cause.message);
    return 2;
  });
  return { code, out: said.out.join("\n"), err: said.err.join("\n") };
}

const ines = "Ines@brightwire.example";
const by = ["--by", "Rosa Imhoff", "--why", "asked for by letter"];

test("a dry run lists what would go and what is in the way, and erases nothing", async () => {
  const file = await configured();
  const dry = await run(erase, ines, "--settings", file);
  expect([dry.code, dry.out]).toEqual([1, expect.stringContaining("once nothing is in the way: 1 letter")]);
  expect(dry.err).toContain("order BW-2207: it is not done with (confirm)");
  const all = await run(erase, ines, "--give-up", "--settings", file);
  expect([all.code, all.err]).toEqual([0, ""]);
  expect(all.out).toMatch(
    /^Would be erased: 1 letter, 1 order\.\nOrders: BW-2207\nletter .*\n-.*\n1 +2026-11-09 +ines@brightwire\.example +Stations\nNothing is erased yet/,
  );
  const refused = await run(erase, ines, "--really", ...by, "--settings", file);
  expect([refused.code, refused.out]).toEqual([1, ""]);
  expect(refused.err).toMatch(/^Nothing is erased\.\nIn the way:\n {2}order BW-2207/);
  expect((await run(order, "BW-2207", "--settings", file)).code).toBe(0);
});

test("what is erased is counted under a stand-in, and --verify says so", async () => {
  const file = await configured();
  const done = await run(erase, ines, "--really", "--give-up", ...by, "--settings", file);
  expect([done.code, done.err]).toEqual([0, ""]);
  expect(done.out).toMatch(/^Erased: 1 letter, 1 order\. They are counted as erased-1\.\n/);
  const verified = await run(order, "OM-9", "--verify", "--settings", file);
  expect(verified.code).toBe(0);
  expect(verified.out).toMatch(
    /events, and their chain is whole\. What (\d+) of them said is erased: \1 on \d{4}-\d\d-\d\d by Rosa Imhoff\. 2 orders made again/,
  );
  expect(await run(erase, ines, "--really", ...by, "--settings", file)).toEqual({
    code: 0,
    out: "The record has nothing of ines@brightwire.example.",
    err: "",
  });
});

test("who erases and why has to be said, and the reason names nobody", async () => {
  const file = ["--settings", await configured()];
  expect(await run(erase, ...file)).toMatchObject({ code: 2, err: expect.stringContaining("whom to erase") });
  expect(await run(erase, ines, "--due", ...file)).toMatchObject({ code: 2 });
  expect(await run(erase, ines, "--really", "--by", "Rosa", ...file)).toMatchObject({ code: 2 });
  const named = await run(erase, ines, "--really", "--by", "Rosa", "--why", `${ines} asked`, ...file);
  expect(named).toMatchObject({ code: 2, err: expect.stringContaining("name nobody in it") });
  expect(await run(erase, "--due", ...file)).toMatchObject({
    code: 2,
    err: "the settings have no erase_after_days",
  });
});

test("what is due is counted first, and goes with --really", async () => {
  const old = ["--settings", await configured("erase_after_days: 30", "2020-01-09")];
  const what = "what 2 senders had in the record and nothing came for in 30 days.";
  expect(await run(erase, "--due", ...old)).toEqual({
    code: 0,
    out: `Would be erased: ${what}\nNothing is erased yet; --really erases it for good.`,
    err: "",
  });
  expect((await run(erase, "--due", "--really", ...old)).out).toContain(`Erased: ${what}\n`);
  expect((await run(erase, "--due", ...old)).out).toContain("what 0 senders had");
});
