import { openLog } from "../telemetry/log.ts";
import { CannotRun, defineCommand, type Io } from "./command.ts";
import { type Configuration, configure, settingsOption } from "./configuration.ts";
import { openBackOffice, servePage } from "./wire.ts";

export const desk = defineCommand({
  name: "desk",
  words: [0, 0],
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
  async run(_, { port, settings }, io) {
    if (port !== undefined && !/^\d{1,5}$/.test(port)) throw new CannotRun(`“${port}” is not a port`);
    const configuration = await configure(settings);
    await serveUntilStopped(configuration, io, port === undefined ? {} : { port: Number(port) });
    return 0;
  },
});

/** Serves the page on a record that is there, until the program is told to stop. */
export async function serveUntilStopped(
  configuration: Configuration,
  { out }: Pick<Io, "out">,
  over: { readonly port?: number } = {},
): Promise<void> {
  const { desk: open, close } = await openBackOffice(configuration);
  try {
    const page = await servePage(configuration, { ...open, log: openLog() }, over);
    out(`The desk is at ${page.address}; Ctrl-C ends it.`);
    if ((await open.store.accounts.all()).length === 0)
      out("Nobody can come in yet: make an account with “burin user NAME”.");
    await new Promise<void>((resolve) => {
      for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => resolve());
    });
    await page.close();
  } finally {
    await close();
  }
}
