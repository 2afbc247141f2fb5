import { cpSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { temporaryFolder } from "./desk.ts";

/** A folder with settings and all that they name, without a record. */
export function settingsFile(): { readonly folder: string; readonly file: string } {
  const folder = temporaryFolder();
  cpSync("fixtures/trade", folder, { recursive: true });
  cpSync("config/glossary.txt", join(folder, "glossary.txt"));
  const file = join(folder, "burin.yaml");
  writeFileSync(file, readFileSync("config/burin.yaml", "utf8").replaceAll("../out/", ""));
  return { folder, file };
}
