import { openLog } from "../telemetry/log.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";
import { openBackOffice, servePage } from "./wire.ts";

export const desk = defineCommand({
  name: "desk",
  takes: "",
  words: [0, 0],
  summary: "Serves the page for customer service, without the worker.",
  details:
    "Runs until it is told to stop (Ctrl-C, SIGTERM). `burin work` serves the page too, where the settings have a\n`desk` part. What is done on the page is answered by the worker. Accounts are made with `burin user`.",
  options: {
    port: {
      type: "string",
      takes: "N",
      tells: "the port, instead of the one in the settings (default 8025)",
    },
    ...settingsOption,
  },
  async run(_, { port, settings }, { out }) {
    if (port !== undefined && !/^\d{1,5}$/.test(port)) throw new CannotRun(`“${port}” is not a port`);
    const configuration = await configure(settings);
    const { desk: open, close } = await openBackOffice(configuration);
    try {
      const accounts = await open.store.accounts.all();
      const page = await servePage(
        configuration,
        { ...open, log: openLog() },
        port === undefined ? {} : { port: Number(port) },
      );
      out(`The desk is at ${page.address}`);
      if (accounts.length === 0) out("Nobody can come in yet: make an account with “burin user NAME”.");
      await new Promise<void>((resolve) => {
        for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
      });
      await page.close();
      return 0;
    } finally {
      await close();
    }
  },
});
