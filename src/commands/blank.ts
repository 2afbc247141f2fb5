import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { CannotRun, defineCommand } from "./command.ts";
import { configure, settingsOption } from "./wire.ts";

export const blank = defineCommand({
  name: "blank",
  takes: "DIR",
  words: [1, 1],
  summary: "Writes the blank sheets, to be filled in and sent back.",
  details:
    "Drawn from the catalogue and the editions of our own that are not replaced: what they hold, Burin reads.",
  options: settingsOption,
  async run([folder = ""], { settings }, { out }) {
    const { catalogue, editions } = await configure(settings);
    const ours = editions.filter(({ drawn, replacedBy }) => drawn && replacedBy === undefined);
    if (ours.length === 0)
      throw new CannotRun("no edition in use is marked `drawn: true`, so there is no sheet to draw");
    try {
      await mkdir(folder, { recursive: true });
      for (const edition of ours) {
        const file = join(folder, `${edition.name}.pdf`);
        await writeFile(file, await blankSheet(edition, catalogue));
        out(`${file}  ${edition.title}, ${edition.fields.length} fields`);
      }
    } catch (cause) {
      if (!(cause instanceof Error && "code" in cause)) throw cause;
      throw new CannotRun(`cannot write into ${folder}: ${cause.message}`, { cause });
    }
    return 0;
  },
});
