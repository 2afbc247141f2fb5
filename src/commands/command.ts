import { type ParseArgsOptionDescriptor, parseArgs } from "node:util";
import { commands, type Listed } from "./commands.ts";
import { nearest } from "./nearest.ts";

/** Where a command prints. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** A line that says how far long work is, overwritten by the next; "" takes it away. */
  readonly progress: (text: string) => void;
}

interface Option extends ParseArgsOptionDescriptor {
  /** What `--help` says of it. */
  readonly tells: string;
  /** What its value is called in `--help`. */
  readonly takes?: string;
}
export type Options = Readonly<Record<string, Option>>;

type ValueOf<O extends Option> = O["type"] extends "boolean" ? boolean : string;
type ValuesOf<O extends Options> = { readonly [Name in keyof O]?: ValueOf<O[Name]> };

interface Definition<O extends Options> {
  /** As it is listed among all commands. */
  readonly name: string;
  /** At least and at most so many words without dashes. */
  readonly words: readonly [number, number];
  readonly details: string;
  readonly options: O;
  readonly run: (words: readonly string[], values: ValuesOf<O>, io: Io) => Promise<number>;
}

export type Command = Omit<Definition<Options>, "run"> & {
  readonly run: (args: readonly string[], io: Io) => Promise<number>;
};

/** The command cannot run as asked; the message tells the person why. Exit code 2. */
export class CannotRun extends Error {}

/** Why a file or a folder could not be used, in words. */
export function reasonOf(cause: unknown): string {
  const { code = "", message = String(cause) } = cause as Partial<NodeJS.ErrnoException>;
  return (
    (
      {
        ENOENT: "no such file or folder",
        EACCES: "permission denied",
        EPERM: "permission denied",
        EEXIST: "there is a file of that name",
        ENOTDIR: "a part of the path is a file, not a folder",
        EISDIR: "it is a folder",
        ENOSPC: "the disk is full",
        EROFS: "the disk can only be read",
      } as Readonly<Record<string, string>>
    )[code] ?? message
  );
}

const help = { help: { type: "boolean", tells: "print this and end" } } as const;

export function defineCommand<const O extends Options>(definition: Definition<O>): Command {
  return {
    ...definition,
    async run(args, io) {
      const { words, values } = parse(definition, args);
      if ("help" in values) {
        io.out(helpText(definition));
        return 0;
      }
      const [least, most] = definition.words;
      if (words.length < least) throw new CannotRun(`usage: ${usage(definition)}`);
      if (words.length > most) throw new CannotRun(`what is “${words[most]}”? usage: ${usage(definition)}`);
      return definition.run(words, values as ValuesOf<O>, io);
    },
  };
}

function parse(definition: Omit<Definition<Options>, "run">, args: readonly string[]) {
  const options: Options = { ...definition.options, ...help };
  try {
    const { positionals, values } = parseArgs({
      args: [...args],
      options,
      allowPositionals: true,
      strict: true,
    });
    return { words: positionals, values };
  } catch (cause) {
    const names = args.filter((arg) => arg.startsWith("--")).map((arg) => arg.slice(2).split("=")[0] ?? "");
    const unknown = names.find((name) => !(name in options));
    const guess = unknown === undefined ? undefined : nearest(unknown, Object.keys(options));
    const why = cause instanceof Error ? (cause.message.split(". ")[0] ?? "") : "";
    throw new CannotRun(`${why}${guess === undefined ? "" : `; did you mean --${guess}?`}`, { cause });
  }
}

function usage({ name, options }: Omit<Definition<Options>, "run">): string {
  return ["burin", name, listed(name).takes, ...Object.entries(options).map((option) => `[${flag(option)}]`)]
    .filter(Boolean)
    .join(" ");
}

function listed(name: string): Pick<Listed, "takes" | "summary"> {
  return commands.find((one) => one.name === name) ?? { takes: "", summary: "" };
}

function flag([name, { takes }]: [string, Option]): string {
  return `--${name}${takes === undefined ? "" : ` ${takes}`}`;
}

function helpText(definition: Omit<Definition<Options>, "run">): string {
  const options = Object.entries({ ...definition.options, ...help });
  const width = Math.max(...options.map((option) => flag(option).length));
  return [
    usage(definition),
    "",
    listed(definition.name).summary,
    "",
    definition.details,
    "",
    "Options:",
    ...options.map((option) => `  ${flag(option).padEnd(width)}  ${option[1].tells}`),
  ].join("\n");
}
