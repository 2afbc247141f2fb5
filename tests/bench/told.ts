import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";

type Value = string | number | boolean;

/** A value that is told has the type of the default. */
type Told<Defaults> = {
  readonly [Name in keyof Defaults]: Defaults[Name] extends string
    ? string
    : Defaults[Name] extends number
      ? number
      : boolean;
};

/**
 * What a bench is told in the command line. `--help` prints the comment at the top of its file and ends. A number that is
 * none, and an option that there is not, end with 2.
 */
export function told<const Defaults extends Readonly<Record<string, Value>>>(
  file: string,
  defaults: Defaults,
): Told<Defaults> {
  const help = /^\/\*\*\n([^]*?)\n \*\//.exec(readFileSync(file, "utf8"))?.[1] ?? "";
  const end = (code: number, words: string): never => {
    console.error(`${words}${help.replaceAll(/^ \* ?/gm, "")}`);
    process.exit(code);
  };
  const options = Object.fromEntries(
    Object.entries({ ...defaults, help: false }).map(([name, value]) => [
      name,
      { type: typeof value === "boolean" ? ("boolean" as const) : ("string" as const) },
    ]),
  );
  let values: Readonly<Record<string, string | boolean | undefined>> = {};
  try {
    ({ values } = parseArgs({ options }));
  } catch (cause) {
    end(2, `${cause instanceof Error ? cause.message : ""}\n\n`);
  }
  if (values["help"] === true) end(0, "");
  const read = (name: string, usual: Value): Value => {
    const value = values[name];
    if (value === undefined || typeof usual !== "number") return value ?? usual;
    const number = Number(value);
    return Number.isFinite(number) ? number : end(2, `--${name} is no number: ${String(value)}\n\n`);
  };
  return Object.fromEntries(
    Object.entries(defaults).map(([name, usual]) => [name, read(name, usual)]),
  ) as Told<Defaults>;
}
