import { setTimeout as wait } from "node:timers/promises";
import { finishOpen, takeLetter } from "../intake/take.ts";
import { defineCommand } from "./command.ts";
import { configure, lineLog, openDesk, settingsOption, systemClock } from "./wire.ts";

/** How often a folder is looked at, in milliseconds. */
const pollEvery = 2000;

export const work = defineCommand({
  name: "work",
  takes: "",
  words: [0, 0],
  summary: "Reads the mailbox and answers every letter once.",
  details: "Runs until it is told to stop (Ctrl-C, SIGTERM) and then finishes the letter in hand.",
  options: {
    once: { type: "boolean", tells: "handle the letters that are there, then end" },
    ...settingsOption,
  },
  async run(_, { once, settings }, { out, err }) {
    const { desk, mailbox } = await openDesk(await configure(settings), {
      clock: systemClock,
      log: lineLog(err),
    });
    const stop = new AbortController();
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop.abort());
    let taken = 0;
    let again = 0;
    const takeAll = async (): Promise<void> => {
      for await (const mail of mailbox.letters()) {
        if (stop.signal.aborted) return;
        const letter = await takeLetter(desk, mail);
        if (letter.again) again++;
        else taken++;
      }
    };
    await finishOpen(desk);
    await takeAll();
    if (!once)
      while (!stop.signal.aborted) {
        await wait(pollEvery, undefined, { signal: stop.signal }).catch(() => undefined);
        await takeAll();
      }
    await desk.store.close();
    out(`${taken} new ${taken === 1 ? "letter" : "letters"} handled, ${again} seen before.`);
    return 0;
  },
});
