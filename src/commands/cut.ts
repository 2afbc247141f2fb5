import { randomUUID } from "node:crypto";
import { takeNote } from "../intake/check-note.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openBackOffice } from "./wire.ts";

export const cut = defineCommand({
  name: "cut",
  takes: "NUMBER [STATION…]",
  words: [1, Number.POSITIVE_INFINITY],
  summary: "Records what of a released order is engraved.",
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
      const note = {
        id: randomUUID(),
        buyer: order.buyer,
        order: order.number,
        by: by.trim(),
        why: "engraved",
      };
      const taken = await takeNote(desk, { ...note, acts: [{ kind: "cut", stations }] });
      if (taken.kind === "wrong") {
        err(`Nothing is recorded: ${taken.why}.`);
        return 1;
      }
      const [now] = (await desk.store.orders.named(number)).filter((one) => one.buyer === order.buyer);
      const pieces = now?.released?.pieces ?? [];
      const engraved = pieces.filter((one) => one.engraved);
      out(
        engraved.length === pieces.length
          ? `Order ${order.number} is engraved: ${pieces.length} of ${pieces.length} pieces.`
          : `Order ${order.number}: ${engraved.length} of ${pieces.length} pieces are engraved.`,
      );
      return 0;
    } finally {
      await close();
    }
  },
});
