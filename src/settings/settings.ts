import { z } from "zod";
import { readYaml, type Written } from "../yaml/yaml.ts";

const path = z.string().min(1);

const schema = z.strictObject({
  catalogue: path,
  editions: path,
  record: path,
  mailbox: z.strictObject({ folder: path }),
  answers: z.strictObject({
    folder: path,
    from: z.strictObject({ name: z.string().min(1), address: z.email() }),
  }),
  time_zone: z
    .string()
    .refine((zone) => isTimeZone(zone), "not a time zone of the IANA database, such as America/Chicago"),
});

/** How this desk is set up. Paths are as written: relative to the settings file. */
export type Settings = z.output<typeof schema>;

/** YAML text of the settings → the settings, or every fault in them. */
export function readSettings(text: string, file: string): Written<Settings> {
  return readYaml(text, file, schema);
}

function isTimeZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat("en-US", { timeZone: zone }).resolvedOptions().timeZone !== "";
  } catch {
    return false;
  }
}
