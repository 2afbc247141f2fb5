import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";

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
      const sheets = [];
      for (const edition of ours) {
        const file = join(folder, `${edition.name}.pdf`);
        const bytes = await blankSheet(edition, catalogue);
        const there = await readFile(file).catch(() => undefined);
        // Somebody may have filled it in.
        if (there !== undefined && !there.equals(bytes))
          throw new CannotRun(`${file} is there already and is no blank sheet of today; nothing was written`);
        sheets.push({ file, bytes, edition });
      }
      for (const { file, bytes, edition } of sheets) {
        await writeFile(file, bytes);
        out(`${file}  ${edition.title}, ${edition.fields.length} fields`);
      }
    } catch (cause) {
      if (cause instanceof CannotRun || !(cause instanceof Error && "code" in cause)) throw cause;
      throw new CannotRun(`cannot write into ${folder}: ${reasonOf(cause)}`, { cause });
    }
    return 0;
  },
});
