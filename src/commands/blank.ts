import { mkdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { blankSheet } from "../drawing/blank-sheet.ts";
import { listCsv } from "../drawing/list/list-csv.ts";
import { listFiles } from "../drawing/list/list-files.ts";
import { listWorkbook } from "../drawing/list/list-workbook.ts";
import { listForm } from "../reading/list/list-form.ts";
import { CannotRun, defineCommand, reasonOf } from "./command.ts";
import { configure, settingsOption } from "./configuration.ts";

export const blank = defineCommand({
  name: "blank",
  words: [1, 1],
  details:
    "Drawn from the catalogue and the editions of our own that are not replaced: what they hold, Burin reads. The list,\nas a workbook and as CSV, is one file instead of many sheets.",
  options: settingsOption,
  async run([folder = ""], { settings }, { out }) {
    const { catalogue, editions } = await configure(settings);
    const ours = editions.filter(({ drawn, replacedBy }) => drawn && replacedBy === undefined);
    if (ours.length === 0)
      throw new CannotRun("no edition in use is marked `drawn: true`, so there is no sheet to draw");
    try {
      await mkdir(folder, { recursive: true });
      const blanks = [];
      for (const edition of ours) {
        const says = `${edition.title}, ${edition.fields.length} fields`;
        blanks.push({ name: `${edition.name}.pdf`, bytes: await blankSheet(edition, catalogue), says });
      }
      const form = listForm(editions);
      if (form !== undefined) {
        const says = "Station list: a row for each device instead of a sheet";
        blanks.push({ name: listFiles.workbook, bytes: await listWorkbook(form, catalogue), says });
        blanks.push({ name: listFiles.csv, bytes: listCsv(form), says });
      }
      for (const { name, bytes } of blanks) {
        const there = await readFile(join(folder, name)).catch(() => undefined);
        // Somebody may have filled it in.
        if (there !== undefined && !there.equals(bytes))
          throw new CannotRun(
            `${join(folder, name)} is there already and is no blank of today; nothing was written`,
          );
      }
      for (const { name, bytes, says } of blanks) {
        await writeFile(join(folder, name), bytes);
        out(`${join(folder, name)}  ${says}`);
      }
    } catch (cause) {
      if (cause instanceof CannotRun || !(cause instanceof Error && "code" in cause)) throw cause;
      throw new CannotRun(`cannot write into ${folder}: ${reasonOf(cause)}`, { cause });
    }
    return 0;
  },
});
