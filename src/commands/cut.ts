import { readFile } from "node:fs/promises";
import { recordCutList } from "../intake/cut-list.ts";
import { recordCut } from "../intake/settle.ts";
import { buyerOption, chosenOrder } from "./chosen-order.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const cut = defineCommand({
  name: "cut",
  words: [0, Number.POSITIVE_INFINITY],
  details: `Without a station it is all of it, and the order closes. A change that comes later is then told to have come after
the cutter. Nobody outside is told. Ends with 1, and says why, when the order or a station was not released.
FILE is a CSV with the columns order and station, and if need be position (a number, or plate; empty for all of the
station), face and when (2026-11-09); others are passed over. The schedule.csv of a package is one, without the rows
that are not engraved yet. What is engraved already is passed over. All else is recorded, or nothing: then every
line that cannot be so is told.`,
  options: {
    file: { type: "string", takes: "FILE", tells: "a list of what is engraved, instead of a number" },
    by: { type: "string", takes: "NAME", tells: "who engraved it; has to be given" },
    ...buyerOption,
    ...settingsOption,
  },
  async run([number, ...stations], { file, by = "", buyer, settings }, { out, err }) {
    const name = by.trim();
    if (name === "") throw new CannotRun("say who engraved it: --by NAME");
    if ((number === undefined) === (file === undefined))
      throw new CannotRun("name an order, or a list with --file FILE");
    const bytes = file === undefined ? undefined : await bytesOf(file);
    const { desk, close } = await openBackOffice(await configure(settings));
    try {
      const of = { name, ...(buyer === undefined ? {} : { buyer }) };
      if (bytes !== undefined) return tell(await recordCutList(desk, bytes, of));
      const order = await chosenOrder(desk, number ?? "", buyer);
      if (order === undefined) return tell({ done: false, words: `No order “${number}” is known.` });
      return tell(await recordCut(desk, order, stations, name));
    } finally {
      await close();
    }

    function tell(said: Awaited<ReturnType<typeof recordCut>>): number {
      (said.done ? out : err)(said.words);
      return said.done ? 0 : 1;
    }
  },
});

async function bytesOf(file: string): Promise<Uint8Array> {
  return readFile(file).catch((cause: unknown) => {
    throw new CannotRun(`cannot read ${file}: ${reasonOf(cause)}`, { cause });
  });
}
