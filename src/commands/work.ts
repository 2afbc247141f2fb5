import { openHealth } from "../telemetry/health.ts";
import { openLoad } from "../telemetry/load.ts";
import { openLog } from "../telemetry/log.ts";
import { serveStatus } from "../telemetry/status.ts";
import { runWorker } from "../worker/worker.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { systemClock } from "./system-clock.ts";
import { openDesk, servePage } from "./wire.ts";

export const work = defineCommand({
  name: "work",
  words: [0, 0],
  details:
    "Runs until it is told to stop (Ctrl-C, SIGTERM) and then finishes the letter in hand. What an earlier run\nleft half done is taken up again. The log goes to the standard error stream, a JSON object a line.",
  options: {
    once: { type: "boolean", tells: "handle the letters that are there, then end" },
    ...settingsOption,
  },
  async run(_, { once = false, settings }, { out }) {
    const configuration = await configure(settings);
    const health = openHealth(systemClock);
    const around = { clock: systemClock, log: openLog(), health };
    const load = openLoad();
    const { desk: opened, mailboxes, close } = await openDesk(configuration, around);
    const desk = { ...opened, sender: load.counted(opened.sender) };
    const stop = new AbortController();
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => stop.abort());
    const { status_port } = configuration.settings;
    try {
      const closeStatus =
        status_port === undefined
          ? undefined
          : await serveStatus(status_port, desk.store, health, {
              load,
              reader: desk.reader,
              clock: systemClock,
            }).catch((cause: unknown) => {
              throw new CannotRun(`port ${status_port} cannot be opened for /healthz and /metrics`, {
                cause,
              });
            });
      const page =
        configuration.settings.desk === undefined || once ? undefined : await servePage(configuration, desk);
      const run = { once, signal: stop.signal, health, load };
      const { taken, again, left, unread, aside } = await runWorker(desk, mailboxes, run);
      await page?.close();
      await closeStatus?.();
      const trouble = [
        ...(left === 0 ? [] : [`${left} left`]),
        ...(aside === 0 ? [] : [`${aside} put aside by a fault of the program`]),
        ...(unread === 0 ? [] : [`${unread} ${unread === 1 ? "mailbox" : "mailboxes"} not read`]),
      ];
      const why = trouble.length === 0 ? "" : `, ${trouble.join(", ")}: the log says why`;
      out(`${taken} new ${taken === 1 ? "letter" : "letters"} handled, ${again} seen before${why}.`);
      return trouble.length === 0 || !once ? 0 : 1;
    } finally {
      await close();
    }
  },
});
