import { recordCut } from "../intake/settle.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const cut = defineCommand({
  name: "cut",
  words: [1, Number.POSITIVE_INFINITY],
  details:
    "Without a station it is all of it, and the order closes. A change that comes later is then told to have come after\nthe cutter. Nobody outside is told. Ends with 1, and says why, when the order or a station was not released.",
  options: {
    by: { type: "string", takes: "NAME", tells: "who engraved it; has to be given" },
    buyer: { type: "string", takes: "ADDRESS", tells: "whose order, where several have this number" },
    ...settingsOption,
  },
  async run([number = "", ...stations], { by = "", buyer, settings }, { out, err }) {
    if (by.trim() === "") throw new CannotRun("say who engraved it: --by NAME");
    const { desk, close } = await openBackOffice(await configure(settings));
    try {
      const all = await desk.store.orders.named(number);
      const order = all.find((one) => buyer === undefined || one.buyer === buyer);
      if (order === undefined) {
        err(`No order “${number}” is known.`);
        return 1;
      }
      const said = await recordCut(desk, order, stations, by.trim());
      (said.done ? out : err)(said.words);
      return said.done ? 0 : 1;
    } finally {
      await close();
    }
  },
});
