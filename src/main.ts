import { CannotRun, type Io } from "./commands/command.ts";
import { commands } from "./commands/commands.ts";
import { keepCompiled } from "./commands/compile-cache.ts";
import { forTerminal } from "./commands/for-terminal.ts";
import { nearest } from "./commands/nearest.ts";

async function main([name, ...args]: readonly string[], io: Io): Promise<number> {
  if (name === undefined || name === "--help" || name === "help") {
    io.out(overview());
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((one) => one.name === name);
  try {
    if (command === undefined) {
      const guess = nearest(
        name,
        commands.map((one) => one.name),
      );
      throw new CannotRun(
        `there is no command “${name}”${guess === undefined ? "" : `; did you mean ${guess}?`}`,
      );
    }
    return await (await command.load()).run(args, io);
  } catch (cause) {
    if (!(cause instanceof CannotRun)) return broken(cause, io);
    io.err(`burin: ${cause.message}`);
    io.err(`Try: burin ${command === undefined ? "" : `${command.name} `}--help`);
    return 2;
  }
}

/**
 * Reports a fault of the program's own. It is no answer such as the 1 of `check`, since it says nothing of what was
 * asked.
 */
function broken(cause: unknown, { err }: Pick<Io, "err">): number {
  err(
    `burin: broke by a fault of its own: ${cause instanceof Error ? (cause.stack ?? cause.message) : String(cause)}`,
  );
  return 2;
}

function overview(): string {
  return [
    "Burin reads order sheets for engraved lighting-control stations, checks them and answers the sender.",
    "",
    ...commands.map(({ name, takes, summary }) => `  burin ${`${name} ${takes}`.padEnd(18)} ${summary}`),
    "",
    "burin COMMAND --help tells more.",
  ].join("\n");
}

for (const event of ["uncaughtException", "unhandledRejection"] as const)
  process.on(event, (cause) =>
    process.exit(broken(cause, { err: (text) => process.stderr.write(`${text}\n`) })),
  );

keepCompiled();
process.exitCode = await main(process.argv.slice(2), {
  // Each line is one write, so that output piped into another program is whole.
  out: (text) => process.stdout.write(`${process.stdout.isTTY ? forTerminal(text) : text}\n`),
  err: (text) => process.stderr.write(`${process.stderr.isTTY ? forTerminal(text) : text}\n`),
  progress: (text) => {
    if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${text}`);
  },
});
